# SPDX-License-Identifier: MIT
"""What a recorded ride does on a machine: which gears it takes, and the thrust that wears as much as all of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import layshaft as ls

if TYPE_CHECKING:
    from pathlib import Path

UP, DOWN = 0.62, 0.36  # of the engine's limit: where the rider is taken to shift


def ride_on(machine: ls.Machine, setup: ls.Setup, log: ls.RideLog, *, recorded_gears: bool) -> ls.RideUse:
    """What the ride does on a set-up: in the gears as recorded, or shifting at fixed engine speeds."""
    appraisal = ls.appraise(machine, setup)
    limit = machine.gearbox.rev_limit
    circumference = appraisal.circumference.nominal
    rule = ls.ShiftRule.at_engine_speeds(UP * limit, DOWN * limit, appraisal.overall_ratios, circumference)
    if not recorded_gears:
        log = ls.RideLog(time_s=log.time_s, speed_kmh=log.speed_kmh, height_m=log.height_m, gap=log.gap)
    load = None
    if machine.road_load is not None and machine.body is not None:
        load = ls.RideLoad(road=machine.road_load, mass=machine.body.mass)
    return ls.ride_use(log, appraisal.overall_ratios, circumference, rule, load=load)


def mean_thrust(machine: ls.Machine, setup: ls.Setup, ride: Path) -> ls.Force | None:
    """The mean thrust of a recorded ride; None for a machine whose load is not known."""
    log = ls.read_ride_log(ride.read_text(encoding="utf-8"))
    return ride_on(machine, setup, log, recorded_gears=True).mean_thrust
