# SPDX-License-Identifier: MIT
"""A text of each form that the library reads, with every key that it knows somewhere in them, by the name of its file."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from typing import Any

import layshaft as ls
from layshaft import gpx
from values import BIKE

CHAIN_MADE = {
    "seal": "shaped",
    "pin_diameter": "5.2 mm",
    "tensile_strength": "36 kN",
    "mass_per_length": "1.6 kg/m",
    "plate_height": "15 mm",
    "joint_friction": {"low": 0.08, "nominal": 0.1, "high": 0.15},
    "seal_drag": {"low": "0.01 Nm", "nominal": "0.02 Nm", "high": "0.05 Nm"},
}
SETUP = {"layshaft": 1, "front": 13, "rear": 50, "tyre": "120/90-18 M/C 65R TT", "tyre_use": "special"}
SETUPS = {
    "setup_worn.json": {
        **SETUP,
        "tread": {"new_depth": "12 mm", "depth": "5 mm", "least": "2 mm", "distance": "4000 km"},
        "chain": "520",
        "links": 112,
        "drive_efficiency": {"low": 0.93, "nominal": 0.95, "high": 0.98},
        "front_tyre": "90/90-21 M/C 54R TT",
        "front_tyre_use": "special",
        "chain_made": CHAIN_MADE,
        "front_material": "hardened steel",
        "rear_material": "aluminium 7000",
    },
    "setup_tread_worn.json": {**SETUP, "tread_worn": "3.25 mm", "drive_efficiency": 0.96},
    "setup_measured.json": {
        "layshaft": 1,
        "front": 38,
        "rear": 19,
        "circumference": {"low": "1555 mm", "nominal": "1560 mm", "high": "1565 mm"},
    },
}
QUESTION = {
    "layshaft": 1,
    "space": {
        "present": {"front": 13, "rear": 48, "tyre": "120/80-18", "links": 110},
        "fronts": [12, {"teeth": 13, "material": "hardened steel", "price": 20, "labour": 15}],
        "rears": [48, 50, 52],
        "tyres": [
            "120/90-18",
            {"tyre": "110/90-18", "tyre_use": "special", "circumference": "2 m", "price": {"low": 7, "nominal": 8, "high": 9}},
        ],
        "chains": [{"chain": "520", "chain_made": CHAIN_MADE, "longest": 114, "price": 90}],
        "links": [110, 112],
    },
    "goals": {
        "limits": [{"measure": "engine speed", "gear": 3, "speed": "60 km/h", "least": "3000 rpm", "most": "7000 rpm"}],
        "wishes": [{"measure": "thrust change", "target": 0.05, "weight": 2}, {"measure": "links", "want": "less"}],
        "robust": True,
    },
}  # fmt: skip
RIDE = """# invented
time_s,speed_kmh,height_m,engine_rpm,indicated_kmh,odometer_km,heart_rate
0,12.5,612,1500,13,1204.25,90
1,13.1,612.5,1570,13.6,1204.2536,91
2.5,"14",613,1680,14.5,1204.259,92
"""
RIDE_OTHER_UNITS = "speed_mph;time_s;indicated_mph;odometer_mile\r\n30;0;31;100\r\n31;1;32;100.0085\r\n"
RIDE_METRES = "time_s\tspeed_mps\n0\t3.4\n1\t3.5\n"
TRACK = """<?xml version="1.0"?>
<gpx version="1.1" xmlns="https://example.org/gpx"><trk><name>invented</name><trkseg>
<trkpt lat="59.0000" lon="17"><ele>12.5</ele><time>2031-06-01T18:00:00Z</time></trkpt>
<trkpt lat="59.0001" lon="17"><ele>12.75</ele><time>2031-06-01T20:00:01.5+02:00</time></trkpt>
<trkpt lat="59.0003" lon="17"><ele>13</ele><time>2031-06-01T18:00:03Z</time></trkpt>
</trkseg></trk></gpx>
"""


def _machines() -> dict[str, Any]:
    bike = json.loads(BIKE)
    motor: dict[str, Any] = copy.deepcopy(bike)
    motor["engine"] = {
        "curve": {
            "speeds": ["1000 rpm", "4000 rpm", "9000 rpm"],
            "torques": ["60 Nm", "60 Nm", "26.7 Nm"],
            "constant_power": [False, True, False],
            "measured_at": "crank",
            "torque_factor": 0.9,
        },
        "braking": {"low": "2 Nm", "nominal": "4 Nm", "high": "8 Nm"},
        "start_speed": "1500 rpm",
    }
    motor["road_load"] = {
        "constant": "40 N",
        "linear": "1.5 N s/m",
        "quadratic": "0.3 kg/m",
        "mass": "225 kg",
        "head_wind": "5 km/h",
        "kind": "coast-down",
    }
    motor["tyre_asked"] |= {"tyres_on_axle": 2, "width_clearance": "18 mm"}
    motor["suspension"]["arm_rear"] = "590 mm"
    estimated: dict[str, Any] = copy.deepcopy(bike)
    rating = {"torque": "25 Nm", "torque_speed": "6500 rpm", "power": "19 kW", "power_speed": "8000 rpm"}
    estimated["engine"]["curve"] = {"estimate": {**rating, "lowest": "1500 rpm", "highest": "9000 rpm"}}
    estimated["engine"]["curve"]["estimate"]["measured_at"] = "rear wheel"
    estimated["road_load"] = {"by_mass": "225 kg", "air_density": "1.1 kg/m3", "head_wind": "10 km/h"}
    drawn: dict[str, Any] = copy.deepcopy(bike)
    speeds = ["2500 rpm", "9000 rpm"]
    drawn["engine"]["curve"] = {
        "low": {"speeds": speeds, "torques": ["17 Nm", "19 Nm"], "estimated": True},
        "nominal": {"speeds": speeds, "torques": ["18 Nm", "20 Nm"], "estimated": True},
        "high": {"speeds": speeds, "torques": ["19 Nm", "21 Nm"], "estimated": True},
    }
    drawn["road_load"] = {
        "mass": "225 kg",
        "rolling_coefficient": 0.02,
        "drag_area": {"low": "0.5 m2", "nominal": "0.6 m2", "high": "0.7 m2"},
        "air_density": {"low": "1.1 kg/m3", "nominal": "1.2 kg/m3", "high": "1.25 kg/m3"},
    }
    drawn["drive_efficiency"] = 0.9
    drawn["peak_torque"] = {"torque": "25 Nm", "engine_speed": "6500 rpm"}
    return {
        "machine.json": bike,
        "machine_motor.json": motor,
        "machine_estimated.json": estimated,
        "machine_drawn.json": drawn,
    }


def texts() -> dict[str, str]:
    """The texts, and those that the library itself writes of what it reads there."""
    made = {**_machines(), **SETUPS, "question.json": QUESTION}
    all_of_them = {name: json.dumps(one, indent=1, ensure_ascii=False) + "\n" for name, one in made.items()}
    written = {f"written_{name}": read(name, text).to_json() for name, text in all_of_them.items() if name[0] in "ms"}
    rides = {"ride.csv": RIDE, "ride_other_units.csv": RIDE_OTHER_UNITS, "ride_metres.csv": RIDE_METRES}
    return {**all_of_them, **written, **rides, "ride.gpx": TRACK}


_READERS: dict[str, Callable[[str], Any]] = {
    "machine": ls.Machine.from_json,
    "setup": ls.Setup.from_json,
    "question": ls.question_from_json,
    "ride.gpx": gpx.read_gpx,
    "ride": ls.read_ride_log,
}


def read(name: str, text: str) -> Any:
    """What the library reads in the text of a file of that name."""
    kind = name.removeprefix("written_")
    return next(reader for begin, reader in _READERS.items() if kind.startswith(begin))(text)
