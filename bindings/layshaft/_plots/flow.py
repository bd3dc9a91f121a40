# SPDX-License-Identifier: MIT
"""Torque and speed through the stages of a drivetrain, as a flow."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from .. import _core as ls
from .common import (
    BLUE,
    FAINT,
    INK,
    PALE_BLUE,
    PALE_RUST,
    RUST,
    SMALL,
    Artists,
    axes_for,
    expect,
    title,
    unit_of,
)

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from .._core import _Units as Units

# Heights in the picture: the torque band grows upward, the speed band downward, the power has a row of its own.
TORQUE_AT, SPEED_AT, POWER_AT = 0.62, -0.1, -1.75  # the foot of the one, the top of the other, the row
HIGH, HALF = 1.0, 0.31  # the greatest width of a band, and half a stage along it


@dataclass(frozen=True)
class _Stage:
    """A shaft, what leads to it, and what it turns with."""

    name: str
    by: str  # what leads to it: '', 'primary drive', 'gear 1', 'chain'
    pair: str  # teeth of that, or its ratio alone
    ratio: float
    speed: Any
    torque: Any  # None where nobody tells it
    passed: float | None  # power out over power in, since the last stage that tells it


def _ratio_of(pair: float | ls.GearPair) -> tuple[float, str]:
    return (pair.ratio, f"{pair.driven}:{pair.driving}") if isinstance(pair, ls.GearPair) else (pair, "")


def _curve(engine: ls.Engine) -> ls.EngineCurve:
    return engine.curve.nominal if isinstance(engine.curve, ls.EngineEstimate) else engine.curve


def _with_torque(machine: ls.Machine, torque: Any, engine_speed: Any) -> ls.Machine:
    """The machine with an engine that gives this torque at every speed: then the library tells its losses there."""
    box, own = machine.gearbox, machine.engine
    measured_at = "crank" if own is None else _curve(own).measured_at
    slowest, fastest = min(box.lowest_pull, 0.9 * engine_speed), max(box.rev_limit, 1.1 * engine_speed)
    flat = ls.EngineCurve([slowest, fastest], [torque, torque], measured_at=measured_at)
    return ls.Machine(
        name=machine.name, gearbox=box, adjuster=machine.adjuster, chain=machine.chain, speedometer=machine.speedometer,
        stock=machine.stock, kind=machine.kind, tyre_asked=machine.tyre_asked, suspension=machine.suspension,
        peak_torque=machine.peak_torque, engine=flat, body=machine.body, drive_efficiency=machine.drive_efficiency,
    )  # fmt: skip


def _efficiencies(machine: ls.Machine, setup: ls.Setup, gear: int, speed: Any) -> dict[str, float]:
    """What the library takes for losses in the thrust there, out of its own working, nominal."""
    return {
        step.name: step.runs.get("nominal", step.result) if step.runs else step.result
        for step in ls.explain(machine, setup, "thrust", gear=gear, speed=speed).steps
        if step.name.endswith("efficiency")
    }


def _through(machine: ls.Machine, setup: ls.Setup, gear: int, engine_speed: Any, torque: Any | None,
             passed: dict[str, float]) -> list[_Stage]:  # fmt: skip
    cycle = machine.kind == "cycle"
    stages = [_Stage("crank" if cycle else "engine", "", "", 1.0, engine_speed, torque, None)]

    def turn(name: str, by: str, ratio: float, pair: str, share: float | None) -> None:
        before = stages[-1]
        after = None if before.torque is None else before.torque * ratio * (1.0 if share is None else share)
        stages.append(_Stage(name, by, pair, ratio, before.speed / ratio, after, share))

    primary, pair = _ratio_of(machine.gearbox.primary)
    if pair or primary != 1.0:
        turn("clutch", "primary", primary, pair, None)
    ratio, pair = _ratio_of(machine.gearbox.gears[gear - 1])
    turn("sprocket", f"gear {gear}", ratio, pair, passed.get("gearbox efficiency"))
    whole = None if "chain efficiency" in passed else passed.get("drive efficiency")
    turn("wheel", "chain", ls.final_ratio(setup.front, setup.rear), f"{setup.rear}:{setup.front}",
         passed.get("chain efficiency", whole))  # fmt: skip
    return stages


def _ribbon(ax: Axes, stages: list[float], foot: float, up: int, colour: str, fill: str, hatch: str) -> list[Any]:
    """A band of changing width: a box for each stage, and between two of them a slope."""
    from matplotlib.patches import Polygon

    widest = max(stages)
    boxes = []
    for i, value in enumerate(stages):
        edge = foot + up * HIGH * value / widest
        corners = [(i - HALF, foot), (i + HALF, foot), (i + HALF, edge), (i - HALF, edge)]
        boxes.append(ax.add_patch(Polygon(corners, facecolor=fill, edgecolor=colour, lw=1.2, hatch=hatch, zorder=2)))
        if i:
            before = foot + up * HIGH * stages[i - 1] / widest
            slope = [(i - 1 + HALF, foot), (i - HALF, foot), (i - HALF, edge), (i - 1 + HALF, before)]
            ax.add_patch(Polygon(slope, facecolor=fill, edgecolor="none", alpha=0.6, zorder=1))
    return boxes


def drivetrain(
    machine: ls.Machine,
    setup: ls.Setup | None = None,
    *,
    gear: int,
    engine_speed: ls.AngularSpeed | str,
    torque: ls.Torque | str | None = None,
    ax: Axes | None = None,
    units: Units = "metric",
) -> Artists:
    """Draws torque and speed from the engine to the road: as the one falls the other rises, and the power stays.

    The upper band's width is the torque, the lower one's the speed; both are as wide at their widest. Below stands the
    power of each shaft and what is lost on the way, as far as the library tells it for this machine.

    Args:
        machine: The machine.
        setup: Its sprockets and tyre; the machine's own if left out.
        gear: 1 to as many as there are.
        engine_speed: Of the engine, or of the crank of a cycle: above 0, and where a torque is known within the
            engine's curve and the rev limit.
        torque: Of the engine there. If left out, what its curve gives at full throttle; of a machine that states no
            engine, speeds alone are drawn.
        ax: Axes to draw into; if left out, those of a new figure.
        units: ``"metric"`` (Nm, kW, km/h, N) or ``"us"`` (lbf ft, hp, mph, lbf).

    Returns:
        Artists by name, each a list from engine to wheel: ``"torque bands"`` and ``"speed bands"`` (polygons; the
        height is the width of the band), ``"boxes"`` (names of the shafts), ``"ratios"``, ``"torques"``, ``"speeds"``,
        ``"powers"``, ``"losses"`` (texts), and ``"road"`` (speed, thrust), ``"tyre"``, ``"title"``. Without a torque,
        what tells it is empty.

    Raises:
        RangeError: Gear, speed, torque or units are out of range.
        Error: The machine or the set-up do not go together.
        TypeError: An argument of another kind.

    Example:
        >>> import layshaft as ls
        >>> box = ls.Gearbox(gears=[2.0], idle="1000 rpm", rev_limit="9000 rpm")
        >>> own = ls.Setup(front=15, rear=45, circumference="2 m")
        >>> bike = ls.Machine(name="A bike", gearbox=box, adjuster=ls.Adjuster("600 mm", "640 mm"), chain="520",
        ...                   speedometer="front wheel", stock=own)
        >>> drawn = ls.plots.drivetrain(bike, gear=1, engine_speed="6000 rpm")
        >>> [text.get_text() for text in drawn["speeds"]]
        ['6000 rpm', '3000 rpm', '1000 rpm']
        >>> drawn["road"][0].get_text()
        '120.0 km/h'
    """
    expect("machine", machine, ls.Machine, "Machine.from_json(text)")
    setup = machine.stock if setup is None else setup
    expect("setup", setup, ls.Setup, "machine.stock")
    unit_of("speed", units)
    engine_speed = ls.AngularSpeed(engine_speed)
    road = ls.explain(machine, setup, "road speed", gear=gear, engine_speed=engine_speed)
    told = {step.name: step.runs.get("nominal", step.result) if step.runs else step.result for step in road.steps}
    circumference = told["circumference"]
    overall = told["overall ratio"]
    speed = ls.road_speed(engine_speed, overall, circumference)

    thrust = None
    passed: dict[str, float] = {}
    if torque is not None:
        torque = ls.Torque(torque)
        if not torque > 0 * ls.Nm:
            raise ls.RangeError(f"torque is {ls.show(torque)}; expected more than 0")
        passed = _efficiencies(_with_torque(machine, torque, engine_speed), setup, gear, speed)
    elif machine.engine is not None:
        torque = _curve(machine.engine).torque(engine_speed)
        passed = _efficiencies(machine, setup, gear, speed)
    stages = _through(machine, setup, gear, engine_speed, torque, passed)
    if torque is not None:
        thrust = ls.drive_thrust(torque, overall, passed["drive efficiency"], circumference)
    ax = axes_for(ax, 6.4, 4.0 if torque is not None else 2.7)
    return _draw(ax, machine, stages, speed, thrust, circumference, units)


def _power(power: Any, units: Units) -> str:
    """As the library shows it, but a rider's in watts, or hundredths of a horsepower."""
    if units == "metric" and power < ls.kW:
        return f"{power / ls.W:.0f} W"
    return f"{power / ls.hp:.2f} hp" if units == "us" and power < ls.hp else ls.show(power, units)


