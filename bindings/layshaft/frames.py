# SPDX-License-Identifier: MIT
"""Whole set-ups in bulk: a data frame with a row a set-up in, the same frame with the measures of each out.

Any frame that narwhals knows goes in, and comes out as it is: pandas with its index, Polars, a PyArrow table.

>>> import layshaft as ls
>>> from layshaft import frames
>>> machine = ls.Machine(
...     name="A bike",
...     gearbox=ls.Gearbox(primary=3.1, gears=[2.7, 1.9, 1.0], idle="1500 rpm", rev_limit="9000 rpm"),
...     adjuster=ls.Adjuster("570 mm", "650 mm"),
...     chain="520",
...     speedometer="front wheel",
...     stock=ls.Setup(front=12, rear=47, tyre="110/100-18"),
... )
>>> import pandas as pd
>>> table = pd.DataFrame({"front": [12, 13], "rear": [47, 48], "tyre": ["110/100-18", "120/90-18"]})
>>> frames.appraise(machine, table, columns=["thrust_change"], bands=False).round(4)
   front  rear        tyre  thrust_change
0     12    47  110/100-18         0.0000
1     13    48   120/90-18        -0.0517
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, Literal, NamedTuple, TypeVar

from ._core import Error, Machine, RangeError, Setup, Speed, _appraise_rows, _row_measures, _told_measures, measures
from ._escape import in_short

try:
    import numpy as np
    import numpy.typing as npt
except ImportError as _problem:  # pragma: no cover
    raise ImportError("layshaft.frames needs NumPy and narwhals: pip install 'layshaft[frames]'") from _problem

if TYPE_CHECKING:
    import narwhals as nw

__all__ = ["appraise", "columns"]

Frame = TypeVar("Frame")
Out = TypeVar("Out", bound="Mapping[str, npt.NDArray[Any]] | npt.NDArray[Any]")

# What a frame says of each set-up. Other columns are carried through.
NUMBERS = ("front", "rear", "links", "circumference_low_mm", "circumference_mm", "circumference_high_mm",
           "front_price", "rear_price", "chain_price", "tyre_price")  # fmt: skip
WORDS = ("tyre", "tyre_use", "chain", "chain_seal", "front_material", "rear_material")
REASON = "reason"

ROAD = ("top speed", "climb", "thrust over limit")  # a solve for every pair of a drive and a tyre: only when asked for
MANY = 100_000  # rows from which threads pay


class _Column(NamedTuple):
    """A measure, and what its columns are called; no name for an end that it has not, or that is not wanted."""

    measure: str
    needs: str
    low: str | None
    nominal: str
    high: str | None

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(name for name in (self.low, self.nominal, self.high) if name is not None)


def _columns(bands: bool) -> dict[str, _Column]:
    """By the name of the measure."""
    every = {}
    for measure, unit, has_ends, needs in _row_measures():
        stem = "chain_links" if measure == "links" else measure.replace(" ", "_")  # links go in
        low, nominal, high = ("_".join(filter(None, (stem, end, unit))) for end in ("low", "", "high"))
        ends = bands and has_ends
        every[measure] = _Column(measure, needs, low if ends else None, nominal, high if ends else None)
    return every


def columns(*, bands: bool = True) -> dict[str, str]:
    """Every column that ``appraise`` can add, by its name: what it means. A column without a unit in its name is a
    plain number, of changes and other shares a share of one."""
    meaning: dict[str, str] = dict(measures().items())
    ends = {0: " (low)", 1: "", 2: " (high)"}
    return {
        name: meaning[column.measure] + ends[place]
        for column in _columns(bands).values()
        for place, name in enumerate((column.low, column.nominal, column.high))
        if name is not None
    }


def _asked(
    machine: Machine, wanted: Sequence[str] | None, given: Sequence[str], speed: object, bands: bool
) -> list[_Column]:
    every = _columns(bands)
    if wanted is None:
        told = set(_told_measures(machine)) - set(ROAD)
        if speed is None:
            told.discard("engine speed")
        if not any(name.endswith("_price") for name in given):
            told.discard("cost")
        return [column for measure, column in every.items() if measure in told]
    if isinstance(wanted, str):
        raise TypeError(f"columns: expected a list of names, got the text {in_short(wanted)}")
    by_name = {column.nominal: column for column in every.values()}
    asked: list[_Column] = []
    for name in wanted:
        column = every.get(name) or by_name.get(name)
        if column is None:
            raise RangeError(
                f"columns: no measure is called {in_short(name)}; expected names of frames.columns(bands=False)"
            )
        if column not in asked:
            asked.append(column)
    return asked


class _Places(dict[object, int]):
    """The place of each word among those that occur, in the order they come."""

    def __missing__(self, word: object) -> int:
        self[word] = place = len(self)
        return place


def _numbers(series: nw.Series[Any]) -> npt.NDArray[np.float64]:
    import narwhals as nw

    try:
        numbers = series.cast(nw.Float64).to_numpy()
    except Exception as problem:  # each kind of frame has its own
        raise TypeError(f"column {in_short(series.name)}: expected numbers, got {series.dtype}") from problem
    return np.ascontiguousarray(numbers, dtype=np.float64)


def _words(series: nw.Series[Any]) -> tuple[npt.NDArray[np.float64], tuple[str, ...]]:
    """Of each row the place of its word among those that occur, NaN for none."""
    places = _Places()
    values = series.to_list()
    at = np.fromiter(map(places.__getitem__, values), np.float64, len(values))
    # None, NaN and what pandas has for nothing are not equal to themselves, or are None.
    missing = [place for word, place in places.items() if word is None or (word == word) is not True]
    if missing:
        at[np.isin(at, missing)] = np.nan
    return at, tuple(map(str, places))


def _frame(frame: object) -> nw.DataFrame[Any]:
    try:
        import narwhals as nw
    except ImportError as problem:  # pragma: no cover
        raise ImportError("layshaft.frames needs narwhals: pip install 'layshaft[frames]'") from problem
    if isinstance(frame, nw.DataFrame):
        return frame
    try:
        told = nw.from_native(frame)  # type: ignore[call-overload]
    except TypeError as problem:
        raise TypeError(
            f"frame: expected a data frame of pandas, Polars or PyArrow, got {type(frame).__name__}"
        ) from problem
    if isinstance(told, nw.LazyFrame):
        raise TypeError("frame is lazy, and its rows are not there yet: collect it first")
    return told  # type: ignore[no-any-return]


def _parts(frame: nw.DataFrame[Any]) -> dict[str, object]:
    """What the frame says of each set-up."""
    given = set(frame.columns)
    for name in ("front", "rear"):
        if name not in given:
            raise Error(f"frame has no column {name!r}, the teeth of the {name} sprocket")
    if not given & {"tyre", "circumference_mm"}:
        raise Error("frame has no column 'tyre', and no 'circumference_mm' in its place")
    for name in ("circumference_low_mm", "circumference_high_mm"):
        if name in given and "circumference_mm" not in given:
            raise Error(f"frame has a column {name!r}, but no 'circumference_mm' that it is an end of")
    parts: dict[str, object] = {name: _numbers(frame[name]) for name in NUMBERS if name in given}
    parts.update((name, _words(frame[name])) for name in WORDS if name in given)
    return parts


def _checked(out: Any, names: Sequence[str], rows: int) -> dict[str, npt.NDArray[Any]]:
    """The columns of ``out``, which must all be there."""
    there = out.dtype.names or () if isinstance(out, np.ndarray) else out.keys()
    found = {}
    for name in names:
        if name not in there:
            raise Error(f"out has no {name!r}; expected a float64 array of {rows} rows for each column")
        column = out[name]
        if not isinstance(column, np.ndarray) or column.dtype != np.float64 or column.shape != (rows,):
            came = f"{column.dtype}, {column.shape}" if isinstance(column, np.ndarray) else type(column).__name__
            raise Error(f"out[{name!r}]: expected a float64 array of shape ({rows},), got {came}")
        if not column.flags.writeable:
            raise Error(f"out[{name!r}] is read-only")
        found[name] = column
    return found


def _why(bad: Sequence[tuple[int, str]], rows: int) -> npt.NDArray[np.object_]:
    reasons = np.full(rows, None, dtype=object)
    for row, reason in bad:
        reasons[row] = reason
    return reasons


def appraise(
    machine: Machine,
    frame: Frame,
    *,
    columns: Sequence[str] | None = None,
    gear: int | None = None,
    speed: Speed | str | None = None,
    bands: bool = True,
    present: Setup | None = None,
    errors: Literal["raise", "null"] = "raise",
    threads: int | None = None,
    out: Out | None = None,
) -> Frame | Out:
    """Appraises a frame of set-ups on one machine: the same frame with a column for each measure.

    The frame says of each set-up, a row each:

    - ``front`` and ``rear``: teeth; ``links``, optional: without, the shortest even chain that closes;
    - ``tyre``, a marking, or ``circumference_mm``, a measured rollout that overrides it, with ``circumference_low_mm``
      and ``circumference_high_mm`` where its ends are known;
    - optional: ``tyre_use`` ("road", "special" or "snow"), ``chain`` (a series), ``chain_seal``, ``front_material`` and
      ``rear_material`` (words), and
      ``front_price``, ``rear_price``, ``chain_price`` and ``tyre_price``, labour included.

    Whatever else it has is carried through. A Setup's other parts (a front tyre, a worn tread, a measured efficiency)
    are asked of single set-ups by ``compare``.

    ``columns`` names measures, as ``frames.columns()`` or ``measures()`` do; None: all that the machine can tell, but
    top speed, climb and thrust over limit, which take a solve for every pair of sprockets and tyre. ``speed`` is where
    an engine speed is asked for, ``gear`` where that or a climb is. Each measure that has ends comes as three columns,
    low, nominal and high; ``bands=False`` gives the nominal alone. Changes are against the machine's stock set-up, cost
    and parts against ``present``, the Setup on the machine now (None: the stock one). The numbers are those of
    ``appraise`` and ``compare``; missing is what cannot be told.

    A row that has no set-up raises an Error that names it, or, with ``errors="null"``, is missing in every column with
    the reason in a last one. ``threads`` is 1 to 256, 0 for as many as there are cores, None for as many as pay. Other
    Python threads go on meanwhile.

    ``out`` is for repeated use: a dict of float64 arrays, or a structured array, by the names of all columns (and of
    ``reason``, of objects, if that is wanted). It is filled and returned in the frame's place, and no new column is
    made.
    """
    if errors not in ("raise", "null"):
        raise RangeError(f"errors is {in_short(errors)}; expected 'raise' or 'null'")
    table = _frame(frame)
    parts, rows = _parts(table), len(table)
    asked = _asked(machine, columns, tuple(parts), speed, bands)
    names = [name for column in asked for name in column.names]
    if out is not None:
        told = _checked(out, names, rows)
    else:
        for name in [*names, *([REASON] if errors == "null" else [])]:
            if name in table.columns:
                raise Error(f"frame has a column {name!r} already: rename it, or leave it out")
        told = dict(zip(names, np.empty((len(names), rows)), strict=True))
    ends = [
        (
            column.measure,
            gear if column.needs else None,
            speed if column.needs == "gear and speed" else None,
            *(told[name] if name is not None else None for name in (column.low, column.nominal, column.high)),
        )
        for column in asked
    ]
    if threads is None:
        threads = 0 if rows >= MANY else 1
    bad = _appraise_rows(
        machine, rows, parts, ends, present=present, threads=threads, first_bad_alone=errors == "raise"
    )
    if bad and errors == "raise":
        row, reason = bad[0]
        raise Error(f"row {row}: {reason}")
    if out is not None:
        has_reason = REASON in (out.dtype.names or () if isinstance(out, np.ndarray) else out)
        if errors == "null" and has_reason:
            out[REASON][:] = _why(bad, rows)
        return out
    return _with(table, told, _why(bad, rows) if errors == "null" else None)  # type: ignore[no-any-return]


def _with(table: nw.DataFrame[Any], told: Mapping[str, npt.NDArray[Any]], reasons: npt.NDArray[Any] | None) -> Any:
    """The frame with columns added, as it came."""
    import narwhals as nw

    kind = table.implementation
    added = [nw.new_series(name, column, nw.Float64, backend=kind).fill_nan(None) for name, column in told.items()]
    if reasons is not None:
        added.append(nw.new_series(REASON, reasons.tolist(), nw.String, backend=kind))
    return table.with_columns(*added).to_native()
