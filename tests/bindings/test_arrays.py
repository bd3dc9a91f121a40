# SPDX-License-Identifier: MIT
"""The array functions: one contract for each of them, whatever shape and type comes in, out of the list they are made of.

The arguments are drawn within the spans that the formulas' own test has, and those that lie in range are kept.
"""

from __future__ import annotations

import importlib.util
import inspect
import pickle
import platform
import subprocess
import sys
import zlib
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any, NamedTuple

import layshaft as ls
import numpy as np
import pandas as pd
import pytest
from layshaft import _array_manners, _arrays, adapters, arrays

HERE = Path(__file__).resolve()
ROWS = 40

# The public names that must stay, and their arguments.
KEPT = """
overall_ratio(primary, gear, front, rear)
road_speed_kmh(engine_rpm, overall_ratio, circumference_mm)
engine_rpm(speed_kmh, overall_ratio, circumference_mm)
thrust_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm)
thrust_change_with_loss(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm, base_efficiency, trial_efficiency)
speed_change(base_ratio, base_circumference_mm, trial_ratio, trial_circumference_mm)
contribution(ratio, factor)
worn_diameter_mm(overall_diameter_mm, tread_worn_mm)
rolling_circumference_mm(overall_diameter_mm, rolling_factor)
worn_circumference_mm(circumference_mm, rolling_factor, measured_tread_depth_mm, tread_depth_mm)
tread_left(new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm)
distance_left_km(distance_km, new_tread_depth_mm, tread_depth_mm, least_tread_depth_mm)
static_radius_mm(free_radius_mm, static_share)
effective_radius_mm(free_radius_mm, static_radius_mm)
circumference_of_radius_mm(effective_radius_mm)
circumference_change(base_circumference_mm, trial_circumference_mm)
sprocket_pitch_diameter_mm(pitch_mm, teeth)
chain_speed_variation(teeth)
chain_power_rating_hp(pitch_in, teeth, shaft_rpm)
chain_links(pitch_mm, front, rear, centre_mm)
chain_centre_mm(pitch_mm, front, rear, links)
front_contacts(distance_km, circumference_mm, front, rear)
rear_contacts(distance_km, circumference_mm)
passes(teeth, links)
distinct_links(teeth, links)
highest_lawful_reading_kmh(true_speed_kmh)
"""

# The SI unit of each kind of quantity.
SI = {
    "Length": "m", "Area": "m2", "Mass": "kg", "Duration": "s", "Speed": "m/s", "Acceleration": "m/s2", "Force": "N",
    "Torque": "Nm", "Power": "W", "Energy": "J", "Pressure": "Pa", "Density": "kg/m3", "LinearDensity": "kg/m",
    "ForcePerSpeed": "N s/m", "Angle": "rad", "AngularSpeed": "rad/s", "MomentOfInertia": "kg m2", "Temperature": "K",
}  # fmt: skip


def load(path: str) -> ModuleType:
    """Another file of the tests, which is no package."""
    file = HERE.parents[1] / path
    spec = importlib.util.spec_from_file_location(file.stem + "_of_arrays", file)
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


SPANS, COUNTS = (lambda module: (module.SPANS, module.COUNTS))(load("accuracy/spans.py"))
NOT_ONE_FORMULA = {"chain_links", "chain_centre", "chain_power_rating"}


class Function(NamedTuple):
    """One of the list."""

    name: str
    formula: str
    arguments: list[_array_manners.Role]
    result: _array_manners.Role

    @property
    def ufunc(self) -> np.ufunc:
        return getattr(arrays, self.name)


LIST = {
    name: Function(name, formula, [_array_manners.Role(*one) for one in arguments], _array_manners.Role(*result))
    for name, formula, arguments, result in _arrays._formulas()
}


def each_of(functions: Iterable[Function]) -> Callable[[Callable[[Function], None]], Callable[[], None]]:
    """A test that goes over functions, and names all that fail. (Thousands of parametrised tests would take longer to
    report than to run.)"""

    def looped(test: Callable[[Function], None]) -> Callable[[], None]:
        def run() -> None:
            failed: dict[str, Exception | pytest.fail.Exception] = {}
            for function in functions:
                try:
                    test(function)
                except (Exception, pytest.fail.Exception) as problem:
                    failed[function.name] = problem
            if failed:
                raise AssertionError(f"{len(failed)} fail: {', '.join(failed)}") from next(iter(failed.values()))

        run.__name__, run.__doc__ = test.__name__, test.__doc__
        return run

    return looped


