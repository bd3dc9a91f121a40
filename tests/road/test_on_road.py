# SPDX-License-Identifier: MIT
"""Top speed, hills, starts and runs, against scipy and against what must hold whatever the numbers."""

from __future__ import annotations

import math
import pickle
from typing import Any

import layshaft as ls
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import integrate, optimize

SPEEDS, TORQUES = (2500, 4000, 6000, 7500, 9200), (17.0, 21.0, 24.0, 23.0, 18.0)
PRIMARY, GEARS = 3.05, (2.7, 1.85, 1.42, 1.15, 0.96, 0.83)
G = 9.80665


def curve(factor: float = 1.0, **more: Any) -> ls.EngineCurve:
    return ls.EngineCurve([n * ls.rpm for n in SPEEDS], [factor * t * ls.Nm for t in TORQUES], **more)


def machine(**parts: Any) -> ls.Machine:
    return ls.Machine(
        name="Invented trail machine",
        gearbox=ls.Gearbox(primary=PRIMARY, gears=GEARS, idle="1400 rpm", rev_limit="9000 rpm", lowest_pull="2700 rpm"),
        adjuster=ls.Adjuster(centre_min="600 mm", centre_max="640 mm"),
        chain="520",
        speedometer="front wheel",
        stock=ls.Setup(front=13, rear=48, circumference="2020 mm"),
        **{
            "engine": ls.Engine(curve(), inertia="0.011 kg m2", braking="3 Nm"),
            "drive_efficiency": 0.92,
            "body": ls.Body(
                mass="225 kg",
                wheelbase="1430 mm",
                centre_ahead="670 mm",
                centre_height="840 mm",
                wheel_inertia="1.1 kg m2",
            ),
            **parts,
        },
    )


MACHINE = machine()
STOCK = MACHINE.stock


def road(constant: float = 45.0, linear: float = 0.2, quadratic: float = 0.33) -> ls.RoadLoad:
    return ls.RoadLoad(constant=constant * ls.N, linear=f"{linear!r} N s/m", quadratic=f"{quadratic!r} kg/m")


def setup(rear: int = 48) -> ls.Setup:
    return ls.Setup(front=13, rear=rear, circumference="2020 mm")


def ratio(gear: int, rear: int = 48) -> float:
    return PRIMARY * GEARS[gear - 1] * rear / 13


def thrust_by_hand(gear: int, v: float, rear: int = 48) -> float:
    """Straight lines between the points, by numpy's rules written out."""
    i = ratio(gear, rear)
    n = v / 2.02 * i * 60
    for (n0, t0), (n1, t1) in zip(
        zip(SPEEDS, TORQUES, strict=True), list(zip(SPEEDS, TORQUES, strict=True))[1:], strict=False
    ):
        if n0 <= n <= n1 * (1 + 1e-12):
            torque = t0 + (n - n0) / (n1 - n0) * (t1 - t0)
            return torque * i * 0.92 * 2 * math.pi / 2.02
    raise AssertionError(n)


def si(quantity: Any) -> float:
    for unit in (ls.mps, ls.N, ls.s, ls.m, ls.rad, ls.J):
        try:
            return quantity / unit
        except TypeError:
            continue
    raise AssertionError(quantity)


@pytest.mark.parametrize("gear", range(1, 7))
def test_thrust_is_torque_through_the_gears(gear: int) -> None:
    for rpm in (2600, 3300, 5500, 7000, 9000):
        v = rpm / 60 / ratio(gear) * 2.02
        told = ls.thrust(MACHINE, STOCK, gear, v * ls.mps)
        assert told.low == told.high
        assert told.nominal / ls.N == pytest.approx(thrust_by_hand(gear, v), rel=1e-12)


