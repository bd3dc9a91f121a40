# SPDX-License-Identifier: MIT
"""Two ways to one ratio: which of them wears, loses and costs less, how sure that is, and when to measure.

wear.py [MACHINE.json] [--one FRONT/REAR] [--other FRONT/REAR] [--material MATERIAL] [--rear-price PRICE]
        [--ride RIDE.csv] [--a-year KM] [--pictures FOLDER]

Without pairs it takes one tooth fewer in front, and the rear sprocket that comes nearest to the same ratio on the
machine's own front one. What the numbers rest on stands below them, each with its source. Prices, lives and the
rider's measurements are invented.
"""

from __future__ import annotations

import argparse
from datetime import date
from pathlib import Path
from typing import TypeVar

import layshaft as ls
from drawing import HERE, save_and_say
from layshaft import plots
from riding import mean_thrust

T = TypeVar("T", float, ls.Length)

STEEL = "hardened steel"
MEASURED_ON = date(2026, 5, 30)


def pair(text: str) -> tuple[int, int]:
    front, _, rear = text.partition("/")
    return int(front), int(rear)


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Which of two ways to one ratio wears, loses and costs less.")
    parser.add_argument("machine", type=Path, nargs="?", default=HERE / "machines/trail_bike.json")
    parser.add_argument("--one", type=pair, help="front/rear teeth (the machine's front one, more behind)")
    parser.add_argument("--other", type=pair, help="front/rear teeth (one fewer in front)")
    parser.add_argument("--material", default=STEEL, help="of the rear sprocket of the second pair")
    parser.add_argument("--rear-price", type=float, help="of the rear sprocket of the second pair")
    parser.add_argument("--ride", type=Path, help="a recorded ride, by which wear is weighed")
    parser.add_argument("--a-year", type=float, default=6000.0, help="kilometres ridden in a year")
    parser.add_argument("--pictures", type=Path, default=HERE.parent / "build/examples")
    return parser.parse_args()


def row(label: str, text: str) -> None:
    print(f"  {label:<26}{text}")


def ends(band: ls.Band[T]) -> tuple[T, T, T]:
    return band.low, band.nominal, band.high


def kilometres(distance: ls.Band[ls.Length]) -> str:
    low, nominal, high = (
        f"{end / ls.km:,.0f}" if end < 1e6 * ls.km else "more than a million" for end in ends(distance)
    )
    return f"{nominal} ({low} to {high}) km"


def money(amount: ls.Band[float], form: str = ".2f") -> str:
    return f"{amount.nominal:{form}} ({amount.low:{form}} to {amount.high:{form}})"


def invented_costs() -> ls.DriveCosts:
    """What a rider's chain and sprockets cost, and how far they went on the first pair."""

    def part(kind: str, price: float, low: float, nominal: float, high: float) -> ls.CostPart:
        return ls.CostPart(kind=kind, price=price, life=ls.Band(low * ls.km, nominal * ls.km, high * ls.km))

    return ls.DriveCosts(
        chain=part("chain", 96.0, 12000, 15000, 18000),
        front=part("front sprocket", 21.0, 11000, 14000, 17000),
        rear=part("rear sprocket", 52.0, 20000, 26000, 32000),
    )


def set_up(machine: ls.Machine, teeth: tuple[int, int], rear_material: str | None = None) -> ls.Setup:
    stock = machine.stock
    return ls.Setup(
        front=teeth[0], rear=teeth[1], tyre=stock.tyre, circumference=stock.circumference, front_tyre=stock.front_tyre,
        chain_made=stock.chain_made, rear_material=rear_material,
    )  # fmt: skip


def sure(change: ls.Band[float]) -> bool:
    return change.low * change.high > 0


def says(change: ls.Band[float], less: str, more: str) -> str:
    """'-8.0 (-8.4 to -7.5) %: wears slower, for sure', in plain words."""
    if change.low == change.high == 0:
        return "the same"
    word = more if change.nominal > 0 else less
    return f"{ls.show_percent(change)}: {word}, {'for sure' if sure(change) else 'but the sign is not certain'}"


def name_of(setup: ls.Setup) -> str:
    material = setup.rear_material or STEEL
    return f"{setup.front}/{setup.rear}" + ("" if material == STEEL else f" in {material}")


