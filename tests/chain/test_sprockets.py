# SPDX-License-Identifier: MIT
"""Series, sprockets and interchange against plain arithmetic and geometry, over any series and number of teeth."""

from __future__ import annotations

import cmath
import math

import layshaft as ls
import pytest
from hypothesis import given
from hypothesis import strategies as st

NAMES = ls.chain_series_names()
names = st.sampled_from(NAMES)
teeth = st.integers(5, 200)
OPTIONAL = [
    "pin_diameter", "path_depth", "inner_plate_height", "outer_plate_height", "inner_link_width", "width_over_pin",
    "tensile_strength", "mass_per_length",
]  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
def test_a_series_has_a_source_for_each_figure_and_for_no_other(name: str) -> None:
    series = ls.ChainSeries(name)
    known = ["pitch", "roller_diameter", "inner_width", *(one for one in OPTIONAL if getattr(series, one) is not None)]
    assert list(series.sources) == known
    assert all(ls.ChainSeries(alias) == series for alias in series.aliases)
    listings = ls.chain_listings(series)
    assert listings and all(listing.series == series for listing in listings)
    # All are of one pitch, and where no standard sets the strength it is the least that any of them promises.
    assert {listing.pitch for listing in listings} == {series.pitch}
    if series.tensile_strength is not None and "ISO" not in series.sources["tensile_strength"].document:
        strengths = [one.tensile_strength for one in listings if one.tensile_strength is not None]
        assert series.tensile_strength == min(strengths, key=lambda strength: strength / ls.N)


@given(name=names, spaces=st.text(" \u00a0\u2009", max_size=2), strand=st.booleans(), lower=st.booleans())
def test_a_name_reads_the_same_however_it_is_spelled(name: str, spaces: str, strand: bool, lower: bool) -> None:
    text = spaces.join(name.lower() if lower else name) + spaces
    if strand and name[:2].isdigit() and len(name) == 3:
        text += "-1"
    assert ls.ChainSeries(text).name == name


@given(text=st.text(max_size=12))
def test_any_text_is_a_series_or_an_error_with_a_place(text: str) -> None:
    try:
        series = ls.ChainSeries(text)
    except ls.ParseError as error:
        assert 0 <= error.position <= len(text.encode("utf-8", "surrogatepass"))
        assert error.expected
    else:
        assert series.name in NAMES


@given(name=names, count=teeth)
def test_over_pins_is_the_greatest_distance_over_all_pins(name: str, count: int) -> None:
    sprocket = ls.Sprocket(name, count)
    pitch, pin = sprocket.series.pitch / ls.mm, sprocket.measuring_pin / ls.mm
    # Walk round the chain's polygon, side by side.
    corners = [0j]
    for side in range(count - 1):
        corners.append(corners[-1] + cmath.rect(pitch, 2.0 * math.pi * side / count))
    furthest = max(abs(corner) for corner in corners)
    assert sprocket.over_pins / ls.mm == pytest.approx(furthest + pin, rel=1e-11)


@given(name=names, count=teeth)
def test_diameters_and_form_stand_in_order(name: str, count: int) -> None:
    sprocket = ls.Sprocket(name, count)
    assert sprocket.root_diameter < sprocket.pitch_diameter < sprocket.tip_diameter.high
    assert sprocket.pitch_diameter < sprocket.over_pins + sprocket.measuring_pin
    assert sprocket.over_pins <= sprocket.pitch_diameter + sprocket.measuring_pin
    assert sprocket.seating_radius.low < sprocket.seating_radius.nominal < sprocket.seating_radius.high
    assert 2.0 * sprocket.seating_radius.low > sprocket.series.roller_diameter
    assert sprocket.flank_radius.low > sprocket.seating_radius.high
    assert sprocket.tooth_width == ls.tooth_width(name)
    assert sprocket.tooth_width.high < sprocket.series.inner_width
    polygon = sprocket.series.pitch / ls.mm / math.tan(math.pi / count)
    assert sprocket.ansi_outside_diameter / ls.mm == pytest.approx(
        polygon + 0.6 * sprocket.series.pitch / ls.mm, rel=1e-14
    )


@given(chain=names, cut_for=names)
def test_interchange_is_what_the_dimensions_say(chain: str, cut_for: str) -> None:
    pair = ls.Interchange(chain, cut_for)
    a, b = ls.ChainSeries(chain), ls.ChainSeries(cut_for)
    share = 0.95 if b.pitch > 12.7 * ls.mm else 0.93
    own = 0.95 if a.pitch > 12.7 * ls.mm else 0.93
    tooth = share * (b.inner_width / ls.mm)
    expected = []
    if a.pitch != b.pitch:
        expected.append("pitch differs")
    if a.roller_diameter / ls.mm > 1.01 * (b.roller_diameter / ls.mm):
        expected.append("roller larger")
    if b.roller_diameter / ls.mm > 1.01 * (a.roller_diameter / ls.mm):
        expected.append("roller smaller")
    if tooth > a.inner_width / ls.mm:
        expected.append("tooth too wide")
    if tooth < own * (a.inner_width / ls.mm) - (ls.tooth_width(a).high - ls.tooth_width(a).low) / ls.mm:
        expected.append("sloppy")
    assert list(pair.reasons) == expected
    assert pair.fits == (not expected)
    assert pair.side_play.nominal / ls.mm == pytest.approx(a.inner_width / ls.mm - tooth, abs=1e-9)
    assert (a in ls.chains_for_sprockets(b)) == (b in ls.sprockets_for_chain(a)) == pair.fits


def test_doors_tell_what_is_wrong() -> None:
    with pytest.raises(ls.ParseError, match="cut_for: unknown chain series"):
        ls.Interchange("520", "521")
    with pytest.raises(TypeError, match="series"):
        ls.tooth_width(520)  # type: ignore[arg-type]
    with pytest.raises(ls.RangeError, match="pitch_diameter"):
        ls.over_pins_even("0 mm", "8.51 mm")
