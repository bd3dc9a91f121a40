# SPDX-License-Identifier: MIT
"""Which sprockets and chain suit a taller tyre, and what everything else does then.

The machine's stock set-up is the yardstick; the fitted tyre is what the rider has put on since. regear.cpp says the
same in the same words; this one also draws the speed range of each gear before and after, and writes the advice as a
page with the working of every number folded under it.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import layshaft as ls
from drawing import HERE, save
from layshaft import plots
from regear_page import write_page
from riding import mean_thrust


@dataclass(frozen=True)
class Candidate:
    setup: ls.Setup
    comparison: ls.Comparison


def teeth_list(text: str) -> list[int]:
    """Reads "12,13" and "47-53", and both mixed."""
    teeth: list[int] = []
    for part in text.split(","):
        first, dash, last = part.partition("-")
        teeth.extend(range(int(first), int(last if dash else first) + 1))
    if not teeth:
        raise argparse.ArgumentTypeError(f"expected teeth such as 12,13 or 47-53, got {text!r}")
    return teeth


def ask(arguments: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("machine", nargs="?", type=Path, help="a machine as JSON; the README's trail bike if left out")
    parser.add_argument("--fitted", help="marking of the tyre now on the rear wheel")
    parser.add_argument(
        "--use", choices=["road", "special", "snow"], default="road", help="special: knobs for rough ground"
    )
    parser.add_argument("--circumference", type=ls.Length, help="measured rollout, '2050 mm'; overrides the marking")
    parser.add_argument("--fronts", type=teeth_list, help="front sprockets to try, 12,13")
    parser.add_argument("--rears", type=teeth_list, help="rear sprockets to try, 47-53")
    parser.add_argument("--thrust", type=int, default=0, help="change of thrust wished for, in per cent")
    parser.add_argument("--cruise", type=ls.Speed, help="the speed you ride at, '85 km/h'")
    parser.add_argument("--ride", type=Path, help="a recorded ride, by which wear is weighed")
    parser.add_argument("--bought", type=int, help="links of the chain as bought")
    parser.add_argument("--rolled", type=ls.Length, help="distance that the rear wheel rolled, '20.6 m'")
    parser.add_argument("--turns", type=int, default=1, help="in so many turns")
    parser.add_argument("--tread", type=ls.Length, help="depth of the tyre's tread when new, '12 mm'")
    parser.add_argument("--region", default="GB", help="whose law on tread counts: GB, DE, US-MD")
    parser.add_argument(
        "--explain", metavar="NUMBER", help="only the working of this number of the advice: thrust, centre"
    )
    parser.add_argument("--units", choices=["metric", "us"], default="metric")
    parser.add_argument("--pictures", type=Path, default=Path("build/examples"), help="where pictures go")
    question = parser.parse_args(arguments)
    if question.machine is None:
        question.machine = HERE / "machines" / "trail_bike.json"
        if question.fitted is None and question.circumference is None:  # the rider of the README
            question.fitted = "120/90-18 M/C 65R TT"
            question.use = "special"
            question.cruise = question.cruise or ls.Speed("85 km/h")
            question.bought = question.bought or 120
            question.tread = question.tread or ls.Length("12 mm")
    if question.rolled is not None:
        question.circumference = ls.measured_circumference(question.rolled, question.turns)
    if question.fitted is not None:
        question.fitted = ls.TyreSize(question.fitted, question.use)
    return question


def on_fitted_tyre(question: argparse.Namespace, stock: ls.Setup, front: int, rear: int) -> ls.Setup:
    """The stock set-up on the fitted tyre, with other sprockets or the same; the chain is then an open question."""
    as_made = front == stock.front and rear == stock.rear
    anew = bool(question.fitted or question.circumference)
    measured = question.circumference or (None if question.fitted else stock.circumference)
    return ls.Setup(
        front=front,
        rear=rear,
        tyre=question.fitted or stock.tyre,
        chain=stock.chain,
        links=stock.links if as_made else None,
        circumference=measured,
        tread_worn="0 mm" if anew or stock.tread else stock.tread_worn,
        tread=None if anew else stock.tread,
        chain_made=stock.chain_made,
        front_tyre=stock.front_tyre,
    )


def candidates(question: argparse.Namespace, machine: ls.Machine) -> list[Candidate]:
    """Every pair of the candidates whose chain closes in the adjuster, nearest to the wish first.

    Half a point of thrust is less than any rider feels, and less than the tyre's own tolerance: among pairs that near
    to the best, the one that changes fewest sprockets comes first, then the one whose chain pulls least.
    """
    stock = machine.stock
    fronts = question.fronts or range(stock.front - 1, stock.front + 2)
    rears = question.rears or range(stock.rear - 3, stock.rear + 7)
    found = []
    for front in fronts:
        for rear in rears:
            setup = on_fitted_tyre(question, stock, front, rear)
            try:
                comparison = ls.compare(machine, stock, setup)
            except ls.Error:  # no even chain closes
                continue
            if comparison.trial.chain.fits:
                found.append(Candidate(setup, comparison))
    if not found:
        raise ls.Error("none of the candidates' chains closes in the adjuster")

    def miss(one: Candidate) -> float:
        return abs(one.comparison.thrust_change.nominal - question.thrust / 100.0)

    felt = 0.005
    nearest = min(miss(one) for one in found)

    def rank(one: Candidate) -> tuple[bool, float, float, int, int]:
        near = miss(one) <= nearest + felt
        changed = (one.setup.front != stock.front) + (one.setup.rear != stock.rear)
        pull = one.comparison.wear.chain_tension_change.nominal
        return (not near, changed if near else miss(one), pull, one.setup.front, one.setup.rear)

    return sorted(found, key=rank)


def sprockets(setup: ls.Setup) -> str:
    return f"{setup.front}/{setup.rear}"


def tyre_of(setup: ls.Setup, units: str) -> str:
    if setup.circumference is not None:
        return f"a measured rollout of {ls.show(setup.circumference, units)}"
    assert setup.tyre is not None
    return setup.tyre.designation + (f" ({setup.tyre.use} use)" if setup.tyre.use != "road" else "")


def heading(text: str) -> None:
    print(f"\n{text}")


def row(label: str, *cells: str) -> None:
    print("  " + f"{label:<24}" + "".join(f"{cell:<30}" for cell in cells[:-1]) + cells[-1])


def print_ledger(advised: ls.Comparison, stock: ls.Setup, setup: ls.Setup) -> None:
    heading("What makes up the change of thrust, in points that add up")
    labels = {
        "front sprocket": f"front {stock.front} to {setup.front}",
        "rear sprocket": f"rear {stock.rear} to {setup.rear}",
    }
    for cause, part in advised.contributions("thrust").items():
        row(labels.get(cause, cause), ls.show_percent(part))
    row("what is left", ls.show_percent(advised.thrust_change))
    thumb = advised.rule_of_thumb
    row(
        "by rule of thumb",
        f"{ls.show_percent(thumb.thrust_change)}, off by {ls.show_signed(100.0 * thumb.error, 1)} points",
    )


def print_parts(question: argparse.Namespace, machine: ls.Machine, best: Candidate) -> None:
    stock, chain, units = machine.stock, best.comparison.trial.chain, question.units
    heading("What to buy and where it stands")
    row("front sprocket", f"{best.setup.front} (as made {stock.front})")
    row("rear sprocket", f"{best.setup.rear} (as made {stock.rear})")
    row(
        "chain",
        f"{machine.chain.name}, {chain.links} links "
        f"({ls.show_signed(best.comparison.links_change, 0)} against as made)",
    )
    if question.bought is not None:
        try:
            row("links to cut", f"{ls.links_to_cut(question.bought, chain.links)} from a chain of {question.bought}")
        except ls.RangeError as error:
            row("links to cut", str(error))
    row("axle", f"{ls.show(chain.centre, units)} from the front sprocket's axis")
    row("room forward", ls.show(chain.adjuster_forward, units))
    stretch = ls.show_number(100.0 * chain.wear_room.nominal, 1)
    row("room rearward", f"{ls.show(chain.adjuster_rearward, units)}, which takes a chain {stretch} % longer than new")


def print_drive(question: argparse.Namespace, machine: ls.Machine, advised: ls.Comparison) -> None:
    units, made, drive = question.units, advised.base.drive, advised.trial.drive
    heading("The chain drive")
    row(
        "teeth in mesh in front",
        f"{ls.show_number(drive.engagement.front, 1)} (as made {ls.show_number(made.engagement.front, 1)})",
    )
    if drive.slack is not None:
        slack = drive.slack
        row(
            "slack through travel",
            f"{ls.show(machine.adjuster.slack, units)} by hand at rest leave {ls.show(slack.least_slack, units)} "
            f"at the tight point, {ls.show(slack.tightest, units)} below level",
        )
        if slack.slack_to_set is not None:
            row(
                "slack to set at rest",
                f"{ls.show(slack.slack_to_set, units)} leave {ls.show(slack.stock_least_slack, units)}, "
                "as the stock parts do",
            )
    if drive.loads is not None:
        loads = drive.loads
        row("pull in first gear", f"{ls.show(loads.pull, units)} at the engine's greatest torque")
        if loads.safety is not None and drive.stock_safety is not None:
            stock_safety = ls.show_number(drive.stock_safety, 1)
            row("strength over pull", f"{ls.show_number(loads.safety, 1)} (as made {stock_safety})")
        if loads.efficiency is not None:
            row("power it passes on", f"{ls.show_number(loads.efficiency, 3)} of what comes in, friction from memory")


def print_road(
    question: argparse.Namespace, machine: ls.Machine, advised: ls.Comparison, tyre_alone: ls.Comparison
) -> None:
    units, made, tyre_only, after = question.units, advised.base, tyre_alone.trial, advised.trial
    gears = len(made.overall_ratios)
    heading("On the road, engine turning freely and no slip")
    row("", "as made", "tyre only", "as advised")
    row("thrust, every gear", "", ls.show_percent(tyre_alone.thrust_change), ls.show_percent(advised.thrust_change))
    row("speed at equal revs", "", ls.show_percent(tyre_alone.speed_change), ls.show_percent(advised.speed_change))
    if question.cruise is not None:
        revs = [ls.show(one.engine_speed_at(question.cruise, gears), units) for one in (made, tyre_only, after)]
        row(f"revs at {ls.show(question.cruise, units)}", *revs)
    gearbox = machine.gearbox
    name, unit = ("km/h", ls.kmh) if units == "metric" else ("mph", ls.mph)
    print(
        f"  speed in {name} from {ls.show(gearbox.lowest_pull, units)} to {ls.show(gearbox.rev_limit, units)}, nominal"
    )
    for gear in range(1, gears + 1):
        cells = []
        for one in (made, tyre_only, after):
            speeds = one.speed_range(gear)
            ends = (speeds.lowest.nominal / unit, speeds.highest.nominal / unit)
            cells.append(" to ".join(ls.show_number(end, 1) for end in ends))
        row(f"gear {gear}", *cells)


def print_engine(
    question: argparse.Namespace, made: ls.Appraisal, tyre_only: ls.Appraisal, advised: ls.Appraisal
) -> None:
    """What the engine makes of it on the machine's own road, as far as the machine tells."""
    if made.road is None or tyre_only.road is None or advised.road is None:
        return
    units, roads = question.units, (made.road, tyre_only.road, advised.road)

    def three(label: str, text: Callable[[ls.OnRoad], str]) -> None:
        row(label, *(text(road) for road in roads))

    def held_by(road: ls.OnRoad) -> str:
        gear = "" if road.top_speed.gear is None else f" in gear {road.top_speed.gear}"
        return f"{road.top_speed.limit}{gear}{'' if road.top_speed.certain else ', likely'}"

    heading("With the engine at full throttle")
    row("", "as made", "tyre only", "as advised")
    three("top speed", lambda road: ls.show(road.top_speed.speed, units))
    three("held by", held_by)
    for i in range(len(made.road.gears)):
        three(f"gear {i + 1} climbs", lambda road, i=i: ls.show(road.gears[i].climb.slope, units))  # type: ignore[misc]
    three("gets away on", lambda road: ls.show(road.start.steepest, units))
    three("gear 1 holds back on", lambda road: ls.show(road.gears[0].held_back, units))
    three("walking pace", lambda road: ls.show(road.walking_pace, units))
    three("thrust in gear 1", lambda road: ls.show(road.gears[0].climb.thrust, units))
    if made.road.limit is not None:
        limit = made.road.limit
        what = "front wheel lifts" if limit.kind == "wheelie" else "rear wheel spins"
        row("of use on asphalt", f"{ls.show(limit.thrust, units)}, then the {what}")
    three("turns a km, top gear", lambda road: ls.show_number(road.gears[-1].engine_turns, 0))
    row(
        "what resists",
        "a table by mass alone: for hard, level road near 65 km/h"
        if made.road.road_load == "mass table"
        else "as the machine states it; full throttle, no wind, tyres that do not slip",
    )


