# SPDX-License-Identifier: MIT
"""The worst error of rows of the table, by function and class, and the bounds that are kept for them."""

from __future__ import annotations

import ast
import csv
import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from accuracy.exact import FORMULAS, body_of
from accuracy.functions import ENTRIES
from accuracy.rows import CLASSES, Row

HERE = Path(__file__).resolve().parent
BOUNDS = HERE / "bounds.csv"
HEADER = HERE.parents[1] / "include/layshaft/accuracy.hpp"

Key = tuple[str, str]  # function, class


def error(row: Row, got: float) -> float:
    """In ulp of the row's scale, or in the function's unit; what is no number is infinitely wrong."""
    off = abs((got - row.head) - row.tail)
    if ENTRIES[row.function].unit == "ulp":
        off /= math.ulp(row.scale)
    return math.inf if math.isnan(off) else off


@dataclass
class Worst:
    error: float
    row: Row
    got: float


def worst_of(rows: Iterable[Row]) -> dict[Key, Worst]:
    """A call that raises is as wrong as can be: every row is in range."""
    worst: dict[Key, Worst] = {}
    for row in rows:
        try:
            got = ENTRIES[row.function].call(*row.arguments)
        except ValueError:
            got = math.nan
        off = error(row, got)
        key = row.function, row.difficulty
        if key not in worst or off > worst[key].error:
            worst[key] = Worst(off, row, got)
    return worst


def kept() -> dict[Key, float]:
    if not BOUNDS.exists():
        return {}
    with BOUNDS.open(encoding="utf-8", newline="") as file:
        return {(row["function"], row["class"]): float(row["bound"]) for row in csv.DictReader(file)}


def broken(worst: dict[Key, Worst], bounds: dict[Key, float]) -> list[str]:
    """What lies beyond its bound, or has none."""
    lines = []
    for (function, difficulty), one in worst.items():
        bound = bounds.get((function, difficulty), -1.0)
        if not one.error <= bound:
            unit = ENTRIES[function].unit
            told = f"is bound to {bound:g} {unit}" if bound >= 0 else "has no bound"
            arguments = ", ".join(repr(argument) for argument in one.row.arguments)
            lines.append(
                f"{function} ({difficulty}) {told}, but {function}({arguments}) is {one.got!r}, "
                f"{one.error:.3g} {unit} from {one.row.head!r}"
            )
    return lines


# --- Tightening -------------------------------------------------------------------------------------------------------


@cache
def rounds_once(function: str) -> bool:
    """Whether a formula is a single operation on its arguments, which errs by half an ulp and no more."""
    if function not in FORMULAS:
        return False
    body = body_of(FORMULAS[function])
    return isinstance(body, ast.BinOp) and isinstance(body.left, ast.Name) and isinstance(body.right, ast.Name)


def bound_for(function: str, off: float) -> float:
    """What is stated of a worst error that was found: two fifths more, since other rows and machines find worse. A
    formula is never stated to be exact."""
    if rounds_once(function):
        return 0.5
    if off == 0.0 and function not in FORMULAS:
        return 0.0
    if ENTRIES[function].unit == "ulp":
        return max(0.5, math.ceil(14.0 * off) / 10.0)
    step = 10.0 ** (math.floor(math.log10(1.4 * off)) - 1)
    return float(f"{math.ceil(1.4 * off / step) * step:.2g}")


def tightened(worst: dict[Key, Worst], bounds: dict[Key, float]) -> dict[Key, float]:
    """New bounds, none of which is larger than the old one."""
    out = {}
    for name in ENTRIES:
        for difficulty in CLASSES:
            if one := worst.get((name, difficulty)):
                found = bound_for(name, one.error)
                assert math.isfinite(found), broken({(name, difficulty): one}, {})
                out[name, difficulty] = min(found, bounds.get((name, difficulty), math.inf))
    return out


def write(bounds: dict[Key, float]) -> None:
    lines = [f"{name},{kind},{ENTRIES[name].unit},{bound:g}" for (name, kind), bound in bounds.items()]
    BOUNDS.write_text("\n".join(["function,class,unit,bound", *lines, ""]), encoding="utf-8")
    HEADER.write_text(header(bounds), encoding="utf-8")


# --- The header that states them --------------------------------------------------------------------------------------

START = """\
// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <string_view>

/// @file
/// How far each function may be from the exact result, at the worst. Opt-in; written by tests/accuracy/check.py out of
/// tests/accuracy/bounds.csv, and held against a table of exact results.
///
/// An error is in units of the last place (ulp) of the result or, where terms cancel, of the largest value that was
/// rounded on the way, carried to the result: half an ulp is what rounding a single value once costs. Arguments are
/// exact. The bounds hold as long as every value on the way stays between 1e-290 and 1e290 in SI, and sine, logarithm
/// and their like are as good as glibc's; they may be made smaller, never larger.
namespace layshaft {

/// The greatest error of a function in tenths of an ulp, by how hard its arguments are; 0 where there are none such.
struct ErrorBound {
  std::string_view function;
  std::uint8_t ordinary;    ///< a motorcycle's or a bicycle's numbers
  std::uint8_t edge;        ///< at an end of the range or one ulp inside it
  std::uint8_t cancelling;  ///< terms of which little is left
  std::uint8_t wide;        ///< any magnitude, up to 1e100

  /// The greatest of all, in ulp.
  [[nodiscard]] constexpr double greatest() const noexcept {
    std::uint8_t tenths = ordinary;
    for (const std::uint8_t one : {edge, cancelling, wide})
      if (one > tenths) tenths = one;
    return tenths / 10.0;
  }
};

// clang-format off
inline constexpr ErrorBound error_bounds[] = {
"""
END = """\
};
// clang-format on

/// The greatest error of a function in ulp; infinite where nothing is promised, as of a name that is not in the table.
[[nodiscard]] constexpr double error_ulp(std::string_view function) noexcept {
  for (const ErrorBound& one : error_bounds)
    if (one.function == function) return one.greatest();
  return std::numeric_limits<double>::infinity();
}

}  // namespace layshaft
"""


def header(bounds: dict[Key, float]) -> str:
    """The formulas and, with what is worked out in bulk, the loop both ways."""
    rows = ""
    for name in [*FORMULAS, "chain_links", "chain_centre"]:
        tenths = []
        for difficulty in CLASSES:
            here = [bounds.get((one, difficulty), 0.0) for one in (name, f"{name} in bulk")]
            tenths.append(round(10.0 * max(here)))
        assert max(tenths) < 256, f"{name} is too inexact for a byte"
        rows += f'  {{"{name}", {", ".join(map(str, tenths))}}},\n'
    return START + rows + END
