# SPDX-License-Identifier: MIT
"""The figures of a long run as one table, of the result.json that each part leaves under build/.

    figures.py BUILD TESTS_PASSED TESTS_FAILED SECONDS

A part that left none has not run to its end, which fails.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any


def rows(build: Path) -> list[tuple[str, str, str]]:
    def of(part: str) -> dict[str, Any]:
        told: dict[str, Any] = json.loads((build / part / "result.json").read_text(encoding="utf-8"))
        return told

    builds, accuracy, coverage, fuzz, mutation = map(of, ("builds", "accuracy", "coverage", "fuzz", "mutation"))
    worst = ", ".join(f"{name} {ulp}" for name, ulp in accuracy["worst_ulp"].items())
    return [
        (
            "same numbers to the last bit",
            f"{builds['numbers']:,} of {builds['functions']} functions, {builds['builds']} builds by "
            f"{builds['compilers']} compilers; {builds['headers_alone']} headers alone",
            "tests/builds/matrix.py",
        ),
        (
            "largest error in ulp",
            f"{worst}; {accuracy['rows']:,} exact results of {accuracy['functions']} functions",
            "python -m accuracy.check",
        ),
        (
            "coverage of include/",
            f"lines {coverage['lines_percent']} %, branches {coverage['branches_percent']} %, "
            f"conditions (MC/DC) {coverage['conditions_percent']} %",
            "tests/coverage/measure.py",
        ),
        (
            "mutants killed",
            f"{mutation['killed']:,} of {mutation['mutants']:,}; digits of tables {mutation['digits_killed']:,} of "
            f"{mutation['digits']:,}",
            "tests/mutation/run",
        ),
        (
            "fuzzing",
            f"{sum(fuzz['executions'].values()):,} executions, {fuzz['recorded']:,} recorded in all",
            "tests/fuzz/fuzz.py",
        ),
    ]


def main(build: Path, passed: int, failed: int, seconds: int) -> int:
    try:
        table = rows(build)
    except (OSError, KeyError) as missing:
        print(f"a part of the long run left no figures: {missing}")
        return 1
    table.insert(0, ("tests", f"{passed:,} passed, {failed:,} failed in {seconds} s", "tests/run --long"))
    widths = [max(len(row[i]) for row in table) for i in range(3)]
    print()
    for row in table:
        print("| " + " | ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)) + " |")
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), *map(int, sys.argv[2:5])))
