# SPDX-License-Identifier: MIT
"""Ride logs and profiles: numpy's integrals, text that is wrong, pickles."""

from __future__ import annotations

import pickle
from pathlib import Path

import layshaft as ls
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

RATIOS = [30.0, 20.0, 15.0]
RULE = ls.ShiftRule(["20 km/h", "40 km/h"], ["12 km/h", "30 km/h"])


def invented(samples: int = 5000, seed: int = 1) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    row = np.random.default_rng(seed)
    t = np.cumsum(row.uniform(0.05, 0.2, samples))
    speed = np.maximum(0.0, 33 + 30 * np.sin(0.02 * t) + 5 * np.sin(0.3 * t) + row.normal(0.0, 0.2, samples))
    return t, speed, 500 + 40 * np.sin(0.01 * t) + row.normal(0.0, 0.05, samples)


def test_a_log_adds_up_as_numpy_adds_it() -> None:
    t, speed, height = invented()
    use = ls.ride_use(ls.RideLog(time_s=t, speed_kmh=speed, height_m=height), RATIOS, "2 m", RULE)
    mean, dt = (speed[1:] + speed[:-1]) / 2, np.diff(t)
    moving = mean >= 0.5
    assert use.distance / ls.m == pytest.approx((mean * dt)[moving].sum() / 3.6, rel=1e-9)
    assert use.time / ls.s == pytest.approx(dt[moving].sum(), rel=1e-9)
    assert use.standstill / ls.s == pytest.approx(dt[~moving].sum(), rel=1e-9, abs=1e-9)
    assert use.climbed / ls.m == pytest.approx(np.maximum(np.diff(height), 0).sum(), rel=1e-9)
    assert sum(one / ls.s for one in use.time_in_gear) == pytest.approx(use.time / ls.s, rel=1e-9)
    # The gear by a rule of two lines, and the engine's classes by numpy's histogram.
    gear, gears = 1, []
    for v in mean:
        while gear < 3 and v >= (20, 40)[gear - 1]:
            gear += 1
        while gear > 1 and v < (12, 30)[gear - 2]:
            gear -= 1
        gears.append(gear)
    held = np.array(gears)
    for number in (1, 2, 3):
        assert use.time_in_gear[number - 1] / ls.s == pytest.approx(dt[moving & (held == number)].sum(), rel=1e-9)
    rpm = mean / 3.6 / 2.0 * np.array(RATIOS)[held - 1] * 60.0
    classes, _ = np.histogram(rpm[moving], bins=80, range=(0.0, 20000.0), weights=dt[moving])
    assert [one / ls.s for one in use.engine_speeds] == pytest.approx(classes.tolist(), rel=1e-9, abs=0.21)
    assert pickle.loads(pickle.dumps(use)) == use


def test_a_log_reads_from_text_and_pickles() -> None:
    t, speed, height = invented(50)
    text = "time_s;speed_kmh;height_m\r\n" + "".join(
        f"{a!r};{b!r};{c!r}\r\n" for a, b, c in zip(t.tolist(), speed.tolist(), height.tolist(), strict=True)
    )
    log = ls.read_ride_log(text)
    assert log == ls.RideLog(time_s=t, speed_kmh=speed, height_m=height)
    assert log.samples == 50 and log.engine_rpm == () and log.time_s == pytest.approx(t.tolist())
    again = pickle.loads(pickle.dumps(log))
    assert again == log and hash(again) == hash(log) and "50 samples" in repr(log)


@given(text=st.text(max_size=60), start=st.sampled_from(["", "time_s,speed_kmh\n", "time_s,speed_kmh\n0,1\n"]))
def test_whatever_text_comes_is_a_log_or_an_error_of_words(text: str, start: str) -> None:
    try:
        assert ls.read_ride_log(start + text).samples >= 2
    except ls.Error as error:
        assert str(error)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "empty"),
        ("1,2\n", "names no column time_s"),
        ("time_s,speed_kmh\n0,\n", "line 2, speed_kmh: the cell is empty"),
        ("time_s,speed_kmh\n0,1\n2,1\n1,1\n", "time 3 is 1 s; expected more than the 2 s before it"),
        ("time_s,speed_kmh\n0,1\n1,-1\n", "speed 2 is -1 km/h"),
    ],
)
def test_a_bad_log_names_its_place(text: str, words: str) -> None:
    with pytest.raises(ls.Error) as error:
        ls.read_ride_log(text)
    assert words in str(error.value)


