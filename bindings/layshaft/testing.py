# SPDX-License-Identifier: MIT
"""For others' tests: hypothesis strategies of valid markings, machines and set-ups.

What they give is valid: a marking reads back, a machine can be built, and a set-up can be appraised on its machine.

>>> from hypothesis import given
>>> import layshaft as ls
>>> from layshaft import testing
>>> @given(testing.machines_with_setups())
... def it_goes_forward(pair):
...     machine, setup = pair
...     assert ls.appraise(machine, setup).speed_range(1).highest.low > 0 * ls.kmh
>>> it_goes_forward()
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final, Literal, TypeAlias

try:
    from hypothesis import assume
    from hypothesis import strategies as st
except ImportError as _problem:  # pragma: no cover
    raise ImportError("layshaft.testing needs hypothesis: pip install 'layshaft[testing]'") from _problem

from . import _core as ls

__all__ = ["NOTATIONS", "designations", "machines", "machines_with_setups", "setups", "tyres"]

_Notation: TypeAlias = Literal["metric", "code", "lettered", "flotation", "cycle"]
_Use: TypeAlias = Literal["road", "special", "snow"]
_Kind: TypeAlias = Literal["motorcycle", "cycle"]

NOTATIONS: Final[tuple[_Notation, ...]] = ("metric", "code", "lettered", "flotation", "cycle")

# --- Markings --------------------------------------------------------------------------------------------------------

_TUBE: Final = st.sampled_from(["", " TL", " TT"])
_WEEK: Final = st.just("") | st.builds(
    lambda week, year: f" DOT {week:02}{year:02}", st.integers(1, 53), st.integers(0, 99)
)
_LATER: Final = st.builds(
    lambda *marks: "".join(marks),
    *(st.sampled_from(["", mark]) for mark in (" REINF", " M+S", " MST", " NHS")),
    _WEEK,
)
_PLY: Final = st.just("") | st.integers(2, 40).map(lambda rating: f" {rating}PR")
_SYMBOL: Final = st.sampled_from("BJKLMNPQRSTUHVW")
_LOAD: Final = st.integers(0, 150)
_SERVICE: Final = (
    st.just("")
    | st.builds(lambda index, letter: f" {index}{letter}", _LOAD, _SYMBOL)
    | st.builds(lambda one, two, letter: f" {one}/{two}{letter}", _LOAD, _LOAD, _SYMBOL)
    | st.builds(lambda index, letter: f" ({index}{letter})", _LOAD, st.sampled_from("VWY"))
)
_MARKS: Final = st.builds(lambda *parts: "".join(parts), st.sampled_from(["", " M/C"]), _SERVICE, _PLY, _TUBE, _LATER)
_CYCLE_MARKS: Final = st.builds(lambda *parts: "".join(parts), _PLY, _TUBE, _LATER)

_SIZES: Final[dict[_Notation, st.SearchStrategy[str]]] = {
    "metric": st.builds(
        lambda vehicle, width, aspect, construction, rim: (
            f"{vehicle[0]}{width}/{aspect}{construction}{rim}{vehicle[1]}"
        ),
        st.sampled_from([("", ""), ("P", ""), ("LT", ""), ("AT", ""), ("", "C")]),
        st.integers(10, 66).map(lambda five: 5 * five),
        st.integers(25, 110),
        st.sampled_from(["-", "B", "R", "ZR"]),
        st.sampled_from([10, 12, 14, 16, 17, 18, 19, 21]),
    ),
    "code": st.sampled_from(
        ["2.50-17", "2.75-17", "2.75-21", "3.00-17", "3.00-21", "3.50-10", "4.10-18", "4.60-18", "5.10-16"]
    ),
    "lettered": st.sampled_from(["MT90B16", "MT90-16", "MU85B16", "MH90-21", "MU90-15"]),
    "flotation": st.builds(
        lambda vehicle, diameter, width, construction, rim: (
            f"{vehicle[0]}{diameter}x{width}{construction}{rim}{vehicle[1]}"
        ),
        st.sampled_from([("", ""), ("", "LT"), ("AT", "")]),
        st.integers(28, 40).map(str) | st.sampled_from(["18.5", "22.5"]),
        st.integers(7, 14).map(str) | st.sampled_from(["8.50", "10.50", "12.50"]),
        st.sampled_from(["-", "B", "R"]),
        st.sampled_from([8, 9, 10, 12, 14, 15, 16]),
    ),
    "cycle": st.builds(
        lambda width, seat: f"{width}-{seat}", st.integers(15, 130), st.sampled_from([622, 559, 406, 584, 305, 94])
    )
    | st.builds(
        lambda width, rim: f"{rim[:3]}x{width}{rim[3]}", st.integers(15, 130), st.sampled_from(["700C", "650B", "650A"])
    )
    | st.builds(
        lambda rim, width: f"{rim}x{width / 20:.2f}",
        st.sampled_from(["20", "24", "27.5", "28", "29"]),
        st.integers(30, 100),
    )
    | st.sampled_from(
        ["26x1 1/4", "26x1 3/4", "24x1 3/8", "28x1 1/2", "8x2", "12 1/2x1.75", "28x1 5/8x1 3/8", "200x50"]
    ),
}


def _asked(notations: _Notation | Collection[_Notation]) -> list[_Notation]:
    asked: list[_Notation] = [notations] if isinstance(notations, str) else list(notations)
    unknown = [one for one in asked if one not in _SIZES]
    if unknown or not asked:
        raise ValueError(f"notations: {unknown or 'none'}; expected some of {', '.join(map(repr, NOTATIONS))}")
    return asked


def designations(
    *, notations: _Notation | Collection[_Notation] = NOTATIONS, marks: bool = True
) -> st.SearchStrategy[str]:
    """Markings of tyres, each as `TyreSize` prints it.

    :param notations: which of `NOTATIONS`, one or several
    :param marks: whether load index, speed symbol, ply rating and the other marks may follow the size
    """
    marked = []
    for notation in _asked(notations):
        rest = (_CYCLE_MARKS if notation == "cycle" else _MARKS) if marks else st.just("")
        marked.append(st.builds(lambda size, after: f"{size}{after}", _SIZES[notation], rest))
    return st.one_of(marked)


def tyres(
    *, notations: _Notation | Collection[_Notation] = NOTATIONS, uses: Sequence[_Use] = ("road", "special", "snow")
) -> st.SearchStrategy[ls.TyreSize]:
    """Sizes of tyres, of these notations and uses."""
    return st.builds(ls.TyreSize, designations(notations=notations), st.sampled_from(uses))


# --- Machines --------------------------------------------------------------------------------------------------------
# Ranges in which real ones lie; the machines are nobody's.


def _ratio_of(pair: ls.GearPair) -> float:
    return pair.ratio


@st.composite
def _gearboxes(draw: st.DrawFn, kind: _Kind) -> ls.Gearbox:
    if kind == "cycle":
        ratios = draw(st.lists(st.floats(0.4, 2.5), min_size=1, max_size=14, unique=True))
        return ls.Gearbox(
            gears=sorted(ratios, reverse=True), idle=draw(st.integers(20, 40)) * ls.rpm,
            rev_limit=draw(st.integers(90, 130)) * ls.rpm,
        )  # fmt: skip
    pairs = st.builds(ls.GearPair, st.integers(11, 30), st.integers(20, 40))
    gears = draw(st.lists(pairs, min_size=1, max_size=6, unique_by=_ratio_of))
    idle = draw(st.integers(900, 1800))
    in_order: list[ls.GearPair] = sorted(gears, key=_ratio_of, reverse=True)
    return ls.Gearbox(
        primary=draw(st.builds(ls.GearPair, st.integers(17, 26), st.integers(55, 75)) | st.floats(1.5, 4.0)),
        gears=in_order,
        idle=idle * ls.rpm,
        rev_limit=draw(st.integers(5000, 13000)) * ls.rpm,
        lowest_pull=draw(st.none() | st.integers(idle, 4500).map(lambda turns: turns * ls.rpm)),
    )


@st.composite
def _adjusters(draw: st.DrawFn, chain: ls.ChainSeries, front: int, rear: int) -> ls.Adjuster:
    """Room for the stock pair: at least two pitches long, so that an even chain always closes."""
    shortest = ls.ChainLoop(chain, front=front, rear=rear).centre(front + rear + draw(st.integers(20, 60)))
    room = draw(st.integers(25, 60)) / 10 * chain.pitch
    return ls.Adjuster(shortest, shortest + room, draw(st.integers(5, 45)) * ls.mm)


@st.composite
def machines(
    draw: st.DrawFn, *, kinds: Sequence[_Kind] = ("motorcycle", "cycle"), engine: bool | None = None
) -> ls.Machine:
    """Machines with a stock set-up that closes in the adjuster.

    :param kinds: "motorcycle", "cycle", or both
    :param engine: whether an engine, a body and a road load are stated; None: some have them, some do not
    """
    kind = draw(st.sampled_from(kinds))
    cycle = kind == "cycle"
    chain = ls.ChainSeries("cycle" if cycle else draw(st.sampled_from(["420", "428", "520", "525", "530"])))
    front = draw(st.integers(28, 52) if cycle else st.integers(11, 18))
    rear = draw(st.integers(11, 36) if cycle else st.integers(30, 60))
    gearbox = draw(_gearboxes(kind))
    sizes = tyres(notations="cycle" if cycle else ("metric", "code", "lettered"), uses=("road", "special"))
    stock = ls.Setup(front=front, rear=rear, tyre=draw(sizes))
    curve: ls.EngineCurve | None = None
    body: ls.Body | None = None
    road: ls.RoadLoad | None = None
    if draw(st.booleans()) if engine is None else engine:
        mass = draw(st.integers(80, 160) if cycle else st.integers(140, 450)) * ls.kg
        slowest, fastest = gearbox.lowest_pull, gearbox.rev_limit
        steps = draw(st.integers(2, 6))
        strength = st.integers(10, 60) if cycle else st.integers(6, 140)
        curve = ls.EngineCurve(
            speeds=[slowest + (fastest - slowest) * (i / (steps - 1)) for i in range(steps)],
            torques=[draw(strength) * ls.Nm for _ in range(steps)],
        )
        body = ls.Body(mass=mass)
        road = ls.RoadLoad.from_parts(mass=mass, surface="asphalt", machine="bicycle" if cycle else "motorcycle")
    return ls.Machine(
        name=draw(st.sampled_from(["Reedmace", "Cobnut", "Tarn", "Withy"])), kind=kind, gearbox=gearbox, chain=chain,
        adjuster=draw(_adjusters(chain, front, rear)), stock=stock, engine=curve, body=body, road_load=road,
        speedometer=ls.Speedometer(draw(st.sampled_from(["rear wheel"] if cycle else ["layshaft", "rear wheel"]))),
    )  # fmt: skip


@st.composite
def setups(draw: st.DrawFn, machine: ls.Machine, *, tyres: st.SearchStrategy[ls.TyreSize] | None = None) -> ls.Setup:
    """Set-ups of a machine that an appraisal takes: sprockets near the stock ones, and a chain that closes.

    :param tyres: the tyres to draw from; None: the stock one, in whatever way it is stated
    """
    stock = machine.stock
    front = draw(st.integers(max(5, stock.front - 2), stock.front + 2))
    rear = draw(st.integers(max(5, stock.rear - 6), stock.rear + 6))
    if tyres is None:
        setup = ls.Setup(front=front, rear=rear, tyre=stock.tyre, circumference=stock.circumference)
    else:
        setup = ls.Setup(front=front, rear=rear, tyre=draw(tyres))
    try:
        ls.appraise(machine, setup)
    except ls.Error:  # no even chain closes with this pair
        assume(False)
    return setup


def machines_with_setups(
    *, kinds: Sequence[_Kind] = ("motorcycle", "cycle"), engine: bool | None = None
) -> st.SearchStrategy[tuple[ls.Machine, ls.Setup]]:
    """A machine of `machines`, and a set-up of `setups` on it."""
    return machines(kinds=kinds, engine=engine).flatmap(lambda machine: st.tuples(st.just(machine), setups(machine)))