every = each_of(LIST.values())


def unit(role: _array_manners.Role) -> Any:
    """The quantity of one unit of an argument; 1.0 of a pure number or a count."""
    return getattr(ls, role.kind)(f"1 {role.unit}") if role.unit else 1.0


def size(role: _array_manners.Role) -> float:
    """The same as a number in SI."""
    return unit(role) / getattr(ls, role.kind)(f"1 {SI[role.kind]}") if role.unit else 1.0


@cache
def good(name: str) -> list[np.ndarray]:
    """Columns of arguments with which a function holds, in its own units."""
    function = LIST[name]
    random = np.random.default_rng(zlib.crc32(name.encode()))
    found = np.empty((len(function.arguments), 0))
    for _ in range(40):
        columns = []
        for role in function.arguments:
            if role.kind in COUNTS:
                low, high = COUNTS[role.kind]
                columns.append(random.integers(low, high + 1, 2000).astype(float))
            else:
                low, high = SPANS.get(
                    role.word, SPANS.get("double" if role.kind == "number" else role.kind, (0.2, 3.0))
                )
                columns.append(random.uniform(low, high, 2000) / size(role))
        found = np.concatenate([found, np.array(columns)[:, np.isfinite(function.ufunc(*columns))]], axis=1)
        if found.shape[1] >= ROWS:
            return list(found[:, :ROWS])
    raise AssertionError(f"{name}: the spans lie outside the formula's range")


def same(a: Any, b: Any) -> bool:
    """Equal to the last bit, NaN and NaN as well."""
    return np.array_equal(np.asarray(a, dtype=float), np.asarray(b, dtype=float), equal_nan=True)


# --- The list --------------------------------------------------------------------------------------------------------


def test_every_formula_that_takes_numbers_is_an_array_function() -> None:
    """So far every formula does: none has a parameter of any other type."""
    assert _arrays._left_out() == []
    told = [one.name for one in ls.formulas()]
    assert len(told) > 200
    assert sorted(one.formula for one in LIST.values()) == sorted([*told, *NOT_ONE_FORMULA])
    assert set(arrays.__all__) == {*LIST, "parse_tyres"}


def test_the_names_that_others_rely_on_stay() -> None:
    kept = KEPT.split("\n")[1:-1]
    told = {f"{one.name}({', '.join(role.name for role in one.arguments)})" for one in LIST.values()}
    assert len(kept) == 26 and set(kept) <= told


@every
def test_a_name_ends_with_its_unit_where_it_has_one(function: Function) -> None:
    for role in [*function.arguments, function.result]:
        ends = {
            "km/h": "kmh",
            "m/s2": "mps2",
            "kg/m3": "kg_per_m3",
            "kg/m": "kg_per_m",
            "N s/m": "N_per_mps",
            "kg m2": "kg_m2",
            "inch": "in",
        }
        if role.unit:
            assert role.name.endswith("_" + ends.get(role.unit, role.unit))
            assert size(role) > 0.0
        else:
            assert role.kind in ("number", *COUNTS)
        assert role.name.isidentifier()
    names = [role.name for role in function.arguments]
    assert len(set(names)) == len(names)


@every
def test_it_is_a_real_ufunc_whose_docstring_says_all(function: Function) -> None:
    ufunc = function.ufunc
    assert isinstance(ufunc, np.ufunc) and ufunc.nout == 1 and ufunc.nin == len(function.arguments)
    assert ufunc.types == ["d" * ufunc.nin + "->d"] and ufunc.__name__ == function.name
    assert pickle.loads(pickle.dumps(ufunc)) is ufunc
    doc = ufunc.__doc__
    assert f"{function.name}({', '.join(role.name for role in function.arguments)}): " in doc
    for role in function.arguments:
        line = next(line for line in doc.splitlines() if line.startswith(f"    {role.name}: "))
        assert len(line) > len(role.name) + 8, "the glossary says what it is"
        assert not role.unit or line.endswith(f", in {role.unit}")
        assert role.kind not in COUNTS or "a whole number from 4 to " in line
    source = next((one.source for one in ls.formulas() if one.name == function.formula), None)
    assert f"\nSource: {source.document} ({source.certainty}" in doc if source else "\nSource: " in doc


