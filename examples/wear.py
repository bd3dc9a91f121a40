# SPDX-License-Identifier: MIT
"""Two ways to one ratio: which of them wears, loses and costs less, and when to measure.

wear.py [MACHINE.json] [--one FRONT/REAR] [--other FRONT/REAR] [--material MATERIAL] [--pictures FOLDER]

Without pairs it takes one tooth fewer in front, and the rear sprocket that comes nearest to the same ratio on the
machine's own front one. Assumptions stand beside the numbers that rest on them.
"""

from __future__ import annotations

import argparse
from pathlib import Path

import layshaft as ls
from drawing import AFTER, BEFORE, HERE, INK, SECOND, new_figure, save


def pair(text: str) -> tuple[int, int]:
    front, _, rear = text.partition("/")
    return int(front), int(rear)


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Which of two ways to one ratio wears, loses and costs less.")
    parser.add_argument("machine", type=Path, nargs="?", default=HERE / "machines/trail_bike.json")
    parser.add_argument("--one", type=pair, help="front/rear teeth (the machine's front one, more behind)")
    parser.add_argument("--other", type=pair, help="front/rear teeth (one fewer in front)")
    parser.add_argument("--material", default="hardened steel", help="of the rear sprocket of the second pair")
    parser.add_argument("--pictures", type=Path, default=HERE.parent / "build/examples")
    return parser.parse_args()


def row(label: str, text: str) -> None:
    print(f"  {label:<26}{text}")


def set_up(machine: ls.Machine, teeth: tuple[int, int], rear_material: str | None = None) -> ls.Setup:
    stock = machine.stock
    return ls.Setup(
        front=teeth[0], rear=teeth[1], tyre=stock.tyre, circumference=stock.circumference, front_tyre=stock.front_tyre,
        chain_made=stock.chain_made, rear_material=rear_material,
    )  # fmt: skip


def says(change: ls.Band[float], less: str, more: str) -> str:
    """'wears 8.0 (7.5 to 8.4) % faster', in plain words."""
    if change.low == change.high == 0:
        return "the same"
    number = ls.show_percent(change)
    word = more if change.nominal > 0 else less
    sure = "" if change.low * change.high > 0 or change.low == change.high else "; the sign is not certain"
    return f"{number}: {word}{sure}"


def print_comparison(machine: ls.Machine, one: ls.Setup, other: ls.Setup) -> ls.Comparison:
    comparison = ls.compare(machine, one, other)
    change = comparison.wear
    ratio = (other.rear / other.front) / (one.rear / one.front) - 1
    print(f"{machine.name}: {other.front}/{other.rear} against {one.front}/{one.rear}, a final ratio that differs by "
          f"{ls.show_percent(ratio)}\n")  # fmt: skip
    row("chain's pull", says(change.chain_tension_change, "pulls less", "pulls harder"))
    row("chain", says(change.chain_stretch_change, "grows slower", "grows faster"))
    row("a front tooth", says(change.front_tooth_change, "wears slower", "wears faster"))
    row("a rear tooth", says(change.rear_tooth_change, "wears slower", "wears faster"))
    row("joints", says(change.loss_change, "lose less", "lose more"))
    for name, setup, appraisal in (("one", one, comparison.base), ("other", other, comparison.trial)):
        wear = appraisal.wear
        row(
            f"{setup.front}/{setup.rear} meets",
            f"front evenness {wear.front_hunting.evenness:.2f}, rear {wear.rear_hunting.evenness:.2f} "
            f"on {appraisal.chain.links} links",
        )
        better = ls.better_hunting(setup.front, setup.rear, appraisal.chain.links)[:3]
        if better and name == "other":
            row("hunts better", ", ".join(f"{b.front}/{b.rear} ({ls.show_percent(b.ratio_change)})" for b in better))
    return comparison