def print_speedometer(question: argparse.Namespace, machine: ls.Machine, advised: ls.Appraisal) -> None:
    reading = advised.speedometer
    heading(f"Speedometer, which senses the {machine.speedometer.sensor}")
    row("reading over before", ls.show_number(reading.indicated_ratio, 3))
    row("correction factor", ls.show_number(reading.correction_factor, 3))
    row("odometer counts", f"{ls.show_percent(reading.odometer_drift)} against before")
    if machine.kind != "motorcycle":
        return
    top = advised.speed_range(len(advised.overall_ratios)).highest.nominal
    for speed in (30 * ls.kmh, 50 * ls.kmh, 90 * ls.kmh, 120 * ls.kmh):
        if speed > top:
            break
        shown = ls.show(reading.indicated(speed), question.units)
        row(f"at a true {ls.show(speed, question.units)}", f"{shown}, {reading.verdict(speed)} by UN R39")


def meets(hunting: ls.Hunting) -> str:
    kinds = "inner and outer links" if hunting.link_kinds == 2 else "only inner or only outer links"
    return f"the same link again after {hunting.passes} passes, {kinds}"


def weighed_by(question: argparse.Namespace, machine: ls.Machine, outlook: ls.WearOutlook) -> str:
    if outlook.thrust_from == "stated":
        return f"the mean of {question.ride}"
    if outlook.thrust_from == "road load":
        speed = ls.Speed("15 km/h" if machine.kind == "cycle" else "60 km/h")
        return f"what resists at {ls.show(speed, question.units)}, for want of a ride"
    return "an assumption, for want of a road load"