# --- The values ------------------------------------------------------------------------------------------------------


def check_against(function: Function, got: np.ndarray, expected: list[float]) -> None:
    """Both sides are the same code on the same numbers, so that they are equal to the last bit. Only the arrays' are
    compiled with fusing of multiplications and additions off, which makes no difference where the processor that is
    compiled for has none."""
    if platform.machine() in ("x86_64", "AMD64"):
        assert same(got, expected)
    else:
        np.testing.assert_allclose(got, expected, rtol=1e-12, atol=1e-12)


@every
def test_values_are_those_of_the_formula(function: Function) -> None:
    formula = next((one for one in ls.formulas() if one.name == function.formula), None)
    if formula is None:
        assert function.formula in NOT_ONE_FORMULA  # below
        return
    sizes, result = [size(role) for role in function.arguments], size(function.result)
    columns = good(function.name)
    expected = [
        formula.evaluate(*(float(x) * s for x, s in zip(row, sizes, strict=True))) / result
        for row in zip(*columns, strict=True)
    ]
    check_against(function, function.ufunc(*columns), expected)


SCALARS = [
    function
    for function in LIST.values()
    if hasattr(ls, function.formula)
    and list(inspect.signature(getattr(ls, function.formula)).parameters) == [role.word for role in function.arguments]
]


@each_of(SCALARS)
def test_values_are_those_of_the_function_of_quantities(function: Function) -> None:
    units, result = [unit(role) for role in function.arguments], unit(function.result)
    kinds = [int if role.kind in COUNTS else float for role in function.arguments]
    columns = [column[:5] for column in good(function.name)]
    expected = [
        getattr(ls, function.formula)(
            *(kind(x) if one == 1.0 else float(x) * one for x, one, kind in zip(row, units, kinds, strict=True))
        )
        / result
        for row in zip(*columns, strict=True)
    ]
    check_against(function, function.ufunc(*columns), expected)


def test_many_functions_of_quantities_were_compared() -> None:
    assert len(SCALARS) > 25


def test_the_loop_agrees_with_the_class_and_with_itself() -> None:
    random = np.random.default_rng(41)
    front = random.integers(10, 20, 2000)
    rear = random.integers(30, 60, 2000)
    links = 2 * random.integers(48, 66, 2000)
    centre = arrays.chain_centre_mm(15.875, front, rear, links)
    assert np.isfinite(centre).all()
    assert np.abs(arrays.chain_links(15.875, front, rear, centre) - links).max() < 1e-12 * 130
    for f, r, x, c in zip(front[:200], rear[:200], links[:200], centre[:200], strict=True):
        loop = ls.ChainLoop("520", int(f), int(r))
        exact = loop.centre(int(x)) / ls.mm
        assert abs(c - exact) <= 2 * np.spacing(exact)
        there = loop.links(c * ls.mm)
        assert abs(arrays.chain_links(15.875, f, r, c) - there) <= 2 * np.spacing(there)


def test_the_power_rating_is_the_lower_of_its_branches() -> None:
    """Of the standard's own chain of the pitch: 08A is half an inch."""
    for teeth in (11, 15, 24):
        for speed in (100.0, 1200.0, 3000.0):
            exact = ls.power_rating("08A", teeth, speed * ls.rpm) / ls.hp
            assert arrays.chain_power_rating_hp(0.5, teeth, speed) == pytest.approx(exact, rel=1e-14)


def test_values_by_hand() -> None:
    """96 links on 15 teeth repeat after 5 passes (gcd 3); 4 of 12 mm of tread, 1 of them the least, are 3/11 of it."""
    assert arrays.passes(15, 96) == 5.0 and arrays.distinct_links(15, 96) == 32.0
    assert list(arrays.passes([13, 14, 15], 96)) == [13.0, 7.0, 5.0]
    assert arrays.tread_left(12.0, [12.0, 4.0, 1.0], 1.0) == pytest.approx([1.0, 3 / 11, 0.0], rel=1e-15)
    assert arrays.distance_left_km(6000.0, 12.0, 4.0, 1.0) == pytest.approx(2250.0, rel=1e-14)
    assert arrays.road_speed_kmh(6000.0, 20.0, 2000.0) == pytest.approx(36.0, rel=1e-15)
    assert arrays.engine_rpm(36.0, 20.0, 2000.0) == pytest.approx(6000.0, rel=1e-15)
    assert arrays.rolling_circumference_mm(650.0, 0.98) == pytest.approx(np.pi * 650.0 * 0.98, rel=1e-15)


