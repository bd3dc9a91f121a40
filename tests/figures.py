# SPDX-License-Identifier: MIT
"""The figures of a long run as one table, of the result.json that each part leaves under build/.

The README quotes the table as it is printed.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeAlias

#: What is measured, how much it is, and the command that tells.
Row: TypeAlias = tuple[str, str, str]


def builds(told: dict[str, Any]) -> Row:
    but = told["by_libm"]
    apart = f", but for {len(but)} up to {max(but.values())} ulp apart where libm cannot fuse" if but else ""
    return (
        "same numbers to the last bit",
        f"{told['numbers']:,} of {told['functions']} functions, by {told['builds']} builds of {told['compilers']} compilers{apart}; "
        f"{told['headers_alone']} times a header alone",
        "tests/run --only builds",
    )


def accuracy(told: dict[str, Any]) -> Row:
    worst = ", ".join(f"{name} {ulp}" for name, ulp in told["worst_ulp"].items())
    return (
        "largest error in ulp",
        f"{worst}; of {told['rows']:,} exact results of {told['functions']} functions",
        "tests/run --only accuracy",
    )


def coverage(told: dict[str, Any]) -> Row:
    return (
        "coverage of include/",
        f"lines {told['lines_percent']} %, branches {told['branches_percent']} %, conditions (MC/DC) "
        f"{told['conditions_percent']} %",
        "tests/run --only coverage",
    )


def mutants(told: dict[str, Any]) -> Row:
    return (
        "mutants killed",
        f"{told['killed']:,} of {told['mutants']:,} that can change a result, taken at random from {told['known']:,}; "
        f"{told['listed']:,} more cannot, each with its reason",
        "tests/run --only mutants",
    )


def digits(told: dict[str, Any]) -> Row:
    return (
        "digits of data tables, each changed by one",
        f"{told['digits_killed']:,} of {told['digits']:,} seen by a test",
        "tests/run --only digits",
    )


def fuzz(told: dict[str, Any]) -> Row:
    return (
        "fuzzing",
        f"{sum(told['executions'].values()):,} executions; {told['recorded']:,} recorded in all",
        "tests/run --only fuzzing",
    )


#: By part of the long run: the folder under build/ that has its result, and what the table says of it.
PARTS: dict[str, tuple[str, Callable[[dict[str, Any]], Row]]] = {
    "builds": ("builds", builds),
    "accuracy": ("accuracy", accuracy),
    "coverage": ("coverage", coverage),
    "mutants": ("mutation", mutants),
    "digits": ("mutation", digits),
    "fuzzing": ("fuzz", fuzz),
}


def show(build: str, what: str, passed: int, failed: int, seconds: int) -> tuple[int, int]:
    """Prints the table of a long run, or of one of its parts; how many figures it has, how many parts left none."""
    table = []
    if what == "long":
        every = f"{passed:,} passed, {failed:,} failed; {seconds // 60} minutes with all parts"
        table.append(("tests", every, "tests/run --long"))
    missing = 0
    for part, (folder, row) in PARTS.items():
        if what not in ("long", part):
            continue
        try:
            told = json.loads((Path(build) / folder / "result.json").read_text(encoding="utf-8"))
            table.append(row(told))
        except (OSError, KeyError) as problem:
            print(f"a part of the long run left no figures: {part}: {problem!r}")
            missing += 1
    if table:
        for line in (("what", "figure", "by"), ("---", "---", "---"), *table):
            print("| " + " | ".join(line) + " |")
    return len(table), missing
