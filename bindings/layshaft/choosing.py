# SPDX-License-Identifier: MIT
"""The whole set at once, by what a rider wants; with a bar where it takes long."""

from __future__ import annotations

import importlib
import time
from typing import TYPE_CHECKING, Any

from ._core import _choose

if TYPE_CHECKING:
    from collections.abc import Callable

    from ._core import Choice, Goals, Machine, Space

__all__ = ["choose"]

BAR_AFTER = 1.0  # seconds


class _Bar:
    """A bar of tqdm, from the second on in which it is worth showing; nothing without tqdm."""

    def __init__(self) -> None:
        self._began = time.monotonic()
        self._bar: Any = None
        self._wanted = True

    def __call__(self, done: int, all_of_them: int) -> None:
        if self._bar is None and self._wanted and time.monotonic() - self._began > BAR_AFTER:
            try:
                tqdm = importlib.import_module("tqdm.auto")
            except ImportError:
                self._wanted = False
            else:
                self._bar = tqdm.tqdm(total=all_of_them, unit=" set-ups", unit_scale=True)
        if self._bar is not None:
            self._bar.update(done - self._bar.n)

    def close(self) -> None:
        if self._bar is not None:
            self._bar.close()


def choose(
    machine: Machine,
    space: Space,
    goals: Goals,
    *,
    shortlist: int = 3,
    threads: int = 1,
    progress: Callable[[int, int], bool | None] | bool | None = None,
) -> Choice:
    """Chooses among all set-ups of a space by a rider's goals: a Choice.

    Every set-up is held against the limits; of those that keep them the trade-off is kept, and its best are ranked
    (``shortlist``, 1 to 1000). ``threads`` is 1 to 256, or 0 for as many as there are cores; the answer is the same.
    ``progress`` is called with the set-ups looked at and all there may be, and stops the search by returning False;
    left out, a bar of tqdm (if that is installed) shows from one second on; False shows nothing. Raises Error where
    the machine does not state what a measure needs, or a RangeError.

    >>> import layshaft as ls
    >>> space = ls.Space(fronts=[12, 13, 14], rears=range(44, 54), tyres=["120/90-18"])
    >>> goals = ls.Goals(wishes=[ls.Wish("thrust change", 0.0), ls.Wish("links", "less")])
    >>> choice = ls.choose(machine, space, goals, progress=False)
    >>> choice.examined, choice.ranked[0].setup.front, choice.ranked[0].setup.rear
    (30, 12, 45)
    """
    if progress is None or progress is True:
        bar = _Bar()
        try:
            return _choose(machine, space, goals, shortlist=shortlist, threads=threads, progress=bar)
        finally:
            bar.close()
    return _choose(
        machine, space, goals, shortlist=shortlist, threads=threads, progress=None if progress is False else progress
    )