def test_a_profile_rides_its_shares() -> None:
    profile = ls.RideProfile([
        ls.RideShare("technical", 0.25, "8 km/h", slope=0.1, gear=2),
        ls.RideShare("highway", 0.75, "80 km/h"),
    ])  # fmt: skip
    use = ls.ride_use(profile, RATIOS, "2 m", RULE, ridden="4 h")
    assert [time / ls.hour for time in use.time_in_gear] == pytest.approx([0.0, 1.0, 3.0])
    assert use.distance / ls.km == pytest.approx(8.0 + 240.0)
    assert profile.mean_speed / ls.kmh == pytest.approx(62.0)
    assert pickle.loads(pickle.dumps(use)) == use
    for wrong, words in (
        (lambda: ls.RideProfile([ls.RideShare("trail", 0.5, "8 km/h")]), "sum of the shares is 0.5"),
        (lambda: ls.RideShare("mud", 0.5, "8 km/h"), "'technical', 'trail', 'gravel road', 'highway'"),
        (lambda: ls.ride_use(profile, [30.0], "2 m", RULE, ridden="4 h"), "number of overall ratios is 1; expected 3"),
        (
            lambda: ls.ride_use(ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1]), RATIOS, "2 m", RULE, ridden="1 h"),
            "RideLog knows",
        ),
    ):
        with pytest.raises(ls.Error, match=words.replace("(", r"\(")):
            wrong()
    with pytest.raises(TypeError, match="ridden"):
        ls.ride_use(profile, RATIOS, "2 m", RULE)


ROAD = ls.RoadLoad(constant="40 N", quadratic=0.4 * ls.kg_per_m, mass="230 kg")


@pytest.mark.parametrize("spell", [0.0, 2.0, 30.0])
def test_the_work_at_the_wheel_is_what_numpy_sums(spell: float) -> None:
    t, speed, height = invented()
    t = np.where(t > 200.0, t + 60.0, t)  # a gap
    log = ls.RideLog(time_s=t, speed_kmh=speed, height_m=height)
    use = ls.ride_use(log, RATIOS, "2 m", RULE, load=ls.RideLoad(road=ROAD, mass="230 kg", spell=spell * ls.s))
    v, dt = speed / 3.6, np.diff(t)
    mean = (v[1:] + v[:-1]) / 2
    work = (40 + 0.4 * mean**2) * mean * dt + 230 * np.diff(v**2) / 2 + 230 * 9.80665 * np.diff(height)
    counts = (dt <= 10.0) & (mean >= 0.5 / 3.6)
    gear, gears = 1, []
    for one in mean[dt <= 10.0] * 3.6:
        while gear < 3 and one >= (20, 40)[gear - 1]:
            gear += 1
        while gear > 1 and one < (12, 30)[gear - 2]:
            gear -= 1
        gears.append(gear)
    held = np.zeros(len(dt), int)
    held[dt <= 10.0] = gears
    driven, back = np.zeros(4), 0.0
    places = np.flatnonzero(counts).tolist()
    while places:  # a spell ends with its time, its gear, and where a stretch is left out
        here = [places.pop(0)]
        while dt[here].sum() < spell and places and places[0] == here[-1] + 1 and held[places[0]] == held[here[0]]:
            here.append(places.pop(0))
        if (total := work[here].sum()) > 0:
            driven[held[here[0]]] += total
        else:
            back -= total
    assert use.wheel_work is not None and use.wheel_work_in_gear is not None and use.held_back is not None
    assert [one / ls.J for one in use.wheel_work_in_gear] == pytest.approx(driven[1:].tolist(), rel=1e-9)
    assert use.wheel_work / ls.J == pytest.approx(driven.sum(), rel=1e-9)
    assert use.held_back / ls.J == pytest.approx(back, rel=1e-9)
    assert pickle.loads(pickle.dumps(use)) == use
    bare = ls.ride_use(log, RATIOS, "2 m", RULE)
    assert bare.wheel_work is None and bare.wheel_work_in_gear is None and bare.held_back is None and bare != use


