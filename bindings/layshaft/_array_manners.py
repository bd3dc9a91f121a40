# SPDX-License-Identifier: MIT
"""What the array functions do with an argument that is no plain number or array. Private; _arrays calls it.

A pandas, xarray, dask or Polars object is NumPy's own affair, with one exception: several Polars expressions in one
call, which Polars cannot type by itself. Whatever carries units is refused, or converted where an adapter is on.
"""

from __future__ import annotations

import re
import sys
from typing import Any, NamedTuple, NoReturn

import numpy as np

from . import _arrays
from ._escape import called


class Role(NamedTuple):
    """An argument of a function, or its result."""

    name: str
    word: str
    kind: str
    unit: str  # empty: a pure number or a count

    @property
    def takes(self) -> str:
        return f"plain numbers of {self.unit}" if self.unit else "plain numbers"


_roles: dict[str, tuple[list[Role], Role]] = {}


def roles(ufunc: np.ufunc) -> tuple[list[Role], Role]:
    """A function's arguments and its result."""
    if not _roles:
        for name, _, arguments, result in _arrays._formulas():
            _roles[name] = [Role(*one) for one in arguments], Role(*result)
    return _roles[ufunc.__name__]


# --- Units of others --------------------------------------------------------------------------------------------------

registries: list[Any] = []  # pint's, that were switched on by layshaft.adapters


def carries_units(kind: type) -> bool:
    """Whether a class is of values with units: it says which, and hands out the number without."""
    return (hasattr(kind, "units") or hasattr(kind, "unit")) and (
        hasattr(kind, "magnitude") or hasattr(kind, "to_value")
    )


def is_own_quantity(kind: type) -> bool:
    """Whether a class is one of layshaft's own quantities, which leave NumPy's arithmetic to themselves."""
    return kind.__module__.partition(".")[0] == "layshaft" and getattr(kind, "__array_ufunc__", 0) is None


def is_expression(kind: type) -> bool:
    return kind.__name__ == "Expr" and kind.__module__.startswith("polars.")


def before(ufunc: np.ufunc, arguments: tuple[Any, ...], options: dict[str, Any]) -> Any:
    """The answer to a call, or NotImplemented where it is NumPy's to answer."""
    everything = [*arguments, *options.values()]
    if any(carries_units(type(one)) for one in everything):
        return with_units(ufunc, arguments, options)
    for role, one in zip(roles(ufunc)[0], arguments, strict=False):
        if is_own_quantity(type(one)):
            refuse_own(ufunc, role, one)
    if any(is_expression(type(one)) for one in everything):
        return as_expression(ufunc, arguments, options)
    return NotImplemented


def refuse_own(ufunc: np.ufunc, role: Role, quantity: Any) -> NoReturn:
    kind = type(quantity).__name__
    if kind == role.kind:
        how = f"divide by the unit, .../layshaft.{kind}('1 {role.unit}')"
    else:
        how = f"{role.kind} is wanted" if role.unit else "a pure number is wanted"
    raise TypeError(f"{ufunc.__name__}: {role.name} takes {role.takes}, not {quantity!r}; {how}")


def pint_unit(unit: str) -> str:
    """As pint writes it: 'kg m2' is 'kg m**2', 'Nm' is 'N m'."""
    return re.sub(r"(?<=[a-z])(?=\d)", "**", unit).replace("Nm", "N m")


def with_units(ufunc: np.ufunc, arguments: tuple[Any, ...], options: dict[str, Any]) -> Any:
    takes, gives = roles(ufunc)
    registry = None
    numbers = []
    for role, one in zip(takes, arguments, strict=False):
        if carries_units(type(one)):
            registry = next((known for known in registries if isinstance(one, known.Quantity)), None)
            if registry is None:
                refuse_foreign(ufunc, role, one)
            one = pint_number(ufunc, role, one)
        numbers.append(one)
    if registry is None or len(arguments) != len(takes) or any(carries_units(type(one)) for one in options.values()):
        raise TypeError(
            f"{ufunc.__name__}: out and where take no values with units, and the arguments go by position: "
            f"({', '.join(role.name for role in takes)})"
        )
    return registry.Quantity(ufunc(*numbers, **options), pint_unit(gives.unit))