@every
def test_one_element_equals_an_array_to_the_last_bit_at_every_length(function: Function) -> None:
    ufunc, columns = function.ufunc, [column.copy() for column in good(function.name)]
    # Elements out of range stand among the others, where a processor works on several at once.
    columns[0][3], columns[-1][10], columns[0][17] = np.nan, -np.inf, np.inf
    alone = [ufunc(*row) for row in zip(*columns, strict=True)]
    assert np.isfinite(alone[:3]).all() and np.isnan([alone[3], alone[10], alone[17]]).all()
    for length in range(34):
        assert same(ufunc(*(column[:length] for column in columns)), alone[:length])
        assert same(ufunc(*(column[1 : 1 + length] for column in columns)), alone[1 : 1 + length])
    assert same(ufunc(*(column[::2] for column in columns)), alone[::2])
    assert same(ufunc(*(column[::-3] for column in columns)), alone[::-3])
    long = [np.tile(column, 20) for column in columns]  # over several blocks
    assert same(ufunc(*(column[::2] for column in long)), np.tile(alone, 20)[::2])
    out = np.zeros(2 * ROWS)
    ufunc(*columns, out=out[::2])
    assert same(out[::2], alone) and not out[1::2].any()
    for place, column in enumerate(columns):
        one = [other if at == place else np.broadcast_to(other[0], (600,)) for at, other in enumerate(columns)]
        one[place] = np.resize(column, 600)
        assert same(
            ufunc(*one)[:ROWS],
            [ufunc(*(c[i] if at == place else c[0] for at, c in enumerate(columns))) for i in range(ROWS)],
        )


@every
def test_nan_and_infinity_give_nan_without_a_warning(function: Function) -> None:
    columns = good(function.name)
    with np.errstate(all="raise"):
        for place in range(len(columns)):
            for bad in (np.nan, np.inf, -np.inf):
                changed: list[Any] = [column[0] for column in columns]
                changed[place] = np.array([bad, columns[place][0]])
                out = function.ufunc(*changed)
                assert np.isnan(out[0]) and np.isfinite(out[1])
        for huge in (1e300, -1e300, 1e-300, 0.0):
            assert not np.isinf(function.ufunc(*(huge for _ in columns)))


@every
def test_a_count_that_is_none_gives_nan(function: Function) -> None:
    columns = good(function.name)
    for place, role in enumerate(function.arguments):
        if role.kind in COUNTS:
            for bad in (14.5, 3.0, 10001.0, 1e300, -14.0):
                assert np.isnan(
                    function.ufunc(*(bad if at == place else column[0] for at, column in enumerate(columns)))
                )


# --- What comes in ---------------------------------------------------------------------------------------------------


@every
def test_shapes_and_types_of_numpy(function: Function) -> None:
    ufunc, (first, *rest) = function.ufunc, [column[0] for column in good(function.name)]
    value = ufunc(first, *rest)
    assert type(value) is np.float64
    for shape in ((), (0,), (1,), (5,), (2, 3), (0, 4)):
        out = ufunc(np.full(shape, first), *rest)
        assert np.shape(out) == shape and out.dtype == np.float64 and np.all(out == value)
    assert same(ufunc([first, first], *rest), [value] * 2)
    assert same(ufunc((first,), *rest), [value])
    strided = np.full((4, 6), np.nan)
    strided[::2, 1::3] = first
    assert np.all(ufunc(strided[::2, 1::3], *rest) == value)
    assert np.all(ufunc(np.full(3, first, dtype=">f8"), *rest) == value)  # bytes the other way round
    read_only = np.full(3, first)
    read_only.setflags(write=False)
    assert np.all(ufunc(read_only, *rest) == value)
    single = np.float32(first)  # keeps what it has of digits, and no more
    assert same(ufunc(np.full(3, single), *rest), ufunc(np.full(3, float(single)), *rest))
    for kind in (np.int64, np.int32, np.uint16):
        assert same(ufunc(np.array([0, 1, 40], dtype=kind), *rest), ufunc([0.0, 1.0, 40.0], *rest))
    assert same(ufunc(40, *rest), ufunc(40.0, *rest)) and same(ufunc(np.int16(40), *rest), ufunc(40.0, *rest))
    assert same(ufunc([True, False], *rest), ufunc([1.0, 0.0], *rest))  # as NumPy's own ufuncs have it