@given(v=st.floats(2.0, 150.0), grade=st.floats(-0.3, 0.3), hours=st.floats(0.01, 100.0))
def test_a_share_works_against_the_resistance_at_its_speed(v: float, grade: float, hours: float) -> None:
    use = ls.ride_use(
        ls.RideProfile([ls.RideShare("trail", 1.0, v * ls.kmh, slope=grade)]), RATIOS, "2 m", RULE,
        ridden=hours * ls.hour, load=ls.RideLoad(road=ROAD, mass="230 kg"),
    )  # fmt: skip
    angle = np.arctan(grade)
    force = 40 * np.cos(angle) + 0.4 * (v / 3.6) ** 2 + 230 * 9.80665 * np.sin(angle)
    assert use.wheel_work is not None and use.held_back is not None
    assert (use.wheel_work - use.held_back) / ls.J == pytest.approx(force * v * hours * 1000, rel=1e-9, abs=1e-3)
    assert not use.wheel_work or not use.held_back


def test_a_load_is_a_value_that_is_checked() -> None:
    load = ls.RideLoad(road=ROAD, mass="230 kg")
    assert load.spell == ls.Duration("2 s") and load.mass == ls.Mass("230 kg") and load.road == ROAD
    assert pickle.loads(pickle.dumps(load)) == load and load != ls.RideLoad(road=ROAD, mass="230 kg", spell="1 s")
    with pytest.raises(ls.RangeError, match="mass is 0 kg; expected"):
        ls.RideLoad(road=ROAD, mass="0 kg")
    with pytest.raises(ls.RangeError, match="spell is -1 s; expected"):
        ls.RideLoad(road=ROAD, mass="1 kg", spell="-1 s")
    with pytest.raises(TypeError, match="road"):
        ls.RideLoad(road="40 N", mass="1 kg")  # type: ignore[arg-type]


GEARS = np.array([30.7, 20.8, 15.96, 12.9, 10.5, 8.96])


