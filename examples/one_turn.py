# SPDX-License-Identifier: MIT
"""For a class: what one turn of the crank does, from a cargo cycle to a trail bike, step by step.

Every line is one quotient or product that a pupil can check on paper; the machines are those of examples/machines.
"""

from __future__ import annotations

from pathlib import Path

import layshaft as ls

MACHINES = Path(__file__).resolve().parent / "machines"


def one_turn(machine: ls.Machine, gear: int) -> None:
    stock = machine.stock
    appraisal = ls.appraise(machine, stock)
    ratio = machine.gearbox.gears[gear - 1]
    gear_ratio = ratio.ratio if isinstance(ratio, ls.GearPair) else ratio
    primary = machine.gearbox.primary
    primary_ratio = primary.ratio if isinstance(primary, ls.GearPair) else primary
    chain_ratio = ls.final_ratio(stock.front, stock.rear)
    rolled = appraisal.circumference.nominal
    turns = 1.0 / appraisal.overall_ratios[gear - 1]

    print(f"\n{machine.name}, gear {gear}")
    print(
        f"  the gearbox turns    1 / ({primary_ratio:.3f} x {gear_ratio:.3f}) = "
        f"{1 / (primary_ratio * gear_ratio):.4f} times"
    )
    print(f"  the rear wheel turns that / ({stock.rear} / {stock.front} = {chain_ratio:.3f}) = {turns:.4f} times")
    print(f"  one turn of it rolls {ls.show(rolled)}, so you move {ls.show(turns * rolled)}")
    fast = machine.gearbox.rev_limit
    print(f"  at {ls.show(fast)} that is {ls.show(ls.road_speed(fast, 1 / turns, rolled))}")


if __name__ == "__main__":
    for name, gear in (("cargo_cycle", 5), ("farm_bike", 4), ("trail_bike", 6)):
        one_turn(ls.Machine.from_json((MACHINES / f"{name}.json").read_text(encoding="utf-8")), gear)