@every
def test_broadcasting_out_where_and_outer(function: Function) -> None:
    ufunc, columns = function.ufunc, good(function.name)
    row = [column[0] for column in columns]
    value = ufunc(*row)
    wide = [np.full((3, 1) if i % 2 else (1, 4), one) for i, one in enumerate(row)]
    assert np.all(ufunc(*wide) == value)
    out = np.zeros(ROWS)
    assert ufunc(*columns, out=out) is out and same(out, ufunc(*columns))
    inside = columns[0].copy()
    ufunc(inside, *columns[1:], out=inside)  # in the place of an argument
    assert same(inside, out)
    kept = np.full(ROWS, -1.0)
    ufunc(*columns, out=kept, where=np.arange(ROWS) % 2 == 0)
    assert same(kept[::2], out[::2]) and np.all(kept[1::2] == -1.0)
    if ufunc.nin == 2:
        outer = ufunc.outer(columns[0][:3], columns[1][:4])
        assert outer.shape == (3, 4) and same(outer, ufunc(columns[0][:3, None], columns[1][None, :4]))


@every
def test_masked_arrays_and_pandas(function: Function) -> None:
    ufunc, (first, *rest) = function.ufunc, [column[:3] for column in good(function.name)]
    value = ufunc(first, *rest)
    masked = ufunc(np.ma.array(first, mask=[False, True, False]), *rest)
    assert isinstance(masked, np.ma.MaskedArray) and list(masked.mask) == [False, True, False]
    assert same(masked.compressed(), value[[0, 2]])
    index = pd.Index(["a", "b", "c"], name="which")
    series = ufunc(pd.Series(first, index=index), *rest)
    assert isinstance(series, pd.Series) and series.index.equals(index) and same(series, value)
    lacking = ufunc(pd.Series([first[0], None, first[2]], dtype="Float64"), *rest)
    assert list(lacking.isna()) == [False, True, False] and lacking[0] == value[0]
    frame = pd.DataFrame({"x": first, "y": first}, index=index)
    both = ufunc(frame, *(one[0] for one in rest))
    assert isinstance(both, pd.DataFrame) and both.index.equals(index) and list(both.columns) == ["x", "y"]
    assert len(ufunc(pd.Series([], dtype=float), *(one[0] for one in rest))) == 0


@every
def test_polars(function: Function) -> None:
    pl = pytest.importorskip("polars")
    ufunc, columns = function.ufunc, [column[:3] for column in good(function.name)]
    value = ufunc(*columns)
    frame = pl.DataFrame({role.name: column for role, column in zip(function.arguments, columns, strict=True)})
    series = ufunc(*frame.get_columns())
    assert isinstance(series, pl.Series) and same(series.to_numpy(), value)
    expression = ufunc(*(pl.col(name) for name in frame.columns))
    assert isinstance(expression, pl.Expr)
    lazy = frame.lazy().select(expression.alias("result"))
    assert lazy.collect_schema() == {"result": pl.Float64}
    assert same(lazy.collect()["result"].to_numpy(), value)
    mixed = ufunc(pl.col(frame.columns[0]), *(column[0] for column in columns[1:]))
    assert same(frame.select(mixed).to_series().to_numpy(), ufunc(columns[0], *(column[0] for column in columns[1:])))
    lacking = pl.Series("x", [columns[0][0], None, columns[0][2]], dtype=pl.Float64)
    assert ufunc(lacking, *frame.get_columns()[1:]).to_list() == [value[0], None, value[2]]
    assert len(ufunc(lacking.head(0), *(column[0] for column in columns[1:]))) == 0


def test_dask_stays_lazy() -> None:
    dask, dask_array = pytest.importorskip("dask"), pytest.importorskip("dask.array")
    lazy = {}
    for name, function in LIST.items():
        first, *rest = (column[:6] for column in good(name))
        lazy[name] = function.ufunc(dask_array.from_array(first, chunks=4), *rest)
        assert isinstance(lazy[name], dask_array.Array) and lazy[name].dtype == np.float64, name
    for name, value in zip(lazy, dask.compute(*lazy.values(), scheduler="synchronous"), strict=True):
        assert same(value, LIST[name].ufunc(*(column[:6] for column in good(name)))), name


