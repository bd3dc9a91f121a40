# SPDX-License-Identifier: MIT
"""Many tyre designations at once: each row is what TyreSize says of its text, in whatever form the texts came."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any

import layshaft as ls
import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st
from layshaft.arrays import parse_tyres

# Of each notation, some with all there is to say, some pasted from elsewhere.
GOOD = [
    "110/90-18", "110/90-18 M/C 61R TL", "150/70ZR17 69W", "4.10-18 59P", "2 1/2-8", "MT90B16 M/C 74H", "31x10.50R15LT",
    "25x8-12", "37-622", "700x28C", "26x2.00", "24x1 3/8", "LT245/75R16 120/116Q", "  110 / 90 – 18   61 R  ",
    "１１０／９０－１８", "2½-8", "110/90-18 nhs dot5301 mst m.s reinf tt 6pr 61r m/c",
]  # fmt: skip
BAD = ["", "bad", "11O/90-18", "110/90", "110/90-18 61R 61R", "110/90-18 X", "110/90\N{EM DASH}½18", "\ud800"]
TEXTS = ["designation", "notation", "construction", "speed_symbol", "reason"]


def row_of(tyre: ls.TyreSize) -> dict[str, Any]:
    """What a row should hold, by the objects of layshaft; None where the marking does not say."""
    rolls = ls.rolling_circumference(tyre)
    ends = {"_low": "low", "": "nominal", "_high": "high"}
    return {
        "designation": tyre.designation,
        "notation": tyre.notation,
        "construction": tyre.construction,
        "section_width_mm": tyre.section_width / ls.mm,
        "aspect_ratio": tyre.aspect_ratio,
        "rim_code": tyre.rim_code,
        "rim_diameter_mm": tyre.rim_diameter / ls.mm,
        **{f"overall_diameter{suffix}_mm": getattr(tyre.overall_diameter, end) / ls.mm for suffix, end in ends.items()},
        **{f"circumference{suffix}_mm": getattr(rolls, end) / ls.mm for suffix, end in ends.items()},
        "load_index": tyre.load_index,
        "load_capacity_kg": None if tyre.load_index is None else ls.load_capacity(tyre.load_index) / ls.kg,
        "speed_symbol": tyre.speed_symbol,
        "rated_speed_kmh": None if tyre.speed_symbol is None else ls.rated_speed(tyre.speed_symbol) / ls.kmh,
        "reason": None,
    }


NAMES = tuple(row_of(ls.TyreSize("110/90-18")))


def check(row: np.void, expected: dict[str, Any]) -> None:
    for name, value in expected.items():
        empty = "" if name in TEXTS else np.nan
        np.testing.assert_equal(row[name].item(), empty if value is None else value, err_msg=name)


@pytest.mark.parametrize("use", ["road", "special", "snow"])
def test_each_row_is_what_the_tyre_says(use: Any) -> None:
    rows = parse_tyres(GOOD * 3, use=use)
    assert rows.dtype.names == NAMES and rows.shape == (3 * len(GOOD),)
    for text, row in zip(GOOD * 3, rows, strict=True):
        check(row, row_of(ls.TyreSize(text, use=use)))


def test_bad_rows_are_empty_but_for_the_reason() -> None:
    texts = [text for pair in zip(BAD, GOOD, strict=False) for text in pair]
    rows = parse_tyres(texts + texts, errors="null")
    for text, row in zip(texts + texts, rows, strict=True):
        if text in GOOD:
            check(row, row_of(ls.TyreSize(text)))
            continue
        check(row, dict.fromkeys(NAMES[:-1]))
        with pytest.raises(ls.ParseError) as caught:
            ls.TyreSize(text)
        assert row["reason"] == str(caught.value)


def test_missing_and_other_things_are_bad_rows_too() -> None:
    rows = parse_tyres(["110/90-18", None, float("nan"), pd.NA, pd.NaT, 3, b"110/90-18"], errors="null")
    assert list(rows["reason"]) == ["", *["no text"] * 4, "no text, but int 3", "no text, but bytes b'110/90-18'"]
    assert list(rows["designation"]) == ["110/90-18", *[""] * 6]
    with pytest.raises(TypeError, match=r"^row 1: no text; expected a marking such as '110/90-18'$"):
        parse_tyres(["110/90-18", None])


def test_the_first_bad_row_raises_and_says_where() -> None:
    with pytest.raises(
        ls.ParseError, match=r'^row 2: the letter O, perhaps for the digit 0 at position 2 of "11O/90-18"'
    ) as caught:
        parse_tyres(["110/90-18", "120/90-18", "11O/90-18", "bad"])
    assert caught.value.text == "11O/90-18" and caught.value.position == 2 and "digits" in caught.value.expected
    with pytest.raises(
        ls.ParseError, match=r'^row 0: the letter O, perhaps for the digit 0 at position 8 of "110/90–1O"'
    ):
        parse_tyres(["110/90–1O"])  # a position counts characters


def test_wrong_calls() -> None:
    for bad, error, told in (
        ("110/90-18", TypeError, "expected several"), (b"x", TypeError, "expected several"), (3, TypeError, "iterable"),
        (np.array([["110/90-18"]]), ValueError, "2 dimensions; expected 1"),
    ):  # fmt: skip
        with pytest.raises(error, match=told):
            parse_tyres(bad)
    with pytest.raises(ValueError, match="errors is 'ignore'; expected 'raise' or 'null'"):
        parse_tyres([], errors="ignore")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="use is 'mud'; expected"):
        parse_tyres([], use="mud")


SEQUENCES: dict[str, Callable[[list[str]], Any]] = {
    "list": list,
    "tuple": tuple,
    "generator": iter,
    "array of str": np.array,
    "array of objects": lambda texts: np.array(texts, dtype=object),
    "array of strings of any length": lambda texts: np.array(texts, dtype=np.dtypes.StringDType()),
    "strided array": lambda texts: np.repeat(np.array(texts), 3)[::3],
    "index": pd.Index,
}


@pytest.mark.parametrize("kind", SEQUENCES)
def test_sequences_give_a_structured_array(kind: str) -> None:
    expected = parse_tyres(GOOD)
    rows = parse_tyres(SEQUENCES[kind](GOOD))
    assert type(rows) is np.ndarray and rows.dtype == expected.dtype
    for name in NAMES:
        np.testing.assert_array_equal(rows[name], expected[name])


@pytest.mark.parametrize("length", [0, 1, 2, 3, 4000])
def test_every_length(length: int) -> None:
    texts = [f"{50 + 5 * (i % 70)}/{25 + i % 85}-{10 + i % 9}" for i in range(length)]  # more than are remembered
    rows = parse_tyres(texts)
    assert rows.shape == (length,) and rows.dtype.names == NAMES and list(rows["designation"]) == texts
    assert rows.flags.writeable and rows.dtype.isalignedstruct


def as_pandas(kind: str) -> Callable[[list[str | None]], Any]:
    return lambda texts: pd.Series(texts, dtype=kind, index=[f"row {i}" for i in range(len(texts))], name="tyre")


def as_polars(texts: list[str | None]) -> Any:
    return pytest.importorskip("polars").Series("tyre", texts)


def as_arrow(kind: str) -> Callable[[list[str | None]], Any]:
    def column(texts: list[str | None]) -> Any:
        arrow = pytest.importorskip("pyarrow")
        if kind == "dictionary":
            return arrow.array(texts).dictionary_encode()
        if kind == "chunks":
            return arrow.chunked_array([texts[:2], [], texts[2:]], type=arrow.string())
        if kind == "slice":
            return arrow.array(["bad", *texts, "bad"])[1:-1]
        return arrow.array(texts, getattr(arrow, kind)())

    return column


COLUMNS: dict[str, Callable[[list[str | None]], Any]] = {
    "pandas object": as_pandas("object"),
    "pandas str": as_pandas("str"),
    "pandas in Python": as_pandas("string[python]"),
    "pandas category": as_pandas("category"),
    "polars": as_polars,
    "polars category": lambda texts: as_polars(texts).cast(pytest.importorskip("polars").Categorical),
    "polars chunks": lambda texts: as_polars(texts[:3]).append(as_polars(texts[3:])),
    "polars slice": lambda texts: as_polars([None, *texts, "bad"]).slice(1, len(texts)),
    **{
        f"arrow {kind}": as_arrow(kind)
        for kind in ("string", "large_string", "string_view", "dictionary", "chunks", "slice")
    },
}
PART: list[str | None] = [*GOOD, "bad", None, GOOD[0], "bad", *GOOD]


@pytest.mark.parametrize("kind", COLUMNS)
def test_a_column_gives_a_frame_with_nulls(kind: str) -> None:
    column = COLUMNS[kind](PART)
    frame = parse_tyres(column, errors="null")
    expected = parse_tyres(PART, errors="null")
    if kind.startswith("pandas"):
        assert isinstance(frame, pd.DataFrame) and frame.index.equals(column.index)
        assert [frame[name].dtype.kind for name in NAMES] == ["O" if name in TEXTS else "f" for name in NAMES]
    names = list(frame.column_names if kind.startswith("arrow") else frame.columns)
    assert names == list(NAMES)
    for name in NAMES:
        values = (
            frame[name].tolist()
            if kind.startswith("pandas")
            else frame[name].to_pylist()
            if kind.startswith("arrow")
            else frame[name].to_list()
        )
        assert len(values) == len(PART)
        for value, good in zip(values, expected[name].tolist(), strict=True):
            if good == "" or good != good:
                assert value is None or value != value  # a null
            else:
                assert value == good
    with pytest.raises(ls.ParseError, match=f"^row {len(GOOD)}: "):
        parse_tyres(column)
    assert len(parse_tyres(column[:0])) == 0


def test_a_frame_from_pandas_in_arrow() -> None:
    pytest.importorskip("pyarrow")
    for kind in ("string[pyarrow]", "str"):
        column = pd.Series(PART, dtype=kind, index=range(100, 100 + len(PART)))
        frame = parse_tyres(column, "null")
        assert frame.index.equals(column.index) and frame["designation"].isna().sum() == 3


@given(st.lists(st.sampled_from(GOOD + BAD) | st.text(max_size=20), max_size=30))
def test_any_texts_are_rows_or_reasons(texts: list[str]) -> None:
    for text, row in zip(texts, parse_tyres(texts, errors="null"), strict=True):
        try:
            designation = ls.TyreSize(text).designation
        except ls.ParseError as error:
            # A structured array keeps no NUL at the end of a text; none of our sentences ends with one.
            assert row["reason"] == str(error) and row["designation"] == ""
        else:
            assert row["reason"] == "" and row["designation"] == designation


def test_threads_may_parse_beside_each_other() -> None:
    texts = GOOD * 2000
    expected = parse_tyres(texts)
    same: list[bool] = []

    def work() -> None:
        same.append(all(np.array_equal(parse_tyres(texts)[name], expected[name]) for name in TEXTS))

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert same == [True] * 4