def print_outlook(machine: ls.Machine, setup: ls.Setup) -> ls.WearOutlook:
    outlook = ls.wear_outlook(machine, setup)
    print(f"\nThe chain of {setup.front}/{setup.rear}, in kilometres that nobody measured yet")
    row("mean thrust", f"{ls.show(outlook.thrust)}, from the {outlook.thrust_from}")
    stretch = outlook.stretch_per_1000_km
    row(
        "grows in 1000 km",
        f"{100 * stretch.nominal:.3g} % ({100 * stretch.low:.2g} in clean oil to {100 * stretch.high:.2g} in mud)",
    )
    row("may grow", f"{100 * outlook.limit.elongation:.1f} %, set by the {outlook.limit.kind}")
    life = outlook.chain_life
    row(
        "so lasts",
        f"{life.nominal / ls.km:,.0f} km ({life.low / ls.km:,.0f} to {life.high / ls.km:,.0f}): a guess of decades",
    )
    row("climbs the rear teeth", f"{ls.show(outlook.pitch_climb)} by then")
    first = min(1000.0, max(100.0, 0.05 * (life.nominal / ls.km)))
    row("measure", f"now and after {first:.0f} km; two measurements tell more than any table")
    return outlook


def print_measured(machine: ls.Machine, outlook: ls.WearOutlook) -> ls.StretchFit:
    """An invented rider's caliper: what three measurements make of the guess."""
    pitch = machine.chain.pitch
    grown = (0.0006, 0.0025, 0.0047, 0.0066, 0.0089)
    measured = [
        ls.StretchMeasurement((1000 + 3000 * i) * ls.km, 40 * pitch * (1 + share), 40) for i, share in enumerate(grown)
    ]
    fit = ls.fit_stretch(pitch, measured)
    print("\nA rider who measured 40 links every 3000 km, five times (invented)")
    row("grows in 1000 km", f"{100 * fit.per_1000_km.nominal:.3f} % "
        f"({100 * fit.per_1000_km.low:.3f} to {100 * fit.per_1000_km.high:.3f}), a line by least squares")  # fmt: skip
    left = fit.distance_left(outlook.limit.elongation)
    latest = "unknown" if left.high is None else f"{left.high / ls.km:,.0f} km"
    row("goes on for", f"{left.nominal / ls.km:,.0f} km (at least {left.low / ls.km:,.0f}, at most {latest})")
    return fit


def draw_weights(asked: argparse.Namespace, machine: ls.Machine, comparison: ls.Comparison) -> None:
    change = comparison.wear
    names = ["chain's pull", "chain grows", "front tooth", "rear tooth", "joints lose"]
    bands = [
        change.chain_tension_change, change.chain_stretch_change, change.front_tooth_change, change.rear_tooth_change,
        change.loss_change,
    ]  # fmt: skip
    figure, axes = new_figure(7.4, 3.4)
    values = [100 * band.nominal for band in bands]
    errors = [
        [100 * (band.nominal - band.low) for band in bands],
        [100 * (band.high - band.nominal) for band in bands],
    ]
    colours = [AFTER if value > 0 else SECOND for value in values]
    axes.barh(names, values, color=colours, xerr=errors, error_kw={"ecolor": INK, "capsize": 3})
    axes.axvline(0, color=INK, linewidth=0.8)
    axes.invert_yaxis()
    axes.set_xlabel("per cent, against the other pair; right is worse")
    one, other = comparison.base.setup, comparison.trial.setup
    axes.set_title(
        f"{machine.name}: {other.front}/{other.rear} against {one.front}/{one.rear}", loc="left", fontsize=11
    )
    save(asked, machine, figure, "wear")


