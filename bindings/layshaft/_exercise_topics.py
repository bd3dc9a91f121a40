# SPDX-License-Identifier: MIT
"""What `layshaft.exercises` asks: invented machines, the topics, and the examples out of books."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Final, Literal, TypeAlias, TypeVar

from . import _core as ls

Answer: TypeAlias = ls.Length | ls.Speed | ls.AngularSpeed | ls.Force | ls.Angle | float | int
_Item = TypeVar("_Item")

GRAVITY: Final = 9.80665  # m/s2, as the library's own working looks it up; the tests compare the two


@dataclass(frozen=True)
class Given:
    """A number that the question tells, as it tells it. A count and a plain ratio have the unit ''."""

    name: str
    value: int | float
    unit: str = ""

    @property
    def shown(self) -> str:
        """As it stands in the question: '2050 mm'."""
        return f"{self.value} {self.unit}".rstrip()


@dataclass(frozen=True)
class Slip:
    """A mistake that is often made: the number it leads to, and in words what went wrong."""

    name: str
    value: Answer
    what: str


# --- Drawing numbers -------------------------------------------------------------------------------------------------


class Draw:
    """Chance that is the same on every machine: only whole numbers are drawn, from a seed that is text."""

    def __init__(self, seed: str) -> None:
        self._random = random.Random(seed)

    def pick(self, items: Sequence[_Item]) -> _Item:
        return items[self._random.randrange(len(items))]

    def step(self, low: int, high: int, by: int = 1) -> int:
        """One of low, low + by, ... up to high."""
        return low + by * self._random.randrange((high - low) // by + 1)

    def shuffled(self, items: Sequence[_Item]) -> list[_Item]:
        left = list(items)
        return [left.pop(self._random.randrange(len(left))) for _ in range(len(left))]


class _Told:
    """Keeps each number as the question tells it, so that the two cannot differ."""

    def __init__(self) -> None:
        self.given: list[Given] = []

    def __call__(self, name: str, value: int | float, unit: str = "") -> str:
        one = Given(name, value, unit)
        if one not in self.given:
            self.given.append(one)
        return one.shown


@dataclass
class Draft:
    """An exercise before it is known whether a class can be asked it."""

    question: str
    given: list[Given]
    answer: Answer
    unit: str
    digits: int
    working: ls.Working
    slips: dict[str, Answer]  # by name, which `SLIPS` has
    hint: str
    also: tuple[float, ...] = ()  # the answer by other ways that a class may go; each must come to the same
    # A number rounded to one digit more is off by up to half of 10^-digits of itself. How much of that the answer must
    # stand besides what the steps as shown come to, since learners cut the way into other steps.
    wandering: float = 0.5
    source: str = "made up"


# --- Invented machines -----------------------------------------------------------------------------------------------

_Pair: TypeAlias = tuple[int, int]


@dataclass(frozen=True)
class _Kind:
    """What machines of a kind are like: ranges are low, high, step."""

    names: tuple[str, ...]
    kind: Literal["motorcycle", "cycle"]
    chain: str
    front: _Pair
    rear: _Pair
    rolled: tuple[int, int, int]  # mm
    pull: tuple[int, int, int]  # Nm
    mass: tuple[int, int, int]  # kg, with rider
    lowest: tuple[int, int, int]  # rpm
    limit: tuple[int, int, int]  # rpm
    centre: _Pair  # mm
    holds: int  # N, what rolling takes
    primaries: tuple[_Pair, ...] = ()
    boxes: tuple[tuple[_Pair, ...], ...] = ()


_TRAIL: Final = _Kind(
    names=("Nettlebank trail bike", "Sloe Lane trail bike", "Quarry End trail bike"),
    kind="motorcycle", chain="520", front=(12, 15), rear=(42, 52), rolled=(1980, 2180, 10), pull=(18, 36, 1),
    mass=(190, 260, 5), lowest=(2500, 3500, 500), limit=(8500, 10000, 500), centre=(590, 660), holds=45,
    primaries=((23, 71), (22, 68), (20, 60), (24, 72), (19, 62)),
    boxes=(
        ((13, 35), (17, 31), (20, 28), (23, 26), (26, 24), (28, 22)),
        ((12, 33), (16, 30), (19, 27), (22, 25), (25, 24)),
        ((14, 36), (18, 32), (21, 29), (24, 27), (26, 25), (27, 23)),
    ),
)  # fmt: skip
_FARM: Final = _Kind(
    names=("Wick Farm hack", "Puddle Gate farm bike", "Low Pasture farm bike"),
    kind="motorcycle", chain="428", front=(13, 16), rear=(38, 48), rolled=(1700, 1900, 10), pull=(7, 12, 1),
    mass=(150, 210, 5), lowest=(2000, 3000, 500), limit=(7500, 8500, 500), centre=(490, 540), holds=30,
    primaries=((18, 67), (17, 69), (20, 66), (18, 72)),
    boxes=(((12, 34), (17, 29), (20, 26), (23, 24)), ((13, 36), (18, 31), (21, 27), (24, 25))),
)  # fmt: skip
_ROAD: Final = _Kind(
    names=("Mill Lane runabout", "Chapel Hill roadster"),
    kind="motorcycle", chain="520", front=(14, 17), rear=(36, 45), rolled=(1850, 2000, 10), pull=(20, 40, 1),
    mass=(200, 270, 5), lowest=(2500, 3500, 500), limit=(9000, 11000, 500), centre=(560, 620), holds=40,
    primaries=((25, 72), (24, 70), (27, 77)),
    boxes=(
        ((14, 37), (18, 32), (21, 29), (24, 27), (26, 25), (27, 23)),
        ((13, 34), (17, 31), (20, 27), (22, 25), (25, 25), (26, 23)),
    ),
)  # fmt: skip
_CYCLE: Final = _Kind(
    names=("Harbour Street cycle", "Old Wharf cycle", "school run cycle"),
    kind="cycle", chain="cycle", front=(36, 48), rear=(15, 22), rolled=(1950, 2200, 10), pull=(24, 40, 2),
    mass=(80, 120, 5), lowest=(30, 30, 10), limit=(110, 120, 10), centre=(410, 450), holds=5,
)  # fmt: skip
_ELECTRIC: Final = _Kind(
    names=("Quiet Wood electric trail bike", "Larch Row electric trail bike"),
    kind="motorcycle", chain="428", front=(11, 14), rear=(46, 58), rolled=(1950, 2150, 10), pull=(40, 70, 5),
    mass=(140, 190, 5), lowest=(200, 400, 100), limit=(3000, 4000, 250), centre=(540, 600), holds=30,
)  # fmt: skip
_WITH_BOX: Final = (_TRAIL, _TRAIL, _FARM, _ROAD)
_ALL_KINDS: Final = (_TRAIL, _FARM, _ROAD, _CYCLE, _CYCLE, _ELECTRIC)
_WHO: Final = ("A courier", "A vet on call", "A forester", "A shepherd", "A trail warden", "A teacher", "A pupil")
_ORDINALS: Final = ("first", "second", "third", "fourth", "fifth", "sixth")


@dataclass(frozen=True)
class _Bike:
    """A machine as drawn: numbers only, so that each topic tells and uses what it needs."""

    of: _Kind
    name: str
    front: int
    rear: int
    rolled: int
    pull: int
    mass: int
    lowest: int
    limit: int
    primary: _Pair | None
    box: tuple[_Pair, ...]
    efficiency: int  # %

    @property
    def turning(self) -> str:
        """What turns first: crank, motor or engine."""
        return "crank" if self.of.kind == "cycle" else "engine" if self.box else "motor"

    @property
    def circumference(self) -> str:
        return f"{self.rolled} mm"

    def overall(self, gear: int) -> float:
        return ls.explain(self.machine(), self.machine().stock, "overall ratio", gear=gear).result.result  # type: ignore[no-any-return]

    def machine(
        self, *, centre_min: int | None = None, sensor: Literal["layshaft", "rear wheel"] = "layshaft"
    ) -> ls.Machine:
        primary = ls.GearPair(*self.primary) if self.primary else 1.0
        gears: list[float | ls.GearPair] = [ls.GearPair(*pair) for pair in self.box] or [1.0]
        gearbox = ls.Gearbox(
            primary=primary,
            gears=gears,
            idle=f"{self.lowest // 2} rpm",
            lowest_pull=f"{self.lowest} rpm",
            rev_limit=f"{self.limit} rpm",
        )
        foremost = centre_min or self.of.centre[0]
        return ls.Machine(
            name=self.name,
            kind=self.of.kind,
            gearbox=gearbox,
            adjuster=ls.Adjuster(f"{foremost} mm", f"{foremost + 60} mm"),
            chain=self.of.chain,
            speedometer=ls.Speedometer(sensor, 0.0),
            stock=ls.Setup(front=self.front, rear=self.rear, circumference=self.circumference),
            # an even pull, so that a class needs no curve
            engine=ls.EngineCurve([f"{self.lowest} rpm", f"{self.limit} rpm"], [f"{self.pull} Nm"] * 2),
            drive_efficiency=self.efficiency / 100,
            road_load=ls.RoadLoad(constant=f"{self.of.holds} N", mass=f"{self.mass} kg"),
        )

    def explain(self, what: str, **at: Any) -> ls.Working:
        machine = self.machine()
        return ls.explain(machine, machine.stock, what, **at)


def _bike(draw: Draw, kinds: Sequence[_Kind]) -> _Bike:
    of = draw.pick(kinds)
    return _Bike(
        of=of,
        name=draw.pick(of.names),
        front=draw.step(*of.front),
        rear=draw.step(*of.rear),
        rolled=draw.step(*of.rolled),
        pull=draw.step(*of.pull),
        mass=draw.step(*of.mass),
        lowest=draw.step(*of.lowest),
        limit=draw.step(*of.limit),
        primary=draw.pick(of.primaries) if of.primaries else None,
        box=draw.pick(of.boxes) if of.boxes else (),
        efficiency=draw.step(88, 96, 2),
    )


def _gear(draw: Draw, bike: _Bike) -> int:
    return draw.step(1, len(bike.box)) if bike.box else 1


def _tell_drive(told: _Told, bike: _Bike, gear: int) -> str:
    """The whole drive in words, from crank to wheel."""
    front, rear = told("front", bike.front), told("rear", bike.rear)
    if not bike.primary:
        where = "chainring" if bike.of.kind == "cycle" else "sprocket on the motor's shaft"
        return f"The {where} has {front} teeth and the rear sprocket {rear}; there are no other gears."
    driving, driven = bike.box[gear - 1]
    return (
        f"The primary drive has {told('primary driving', bike.primary[0])} teeth on the crank and "
        f"{told('primary driven', bike.primary[1])} on the clutch. In {_ORDINALS[gear - 1]} gear "
        f"{told('gear driving', driving)} teeth drive {told('gear driven', driven)}. The front sprocket has {front} "
        f"teeth and the rear one {rear}."
    )


# What slips are called, and what went wrong, in words that give no number away.
SLIPS: Final = {
    "inverted ratio": "the ratio stands upside down: it tells turns behind for one turn in front",
    "sprockets swapped": "front and rear sprocket stand the wrong way round",
    "final drive left out": "the final drive is left out of the overall ratio",
    "primary left out": "the primary drive is left out of the overall ratio",
    "gear left out": "the gear is left out of the overall ratio",
    "gear inverted": "driving and driven teeth of the gear stand the wrong way round",
    "ratio left out": "the overall ratio is left out, as if wheel and crank turned alike",
    "ratios added": "the ratios are added; they multiply",
    "teeth added": "teeth are added; each pair divides by itself, and the ratios multiply",
    "teeth subtracted": "the teeth are subtracted; they divide",
    "share of all teeth": "the teeth are divided by those of both sprockets together",
    "a turn too many": "chalk marks are counted, of which there is one more than turns",
    "a turn too few": "one turn too few is counted",
    "not divided": "that is the way of all turns, not of one",
    "stopped at the diameter": "that is the wheel's diameter; one turn rolls pi times as far",
    "one section height": "the section stands above and below the rim, so its height counts twice",
    "tyre left out": "that is what the bare rim would roll",
    "width for height": "the section's width is taken for its height",
    "radius for diameter": "the radius is taken for the diameter",
    "load left out": "that is the free circumference; under load the tyre rolls less",
    "rolls more": "the per cent are added; under load the tyre rolls less",
    "diameter for circumference": "the way of one turn is taken for a diameter, and pi put on top",
    "radius for circumference": "the way of one turn is taken for a radius",
    "circumference for diameter": "the circumference is taken for the diameter",
    "circumference for radius": "the circumference is taken for the radius; torque over the radius is force",
    "diameter for radius": "the diameter is taken for the radius; torque over the radius is force",
    "rear for front": "that belongs to the rear sprocket",
    "corners cut": "pitch times teeth is the way round the polygon, whose corners lie on a larger circle",
    "miles for kilometres": "a mile is taken for a kilometre, or a kilometre for a mile",
    "metres for kilometres": "a metre is taken for a kilometre",
    "seconds for hours": "km/h and m/s are taken for each other",
    "minutes for hours": "that is the number of metres in a minute",
    "minutes for seconds": "turns a minute are taken for turns a second",
    "seconds for minutes": "those are turns a second",
    "kilograms for newtons": "that is the number in kilograms of force",
    "losses left out": "what is lost on the way to the wheel is left out",
    "losses added": "it is divided by what arrives at the wheel; it multiplies",
    "rolling left out": "what rolling takes is left out",
    "per cent for degrees": "that is the slope in per cent",
    "tangent for sine": "force along the slope over weight is the sine of its angle, not the tangent",
    "first for top gear": "that is the highest speed in first gear",
    "a gear too low": "that is the highest speed in the gear below the top one",
    "rounded down": "rounded down, the chain is too short to close",
    "odd": "an odd number of links needs an offset link",
    "not rounded": "a chain has whole links, and an even number of them",
    "one run": "the chain runs from sprocket to sprocket twice, above and below",
    "both runs": "that is the length of both runs; the shafts are one run apart",
    "teeth not halved": "all teeth are counted; about half of each sprocket holds the chain",
    "teeth left out": "the links that lie round the sprockets are left out",
    "one sprocket": "only the rear sprocket's links are counted",
    "one size of sprocket": "the sprockets differ, and slanting runs take some chain",
    "before and after swapped": "before and after stand the wrong way round",
    "unchanged": "the change is left out",
    "per cent the wrong way": "the change is taken off instead of put on, or put on instead of taken off",
    "change twice": "the change is counted twice",
    "all teeth": "those are the meetings of all front teeth together",
}


def _wrong_ratios(bike: _Bike, gear: int) -> dict[str, float]:
    """What overall ratios come out by the mistakes that are made with teeth."""
    right = bike.overall(gear)
    final = bike.rear / bike.front
    wrong = {"sprockets swapped": right / final**2, "final drive left out": right / final}
    if bike.primary:
        driving, driven = bike.box[gear - 1]
        primary, inner = bike.primary[1] / bike.primary[0], driven / driving
        wrong |= {
            "primary left out": right / primary,
            "gear left out": right / inner,
            "gear inverted": right / inner**2,
            "ratios added": primary + inner + final,
            "teeth added": (bike.primary[1] + driven + bike.rear) / (bike.primary[0] + driving + bike.front),
        }
    return wrong


def grade(angle: ls.Angle) -> float:
    """The slope in per cent, as road signs have it."""
    return 100 * math.tan(angle / ls.rad)


def _ratio_slips(bike: _Bike, gear: int, worked_out: Callable[[float], Answer]) -> dict[str, Answer]:
    return {name: worked_out(ratio) for name, ratio in _wrong_ratios(bike, gear).items()}


# --- Topics ----------------------------------------------------------------------------------------------------------


def _gear_ratio(draw: Draw) -> Draft | None:
    bike = _bike(draw, (_CYCLE, _ELECTRIC))
    told, who = _Told(), draw.pick(_WHO)
    drive = _tell_drive(told, bike, 1)
    working = bike.explain("overall ratio", gear=1)
    front, rear = bike.front, bike.rear
    return Draft(
        question=f"{who} counts teeth on the {bike.name}. {drive} How often does the {bike.turning} turn while the "
        "rear wheel turns once?",
        given=told.given,
        answer=working.result.result,
        unit="",
        digits=3,
        working=working,
        slips={
            "inverted ratio": front / rear,
            "teeth subtracted": float(abs(rear - front)),
            "teeth added": float(rear + front),
            "share of all teeth": rear / (rear + front),
        },
        hint="The chain moves both sprockets by the same number of teeth.",
    )


def _overall_ratio(draw: Draw) -> Draft | None:
    bike = _bike(draw, _WITH_BOX)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    drive = _tell_drive(told, bike, gear)
    working = bike.explain("overall ratio", gear=gear)
    right: float = working.result.result
    return Draft(
        question=f"{who} has the engine of the {bike.name} open and counts teeth. {drive} How many turns does the "
        "crank make for one turn of the rear wheel?",
        given=told.given,
        answer=right,
        unit="",
        digits=3,
        working=working,
        slips={
            **_ratio_slips(bike, gear, lambda ratio: ratio),
            "inverted ratio": 1 / right,
        },
        hint="Driven over driving for each pair, then all of them multiplied.",
    )


def _rollout(draw: Draw) -> Draft | None:
    return draw.pick((_rollout_pushed, _rollout_marked))(draw)


def _rollout_pushed(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who, turns = _Told(), draw.pick(_WHO), draw.pick((4, 5, 6, 8, 10))
    metres = turns * (bike.rolled + draw.pick((0, 2, 5))) / 1000
    distance = told("distance", metres, "m")
    working = ls.explain_measured_circumference(distance, turns, tape_error="0 mm")
    one_turn: ls.Length = working.result.result
    return Draft(
        question=f"{who} chalks the rear tyre of the {bike.name}, rides slowly over a smooth yard and measures "
        f"{distance} over {told('turns', turns)} turns of the wheel. How far does the wheel roll in one turn?",
        given=told.given,
        answer=one_turn,
        unit="mm",
        digits=4,
        working=working,
        slips={
            "a turn too many": ls.Length(distance) / (turns + 1),
            "a turn too few": ls.Length(distance) / (turns - 1),
            "stopped at the diameter": one_turn / math.pi,
            "diameter for circumference": one_turn * math.pi,
            "not divided": ls.Length(distance),
        },
        hint="The way of several turns holds that many ways of one turn.",
    )


_MARKINGS: Final = (
    (120, 80, 18), (120, 90, 18), (110, 90, 18), (100, 90, 18), (110, 100, 18), (140, 80, 18), (130, 70, 18),
    (90, 90, 21), (80, 90, 21), (130, 80, 17), (120, 80, 17), (100, 80, 17), (120, 70, 17), (90, 100, 16),
    (110, 80, 19), (100, 90, 19),
)  # fmt: skip


def _rollout_marked(draw: Draw) -> Draft | None:
    told, who = _Told(), draw.pick(_WHO)
    width, aspect, code = draw.pick(_MARKINGS)
    working = ls.TyreSize(f"{width}/{aspect}-{code}").explain("circumference")
    looked_up = {step.name: step.result for step in working.steps}
    rim: ls.Length = looked_up["rim diameter"]
    rolling: float = looked_up["rolling factor"]
    one_turn: ls.Length = working.result.result.nominal
    height = looked_up["section height"]
    marking = f"{told('section width', width)}/{told('aspect ratio', aspect)}-{told('rim code', code)}"
    fewer = told("rolls less", round(100 - 100 * rolling), "%")

    def rolls(diameter: ls.Length) -> ls.Length:
        return diameter * (math.pi * rolling)  # right for the overall diameter, which no slip puts in

    return Draft(
        question=f"{who} reads {marking} on a tyre: section width in mm, section height in per cent of the width, and "
        f"the rim's code. A rim of that code is {told('rim diameter', round(rim / ls.mm), 'mm')} across. Under load "
        f"the tyre rolls {fewer} less than its free circumference. How far does it nominally roll in one turn?",
        given=told.given,
        answer=one_turn,
        unit="mm",
        digits=4,
        working=working,
        slips={
            "one section height": rolls(rim + height),
            "tyre left out": rolls(rim),
            "width for height": rolls(rim + 2 * width * ls.mm),
            "radius for diameter": one_turn / 2,
            "stopped at the diameter": one_turn / math.pi,
            "load left out": one_turn / rolling,
            "rolls more": one_turn / rolling * (2 - rolling),
        },
        hint="From the rim to the overall diameter first, then round the wheel, then what the load takes off.",
    )


def _engine_turns(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    drive = _tell_drive(told, bike, gear)
    working = bike.explain("engine turns", gear=gear)
    right: float = working.result.result
    ratio = bike.overall(gear)
    return Draft(
        question=f"{who} rides the {bike.name}. {drive} One turn of the rear wheel rolls "
        f"{told('circumference', bike.rolled, 'mm')}. How many turns does the {bike.turning} make in a kilometre?",
        given=told.given,
        answer=right,
        unit="",
        digits=3,
        working=working,
        slips={
            **_ratio_slips(bike, gear, lambda wrong: ls.engine_turns(wrong, bike.circumference)),
            "ratio left out": right / ratio,
            "inverted ratio": right / ratio**2,
            "diameter for circumference": right / math.pi,
            "miles for kilometres": right * (ls.mile / ls.km),
        },
        hint="Count the wheel's turns in a kilometre first.",
    )


def _speed_slips(bike: _Bike, gear: int, turning: ls.AngularSpeed, right: ls.Speed) -> dict[str, Answer]:
    """What a road speed comes out as by the mistakes that are made on the way."""
    ratio, rolled = bike.overall(gear), ls.Length(bike.circumference)
    return {
        **_ratio_slips(bike, gear, lambda wrong: ls.road_speed(turning, wrong, rolled)),
        "ratio left out": ls.road_speed(turning, 1.0, rolled),
        "inverted ratio": ls.road_speed(turning, 1 / ratio, rolled),
        "diameter for circumference": math.pi * right,
        "radius for circumference": 2 * math.pi * right,
        "miles for kilometres": right / ls.mph * ls.kmh,
        "seconds for hours": right / ls.mps * ls.kmh,
        "minutes for hours": right / ls.mps * 60 * ls.kmh,
        "minutes for seconds": 60 * right,
    }


def _road_speed(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    by = 5 if bike.of.kind == "cycle" else 100
    low = 50 if bike.of.kind == "cycle" else bike.lowest
    turning = draw.step(low, bike.limit - 10 * by, by) if bike.box else draw.step(low, bike.limit - by, by)
    drive = _tell_drive(told, bike, gear)
    engine_speed = told("engine speed", turning, "rpm")
    working = bike.explain("road speed", gear=gear, engine_speed=engine_speed)
    right: ls.Speed = working.result.result
    if not 6 * ls.kmh <= right <= 130 * ls.kmh:
        return None
    return Draft(
        question=f"{who} rides the {bike.name}. {drive} One turn of the rear wheel rolls "
        f"{told('circumference', bike.rolled, 'mm')}. How fast does it go when the {bike.turning} turns at "
        f"{engine_speed}?",
        given=told.given,
        answer=right,
        unit="km/h",
        digits=3,
        working=working,
        slips=_speed_slips(bike, gear, ls.AngularSpeed(engine_speed), right),
        hint=f"Turns of the {bike.turning} over the overall ratio are turns of the wheel.",
    )


def _engine_speed(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    drive = _tell_drive(told, bike, gear)
    speed = told("road speed", draw.step(8, 24, 2) if bike.of.kind == "cycle" else draw.step(15, 110, 5), "km/h")
    working = bike.explain("engine speed", gear=gear, speed=speed)
    right: ls.AngularSpeed = working.result.result
    if not bike.lowest * ls.rpm <= right <= bike.limit * ls.rpm:
        return None
    ratio, rolled = bike.overall(gear), bike.circumference
    return Draft(
        question=f"{who} rides the {bike.name} at {speed}. {drive} One turn of the rear wheel rolls "
        f"{told('circumference', bike.rolled, 'mm')}. How fast does the {bike.turning} turn?",
        given=told.given,
        answer=right,
        unit="rpm",
        digits=3,
        working=working,
        slips={
            **_ratio_slips(bike, gear, lambda wrong: ls.engine_speed(speed, wrong, rolled)),
            "ratio left out": ls.engine_speed(speed, 1.0, rolled),
            "inverted ratio": ls.engine_speed(speed, 1 / ratio, rolled),
            "diameter for circumference": right / math.pi,
            "miles for kilometres": right * (ls.mile / ls.km),
            "seconds for hours": right * (ls.mps / ls.kmh),
            "seconds for minutes": right / 60,
        },
        hint="How often must the wheel turn in a minute to go that far?",
    )


def _pull_told(told: _Told, bike: _Bike, gear: int, speed: str) -> str:
    """The even pull of the engine, and that it holds at the speed."""
    even = (
        f"The {bike.turning} gives an even {told('torque', bike.pull, 'Nm')} from "
        f"{told('lowest', bike.lowest, 'rpm')} to "
        f"{told('limit', bike.limit, 'rpm')}"
    )
    rolls = f"One turn of the rear wheel rolls {told('circumference', bike.rolled, 'mm')}."
    kept = told("efficiency", bike.efficiency, "%")
    passes = f"At {speed} it turns within that range, and the drive passes on {kept} of it."
    return f"{_tell_drive(told, bike, gear)} {rolls} {even}. {passes}"


def _in_range(bike: _Bike, gear: int, speed: str) -> bool:
    """Whether the machine can do that: well within its revs, and with no more power than a rider's legs have."""
    turning = ls.engine_speed(speed, bike.overall(gear), bike.circumference)
    legs = bike.of.kind != "cycle" or bike.pull * ls.Nm * turning <= 300 * ls.W
    return legs and 1.02 * bike.lowest * ls.rpm <= turning <= 0.98 * bike.limit * ls.rpm


