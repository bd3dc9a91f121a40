# SPDX-License-Identifier: MIT
"""Markings: whatever is printed reads back, and whatever is typed gets an answer."""

from __future__ import annotations

import layshaft as ls
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from layshaft import testing


@given(text=testing.designations(), use=st.sampled_from(["road", "special", "snow"]))
def test_a_marking_prints_and_reads_back_the_same(text: str, use: str) -> None:
    tyre = ls.TyreSize(text, use)
    again = ls.TyreSize(tyre.designation, use)
    assert again == tyre and again.designation == tyre.designation == text
    diameter = tyre.overall_diameter
    assert diameter.low < diameter.nominal < diameter.high
    rolled = ls.rolling_circumference(tyre)
    assert rolled.low < rolled.nominal < rolled.high


@given(text=st.text(max_size=40) | st.text(alphabet="0123456789/-.xBRZMTC LJPADS+()", max_size=24))
@example("110/90-18\x00")
@example("110\u221590\u201118")
@example("１１０/90-18")
@example("٣.00-18")
def test_any_text_is_read_or_refused_with_a_place(text: str) -> None:
    try:
        tyre = ls.TyreSize(text)
    except ls.ParseError as error:
        assert error.text == text and 0 <= error.position <= len(text)
        assert error.expected
    else:
        assert ls.TyreSize(tyre.designation) == tyre


def test_what_people_paste_is_read() -> None:
    wanted = ls.TyreSize("110/90-18 M/C 61R TL")
    for pasted in ("110/90\u201318 M/C 61R TL", "110 / 90 - 18 m/c 61r tl", "110/90-18\u00a0M/C\u00a061R\u00a0TL"):
        assert ls.TyreSize(pasted) == wanted


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("120/90-81", "120/90-18"),
        ("12/90-18", "120/90-18 or 125/90-18"),
        ("120/90 18", "120/90-18, 120/90B18 or 120/90R18"),
        ("3.OO-18", "3.00-18"),
    ],
)
def test_a_mistyped_marking_names_the_nearest(typed: str, meant: str) -> None:
    with pytest.raises(ls.ParseError) as caught:
        ls.TyreSize(typed)
    assert caught.value.expected.endswith(f"perhaps {meant} is meant")


def test_a_name_of_several_rims_lists_them_by_iso() -> None:
    with pytest.raises(ls.ParseError) as caught:
        ls.TyreSize("26 x 1 3/8")
    assert caught.value.expected == "the ISO marking, 35-590 or 35-565"
    assert ls.TyreSize("35-590").rim_diameter == 590 * ls.mm


def test_a_notation_tells_itself() -> None:
    said = {text: ls.TyreSize(text).notation for text in ("110/90-18", "4.10-18", "MT90-16", "25x8-12", "37-622")}
    assert list(said.values()) == ["metric", "code", "lettered", "flotation", "cycle"]
