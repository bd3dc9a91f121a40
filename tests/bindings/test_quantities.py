# SPDX-License-Identifier: MIT
"""Quantities: units against pint, arithmetic, text, and the words of what is refused."""

from __future__ import annotations

import copy
import math
import pickle

import layshaft as ls
import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

UNITS = {  # layshaft's name -> the general unit library's
    "mm": "millimeter", "cm": "centimeter", "m": "meter", "km": "kilometer", "inch": "inch", "mile": "mile",
    "mps": "meter/second", "kmh": "kilometer/hour", "mph": "mile/hour", "rpm": "revolution/minute",
    "radps": "radian/second", "N": "newton", "kN": "kilonewton", "lbf": "force_pound", "Nm": "newton*meter",
    "lbf_ft": "force_pound*foot", "W": "watt", "kW": "kilowatt", "hp": "horsepower", "kg": "kilogram", "lb": "pound",
    "g": "gram", "deg": "degree", "rad": "radian", "s": "second", "minute": "minute", "hour": "hour", "J": "joule",
    "Pa": "pascal", "bar": "bar", "MPa": "megapascal", "m2": "meter**2", "mps2": "meter/second**2", "kg_per_m": "kilogram/meter",
    "kg_per_m3": "kilogram/meter**3", "kg_m2": "kilogram*meter**2", "kelvin": "kelvin",
    "N_per_mps": "newton/(meter/second)", "N_per_kmh": "newton/(kilometer/hour)", "N_per_kmh2": "newton/(kilometer/hour)**2",
}  # fmt: skip
SI = {  # one unit of each kind that is 1 in SI
    "Length": ls.m, "Area": ls.m2, "Mass": ls.kg, "Duration": ls.s, "Speed": ls.mps, "Acceleration": ls.mps2,
    "Force": ls.N, "Torque": ls.Nm, "Power": ls.W, "Energy": ls.J, "Pressure": ls.Pa, "Density": ls.kg_per_m3,
    "LinearDensity": ls.kg_per_m, "Angle": ls.rad, "AngularSpeed": ls.radps, "MomentOfInertia": ls.kg_m2,
    "Temperature": ls.kelvin, "ForcePerSpeed": ls.N_per_mps,
}  # fmt: skip
KINDS = [getattr(ls, name) for name in SI]
finite = st.floats(allow_nan=False, allow_infinity=False, min_value=-1e12, max_value=1e12)


@pytest.mark.parametrize("name", UNITS)
def test_a_unit_is_what_pint_says_to_a_few_ulp(name: str) -> None:
    unit = getattr(ls, name)
    registry = pint.UnitRegistry()
    expected = registry.Quantity(1.0, UNITS[name]).to_base_units().magnitude
    assert unit / SI[type(unit).__name__] == pytest.approx(expected, rel=4 * 2.0**-52, abs=0.0)


def test_every_kind_is_told_apart() -> None:
    assert {type(one) for one in SI.values()} == set(KINDS)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
@given(number=finite)
def test_text_and_repr_read_back_as_the_same_value(kind: type, number: float) -> None:
    value = number * SI[kind.__name__]
    assert kind(str(value)) == value
    assert eval(repr(value), vars(ls)) == value
    assert pickle.loads(pickle.dumps(value)) == value
    assert copy.deepcopy(value) == value
    assert hash(pickle.loads(pickle.dumps(value))) == hash(value)


def test_a_unit_is_a_quantity_of_one() -> None:
    assert 110 * ls.mm == ls.mm * 110 == ls.Length("110 mm")
    assert ls.Length("25.4 mm") / ls.inch == pytest.approx(1.0, rel=1e-15)
    assert isinstance(ls.Length("1 m") / ls.mm, float)


def test_arithmetic_keeps_dimensions() -> None:
    assert 2 * ls.m + 30 * ls.cm == 2.3 * ls.m
    assert -(2 * ls.m) == -2 * ls.m and abs(-2 * ls.m) == 2 * ls.m
    assert 100 * ls.km / (2 * ls.hour) == 50 * ls.kmh
    assert (20 * ls.Nm) * (1000 * ls.radps) == 20 * ls.kW
    assert (3 * ls.m) * (2 * ls.m) == 6 * ls.m2
    assert 2 * ls.m > 1 * ls.m and 1 * ls.m <= 1 * ls.m
    for wrong in (
        lambda: 2 * ls.m + 3 * ls.kg,
        lambda: 2 * ls.m + 3,
        lambda: 2 * ls.m < 3,
        lambda: (2 * ls.kg) * (2 * ls.kg),
        lambda: 1 / (2 * ls.m),
    ):
        with pytest.raises(TypeError):
            wrong()
    assert 2 * ls.m != 2 * ls.kg and 2 * ls.m != 2


@pytest.mark.parametrize(
    "text", ["", "612", "mm", "612 furlongs", "nan mm", "inf mm", "6l2 mm", "612 mm mm", "612\x00 mm"]
)
def test_bad_text_says_where(text: str) -> None:
    with pytest.raises(ls.ParseError) as caught:
        ls.Length(text)
    error = caught.value
    assert isinstance(error, ValueError) and isinstance(error, ls.Error)
    assert error.text == text and 0 <= error.position <= len(text)
    assert "mm, cm, m, km, inch, mile" in error.expected
    assert f"position {error.position}" in str(error)


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_stays_outside(number: float) -> None:
    with pytest.raises(ls.RangeError):
        number * ls.mm


def test_arrays_are_sent_to_the_array_functions() -> None:
    for wrong in (
        lambda: np.array([1.0, 2.0]) * ls.mm,
        lambda: ls.mm * np.array([1.0, 2.0]),
        lambda: np.ones(2) + ls.mm,
    ):
        with pytest.raises(TypeError, match=r"layshaft\.arrays"):
            wrong()


def test_quantities_do_not_change() -> None:
    with pytest.raises(AttributeError):
        (2 * ls.m).value = 3


def test_a_format_takes_a_unit() -> None:
    assert f"{615.4 * ls.mm:.1f inch}" == "24.2 inch"
    assert f"{615.4 * ls.mm:.0f}" == "615 mm"


def test_a_wrong_argument_is_named_with_what_came_and_what_was_expected() -> None:
    with pytest.raises(TypeError) as caught:
        ls.road_speed(9000, 3.0, "2 m")
    assert str(caught.value) == "engine_speed: expected an AngularSpeed such as 9500 * rpm or '9500 rpm', got int 9000"
    with pytest.raises(TypeError) as caught:
        ls.road_speed("9000 rpm", 3.0, 2 * ls.kg)
    assert "circumference: expected a Length" in str(caught.value) and "Mass('2 kg')" in str(caught.value)
    with pytest.raises(ls.RangeError, match="overall_ratio is 0; expected a value above 0"):
        ls.road_speed("9000 rpm", 0, "2 m")
    with pytest.raises(TypeError, match="missing 'circumference'"):
        ls.road_speed("9000 rpm", 3.0)
    with pytest.raises(TypeError, match="no parameter 'wheel'"):
        ls.road_speed("9000 rpm", 3.0, wheel="2 m")
    for name in ("arg0", "py::", "Invoked with"):
        assert name not in str(caught.value)