def _thrust(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    speed = told("road speed", draw.step(8, 20, 2) if bike.of.kind == "cycle" else draw.step(10, 90, 5), "km/h")
    if not _in_range(bike, gear, speed):
        return None
    pull = _pull_told(told, bike, gear, speed)
    working = bike.explain("thrust", gear=gear, speed=speed)
    right: ls.Force = working.result.result
    torque, ratio, kept, rolled = (
        bike.pull * ls.Nm,
        bike.overall(gear),
        bike.efficiency / 100,
        ls.Length(bike.circumference),
    )

    def pushes(wrong_ratio: float) -> ls.Force:
        return ls.drive_thrust(torque, wrong_ratio, kept, rolled)

    return Draft(
        question=f"{who} rides the {bike.name} at {speed}. {pull} With what force does the tyre push the machine "
        "along?",
        given=told.given,
        answer=right,
        unit="N",
        digits=3,
        working=working,
        slips={
            **_ratio_slips(bike, gear, pushes),
            "ratio left out": pushes(1.0),
            "inverted ratio": pushes(1 / ratio),
            "diameter for radius": right / 2,
            "circumference for radius": right / (2 * math.pi),
            "circumference for diameter": right / math.pi,
            "losses left out": right / kept,
            "losses added": right / kept**2,
            "kilograms for newtons": right / GRAVITY,
        },
        hint="Torque at the wheel over the wheel's radius is force.",
    )


def _hill(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, gear, who = _Told(), _gear(draw, bike), draw.pick(_WHO)
    speed = told("road speed", draw.step(6, 14, 2) if bike.of.kind == "cycle" else draw.step(10, 30, 5), "km/h")
    if not _in_range(bike, gear, speed):
        return None
    pull = _pull_told(told, bike, gear, speed)
    working = bike.explain("steepest slope", gear=gear, speed=speed)
    right: ls.Angle = working.result.result
    if not 2 * ls.deg <= right <= 30 * ls.deg:
        return None
    thrust = ls.thrust(bike.machine(), bike.machine().stock, gear, speed).nominal
    weight, holds = bike.mass * ls.kg * (GRAVITY * ls.mps2), bike.of.holds * ls.N

    def climbs(force: ls.Force, rolling: ls.Force = holds) -> ls.Angle:
        return ls.slope_held(min(force / weight, 1.0), rolling / weight)

    def wrong_drive(ratio: float) -> ls.Angle:
        return climbs(ls.drive_thrust(bike.pull * ls.Nm, ratio, bike.efficiency / 100, bike.circumference))

    schoolbook = climbs(thrust - holds, 0 * ls.N)  # rolling as on the level, as a class reckons
    rougher = climbs(thrust / 9.81 * GRAVITY, holds / 9.81 * GRAVITY)
    return Draft(
        question=f"{who} takes the {bike.name} up a hill at a steady {speed}. {pull} With rider it weighs "
        f"{told('mass', bike.mass, 'kg')}; rolling takes {told('resistance', bike.of.holds, 'N')}, the air is left "
        f"out, and gravity is {told('gravity', GRAVITY, 'm/s2')}. How steep a hill can it just hold?",
        given=told.given,
        answer=right,
        unit="deg",
        digits=2,
        working=working,
        slips={
            **_ratio_slips(bike, gear, wrong_drive),
            "per cent for degrees": grade(right) * ls.deg,
            "tangent for sine": math.atan((thrust - holds) / weight) * ls.rad,
            "rolling left out": climbs(thrust, 0 * ls.N),
            "losses left out": climbs(thrust * (100 / bike.efficiency)),
            "diameter for radius": climbs(thrust / 2),
            "circumference for radius": climbs(thrust / (2 * math.pi)),
        },
        hint="Find the force at the tyre, take off what rolling needs, and hold the rest against the weight.",
        also=(schoolbook / ls.deg, rougher / ls.deg),
        wandering=1.5,  # what is left for the hill is a difference, which is off by more than its parts
    )


def _top_speed(draw: Draw) -> Draft | None:
    bike = _bike(draw, _WITH_BOX)
    told, who, top = _Told(), draw.pick(_WHO), len(bike.box)
    assert bike.primary is not None
    pairs = "; ".join(
        f"{told(f'gear {i} driving', a)} driving {told(f'gear {i} driven', b)} in {_ORDINALS[i - 1]}"
        for i, (a, b) in enumerate(bike.box, 1)
    )
    working = bike.explain("highest speed", gear=top)
    right: ls.Speed = working.result.result
    turning = bike.limit * ls.rpm
    return Draft(
        question=f"{who} asks how fast the {bike.name} can be if nothing but its revs held it back. The engine may "
        f"turn at {told('limit', bike.limit, 'rpm')} and no faster. The primary drive has "
        f"{told('primary driving', bike.primary[0])} teeth on the crank and {told('primary driven', bike.primary[1])} "
        f"on the clutch. The gears have {pairs}. The front sprocket has {told('front', bike.front)} teeth and the "
        f"rear one {told('rear', bike.rear)}; one turn of the rear wheel rolls "
        f"{told('circumference', bike.rolled, 'mm')}. What is the highest speed?",
        given=told.given,
        answer=right,
        unit="km/h",
        digits=3,
        working=working,
        slips={
            "first for top gear": ls.road_speed(turning, bike.overall(1), bike.circumference),
            "a gear too low": ls.road_speed(turning, bike.overall(top - 1), bike.circumference),
            **_speed_slips(bike, top, turning, right),
        },
        hint="The gear with the smallest overall ratio is the fastest.",
    )


def _tell_chain(told: _Told, bike: _Bike) -> str:
    pitch = round(ls.ChainSeries(bike.of.chain).pitch / ls.mm, 3)
    return (
        f"The chain has a pitch of {told('pitch', pitch, 'mm')}, the sprockets have {told('front', bike.front)} and "
        f"{told('rear', bike.rear)} teeth"
    )


def _chain_length(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who = _Told(), draw.pick(_WHO)
    foremost = draw.step(*bike.of.centre)
    machine = bike.machine(centre_min=foremost)
    working = ls.explain(machine, machine.stock, "links")
    loop, centre = ls.ChainLoop(bike.of.chain, bike.front, bike.rear), f"{foremost} mm"
    if not 0.15 <= loop.links(centre) % 2 <= 1.85:  # too near to an even number to be told apart on paper
        return None
    question = (
        f"{who} fits a new chain to the {bike.name}. {_tell_chain(told, bike)}. At the foremost place of the rear axle "
        f"the shafts are {told('centre', foremost, 'mm')} apart, and the axle can only move rearward from there. A "
        "chain has an even number of links, and slack is set afterwards. How many links has the shortest chain that "
        "closes?"
    )
    return _links_draft(question, told.given, loop, centre, working)


def _links_draft(
    question: str, given: list[Given], loop: ls.ChainLoop, centre: str, working: ls.Working, source: str = "made up"
) -> Draft:
    right: int = working.result.result
    real = loop.links(centre)
    runs = ls.Length(centre) / loop.series.pitch
    teeth = loop.front + loop.rear
    return Draft(
        question=question,
        given=given,
        answer=right,
        unit="links",
        digits=len(str(right)),
        working=working,
        slips={
            "rounded down": ls.round_links(real, "down to even"),
            "odd": ls.round_links(real, "up"),
            "not rounded": real,
            "one run": ls.round_links(real - runs),
            "teeth not halved": ls.round_links(real + teeth / 2),
            "teeth left out": ls.round_links(2 * runs),
            "one sprocket": ls.round_links(2 * runs + loop.rear / 2),
        },
        hint="Two straight runs, half of each sprocket, and a little since the sprockets differ.",
        also=(float(ls.round_links(loop.links_approximate(centre))),),
        source=source,
    )


def _axle_position(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who = _Told(), draw.pick(_WHO)
    loop = ls.ChainLoop(bike.of.chain, bike.front, bike.rear)
    links = ls.round_links(loop.links(f"{draw.step(*bike.of.centre)} mm"), "nearest even")
    centre = loop.centre(links) / ls.mm
    if 0.4 <= centre % 1 <= 0.6 or not bike.of.centre[0] - 8 <= centre <= bike.of.centre[1] + 8:
        return None
    question = (
        f"{who} puts a chain of {told('links', links)} links on the {bike.name}. {_tell_chain(told, bike)}, and the "
        "axle is drawn back until both runs of the chain are straight. How far apart are the two shafts?"
    )
    return _centre_draft(question, told.given, loop, links, digits=3)


def _centre_draft(
    question: str, given: list[Given], loop: ls.ChainLoop, links: int, digits: int, source: str = "made up"
) -> Draft:
    working = loop.explain("centre", links=links)
    right: ls.Length = working.result.result
    pitch, teeth = loop.series.pitch, loop.front + loop.rear
    return Draft(
        question=question,
        given=given,
        answer=right,
        unit="mm",
        digits=digits,
        working=working,
        slips={
            "both runs": 2 * right,
            "teeth left out": links / 2 * pitch,
            "teeth not halved": (links - teeth) / 2 * pitch,
            "one size of sprocket": (links - teeth / 2) / 2 * pitch,
            "one sprocket": (links - loop.rear / 2) / 2 * pitch,
        },
        hint="Take off the links that lie round the sprockets; what is left makes two runs.",
        also=(ls.centre_methods(loop, links).handbook / ls.mm,),
        source=source,
    )


def _chain_pull(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who = _Told(), draw.pick(_WHO)
    low, high, by = (30, 50, 2) if bike.of.kind == "cycle" else (40, 160, 5)
    torque = told("torque", draw.step(low, high, by), "Nm")
    loop = ls.ChainLoop(bike.of.chain, bike.front, bike.rear)
    working = ls.explain_chain_loads(loop, ls.ChainDuty(torque=torque, shaft_speed="60 rpm"), "pull")
    right: ls.Force = working.result.result
    round_front = bike.front * loop.series.pitch
    return Draft(
        question=f"{who} climbs on the {bike.name}. {_tell_chain(told, bike)}, and the shaft of the front one gives it "
        f"{torque}. What does the chain pull with, reckoned at the front sprocket's pitch circle?",
        given=told.given,
        answer=right,
        unit="N",
        digits=3,
        working=working,
        slips={
            "diameter for radius": right / 2,
            "rear for front": ls.chain_pull(torque, ls.pitch_diameter(loop.series.pitch, bike.rear)),
            "circumference for diameter": ls.chain_pull(torque, round_front),
            "circumference for radius": ls.chain_pull(torque, 2 * round_front),
            "corners cut": ls.chain_pull(torque, round_front / math.pi),
            "kilograms for newtons": right / GRAVITY,
        },
        hint="The corners of the chain lie on the pitch circle: half a pitch over the sine of half a tooth's angle.",
    )


def _tooth_contacts(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who = _Told(), draw.pick(_WHO)
    working = bike.explain("front contacts")
    right: float = working.result.result
    final = bike.rear / bike.front
    return Draft(
        question=f"{who} wonders what wears the front sprocket of the {bike.name}. It has "
        f"{told('front', bike.front)} teeth, "
        f"the rear one {told('rear', bike.rear)}, and one turn of the rear wheel rolls "
        f"{told('circumference', bike.rolled, 'mm')}. How often does each front tooth meet the chain in a kilometre?",
        given=told.given,
        answer=right,
        unit="",
        digits=3,
        working=working,
        slips={
            "rear for front": right / final,
            "sprockets swapped": right / final**2,
            "all teeth": right * bike.front,
            "diameter for circumference": right / math.pi,
            "miles for kilometres": right * (ls.mile / ls.km),
            "metres for kilometres": right / 1000,
        },
        hint="A tooth meets the chain once a turn of its sprocket.",
    )


def _speedometer(draw: Draw) -> Draft | None:
    return draw.pick((_speedometer_of_sprockets, _speedometer_of_wheel))(draw)


def _reading_draft(
    question: str, given: list[Given], working: ls.Working, true: ls.Speed, ratio: float
) -> Draft | None:
    right: ls.Speed = working.result.result
    if not 0.02 <= abs(ratio - 1) <= 0.25:
        return None
    return Draft(
        question=question,
        given=given,
        answer=right,
        unit="km/h",
        digits=3,
        working=working,
        slips={
            "before and after swapped": true / ratio,
            "unchanged": true,
            "per cent the wrong way": true * (2 - ratio),
            "change twice": true * ratio**2,
            "miles for kilometres": right / ls.mph * ls.kmh,
        },
        hint="The instrument counts turns of what it senses; does that now turn faster or slower at the same speed?",
    )


def _speedometer_of_sprockets(draw: Draw) -> Draft | None:
    bike = _bike(draw, _WITH_BOX)
    told, who = _Told(), draw.pick(_WHO)
    front, rear = bike.front + draw.step(-1, 1), bike.rear + draw.step(-4, 4)
    speed = told("true speed", draw.step(40, 100, 5), "km/h")
    machine = bike.machine()
    trial = ls.Setup(front=front, rear=rear, circumference=bike.circumference)
    working = ls.explain(machine, trial, "indicated speed", speed=speed)
    ratio = ls.final_ratio(front, rear) / ls.final_ratio(bike.front, bike.rear)
    question = (
        f"The speedometer of the {bike.name} senses the front sprocket's shaft. With "
        f"{told('front before', bike.front)} teeth in front and {told('rear before', bike.rear)} behind it told the "
        f"truth. {who} fits {told('front after', front)} and {told('rear after', rear)}; the tyre stays, which rolls "
        f"{told('circumference', bike.rolled, 'mm')} in one turn. What does the speedometer show at a true {speed}?"
    )
    return _reading_draft(question, told.given, working, ls.Speed(speed), ratio)


def _speedometer_of_wheel(draw: Draw) -> Draft | None:
    bike = _bike(draw, _ALL_KINDS)
    told, who = _Told(), draw.pick(_WHO)
    after = bike.rolled + draw.pick((-1, 1)) * draw.step(30, 160, 10)
    low, high = (10, 30) if bike.of.kind == "cycle" else (40, 100)
    speed = told("true speed", draw.step(low, high, 5), "km/h")
    machine = bike.machine(sensor="rear wheel")
    trial = ls.Setup(front=bike.front, rear=bike.rear, circumference=f"{after} mm")
    working = ls.explain(machine, trial, "indicated speed", speed=speed)
    question = (
        f"The speedometer of the {bike.name} counts turns of the rear wheel. With the old tyre, which rolled "
        f"{told('circumference before', bike.rolled, 'mm')} in one turn, it told the truth. {who} fits a tyre that "
        f"rolls {told('circumference after', after, 'mm')}. What does the speedometer show at a true {speed}?"
    )
    return _reading_draft(question, told.given, working, ls.Speed(speed), bike.rolled / after)


MAKERS: Final[dict[str, Callable[[Draw], Draft | None]]] = {
    "gear ratio": _gear_ratio,
    "overall ratio": _overall_ratio,
    "rollout": _rollout,
    "engine turns": _engine_turns,
    "road speed": _road_speed,
    "engine speed": _engine_speed,
    "thrust": _thrust,
    "hill": _hill,
    "top speed by revs": _top_speed,
    "chain length": _chain_length,
    "axle position": _axle_position,
    "chain pull": _chain_pull,
    "tooth contacts": _tooth_contacts,
    "speedometer": _speedometer,
}


# --- Out of books ----------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class BookExample:
    """A worked example of a textbook: `exercise(example.topic, example.seed)` asks it."""

    topic: str
    seed: str
    source: str
    printed: float  # as the book has it, in the exercise's unit


_BHANDARI: Final = "Bhandari, Design of Machine Elements, ch. 14"
_JINDAL: Final = "Jindal, Machine Design, example 29-2, p. 751"
_COURSE: Final = "a university's vehicle dynamics course, propulsion limits, example 1"
BOOK: Final = (
    BookExample("chain length", "Bhandari 14.3", _BHANDARI, 122),
    BookExample("chain length", "Bhandari 14.4", _BHANDARI, 106),
    BookExample("axle position", "Bhandari 14.3", _BHANDARI, 500.804717),
    BookExample("overall ratio", "Jindal 29-2 first", _JINDAL, 5.109),
    BookExample("overall ratio", "Jindal 29-2 second", _JINDAL, 2.291),
    BookExample("overall ratio", "Jindal 29-2 reverse", _JINDAL, 5.676),
    BookExample("road speed", "course 1", _COURSE, 60.5046),
    BookExample("thrust", "course 1", _COURSE, 3330.5),
)


def _book_kind(chain: str) -> _Kind:
    return _Kind(
        names=("book's drive",),
        kind="motorcycle",
        chain=chain,
        front=(20, 20),
        rear=(20, 20),
        rolled=(2000, 2000, 1),
        pull=(0, 0, 1),
        mass=(1000, 1000, 1),
        lowest=(1000, 1000, 1),
        limit=(6000, 6000, 1),
        centre=(500, 800),
        holds=0,
    )


def _book_bike(chain: str, front: int, rear: int, primary: _Pair | None = None, box: tuple[_Pair, ...] = ()) -> _Bike:
    return _Bike(
        of=_book_kind(chain),
        name="book's drive",
        front=front,
        rear=rear,
        rolled=2000,
        pull=100,
        mass=1000,
        lowest=1000,
        limit=6000,
        primary=primary,
        box=box,
        efficiency=100,
    )


def _book_links(chain: str, front: int, rear: int, centre: int) -> Draft:
    bike, told = _book_bike(chain, front, rear), _Told()
    machine = bike.machine(centre_min=centre)
    question = (
        f"Out of a book: two shafts are {told('centre', centre, 'mm')} apart. {_tell_chain(told, bike)}. How many "
        "links, rounded up to an even number, has the chain?"
    )
    working = ls.explain(machine, machine.stock, "links")
    return _links_draft(question, told.given, ls.ChainLoop(chain, front, rear), f"{centre} mm", working, _BHANDARI)


def _book_centre() -> Draft:
    bike, told = _book_bike("08B", 21, 63), _Told()
    question = (
        f"Out of a book: a chain of {told('links', 122)} links runs over two sprockets. {_tell_chain(told, bike)}. How "
        "far apart are the shafts when both runs of the chain are straight?"
    )
    return _centre_draft(question, told.given, ls.ChainLoop("08B", 21, 63), 122, digits=4, source=_BHANDARI)


def _book_ratio(primary: _Pair, gear: _Pair) -> Draft:
    bike, told = _book_bike("12B", 20, 20, primary, (gear,)), _Told()
    working = bike.explain("overall ratio", gear=1)
    right: float = working.result.result
    return Draft(
        question=f"Out of a book: in a gearbox {told('primary driving', primary[0])} teeth drive "
        f"{told('primary driven', primary[1])}, and on the next shaft {told('gear driving', gear[0])} drive "
        f"{told('gear driven', gear[1])}. Behind it two sprockets of {told('front', 20)} and {told('rear', 20)} teeth "
        "pass the turns on. How often does the first shaft turn while the last one turns once?",
        given=told.given,
        answer=right,
        unit="",
        digits=4,
        working=working,
        slips={**_ratio_slips(bike, 1, lambda ratio: ratio), "inverted ratio": 1 / right},
        hint="Driven over driving for each pair, then all of them multiplied.",
        source=_JINDAL,
        wandering=0.0,  # the numbers are the book's
    )


@dataclass(frozen=True)
class _Car:
    """The course's car: its ratios are told as such, so that its chain passes turns on as they come."""

    told: _Told
    machine: ls.Machine
    overall: float
    rolled: ls.Length
    tells: str


def _book_car() -> _Car:
    told = _Told()
    rolled = round(ls.circumference_of_radius("0.2888 m") / ls.mm, 3)
    gearbox = ls.Gearbox(primary=3.944, gears=[1.46], idle="500 rpm", lowest_pull="1000 rpm", rev_limit="6000 rpm")
    machine = ls.Machine(
        name="course's car",
        gearbox=gearbox,
        adjuster=ls.Adjuster("500 mm", "600 mm"),
        chain="12B",
        speedometer="layshaft",
        stock=ls.Setup(front=20, rear=20, circumference=f"{rolled} mm"),
        engine=ls.EngineCurve(["1000 rpm", "6000 rpm"], ["174 Nm", "174 Nm"]),
        drive_efficiency=0.96,
    )
    tells = (
        f"Out of a course: a car's final drive has a ratio of {told('final drive', 3.944)} and its third gear one of "
        f"{told('gear', 1.46)}; nothing else lies between (the working has two sprockets of {told('front', 20)} and "
        f"{told('rear', 20)} teeth, which change nothing). Its wheel rolls {told('circumference', rolled, 'mm')} in "
        "one turn."
    )
    overall = ls.overall_ratio(3.944, 1.46, 20, 20)
    return _Car(told, machine, overall, ls.Length(f"{rolled} mm"), tells)


def _book_speed() -> Draft:
    car = _book_car()
    engine_speed = car.told("engine speed", 3200, "rpm")
    working = ls.explain(car.machine, car.machine.stock, "road speed", gear=1, engine_speed=engine_speed)
    right: ls.Speed = working.result.result
    return Draft(
        question=f"{car.tells} How fast does it go when the engine turns at {engine_speed}?",
        given=car.told.given,
        answer=right,
        unit="km/h",
        digits=3,
        working=working,
        slips={
            "final drive left out": right * 3.944,
            "gear left out": right * 1.46,
            "ratios added": right * car.overall / (3.944 + 1.46),
            "inverted ratio": right * car.overall**2,
            "miles for kilometres": right / ls.mph * ls.kmh,
        },
        hint="Turns of the engine over the overall ratio are turns of the wheel.",
        source=_COURSE,
    )


def _book_thrust() -> Draft:
    car = _book_car()
    speed = car.told("road speed", 60, "km/h")
    working = ls.explain(car.machine, car.machine.stock, "thrust", gear=1, speed=speed)
    right: ls.Force = working.result.result
    return Draft(
        question=f"{car.tells} At {speed} the engine gives {car.told('torque', 174, 'Nm')}, and the drive passes on "
        f"{car.told('efficiency', 96, '%')} of it. With what force does the tyre push the car along?",
        given=car.told.given,
        answer=right,
        unit="N",
        digits=5,
        working=working,
        slips={
            "losses left out": right / 0.96,
            "final drive left out": right / 3.944,
            "diameter for radius": right / 2,
            "circumference for radius": right / (2 * math.pi),
            "kilograms for newtons": right / GRAVITY,
        },
        hint="Torque at the wheel over the wheel's radius is force.",
        source=_COURSE,
    )


BOOK_MAKERS: Final[dict[tuple[str, str], Callable[[], Draft]]] = {
    ("chain length", "Bhandari 14.3"): lambda: _book_links("08B", 21, 63, 500),
    ("chain length", "Bhandari 14.4"): lambda: _book_links("12B", 17, 34, 762),
    ("axle position", "Bhandari 14.3"): _book_centre,
    ("overall ratio", "Jindal 29-2 first"): lambda: _book_ratio((20, 50), (23, 47)),
    ("overall ratio", "Jindal 29-2 second"): lambda: _book_ratio((33, 37), (23, 47)),
    ("overall ratio", "Jindal 29-2 reverse"): lambda: _book_ratio((18, 50), (23, 47)),
    ("road speed", "course 1"): _book_speed,
    ("thrust", "course 1"): _book_thrust,
}
