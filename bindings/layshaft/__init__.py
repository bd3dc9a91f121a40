# SPDX-License-Identifier: MIT
"""The maths of a vehicle's final drive: tyre, gears, chain, wear and speedometer, with units.

A quantity is made of a number and a unit, or read from text; a unit is a quantity of one:

>>> import layshaft as ls
>>> ls.road_speed(6000 * ls.rpm, 20.0, "2 m")
Speed('36 km/h')
>>> ls.Length("612 mm") / ls.inch
24.094488188976378

``layshaft.arrays`` has the same formulas as NumPy ufuncs over plain numbers, ``layshaft.report`` writes whole pages,
``layshaft.gpx`` reads recorded tracks, ``layshaft.fleet`` asks one study of many machines, and ``layshaft.exercises``
makes exercises for a class. Each is loaded when it is first asked for, so that ``import layshaft`` is quick and needs
no NumPy.
"""

from __future__ import annotations

from contextlib import suppress as _suppress
from typing import TYPE_CHECKING as _TYPE_CHECKING

from . import _core
from ._core import *  # noqa: F403
from ._core import __version__ as __version__
from .choosing import choose as choose

if _TYPE_CHECKING:
    from . import arrays as arrays
    from . import exercises as exercises
    from . import fleet as fleet
    from . import gpx as gpx
    from . import report as report

__all__ = [*(name for name in dir(_core) if not name.startswith("_")), "choose"]

for _name in __all__:
    _member = getattr(_core, _name, None)
    if getattr(_member, "__module__", None) == _core.__name__:
        with _suppress(AttributeError, TypeError):  # a built-in function keeps the module that made it
            _member.__module__ = __name__  # where it is to be found, for pickle and for people


def __getattr__(name: str) -> object:
    if name in ("arrays", "exercises", "fleet", "gpx", "report"):
        import importlib

        return importlib.import_module(f".{name}", __name__)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