def print_verdict(machine: ls.Machine, comparison: ls.Comparison, cost: ls.CostChange) -> None:
    """The answer first: which pair wears, loses and costs less, by how much, and how sure that is."""
    one, other = comparison.base.setup, comparison.trial.setup
    wear = comparison.wear
    print(f"{machine.name}: {name_of(other)} against {name_of(one)}, a final ratio that differs by "
          f"{ls.show_percent((other.rear / other.front) / (one.rear / one.front) - 1)}\n")  # fmt: skip
    for what, change in (
        ("wears its chain less", wear.chain_stretch_change),
        ("wears its front teeth less", wear.front_tooth_change),
        ("wears its rear teeth less", wear.rear_tooth_change),
        ("loses less in the joints", wear.loss_change),
    ):
        better = name_of(one if change.nominal > 0 else other)
        if change.low == change.high == 0:
            print(f"Neither {what}.")
        else:
            # By how much, from the better pair's side.
            less = sorted(1 - 1 / (1 + end) if change.nominal > 0 else -end for end in ends(change))
            by = ls.show_percent(ls.Band(*less)).replace("+", "")
            print(f"{better} {what}: by {by}{'.' if sure(change) else ', which is not certain.'}")
    difference = cost.difference
    better = name_of(one if difference.nominal > 0 else other)
    if sure(difference):
        by = money(ls.Band(*sorted(abs(end) for end in ends(difference))))
        print(f"{better} costs less: by {by} in 1000 km, whatever the prices and lives within their bands.")
    else:
        print(f"{better} costs less: by {abs(difference.nominal):.2f} in 1000 km, but the other may, "
              f"from {difference.low:+.2f} to {difference.high:+.2f}.")  # fmt: skip


def print_comparison(comparison: ls.Comparison) -> None:
    one, other = comparison.base.setup, comparison.trial.setup
    change = comparison.wear
    print(f"\n{name_of(other)} against {name_of(one)}, at equal thrust")
    row("chain's pull", says(change.chain_tension_change, "pulls less", "pulls harder"))
    row("chain", says(change.chain_stretch_change, "grows slower", "grows faster"))
    row("a front tooth", says(change.front_tooth_change, "wears slower", "wears faster"))
    row("a rear tooth", says(change.rear_tooth_change, "wears slower", "wears faster"))
    row("front sprocket", says(change.front_life_change, "lasts less far", "lasts farther"))
    row("rear sprocket", says(change.rear_life_change, "lasts less far", "lasts farther"))
    row("joints", says(change.loss_change, "lose less", "lose more"))
    for setup, appraisal in ((one, comparison.base), (other, comparison.trial)):
        wear = appraisal.wear
        row(
            f"{name_of(setup)} meets",
            f"front evenness {wear.front_hunting.evenness:.2f}, rear {wear.rear_hunting.evenness:.2f} "
            f"on {appraisal.chain.links} links",
        )
        kinds = wear.front_hunting.inner_only + wear.front_hunting.outer_only
        if kinds:
            row("", f"{100 * kinds:.0f} % of the front teeth see only inner or only outer links")
    better = ls.better_hunting(other.front, other.rear, comparison.trial.chain.links)[:3]
    if better:
        row("hunts better", ", ".join(f"{b.front}/{b.rear} ({ls.show_percent(b.ratio_change)})" for b in better))