@settings(max_examples=60, deadline=None)
@given(
    st.floats(10, 400), st.floats(0, 2), st.floats(0.15, 1.5), st.integers(40, 56),
    st.sampled_from([0.0, 0.05, 0.15, -0.05]),
)  # fmt: skip
def test_top_speed_is_a_fixed_point_and_falls_when_drag_rises(
    constant: float, linear: float, quadratic: float, rear: int, slope: float
) -> None:
    there = road(constant, linear, quadratic)
    top = ls.top_speed(MACHINE, setup(rear), there, slope)
    if top.limit == "no gear pulls":
        assert top.gear is None
        assert top.speed.high == 0 * ls.mps
        for gear in range(1, 7):
            for rpm in range(2700, 9001, 450):
                v = rpm / 60 / ratio(gear, rear) * 2.02
                assert thrust_by_hand(gear, v, rear) < resistance(constant, linear, quadratic, v, slope)
        return
    assert top.gear is not None
    v = si(top.speed.nominal)
    excess = thrust_by_hand(top.gear, v, rear) - resistance(constant, linear, quadratic, v, slope)
    if top.limit == "power":
        assert excess == pytest.approx(0, abs=1e-8)
    else:
        assert top.gear == 6 or excess > 0
        assert v == pytest.approx(9000 / 60 / ratio(top.gear, rear) * 2.02, rel=1e-12)
        assert excess >= 0
    for other in range(1, 7):  # nothing faster holds in any gear
        for share in (1.002, 1.05):
            w = v * share
            if 2700 <= w / 2.02 * ratio(other, rear) * 60 <= 9000:
                assert thrust_by_hand(other, w, rear) < resistance(constant, linear, quadratic, w, slope)
    for more in (
        road(constant + 5, linear, quadratic),
        road(constant, linear + 0.1, quadratic),
        road(constant, linear, quadratic * 1.1),
    ):
        assert ls.top_speed(MACHINE, setup(rear), more, slope).speed.nominal <= top.speed.nominal


def resistance(constant: float, linear: float, quadratic: float, v: float, slope: float = 0.0) -> float:
    angle = math.atan(slope)
    return constant * math.cos(angle) + linear * v + quadratic * v * v + 225 * G * math.sin(angle)


def test_a_higher_gear_never_lowers_the_speed_that_revs_limit() -> None:
    easy = road(5, 0, 0.02)
    before = 0 * ls.mps
    for rear in range(56, 38, -1):
        top = ls.top_speed(MACHINE, setup(rear), easy)
        assert top.limit == "revs"
        assert top.speed.nominal > before
        before = top.speed.nominal


def test_shorter_gearing_does_not_cost_top_speed_one_for_one_where_wind_holds_it() -> None:
    windy = road(50, 0, 0.55)
    long, short = ls.top_speed(MACHINE, setup(46), windy), ls.top_speed(MACHINE, setup(50), windy)
    assert long.limit == "power"
    assert short.speed.nominal / long.speed.nominal > 0.985  # the ratio alone would say 0.92


def time_by_scipy(start: float, end: float, shift_time: float) -> tuple[float, float]:
    """Time and way in second and third gear, by scipy alone."""
    radius = 2.02 / (2 * math.pi)

    def rate(v: float, gear: int) -> float:
        mass = 225 + (1.1 + 0.011 * ratio(gear) ** 2 * 0.92) / radius**2
        return (thrust_by_hand(gear, v) - resistance(45, 0.2, 0.33, v)) / mass

    def pull(low: float, high: float, gear: int) -> tuple[float, float]:
        knots = sorted(n / 60 / ratio(gear) * 2.02 for n in SPEEDS)
        inner = [k for k in knots if low < k < high]
        time = integrate.quad(lambda v: 1 / rate(v, gear), low, high, points=inner or None, epsabs=1e-12)[0]
        way = integrate.quad(lambda v: v / rate(v, gear), low, high, points=inner or None, epsabs=1e-12)[0]
        return time, way

    top = 9000 / 60 / ratio(2) * 2.02
    first = pull(start, top, 2)
    moved = 225 + 1.1 / radius**2
    coast = integrate.solve_ivp(
        lambda _, y: (y[1], -resistance(45, 0.2, 0.33, y[1]) / moved), (0, shift_time), (0, top), rtol=1e-12, atol=1e-12
    )
    second = pull(coast.y[1, -1], end, 3)
    return first[0] + shift_time + second[0], first[1] + coast.y[0, -1] + second[1]


