# SPDX-License-Identifier: MIT
"""A value of each kind that pickles, by name. Names stay: a kept pickle is held against the value of its name."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path
from typing import Any

import layshaft as ls
from layshaft import arrays, exercises

TOP = Path(__file__).resolve().parents[2]
SWINGARM = {
    "layshaft_ahead": "75 mm",
    "layshaft_above": "10 mm",
    "arm": "555 mm",
    "droop": "18 deg",
    "rest": "12 deg",
    "bump": "-6 deg",
}
RIDE: dict[str, Any] = {
    "time_s": [0.5 * i for i in range(400)],
    "speed_kmh": [20.0 + 0.2 * (i % 200) for i in range(400)],
    "height_m": [600.0 + 0.01 * i for i in range(400)],
    "engine_rpm": [(20.0 + 0.2 * (i % 200)) * (100.0 if i % 200 < 100 else 70.0) for i in range(400)],
    "indicated_kmh": [21.0 + 0.21 * (i % 200) for i in range(400)],
    "odometer_km": [1200.0 + 0.006 * i for i in range(400)],
}
#: Invented: a bike that states all that a machine can state.
BIKE = """{
  "layshaft": 1, "name": "Thistle 280 — kept", "kind": "motorcycle",
  "gearbox": {"primary": {"driving": 22, "driven": 69}, "gears": [{"driving": 14, "driven": 36}, 1.75, 1.2],
    "idle": "1400 rpm", "lowest_pull": "2500 rpm", "rev_limit": "9000 rpm"},
  "adjuster": {"centre_min": "600 mm", "centre_max": "650 mm", "slack": "30 mm"},
  "chain": "520",
  "speedometer": {"sensor": "rear wheel", "reading_error": {"low": 0.01, "nominal": 0.04, "high": 0.06}},
  "stock": {"front": 13, "rear": 48, "tyre": "120/80-18 M/C 62R TT", "tyre_use": "special", "links": 110},
  "tyre_asked": {"axle_load": "200 kg", "top_speed": "120 km/h", "radius_clearance": "30 mm"},
  "suspension": {"layshaft_ahead": "70 mm", "layshaft_above": "20 mm", "arm": "550 mm", "droop": "19 deg",
    "rest": "14 deg", "bump": "-5 deg"},
  "engine": {"curve": {"speeds": ["2500 rpm", "5000 rpm", "7000 rpm", "9000 rpm"],
      "torques": ["18 Nm", "23 Nm", "25 Nm", "20 Nm"]}, "inertia": "0.009 kg m2", "clutch_torque": "55 Nm"},
  "body": {"mass": "225 kg", "wheelbase": "1440 mm", "centre_ahead": "660 mm", "centre_height": "870 mm",
    "wheel_inertia": "1 kg m2"},
  "road_load": {"mass": "225 kg", "surface": "asphalt", "machine": "motorcycle"}
}"""


def _error(make: Callable[[], object]) -> ls.Error:
    try:
        make()
    except ls.Error as error:
        return error
    raise AssertionError("an error was expected")


def values() -> dict[str, Any]:
    bike = ls.Machine.from_json(BIKE)
    trial = ls.Setup(front=13, rear=50, tyre=ls.TyreSize("120/90-18 M/C 65R", use="special"), links=112)
    comparison = ls.compare(bike, bike.stock, trial)
    road = comparison.trial.road
    assert road is not None and bike.road_load is not None
    part = ls.CostPart(price=20.0, life=ls.Band(9000 * ls.km, 12000 * ls.km, 15000 * ls.km))
    costs = ls.DriveCosts(chain=part, front=part, rear=part)
    loop = ls.ChainLoop("520", 13, 50)
    arm = ls.Suspension(**SWINGARM)
    through = ls.slack_through_travel(arm, loop, 112, slack="35 mm")
    curve = ls.EngineCurve([i * 1000 * ls.rpm for i in range(1, 6)], [i * ls.Nm for i in (3, 5, 6, 6, 4)])
    body = ls.Body(mass="220 kg", wheelbase="1.45 m", centre_ahead="0.68 m", centre_height="0.72 m")
    rule = ls.ShiftRule(["20 km/h", "40 km/h"], ["10 km/h", "25 km/h"])
    log = ls.RideLog(**RIDE)
    shares = [ls.RideShare("trail", 0.5, "30 km/h", slope=0.02), ls.RideShare("highway", 0.5, "90 km/h", gear=2)]
    plain_road = ls.RoadLoad(constant="40 N", linear="1.5 N s/m", quadratic=0.02 * ls.N_per_kmh2, mass="200 kg")
    space = ls.Space(
        fronts=[12, ls.SprocketOffer(13, material="hardened steel", price=20, labour=10)],
        rears=[46, 48, 50, 52],
        tyres=["120/90-18", ls.TyreOffer("110/90-18", circumference="2 m", price=80)],
        chains=[ls.ChainOffer(longest=114, price=ls.Band(80.0, 90.0, 100.0))],
        links=[110, 112],
        present=bike.stock,
    )
    limit = ls.Limit("engine speed", most="7000 rpm", speed="60 km/h", gear=3)
    wish = ls.Wish("thrust change", 0.05, weight=2.0)
    goals = ls.Goals(limits=[limit], wishes=[wish, ls.Wish("links", "less")], robust=True)
    tight = ls.Goals(limits=[ls.Limit("rear teeth", most=40)], wishes=[wish])
    choice = ls.choose(bike, space, goals, progress=False)
    impossible = ls.choose(bike, space, tight, progress=False)
    stretch = ls.fit_stretch(
        "15.875 mm",
        [ls.StretchMeasurement(f"{1000 * i} km", f"{1587.5 + i} mm", 100) for i in range(1, 5)],
    )
    speeds = [f"{20 - i} m/s" for i in (0, 2, 3.8, 5.4, 6.9, 8.2)]
    fit = ls.fit_coast_down([f"{5 * i} s" for i in range(6)], speeds, "200 kg")
    fitness = ls.tyre_fitness("120/90-18 M/C 65R", ls.TyreAsked(axle_load="205 kg", top_speed="128 km/h"))
    working = ls.explain(bike, trial, "overall ratio", gear=2)
    run = ls.time_to_speed(bike, trial, bike.road_load, "0 km/h", "60 km/h")
    costs_after = ls.costs_after(comparison, costs)
    plans = ls.replacement_plans("20000 km", costs)
    topic = exercises.TOPICS[0]
    return {
        "Acceleration": 9.81 * ls.mps2,
        "Adjuster": ls.Adjuster("600 mm", "640 mm", slack="30 mm"),
        "Air": ls.air_at("1500 m", "300 K"),
        "Angle": 3.5 * ls.deg,
        "AngularSpeed": 6500 * ls.rpm,
        "AnsiToothForm": ls.AnsiToothForm(ls.Sprocket("40", 17)),
        "Appraisal": comparison.trial,
        "Area": 0.6 * ls.m2,
        "Band": ls.Band(1 * ls.m, 2 * ls.m, 3 * ls.m),
        "Band of numbers": ls.Band(0.1, 0.2, 0.4),
        "BestClimb": road.gears[0].climb,
        "Body": body,
        "BreakEven": ls.break_even(part, ls.CostPart(price=30.0, life=18000 * ls.km)),
        "Caution": comparison.trial.cautions[0],
        "Cautions": comparison.trial.cautions,
        "CentreMethods": ls.centre_methods(loop, 112),
        "ChainDrive": comparison.trial.drive,
        "ChainDuty": ls.ChainDuty(torque="50 Nm", shaft_speed="1000 rpm", spike=1.5),
        "ChainFit": comparison.trial.chain,
        "ChainListing": ls.chain_listings("08B")[0],
        "ChainLoads": comparison.trial.drive.loads,
        "ChainLoop": loop,
        "ChainMade": ls.ChainMade(seal="O-ring", pin_diameter="5.1 mm", seal_drag=ls.Band(0.01 * ls.Nm, 0.02 * ls.Nm, 0.05 * ls.Nm)),
        "ChainOffer": space.chains[0],
        "ChainSeries": ls.ChainSeries("08B narrow"),
        "Choice": choice,
        "Choice of none": impossible,
        "Chosen": choice.ranked[0],
        "Clearance": ls.chain_clearance(arm, loop, "585 mm", ls.Obstacle("-100 mm", "20 mm", "15 mm", on_arm=True), "15 mm"),
        "CloseSize": ls.closest_sizes("120/80-18", 0.03)[0],
        "CoastDownFit": fit,
        "Comparison": comparison,
        "CostChange": costs_after,
        "CostPart": part,
        "Density": 1.2 * ls.kg_per_m3,
        "DepthReading": ls.DepthReading(depth="6 mm", odometer="1000 km"),
        "DistanceLeft": stretch.distance_left(0.03),
        "Downshift": comparison.trial.downshift(2, "40 km/h"),
        "DragArea": ls.drag_area("scooter"),
        "DriveCosts": costs,
        "Duration": 12 * ls.s,
        "Energy": 1200 * ls.J,
        "EnergyBalance": run.energy,
        "Engagement": comparison.trial.drive.engagement,
        "Engine": bike.engine,
        "EngineCurve": curve,
        "EngineEstimate": ls.estimate_engine(torque="21 Nm", torque_speed="6500 rpm", power="16.5 kW", power_speed="8500 rpm", lowest="1500 rpm", highest="9800 rpm"),
        "EnginePeak": curve.peak_power,
        "Error": _error(lambda: ls.Setup(front=13, rear=50)),
        "Exercise": exercises.exercise(topic, 7),
        "FitnessCheck": fitness.check("load"),
        "Flip": ls.Flip(factor=1.1, best=trial),
        "Force": 300 * ls.N,
        "ForcePerSpeed": ls.ForcePerSpeed("1.5 N s/m"),
        "GearOnRoad": road.gears[0],
        "GearPair": ls.GearPair(20, 61),
        "GearStepping": ls.gear_stepping(bike.gearbox),
        "GearSteps": ls.gear_stepping(bike.gearbox).own,
        "Gearbox": bike.gearbox,
        "Goals": goals,
        "GroundClimb": ls.steepest_on_ground(body, "gravel"),
        "Hunting": ls.hunting(14, 106),
        "HuntingPair": ls.better_hunting(14, 42, 110)[0],
        "InstrumentError": ls.instrument_error(log),
        "Interchange": ls.Interchange("530", "520"),
        "KeptChainPair": ls.pairs_for_chain(loop, 112, ls.Adjuster("580 mm", "660 mm", slack="30 mm"))[0],
        "LegalTread": ls.legal_tread("DE"),
        "Length": ls.Length("3.25 inch"),
        "Limit": limit,
        "LinearDensity": ls.LinearDensity("1.5 kg/m"),
        "LogGear": ls.machine_of_log(log).gears[0],
        "LogMachine": ls.machine_of_log(log),
        "Machine": bike,
        "Mass": 205 * ls.kg,
        "MomentOfInertia": ls.MomentOfInertia("1.05 kg m2"),
        "Obstacle": ls.Obstacle("-100 mm", "20 mm", "15 mm", on_arm=True),
        "OnRoad": road,
        "ParseError": _error(lambda: ls.TyreSize("110/90-1B")),
        "PartCost": ls.running_cost([part]).parts[0],
        "PeakTorque": bike.peak_torque,
        "PlanCost": plans.cheapest,
        "PolygonRipple": ls.polygon_ripple(loop, "620 mm"),
        "Power": ls.Power("16.5 kW"),
        "PowerRating": ls.power_ratings("40", 15, "1200 rpm"),
        "Pressure": ls.Pressure("101325 Pa"),
        "RangeError": _error(lambda: ls.load_capacity(500)),
        "Relaxation": impossible.relaxations[0],
        "ReplaceBy": ls.replace_by(ls.Band(1 * ls.km, 2 * ls.km, 3 * ls.km), datetime.date(2026, 11, 26), "2 km"),
        "ReplacementPlans": plans,
        "RideLoad": ls.RideLoad(road=plain_road, mass="220 kg"),
        "RideLog": log,
        "RideProfile": ls.RideProfile(shares),
        "RideShare": shares[1],
        "RideUse": ls.ride_use(ls.RideProfile(shares), [20.0, 15.0, 10.0], "2 m", rule, ridden="1 h"),
        "RoadLoad": plain_road,
        "RoadLoad from parts": ls.RoadLoad.from_parts(mass="220 kg", surface="sand", machine="motorcycle", air_density="1.1 kg/m3"),
        "RoadLoad by mass": ls.RoadLoad.by_mass("180 kg").in_wind("10 km/h"),
        "RuleOfThumb": comparison.rule_of_thumb,
        "RunningCost": ls.running_cost([part]),
        "Sensitivity": ls.Sensitivity(input="tyre size", below=None, above=ls.Flip(factor=1.1, best=trial)),
        "Setup": trial,
        "ShiftPoint": road.shifts[0],
        "ShiftRule": rule,
        "Slack": ls.Slack("12 mm", "sag of both runs"),
        "SlackLeft": comparison.trial.drive.slack,
        "SlackPoint": through.rest(),
        "SlackThroughTravel": through,
        "SmoothCurve": ls.SmoothCurve(curve),
        "Space": space,
        "Speed": 60 * ls.mph,
        "SpeedRange": comparison.trial.speed_range(2),
        "SpeedRun": run,
        "Speedometer": bike.speedometer,
        "SpeedometerReading": comparison.trial.speedometer,
        "Sprocket": ls.Sprocket("520", 14),
        "SprocketOffer": space.fronts[1],
        "Squat": ls.squat(arm, loop, "10 deg", wheel_radius="320 mm", mass_centre_height="0.72 m", wheelbase="1.45 m"),
        "StandingStart": road.start,
        "Step": working.result,
        "StretchFit": stretch,
        "StretchLimit": ls.wear_outlook(bike, trial).limit,
        "StretchMeasurement": ls.StretchMeasurement("1000 km", "1588 mm", 100),
        "Surface": ls.surface("loose gravel"),
        "Suspension": arm,
        "Temperature": ls.Temperature("300 K"),
        "ThrustLimit": ls.thrust_limit(body, 0.6, "5 deg"),
        "ThrustPoint": ls.thrust_diagram(bike, trial, bike.road_load, points=5)[0][0],
        "TightPoint": arm.tight_point(),
        "ToothShare": ls.tooth_shares(15, 5).teeth[0],
        "ToothShares": ls.tooth_shares(15, 5),
        "ToothWear": comparison.trial.wear,
        "TopSpeed": road.top_speed,
        "Torque": 21 * ls.Nm,
        "Tread": ls.Tread(new_depth="12 mm", depth="4 mm", least="1 mm"),
        "TreadRate": ls.tread_rate(ls.DepthReading(depth="8 mm", odometer="0 km"), ls.DepthReading(depth="6 mm", odometer="1000 km")),
        "TyreAsked": bike.tyre_asked,
        "TyreFitness": fitness,
        "TyreOffer": space.tyres[1],
        "TyreSize": ls.TyreSize("MT90B16", use="special"),
        "WearChange": comparison.wear,
        "WearOutlook": ls.wear_outlook(bike, trial),
        "Wish": wish,
        "Working": working,
        "array function": arrays.road_speed_kmh,
    }  # fmt: skip
