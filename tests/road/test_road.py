# SPDX-License-Identifier: MIT
"""The road against scipy: monotone interpolation, quadrature, least squares; and what must hold whatever the road."""

from __future__ import annotations

import math
import pickle

import layshaft as ls
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import curve_fit

RPM = math.pi / 30.0
forces = st.floats(0.0, 150.0)
linears = st.floats(-2.0, 6.0)
quadratics = st.floats(0.0, 0.7)
winds = st.floats(-60.0, 60.0)
# Torques in hundredths: of smaller ones scipy divides by what is next to nothing, and warns.
curves = st.lists(
    st.tuples(st.floats(50.0, 2500.0), st.integers(0, 8000).map(lambda n: n / 100.0)), min_size=4, max_size=20
)


def curve_of(steps: list[tuple[float, float]]) -> tuple[np.ndarray, np.ndarray, ls.EngineCurve]:
    speeds = np.cumsum([step for step, _ in steps])
    torques = np.array([torque for _, torque in steps])
    assume(torques.max() > 0.01)
    return speeds, torques, ls.EngineCurve([float(n) * ls.rpm for n in speeds], [float(t) * ls.Nm for t in torques])


@given(steps=curves, share=st.floats(0.0, 1.0))
def test_the_smooth_curve_is_scipys_monotone_one(steps: list[tuple[float, float]], share: float) -> None:
    speeds, torques, curve = curve_of(steps)
    at = min(speeds[0] + share * (speeds[-1] - speeds[0]), speeds[-1])
    at = max(at, speeds[0])
    expected = PchipInterpolator(speeds * RPM, torques)(at * RPM)
    assert ls.SmoothCurve(curve).torque(float(at) * ls.rpm) / ls.Nm == pytest.approx(
        float(expected), rel=1e-9, abs=1e-9
    )


@given(steps=curves)
def test_no_speed_has_more_than_the_peaks(steps: list[tuple[float, float]]) -> None:
    speeds, torques, curve = curve_of(steps)
    dense = np.linspace(speeds[0], speeds[-1], 2000)
    straight = np.interp(dense, speeds, torques)
    assert curve.peak_torque.torque / ls.Nm == pytest.approx(torques.max(), rel=1e-15)
    power = straight * dense * RPM
    assert power.max() <= curve.peak_power.power / ls.W * (1 + 1e-12)
    assert curve.power(curve.peak_power.speed) == curve.peak_power.power


@given(constant=forces, linear=linears, quadratic=quadratics, wind=winds, grade=st.floats(-0.03, 0.1),
       start=st.floats(20.0, 160.0), share=st.floats(0.05, 0.98))  # fmt: skip
def test_a_coast_down_is_the_integral_of_m_dv_over_f(
    constant: float, linear: float, quadratic: float, wind: float, grade: float, start: float, share: float
) -> None:
    road = ls.RoadLoad(
        constant=constant * ls.N, linear=linear * ls.N_per_mps, quadratic=quadratic * ls.kg_per_m, mass="200 kg",
        head_wind=wind * ls.kmh,
    )  # fmt: skip
    end = start * share
    alpha, w = math.atan(grade), wind / 3.6

    def force(v: float) -> float:
        air = v + w
        weight = 200.0 * 9.80665
        return constant * math.cos(alpha) + linear * v + quadratic * air * abs(air) + weight * math.sin(alpha)

    least = min(force(v) for v in np.linspace(end / 3.6, start / 3.6, 2001))
    if least < 1.0:
        assume(least < -0.01)
        with pytest.raises(ls.Error, match="does not slow down"):
            ls.coast_down_time(road, "200 kg", start * ls.kmh, end * ls.kmh, grade)
        return
    assert road.resistance(start * ls.kmh, grade) / ls.N == pytest.approx(force(start / 3.6), rel=1e-12, abs=1e-10)
    bend = [-w] if end / 3.6 < -w < start / 3.6 else None
    expected, _ = quad(
        lambda v: 200.0 / force(v), end / 3.6, start / 3.6, points=bend, epsabs=0.0, epsrel=1e-12, limit=200
    )
    time = ls.coast_down_time(road, "200 kg", start * ls.kmh, end * ls.kmh, grade)
    assert time / ls.s == pytest.approx(expected, rel=1e-9)


def coasting(t: np.ndarray, start: float, constant: float, quadratic: float) -> np.ndarray:
    def slow(_: float, v: np.ndarray) -> np.ndarray:
        return -(constant + quadratic * v**2) / 220.0

    return solve_ivp(slow, (0.0, t[-1]), [start], t_eval=t, rtol=1e-10, atol=1e-10).y[0]


