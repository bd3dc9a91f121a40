# SPDX-License-Identifier: MIT
"""What the gearing does under the rider: thrust over speed, hills, top speed, and the gears of a real ride.

engine_and_road.py [MACHINE.json] [--front TEETH] [--rear TEETH] [--tyre MARKING] [--cruise SPEED] [--altitude LENGTH]
                   [--log RIDE.csv] [--units metric|us] [--pictures FOLDER]
"""

from __future__ import annotations

import argparse
from pathlib import Path

import layshaft as ls
from drawing import HERE, held_against_stock, save_and_say
from layshaft import plots
from riding import DOWN, UP, ride_on


def options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Thrust, hills, top speed, and the gears of a real ride.")
    parser.add_argument("machine", type=Path, nargs="?", default=HERE / "machines/trail_bike.json")
    parser.add_argument("--front", type=int, help="teeth of the front sprocket (the machine's own)")
    parser.add_argument("--rear", type=int, help="teeth of the rear sprocket (the machine's own)")
    parser.add_argument("--tyre", help="marking of another rear tyre")
    parser.add_argument("--cruise", type=ls.Speed, help="the speed you ride at, '85 km/h'")
    parser.add_argument("--altitude", type=ls.Length, help="also at this height above the sea, '2000 m'")
    parser.add_argument("--log", type=Path, help="a recorded ride: time_s,speed_kmh and, if recorded, more")
    parser.add_argument("--units", choices=["metric", "us"], default="metric")
    parser.add_argument("--pictures", type=Path, default=HERE.parent / "build/examples")
    return parser.parse_args()


def row(label: str, *cells: str) -> None:
    print("  " + f"{label:<30}" + "".join(f"{cell:<42}" for cell in cells[:-1]) + cells[-1])


def trial_of(asked: argparse.Namespace, machine: ls.Machine) -> ls.Setup:
    stock = machine.stock
    if asked.tyre is None:
        return ls.Setup(
            front=asked.front or stock.front, rear=asked.rear or stock.rear, tyre=stock.tyre,
            circumference=stock.circumference, front_tyre=stock.front_tyre, chain_made=stock.chain_made,
        )  # fmt: skip
    return ls.Setup(
        front=asked.front or stock.front, rear=asked.rear or stock.rear, tyre=asked.tyre, front_tyre=stock.front_tyre,
        chain_made=stock.chain_made,
    )  # fmt: skip