def ridden(seed: int, samples: int = 6000, wheel: float = 2.03) -> tuple[ls.RideLog, np.ndarray]:
    """Through the gears, five samples a second, with shifts of half a second and noise; and which gear was held."""
    row = np.random.default_rng(seed)
    t = 0.2 * np.arange(samples)
    targets = np.repeat(row.uniform(3.0, 25.0, samples // 100 + 1), 100)[:samples]
    speed, now = np.empty(samples), 3.0
    for i, target in enumerate(targets):
        now += 0.2 * float(np.clip((target - now) / 2.5, -3.0, 2.2))
        speed[i] = now
    held = np.searchsorted([6.0, 9.0, 11.5, 14.0, 17.0], np.convolve(speed, np.ones(9) / 9, "same"))
    log_ratio = np.convolve(np.pad(np.log(GEARS[held]), 2, "edge"), np.ones(5) / 5, "valid")  # shifts
    engine = speed / wheel * np.exp(log_ratio) * 60.0
    way = np.concatenate([[0.0], np.cumsum(0.1 * (speed[1:] + speed[:-1]))])
    log = ls.RideLog(
        time_s=t,
        speed_kmh=3.6 * np.maximum(0.0, speed + row.normal(0.0, 0.06, samples)),
        engine_rpm=np.round(engine * row.normal(1.0, 0.002, samples), -1),
        indicated_kmh=np.round(3.6 * 1.06 * speed, 1),
        odometer_km=np.floor(way * 1.02 / 10.0) / 100.0,
    )
    return log, np.unique(held)


@pytest.mark.parametrize("seed", range(6))
def test_a_log_tells_the_gears_and_the_instruments_it_was_ridden_with(seed: int) -> None:
    log, held = ridden(seed)
    machine = ls.machine_of_log(log)
    assert [gear.overall_ratio("2030 mm").nominal for gear in machine.gears] == pytest.approx(
        GEARS[held].tolist(), rel=0.005
    )
    assert ls.machine_of_log(log, gears=len(held)) == machine
    assert 0.5 < sum(gear.time_share for gear in machine.gears) < 1.0
    error = ls.instrument_error(log)
    assert error.speedometer is not None and error.odometer is not None
    assert error.speedometer.nominal == pytest.approx(0.06, abs=0.005)
    assert error.odometer == pytest.approx(0.02, abs=0.005)
    # The estimator, by numpy's own quantiles.
    true, shown = (np.convolve(column, [0.5, 0.5], "valid") for column in (log.speed_kmh, log.indicated_kmh))
    low, nominal, high = np.quantile((shown / true - 1.0)[true >= 20.0], [0.25, 0.5, 0.75]).tolist()
    assert (error.speedometer.low, error.speedometer.nominal, error.speedometer.high) == pytest.approx(
        (low, nominal, high), abs=1e-12
    )
    for value in (machine, machine.gears[0], error, log):
        assert pickle.loads(pickle.dumps(value)) == value and hash(value) == hash(pickle.loads(pickle.dumps(value)))
    assert eval(repr(machine), vars(ls)) == machine and eval(repr(error), vars(ls)) == error


def test_the_example_ride_runs_through() -> None:
    path = Path(__file__).resolve().parents[2] / "examples"
    log = ls.read_ride_log((path / "rides" / "evening_loop.csv").read_text(encoding="utf-8"))
    bike = ls.Machine.from_json((path / "machines" / "trail_bike.json").read_text(encoding="utf-8"))
    wheel = ls.rolling_circumference("120/80-18 M/C 62R TT").nominal
    stock = [
        ls.overall_ratio(71 / 23, float(driven) / driving, 13, 48)
        for driving, driven in ((13, 35), (17, 31), (20, 28), (23, 26), (26, 24), (28, 22))
    ]
    told = [gear.overall_ratio(wheel).nominal for gear in ls.machine_of_log(log, gears=6).gears]
    assert told == pytest.approx(stock, rel=0.005)
    error = ls.instrument_error(log)
    assert error.speedometer is not None and bike.speedometer.reading_error is not None
    assert error.speedometer.nominal == pytest.approx(bike.speedometer.reading_error.nominal, abs=0.005)
    rule = ls.ShiftRule.at_engine_speeds("5400 rpm", "2600 rpm", stock, wheel)
    use = ls.ride_use(log, stock, wheel, rule, load=ls.RideLoad(road=ls.RoadLoad.by_mass("230 kg"), mass="230 kg"))
    assert use.distance / ls.km == pytest.approx(sum(log.speed_kmh) / 3600, rel=0.01)
    assert use.wheel_work is not None and use.wheel_work > 1e6 * ls.J


@pytest.mark.parametrize(
    ("ask", "words"),
    [
        (lambda: ls.machine_of_log(ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1])), "no engine speeds"),
        (lambda: ls.machine_of_log(ridden(0)[0], gears=9), "expected the 9 that were asked for"),
        (lambda: ls.machine_of_log(ridden(0)[0], gears=0), "gears is 0; expected 1 to 16"),
        (lambda: ls.machine_of_log(ridden(0)[0]).gears[0].overall_ratio("0 m"), "circumference is 0"),
        (lambda: ls.instrument_error(ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1])), "nothing of instruments"),
        (lambda: ls.instrument_error(ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1], odometer_km=[3, 3])), "expected 1 km"),
        (lambda: ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1], odometer_km=[3, 2]), "odometer reading 2 is 2 km; expected at least the 3 km"),
        (lambda: ls.RideLog(time_s=[0, 1], speed_kmh=[1, 1], indicated_kmh=[3]), "number of indicated speeds is 1"),
    ],
)  # fmt: skip
def test_a_log_that_tells_nothing_says_why(ask: object, words: str) -> None:
    with pytest.raises(ls.Error) as error:
        ask()  # type: ignore[operator]
    assert words in str(error.value)
