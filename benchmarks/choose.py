# SPDX-License-Identifier: MIT
"""What it costs to choose among many set-ups: layshaft on one thread and on two, NumPy, and plain Python.

Every set-up is a pair of sprockets with the chain that fits, and a tyre. All contestants work out the same numbers of
it, each low, nominal and high, hold both ends against limits wide enough to rule nothing out, and keep the trade-off of
three wishes. They must agree on every number and on the trade-off first: the run fails where they do not, never because
of a time. The tyres' circumferences, and where one over the other is least and greatest, are worked out before the
clock starts for the rivals; layshaft reads them inside, and also keeps the trade-offs at either end of the bands, which
the rivals leave out. Rounds are interleaved; the best counts.

Set-ups a second are true of one machine only; the ratios travel better.
"""

from __future__ import annotations

import itertools
import math
import random
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import layshaft as ls
import numpy as np

MACHINE = ls.Machine.from_json(
    (Path(__file__).resolve().parents[1] / "examples" / "machines" / "trail_bike.json").read_text(encoding="utf-8")
)
FRONTS, REARS = range(9, 19), range(36, 61)
MARKED = ("120/80-18 M/C 62R TT", "120/90-18 M/C 65R TT", "110/100-18 M/C 64R TT", "130/80R18 M/C 66V TL")
TARGET = 0.05  # of the thrust's change
CRUISE = 90.0 / 3.6  # m/s
READ_AT = tuple(v / 3.6 for v in (40.0, 80.0, 120.0))  # where the speedometer is held against the rule, m/s
NEW_CHAIN = 0.0015  # how much longer than nominal a new chain may be
ROUNDING = 1e-12  # an edge that was computed is still the edge

# What the limits and wishes are about, in the order of the rivals' values; SI units. The limits rule out nothing.
LIMITS: dict[str, tuple[float, float]] = {
    "thrust change": (-0.95, 20.0), "speed change": (-0.95, 20.0), "engine speed": (1.0, 1e5),
    "walking pace": (0.001, 1e3), "chain pull change": (-0.95, 20.0), "front contacts change": (-0.95, 20.0),
    "rear contacts change": (-0.95, 20.0), "speedometer beyond rule": (0.0, 20.0), "wear room": (-1.0, 1.0),
    "axle room": (-1.0, 1.0), "teeth in mesh": (1.0, 100.0),
}  # fmt: skip
UNITS = {"engine speed": ls.radps, "walking pace": ls.mps, "axle room": ls.m}


def goals(wishes: int = 3) -> ls.Goals:
    return ls.Goals(
        limits=[
            ls.Limit(
                name,
                least=least * UNITS.get(name, 1.0),
                most=most * UNITS.get(name, 1.0),
                speed="90 km/h" if name == "engine speed" else None,
            )
            for name, (least, most) in LIMITS.items()
        ],
        wishes=[ls.Wish("thrust change", TARGET), ls.Wish("wear room", "more"), ls.Wish("teeth in mesh", "more")][
            :wishes
        ],
        robust=True,  # so that both ends of every band are asked for
    )


# --- The question ----------------------------------------------------------------------------------------------------
@dataclass(frozen=True)
class Wheel:
    """A tyre: its circumference, and over the stock tyre's; low, nominal, high. Metres."""

    offer: ls.TyreOffer
    circumference: tuple[float, float, float]
    over_stock: tuple[float, float, float]


def corners(tyre: ls.TyreSize) -> dict[tuple[int, int], float]:
    """The circumference with the size and the rolling factor at their low (0), nominal (1) and high (2) ends."""
    size, factor = tyre.overall_diameter, ls.rolling_factor(tyre.construction)
    return {
        (i, j): math.pi * (getattr(size, a) / ls.m) * getattr(factor, b)
        for i, a in enumerate(("low", "nominal", "high"))
        for j, b in enumerate(("low", "nominal", "high"))
    }


