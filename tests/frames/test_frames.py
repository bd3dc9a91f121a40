# SPDX-License-Identifier: MIT
"""Whole set-ups in bulk: the numbers of a frame are those of each set-up alone, and a bad row harms no other."""

from __future__ import annotations

import re
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import layshaft as ls
import numpy as np
import pandas as pd
import polars as pl
import pyarrow as pa
import pytest
from layshaft import frames

MACHINE = ls.Machine.from_json(
    (Path(__file__).resolve().parents[2] / "examples" / "machines" / "trail_bike.json").read_text(encoding="utf-8")
)
TYRES = ("110/100-18 M/C 64R TT", "120/90-18 M/C 65R TT", "130/80R18 M/C 66V TL", "4.10-18 59P")

KINDS: dict[str, Callable[[dict[str, Any]], Any]] = {
    "pandas": pd.DataFrame,
    "polars": pl.DataFrame,
    "pyarrow": lambda columns: pa.table({name: pa.array(column) for name, column in columns.items()}),
}


def column(frame: Any, name: str) -> list[Any]:
    """Its values, None for what is missing."""
    values = frame[name].to_pylist() if isinstance(frame, pa.Table) else list(frame[name])
    return [None if value is None or value != value else value for value in values]


def names(frame: Any) -> list[str]:
    return frame.column_names if isinstance(frame, pa.Table) else list(frame.columns)


@pytest.fixture(params=list(KINDS))
def make(request: pytest.FixtureRequest) -> Callable[[dict[str, Any]], Any]:
    return KINDS[request.param]


def some(rows: int, seed: int = 1) -> dict[str, list[Any]]:
    """Set-ups drawn at random: some by a marking, some by a rollout, some with links."""
    numbers = np.random.default_rng(seed)
    columns: dict[str, list[Any]] = {name: [] for name in ("front", "rear", "links", "tyre", "circumference_mm", "who")}
    for i in range(rows):
        measured = numbers.random() < 0.3
        columns["front"].append(int(numbers.integers(11, 15)))
        columns["rear"].append(int(numbers.integers(44, 53)))
        columns["links"].append(float(numbers.choice([108, 110, 112])) if numbers.random() < 0.4 else None)
        columns["tyre"].append(None if measured else str(numbers.choice(TYRES)))
        columns["circumference_mm"].append(float(numbers.uniform(1900.0, 2150.0)) if measured else None)
        columns["who"].append(f"rider {i}")
    return columns


def setup_of(columns: dict[str, list[Any]], row: int) -> ls.Setup:
    of = {name: values[row] for name, values in columns.items()}
    return ls.Setup(
        front=of["front"],
        rear=of["rear"],
        tyre=of["tyre"],
        links=None if of["links"] is None else int(of["links"]),
        circumference=None if of["circumference_mm"] is None else of["circumference_mm"] * ls.mm,
    )


# What a comparison with the stock set-up tells, as the column has it.
ALONE: dict[str, Callable[[ls.Comparison], Any]] = {
    "thrust_change": lambda c: c.thrust_change,
    "speed_change": lambda c: c.speed_change,
    "chain_pull_change": lambda c: c.wear.chain_tension_change,
    "chain_stretch_change": lambda c: c.wear.chain_stretch_change,
    "front_life_change": lambda c: c.wear.front_life_change,
    "rear_life_change": lambda c: c.wear.rear_life_change,
    "wear_room": lambda c: c.trial.chain.wear_room,
}


def close(told: float | None, alone: float) -> bool:
    """To the last digits: those that a change has left when one is taken away."""
    return told is not None and abs(told - alone) <= 1e-15 * (1.0 + abs(alone))


def test_the_numbers_are_those_of_each_set_up_alone(make: Callable[[dict[str, Any]], Any]) -> None:
    columns = some(120)
    told = frames.appraise(
        MACHINE, make(columns), speed="90 km/h", columns=[*ALONE, "chain_links", "engine_speed_rpm"], errors="null"
    )
    reasons, links = column(told, "reason"), column(told, "chain_links")
    seen = 0
    for row, reason in enumerate(reasons):
        try:
            comparison = ls.compare(MACHINE, MACHINE.stock, setup_of(columns, row))
        except ls.Error as error:
            assert reason is not None and reason in str(error)
            assert links[row] is None
            continue
        seen += 1
        assert reason is None
        assert links[row] == comparison.trial.chain.links
        engine = comparison.trial.engine_speed_at("90 km/h", len(MACHINE.gearbox.gears))
        for name, band in {**{name: get(comparison) for name, get in ALONE.items()}, "engine_speed": engine}.items():
            for end, which in (("_low", "low"), ("", "nominal"), ("_high", "high")):
                value = getattr(band, which)
                unit, value = ("_rpm", value / ls.rpm) if name == "engine_speed" else ("", value)
                assert close(column(told, name + end + unit)[row], value), (name + end, row)
    assert seen > 60