@every
def test_xarray_keeps_its_dimensions(function: Function) -> None:
    xr = pytest.importorskip("xarray")
    ufunc, (first, *rest) = function.ufunc, [column[:6] for column in good(function.name)]
    one_each = [column[0] for column in rest]
    given = xr.DataArray(first.reshape(2, 3), dims=("gear", "tyre"), coords={"gear": [1, 2]})
    labelled = ufunc(given, *one_each)
    assert isinstance(labelled, xr.DataArray) and labelled.dims == ("gear", "tyre") and list(labelled.gear) == [1, 2]
    assert same(labelled.values.ravel(), ufunc(first, *one_each))


@every
def test_what_is_no_number_is_refused_by_name(function: Function) -> None:
    good_row: list[Any] = [column[0] for column in good(function.name)]
    for place, role in enumerate(function.arguments):
        takes = f"{function.name}: {role.name} takes plain numbers" + (f" of {role.unit}" if role.unit else "")
        for bad, told in (
            (None, "not None"), ("40", "not '40'"), (["a"], "not a list of <U1"), ([1.0, None], "not a list with None"),
            (b"1", "not b'1'"), (1j, "not 1j"), (np.array(["a"]), "not an ndarray of <U1"), ({}, "not {}"),
            (np.datetime64("2020-01-01"), "datetime64"), (pd.Series(["a"]), "a Series of str"),
        ):  # fmt: skip
            row = [*good_row[:place], bad, *good_row[place + 1 :]]
            with pytest.raises(TypeError) as caught:
                function.ufunc(*row)
            assert str(caught.value).startswith(takes) and told in str(caught.value)
    with pytest.raises(TypeError, match="by position, and 0 came"):
        function.ufunc()
    with pytest.raises(TypeError, match=f"takes {len(good_row)} argument"):
        function.ufunc(*good_row[1:], **{function.arguments[0].name: good_row[0]})


# --- Units -----------------------------------------------------------------------------------------------------------


@cache
def pint_units() -> Any:
    return pytest.importorskip("pint").UnitRegistry()


@every
def test_own_quantities_are_refused_with_a_hint(function: Function) -> None:
    row: list[Any] = [column[0] for column in good(function.name)]
    for place, role in enumerate(function.arguments):
        for quantity in {ls.Length("1 m"), unit(role)} - {1.0}:
            with pytest.raises(TypeError, match=f"^{function.name}: {role.name} takes plain numbers") as caught:
                function.ufunc(*row[:place], quantity, *row[place + 1 :])
            assert repr(quantity) in str(caught.value)
            hint = f"divide by the unit, .../layshaft.{role.kind}('1 {role.unit}')"
            assert (hint in str(caught.value)) == (type(quantity).__name__ == role.kind)
        with pytest.raises(TypeError, match=f"^{function.name}: {role.name} takes"):
            function.ufunc(*row[:place], [ls.Length("1 m")], *row[place + 1 :])


@every
def test_quantities_of_others_are_refused_unless_switched_on(function: Function) -> None:
    units, ufunc = pint_units(), function.ufunc
    columns = [column[:3] for column in good(function.name)]
    value = ufunc(*columns)
    theirs = [
        units.Quantity(x, _array_manners.pint_unit(role.unit))
        for x, role in zip(columns, function.arguments, strict=True)
    ]
    for place, role in enumerate(function.arguments):
        row = [*columns[:place], theirs[place], *columns[place + 1 :]]
        with pytest.raises(TypeError, match=f"^{function.name}: {role.name} takes plain numbers") as caught:
            ufunc(*row)
        assert f"numbers of {role.unit}," in str(caught.value) or not role.unit
        assert "enable_pint" in str(caught.value)
    with adapters.enable_pint(units):
        for given in (theirs, [theirs[0], *columns[1:]]):
            out = ufunc(*given)
            assert isinstance(out, units.Quantity) and same(
                out.m_as(_array_manners.pint_unit(function.result.unit)), value
            )
        with pytest.raises(TypeError, match=f"^{function.name}: {function.arguments[0].name}: Cannot convert"):
            ufunc(units.Quantity(1.0, "ampere"), *columns[1:])
    with pytest.raises(TypeError):
        ufunc(*theirs)