def print_wear(question: argparse.Namespace, advised: ls.Appraisal, change: ls.WearChange) -> None:
    wear = advised.wear
    heading("What wears, against as made")
    row("chain's pull", f"{ls.show_percent(change.chain_tension_change)} at equal thrust")
    front = ls.show_number(wear.front_contacts_per_km, 0)
    row("each front tooth", f"{front} meetings a km, {ls.show_percent(change.front_contacts_change)}")
    rear = ls.show_number(wear.rear_contacts_per_km, 0)
    row("each rear tooth", f"{rear} meetings a km, {ls.show_percent(change.rear_contacts_change)}")
    row("chain's growth", f"{ls.show_percent(change.chain_stretch_change)} at equal thrust")
    row("wear of a front tooth", ls.show_percent(change.front_tooth_change))
    row("wear of a rear tooth", ls.show_percent(change.rear_tooth_change))
    row("front sprocket's life", ls.show_percent(change.front_life_change))
    row("rear sprocket's life", ls.show_percent(change.rear_life_change))
    row("loss in the joints", ls.show_percent(change.loss_change))
    row("a front tooth meets", meets(wear.front_hunting))
    row("a rear tooth meets", meets(wear.rear_hunting))
    machine = advised.machine
    thrust = None if question.ride is None else mean_thrust(machine, advised.setup, question.ride)
    outlook = ls.wear_outlook(machine, advised.setup, thrust)
    row(
        "weighed by a thrust of", f"{ls.show(outlook.thrust, question.units)}: {weighed_by(question, machine, outlook)}"
    )
    grown = outlook.stretch_per_1000_km
    low, nominal, high = (ls.show_number(100 * share, 4) for share in (grown.low, grown.nominal, grown.high))
    row("growth in 1000 km", f"{nominal} %, from {low} in clean oil to {high} in mud")
    limit = ls.show_number(100 * outlook.limit.elongation, 1)
    row("measure, and replace at", f"{limit} % of growth, which the {outlook.limit.kind} sets")


