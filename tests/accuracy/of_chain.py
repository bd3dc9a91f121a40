# SPDX-License-Identifier: MIT
"""The chain's loop both ways and in bulk, slack, sprockets, and who meets whom.

The exact loop is worked out anew from its geometry: two tangents, and on each sprocket its share of the teeth.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable

import layshaft as ls
from accuracy.exact import Exact, Number, mp
from accuracy.function import Arguments, Draw, Function, exactly
from accuracy.rows import CLASSES, cut, magnitude
from layshaft import arrays

SERIES = ("415", "428", "520", "525", "06B", "72B")
PITCHES = {name: ls.ChainSeries(name).pitch / ls.m for name in SERIES}
ROLLERS = {name: ls.ChainSeries(name).roller_diameter / ls.m for name in SERIES}


def radius(teeth: int) -> Number:
    """Of the pitch circle, in pitches."""
    return mp.mpf("0.5") / mp.sin(mp.pi / teeth)


def links_at(front: int, rear: int, centre: Number) -> Number:
    """The links of the taut loop; the centre distance is in pitches."""
    apart, teeth = radius(rear) - radius(front), rear - front
    return 2 * mp.sqrt(centre**2 - apart**2) + mp.mpf(front + rear) / 2 + teeth / mp.pi * mp.asin(apart / centre)


def centre_of(front: int, rear: int, links: Number) -> Exact | None:
    """The centre distance of so many links, in pitches, by Newton's steps; None where there is no such loop. Where the
    pitch circles nearly touch and one is much the larger, the links hardly change with the centre distance, and what
    rounding the links changes is more than the last place of the centre distance."""
    apart, touching = radius(rear) - radius(front), radius(front) + radius(rear)
    centre = max(mp.mpf(links) / 2 - mp.mpf(front + rear) / 4, touching * (1 + mp.mpf(10) ** -12))
    for _ in range(200):
        run = mp.sqrt(centre**2 - apart**2)
        # The slope is that of the run over the centre distance, less what the wrap gives back.
        slope = (2 * centre - (rear - front) / mp.pi * apart / centre) / run
        step = (links_at(front, rear, centre) - links) / slope
        centre = max(centre - step, touching)
        if abs(step) < mp.mpf(10) ** -45 * centre:
            return Exact(centre, links / slope)
    return None


def teeth_between(random: random.Random, least: int, greatest: int, alike: bool) -> tuple[int, int]:
    front = random.randint(least, greatest)
    rear = min(greatest, front + random.randint(0, 1)) if alike else random.randint(least, greatest)
    return (front, rear) if random.random() < 0.5 else (rear, front)


TEETH = {"ordinary": (9, 70), "edge": (4, 1000), "cancelling": (9, 200), "wide": (4, 1000)}


def centre_in_pitches(random: random.Random, difficulty: str, touching: float) -> float:
    match difficulty:
        case "ordinary":
            return touching + random.uniform(5.0, 40.0)
        case "edge":  # as near as leaves the pitch circles apart after rounding
            return touching * (1.0 + math.ldexp(1.0, -random.randint(10, 44)))
        case "cancelling":
            return touching + random.uniform(0.0, 60.0)
    return touching * (1.0 + magnitude(random, -6, 2))


def pitch_in_mm(random: random.Random, difficulty: str) -> float:
    return magnitude(random, -100, 100) if difficulty == "wide" else random.uniform(4.0, 115.0)


def links_in_bulk(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        front, rear = teeth_between(random, *TEETH[difficulty], difficulty == "cancelling")
        pitch = pitch_in_mm(random, difficulty)
        centre = centre_in_pitches(random, difficulty, float(radius(front) + radius(rear))) * pitch
        return (pitch, front, rear, centre), exactly(links_at(front, rear, mp.mpf(centre) / mp.mpf(pitch)))

    return draw


def centre_in_bulk(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        front, rear = teeth_between(random, *TEETH[difficulty], difficulty == "cancelling")
        pitch = pitch_in_mm(random, difficulty)
        centre = centre_in_pitches(random, difficulty, float(radius(front) + radius(rear)))
        links = float(links_at(front, rear, mp.mpf(centre)))
        if difficulty == "ordinary":
            links = float(round(links))
        exact = centre_of(front, rear, mp.mpf(links))
        return None if exact is None else ((pitch, front, rear, links), exact * exactly(pitch))

    return draw


def loop_of(series: str, front: int, rear: int) -> ls.ChainLoop:
    return ls.ChainLoop(series, int(front), int(rear))


def centre_for(random: random.Random, loop: ls.ChainLoop, difficulty: str) -> float:
    least = cut(loop.smallest_centre / ls.m) * (1.0 + 2.0**-28)
    if difficulty == "edge":
        return least * (1.0 + math.ldexp(random.random(), -random.randint(20, 52)))
    if difficulty == "wide":
        return least + random.uniform(0.0, 3.0) * magnitude(random, -3, 0)
    return least + random.uniform(0.1, 0.8)


def links_of_loop(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        series = random.choice(SERIES)
        front, rear = teeth_between(random, *TEETH[difficulty], difficulty == "cancelling")
        centre = centre_for(random, loop_of(series, front, rear), difficulty)
        return (series, front, rear, centre), exactly(links_at(front, rear, mp.mpf(centre) / mp.mpf(PITCHES[series])))

    return draw


def centre_of_loop(difficulty: str) -> Draw:
    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        series = random.choice(SERIES)
        front, rear = teeth_between(random, *TEETH[difficulty], difficulty == "cancelling")
        loop = loop_of(series, front, rear)
        if difficulty == "edge":
            links = float(loop.fewest_links + random.randint(0, 1))
        else:
            links = float(links_at(front, rear, mp.mpf(centre_for(random, loop, difficulty)) / mp.mpf(PITCHES[series])))
        if difficulty == "ordinary":
            links = float(round(links))
        exact = centre_of(front, rear, mp.mpf(links))
        if exact is None or exact.value * mp.mpf(PITCHES[series]) < mp.mpf(loop.smallest_centre / ls.m):
            return None
        return (series, front, rear, links), exact * exactly(PITCHES[series])

    return draw


def in_all(of: Callable[[str], Draw]) -> dict[str, Draw]:
    return {difficulty: of(difficulty) for difficulty in CLASSES}


# --- Sprockets --------------------------------------------------------------------------------------------------------


def sprocket(of: Callable[[Number, Number, int], Exact]) -> dict[str, Draw]:
    def within(least: int, greatest: int) -> Draw:
        def draw(random: random.Random) -> tuple[Arguments, Exact]:
            series, teeth = random.choice(SERIES), random.randint(least, greatest)
            return (series, teeth), of(mp.mpf(PITCHES[series]), mp.mpf(ROLLERS[series]), teeth)

        return draw

    return {"ordinary": within(9, 70), "edge": within(4, 8), "wide": within(4, 1000)}


def pitch_diameter(pitch: Number, roller: Number, teeth: int) -> Exact:
    return exactly(2 * radius(teeth) * pitch)


def root_diameter(pitch: Number, roller: Number, teeth: int) -> Exact:
    value = 2 * radius(teeth) * pitch
    return Exact(value - roller, value)


def greatest_tip(pitch: Number, roller: Number, teeth: int) -> Exact:
    value = 2 * radius(teeth) * pitch + mp.mpf("1.25") * pitch
    return Exact(value - roller, value)


def least_tip(pitch: Number, roller: Number, teeth: int) -> Exact:
    value = 2 * radius(teeth) * pitch + pitch * (1 - mp.mpf("1.6") / teeth)
    return Exact(value - roller, value)


def measured(ask: Callable[[ls.Sprocket], ls.Length]) -> Callable[[str, float], float]:
    return lambda series, teeth: ask(ls.Sprocket(series, int(teeth))) / ls.m


# --- Slack at a point of the travel -----------------------------------------------------------------------------------


def slack_at(
    series: str, front: int, rear: int, links: float, ahead: float, above: float, arm: float, angle: float
) -> ls.SlackPoint:
    suspension = ls.Suspension(
        layshaft_ahead=ahead * ls.m, layshaft_above=above * ls.m, arm=arm * ls.m, droop=0.6 * ls.rad, rest=0.2 * ls.rad,
        bump=0.0 * ls.rad,
    )  # fmt: skip
    return ls.slack_through_travel(suspension, loop_of(series, front, rear), links).at(angle * ls.rad)


def spare_at(difficulty: str, of: Callable[[Number, Number], Exact]) -> Draw:
    """Spare length or slack with a chain that is some links longer than the taut loop at a point of the travel."""

    def draw(random: random.Random) -> tuple[Arguments, Exact] | None:
        series, front, rear = random.choice(("428", "520", "525")), random.randint(11, 17), random.randint(36, 54)
        ahead, above, arm = random.uniform(0.04, 0.12), random.uniform(0.0, 0.08), random.uniform(0.45, 0.6)
        angle = random.uniform(0.02, 0.58)
        pitch = mp.mpf(PITCHES[series])
        along = mp.mpf(ahead) + mp.mpf(arm) * mp.cos(mp.mpf(angle))
        up = mp.mpf(above) + mp.mpf(arm) * mp.sin(mp.mpf(angle))
        centre = mp.sqrt(along**2 + up**2)
        taut = links_at(front, rear, centre / pitch)
        more = random.uniform(0.3, 1.5) if difficulty == "ordinary" else magnitude(random, -9, -4)
        links = float(taut + more)
        run = mp.sqrt(centre**2 - ((radius(rear) - radius(front)) * pitch) ** 2)
        return (series, front, rear, links, ahead, above, arm, angle), of((mp.mpf(links) - taut) * pitch, run)

    return draw


FUNCTIONS = [
    Function("chain_links in bulk", "ulp", in_all(links_in_bulk), lambda *row: float(arrays.chain_links(*row))),
    Function("chain_centre in bulk", "ulp", in_all(centre_in_bulk), lambda *row: float(arrays.chain_centre_mm(*row))),
    Function(
        "chain_links", "ulp", in_all(links_of_loop),
        lambda series, front, rear, centre: loop_of(series, front, rear).links(centre * ls.m),
    ),
    Function(
        "chain_centre", "ulp", in_all(centre_of_loop),
        lambda series, front, rear, links: loop_of(series, front, rear).centre(links) / ls.m,
    ),
    Function("Sprocket.pitch_diameter", "ulp", sprocket(pitch_diameter), measured(lambda one: one.pitch_diameter)),
    Function("Sprocket.root_diameter", "ulp", sprocket(root_diameter), measured(lambda one: one.root_diameter)),
    Function("Sprocket.tip_diameter.low", "ulp", sprocket(least_tip), measured(lambda one: one.tip_diameter.low)),
    Function("Sprocket.tip_diameter.high", "ulp", sprocket(greatest_tip), measured(lambda one: one.tip_diameter.high)),
    Function(
        "SlackThroughTravel.at.spare_length", "m",
        {kind: spare_at(kind, lambda spare, run: exactly(spare)) for kind in ("ordinary", "cancelling")},
        lambda *row: slack_at(*row).spare_length / ls.m,
    ),
    Function(
        "SlackThroughTravel.at.slack", "m",
        {kind: spare_at(kind, lambda spare, run: exactly(mp.sqrt(2 * run * spare))) for kind in ("ordinary", "cancelling")},
        lambda *row: slack_at(*row).slack / ls.m,
    ),
]  # fmt: skip