def _draw(ax: Axes, machine: ls.Machine, stages: list[_Stage], speed: Any, thrust: Any, circumference: Any,
          units: Units) -> Artists:  # fmt: skip
    count, last = len(stages), len(stages) - 1
    pulls = thrust is not None
    drawn: Artists = {key: [] for key in ("torque bands", "speed bands", "boxes", "ratios", "torques", "speeds",
                                          "powers", "losses", "road")}  # fmt: skip

    def write(x: float, y: float, text: str, colour: str = INK, va: str = "center", **more: Any) -> Any:
        return ax.text(x, y, text, ha=more.pop("ha", "center"), va=va, color=colour, fontsize=SMALL, zorder=5, **more)

    top = TORQUE_AT + HIGH + 0.3 if pulls else TORQUE_AT
    if pulls:
        drawn["torque bands"] = _ribbon(ax, [s.torque / ls.Nm for s in stages], TORQUE_AT, 1, RUST, PALE_RUST, "")
    drawn["speed bands"] = _ribbon(ax, [s.speed / ls.rpm for s in stages], SPEED_AT, -1, BLUE, PALE_BLUE, "")
    fastest = max(s.speed for s in stages)
    strongest = max(s.torque for s in stages) if pulls else None
    between = (TORQUE_AT + SPEED_AT) / 2
    box = {"boxstyle": "round,pad=0.3", "facecolor": "white", "edgecolor": INK, "linewidth": 0.9}
    for i, stage in enumerate(stages):
        drawn["boxes"].append(write(i, between, stage.name, bbox=box))
        edge = SPEED_AT - HIGH * (stage.speed / fastest)
        drawn["speeds"].append(write(i, edge - 0.06, ls.show(stage.speed, units), BLUE, "top"))
        if i:
            ax.annotate("", (i - HALF + 0.02, between), (i - 1 + HALF - 0.02, between), zorder=4,
                        arrowprops={"arrowstyle": "-|>", "color": INK, "lw": 0.9})  # fmt: skip
            pair = f"\n{stage.pair}" if stage.pair else ""
            drawn["ratios"].append(write(i - 0.5, top, f"{stage.by}{pair}\n× {stage.ratio:.3g}", va="bottom"))
        if pulls:
            edge = TORQUE_AT + HIGH * (stage.torque / strongest)
            drawn["torques"].append(write(i, edge + 0.05, ls.show(stage.torque, units), RUST, "bottom"))
            drawn["powers"].append(write(i, POWER_AT, _power(ls.engine_power(stage.torque, stage.speed), units)))
            if stage.passed is not None:
                drawn["losses"].append(write(i - 0.5, POWER_AT - 0.27, f"−{100 * (1 - stage.passed):.1f} %", FAINT))
    # the road: the last box, past the wheel
    drawn["boxes"].append(write(count, between, "road", bbox=box))
    ax.annotate("", (count - HALF + 0.02, between), (last + HALF - 0.02, between), zorder=4,
                arrowprops={"arrowstyle": "-|>", "color": INK, "lw": 0.9})  # fmt: skip
    drawn["tyre"] = write(last + 0.5, top, f"tyre\n{ls.show(circumference, units)}\na turn", va="bottom")
    drawn["road"].append(write(count, SPEED_AT - 0.28, ls.show(speed, units), BLUE, "top"))
    if pulls:
        drawn["road"].append(write(count, TORQUE_AT + 0.2, ls.show(thrust, units), RUST, "bottom"))
        drawn["powers"].append(write(count, POWER_AT, _power(thrust * speed, units)))
        write(-0.42, TORQUE_AT + HIGH / 2, "torque", RUST, ha="right")
        write(-0.42, POWER_AT, "power", ha="right")
        if drawn["losses"]:
            write(-0.42, POWER_AT - 0.27, "lost", FAINT, ha="right")
    write(-0.42, SPEED_AT - HIGH / 2, "speed", BLUE, ha="right")
    ax.set_xlim(-0.95, count + 0.45)
    ax.set_ylim(POWER_AT - 0.45 if pulls else SPEED_AT - HIGH - 0.3, top + 0.75)
    ax.set_axis_off()
    drawn["title"] = title(ax, f"{machine.name}: from the {stages[0].name} to the road")
    return drawn