def print_measured(question: argparse.Namespace, machine: ls.Machine, best: Candidate) -> None:
    """What a measured rollout adds to what the marking tells."""
    setup, units = best.setup, question.units
    if question.rolled is None or setup.tyre is None:
        return
    by_marking = ls.Setup(
        front=setup.front,
        rear=setup.rear,
        tyre=setup.tyre,
        chain=setup.chain,
        links=setup.links,
        front_tyre=setup.front_tyre,
    )
    marked = ls.compare(machine, machine.stock, by_marking)
    heading(f"What measuring tightened: {question.turns} turns over {ls.show(question.rolled, units)}")
    row("", "circumference", "thrust, every gear", "speedometer over before")
    for label, one in (("by its marking", marked), ("as measured", best.comparison)):
        row(
            label,
            ls.show(one.trial.circumference, units),
            ls.show_percent(one.thrust_change),
            ls.show_number(one.indicated_ratio, 3),
        )


def at_depth(question: argparse.Namespace, machine: ls.Machine, setup: ls.Setup, depth: ls.Length) -> ls.Comparison:
    """The comparison with the tyre worn down to a depth of tread."""
    circumference = setup.circumference
    if circumference is not None:
        construction = setup.tyre.construction if setup.tyre else "diagonal"
        when_new = ls.Tread(new_depth=question.tread, depth=question.tread)
        circumference = ls.circumference_at_depth(circumference, when_new, depth, construction=construction)
    then = ls.Setup(
        front=setup.front,
        rear=setup.rear,
        tyre=setup.tyre,
        chain=setup.chain,
        links=setup.links,
        circumference=circumference,
        front_tyre=setup.front_tyre,
        chain_made=setup.chain_made,
        tread=None if circumference else ls.Tread(new_depth=question.tread, depth=depth),
    )
    return ls.compare(machine, machine.stock, then)


