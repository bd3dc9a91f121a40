# SPDX-License-Identifier: MIT
"""The functions that are no formula against the first rows of the table, and the bounds themselves."""

from __future__ import annotations

import math
import re
from itertools import islice

import layshaft as ls
import pytest
from accuracy import errors, table
from accuracy.errors import Worst, bound_for, broken, kept, tightened, worst_of
from accuracy.exact import FORMULAS, Exact, mp, work_out
from accuracy.functions import ENTRIES
from accuracy.rows import Row

BOUNDS = kept()
OTHERS = [name for name in ENTRIES if name not in FORMULAS]
ROWS = {"arrays": 600}


@pytest.mark.parametrize("name", OTHERS)
def test_a_function_is_within_its_bounds(name: str) -> None:
    entry = ENTRIES[name]
    for difficulty in entry.classes:
        rows = list(islice(entry.rows(difficulty, entry.count(difficulty), 0), ROWS.get(name, 30)))
        assert rows
        assert not broken(worst_of(rows), BOUNDS)


def test_every_bound_belongs_to_a_function_and_every_function_has_one() -> None:
    assert {name for name, _ in BOUNDS} == set(ENTRIES)
    assert all(difficulty in ENTRIES[name].classes for name, difficulty in BOUNDS)
    assert all(0 <= bound < math.inf for bound in BOUNDS.values())


def test_the_header_states_the_bounds_that_are_kept() -> None:
    assert errors.HEADER.read_text(encoding="utf-8") == errors.header(BOUNDS)


# What is said of functions that are no formula: where, the number with its unit, and of which function.
STATED = [
    ("include/layshaft/chain/loop.hpp", "2.3 ulp", "chain_links"),
    ("include/layshaft/chain/loop.hpp", "2.8 ulp", "chain_centre"),
    ("include/layshaft/chain/loop_bulk.hpp", "2.2 ulp", "chain_links in bulk"),
    ("include/layshaft/chain/loop_bulk.hpp", "2.8 ulp", "chain_centre in bulk"),
    ("include/layshaft/chain/slack_through_travel.hpp", "8.9e-16 m", "SlackThroughTravel.at.spare_length"),
    ("include/layshaft/chain/slack_through_travel.hpp", "6.7e-11 m", "SlackThroughTravel.at.slack"),
    ("include/layshaft/chain/sprocket.hpp", "3.7 ulp", "Sprocket.tip_diameter.high"),
    ("include/layshaft/core/quantity_text.hpp", "2.8 ulp", "quantity.of_text"),
    ("include/layshaft/core/units.hpp", "2.9 ulp", "quantity.in_unit"),
    ("include/layshaft/road/coast_down.hpp", "4.9 ulp", "coast_down_time"),
    ("include/layshaft/road/coast_down_fit.hpp", "1.7e-5 N", "fit_coast_down.constant"),
    ("include/layshaft/road/coast_down_fit.hpp", "1.8e-7 kg/m", "fit_coast_down.quadratic"),
    ("include/layshaft/road/speed_run.hpp", "6.2e-14 s", "time_to_speed.time"),
    ("include/layshaft/road/speed_run.hpp", "1.1e-12 m", "time_to_speed.distance"),
    ("include/layshaft/road/top_speed.hpp", "3.4e-14 m/s", "top_speed"),
    ("include/layshaft/tyre/rolling.hpp", "3.9 ulp", "TyreSize.rolling_circumference"),
    ("bindings/chain.cpp", "2.3 ulp", "chain_links"),
    ("bindings/chain.cpp", "2.8 ulp", "chain_centre"),
    ("bindings/chain_travel.cpp", "6.7e-11 m", "SlackThroughTravel.at.slack"),
    ("bindings/on_road.cpp", "3.4e-14 m/s", "top_speed"),
    ("bindings/on_road.cpp", "6.2e-14 s", "time_to_speed.time"),
    ("bindings/on_road.cpp", "1.1e-12 m", "time_to_speed.distance"),
    ("bindings/road.cpp", "4.9 ulp", "coast_down_time"),
    ("bindings/layshaft/arrays.py", "6.8 ulp", "arrays"),
]


