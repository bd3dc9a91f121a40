# SPDX-License-Identifier: MIT
"""Formulas over NumPy arrays: every formula of the library that takes numbers, as a real ufunc over plain numbers.

The order of the arguments and their units stand in the names and the docstrings: ``road_speed_kmh(engine_rpm,
overall_ratio, circumference_mm)``. Fractions stay fractions: 0.02, not 2 per cent. Integers, bools and float32 become
float64. An element that is NaN or out of range gives NaN, and no function here raises for one element. Each docstring
says the error of its formula; with the rounding of units none is beyond 6.8 ulp.

They take what NumPy's own ufuncs take, and give back what came: a pandas Series with its index, an xarray.DataArray
with its dimensions, a dask array or a Polars expression, both lazy, a Polars Series, a masked array. Whatever carries
units is refused, unless ``layshaft.adapters`` is told to convert it; so are text and None.

``parse_tyres`` reads many tyre designations at once.
"""

from __future__ import annotations

try:
    import numpy as _numpy  # noqa: F401
except ImportError as _problem:  # pragma: no cover
    raise ImportError("layshaft.arrays needs NumPy 2: pip install 'layshaft[arrays]'") from _problem

from . import _array_manners, _arrays
from ._array_tyres import parse_tyres as parse_tyres
from ._arrays import *  # noqa: F403

_arrays._mind(_array_manners.before, _array_manners.after)

__all__ = [*(name for name in dir(_arrays) if not name.startswith("_")), "parse_tyres"]
