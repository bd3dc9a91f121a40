# SPDX-License-Identifier: MIT
"""Formulas over NumPy arrays: real ufuncs over plain numbers.

The order of the arguments and their units stand in the names and the docstrings. Integers and float32 become float64.
An element that is NaN or out of range gives NaN, and no function here raises for one element.
"""

from __future__ import annotations

try:
    import numpy as _numpy  # noqa: F401
except ImportError as _problem:  # pragma: no cover
    raise ImportError("layshaft.arrays needs NumPy 2: pip install 'layshaft[arrays]'") from _problem

from . import _arrays
from ._arrays import *  # noqa: F403

__all__ = [name for name in dir(_arrays) if not name.startswith("_")]