def print_life(question: argparse.Namespace, machine: ls.Machine, best: Candidate) -> None:
    if question.tread is None or machine.kind != "motorcycle":
        return
    units = question.units
    rule = ls.legal_tread(question.region, "motorcycle")
    least = rule.depth or ls.Length("0 mm")
    heading(f"Over the tyre's life, against as made; legal down to {ls.show(least, units)} ({rule.source.document})")
    row("tread left", "circumference", "thrust, every gear", "speedometer over before")
    for depth in (question.tread, 0.5 * (question.tread + least), least):
        then = at_depth(question, machine, best.setup, depth)
        row(
            ls.show(depth, units),
            ls.show(then.trial.circumference, units),
            ls.show_percent(then.thrust_change),
            ls.show_number(then.indicated_ratio, 3),
        )


def parts_changed(stock: ls.Setup, setup: ls.Setup) -> str:
    front, rear = setup.front != stock.front, setup.rear != stock.rear
    if front and rear:
        return "changes both sprockets"
    if front or rear:
        return f"changes only the {'front' if front else 'rear'} sprocket"
    return "changes no sprocket"


def print_reason(question: argparse.Namespace, machine: ls.Machine, found: list[Candidate]) -> None:
    best = found[0]
    wish = question.thrust / 100.0
    thrust = best.comparison.thrust_change
    miss = abs(thrust.nominal - wish)
    pull = best.comparison.wear.chain_tension_change.nominal
    if miss < 0.0005:
        near = "gives just that"
    else:
        near = f"comes within {ls.show_number(100.0 * miss, 1)} points of that, which is " + (
            "less than the tyre itself leaves open"
            if miss <= 0.5 * thrust.width
            else "more than the tyre leaves open: other sprockets might come nearer"
        )
    heading("Why this one")
    print(
        f"  You wished for {ls.show_percent(wish)} of thrust. {sprockets(best.setup)} {near}.\n"
        "  Half a point more or less is not felt, so of the pairs as near it is the one that asks for least:\n"
        f"  it {parts_changed(machine.stock, best.setup)}, and its chain's pull changes by {ls.show_percent(pull)} "
        "at the same thrust. The next best:"
    )
    for one in found[1:4]:
        other = one.comparison
        print(
            f"  {sprockets(one.setup)} gives {ls.show_percent(other.thrust_change.nominal)} with "
            f"{other.trial.chain.links} links, {parts_changed(machine.stock, one.setup)}, chain's pull "
            f"{ls.show_percent(other.wear.chain_tension_change.nominal)}"
        )