def wheel(offer: ls.TyreOffer) -> Wheel:
    """Over the corners of what the two tyres do not share: of the same size it cancels, and so does the rolling factor
    of the same construction."""
    stock_tyre = MACHINE.stock.tyre
    assert stock_tyre is not None
    stock = corners(stock_tyre)
    if offer.circumference is not None:
        band = offer.circumference
        low, nominal, high = band.low / ls.m, band.nominal / ls.m, band.high / ls.m
        return Wheel(offer, (low, nominal, high), (low / stock[2, 2], nominal / stock[1, 1], high / stock[0, 0]))
    assert offer.tyre is not None
    own = corners(offer.tyre)
    one_size = offer.tyre.overall_diameter == stock_tyre.overall_diameter and (
        offer.tyre.section_width == stock_tyre.section_width
    )
    one_rolling = offer.tyre.construction == stock_tyre.construction
    quotients = [
        own[size, rolling] / stock[stock_size, stock_rolling]
        for size, rolling, stock_size, stock_rolling in itertools.product((0, 2), repeat=4)
        if (not (one_size and one_rolling) or size == stock_size) and (not one_rolling or rolling == stock_rolling)
    ]
    return Wheel(offer, (own[0, 0], own[1, 1], own[2, 2]), (min(quotients), own[1, 1] / stock[1, 1], max(quotients)))


def wheels(number: int) -> list[Wheel]:
    """Marked tyres, and measured rollouts of 1.7 to 2.3 m, each good to some millimetres. Invented."""
    measured = number - len(MARKED)
    rollouts = (1.7 + 0.6 * i / measured for i in range(measured))
    return [wheel(ls.TyreOffer(marking)) for marking in MARKED] + [
        wheel(ls.TyreOffer(circumference=ls.Band((at - 0.006) * ls.m, at * ls.m, (at + 0.004) * ls.m)))
        for at in rollouts
    ]


def space(tyres: list[Wheel], rears: range = REARS) -> ls.Space:
    return ls.Space(fronts=FRONTS, rears=rears, tyres=[tyre.offer for tyre in tyres])


PITCH = MACHINE.chain.pitch / ls.m
CENTRE_MIN, CENTRE_MAX = MACHINE.adjuster.centre_min / ls.m, MACHINE.adjuster.centre_max / ls.m
SLACK = MACHINE.adjuster.slack / ls.m
END = 1e-9  # metres by which a computed axle may miss the adjuster's end
PRIMARY = MACHINE.gearbox.primary.driven / MACHINE.gearbox.primary.driving
FIRST, LAST = (MACHINE.gearbox.gears[i].driven / MACHINE.gearbox.gears[i].driving for i in (0, -1))
STOCK_RATIO = MACHINE.stock.rear / MACHINE.stock.front
LOWEST_PULL = max(MACHINE.gearbox.lowest_pull, MACHINE.engine.curve.lowest_speed) / ls.radps
ERROR = MACHINE.speedometer.reading_error
SLIP = ls.surface("asphalt").driving_slip
GRIP = (1.0 - SLIP.high, 1.0 - SLIP.nominal, 1.0 - SLIP.low)  # the pace is least where most slips
READS = (1.0 + ERROR.low, 1.0 + ERROR.nominal, 1.0 + ERROR.high)
STOCK_REAR = 1.0 / math.sin(math.pi / MACHINE.stock.rear)  # its pitch diameter, in pitches
# Of what is read over what is true, the rule allows 1 to 1.1 + 4 km/h; less is allowed the faster one goes.
READ_MOST = 1.1 + 4.0 / 3.6 / READ_AT[-1]
# What stands in the way of the teeth is left to the rivals' good luck: here they never touch.
assert all(
    ls.ChainLoop(MACHINE.chain, f, r).smallest_centre < MACHINE.adjuster.centre_min for f in FRONTS for r in REARS
)


# --- In NumPy --------------------------------------------------------------------------------------------------------
@dataclass
class Pairs:
    """Sprockets whose chain fits, and what depends on them alone: arrays, one place a pair; bands by rows."""

    front: np.ndarray
    rear: np.ndarray
    links: np.ndarray
    wear_room: np.ndarray
    axle_room: np.ndarray
    in_mesh: np.ndarray


def links_at(front: np.ndarray, rear: np.ndarray, centre: np.ndarray | float) -> tuple[np.ndarray, np.ndarray]:
    """The links, a real number, that leave the slack at a centre distance; and how fast they rise with it."""
    half = 0.5 * PITCH * (1.0 / np.sin(np.pi / rear) - 1.0 / np.sin(np.pi / front))
    run = np.sqrt(centre * centre - half * half)
    taut = 2.0 * run / PITCH + 0.5 * (front + rear) + np.arcsin(half / centre) / np.pi * (rear - front)
    spare = SLACK * SLACK / (2.0 * run)
    return taut + spare / PITCH, (2.0 * run / centre - spare * centre / (run * run)) / PITCH


