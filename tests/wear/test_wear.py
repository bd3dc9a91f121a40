# SPDX-License-Identifier: MIT
"""Wear against a walk round the loop, bench tests, and what must hold whatever the numbers."""

from __future__ import annotations

import csv
import math
import pickle
from pathlib import Path
from typing import Any

import layshaft as ls
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

REFERENCE = Path(__file__).resolve().parents[1] / "reference"
MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
teeth = st.integers(10, 60)
even_links = st.integers(30, 80).map(lambda n: 2 * n)


@given(teeth, even_links)
def test_hunting_is_that_of_a_walk_round_the_loop(count: int, links: int) -> None:
    met: set[int] = set()
    pitches = 0
    while True:
        met.add(pitches % links)
        pitches += count
        if pitches % links == 0:
            break
    told = ls.hunting(count, links)
    assert told.passes == pitches // links == math.lcm(count, links) // links
    assert told.distinct_links == len(met)
    kinds = len({link % 2 for link in met})
    # Tooth t meets the same links as the first one, shifted by t.
    sees = [{(link + tooth) % links % 2 for link in met} for tooth in range(count)]
    assert told.inner_only == sees.count({0}) / count and told.outer_only == sees.count({1}) / count
    assert told.link_kinds == kinds
    assert told.evenness == pytest.approx(len(met) / links * kinds / 2, rel=1e-15)


@given(st.integers(10, 20), st.integers(30, 60), even_links, st.floats(0, 0.1))
def test_better_hunting_is_better_and_near(front: int, rear: int, links: int, within: float) -> None:
    def evenness(a: int, b: int) -> float:
        return ls.hunting(a, links).evenness * ls.hunting(b, links).evenness

    found = ls.better_hunting(front, rear, links, within)
    expected = {
        (front + i, rear + j)
        for i in range(-3, 4)
        for j in range(-3, 4)
        if abs((rear + j) / (front + i) / (rear / front) - 1) <= within
        and evenness(front + i, rear + j) > evenness(front, rear)
    }
    assert {(pair.front, pair.rear) for pair in found} == expected
    ranks = [evenness(pair.front, pair.rear) for pair in found]
    assert ranks == sorted(ranks, reverse=True)


def test_the_bench_rows_are_reproduced() -> None:
    """GOST 13568-97, Appendix V: the four rows that carry a pressure, at their own specific wear, to a per cent."""
    names = {"PR-8-4.6": "05B", "PR-9.525-9.1": "06B", "PR-12.7-18.2": "08B", "PR-15.875-23": "10B"}
    rows = 0
    with (REFERENCE / "chain_wear_test.csv").open(encoding="utf-8") as file:
        for row in csv.DictReader(file):
            if not row["bearing_pressure_N_mm2"]:
                continue
            series = ls.ChainSeries(names[row["chain"]])
            assert series.inner_link_width is not None
            assert series.pin_diameter is not None
            load = 10 * float(row["load_daN"]) * ls.N
            pressure = ls.bearing_pressure(load, series.pin_diameter, series.inner_link_width)
            assert pressure / ls.MPa == pytest.approx(float(row["bearing_pressure_N_mm2"]), abs=0.005)
            resistance = 1 / float(row["specific_wear_mm2_per_N_upper_bound"]) * ls.MPa
            depth = ls.joint_wear(
                load, 0 * ls.N, int(row["z_driver"]), int(row["z_driven"]), series.inner_link_width, resistance
            )
            grown = ls.stretch_of_wear(float(row["loop_passes_in_mean_life"]), depth, series.pitch)
            assert 100 * grown == pytest.approx(float(row["limit_elongation_percent"]), rel=0.01)
            rows += 1
    assert rows == 4


def test_elongation_limits() -> None:
    """Makers' manuals and catalogues give 1.7 to 2 per cent; 200/N governs only above a hundred teeth."""
    with (REFERENCE / "chain_elongation_limit.csv").open(encoding="utf-8") as file:
        limits = [row["limit_percent"] for row in csv.DictReader(file)]
    assert "2.0" in limits
    assert ls.stretch_limit(50, 0.05) == ls.StretchLimit(elongation=0.02, kind="maker's limit")
    assert ls.stretch_limit(50, 0.01).kind == "adjuster"
    assert ls.stretch_limit(110, 0.05).kind == "largest sprocket"
    assert ls.stretch_limit(110, 0.05).elongation == pytest.approx(2 / 110)


@settings(max_examples=50, deadline=None)
@given(st.integers(11, 16), st.integers(1, 3), st.sampled_from([3, 4]))
def test_one_ratio_on_larger_sprockets_never_wears_faster(front: int, step: int, ratio: int) -> None:
    series = "520"
    rear, larger = ratio * front, ls.ChainLoop(series, front + step, ratio * (front + step))
    smaller = ls.ChainLoop(series, front, rear)

    def growth(loop: ls.ChainLoop) -> float:
        # at one centre distance the exact loop, not whole links, so that only the sprockets change
        links = loop.links("650 mm")
        pitch = ls.ChainSeries(series).pitch
        pull = 100 * ls.N * (2 * ls.m / (math.pi * ls.Sprocket(series, loop.rear).pitch_diameter))
        depth = ls.joint_wear(pull, 0 * ls.N, loop.front, loop.rear, "10 mm", 1e9 * ls.MPa)
        return loop.rear / links * (depth / pitch)

    assert growth(larger) < growth(smaller)