def draw_stretch(asked: argparse.Namespace, machine: ls.Machine, outlook: ls.WearOutlook, fit: ls.StretchFit) -> None:
    figure, axes = new_figure(7.4, 4.2)
    ways = [100 * i for i in range(1, 301)]
    stretch = outlook.stretch_per_1000_km
    axes.fill_between(
        ways, [100 * stretch.low * w / 1000 for w in ways], [100 * stretch.high * w / 1000 for w in ways], color=BEFORE,
        alpha=0.25, label="by table, clean oil to mud",
    )  # fmt: skip
    axes.plot(ways, [100 * stretch.nominal * w / 1000 for w in ways], color=BEFORE)
    rate = fit.per_1000_km
    last = fit.last / ls.km
    ahead = [w for w in ways if w >= last]
    axes.fill_between(
        ahead, [100 * max(0.0, fit.now.low + rate.low * (w - last) / 1000) for w in ahead],
        [100 * (fit.now.high + rate.high * (w - last) / 1000) for w in ahead], color=AFTER, alpha=0.3,
        label="as measured, 95 %",
    )  # fmt: skip
    axes.plot(ahead, [100 * (fit.now.nominal + rate.nominal * (w - last) / 1000) for w in ahead], color=AFTER)
    limit = 100 * outlook.limit.elongation
    axes.axhline(limit, color=INK, linewidth=0.8, linestyle=":")
    axes.annotate(f"may grow so far: {outlook.limit.kind}", (ways[-1], limit), xytext=(0, 3), ha="right",
                  textcoords="offset points", fontsize=9)  # fmt: skip
    axes.set_ylim(0, 1.5 * limit)
    axes.set_xlim(0, ways[-1])
    axes.set_xlabel("km since new")
    axes.set_ylabel("growth, per cent")
    axes.set_title(f"{machine.name}: how far the chain has grown", loc="left", fontsize=11)
    axes.legend(frameon=False, loc="upper left")
    save(asked, machine, figure, "stretch")


def draw_contacts(asked: argparse.Namespace, machine: ls.Machine, appraisal: ls.Appraisal) -> None:
    """Which link meets which front tooth: a dot for each meeting until the pattern repeats."""
    teeth, links = appraisal.setup.front, appraisal.chain.links
    hunting = appraisal.wear.front_hunting
    meetings = [(k % links, k % teeth) for k in range(hunting.passes * links)]
    figure, axes = new_figure(8.2, 3.4)
    for kind, colour, label in ((0, AFTER, "inner link"), (1, SECOND, "outer link")):
        chosen = [(link, tooth) for link, tooth in meetings if link % 2 == kind]
        axes.scatter(
            [link + 1 for link, _ in chosen], [tooth + 1 for _, tooth in chosen], s=5, color=colour, label=label
        )
    axes.set_xlabel("link")
    axes.set_ylabel("front tooth")
    again = f"again after {hunting.passes} passes"
    axes.set_title(f"{machine.name}: each of {teeth} teeth meets {hunting.distinct_links} of {links} links, {again}",
                   loc="left", fontsize=10)  # fmt: skip
    axes.legend(frameon=False, loc="upper center", bbox_to_anchor=(0.5, -0.18), ncols=2, fontsize=9)
    save(asked, machine, figure, "contacts")


def main() -> None:
    asked = options()
    machine = ls.Machine.from_json(asked.machine.read_text(encoding="utf-8"))
    front, rear = machine.stock.front, machine.stock.rear
    other = asked.other or (front - 1, rear)
    one = asked.one or (front, round(other[1] / other[0] * front))
    plain = set_up(machine, one, "hardened steel")
    trial = set_up(machine, other, asked.material)
    comparison = print_comparison(machine, plain, trial)
    outlook = print_outlook(machine, trial)
    fit = print_measured(machine, outlook)
    print("\nWhat these numbers rest on")
    row("friction, seals", "from memory and assumed; they cancel in a comparison of one kind of chain")
    row("joints' resistance", "bench tests of GOST 13568-97, down two decades for dirt (from memory)")
    row("hardness", f"{asked.material}, {ls.hardness(asked.material).nominal / ls.MPa:.0f} MPa (from memory)")
    print()
    for caution in comparison.cautions:
        print(f"- {caution.sentence()}")
    draw_weights(asked, machine, comparison)
    draw_stretch(asked, machine, outlook, fit)
    draw_contacts(asked, machine, comparison.trial)


if __name__ == "__main__":
    main()
