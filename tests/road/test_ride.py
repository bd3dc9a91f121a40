# SPDX-License-Identifier: MIT
"""Ride logs and profiles: numpy's integrals, text that is wrong, pickles."""

from __future__ import annotations

import pickle

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