def machine() -> ls.Machine:
    text = (MACHINES / "trail_bike.json").read_text(encoding="utf-8")
    return ls.Machine.from_json(text)


def test_weights_are_none_against_itself_and_go_with_hardness() -> None:
    bike = machine()
    same = ls.compare(bike, bike.stock, bike.stock).wear
    for change in (same.chain_stretch_change, same.front_tooth_change, same.rear_tooth_change, same.loss_change):
        assert change == ls.Band(0.0, 0.0, 0.0)

    def of(material: Any) -> ls.Setup:
        stock = bike.stock
        return ls.Setup(front=stock.front, rear=stock.rear, tyre=stock.tyre, rear_material=material)

    wear = ls.compare(bike, of("hardened steel"), of("aluminium 7000")).wear
    hard, soft = ls.hardness("hardened steel"), ls.hardness("aluminium 7000")
    assert wear.rear_tooth_change.nominal == pytest.approx(hard.nominal / soft.nominal - 1, rel=1e-12)
    assert wear.rear_tooth_change.low == pytest.approx(hard.low / soft.high - 1, rel=1e-12)
    assert wear.front_tooth_change.nominal == 0.0
    back = ls.Setup.from_json(of("aluminium 6000").to_json())
    assert back == of("aluminium 6000")
    assert eval(repr(back), vars(ls).copy()) == back
    assert pickle.loads(pickle.dumps(back)) == back


def test_the_fit_is_numpys_line() -> None:
    pitch = 15.875 * ls.mm
    ways = np.array([500.0, 1800.0, 3100.0, 5200.0])
    grown = np.array([0.0004, 0.0015, 0.0022, 0.0041])
    measured = [
        ls.StretchMeasurement(float(w) * ls.km, 20 * pitch * (1 + float(g)), 20)
        for w, g in zip(ways, grown, strict=True)
    ]
    fit = ls.fit_stretch(pitch, measured, "0.2 mm")
    slope, start = np.polyfit(ways, grown, 1)
    assert fit.per_1000_km.nominal == pytest.approx(1000 * slope, rel=1e-9)
    assert fit.now.nominal == pytest.approx(start + slope * ways[-1], rel=1e-9)
    left = fit.distance_left(0.02)
    assert left.nominal / ls.km == pytest.approx((0.02 - fit.now.nominal) / slope, rel=1e-9)
    assert left.low < left.nominal


def test_an_outlook_of_a_ride_takes_its_mean_thrust() -> None:
    bike = machine()
    stated = ls.wear_outlook(bike, bike.stock, 100 * ls.N)
    twice = ls.wear_outlook(bike, bike.stock, 200 * ls.N)
    assert stated.thrust_from == "stated"
    # the centrifugal pull, which stands in both runs, does not double
    around = ls.rolling_circumference(bike.stock.tyre).nominal  # type: ignore[arg-type]
    pull = 100 * ls.N * (around / (math.pi * ls.Sprocket("520", bike.stock.rear).pitch_diameter))
    chain_speed = 60 * ls.kmh * (bike.stock.rear * bike.chain.pitch / around)
    mass = bike.stock.chain_made.mass_per_length
    assert mass is not None
    both = 2 * (ls.centrifugal_tension(mass, chain_speed) / ls.N)
    expected = (2 * (pull / ls.N) + both) / (pull / ls.N + both)
    assert twice.stretch_per_1000_km.nominal / stated.stretch_per_1000_km.nominal == pytest.approx(expected, rel=1e-9)
    assert ls.wear_outlook(bike, bike.stock).thrust_from == "road load"
    for value in (stated, stated.limit, ls.hunting(13, 110), ls.better_hunting(14, 42, 112)[0]):
        assert eval(repr(value), vars(ls).copy()) == value
        assert pickle.loads(pickle.dumps(value)) == value


BAD: list[tuple[Any, type[Exception], str]] = [
    (lambda: ls.better_hunting(14, 42, 112, within=0.7), ls.RangeError, "within is 0.7"),
    (lambda: ls.better_hunting(14, 42, 112, reach=0), ls.RangeError, "reach is 0"),
    (lambda: ls.hardness("wood"), ls.RangeError, "'aluminium 7000'"),  # type: ignore[arg-type]
    (lambda: ls.fit_stretch("15.875 mm", []), ls.RangeError, "at least 2"),
    (lambda: ls.chain_stretch(ls.ChainLoop("520", 13, 48), 110, 0 * ls.N, "2 m"), ls.RangeError, "thrust is 0 N"),
    (lambda: ls.wear_outlook(machine(), machine().stock, makers_limit=0.5), ls.RangeError, "makers is 0.5"),
    (lambda: ls.stretch_limit(48, 0.02, -1.0), ls.RangeError, "makers is -1"),
    (lambda: ls.Setup(front=13, rear=48, tyre="120/80-18", rear_material="tin"), ls.RangeError, "'hardened steel'"),  # type: ignore[arg-type]
]  # fmt: skip


@pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad[2])
def test_bad_input_says_what_is_wrong(bad: tuple[Any, type[Exception], str]) -> None:
    question, kind, words = bad
    with pytest.raises(kind) as told:
        question()
    assert words in str(told.value)