def noisy_log(seed: int, samples: int = 35, scatter: float = 0.15) -> tuple[np.ndarray, np.ndarray]:
    t = np.arange(samples, dtype=float)
    errors = np.random.default_rng(seed).normal(0.0, scatter, samples)
    return t, coasting(t, 30.0, 55.0, 0.31) + errors


def fitted(t: np.ndarray, v: np.ndarray) -> ls.CoastDownFit:
    return ls.fit_coast_down([float(x) * ls.s for x in t], [float(x) * ls.mps for x in v], "220 kg")


@pytest.mark.parametrize("seed", range(6))
def test_the_fit_of_a_coast_down_is_scipys(seed: int) -> None:
    t, v = noisy_log(seed)
    fit = fitted(t, v)
    best, covariance = curve_fit(coasting, t, v, p0=[v[0], 60.0, 0.3])
    assert fit.start_speed / ls.mps == pytest.approx(best[0], rel=1e-6)
    assert fit.road.constant.nominal / ls.N == pytest.approx(best[1], rel=1e-5)
    assert fit.road.quadratic.nominal / ls.kg_per_m == pytest.approx(best[2], rel=1e-5)
    assert fit.constant_uncertainty / ls.N == pytest.approx(math.sqrt(covariance[1, 1]), rel=1e-3)
    assert fit.quadratic_uncertainty / ls.kg_per_m == pytest.approx(math.sqrt(covariance[2, 2]), rel=1e-3)
    # Least squares over the differentiated log, which is what one would try first, scatters far more.
    assert fit.scatter / ls.mps == pytest.approx(0.15, rel=0.5)


def test_the_stated_uncertainty_holds_the_truth_as_often_as_it_says() -> None:
    held = np.zeros(3)
    rounds = 300
    for seed in range(rounds):
        fit = fitted(*noisy_log(1000 + seed))
        k = fit.sureness
        held += [
            abs(fit.road.constant.nominal - 55 * ls.N) <= k * fit.constant_uncertainty,
            abs(fit.road.quadratic.nominal - 0.31 * ls.kg_per_m) <= k * fit.quadratic_uncertainty,
            (55 + 0.31 * 20**2) * ls.N in fit.resistance("20 m/s"),
        ]
    # 285 of 300, with a standard deviation of 3.8: four of those either way.
    assert (abs(held - 0.95 * rounds) <= 15).all(), held


def test_a_fit_pickles_by_fitting_again() -> None:
    fit = fitted(*noisy_log(3, samples=12))
    again = pickle.loads(pickle.dumps(fit))
    assert again == fit and again.road == fit.road and hash(again) == hash(fit)
    assert fit.road.kind == "coast-down" and eval(repr(fit.road), vars(ls)) == fit.road


# Printed with the table of US 40 CFR 86.529-98: coasting from 70 to 60 km/h.
@pytest.mark.parametrize(("mass", "printed"), [(100, 2.953), (200, 4.848), (300, 6.185)])
def test_the_us_table_coasts_as_printed(mass: int, printed: float) -> None:
    road = ls.RoadLoad.by_mass(mass * ls.kg)
    assert road.kind == "mass table"
    assert ls.coast_down_time(road, mass * ls.kg, "70 km/h", "60 km/h") / ls.s == pytest.approx(printed, abs=0.0005)


@given(speed=st.floats(0.0, 60.0), more=st.floats(0.0, 60.0), grade=st.floats(-0.5, 0.5), wind=st.floats(0.0, 60.0))
def test_resistance_rises_with_speed_slope_wind_and_soft_ground(
    speed: float, more: float, grade: float, wind: float
) -> None:
    gravel = ls.RoadLoad.from_parts(mass="220 kg", surface="gravel", machine="motorcycle")
    sand = ls.RoadLoad.from_parts(mass="220 kg", surface="sand", machine="motorcycle")
    slow, fast = speed * ls.mps, (speed + more) * ls.mps
    assert gravel.resistance(slow, grade) <= gravel.resistance(fast, grade)
    assert gravel.resistance(slow, grade) <= gravel.in_wind(wind * ls.mps).resistance(slow, grade)
    assert gravel.resistance(slow, grade) < sand.resistance(slow, grade)
    assert gravel.resistance(slow, grade) < gravel.resistance(slow, grade + 0.01)
    band = gravel.resistance_band(slow, grade)
    assert band.low <= gravel.resistance(slow, grade) == band.nominal <= band.high