def pairs_by_numpy(fronts: range, rears: range) -> Pairs:
    return chains_by_numpy(*(axis.ravel().astype(float) for axis in np.meshgrid(fronts, rears, indexing="ij")))


def chains_by_numpy(front: np.ndarray, rear: np.ndarray) -> Pairs:
    """The chain on each of these pairs of sprockets, less the pairs that none fits."""
    links = 2.0 * np.ceil((links_at(front, rear, CENTRE_MIN)[0] - 1e-9) / 2.0)
    centres = []
    for elongation in (0.0, NEW_CHAIN):
        centre = np.full(front.shape, CENTRE_MIN)
        for _ in range(5):
            have, rise = links_at(front, rear, centre)
            centre -= (have - links * (1.0 + elongation)) / rise
        centres.append(centre)
    fits = (centres[0] >= CENTRE_MIN - END) & (centres[1] <= CENTRE_MAX + END)
    front, rear, links, low, high = (a[fits] for a in (front, rear, links, *centres))
    worn = links_at(front, rear, CENTRE_MAX)[0] / links - 1.0
    room = np.minimum(low - CENTRE_MIN, CENTRE_MAX - low)
    ends = np.stack(
        [np.minimum(low - CENTRE_MIN, CENTRE_MAX - high), room, np.minimum(high - CENTRE_MIN, CENTRE_MAX - low)]
    )
    angle = np.arcsin(0.5 * PITCH * (1.0 / np.sin(np.pi / rear) - 1.0 / np.sin(np.pi / front)) / low)
    return Pairs(
        front.astype(int), rear.astype(int), links.astype(int),
        np.stack([worn - NEW_CHAIN, worn, worn]), np.stack([ends.min(axis=0), room, ends.max(axis=0)]),
        np.broadcast_to((0.5 - angle / np.pi) * front, ends.shape),
    )  # fmt: skip


Name = tuple[int, int, int, int]  # front, rear, links, place of the tyre
Member = tuple[tuple[float, ...], Name]  # losses first