def print_answers(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    units, road = asked.units, machine.road_load
    made, then = ls.appraise(machine, machine.stock), ls.appraise(machine, trial)
    if road is None or made.road is None or then.road is None:
        raise ls.Error(f"{machine.name} states no engine, no road load or no mass; its file needs all three")
    both = (made, then)
    print(f"{machine.name}: {trial.front}/{trial.rear}, as made {machine.stock.front}/{machine.stock.rear}\n")
    row("", "as made", "then")
    row("top speed", *(ls.show(one.road.top_speed.speed, units) for one in both if one.road))
    row(
        "held by",
        *(
            f"{one.road.top_speed.limit}"
            + (f" in gear {one.road.top_speed.gear}" if one.road.top_speed.gear else "")
            + ("" if one.road.top_speed.certain else ", likely")
            for one in both
            if one.road
        ),
    )
    cruise = asked.cruise or 0.6 * made.road.top_speed.speed.nominal
    gears = len(made.overall_ratios)
    row(
        f"engine at {ls.show(cruise, units)}",
        *(f"{ls.show(one.engine_speed_at(cruise, gears), units)} in top gear" for one in both),
    )
    for i in range(gears):
        row(
            f"gear {i + 1}: steepest hill",
            *(
                f"{ls.show(one.road.gears[i].climb.slope, units)} at {ls.show(one.road.gears[i].climb.speed, units)}"
                for one in both
                if one.road
            ),
        )
    row("gets away on", *(ls.show(one.road.start.steepest, units) for one in both if one.road))
    if machine.body is not None and made.road.limit is not None:
        for ground in ("asphalt", "loose gravel"):
            climb = ls.steepest_on_ground(machine.body, ground)
            held = "the front wheel lifts" if climb.kind == "wheelie" else "the rear wheel spins"
            row(f"{ground} takes", f"{ls.show(climb.slope, units)}, then {held}, however hard it pulls")
    row("walking pace", *(ls.show(one.road.walking_pace, units) for one in both if one.road))
    row("on sand, with its slip", *(ls.show(ls.walking_pace(machine, one.setup, "sand"), units) for one in both))
    start, end = 0 * ls.kmh, 0.7 * made.road.top_speed.speed.nominal
    ground = "asphalt" if made.road.limit is not None else None
    runs = [ls.time_to_speed(machine, one.setup, road, start, end, ground=ground) for one in both]
    row(
        f"from standstill to {ls.show(end, units)}",
        *("does not get there" if run.time is None else ls.show(run.time, units) for run in runs),
    )
    heat = [ls.standing_start(machine, one.setup, road, 0.15).clutch_heat for one in both]
    row("heat in the clutch, 15 %", *("does not move" if one is None else ls.show(one, units) for one in heat))
    if asked.altitude is not None:
        high = ls.in_air(machine, ls.air_at(asked.altitude))
        there = [ls.on_road(high, one.setup) for one in both]
        row(f"top speed at {asked.altitude / ls.m:.0f} m", *(ls.show(one.top_speed.speed, units) for one in there))
    print()
    for caution in ls.compare(machine, machine.stock, trial).cautions:
        print(f"- {caution.sentence(units)}")


def draw(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    """Thrust of each gear with what resists, and the speeds that each gear covers, as made and then."""
    setups, name = held_against_stock(machine, trial), asked.machine.stem
    save_and_say(asked.pictures, f"{name}_thrust", plots.thrust_diagram(machine, *setups, units=asked.units))
    save_and_say(asked.pictures, f"{name}_ranges", plots.gear_ranges(machine, *setups, units=asked.units))


def tell_ride(asked: argparse.Namespace, machine: ls.Machine, trial: ls.Setup) -> None:
    """What a recorded ride does to each gear, before and after; and what the log says of the machine itself."""
    log = ls.read_ride_log(asked.log.read_text(encoding="utf-8"))
    shifts = f"shifts up at {100 * UP:.0f} % and down at {100 * DOWN:.0f} % of the limit"
    print(f"\n{asked.log.name}: {log.samples} samples; {shifts}")
    uses = {
        "as made": ride_on(machine, machine.stock, log, recorded_gears=False),
        f"{trial.front}/{trial.rear}": ride_on(machine, trial, log, recorded_gears=False),
    }
    if log.engine_rpm is not None:
        uses = {"as recorded": ride_on(machine, machine.stock, log, recorded_gears=True), **uses}
    row("", *uses)
    gears = len(machine.gearbox.gears)
    for gear in range(gears):
        row(f"time in gear {gear + 1}", *(f"{use.time_in_gear[gear] / ls.minute:.1f} min" for use in uses.values()))
    way_name, way_unit = ("km", ls.km) if asked.units == "metric" else ("miles", ls.mile)
    row("way", *(f"{use.distance / way_unit:.1f} {way_name}" for use in uses.values()))
    works = [use.wheel_work for use in uses.values() if use.wheel_work is not None]
    if works:
        row("work at the wheel", *(f"{work / ls.J / 1e6:.2f} MJ" for work in works))
    if log.engine_rpm is not None:
        found = ls.machine_of_log(log)
        print(f"  the log itself tells {len(found.gears)} gears, in engine turns a metre:", end=" ")
        print(", ".join(f"{gear.engine_turns_per_metre.nominal:.3f}" for gear in found.gears))
    if log.indicated_kmh is not None:
        error = ls.instrument_error(log)
        if error.speedometer is not None:
            print(f"  and that its speedometer shows {ls.show_percent(error.speedometer)} against the true speed")
    draw_times(asked, machine, uses)


def draw_times(asked: argparse.Namespace, machine: ls.Machine, uses: dict[str, ls.RideUse]) -> None:
    """The time spent in each gear, which is this example's own picture."""
    import matplotlib.pyplot as plt

    gears = range(1, len(machine.gearbox.gears) + 1)
    axes = plt.subplots(figsize=(6.4, 1.1 + 0.6 * len(gears)), layout="constrained")[1]
    height = 0.8 / len(uses)
    colours = {"as recorded": "blue", "as made": "grey"}
    for i, (label, use) in enumerate(uses.items()):
        places = [gear + (i - (len(uses) - 1) / 2) * height for gear in gears]
        axes.barh(places, [t / ls.minute for t in use.time_in_gear], height=0.9 * height, label=label,
                  color=plots.COLOURS[colours.get(label, "rust")], hatch=["", "", "//"][i], edgecolor="white",
                  linewidth=0)  # fmt: skip
    axes.invert_yaxis()
    axes.set_yticks(list(gears), [f"gear {gear}" for gear in gears])
    axes.set_xlabel("minutes")
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    axes.legend(frameon=False, loc="upper right")
    ride = asked.log.stem.replace("_", " ")
    title = axes.set_title(f"{machine.name}: time in each gear, {ride}", loc="left", fontsize="medium")
    save_and_say(asked.pictures, f"{asked.machine.stem}_time_in_gear", {"title": title})


def main() -> None:
    asked = options()
    machine = ls.Machine.from_json(asked.machine.read_text(encoding="utf-8"))
    trial = trial_of(asked, machine)
    print_answers(asked, machine, trial)
    draw(asked, machine, trial)
    if asked.log is not None:
        tell_ride(asked, machine, trial)


if __name__ == "__main__":
    main()
