# SPDX-License-Identifier: MIT
"""A chain drive in two pictures and a dozen lines: will it close, run slack enough everywhere, and hold.

chain_drive.py [MACHINE.json] [--front TEETH] [--rear TEETH] [--units metric|us] [--pictures FOLDER]
"""

from __future__ import annotations

import argparse
from pathlib import Path

import layshaft as ls
from drawing import HERE, held_against_stock, save_and_say
from layshaft import plots


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Whether a chain drive closes, runs slack enough and holds.")
    parser.add_argument("machine", type=Path, nargs="?", default=HERE / "machines/trail_bike.json")
    parser.add_argument("--front", type=int, help="teeth of the front sprocket (the machine's own)")
    parser.add_argument("--rear", type=int, help="teeth of the rear sprocket (the machine's own)")
    parser.add_argument("--units", choices=["metric", "us"], default="metric")
    parser.add_argument("--pictures", type=Path, default=HERE.parent / "build/examples")
    return parser.parse_args()


def row(label: str, text: str) -> None:
    print(f"  {label:<26}{text}")


def print_answers(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    units = asked.units
    comparison = ls.compare(machine, machine.stock, trial)
    chain, drive = comparison.trial.chain, comparison.trial.drive
    loop = ls.ChainLoop(machine.chain, trial.front, trial.rear)
    print(f"{machine.name}: {trial.front}/{trial.rear}, as made {machine.stock.front}/{machine.stock.rear}\n")
    row("chain", f"{machine.chain.name}, {chain.links} links ({ls.show_signed(comparison.links_change, 0)})")
    row("axle", f"{ls.show(chain.centre, units)} from the front sprocket's axis")
    row("stretch it can take", f"{ls.show_percent(chain.stretch_left)} until the adjuster ends")
    closes = ls.fit_chain(loop, machine.adjuster.centre_min, machine.adjuster.centre_max, slack=machine.adjuster.slack)
    row("chains that close", ", ".join(f"{fit.links} links" for fit in closes))
    kept = ls.pairs_for_chain(loop, chain.links, machine.adjuster)[:4]
    row(
        "also on this chain", ", ".join(f"{one.front}/{one.rear} ({ls.show_percent(one.ratio_change)})" for one in kept)
    )
    row("teeth in mesh", f"{drive.engagement.front:.1f} in front, {drive.engagement.rear:.1f} behind")
    ripple = ls.polygon_ripple(loop, chain.centre.nominal)
    name, unit = ("mm", ls.mm) if units == "metric" else ("in", ls.inch)
    row(
        "within one tooth",
        f"the rear shaft's speed swings by {100 * (ripple.greatest_ratio - ripple.least_ratio):.1f} %, "
        f"the loop by {ripple.loop_length / unit:.3f} {name}",
    )
    if drive.slack is not None:
        slack = drive.slack
        row(
            "slack at the tight point",
            f"{ls.show(slack.least_slack, units)}, {ls.show(slack.tightest, units)} below level",
        )
        if slack.slack_to_set is not None:
            row(
                "slack to set at rest",
                f"{ls.show(slack.slack_to_set, units)} by hand "
                f"(the manual, for the stock parts: {ls.show(machine.adjuster.slack, units)})",
            )
    if drive.loads is not None:
        loads = drive.loads
        row("pull in first gear", ls.show(loads.pull, units))
        if loads.safety is not None:
            row("strength over pull", f"{loads.safety:.1f} (as made {drive.stock_safety:.1f})")
        if loads.efficiency is not None:
            row("power it passes on", f"{ls.show_number(loads.efficiency, 3)}: friction from memory, seals assumed")
    print()
    for caution in comparison.cautions:
        print(f"- {caution.sentence(units)}")


def draw(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    """Slack through the travel, as made and on the trial sprockets; and the loop to scale, with the axle's room."""
    name = asked.machine.stem
    if machine.suspension is not None:
        setups = held_against_stock(machine, trial)
        save_and_say(asked.pictures, f"{name}_slack", plots.slack_over_travel(machine, *setups, units=asked.units))
    chain = ls.appraise(machine, trial).chain
    loop = ls.ChainLoop(machine.chain, trial.front, trial.rear)
    drawn = plots.chain_loop(loop, chain.centre.nominal, adjuster=machine.adjuster, links=chain.links,
                             units=asked.units)  # fmt: skip
    save_and_say(asked.pictures, f"{name}_loop", drawn)


def main() -> None:
    import matplotlib

    matplotlib.use("Agg")
    asked = options()
    machine = ls.Machine.from_json(asked.machine.read_text(encoding="utf-8"))
    stock = machine.stock
    front, rear = asked.front or stock.front, asked.rear or stock.rear
    same = (front, rear) == (stock.front, stock.rear)
    trial = ls.Setup(
        front=front,
        rear=rear,
        tyre=stock.tyre,
        circumference=stock.circumference,
        front_tyre=stock.front_tyre,
        chain=stock.chain,
        links=stock.links if same else None,
        chain_made=stock.chain_made,
    )
    print_answers(asked, machine, trial)
    draw(asked, machine, trial)


if __name__ == "__main__":
    main()
