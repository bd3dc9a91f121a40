# SPDX-License-Identifier: MIT
"""The array functions: real ufuncs, whatever shape and type comes in, and NaN where an element is out of range."""

from __future__ import annotations

import pickle
import subprocess
import sys

import layshaft as ls
import numpy as np
import pandas as pd
import pytest
from layshaft import arrays

GOOD = {
    "road_speed_kmh": (6000.0, 20.0, 2000.0),
    "engine_rpm": (36.0, 20.0, 2000.0),
    "overall_ratio": (3.0, 1.5, 14.0, 42.0),
    "thrust_change": (3.0, 2000.0, 3.2, 2100.0),
    "speed_change": (3.0, 2000.0, 3.2, 2100.0),
    "thrust_change_with_loss": (3.0, 2000.0, 3.2, 2100.0, 0.95, 0.9),
    "contribution": (1.06, 1.125),
    "worn_diameter_mm": (650.0, 4.0),
    "rolling_circumference_mm": (650.0, 0.98),
    "worn_circumference_mm": (2055.0, 0.98, 4.0, 1.0),
    "tread_left": (12.0, 4.0, 1.0),
    "distance_left_km": (6000.0, 12.0, 4.0, 1.0),
    "static_radius_mm": (325.0, 0.94),
    "effective_radius_mm": (325.0, 305.0),
    "circumference_of_radius_mm": (318.0,),
    "circumference_change": (2000.0, 2100.0),
    "passes": (14.0, 106.0),
    "distinct_links": (14.0, 106.0),
    "sprocket_pitch_diameter_mm": (15.875, 14.0),
    "chain_speed_variation": (13.0,),
    "chain_power_rating_hp": (0.5, 15.0, 1200.0),
    "chain_links": (15.875, 14.0, 43.0, 610.0),
    "chain_centre_mm": (15.875, 14.0, 43.0, 106.0),
    "front_contacts": (1.0, 2000.0, 14.0, 42.0),
    "rear_contacts": (1.0, 2000.0),
    "highest_lawful_reading_kmh": (90.0,),
}


@pytest.fixture(params=GOOD)
def ufunc(request: pytest.FixtureRequest) -> tuple[np.ufunc, tuple[float, ...], float]:
    function, arguments = getattr(arrays, request.param), GOOD[request.param]
    return function, arguments, float(function(*arguments))


def test_every_array_function_is_in_this_table() -> None:
    assert set(arrays.__all__) == set(GOOD)


