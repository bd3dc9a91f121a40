# SPDX-License-Identifier: MIT
"""Proves the accuracy contract: `python -m accuracy.check`, in tests/, makes the table anew, compares its hash, and
holds every function against its bound.

`--more N` looks at N more tables of other rows as well, which no hash is kept of. `--tighten` makes bounds smaller
where in at least seven tables less was found, never larger, and writes the header that states them.
"""

from __future__ import annotations

import argparse
import json
import math
import sys
import time

from accuracy import table
from accuracy.errors import Worst, broken, kept, tightened, worst_of, write
from accuracy.functions import ENTRIES
from accuracy.rows import CLASSES


def merged(worst: dict[tuple[str, str], Worst], more: dict[tuple[str, str], Worst]) -> None:
    for key, one in more.items():
        if key not in worst or one.error > worst[key].error:
            worst[key] = one


def main() -> int:
    parser = argparse.ArgumentParser(description="Holds every function against the table of exact results.")
    parser.add_argument("--tighten", action="store_true", help="write smaller bounds where less was found")
    parser.add_argument("--more", type=int, default=0, metavar="N", help="as many tables of other rows on top")
    asked = parser.parse_args()

    start = time.monotonic()
    rows = list(table.all_rows())
    same = table.write(rows) == table.kept_hash()
    worst, count = worst_of(rows), len(rows)
    for seed in range(1, (max(asked.more, 6) if asked.tighten else asked.more) + 1):
        others = list(table.all_rows(seed=seed))
        merged(worst, worst_of(others))
        count += len(others)
    if asked.tighten:
        write(tightened(worst, kept()))
    failures = broken(worst, kept())
    if not same:
        failures.append("the table is not the one whose hash is kept (python -m accuracy.table --keep keeps a new one)")

    by_class = {
        kind: max(
            (one.error for (name, of), one in worst.items() if of == kind and ENTRIES[name].unit == "ulp"), default=0.0
        )
        for kind in CLASSES
    }
    result = {
        "rows": count,
        "functions": len(ENTRIES),
        "worst_ulp": {kind: round(off, 3) if math.isfinite(off) else None for kind, off in by_class.items()},
        "hash_is_the_kept_one": same,
        "failures": len(failures),
        "seconds": round(time.monotonic() - start, 1),
    }
    table.TABLE.with_name("result.json").write_text(json.dumps(result, indent=2) + "\n", encoding="utf-8")
    lines = [f"{name},{kind},{ENTRIES[name].unit},{one.error:.4g}" for (name, kind), one in worst.items()]
    table.TABLE.with_name("worst.csv").write_text(
        "\n".join(["function,class,unit,worst", *lines, ""]), encoding="utf-8"
    )
    for failure in failures:
        print(failure)
    told = ", ".join(f"{kind} {off:.2f}" for kind, off in by_class.items())
    print(
        f"accuracy: {count} rows of {len(ENTRIES)} functions, worst ulp: {told}; {len(failures)} failed, {result['seconds']} s"
    )
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