def test_time_to_speed_is_that_of_scipy() -> None:
    start, end = 40 / 3.6, 62 / 3.6
    run = ls.time_to_speed(MACHINE, STOCK, road(), "40 km/h", "62 km/h", shift_time="0.35 s")
    assert [shift.gear for shift in run.shifts] == [2]
    assert run.shifts[0].at_limit
    time, way = time_by_scipy(start, end, 0.35)
    assert run.time is not None
    assert run.distance is not None
    assert run.time.nominal / ls.s == pytest.approx(time, rel=1e-8)
    assert run.distance.nominal / ls.m == pytest.approx(way, rel=1e-8)


@settings(max_examples=40, deadline=None)
@given(
    st.floats(0, 60), st.floats(5, 40), st.floats(10, 120), st.floats(0.15, 0.6), st.floats(-0.1, 0.15), st.floats(0, 1),
    st.sampled_from([None, "loose gravel", "asphalt"]),
)  # fmt: skip
def test_energy_is_neither_made_nor_lost(
    start: float, more: float, constant: float, quadratic: float, slope: float, shift: float, ground: Any
) -> None:
    run = ls.time_to_speed(
        MACHINE, STOCK, road(constant, 0.1, quadratic), start * ls.kmh, (start + more) * ls.kmh,
        slope=slope, shift_time=shift * ls.s, ground=ground,
    )  # fmt: skip
    energy = run.energy
    if run.reaches:
        assert abs(energy.rest / energy.engine_work) < 1e-9
        assert run.time is not None
        assert run.time.low <= run.time.nominal <= run.time.high


def test_coasting_times_of_the_table() -> None:
    """40 CFR 86.529-98: from 70 to 60 km/h at 100, 200 and 300 kg."""
    for mass, seconds in ((100, 2.953), (200, 4.848), (300, 6.185)):
        told = ls.coast_down_time(ls.RoadLoad.by_mass(mass * ls.kg), mass * ls.kg, "70 km/h", "60 km/h")
        assert told / ls.s == pytest.approx(seconds, abs=5e-4)


def test_the_course_example_of_a_thrust_through_a_machine() -> None:
    """A vehicle dynamics course: 174 Nm at 3200 rpm, 1.46 x 3.944, 0.96, radius 0.2888 m: 3330.5 N at 60.5046 km/h."""
    car = ls.Machine(
        name="an example of a course",
        gearbox=ls.Gearbox(gears=[1.46], idle="800 rpm", rev_limit="6000 rpm"),
        adjuster=ls.Adjuster(centre_min="5 m", centre_max="6 m"),
        chain="520", speedometer="front wheel",
        stock=ls.Setup(front=125, rear=493, circumference=2 * math.pi * 0.2888 * ls.m),
        engine=ls.EngineCurve(["1000 rpm", "3200 rpm", "6000 rpm"], ["150 Nm", "174 Nm", "120 Nm"]),
        drive_efficiency=0.96,
    )  # fmt: skip
    speed = 3200 / 60 / (1.46 * 3.944) * 2 * math.pi * 0.2888 * ls.mps
    assert speed / ls.kmh == pytest.approx(60.5046, abs=5e-5)
    assert ls.thrust(car, car.stock, 1, speed).nominal / ls.N == pytest.approx(3330.5, abs=0.05)


