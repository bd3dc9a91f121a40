# SPDX-License-Identifier: MIT
"""Quantities of other libraries as arguments of ``layshaft.arrays``, each to be switched on. Off until then.

>>> import numpy as np, pint
>>> from layshaft import adapters, arrays
>>> units = pint.UnitRegistry()
>>> with adapters.enable_pint(units):
...     speed = arrays.road_speed_kmh([3000, 6000] * units.rpm, 20.0, 2 * units.m)
>>> print(speed)
[18.0 36.0] kilometer / hour
"""

from __future__ import annotations

from types import TracebackType
from typing import TYPE_CHECKING, Any

from . import _array_manners

if TYPE_CHECKING:
    import pint

__all__ = ["Adapter", "enable_pint"]


class Adapter:
    """One adapter that is on, until ``disable()`` or the end of a ``with`` block."""

    def __init__(self, registry: Any) -> None:
        self._registry = registry
        _array_manners.registries.append(registry)

    def disable(self) -> None:
        """Switches it off. Once is enough; a second time does nothing."""
        if self._registry is not None:
            _array_manners.registries.remove(self._registry)
            self._registry = None

    def __enter__(self) -> Adapter:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        self.disable()


def enable_pint(registry: pint.UnitRegistry[Any]) -> Adapter:
    """Lets the functions of ``layshaft.arrays`` take quantities of this registry of pint's.

    Each is converted to the unit of its argument, or refused where it cannot be; plain numbers beside it stay in the
    units that the names say. The result is a quantity of the registry, in the unit that the function's name says. This
    holds for calls alone: ``.outer`` and its sisters refuse quantities as ever.

    It is on everywhere in this process until switched off: keep what is returned, and call ``.disable()``, or write
    ``with enable_pint(registry):``.
    """
    if not hasattr(registry, "Quantity"):
        raise TypeError(f"registry is {type(registry).__name__}; expected a pint.UnitRegistry")
    return Adapter(registry)