@every
def test_astropy_is_refused_by_name(function: Function) -> None:
    astropy = pytest.importorskip("astropy.units")
    row: list[Any] = [column[0] for column in good(function.name)]
    for place, role in enumerate(function.arguments):
        for bad in (3.0 * astropy.m, np.ones(3) * astropy.m):
            with pytest.raises(TypeError, match=rf"^{function.name}: {role.name} takes plain numbers.*\.to_value\("):
                function.ufunc(*row[:place], bad, *row[place + 1 :])


def test_pint_converts_what_has_another_unit() -> None:
    units = pint_units()
    with adapters.enable_pint(units):
        speed = arrays.road_speed_kmh([50, 100] * units.hertz * 2 * np.pi, 20.0, 2 * units.m)
        assert (
            speed.to("km/h").magnitude == pytest.approx([18.0, 36.0], rel=1e-14)
            and str(speed.units) == "kilometer / hour"
        )
        change = arrays.circumference_change(units("2 m"), units("210 cm"))
        assert change.dimensionless and float(change) == pytest.approx(0.05, rel=1e-12)
        with pytest.raises(TypeError, match="out and where take no values with units"):
            arrays.passes(14, 106, out=np.ones(1) * units.m)


def test_an_adapter_is_off_after_its_block_and_after_disable() -> None:
    units, others = pint_units(), pytest.importorskip("pint").UnitRegistry()
    length = units("2 m")
    adapter = adapters.enable_pint(units)
    try:
        assert arrays.circumference_change(length, length).m == 0.0
        with pytest.raises(TypeError, match="would lose the units"):
            arrays.circumference_change(others("2 m"), 2000.0)  # of a registry that is not on
        with adapters.enable_pint(units):
            pass
        assert arrays.circumference_change(length, length).m == 0.0  # the first is still on
    finally:
        adapter.disable()
    adapter.disable()
    with pytest.raises(TypeError, match="would lose the units"):
        arrays.circumference_change(length, 2000.0)
    with pytest.raises(TypeError, match=r"expected a pint\.UnitRegistry"):
        adapters.enable_pint(3)  # type: ignore[arg-type]


def test_units_are_refused_by_methods_too() -> None:
    length = pint_units()("2 m")
    with adapters.enable_pint(pint_units()), pytest.raises(TypeError):
        arrays.circumference_change.outer(length, [2000.0])


def test_an_array_beside_an_expression_is_refused() -> None:
    pl = pytest.importorskip("polars")
    with pytest.raises(TypeError, match="circumference_mm is list beside an expression"):
        arrays.road_speed_kmh(pl.col("rpm"), 20.0, [2000.0])
    with pytest.raises(TypeError, match="of expressions takes its arguments alone"):
        arrays.road_speed_kmh(pl.col("rpm"), 20.0, 2000.0, where=True)
    frame = pl.LazyFrame({"rpm": [3000.0, None], "U": [2000.0, 2000.0]})
    both = frame.select(
        arrays.road_speed_kmh(pl.col("rpm"), 20.0, pl.col("U")),
        again=arrays.road_speed_kmh(pl.col("rpm"), 20.0, pl.col("rpm")),
    ).collect()
    assert both.columns == ["rpm", "again"] and both["rpm"].to_list() == [pytest.approx(18.0), None]


# --- The module ------------------------------------------------------------------------------------------------------


def test_the_kept_stub_is_what_the_script_makes() -> None:
    stub = Path(ls.__file__).parent / "_arrays.pyi"
    assert stub.read_text(encoding="utf-8") == "".join(load("bindings/array_stubs.py").lines())


def test_layshaft_alone_loads_no_numpy_and_arrays_no_library_beside_it() -> None:
    code = (
        "import layshaft, sys; assert 'numpy' not in sys.modules; layshaft.arrays, layshaft.adapters; assert 'numpy' in sys.modules;"
        "assert not {'pandas', 'polars', 'pyarrow', 'pint', 'dask', 'xarray'} & set(sys.modules)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_a_function_can_be_unpickled_where_nothing_is_loaded_yet(tmp_path: Path) -> None:
    (tmp_path / "f").write_bytes(pickle.dumps(arrays.road_speed_kmh))
    code = "import pickle; assert abs(pickle.load(open('f', 'rb'))(6000, 20, 2000) - 36) < 1e-12"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=tmp_path)
