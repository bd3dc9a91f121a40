# SPDX-License-Identifier: MIT
"""Markings: whatever is printed reads back, and whatever is typed gets an answer."""

from __future__ import annotations

import layshaft as ls
from hypothesis import example, given
from hypothesis import strategies as st

marks = st.builds(
    lambda mc, service, tube: "".join((mc, service, tube)),
    st.sampled_from(["", " M/C"]),
    st.builds(lambda index, symbol: f" {index}{symbol}", st.integers(0, 150), st.sampled_from("BJKLMNPQRSTUHVW"))
    | st.just(""),
    st.sampled_from(["", " TL", " TT"]),
)
metric = st.builds(
    lambda width, aspect, construction, rim, rest: f"{width}/{aspect}{construction}{rim}{rest}",
    st.integers(10, 66).map(lambda five: 5 * five),
    st.integers(25, 110),
    st.sampled_from(["-", "B", "R", "ZR"]),
    st.sampled_from([10, 12, 14, 16, 17, 18, 19, 21]),
    marks,
)
code = st.builds(
    lambda size, rest: size + rest, st.sampled_from(["4.10-18", "3.00-21", "2.75-17", "3.50-10", "5.10-16"]), marks
)
lettered = st.builds(
    lambda size, rest: size + rest, st.sampled_from(["MT90B16", "MT90-16", "MU85B16", "MH90-21"]), marks
)


@given(text=metric | code | lettered, use=st.sampled_from(["road", "special"]))
def test_a_marking_prints_and_reads_back_the_same(text: str, use: str) -> None:
    tyre = ls.TyreSize(text, use)
    again = ls.TyreSize(tyre.designation, use)
    assert again == tyre and again.designation == tyre.designation
    diameter = tyre.overall_diameter
    assert diameter.low < diameter.nominal < diameter.high
    rolled = ls.rolling_circumference(tyre)
    assert rolled.low < rolled.nominal < rolled.high


@given(text=st.text(max_size=40) | st.text(alphabet="0123456789/-.BRZMTC LJ ", max_size=24))
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