def test_it_is_a_real_ufunc_with_a_docstring(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, _, value = ufunc
    assert isinstance(function, np.ufunc) and function.nout == 1 and np.isfinite(value)
    assert f"{function.__name__}(" in function.__doc__
    assert pickle.loads(pickle.dumps(function)) is function


def test_shapes_and_types_behave(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, value = ufunc
    first, *rest = arguments
    for shape in ((), (0,), (1,), (5,), (2, 3), (0, 4)):
        out = function(np.full(shape, first), *rest)
        assert np.shape(out) == shape and np.all(out == value)
    assert np.all(function([first, first], *rest) == value)
    strided = np.full((4, 6), np.nan)
    strided[::2, 1::3] = first
    assert np.all(function(strided[::2, 1::3], *rest) == value)
    assert np.all(function(np.full(3, first)[::-1], *rest) == value)
    read_only = np.full(3, first)
    read_only.setflags(write=False)
    assert np.all(function(read_only, *rest) == value)
    if first == int(first):
        for kind in (np.int64, np.int32, np.uint8 if first < 256 else np.uint16, np.float32):
            assert np.all(function(np.full(3, first, dtype=kind), *rest) == value)


def test_broadcasting_out_and_where(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, value = ufunc
    columns = [np.full((3, 1) if i % 2 else (1, 4), one) for i, one in enumerate(arguments)]
    assert np.all(function(*columns) == value)
    out = np.zeros(3)
    assert function(np.full(3, arguments[0]), *arguments[1:], out=out) is out and np.all(out == value)
    out = np.full(2, -1.0)
    function(np.full(2, arguments[0]), *arguments[1:], out=out, where=np.array([True, False]))
    assert out[0] == value and out[1] == -1.0


def test_nan_and_out_of_range_give_nan_without_a_warning(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, value = ufunc
    with np.errstate(all="raise"):
        for place in range(len(arguments)):
            for bad in (np.nan, np.inf, -np.inf, -1.0):
                changed = list(arguments)
                changed[place] = np.array([bad, arguments[place]])
                out = function(*changed)
                signed = function.__name__ in ("road_speed_kmh", "engine_rpm") and place == 0
                assert np.isnan(out[0]) or (signed and bad == -1.0)
                assert out[1] == value


def test_half_a_tooth_gives_nan() -> None:
    assert np.isnan(arrays.chain_links(15.875, 14.5, 43, 610.0))
    assert np.isnan(arrays.overall_ratio(3.0, 1.0, 14, 3))
    assert np.isnan(arrays.passes(14, 106.5)) and np.isnan(arrays.distinct_links(14.5, 106))
    assert np.isnan(arrays.passes(14, 1e9))


def test_pandas_keeps_its_index(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, value = ufunc
    series = pd.Series([arguments[0]] * 3, index=["a", "b", "c"])
    out = function(series, *arguments[1:])
    assert isinstance(out, pd.Series) and list(out.index) == ["a", "b", "c"] and (out == value).all()


def test_quantities_are_refused_loudly(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, _ = ufunc
    with pytest.raises(TypeError):
        function(ls.Length("1 m"), *arguments[1:])


def test_the_loop_agrees_with_the_class_and_with_itself() -> None:
    random = np.random.default_rng(41)
    front = random.integers(10, 20, 2000)
    rear = random.integers(30, 60, 2000)
    links = 2 * random.integers(48, 66, 2000)
    centre = arrays.chain_centre_mm(15.875, front, rear, links)
    assert np.isfinite(centre).all()
    assert np.abs(arrays.chain_links(15.875, front, rear, centre) - links).max() < 1e-12 * 130
    for f, r, x, c in zip(front[:200], rear[:200], links[:200], centre[:200], strict=True):
        exact = ls.ChainLoop("520", int(f), int(r)).centre(int(x)) / ls.mm
        assert abs(c - exact) <= 2 * np.spacing(exact)


def test_scalars_equal_arrays_to_the_last_bit(ufunc: tuple[np.ufunc, tuple[float, ...], float]) -> None:
    function, arguments, value = ufunc
    for size in (1, 2, 3, 4, 7, 8, 9, 33):
        assert np.all(function(*(np.full(size, one) for one in arguments)) == value)


def test_array_functions_agree_with_the_ones_for_quantities() -> None:
    """Values: 96 links on 15 teeth repeat after 5 passes (arithmetic, gcd 3), and the functions of layshaft itself."""
    assert arrays.passes(15, 96) == 5.0 and arrays.distinct_links(15, 96) == 32.0
    assert list(arrays.passes([13, 14, 15], 96)) == [ls.passes(z, 96) for z in (13, 14, 15)] == [13.0, 7.0, 5.0]
    for tread in (0.0, 2.5, 6.0):
        exact = ls.worn_diameter("650 mm", tread * ls.mm) / ls.mm
        assert arrays.worn_diameter_mm(650.0, tread) == pytest.approx(exact, rel=1e-15)
    assert arrays.rolling_circumference_mm(650.0, 0.98) == pytest.approx(np.pi * 650.0 * 0.98, rel=1e-15)
    assert arrays.contribution(1.06, 1.125) == ls.contribution(1.06, 1.125)
    assert arrays.thrust_change_with_loss(3.0, 2000.0, 3.2, 2100.0, 0.95, 0.9) == pytest.approx(
        ls.thrust_change_with_loss(3.0, "2000 mm", 3.2, "2100 mm", 0.95, 0.9), rel=1e-14
    )


def test_tread_and_radii_agree_with_the_ones_for_quantities() -> None:
    """Values: (4 - 1) / (12 - 1) and 6000 km * 3 / 8 by hand, and the functions of layshaft itself."""
    assert arrays.tread_left(12.0, [12.0, 4.0, 1.0], 1.0) == pytest.approx([1.0, 3 / 11, 0.0], rel=1e-15)
    assert arrays.tread_left(12.0, 0.0, 1.0) == pytest.approx(-1 / 11, rel=1e-15)
    assert arrays.distance_left_km(6000.0, 12.0, 4.0, 1.0) == pytest.approx(2250.0, rel=1e-14)
    assert np.isnan(arrays.distance_left_km(6000.0, 12.0, 12.0, 1.0))  # nothing has worn off to reckon from
    exact = ls.worn_circumference("2055 mm", 0.98, "4 mm", "1 mm") / ls.mm
    assert arrays.worn_circumference_mm(2055.0, 0.98, 4.0, 1.0) == pytest.approx(exact, rel=1e-14)
    assert exact == pytest.approx(2055.0 - 2 * np.pi * 0.98 * 3.0, rel=1e-14)
    assert arrays.effective_radius_mm(325.0, 305.0) == pytest.approx((650.0 + 305.0) / 3, rel=1e-15)
    assert arrays.static_radius_mm(325.0, 0.94) == pytest.approx(305.5, rel=1e-15)
    assert arrays.circumference_of_radius_mm(318.0) == pytest.approx(2 * np.pi * 318.0, rel=1e-15)
    assert arrays.circumference_change(2000.0, 2100.0) == ls.circumference_change("2 m", "2.1 m")


def test_layshaft_alone_loads_no_numpy() -> None:
    code = "import layshaft, sys; assert 'numpy' not in sys.modules; layshaft.arrays; assert 'numpy' in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True)