@given(altitude=st.floats(-900.0, 10000.0))
def test_air_gets_thinner_with_altitude(altitude: float) -> None:
    low, high = ls.air_at(altitude * ls.m), ls.air_at((altitude + 50.0) * ls.m)
    assert high.density < low.density and high.pressure < low.pressure and high.temperature < low.temperature
    # The gas law with the standard's constant, and the hydrostatic equation by differences.
    assert low.density / ls.kg_per_m3 == pytest.approx(
        low.pressure / ls.Pa / (287.05287 * (low.temperature / ls.kelvin)), rel=1e-7
    )
    radius = 6356766.0
    g = 9.80665 * (radius / (radius + altitude + 25.0)) ** 2
    mean = math.sqrt((low.density / ls.kg_per_m3) * (high.density / ls.kg_per_m3))
    assert (low.pressure - high.pressure) / ls.Pa == pytest.approx(mean * g * 50.0, rel=1e-5)


@given(
    inertia=st.floats(0.001, 0.2), torque=st.floats(3.0, 90.0), held=st.floats(0.0, 900.0), other=st.floats(0.3, 3.0)
)
@settings(max_examples=200)
def test_no_ratio_speeds_up_more_than_the_best(inertia: float, torque: float, held: float, other: float) -> None:
    drive = {
        "mass": "210 kg", "torque": torque * ls.Nm, "circumference": "2 m", "wheel_inertia": "1.1 kg m2",
        "engine_inertia": inertia * ls.kg_m2, "drive_efficiency": 0.92, "resistance": held * ls.N,
    }  # fmt: skip
    best = ls.best_ratio_for(**drive)
    assume(best * other < 1e4)
    most = ls.acceleration_in(best, **drive) / ls.mps2
    assert ls.acceleration_in(best * other, **drive) / ls.mps2 <= most + 1e-12 * max(1.0, abs(most))


@given(grip=st.floats(0.0, 1.5), grade=st.floats(-0.6, 0.9), ahead=st.floats(0.3, 1.1), height=st.floats(0.3, 1.0))
def test_a_thrust_at_its_limit_overloads_neither_wheel(grip: float, grade: float, ahead: float, height: float) -> None:
    body = ls.Body(mass="230 kg", wheelbase="1.4 m", centre_ahead=ahead * ls.m, centre_height=height * ls.m)
    limit = ls.thrust_limit(body, grip, grade)
    thrust = limit.thrust.nominal / ls.N
    normal = 230.0 * 9.80665 * math.cos(math.atan(grade))
    front = (normal * ahead - thrust * height) / 1.4
    assert front >= -1e-9 and thrust <= grip * (normal - front) * (1 + 1e-12) + 1e-9
    assert limit.kind == ("wheelie" if grip * height >= ahead else "traction")


def test_what_is_a_guess_says_so() -> None:
    estimate = ls.estimate_engine(
        torque="21 Nm", torque_speed="6500 rpm", power="16.5 kW", power_speed="8500 rpm", lowest="1500 rpm", highest="9800 rpm",
    )  # fmt: skip
    assert estimate.nominal.source.certainty.startswith("common practice")
    assert estimate.low.torque("4000 rpm") < estimate.nominal.torque("4000 rpm") < estimate.high.torque("4000 rpm")
    assert ls.surface("sand").grip_source.certainty == "from memory"
    rule = ls.ShiftRule.world_cycle(
        rated_power="72 kW", unladen_mass="199 kg", idle="1150 rpm", rated_speed="11800 rpm",
        overall_ratios=[16, 11.4, 9.1], circumference="2 m",
    )  # fmt: skip
    assert rule.source.certainty == "from memory" and rule.gear_at("200 km/h") == 3
    assert ls.RoadLoad.from_parts(mass="200 kg", surface="field", machine="scooter").source.certainty == "from memory"


def test_a_resistance_is_explained_with_its_band() -> None:
    road = ls.RoadLoad.from_parts(mass="220 kg", surface="gravel", machine="motorcycle")
    working = road.explain("resistance", speed="50 km/h", slope=0.1)
    assert working.result.result == road.resistance_band("50 km/h", 0.1)
    assert pickle.loads(pickle.dumps(working)) == working
    text = working.to_text()
    assert "m/s2" in text and "kg/m3" in text and " N" in text
    time = road.explain("coast down time", mass="225 kg", start="70 km/h", end="20 km/h")
    assert time.result.runs["nominal"] == ls.coast_down_time(road, "225 kg", "70 km/h", "20 km/h")