@pytest.mark.parametrize(("file", "told", "function"), STATED)
def test_what_is_said_of_a_function_is_its_bound(file: str, told: str, function: str) -> None:
    text = re.sub(r'"\s+"|\s*\n\s*(///)?\s*', " ", (errors.HERE.parents[1] / file).read_text(encoding="utf-8"))
    assert re.search(rf"(within|beyond|and|of|or)\s+{re.escape(told)}\b", re.sub(" +", " ", text))
    number, unit = told.split()
    worst = max(bound for (name, _), bound in BOUNDS.items() if name == function)
    assert unit == ENTRIES[function].unit and worst <= float(number) <= 1.1 * worst


def test_a_formula_says_its_bound() -> None:
    for name, formula in FORMULAS.items():
        assert formula.error_ulp == max(bound for (of, _), bound in BOUNDS.items() if of == name) < 7, name


def test_a_result_that_is_off_is_found() -> None:
    row = next(ENTRIES["road_speed"].rows("ordinary", 1, 0))
    right = worst_of([row])
    assert not broken(right, BOUNDS)
    (key,) = right
    moved = Row(row.function, row.difficulty, row.arguments, row.head + 8 * math.ulp(row.head), row.tail, row.scale)
    (line,) = broken(worst_of([moved]), BOUNDS)
    assert line.startswith("road_speed (ordinary) is bound to ")
    assert "has no bound" in broken(right, {})[0]
    nothing = Row(row.function, row.difficulty, (math.nan, *row.arguments[1:]), row.head, row.tail, row.scale)
    assert worst_of([nothing])[key].error == math.inf, "what raises, or is no number, is infinitely wrong"


def test_a_bound_is_never_loosened() -> None:
    row = next(ENTRIES["road_speed"].rows("ordinary", 1, 0))
    key = "road_speed", "ordinary"
    assert tightened({key: Worst(3.0, row, 0.0)}, {key: 2.0}) == {key: 2.0}
    assert tightened({key: Worst(1.0, row, 0.0)}, {key: 2.0}) == {key: 1.4}
    assert bound_for("road_speed", 0.0) == 0.5 and bound_for("load_capacity", 0.0) == 0.0
    assert bound_for("speed_margin", 0.49) == 0.5 and bound_for("road_speed", 0.49) == 0.7
    assert bound_for("top_speed", 1.9e-14) == 2.7e-14


def test_the_same_rows_come_again() -> None:
    one = [*islice(ENTRIES["run_angle"].rows("cancelling", 110, 0), 5)]
    assert table.text_of(one) == table.text_of(islice(ENTRIES["run_angle"].rows("cancelling", 110, 0), 5))
    assert one != [*islice(ENTRIES["run_angle"].rows("cancelling", 110, 1), 5)]
    line = table.text_of(one[:1]).splitlines()[1].split(",")
    assert float.fromhex(line[2]) == one[0].head and [float.fromhex(x) for x in line[5:]] == list(one[0].arguments)
    head, *digest = table.HASH.read_text(encoding="utf-8").split()
    assert len(head) == 64 and int(digest[0]) >= 100_000, "the table has at least so many rows"


def test_the_scale_is_the_largest_value_that_rounding_touched() -> None:
    # A difference of two arguments is exact but for its own rounding; a third of a difference as well.
    assert work_out("speed_margin", {"rated_speed": 50.0, "top_speed": 49.0}).scale == 1
    # A quotient less one has the quotient's rounding, though little of it is left.
    change = work_out("circumference_change", {"base_circumference": 3.0, "trial_circumference": 3.0 + 2.0**-40})
    assert change.value < 1e-12 and change.scale > 1
    # A product carries what its factors had.
    small = Exact(mp.mpf("1e-6"), mp.mpf(1)) * Exact(mp.mpf(3))
    assert small.scale == 3
    # Near a right angle the arcsine carries more than its sine had.
    steep = work_out("run_angle", {"front_pitch_diameter": 1e-9, "rear_pitch_diameter": 1.0, "centre": 0.5000000005})
    assert 1e4 < steep.scale < 1e8
    assert isinstance(ls.formulas()[0].error_ulp, float)