def test_whatever_else_the_frame_has_comes_through(make: Callable[[dict[str, Any]], Any]) -> None:
    columns = some(5)
    columns["links"] = [None] * 5
    told = frames.appraise(MACHINE, make(columns), columns=["thrust_change"], bands=False)
    assert names(told) == [*columns, "thrust_change"]
    assert column(told, "who") == columns["who"]
    assert type(told) is type(make(columns))


@pytest.mark.parametrize("rows", [0, 1])
def test_no_row_and_one_row(make: Callable[[dict[str, Any]], Any], rows: int) -> None:
    frame = make({"front": [12] * rows, "rear": [47] * rows, "tyre": [TYRES[0]] * rows})
    if rows == 0 and isinstance(frame, pa.Table):
        frame = frame.cast(pa.schema([("front", pa.int64()), ("rear", pa.int64()), ("tyre", pa.string())]))
    told = frames.appraise(MACHINE, frame, errors="null")
    assert len(column(told, "thrust_change")) == rows
    assert column(told, "reason") == [None] * rows


def test_pandas_keeps_its_index() -> None:
    frame = pd.DataFrame({"front": [12, 13], "rear": [47, 47], "tyre": [TYRES[0], TYRES[1]]})
    frame.index = pd.Index(["b", "b"], name="bike")
    told = frames.appraise(MACHINE, frame, errors="null", columns=["thrust_change"])
    pd.testing.assert_index_equal(told.index, frame.index)
    plain = frames.appraise(MACHINE, frame.reset_index(drop=True), columns=["thrust_change"])
    assert list(told["thrust_change"]) == list(plain["thrust_change"])


BAD = [
    ("front", None, "front is missing"),
    ("rear", 3, "rear: number of teeth is 3; expected 4 to 1000"),
    ("rear", 47.5, "rear is 47.5; expected a whole number, 4 to 1000"),
    ("rear", 900, "centre_max is 648 mm"),
    ("links", 5, "number of links is 5; expected 53, the fewest"),
    ("tyre", "120/xx-18", "tyre"),
    ("tyre", None, "a tyre needs a marking, or a measured circumference in its place"),
    ("circumference_mm", 90.0, "circumference"),
    ("chain", "521", "chain"),
    ("chain_seal", "wax", "chain_seal is 'wax'; expected one of 'none'"),
    ("front_material", "cheese", "front_material is 'cheese'; expected one of 'steel'"),
    ("rear_price", -1.0, "rear_price"),
]


@pytest.mark.parametrize(("name", "value", "why"), BAD)
def test_a_bad_row_is_told_and_harms_no_other(
    make: Callable[[dict[str, Any]], Any], name: str, value: Any, why: str
) -> None:
    columns: dict[str, list[Any]] = {"front": [12, 12, 12], "rear": [47, 47, 47], "tyre": [TYRES[0]] * 3}
    columns[name] = [
        columns[name][0] if name in columns else None,
        value,
        columns[name][2] if name in columns else None,
    ]
    if isinstance(value, float) and name in ("front", "rear"):
        columns[name] = [float(of) for of in columns[name]]
    told = frames.appraise(
        MACHINE, make(columns), errors="null", columns=["thrust_change", "rear_teeth", "parts changed"]
    )
    for measure in ("thrust_change", "thrust_change_low", "rear_teeth", "parts_changed"):
        first, second, third = column(told, measure)
        assert first is not None and first == third and second is None, measure
    reasons = column(told, "reason")
    assert reasons[0] is None and reasons[2] is None and reasons[1].startswith(why), reasons[1]
    with pytest.raises(ls.Error, match=r"^row 1: ") as raised:
        frames.appraise(MACHINE, make(columns), columns=["thrust_change"])
    assert reasons[1] in str(raised.value)


def test_what_is_not_asked_for_right_is_told() -> None:
    good = {"front": [12], "rear": [47], "tyre": [TYRES[0]]}
    for frame, error, words in (
        (pl.LazyFrame(good), TypeError, "frame is lazy, and its rows are not there yet: collect it first"),
        ([12, 47], TypeError, "expected a data frame of pandas, Polars or PyArrow, got list"),
        (pd.DataFrame({"front": [12], "tyre": [TYRES[0]]}), ls.Error, "frame has no column 'rear'"),
        (pd.DataFrame({"front": [12], "rear": [47]}), ls.Error, "frame has no column 'tyre'"),
        (pd.DataFrame({**good, "circumference_low_mm": [1990.0]}), ls.Error, "but no 'circumference_mm'"),
        (pd.DataFrame({**good, "thrust_change": [0.0]}), ls.Error, "has a column 'thrust_change' already"),
        (pd.DataFrame({**good, "rear": ["many"]}), TypeError, "column 'rear': expected numbers"),
    ):
        with pytest.raises(error, match=re.escape(words)):
            frames.appraise(MACHINE, frame, columns=["thrust change"])
    frame = pd.DataFrame(good)
    for options, error, words in (
        ({"columns": ["thrust"]}, ls.RangeError, "no measure is called 'thrust'"),
        ({"columns": "thrust_change"}, TypeError, "expected a list of names"),
        ({"columns": ["engine_speed_rpm"]}, ls.Error, "needs the road speed"),
        ({"columns": ["climb_deg"], "gear": 9}, ls.RangeError, "gear"),
        ({"errors": "skip"}, ls.RangeError, "expected 'raise' or 'null'"),
        ({"threads": 400}, ls.RangeError, "threads is 400; expected 0 to 256"),
    ):
        with pytest.raises(error, match=re.escape(words)):
            frames.appraise(MACHINE, frame, **options)


