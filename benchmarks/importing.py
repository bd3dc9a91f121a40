# SPDX-License-Identifier: MIT
"""What `import layshaft` adds to the start of an interpreter, beside what others add, as ratios to the start alone.

Each start is a process of its own; they come in rounds, in random order, and the best and the median of the rounds are
told. The milliseconds that layshaft adds are told too, since a promise is made of them (fewer than ten); they are true
of one machine only. Fails where the import loads what it should not, never because of a time.
"""

from __future__ import annotations

import random
import statistics
import subprocess
import sys
import time

ROUNDS = 25
CONTESTANTS = {
    "nothing": "pass",
    "import layshaft": "import layshaft",
    "import decimal, fractions and statistics": "import decimal, fractions, statistics",
    "import numpy": "import numpy",
}


def start(code: str) -> float:
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], check=True)
    return time.perf_counter() - began


def main() -> None:
    subprocess.run(
        [sys.executable, "-c", "import sys, layshaft; assert 'numpy' not in sys.modules, 'numpy is loaded'"], check=True
    )
    rounds: dict[str, list[float]] = {name: [] for name in CONTESTANTS}
    for code in CONTESTANTS.values():
        start(code)  # so that every file is cached
    for _ in range(ROUNDS):
        for name in random.sample(list(CONTESTANTS), len(CONTESTANTS)):
            rounds[name].append(start(CONTESTANTS[name]))
    bare = rounds["nothing"]
    print(f"\nstarting an interpreter\n  {'time over that of the start alone, by rounds:':64}{'best':>8}{'median':>8}")
    for name, times in rounds.items():
        best, median = min(times) / min(bare), statistics.median(times) / statistics.median(bare)
        print(f"  {name:64}{best:8.2f}{median:8.2f}")
    added = [
        min(rounds["import layshaft"]) - min(bare),
        statistics.median(rounds["import layshaft"]) - statistics.median(bare),
    ]
    print(
        f"  {'milliseconds that layshaft adds (promised: fewer than 10)':64}{added[0] * 1e3:8.2f}{added[1] * 1e3:8.2f}"
    )


if __name__ == "__main__":
    main()