def pint_number(ufunc: np.ufunc, role: Role, quantity: Any) -> Any:
    try:
        return quantity.m_as(pint_unit(role.unit))
    except TypeError as problem:  # as pint's DimensionalityError is one
        raise TypeError(f"{ufunc.__name__}: {role.name}: {problem}") from problem


def refuse_foreign(ufunc: np.ufunc, role: Role, value: Any) -> NoReturn:
    kind = type(value)
    unit = pint_unit(role.unit)
    how = f".to_value({unit!r})" if hasattr(kind, "to_value") else f".to({unit!r}).magnitude"
    adapter = ", or switch on layshaft.adapters.enable_pint(registry)" if kind.__module__.startswith("pint") else ""
    raise TypeError(
        f"{ufunc.__name__}: {role.name} takes {role.takes}, and would lose the units of this "
        f"{kind.__name__} of {kind.__module__.partition('.')[0]}: give its {how}{adapter}"
    )


# --- Polars' expressions ----------------------------------------------------------------------------------------------


def as_expression(ufunc: np.ufunc, arguments: tuple[Any, ...], options: dict[str, Any]) -> Any:
    """An expression of the same function, which says its type, so that a lazy frame knows its columns ahead."""
    pl: Any = sys.modules["polars"]  # which made the expressions
    takes = roles(ufunc)[0]
    if options or len(arguments) != len(takes):
        raise TypeError(
            f"{ufunc.__name__} of expressions takes its arguments alone, by position: "
            f"({', '.join(role.name for role in takes)})"
        )
    places = [i for i, one in enumerate(arguments) if is_expression(type(one))]
    for role, one in zip(takes, arguments, strict=True):
        if not is_expression(type(one)) and np.ndim(one) > 0:
            raise TypeError(
                f"{ufunc.__name__}: {role.name} is {type(one).__name__} beside an expression; make it a column of the "
                "frame, or pl.lit(...)"
            )

    def work(columns: Any) -> Any:
        given = list(arguments)
        for place, name in zip(places, columns.struct.fields, strict=True):
            given[place] = columns.struct.field(name)
        return ufunc(*given)

    # A struct's fields need names of their own; the first keeps its own, which is that of the result, as ever.
    first, *rest = (arguments[i] for i in places)
    renamed = [one.alias(f"argument {i}") for i, one in enumerate(rest, start=1)]
    return pl.struct(first, *renamed).map_batches(work, return_dtype=pl.Float64, is_elementwise=True)


# --- Better words for a TypeError -------------------------------------------------------------------------------------


def after(ufunc: np.ufunc, arguments: tuple[Any, ...], options: dict[str, Any], error: TypeError) -> None:
    """Raises a TypeError in better words, or returns, so that NumPy's own stands."""
    takes = roles(ufunc)[0]
    call = f"{ufunc.__name__}({', '.join(role.name for role in takes)})"
    named = [name for name in options if name in {role.name for role in takes}]
    if named or not len(takes) <= len(arguments) <= len(takes) + 1:
        raise TypeError(
            f"{call} takes {len(takes)} argument{'s' * (len(takes) != 1)} by position, and {len(arguments)} came"
        ) from error
    for role, one in zip(takes, arguments, strict=False):
        if what := no_numbers(one):
            raise TypeError(f"{ufunc.__name__}: {role.name} takes {role.takes}, not {what}") from error


def no_numbers(value: Any) -> str | None:
    """What came, where it is no numbers."""
    if value is None or isinstance(value, (str, bytes, complex)):
        return repr(value)
    if hasattr(value, "__array_ufunc__") and not isinstance(value, (np.ndarray, np.generic)):
        kind = getattr(value, "dtype", None)
        return None if kind is None else f"{called(type(value))} of {kind}"
    try:
        array = np.asarray(value)
    except (TypeError, ValueError):
        return called(type(value))
    if array.dtype.kind in "biuf":
        return None
    if array.dtype == object and array.ndim:
        for one in array.flat:
            if not isinstance(one, (int, float)):
                return f"{called(type(value))} with {one!r}"
    return f"{called(type(value))} of {array.dtype}" if array.ndim else repr(value)