def test_every_measure_has_columns_with_their_unit() -> None:
    every = frames.columns()
    assert len(frames.columns(bands=False)) == len(ls.measures())
    for name in ("walking_pace_low_kmh", "walking_pace_kmh", "axle_room_high_mm", "engine_speed_rpm", "wrap_deg",
                 "chain_mass_kg", "thrust_change_low", "chain_links", "parts_changed"):  # fmt: skip
        assert every[name]
    assert "wrap_low_deg" not in every
    told = frames.appraise(MACHINE, pd.DataFrame({"front": [12], "rear": [47], "tyre": [TYRES[0]]}), speed="90 km/h")
    assert set(told.columns) - {"front", "rear", "tyre"} < set(every)
    assert "top_speed_kmh" not in told and "cost" not in told and "engine_speed_rpm" in told


def test_prices_are_added_up_for_what_is_not_on_the_machine() -> None:
    frame = pd.DataFrame({"front": [12, 13, 12], "rear": [47, 47, 47], "tyre": [TYRES[0], TYRES[0], TYRES[1]],
                          "front_price": [20.0, 20.0, 20.0], "chain_price": [60.0, 60.0, 60.0], "tyre_price": [80.0, 80.0, None]})  # fmt: skip
    first = ls.Setup(front=12, rear=47, tyre=TYRES[0])
    told = frames.appraise(MACHINE, frame, columns=["cost", "front_changed", "chain_changed"], present=first)
    expected = [20.0 * f + 60.0 * c for f, c in zip(told["front_changed"], told["chain_changed"], strict=True)]
    assert list(told["cost"][:2]) == expected[:2] and np.isnan(told["cost"][2])


def test_out_is_filled_and_returned_whatever_its_kind_and_steps() -> None:
    columns = some(700)
    columns["links"] = [None] * 700
    frame = pd.DataFrame(columns)
    expected = frames.appraise(MACHINE, frame, columns=["thrust_change", "walking_pace_kmh"])
    wanted = [name for name in expected.columns if name not in frame.columns]
    arrays = {name: np.empty((700, 3))[:, 1] if i % 2 else np.empty(700) for i, name in enumerate(wanted)}
    assert frames.appraise(MACHINE, frame, columns=["thrust_change", "walking_pace_kmh"], out=arrays) is arrays
    records = np.zeros(700, dtype=[*((name, float) for name in wanted), ("reason", object)])
    assert frames.appraise(MACHINE, frame, columns=["thrust_change", "walking_pace_kmh"], out=records, errors="null") is records  # fmt: skip
    for name in wanted:
        np.testing.assert_array_equal(arrays[name], expected[name])
        np.testing.assert_array_equal(records[name], expected[name])
    assert set(records["reason"]) == {None}
    for out, words in (
        ({}, "out has no 'thrust_change_low'"),
        ({**arrays, "thrust_change": np.empty(3)}, "expected a float64 array of shape"),
        ({**arrays, "thrust_change": np.empty(700, dtype=np.float32)}, "float32"),
    ):
        with pytest.raises(ls.Error, match=re.escape(words)):
            frames.appraise(MACHINE, frame, columns=["thrust_change", "walking_pace_kmh"], out=out)


def test_the_answer_is_the_same_in_threads() -> None:
    columns = some(30_000, seed=4)
    columns["links"] = [None] * 30_000
    one, three = (frames.appraise(MACHINE, pl.DataFrame(columns), threads=threads, errors="null") for threads in (1, 3))
    assert one.equals(three)


def test_other_threads_go_on_meanwhile() -> None:
    # No thread has a turn but one that is given away; so long a call has room for many.
    columns = some(3000, seed=9)
    columns["links"] = [None] * 3000
    frame = pd.DataFrame(columns)
    begun, ended, turns = threading.Event(), threading.Event(), 0

    def work() -> None:
        begun.set()
        frames.appraise(MACHINE, frame, columns=["top_speed_kmh", "climb_deg"])
        ended.set()

    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000.0)
    try:
        thread = threading.Thread(target=work)
        thread.start()
        begun.wait()
        while not ended.is_set():
            turns += 1
            time.sleep(0.0)  # gives its own turn away
        thread.join()
    finally:
        sys.setswitchinterval(interval)
    assert turns > 100


def test_the_module_is_loaded_only_when_it_is_asked_for() -> None:
    told = subprocess.run(
        [sys.executable, "-c", "import sys, layshaft; print(*{'numpy', 'narwhals', 'pandas'} & set(sys.modules)); layshaft.frames; print('numpy' in sys.modules)"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert told.stdout.split() == ["True"]