class ByNumpy:
    """Blocks of pairs and tyres that stay in the cache, in place. What depends on the pair or on the tyre alone is
    worked out once; divisions are turned into products; ends come from ends, not from trying."""

    def __init__(self, tyres: list[Wheel], block: int = 32768) -> None:
        self.width = math.ceil(len(tyres) / math.ceil(len(tyres) / block))
        self.height = max(1, block // self.width)
        self.size = np.array([t.circumference for t in tyres]).T.copy()
        self.over = np.array([t.over_stock for t in tyres]).T.copy()

    def values(self, pairs: Pairs) -> Iterator[tuple[slice, slice, list[np.ndarray]]]:
        """Of each block the pairs, the tyres, and the numbers that depend on both: low, nominal and high, each with a
        row a pair. To be used before the next block comes."""
        ratio = (pairs.rear / pairs.front)[:, None]
        change = ratio / STOCK_RATIO
        turning = CRUISE * PRIMARY * LAST * 2.0 * math.pi * ratio
        rolling = LOWEST_PULL / (2.0 * math.pi) / (PRIMARY * FIRST * ratio)
        pulling = STOCK_REAR * np.sin(np.pi / pairs.rear)[:, None]
        grip, reads = np.array(GRIP)[:, None, None], np.array(READS)[:, None, None]
        for first in range(0, self.size.shape[1], self.width):
            tyres = slice(first, min(first + self.width, self.size.shape[1]))
            size, over = self.size[:, None, tyres], self.over[:, None, tyres]
            per_metre, under = 1.0 / size[::-1], 1.0 / over[::-1]
            slipping = size * grip
            rear_contacts = under - 1.0
            for top in range(0, len(pairs.front), self.height):
                some = slice(top, min(top + self.height, len(pairs.front)))
                shape = (3, some.stop - some.start, tyres.stop - tyres.start)
                if top == 0 or some.stop == len(pairs.front):
                    turns, thrust, speed, engine, pace, pull, outside = np.empty((7, *shape))
                np.multiply(under, change[some], out=turns)
                np.subtract(turns, 1.0, out=thrust)
                np.multiply(over, 1.0 / change[some], out=speed)
                speed -= 1.0
                np.multiply(per_metre, turning[some], out=engine)
                np.multiply(slipping, rolling[some], out=pace)
                np.multiply(over, pulling[some], out=pull)
                pull -= 1.0
                # Too slow or too fast, of which the greatest lies at an end, but the least may lie between.
                turns *= reads
                np.subtract(turns, READ_MOST, out=outside)
                np.subtract(1.0, turns, out=turns)
                np.maximum(outside, turns, out=outside)
                np.maximum(outside, 0.0, out=outside)
                np.minimum(outside[0], outside[2], out=turns[0])
                np.maximum(outside[0], outside[2], out=outside[2])
                np.minimum(turns[0], outside[1], out=outside[0])
                # A front tooth's contacts rise as thrust does.
                yield some, tyres, [thrust, speed, engine, pace, pull, thrust, rear_contacts, outside]

    def choose(self, fronts: range = FRONTS, rears: range = REARS) -> tuple[int, list[Member]]:
        """How many set-ups keep the limits, and the trade-off among them."""
        pairs = pairs_by_numpy(fronts, rears)
        of_pair = np.stack([pairs.wear_room, pairs.axle_room, pairs.in_mesh])
        least, most = np.array(list(LIMITS.values())).T
        fits = ((of_pair[:, 0] >= least[-3:, None]) & (of_pair[:, 2] <= most[-3:, None])).all(axis=0)
        kept, found, best = 0, [], np.full(fits.shape, np.inf)
        for some, tyres, values in self.values(pairs):
            # Where the extremes keep the limits, all do.
            inside = None if fits[some].all() else np.broadcast_to(fits[some, None], values[0][0].shape)
            for value, low, high in zip(values, least, most, strict=False):
                if value[0].min() < low or value[2].max() > high:
                    keeps = (value[0] >= low) & (value[2] <= high)
                    inside = keeps if inside is None else inside & keeps
            thrust = values[0]
            kept += thrust[0].size if inside is None else int(inside.sum())
            # The thrust's end that lies farther from the target; the other wishes are the pair's own, so that of its
            # tyres only those that come nearest can stay.
            loss = np.maximum(thrust[2] - TARGET, TARGET - thrust[0])
            if inside is not None:
                loss[~inside] = np.inf
            nearest = np.minimum(loss.min(axis=1), best[some])
            best[some] = nearest
            near = (loss == nearest[:, None]) & (loss < np.inf)
            if near.any():
                rows, columns = np.nonzero(near)
                found.append(np.stack([loss[near], rows + some.start, columns + tyres.start]))
        loss, i, tyre = np.concatenate([np.empty((3, 0)), *found], axis=1)
        nearest = loss == best[i := i.astype(int)]  # over all blocks
        loss, i, tyre = loss[nearest], i[nearest], tyre[nearest].astype(int)
        columns = (loss, -pairs.wear_room[0, i], -pairs.in_mesh[0, i])
        (a, b, c), (x, y, z) = ([column[:, None] for column in columns], columns)
        stays = ~((x <= a) & (y <= b) & (z <= c) & ((x < a) | (y < b) | (z < c))).any(axis=1)
        names = zip(pairs.front[i], pairs.rear[i], pairs.links[i], tyre, strict=True)
        return kept, [
            (tuple(map(float, loss)), tuple(map(int, name)))
            for loss, name, stay in zip(zip(*columns, strict=True), names, stays, strict=True)
            if stay
        ]


# --- In plain Python -------------------------------------------------------------------------------------------------
def loop_links(front: int, rear: int, centre: float) -> tuple[float, float]:
    half = 0.5 * PITCH * (1.0 / math.sin(math.pi / rear) - 1.0 / math.sin(math.pi / front))
    run = math.sqrt(centre * centre - half * half)
    taut = 2.0 * run / PITCH + 0.5 * (front + rear) + math.asin(half / centre) / math.pi * (rear - front)
    spare = SLACK * SLACK / (2.0 * run)
    return taut + spare / PITCH, (2.0 * run / centre - spare * centre / (run * run)) / PITCH


Three = tuple[float, float, float]


def pair_by_python(front: int, rear: int) -> tuple[int, list[Three]] | None:
    """The shortest even links that fit, and room to wear, room of the axle, teeth in mesh."""
    links = 2 * math.ceil((loop_links(front, rear, CENTRE_MIN)[0] - 1e-9) / 2.0)
    low, high = CENTRE_MIN, CENTRE_MIN
    while True:
        have, rise = loop_links(front, rear, low)
        low -= (step := (have - links) / rise)
        if abs(step) < 1e-13:
            break
    while True:
        have, rise = loop_links(front, rear, high)
        high -= (step := (have - links * (1.0 + NEW_CHAIN)) / rise)
        if abs(step) < 1e-13:
            break
    if low < CENTRE_MIN - END or high > CENTRE_MAX + END:
        return None
    worn = loop_links(front, rear, CENTRE_MAX)[0] / links - 1.0
    room = [
        min(low - CENTRE_MIN, CENTRE_MAX - high), min(low - CENTRE_MIN, CENTRE_MAX - low),
        min(high - CENTRE_MIN, CENTRE_MAX - low),
    ]  # fmt: skip
    half = 0.5 * PITCH * (1.0 / math.sin(math.pi / rear) - 1.0 / math.sin(math.pi / front))
    mesh = (0.5 - math.asin(half / low) / math.pi) * front
    return links, [(worn - NEW_CHAIN, worn, worn), (min(room), room[1], max(room)), (mesh, mesh, mesh)]


def read_outside(reads: float) -> float:
    outside = max(1.0 - reads, reads - READ_MOST)
    return outside if outside > ROUNDING else 0.0


Values = tuple[Three, ...]


def values_by_python(tyres: list[Wheel], fronts: range, rears: range) -> Iterator[tuple[int, int, int, int, Values]]:
    """Front, rear, links, place of the tyre, and all numbers, in the order of LIMITS."""
    prepared = [(t.circumference, t.over_stock, tuple(1.0 / v for v in reversed(t.over_stock))) for t in tyres]
    for front in fronts:
        for rear in rears:
            if (pair := pair_by_python(front, rear)) is None:
                continue
            links, own = pair
            ratio = rear / front
            change = ratio / STOCK_RATIO
            turning = CRUISE * ratio * PRIMARY * LAST * 2.0 * math.pi
            rolling = LOWEST_PULL / (2.0 * math.pi) / (ratio * PRIMARY * FIRST)
            pulling = STOCK_REAR * math.sin(math.pi / rear)
            for place, (size, over, under) in enumerate(prepared):
                t0, t1, t2 = change * under[0], change * under[1], change * under[2]
                a, b, c = read_outside(t0 * READS[0]), read_outside(t1 * READS[1]), read_outside(t2 * READS[2])
                thrust = (t0 - 1.0, t1 - 1.0, t2 - 1.0)
                yield front, rear, links, place, (
                    thrust,
                    (1.0 / t2 - 1.0, 1.0 / t1 - 1.0, 1.0 / t0 - 1.0),
                    (turning / size[2], turning / size[1], turning / size[0]),
                    (rolling * size[0] * GRIP[0], rolling * size[1] * GRIP[1], rolling * size[2] * GRIP[2]),
                    (pulling * over[0] - 1.0, pulling * over[1] - 1.0, pulling * over[2] - 1.0),
                    thrust,
                    (under[0] - 1.0, under[1] - 1.0, under[2] - 1.0),
                    (min(a, b, c), b, max(a, b, c)),
                    *own,
                )  # fmt: skip


def by_python(tyres: list[Wheel], fronts: range = FRONTS, rears: range = REARS) -> tuple[int, list[Member]]:
    """How many set-ups keep the limits, and the trade-off among them."""
    kept = 0
    members: list[Member] = []
    limits = list(LIMITS.values())
    for *name, values in values_by_python(tyres, fronts, rears):
        for value, (least, most) in zip(values, limits, strict=True):
            if value[0] < least or value[2] > most:
                break
        else:
            kept += 1
            thrust, wear_room, in_mesh = values[0], values[8], values[10]
            losses = x, y, z = max(thrust[2] - TARGET, TARGET - thrust[0]), -wear_room[0], -in_mesh[0]
            for at, ((p, q, r), _) in enumerate(members):
                if p <= x and q <= y and r <= z and (p < x or q < y or r < z):
                    # What has just beaten one is likely to beat the next.
                    members[at // 2], members[at] = members[at], members[at // 2]
                    break
            else:
                members = [m for m in members if m[0] == losses or not (x <= m[0][0] and y <= m[0][1] and z <= m[0][2])]
                members.append((losses, tuple(name)))
    return kept, members


# --- Do they agree? --------------------------------------------------------------------------------------------------
def key_of(setup: ls.Setup, tyres: list[Wheel]) -> Name:
    key = (setup.tyre, setup.circumference)
    place = next(i for i, tyre in enumerate(tyres) if (tyre.offer.tyre, tyre.offer.circumference) == key)
    assert setup.links is not None
    return setup.front, setup.rear, setup.links, place


def ends(values: tuple[object, ...], names: list[str]) -> np.ndarray:
    """Bands in SI units: a row a measure."""
    return np.array(
        [
            [
                float(getattr(value, end) / UNITS[name] if name in UNITS else getattr(value, end))
                for end in ("low", "nominal", "high")
            ]
            for value, name in zip(values, names, strict=True)
        ]
    )


def check_every_number() -> None:
    """Each number of each set-up of a small space, by all of them: to 1e-9 of itself or of one."""
    tyres, rears, names = wheels(9), range(40, 56), list(LIMITS)
    told: dict[Name, np.ndarray] = {}

    def visit(setup: ls.Setup, wishes: tuple[object, ...], limits: tuple[object, ...], broken: tuple[int, ...]) -> None:
        assert not broken
        told[key_of(setup, tyres)] = ends(limits, names)

    ls.survey(MACHINE, space(tyres, rears), goals(), visit)
    by_hand = {tuple(name): np.array(values) for *name, values in values_by_python(tyres, FRONTS, rears)}
    assert by_hand.keys() == told.keys() and len(told) > 500, (len(by_hand), len(told))
    pairs = pairs_by_numpy(FRONTS, rears)
    by_arrays: dict[Name, np.ndarray] = {}
    for some, places, values in ByNumpy(tyres, block=40).values(pairs):
        for i in range(some.start, some.stop):
            of_pair = [pairs.wear_room[:, i], pairs.axle_room[:, i], pairs.in_mesh[:, i]]
            for place in range(places.start, places.stop):
                # Where a number does not depend on the pair it has one row for all.
                at = [value[:, min(i - some.start, value.shape[1] - 1), place - places.start] for value in values]
                name = int(pairs.front[i]), int(pairs.rear[i]), int(pairs.links[i]), place
                by_arrays[name] = np.array([*at, *of_pair])
    assert by_arrays.keys() == told.keys()
    for name, expected in told.items():
        np.testing.assert_allclose(by_hand[name], expected, rtol=1e-9, atol=1e-9, err_msg=str(name))
        np.testing.assert_allclose(by_arrays[name], expected, rtol=1e-9, atol=1e-9, err_msg=str(name))


def check_trade_off(choice: ls.Choice, tyres: list[Wheel], kept: int, members: list[Member]) -> None:
    assert choice.kept == choice.examined == kept, (choice.kept, choice.examined, kept)
    theirs = dict((name, losses) for losses, name in members)
    ours = {key_of(chosen.setup, tyres): ends(chosen.wishes, ["", "", ""]) for chosen in choice.front}
    assert ours.keys() == theirs.keys(), ours.keys() ^ theirs.keys()
    for name, ((low, _, high), wear_room, in_mesh) in ours.items():
        losses = max(high - TARGET, TARGET - low), -wear_room[0], -in_mesh[0]
        np.testing.assert_allclose(losses, theirs[name], rtol=1e-9, atol=1e-9, err_msg=str(name))


# --- The clock -------------------------------------------------------------------------------------------------------
def fastest(contestants: dict[str, Callable[[], object]], rounds: int) -> dict[str, float]:
    """The best time of each, in rounds, in random order."""
    best = dict.fromkeys(contestants, math.inf)
    for _ in range(rounds):
        for name in random.sample(list(contestants), len(contestants)):
            began = time.perf_counter()
            contestants[name]()
            best[name] = min(best[name], time.perf_counter() - began)
    return best


ONE, TWO, ARRAYS, PLAIN = "layshaft, one thread", "layshaft, two threads", "NumPy, one thread", "plain Python"


def compare(number: int, rounds: int, plain: bool) -> None:
    tyres = wheels(number)
    question, wanted, arrays = space(tyres), goals(), ByNumpy(tyres)
    choices = [ls.choose(MACHINE, question, wanted, threads=threads, progress=False) for threads in (1, 2)]
    for choice in choices:
        check_trade_off(choice, tyres, *arrays.choose())
    contestants: dict[str, Callable[[], object]] = {
        ONE: lambda: ls.choose(MACHINE, question, wanted, threads=1, progress=False),
        TWO: lambda: ls.choose(MACHINE, question, wanted, threads=2, progress=False),
        ARRAYS: arrays.choose,
    }
    if plain:
        check_trade_off(choices[0], tyres, *by_python(tyres))
        contestants[PLAIN] = lambda: by_python(tyres)
    setups, best = choices[0].examined, fastest(contestants, rounds)
    print(f"\n{setups:,} set-ups of {number:,} tyres, {len(choices[0].front)} of them on the trade-off")
    print(f"  {'':32}{'set-ups a second':>20}{'against NumPy':>16}{'against Python':>16}")
    for name, seconds in best.items():
        ratios = f"{best[ARRAYS] / seconds:16.2f}" + (f"{best[PLAIN] / seconds:16.1f}" if plain else "")
        print(f"  {name:32}{setups / seconds:20,.0f}{ratios}")


GROWTH_TYRES = 1000
# Fronts, rears and chains: ten times as many drives from each to the next.
GROWTH = ((1, 1, 1), (1, 10, 1), (10, 10, 1), (10, 25, 4), (10, 25, 40))


def memory(what: str) -> int:
    """VmRSS: what this process has of memory; VmHWM: the most it has had. In kB."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return next(int(line.split()[1]) for line in status.splitlines() if line.startswith(what + ":"))


def grown(step: int) -> str:
    """In a process of its own, so that none uses the memory that another left: set-ups, seconds, the trade-off, and how
    many kB more than before it had at most while it chose for the first time."""
    fronts, rears, chains = GROWTH[step]
    question = ls.Space(
        fronts=[ls.SprocketOffer(t, price=20.0) for t in (range(13, 14) if fronts == 1 else FRONTS)],
        rears=[ls.SprocketOffer(t, price=40.0) for t in range(44, 44 + rears)],
        tyres=[
            ls.TyreOffer(t.offer.tyre, circumference=t.offer.circumference, price=80.0) for t in wheels(GROWTH_TYRES)
        ],
        chains=[ls.ChainOffer(price=60.0 + i) for i in range(chains)],
    )
    # Of equal chains the cheapest alone stays, which keeps the trade-off short: memory grows with that.
    wanted = ls.Goals(limits=goals().limits, wishes=[*goals(wishes=2).wishes, ls.Wish("cost", "less")], robust=True)
    Path("/proc/self/clear_refs").write_text("5", encoding="ascii")  # the most is counted from here on
    before = memory("VmRSS")
    choice = ls.choose(MACHINE, question, wanted, progress=False)
    growth = memory("VmHWM") - before
    best = fastest({"": lambda: ls.choose(MACHINE, question, wanted, progress=False)}, 5)
    return f"{choice.examined} {best['']} {len(choice.front)} {growth}"


def grow() -> None:
    print(
        f"\nlayshaft on one thread over four decades of set-ups, each in a process of its own; {GROWTH_TYRES:,} tyres"
    )
    print(f"  {'set-ups':>12}{'seconds':>12}{'ns a set-up':>14}{'trade-off':>12}{'memory grew by, MB':>22}")
    for step in range(len(GROWTH)):
        told = subprocess.run([sys.executable, __file__, str(step)], capture_output=True, text=True, check=True)
        setups, seconds, front, kilobytes = told.stdout.split()
        each = float(seconds) / int(setups) * 1e9
        print(f"  {int(setups):12,}{float(seconds):12.4f}{each:14.1f}{front:>12}{int(kilobytes) / 1024.0:22.1f}")


if __name__ == "__main__":
    if len(sys.argv) > 1:
        print(grown(int(sys.argv[1])))
    else:
        check_every_number()
        compare(40, rounds=5, plain=True)
        compare(400, rounds=15, plain=False)
        compare(4000, rounds=15, plain=False)
        compare(10000, rounds=9, plain=False)
        grow()
