# SPDX-License-Identifier: MIT
"""The figures of a long run as one table, of the result.json that each part leaves under build/."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeAlias

#: What is measured, how much it is, and the command that tells.
Row: TypeAlias = tuple[str, str, str]


def builds(told: dict[str, Any]) -> Row:
    return (
        "same numbers to the last bit",
        f"{told['numbers']:,} of {told['functions']} functions, by {told['builds']} builds of {told['compilers']} compilers; "
        f"{told['headers_alone']} times a header alone",
        "tests/builds/matrix.py",
    )


def accuracy(told: dict[str, Any]) -> Row:
    worst = ", ".join(f"{name} {ulp}" for name, ulp in told["worst_ulp"].items())
    return (
        "largest error in ulp",
        f"{worst}; of {told['rows']:,} exact results of {told['functions']} functions",
        "python -m accuracy.check, in tests/",
    )


def coverage(told: dict[str, Any]) -> Row:
    return (
        "coverage of include/",
        f"lines {told['lines_percent']} %, branches {told['branches_percent']} %, conditions (MC/DC) "
        f"{told['conditions_percent']} %",
        "tests/coverage/measure.py",
    )


def mutation(told: dict[str, Any]) -> Row:
    return (
        "mutants killed",
        f"{told['killed']:,} of {told['mutants']:,} that are not explained; digits of tables {told['digits_killed']:,} of "
        f"{told['digits']:,}",
        "tests/mutation/branches.py, digits.py",
    )


def fuzz(told: dict[str, Any]) -> Row:
    return (
        "fuzzing",
        f"{sum(told['executions'].values()):,} executions; {told['recorded']:,} recorded in all",
        "tests/fuzz/fuzz.py",
    )


PARTS: dict[str, Callable[[dict[str, Any]], Row]] = {
    "builds": builds,
    "accuracy": accuracy,
    "coverage": coverage,
    "mutation": mutation,
    "fuzz": fuzz,
}


def show(build: str, passed: int, failed: int, seconds: int) -> int:
    """Prints the table; how many parts left no figures."""
    table = [("tests", f"{passed:,} passed, {failed:,} failed, in {seconds} s with all parts", "tests/run --long")]
    missing = 0
    for part, row in PARTS.items():
        try:
            told = json.loads((Path(build) / part / "result.json").read_text(encoding="utf-8"))
        except OSError as problem:
            print(f"a part of the long run left no figures: {problem}")
            missing += 1
        else:
            table.append(row(told))
    widths = [max(len(row[i]) for row in table) for i in range(3)]
    for row in table:
        print("| " + " | ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)) + " |")
    return missing