def print_costs(comparison: ls.Comparison, costs: ls.DriveCosts, cost: ls.CostChange) -> None:
    one, other = comparison.base.setup, comparison.trial.setup
    print("\nWhat that costs, at an invented rider's prices and lives")

    for name, before, after in (
        ("chain", costs.chain, cost.trial.chain),
        ("front sprocket", costs.front, cost.trial.front),
        ("rear sprocket", costs.rear, cost.trial.rear),
    ):
        row(f"{name} lasts", f"{kilometres(before.life)}, then {kilometres(after.life)}")
    for setup, per in ((one, cost.base_per_1000_km), (other, cost.trial_per_1000_km)):
        row(f"{name_of(setup)}, in 1000 km", money(per))
    row("more than before", money(cost.difference, "+.2f"))
    plans = ls.replacement_plans("60000 km", cost.trial)
    best = plans.cheapest
    chains = f", {best.chains_per_set} chains a pair of sprockets" if best.chains_per_set > 1 else ""
    flips = "another may be cheapest within the bands" if plans.flips else "the cheapest all over the bands"
    bought = f"{best.chains} chains, {best.fronts} front and {best.rears} rear sprockets"
    row("best plan for 60,000 km", f"{best.kind}{chains}: {bought}; {flips}")
    if cost.trial.rear.price != costs.rear.price or one.rear_material != other.rear_material:
        even = ls.break_even(costs.rear, cost.trial.rear)
        against = f"against {costs.rear.price.nominal:.0f} for {one.rear_material}"
        row(f"{other.rear_material} pays", f"up to a price of {money(even.price, '.0f')}, {against}")


def print_outlook(machine: ls.Machine, setup: ls.Setup, thrust: ls.Force | None) -> ls.WearOutlook:
    outlook = ls.wear_outlook(machine, setup, thrust)
    print(f"\nThe chain of {name_of(setup)}, in kilometres that nobody measured yet")
    row("mean thrust", f"{ls.show(outlook.thrust)}, {outlook.thrust_from}")
    stretch = outlook.stretch_per_1000_km
    row(
        "grows in 1000 km",
        f"{100 * stretch.nominal:.3g} % ({100 * stretch.low:.2g} in clean oil to {100 * stretch.high:.2g} in mud)",
    )
    row("may grow", f"{100 * outlook.limit.elongation:.1f} %, set by the {outlook.limit.kind}")
    life = outlook.chain_life
    row("so lasts", f"{kilometres(life)}: a guess of decades")
    row("climbs the rear teeth", f"{ls.show(outlook.pitch_climb)} by then")
    for end, teeth in (("front", setup.front), ("rear", setup.rear)):
        deep = ls.flank_wear_limit(ls.Sprocket(machine.chain, teeth))
        row(f"{end} teeth are done", f"worn {ls.show(deep)} deep")
    first = min(1000.0, max(100.0, 0.05 * (life.nominal / ls.km)))
    row("measure", f"now and after {first:.0f} km; two measurements tell more than any table")
    return outlook


def measured(machine: ls.Machine) -> list[ls.StretchMeasurement]:
    """Forty links of an invented rider's chain, every 3000 km."""
    grown = (0.0006, 0.0025, 0.0047, 0.0066, 0.0089)
    new = 40 * machine.chain.pitch
    return [ls.StretchMeasurement((1000 + 3000 * i) * ls.km, new * (1 + share), 40) for i, share in enumerate(grown)]


def print_measured(
    asked: argparse.Namespace, machine: ls.Machine, comparison: ls.Comparison, outlook: ls.WearOutlook
) -> ls.StretchFit:
    """An invented rider's caliper: what five measurements make of the guess, and the day to replace the chain by."""
    fit = ls.fit_stretch(machine.chain.pitch, measured(machine))
    setup = comparison.trial.setup
    tight = ls.wear_outlook(machine, setup, outlook.thrust, measured=fit.per_1000_km).stretch_per_1000_km
    print("\nA rider who measured 40 links every 3000 km, five times (invented)")
    row("grows in 1000 km", f"{100 * fit.per_1000_km.nominal:.3f} % "
        f"({100 * fit.per_1000_km.low:.3f} to {100 * fit.per_1000_km.high:.3f}), a line by least squares")  # fmt: skip
    guess = outlook.stretch_per_1000_km
    row("tightens the guess", f"from a factor of {guess.high / guess.low:,.0f} to one of {tight.high / tight.low:.2f}")
    left = fit.distance_left(outlook.limit.elongation)
    latest = "unknown" if left.high is None else f"{left.high / ls.km:,.0f} km"
    row("goes on for", f"{left.nominal / ls.km:,.0f} km (at least {left.low / ls.km:,.0f}, at most {latest})")
    by = ls.replace_by(left, MEASURED_ON, asked.a_year / 365.25 * ls.km)
    row("replace by", f"{by.expected}, as last measured on {MEASURED_ON} and at {asked.a_year:,.0f} km a year")
    row("measure before", f"{by.earliest}")
    return fit


