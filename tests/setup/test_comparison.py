# SPDX-License-Identifier: MIT
"""Comparisons: what must hold whatever the numbers, and what riders say."""

from __future__ import annotations

from pathlib import Path

import layshaft as ls
import mpmath
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
    for what, change in (("thrust", thrust), ("speed", speed), ("engine speed", revs)):
        contributions = comparison.contributions(what)
        assert list(contributions) == ["tyre", "front sprocket", "rear sprocket"]
        assert sum(points.nominal for points in contributions.values()) == pytest.approx(change.nominal, abs=1e-14)


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


def worn(setup: ls.Setup, tread_worn: float, efficiency: float | None) -> ls.Setup:
    return ls.Setup(
        front=setup.front, rear=setup.rear, tyre=setup.tyre, links=110, tread_worn=tread_worn * ls.mm, drive_efficiency=efficiency
    )  # fmt: skip


@settings(max_examples=200)
@given(
    base=setups, trial=setups, tread=st.tuples(st.floats(0.0, 8.0), st.floats(0.1, 8.0)),
    loss=st.tuples(st.floats(0.8, 1.0), st.floats(0.8, 1.0)),
)  # fmt: skip
def test_wear_and_drive_loss_are_causes_where_they_count(
    base: ls.Setup, trial: ls.Setup, tread: tuple[float, float], loss: tuple[float, float]
) -> None:
    comparison = ls.compare(MACHINE, worn(base, tread[0], loss[0]), worn(trial, tread[1], loss[1]))
    for what, change, causes in (
        ("thrust", comparison.thrust_change, ["tyre", "front sprocket", "rear sprocket", "wear", "drive loss"]),
        ("speed", comparison.speed_change, ["tyre", "front sprocket", "rear sprocket", "wear"]),
        ("engine_speed", comparison.engine_speed_change, ["tyre", "front sprocket", "rear sprocket", "wear"]),
    ):
        contributions = comparison.contributions(what)
        assert list(contributions) == causes
        assert sum(points.nominal for points in contributions.values()) == pytest.approx(change.nominal, abs=1e-14)
        # No cause takes where its own factor gives.
        for cause, before, after in (
            ("front sprocket", trial.front, base.front), ("rear sprocket", base.rear, trial.rear),
        ):  # fmt: skip
            gives = (after - before) * (-1 if what == "speed" else 1)
            assert contributions[cause].nominal * gives > 0.0 or (before == after and contributions[cause].width == 0.0)
    # A loss that only one of both states does not count.
    alone = ls.compare(MACHINE, worn(base, 0.0, None), worn(trial, 0.0, loss[1]))
    assert list(alone.contributions("thrust")) == ["tyre", "front sprocket", "rear sprocket"]
    assert alone.thrust_change == ls.compare(MACHINE, base, trial).thrust_change


def test_the_parts_of_a_change_add_up_where_plain_shares_do_not() -> None:
    """Arithmetic: ln(1/1.06) and ln(45/40) times (F - 1)/ln F, worked out with mpmath at fifty digits."""
    base = ls.Setup(front=14, rear=40, circumference="2000 mm", links=116)
    trial = ls.Setup(front=14, rear=45, circumference="2120 mm", links=116)
    comparison = ls.compare(MACHINE, base, trial)
    points = comparison.contributions("thrust")
    with mpmath.workdps(50):
        tyre, rear = 1 / mpmath.mpf("1.06"), mpmath.mpf(45) / 40
        mean = (tyre * rear - 1) / mpmath.log(tyre * rear)
        assert points["tyre"].nominal == pytest.approx(float(mean * mpmath.log(tyre)), abs=1e-15)
        assert points["rear sprocket"].nominal == pytest.approx(float(mean * mpmath.log(rear)), abs=1e-15)
    assert (round(100 * points["tyre"].nominal, 2), round(100 * points["rear sprocket"].nominal, 2)) == (-6.0, 12.14)
    assert comparison.thrust_change.nominal == pytest.approx(0.0613, abs=0.00005)


def test_wear_gives_thrust_and_takes_speed() -> None:
    setup = ls.Setup(front=13, rear=48, tyre="120/80-18", links=110)
    comparison = ls.compare(MACHINE, setup, worn(setup, 5.0, None))
    diameter = setup.tyre.overall_diameter.nominal
    exact = diameter / ls.worn_diameter(diameter, "5 mm") - 1.0
    assert comparison.thrust_change.nominal == pytest.approx(exact, rel=1e-12)
    assert comparison.contributions("thrust")["wear"].nominal == pytest.approx(exact, rel=1e-12)
    assert comparison.contributions("speed")["wear"].nominal == pytest.approx(-exact / (1.0 + exact), rel=1e-12)
    assert comparison.contributions("thrust")["tyre"] == ls.Band(0.0, 0.0, 0.0)


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
