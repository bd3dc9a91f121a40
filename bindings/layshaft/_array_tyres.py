# SPDX-License-Identifier: MIT
"""Many tyre designations at once. Private; layshaft.arrays has what is public of it."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import Any, Literal, overload

import numpy as np
from numpy.typing import NDArray

from ._core import ParseError, TyreSize, _parse_tyres
from ._escape import in_short

USES = ("road", "special", "snow")  # in the order of TyreUse


@overload
def parse_tyres(
    texts: Sequence[str | None] | np.ndarray[Any, Any],
    errors: Literal["raise", "null"] = "raise",
    *,
    use: Literal["road", "special", "snow"] = "road",
) -> NDArray[np.void]: ...
@overload
def parse_tyres(
    texts: Any, errors: Literal["raise", "null"] = "raise", *, use: Literal["road", "special", "snow"] = "road"
) -> Any: ...
def parse_tyres(
    texts: Any, errors: Literal["raise", "null"] = "raise", *, use: Literal["road", "special", "snow"] = "road"
) -> Any:
    """Tyre designations to rows: a designation in its canonical form and what follows from it, one row a text.

    ``texts`` is a list or an array of str, and the rows are a NumPy structured array; or a pandas or Polars Series or
    an Arrow array, and the rows are a pandas DataFrame (with the same index), a Polars DataFrame or an Arrow table.
    ``use`` is that of TyreSize: "road", "special" or "snow".

    With ``errors="raise"`` the first text that is no designation raises a ParseError that says which row, what is wrong
    and what was expected. With ``errors="null"`` its row is empty (NaN and "" in a structured array, nulls in a frame)
    but for ``reason``, which says that; a missing text is such a row as well. ``reason`` is empty of every good row.

    Columns: designation, notation, construction, section_width_mm, aspect_ratio, rim_code, rim_diameter_mm,
    overall_diameter_low_mm, overall_diameter_mm, overall_diameter_high_mm, circumference_low_mm, circumference_mm,
    circumference_high_mm, load_index, load_capacity_kg, speed_symbol, rated_speed_kmh, reason. What a marking does not
    say is empty too.
    """
    if isinstance(texts, (str, bytes)):
        raise TypeError(f"texts is one text, {in_short(texts)}; expected several (of one, TyreSize tells all)")
    if errors not in ("raise", "null"):
        raise ValueError(f"errors is {in_short(errors)}; expected 'raise' or 'null'")
    if use not in USES:
        raise ValueError(f"use is {in_short(use)}; expected 'road', 'special' or 'snow'")
    reasons: dict[str, str] = {}  # the same slip often comes many times

    def reason_of(row: int, text: Any) -> str:
        if isinstance(text, str):
            if text not in reasons:
                try:
                    TyreSize(text, use=use)
                except ParseError as error:
                    if errors == "raise":
                        error.args = (f"row {row}: {error}",)
                        raise
                    reasons[text] = str(error)
            return reasons[text]
        reason = "no text" if is_missing(text) else f"no text, but {type(text).__name__} {in_short(text)}"
        if errors == "raise":
            raise TypeError(f"row {row}: {reason}; expected a marking such as '110/90-18'")
        return reason

    rows, same_as = _parse_tyres(column_of(texts), USES.index(use), reason_of)
    return frame_of(rows, np.frombuffer(same_as, dtype=np.uintp), texts)


def is_missing(value: Any) -> bool:
    """None, NaN or a library's own sign for a missing value, which equals nothing, or does not say."""
    return (
        value is None or type(value).__name__ in ("NAType", "NaTType") or (isinstance(value, float) and value != value)
    )


def library_of(texts: Any) -> str:
    """Whose column it is; empty of what is no column."""
    kind = type(texts)
    library = kind.__module__.partition(".")[0]
    is_column = kind.__name__.endswith("Array") if library == "pyarrow" else kind.__name__ == "Series"
    return library if library in ("pandas", "polars", "pyarrow") and is_column else ""


def column_of(texts: Any) -> Any:
    """What _parse_tyres reads: an Arrow stream, or a sequence of str."""
    library = library_of(texts)
    if library == "pandas":
        in_arrow = getattr(texts.dtype, "storage", "") == "pyarrow" or "[pyarrow]" in str(texts.dtype)
        return texts.array.__arrow_array__() if in_arrow else texts.tolist()
    if library == "pyarrow":
        pyarrow: Any = sys.modules[library]
        texts = pyarrow.chunked_array([texts]) if isinstance(texts, pyarrow.Array) else texts
        return texts.cast(pyarrow.string()) if pyarrow.types.is_dictionary(texts.type) else texts
    if isinstance(texts, np.ndarray):
        if texts.ndim != 1:
            raise ValueError(f"texts has {texts.ndim} dimensions; expected 1")
        return texts.tolist()
    return texts if library or isinstance(texts, (list, tuple)) else list(texts)


def frame_of(rows: np.ndarray[Any, Any], same_as: np.ndarray[Any, Any], texts: Any) -> Any:
    """The rows in the form in which the texts came."""
    library = library_of(texts)
    if not library:
        return rows
    # A text is made once for all rows that have it in common.
    own = same_as == np.arange(rows.size, dtype=np.uintp)
    place = (np.cumsum(own) - 1)[same_as]
    assert rows.dtype.names is not None
    columns = {name: np.ascontiguousarray(rows[name]) for name in rows.dtype.names if rows.dtype[name].kind == "f"}
    words = {name: rows[name][own].tolist() for name in rows.dtype.names if name not in columns}
    words = {name: [text or None for text in column] for name, column in words.items()}
    made: dict[str, Any]
    module: Any = sys.modules[library]
    if library == "pandas":
        made = columns | {name: module.array(column, dtype="str").take(place) for name, column in words.items()}
        return module.DataFrame({name: made[name] for name in rows.dtype.names}, index=texts.index)
    if library == "polars":
        made = {name: module.Series(name, column, nan_to_null=True) for name, column in columns.items()}
        made |= {name: module.Series(name, column, dtype=module.String).gather(place) for name, column in words.items()}
        return module.DataFrame([made[name] for name in rows.dtype.names])
    made = {name: module.array(column, mask=np.isnan(column)) for name, column in columns.items()}
    made |= {name: module.array(column, module.string()).take(module.array(place)) for name, column in words.items()}
    return module.table({name: made[name] for name in rows.dtype.names})
