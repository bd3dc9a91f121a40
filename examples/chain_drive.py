# SPDX-License-Identifier: MIT
"""A chain drive in two pictures and a dozen lines: will it close, run slack enough everywhere, and hold.

chain_drive.py [MACHINE.json] [--front TEETH] [--rear TEETH] [--units metric|us] [--pictures FOLDER]
"""

from __future__ import annotations

import argparse
import math
from pathlib import Path

import layshaft as ls
from drawing import AFTER, BEFORE, HERE, INK, SECOND, new_figure, save


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


def draw_slack(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    """Slack by hand over the suspension's travel: as made, and on the trial sprockets with what is to be set."""
    if machine.suspension is None:
        return
    name, unit = ("mm", ls.mm) if asked.units == "metric" else ("in", ls.inch)
    figure, axes = new_figure(7.2, 4.2)
    bump, droop = machine.suspension.bump, machine.suspension.droop
    angles = [bump + (droop - bump) * (i / 80) for i in range(81)]
    slack = ls.appraise(machine, trial).drive.slack
    to_set = machine.adjuster.slack if slack is None or slack.slack_to_set is None else slack.slack_to_set
    for setup, at_rest, label, colour in (
        (machine.stock, machine.adjuster.slack, f"as made, {machine.stock.front}/{machine.stock.rear}", BEFORE),
        (trial, to_set, f"{trial.front}/{trial.rear}, {ls.show(to_set, asked.units)} set at rest", AFTER),
    ):
        loop = ls.ChainLoop(machine.chain, setup.front, setup.rear)
        travel = ls.slack_through_travel(
            machine.suspension, loop, ls.appraise(machine, setup).chain.links, slack=at_rest
        )
        axes.plot(
            [a / ls.deg for a in angles],
            [travel.at(a).slack / unit for a in angles],
            color=colour,
            label=label,
            linewidth=2,
        )
        tight = travel.tight_point()
        axes.plot([tight.angle / ls.deg], [tight.slack / unit], "o", color=colour, markersize=5)
    axes.axvline(machine.suspension.rest / ls.deg, color=SECOND, linewidth=1, linestyle=(0, (4, 3)))
    axes.annotate(
        "on the stand",
        (machine.suspension.rest / ls.deg, 0.03),
        (4, 0),
        xycoords=("data", "axes fraction"),
        textcoords="offset points",
        color=SECOND,
    )
    axes.set_ylim(bottom=0)
    axes.invert_xaxis()
    axes.set_xlabel("angle of the swingarm below level, in degrees: wheel hanging to wheel right up")
    axes.set_ylabel(f"slack by hand in {name}")
    axes.set_title(f"{machine.name}: slack through the travel; dots: the tight point", loc="left")
    axes.legend(frameon=False)
    save(asked, machine, figure, "slack")


def draw_loop(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    """The loop to scale: pitch circles, runs, angles of wrap, and the axle's room in the adjuster."""
    name, unit = ("mm", ls.mm) if asked.units == "metric" else ("in", ls.inch)
    appraisal = ls.appraise(machine, trial)
    centre = appraisal.chain.centre.nominal / unit
    loop = ls.ChainLoop(machine.chain, trial.front, trial.rear)
    front = ls.Sprocket(machine.chain, trial.front).pitch_diameter / unit / 2
    rear = ls.Sprocket(machine.chain, trial.rear).pitch_diameter / unit / 2
    phi = math.asin((rear - front) / centre)
    figure, axes = new_figure(9.0, 4.2)
    for x, radius in ((0.0, front), (-centre, rear)):
        turn = [2 * math.pi * i / 180 for i in range(181)]
        axes.plot(
            [x + radius * math.cos(t) for t in turn],
            [radius * math.sin(t) for t in turn],
            color=BEFORE,
            linewidth=0.8,
            linestyle=(0, (5, 3)),
        )
        axes.plot([x], [0], "+", color=INK, markersize=8)
    for side in (1, -1):
        up = side * (math.pi / 2 - phi)
        axes.plot(
            [front * math.cos(up), -centre + rear * math.cos(up)],
            [front * math.sin(up), rear * math.sin(up)],
            color=AFTER,
            linewidth=2.4,
        )
    for x, radius, begin, end in (
        (0.0, front, -math.pi / 2 + phi, math.pi / 2 - phi),
        (-centre, rear, math.pi / 2 - phi, 1.5 * math.pi + phi),
    ):
        arc = [begin + (end - begin) * i / 120 for i in range(121)]
        axes.plot(
            [x + radius * math.cos(t) for t in arc], [radius * math.sin(t) for t in arc], color=AFTER, linewidth=2.4
        )
        axes.annotate(
            f"{math.degrees(end - begin):.0f} deg", (x, 0), (0, -14), textcoords="offset points", ha="center", color=INK
        )
    ends = [-machine.adjuster.centre_min / unit, -machine.adjuster.centre_max / unit]
    axes.plot(ends, [0, 0], color=SECOND, linewidth=6, alpha=0.35, solid_capstyle="butt")
    axes.annotate(
        f"adjuster: {ls.show(appraisal.chain.adjuster_forward.nominal, asked.units)} forward, "
        f"{ls.show(appraisal.chain.adjuster_rearward.nominal, asked.units)} to the rear",
        (-centre, rear),
        (0, 8),
        textcoords="offset points",
        ha="center",
        color=SECOND,
    )
    axes.set_aspect("equal")
    axes.margins(0.06, 0.12)
    taut = loop.links(appraisal.chain.centre.nominal)
    axes.set_xlabel(f"{name} from the front sprocket's axis; {appraisal.chain.links} links, {taut:.2f} of them taut")
    axes.set_title(f"{machine.name}: {trial.front}/{trial.rear} to scale", loc="left")
    save(asked, machine, figure, "loop")


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
    draw_slack(asked, machine, trial)
    draw_loop(asked, machine, trial)


if __name__ == "__main__":
    main()
