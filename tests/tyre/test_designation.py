# SPDX-License-Identifier: MIT
"""Markings: whatever is printed reads back, and whatever is typed gets an answer."""

from __future__ import annotations

import layshaft as ls
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

tube = st.sampled_from(["", " TL", " TT"])
later = st.builds(
    lambda *marks: "".join(marks),
    st.sampled_from(["", " REINF"]),
    st.sampled_from(["", " M+S"]),
    st.sampled_from(["", " MST"]),
    st.sampled_from(["", " NHS"]),
    st.just("") | st.builds(lambda week, year: f" DOT {week:02}{year:02}", st.integers(1, 53), st.integers(0, 99)),
)
ply = st.just("") | st.integers(2, 40).map(lambda rating: f" {rating}PR")
symbol = st.sampled_from("BJKLMNPQRSTUHVW")
service = (
    st.just("")
    | st.builds(lambda index, letter: f" {index}{letter}", st.integers(0, 150), symbol)
    | st.builds(lambda one, two, letter: f" {one}/{two}{letter}", st.integers(0, 150), st.integers(0, 150), symbol)
    | st.builds(lambda index, letter: f" ({index}{letter})", st.integers(0, 150), st.sampled_from("VWY"))
)
marks = st.builds(lambda *parts: "".join(parts), st.sampled_from(["", " M/C"]), service, ply, tube, later)
metric = st.builds(
    lambda vehicle, width, aspect, construction, rim, rest: (
        f"{vehicle[0]}{width}/{aspect}{construction}{rim}{vehicle[1]}{rest}"
    ),
    st.sampled_from([("", ""), ("P", ""), ("LT", ""), ("AT", ""), ("", "C")]),
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


flotation = st.builds(
    lambda vehicle, diameter, width, construction, rim, rest: (
        f"{vehicle[0]}{diameter}x{width}{construction}{rim}{vehicle[1]}{rest}"
    ),
    st.sampled_from([("", ""), ("", "LT"), ("AT", "")]),
    st.integers(28, 40) | st.sampled_from(["18.5", "22.5"]),
    st.integers(7, 14) | st.sampled_from(["8.50", "10.50", "12.50"]),
    st.sampled_from(["-", "B", "R"]),
    st.sampled_from([8, 9, 10, 12, 14, 15, 16]),
    marks,
)
cycle = st.builds(
    lambda size, strength, kind, rest: size + strength + kind + rest,
    st.builds(
        lambda width, seat: f"{width}-{seat}", st.integers(15, 130), st.sampled_from([622, 559, 406, 584, 305, 94])
    )
    | st.builds(
        lambda width, rim: f"{rim[:3]}x{width}{rim[3]}", st.integers(15, 130), st.sampled_from(["700C", "650B", "650A"])
    )
    | st.builds(
        lambda rim, width: f"{rim}x{width / 20:.2f}", st.sampled_from([20, 24, "27.5", 28, 29]), st.integers(30, 100)
    )
    | st.sampled_from(
        ["26x1 1/4", "26x1 3/4", "24x1 3/8", "28x1 1/2", "8x2", "12 1/2x1.75", "28x1 5/8x1 3/8", "200x50"]
    ),
    ply,
    tube,
    later,
)


@given(text=metric | code | lettered | flotation | cycle, use=st.sampled_from(["road", "special"]))
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