def test_slopes_hold_against_the_road() -> None:
    here = ls.RoadLoad(constant="45 N", linear="0.2 N s/m", quadratic="0.33 kg/m", mass="225 kg")
    for gear, kmh in ((1, 20), (2, 30), (4, 60), (6, 90)):
        slope = ls.steepest_slope(MACHINE, STOCK, here, gear, kmh * ls.kmh).nominal
        assert here.resistance(kmh * ls.kmh, slope) / ls.N == pytest.approx(
            ls.thrust(MACHINE, STOCK, gear, kmh * ls.kmh).nominal / ls.N, abs=1e-8
        )
    best = ls.best_climb(MACHINE, STOCK, here, 3)
    found = optimize.minimize_scalar(
        lambda v: -(ls.steepest_slope(MACHINE, STOCK, here, 3, v * ls.mps).nominal / ls.rad),
        bounds=(6, 17),
        method="bounded",
        options={"xatol": 1e-11},
    )
    assert best.slope.nominal / ls.rad == pytest.approx(-found.fun, abs=1e-9)
    back = ls.steepest_descent(MACHINE, STOCK, here, 1, "12 km/h").nominal
    dragged = 3 * ratio(1) / 0.92 * 2 * math.pi / 2.02
    assert here.resistance("12 km/h", -1 * back) / ls.N == pytest.approx(-dragged, abs=1e-8)


def test_the_wheelie_problem_of_a_college_course() -> None:
    """A published problem: wheelbase 1.56 m, centre of mass midway and 0.775 m high, g 9.8: 9.86 m/s2."""
    body = ls.Body(mass="200 kg", wheelbase="1.56 m", centre_ahead="0.78 m", centre_height="0.775 m")
    limit = ls.thrust_limit(body, 5.0)
    assert limit.kind == "wheelie"
    assert limit.wheelie / ls.N / 200 * 9.8 / G == pytest.approx(9.8632, abs=5e-5)
    climb = ls.steepest_on_ground(body, "asphalt")
    assert climb.slope.low < climb.slope.nominal <= climb.slope.high


def test_the_diagram_has_every_gear_and_what_is_left() -> None:
    diagram = ls.thrust_diagram(MACHINE, STOCK, road(), slope=0.05, points=9)
    assert [len(line) for line in diagram] == [9] * 6
    for gear, line in enumerate(diagram, 1):
        for point in line:
            v = point.speed / ls.mps
            assert point.thrust.nominal / ls.N == pytest.approx(thrust_by_hand(gear, v), rel=1e-12)
            assert point.resistance / ls.N == pytest.approx(resistance(45, 0.2, 0.33, v, 0.05), rel=1e-12)
            assert point.excess == point.thrust.nominal - point.resistance


def test_an_appraisal_carries_the_road() -> None:
    here = machine(road_load=ls.RoadLoad.by_mass("225 kg"))
    told = ls.appraise(here, here.stock)
    assert told.road == ls.on_road(here, here.stock)
    assert told.road is not None
    assert told.road.top_speed == ls.top_speed(here, here.stock, ls.RoadLoad.by_mass("225 kg"))
    assert told.road.road_load == "mass table"
    assert "road_load_by_mass_alone" in [caution.code for caution in told.cautions]
    assert ls.appraise(MACHINE, STOCK).road is None  # no road load is stated
    comparison = ls.compare(here, here.stock, setup(50))
    assert comparison.base.road != comparison.trial.road
    over = told.downshift(1, "60 km/h")
    assert over.over_revs
    assert over.engine_speed == told.engine_speed_at("60 km/h", 1)


ANSWERS = {
    "top speed": ls.top_speed(MACHINE, STOCK, road()),
    "climb": ls.best_climb(MACHINE, STOCK, road(), 2),
    "start": ls.standing_start(MACHINE, STOCK, road(), slope=0.2),
    "stuck": ls.standing_start(MACHINE, STOCK, road(), slope=60 * ls.deg),
    "run": ls.time_to_speed(MACHINE, STOCK, road(), "0 km/h", "60 km/h"),
    "shift": ls.shift_points(MACHINE, STOCK)[0],
    "ground": ls.steepest_on_ground(MACHINE.body, "gravel"),  # type: ignore[arg-type]
    "steps": ls.gear_stepping(MACHINE.gearbox),
    "engine": ls.Engine(
        ls.estimate_engine(torque="24 Nm", torque_speed="6000 rpm", power="19 kW", power_speed="8500 rpm",
                           lowest="2000 rpm", highest="9100 rpm"),
        inertia="0.01 kg m2", braking=ls.Band(1 * ls.Nm, 2 * ls.Nm, 4 * ls.Nm), clutch_torque="40 Nm", start_speed="3000 rpm",
    ),
    "machine": machine(road_load=ls.RoadLoad.from_parts(mass="225 kg", surface="gravel", machine="motorcycle")),
    "thin air": ls.in_air(machine(road_load=ls.RoadLoad.by_mass("225 kg")), ls.air_at("2400 m")),
    "road": ls.on_road(machine(road_load=ls.RoadLoad.by_mass("225 kg")), STOCK),
}  # fmt: skip