def draw_speed_ranges(question: argparse.Namespace, machine: ls.Machine, advised: ls.Setup) -> list[Path]:
    """The speeds each gear covers, as made and as advised."""
    drawn = plots.gear_ranges(machine, machine.stock, advised, cruise=question.cruise, units=question.units,
                              labels=["as made", "as advised"])  # fmt: skip
    return save(question.pictures, f"{question.machine.stem}_gears", drawn)


def draw_life(question: argparse.Namespace, machine: ls.Machine, setup: ls.Setup) -> list[Path]:
    """Circumference and thrust from the new tyre down to the legal minimum of its tread."""
    least = ls.legal_tread(question.region, "motorcycle").depth
    fitted = setup.circumference or setup.tyre
    assert fitted is not None
    drawn = plots.circumference_over_wear(
        fitted,
        ls.Tread(new_depth=question.tread, depth=question.tread, least=least),
        against=ls.appraise(machine, machine.stock).circumference,
        construction=(setup.tyre.construction if setup.tyre else "diagonal") if setup.circumference else None,
        units=question.units,
    )
    return save(question.pictures, f"{question.machine.stem}_life", drawn)


def working_of(question: argparse.Namespace, machine: ls.Machine, best: Candidate) -> ls.Working:
    """How a number of the advice came about: of the change if it has such a number, else of the set-up, in top gear."""
    try:
        return best.comparison.explain(question.explain)
    except ls.ParseError:
        gears = machine.gearbox.gears
        limit = machine.gearbox.rev_limit
        return ls.explain(
            machine, best.setup, question.explain, gear=len(gears), engine_speed=limit, speed=question.cruise
        )


def advise(question: argparse.Namespace) -> None:
    machine = ls.Machine.from_json(question.machine.read_text(encoding="utf-8"))
    stock = machine.stock
    found = candidates(question, machine)
    best, advised = found[0], found[0].comparison
    tyre_setup = on_fitted_tyre(question, stock, stock.front, stock.rear)
    tyre_alone = ls.compare(machine, stock, tyre_setup)
    keep = best.setup.front == stock.front and best.setup.rear == stock.rear

    if question.explain is not None:
        print(working_of(question, machine, best).to_text(units=question.units), end="")
        return

    print(f"{machine.name}: {tyre_of(stock, question.units)} as made, now on {tyre_of(tyre_setup, question.units)}\n")
    lead = (
        f"{'Keep' if keep else 'Fit'} {sprockets(best.setup)} with {advised.trial.chain.links} links: "
        "thrust in every gear is "
        f"then {ls.show_percent(advised.thrust_change)} against as made, where the tyre alone would leave "
        f"{ls.show_percent(tyre_alone.thrust_change)}."
    )
    print(lead)
    print_ledger(advised, stock, best.setup)
    print_parts(question, machine, best)
    print_drive(question, machine, advised)
    print_road(question, machine, advised, tyre_alone)
    print_engine(question, advised.base, tyre_alone.trial, advised.trial)
    print_speedometer(question, machine, advised.trial)
    print_wear(question, advised.trial, advised.wear)
    print_measured(question, machine, best)
    print_life(question, machine, best)
    print_reason(question, machine, found)
    heading("Before you ride")
    for caution in advised.cautions:
        print(f"  - {caution.sentence(question.units)}")
    paths = draw_speed_ranges(question, machine, best.setup)
    if question.tread is not None and machine.kind == "motorcycle":
        paths += draw_life(question, machine, best.setup)
    print(f"\nPictures: {', '.join(map(str, paths))}")
    path = question.pictures / f"{question.machine.stem}_advice.html"
    write_page(path, lead, machine, advised, tyre_alone, paths[0], units=question.units, cruise=question.cruise)
    print(f"Page: {path}")


def main() -> int:
    try:
        advise(ask(sys.argv[1:]))
    except ls.ParseError as error:
        print(f"regear: {error}\n{error.caret}", file=sys.stderr)
        return 1
    except (ls.Error, OSError) as error:
        print(f"regear: {error}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
