# SPDX-License-Identifier: MIT
"""Comparisons: what must hold whatever the numbers, and what riders say."""

from __future__ import annotations

from pathlib import Path

import layshaft as ls
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

MACHINES = Path(__file__).resolve().parents[2] / "examples" / "machines"
MACHINE = ls.Machine.from_json((MACHINES / "trail_bike.json").read_text(encoding="utf-8"))

tyres = st.builds(
    lambda width, aspect, use: ls.TyreSize(f"{width}/{aspect}-18", use),
    st.sampled_from(range(80, 160, 10)),
    st.sampled_from([70, 80, 90, 100]),
    st.sampled_from(["road", "special"]),
)
setups = st.builds(
    lambda front, rear, tyre: ls.Setup(front=front, rear=rear, tyre=tyre, links=110),
    st.integers(12, 16), st.integers(44, 54), tyres,
)  # fmt: skip


def width(band: ls.Band) -> float:
    return band.high - band.low


@settings(max_examples=200)
@given(base=setups, trial=setups)
def test_thrust_and_speed_are_two_sides_of_one_change(base: ls.Setup, trial: ls.Setup) -> None:
    comparison = ls.compare(MACHINE, base, trial)
    thrust, speed, revs = comparison.thrust_change, comparison.speed_change, comparison.engine_speed_change
    assert (1 + thrust.nominal) * (1 + speed.nominal) == pytest.approx(1.0, rel=1e-14)
    assert (1 + thrust.low) * (1 + speed.high) == pytest.approx(1.0, rel=1e-14)
    assert (1 + thrust.high) * (1 + speed.low) == pytest.approx(1.0, rel=1e-14)
    assert revs.nominal == pytest.approx(thrust.nominal, rel=1e-12, abs=1e-14)
    assert sum(one.points.nominal for one in comparison.thrust_contributions) == pytest.approx(
        thrust.nominal, abs=1e-14
    )


@settings(max_examples=200)
@given(setup=setups, front=st.integers(12, 16), rear=st.integers(44, 54))
def test_the_same_tyre_on_both_sides_leaves_no_width(setup: ls.Setup, front: int, rear: int) -> None:
    trial = ls.Setup(front=front, rear=rear, tyre=setup.tyre, links=110)
    comparison = ls.compare(MACHINE, setup, trial)
    for band in (
        comparison.thrust_change, comparison.speed_change, comparison.engine_speed_change, comparison.indicated_ratio,
        comparison.wear.chain_tension_change, comparison.wear.front_contacts_change,
    ):  # fmt: skip
        assert width(band) == 0.0
    assert comparison.wear.rear_contacts_change == ls.Band(0.0, 0.0, 0.0)


@settings(max_examples=100)
@given(base=setups, trial=setups)
def test_a_comparison_turned_round_is_its_inverse(base: ls.Setup, trial: ls.Setup) -> None:
    there, back = ls.compare(MACHINE, base, trial).thrust_change, ls.compare(MACHINE, trial, base).thrust_change
    assert (1 + there.low) * (1 + back.high) == pytest.approx(1.0, rel=1e-14)
    assert (1 + there.high) * (1 + back.low) == pytest.approx(1.0, rel=1e-14)


def compare_tyres(base: str, trial: str, use: str) -> ls.Comparison:
    setups = [ls.Setup(front=14, rear=44, tyre=tyre, links=110) for tyre in (base, ls.TyreSize(trial, use))]
    return ls.compare(MACHINE, *setups)


def test_a_tyre_one_size_up_with_tall_knobs_costs_about_six_per_cent() -> None:
    """Common practice, no source. The marking alone says -2.7 %."""
    knobs = compare_tyres("110/90-18", "120/90-18", "special").thrust_change
    road = compare_tyres("110/90-18", "120/90-18", "road").thrust_change
    assert knobs.nominal == pytest.approx(655.0 / 673.0 - 1.0, abs=1e-12)
    assert knobs.nominal == pytest.approx(-0.027, abs=0.0005)
    assert -0.06 in knobs
    assert -0.06 not in road
    # The new tyre at its largest against the old one as marked.
    old = ls.TyreSize("110/90-18").overall_diameter.nominal
    for use, expected in (("special", -0.063), ("road", -0.048)):
        largest = ls.TyreSize("120/90-18", use).overall_diameter.high
        change = old / largest - 1.0
        assert change == pytest.approx(expected, abs=0.0005)
        assert change in compare_tyres("110/90-18", "120/90-18", use).thrust_change


def test_teeth_change_thrust_as_riders_say() -> None:
    """Common practice, no source: 14 to 13 in front is about 40 to 43 behind; one more in 40 is about 2 % (exactly 2.5)."""
    assert ls.thrust_change(40 / 14, "2 m", 41 / 14, "2 m") == pytest.approx(0.025, abs=1e-15)
    assert ls.thrust_change(40 / 14, "2 m", 40 / 13, "2 m") == pytest.approx(43 / 40 - 1, abs=0.005)
    assert ls.equivalent_rear(13, 43, 14) == pytest.approx(46, abs=0.5)


def test_a_measured_rollout_narrows_every_band() -> None:
    marked = ls.Setup(front=13, rear=50, tyre="120/90-18", links=110)
    measured = ls.Setup(
        front=13, rear=50, tyre="120/90-18", circumference=ls.Band(2075 * ls.mm, 2080 * ls.mm, 2085 * ls.mm), links=110
    )
    base = ls.Setup(front=13, rear=48, circumference="2000 mm", links=110)
    by_marking = ls.compare(MACHINE, base, marked).thrust_change
    by_rollout = ls.compare(MACHINE, base, measured).thrust_change
    assert width(by_rollout) < 0.1 * width(by_marking)


def test_a_front_wheel_sensor_minds_only_the_front_tyre() -> None:
    farm = ls.Machine.from_json((MACHINES / "farm_bike.json").read_text(encoding="utf-8"))
    stock = farm.stock
    taller = ls.Setup(front=15, rear=46, tyre="3.00-17", front_tyre=stock.front_tyre)
    assert ls.compare(farm, stock, taller).indicated_ratio == ls.Band(1.0, 1.0, 1.0)
    both = ls.Setup(front=15, rear=46, tyre="3.00-17", front_tyre="2.75-17")
    assert ls.compare(farm, stock, both).indicated_ratio.nominal < 0.98


def test_an_odd_chain_is_refused_by_its_caution_on_a_motorcycle_only() -> None:
    cycle = ls.Machine.from_json((MACHINES / "cargo_cycle.json").read_text(encoding="utf-8"))
    for machine, odd, refused in ((MACHINE, 111, True), (cycle, 101, False)):
        stock = machine.stock
        setup = ls.Setup(
            front=stock.front, rear=stock.rear, tyre=stock.tyre, circumference=stock.circumference, links=odd
        )
        appraisal = ls.appraise(machine, setup)
        assert appraisal.chain.offset_link
        assert any(caution.code == "offset_link" for caution in appraisal.cautions) == refused


def test_cautions_speak_in_both_systems() -> None:
    comparison = compare_tyres("110/90-18", "120/90-18", "special")
    for caution in comparison.cautions:
        for units in ("metric", "us"):
            text = caution.sentence(units)
            assert text.endswith(".") and "{" not in text
    assert any("manual" in str(caution) for caution in comparison.cautions)