@pytest.mark.parametrize("what", ANSWERS)
def test_answers_are_values(what: str) -> None:
    value = ANSWERS[what]
    assert eval(repr(value), vars(ls).copy()) == value
    assert pickle.loads(pickle.dumps(value)) == value
    assert hash(pickle.loads(pickle.dumps(value))) == hash(value)
    if isinstance(value, ls.Machine):
        assert ls.Machine.from_json(value.to_json()) == value


BAD: list[tuple[Any, type[Exception], str]] = [
    (lambda: ls.thrust(MACHINE, STOCK, 7, "20 km/h"), ls.RangeError, "gear is 7; expected 1 to 6"),
    (lambda: ls.thrust(MACHINE, STOCK, 1, "90 km/h"), ls.RangeError, "speed in gear 1 is 90 km/h"),
    (lambda: ls.thrust(MACHINE, STOCK, 1, math.nan * ls.mps), ls.RangeError, "not a number"),
    (lambda: ls.thrust(machine(engine=None), STOCK, 1, "20 km/h"), ls.Error, "states no engine"),
    (lambda: ls.top_speed(MACHINE, STOCK, 30), TypeError, "road"),  # type: ignore[arg-type]
    (lambda: ls.top_speed(MACHINE, STOCK, road(), slope=90 * ls.deg), ls.RangeError, "short of the vertical"),
    (lambda: ls.top_speed(machine(body=None), STOCK, road(), slope=0.1), ls.Error, "mass"),
    (lambda: ls.time_to_speed(MACHINE, STOCK, road(), "50 km/h", "30 km/h"), ls.RangeError, "end is 30 km/h"),
    (lambda: ls.time_to_speed(MACHINE, STOCK, road(), "0 km/h", "30 km/h", ground="ice"), ls.RangeError, "loose gravel"),  # type: ignore[arg-type]
    (lambda: ls.Body(mass="0 kg"), ls.RangeError, "mass is 0 kg"),
    (lambda: ls.EngineCurve(["3000 rpm"], ["20 Nm"]), ls.RangeError, "number of points is 1"),
    (lambda: ls.EngineCurve(["3000 rpm", "3000 rpm"], ["20 Nm", "21 Nm"]), ls.RangeError, "speed 2 is 3000 rpm"),
    (lambda: ls.EngineCurve(["-1 rpm", "3000 rpm"], ["20 Nm", "21 Nm"]), ls.RangeError, "speed 1 is -1 rpm"),
    (lambda: machine(engine=3), TypeError, "engine"),
    (lambda: machine(drive_efficiency=1.3), ls.RangeError, "drive_efficiency is 1.3"),
    (lambda: machine(engine=curve(measured_at="rear wheel")), ls.Error, "loss in it already"),
    (lambda: ls.explain(MACHINE, STOCK, "top speed"), ls.Error, "road load"),
    (lambda: ls.explain(MACHINE, STOCK, "thrust", gear=1), ls.Error, "the speed"),
]  # fmt: skip


@pytest.mark.parametrize("bad", BAD, ids=lambda bad: bad[2])
def test_bad_input_says_what_is_wrong(bad: tuple[Any, type[Exception], str]) -> None:
    question, kind, words = bad
    with pytest.raises(kind) as told:
        question()
    assert words in str(told.value)