def print_tread(machine: ls.Machine, setup: ls.Setup) -> None:
    """Two readings of a depth gauge, and what gearing and speedometer become meanwhile."""
    if machine.kind != "motorcycle" or setup.tyre is None:
        return
    first, second = (
        ls.DepthReading(depth="8.5 mm", odometer="2000 km"),
        ls.DepthReading(depth="6.1 mm", odometer="5000 km"),
    )
    least = ls.legal_tread("GB", "motorcycle").depth
    rate = ls.tread_rate(first, second, least=least, per_day="16 km")
    print("\nA rider who measured the tread twice (invented)")
    row("loses in 1000 km", f"{ls.show(rate.per_1000_km)}")
    if rate.distance_left is not None:
        by = ls.replace_by(rate.distance_left, MEASURED_ON, "16 km")
        row("lasts for", f"{kilometres(rate.distance_left)}, to {by.expected}")

    def worn(depth: ls.Length) -> ls.Setup:
        return ls.Setup(front=setup.front, rear=setup.rear, tyre=setup.tyre, chain_made=setup.chain_made,
                        tread_worn=depth)  # fmt: skip

    meanwhile = ls.compare(machine, worn("0 mm"), worn(first.depth - least))
    row("by then thrust is", f"{ls.show_percent(meanwhile.thrust_change)} of what it was when new")
    shows = ls.show_percent(ls.Band(*(end - 1 for end in ends(meanwhile.indicated_ratio))))
    row("and the speedometer shows", f"{shows} against what it did, at one true speed")


def print_assumptions(comparison: ls.Comparison, outlook: ls.WearOutlook) -> None:
    """Every source that the numbers rest on, out of their own workings, the least sure ones first."""
    numbers = ("chain tension", "chain stretch", "front tooth", "rear tooth", "front life", "rear life", "loss")
    sources: dict[ls.Source, list[str]] = {}
    for number in numbers:
        for step in comparison.explain(number).steps:
            used = sources.setdefault(step.source, [])
            if number not in used:
                used.append(number)
    print("\nWhat these numbers rest on, out of their own workings")
    for certainty in ("from memory", "common practice", "secondary", "published"):
        for source, used in sources.items():
            if source.certainty.startswith(certainty):
                row(f"{source.certainty.partition(',')[0]}", f"{source.document}: {', '.join(used)}")
    if outlook.thrust_from != "stated":
        row("assumed", "a mean thrust for want of a ride: the chain's kilometres")
    row("assumed", "a part is used up evenly, and the next lives as long: what it costs")


def main() -> None:
    asked = options()
    machine = ls.Machine.from_json(asked.machine.read_text(encoding="utf-8"))
    front, rear = machine.stock.front, machine.stock.rear
    other = asked.other or (front - 1, rear)
    one = asked.one or (front, round(other[1] / other[0] * front))
    trial = set_up(machine, other, asked.material)
    comparison = ls.compare(machine, set_up(machine, one, STEEL), trial)
    costs = invented_costs()
    cost = ls.costs_after(comparison, costs, rear_price=asked.rear_price)
    print_verdict(machine, comparison, cost)
    print_comparison(comparison)
    print_costs(comparison, costs, cost)
    thrust = None if asked.ride is None else mean_thrust(machine, trial, asked.ride)
    outlook = print_outlook(machine, trial, thrust)
    fit = print_measured(asked, machine, comparison, outlook)
    print_tread(machine, trial)
    print_assumptions(comparison, outlook)
    print()
    for caution in comparison.cautions:
        print(f"- {caution.sentence()}")
    name, trial_links = asked.machine.stem, comparison.trial.chain.links
    save_and_say(asked.pictures, f"{name}_wear", plots.wear_weights(comparison))
    drawn = plots.stretch(outlook, fit, measurements=measured(machine), pitch=machine.chain.pitch)
    save_and_say(asked.pictures, f"{name}_stretch", drawn)
    save_and_say(asked.pictures, f"{name}_contacts", plots.contact_map(trial.front, trial_links))


if __name__ == "__main__":
    main()
