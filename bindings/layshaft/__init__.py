# SPDX-License-Identifier: MIT
"""The maths of a vehicle's final drive: tyre, gears, chain, wear and speedometer, with units.

A quantity is made of a number and a unit, or read from text; a unit is a quantity of one:

>>> import layshaft as ls
>>> ls.road_speed(6000 * ls.rpm, 20.0, "2 m")
Speed('36 km/h')
>>> ls.Length("612 mm") / ls.inch
24.094488188976378

``layshaft.arrays`` has the same formulas as NumPy ufuncs over plain numbers, and ``layshaft.adapters`` lets pint's
quantities into them; ``layshaft.frames`` takes a data frame of set-ups. ``layshaft.plots`` draws pictures that explain,
``layshaft.report`` writes whole pages, ``layshaft.gpx`` reads recorded tracks, ``layshaft.fleet`` asks one study of
many machines, ``layshaft.studies`` puts a study into words, ``layshaft.exercises`` makes exercises for a class, and
``layshaft.testing`` has hypothesis strategies for others' tests. Each is loaded when it is first asked for, so that
``import layshaft`` is quick and needs no NumPy.
"""

from . import _core
from ._core import *  # noqa: F403
from ._core import __version__ as __version__

__all__ = [*(name for name in dir(_core) if not name.startswith("_")), "choose"]  # noqa: F405

_MODULES = ("adapters", "arrays", "exercises", "fleet", "frames", "gpx", "plots", "report", "studies", "testing")


def __getattr__(name: str) -> object:
    import importlib

    if name in _MODULES:
        return importlib.import_module(f".{name}", __name__)
    if name == "choose":
        globals()[name] = importlib.import_module(".choosing", __name__).choose
        return globals()[name]
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__, *_MODULES})
