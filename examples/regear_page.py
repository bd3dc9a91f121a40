# SPDX-License-Identifier: MIT
"""The advice of regear.py as one page: every number with its working folded under it, some beside a picture."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import layshaft as ls
from layshaft import plots, report


def points(band: ls.Band[float]) -> str:
    return ls.show_percent(band).removesuffix(" %") + " points"


def write_page(
    path: Path,
    lead: str,
    machine: ls.Machine,
    advised: ls.Comparison,
    tyre_alone: ls.Comparison,
    picture: Path,
    *,
    units: Literal["metric", "us"],
    cruise: ls.Speed | None,
) -> Path:
    setup, chain = advised.trial.setup, advised.trial.chain
    top = len(advised.trial.overall_ratios)

    def explain(what: str, gear: int | None = None, **at: ls.Speed | ls.AngularSpeed) -> ls.Working:
        return ls.explain(machine, setup, what, gear=gear, **at)

    page = report.Page(f"{machine.name}: sprockets and chain for the fitted tyre", units=units)
    page.answer(lead)

    page.heading("What changes, against as made")
    thrust = None
    if machine.engine is not None and machine.road_load is not None:
        thrust = plots.thrust_diagram(machine, machine.stock, setup, slopes=(0.0,), units=units)
    page.number(
        "thrust, every gear", ls.show_percent(advised.thrust_change), advised.explain("thrust"), picture=thrust,
        caption="Thrust of each gear over road speed, as made and as advised, and what resists on the level.",
    )  # fmt: skip
    for cause, part in advised.contributions("thrust").items():
        page.number(f"of it: {cause}", points(part), advised.explain(f"thrust by {cause}"))
    page.number("speed at equal revs", ls.show_percent(advised.speed_change), advised.explain("speed"))
    page.number("revs at equal speed", ls.show_percent(advised.engine_speed_change), advised.explain("engine speed"))
    page.number("with the tyre alone, thrust", ls.show_percent(tyre_alone.thrust_change), tyre_alone.explain("thrust"))

    page.heading("What to buy and where it stands")
    page.number("front and rear sprocket", f"{setup.front} and {setup.rear} teeth")
    page.number("chain", f"{machine.chain.name}, {chain.links} links", explain("links"))
    loop = ls.ChainLoop(setup.chain or machine.chain, setup.front, setup.rear)
    to_scale = plots.chain_loop(loop, chain.centre.nominal, adjuster=machine.adjuster, links=chain.links, units=units)
    page.number(
        "axle, from the front sprocket", ls.show(chain.centre, units), explain("centre"), picture=to_scale,
        caption="The chain to scale, and the room that the axle has in its adjuster.",
    )  # fmt: skip
    page.number("room forward", ls.show(chain.adjuster_forward, units), explain("adjuster forward"))
    page.number("room rearward", ls.show(chain.adjuster_rearward, units), explain("adjuster rearward"))
    page.number("the chain may wear longer by", ls.show_percent(chain.wear_room).replace("+", ""), explain("wear room"))

    page.heading("On the road, engine turning freely and no slip")
    page.number("rolling circumference", ls.show(advised.trial.circumference, units), explain("circumference"))
    if cruise is not None:
        revs = advised.trial.engine_speed_at(cruise, top)
        working = explain("engine speed", top, speed=cruise)
        page.number(f"revs at {ls.show(cruise, units)} in gear {top}", ls.show(revs, units), working)
    for gear in range(1, top + 1):
        speed = advised.trial.speed_range(gear).highest
        page.number(f"gear {gear}, at the rev limit", ls.show(speed, units), explain("highest speed", gear))
    page.figure(picture, "What each gear covers, as made and as advised; dark lines show what the tyre leaves open.")

    reading = advised.trial.speedometer
    page.heading(f"Speedometer, which senses the {machine.speedometer.sensor}")
    page.number("reading over before", ls.show_number(reading.indicated_ratio, 3), explain("indicated ratio"))
    page.number("correction factor", ls.show_number(reading.correction_factor, 3), explain("correction factor"))
    page.number("odometer drift", ls.show_percent(reading.odometer_drift), explain("odometer drift"))
    if machine.kind == "motorcycle":
        at = 50 * ls.kmh
        shown = f"{ls.show(reading.indicated(at), units)}, {reading.verdict(at)} by UN R39"
        page.number(f"at a true {ls.show(at, units)}", shown, explain("indicated speed", speed=at))

    page.heading("What wears, against as made")
    wear = advised.wear
    page.number("the chain's pull", ls.show_percent(wear.chain_tension_change), advised.explain("chain tension"))
    page.number("each front tooth", ls.show_percent(wear.front_contacts_change), advised.explain("front contacts"))
    page.number("each rear tooth", ls.show_percent(wear.rear_contacts_change), advised.explain("rear contacts"))

    page.cautions(advised.cautions)
    return page.write(path)
