# SPDX-License-Identifier: MIT
"""What the parameters of a formula are on a motorcycle or a bicycle, in SI: by word, else by type."""

from __future__ import annotations

# The whole counts: what they are on a machine, and what their types allow.
COUNTS = {"Teeth": (9, 70), "Links": (80, 200)}
ENDS_OF_COUNTS = {"Teeth": (4, 1000), "Links": (4, 10000)}

SPANS = {
    "Length": (0.001, 3.0), "Speed": (0.1, 80.0), "AngularSpeed": (1.0, 1600.0), "Angle": (-1.2, 1.2), "Force": (1.0, 9000.0),
    "double": (0.05, 40.0), "pitch": (0.004, 0.12), "centre": (0.35, 3.0), "front_pitch_diameter": (0.03, 0.3),
    "rear_pitch_diameter": (0.03, 0.4), "roller_diameter": (0.002, 0.06), "aspect_ratio": (25.0, 110.0), "links": (80.0, 200.0),
    "reading_error": (-0.3, 0.5), "speed_change": (-0.9, 3.0), "distance": (1.0, 1e6), "slack": (0.0, 0.1),
    "overall_diameter": (0.4, 0.9), "rim_diameter": (0.2, 0.6), "rear_added": (-6.0, 6.0), "front_removed": (-3.0, 3.0),
    "tyre_growth": (-0.2, 0.2), "height_factor": (0.9, 1.2), "factor": (0.2, 5.0), "ratio": (0.2, 5.0),
    "elongation": (0.0, 0.05), "links_at_end": (80.0, 200.0), "loop_links": (80.0, 200.0), "spare_length": (0.0, 0.05),
    "layshaft_ahead": (0.02, 0.15), "layshaft_above": (0.0, 0.1), "arm": (0.4, 0.8), "arm_angle": (0.0, 0.6),
    "tread_worn": (0.0, 0.02), "base_efficiency": (0.5, 1.0), "trial_efficiency": (0.5, 1.0),
    "altitude": (-1000.0, 11000.0), "geopotential_height": (-1000.0, 11000.0), "earth_radius": (6.3e6, 6.4e6), "lapse_height": (44e3, 45e3),
    "sea_level_temperature": (285.0, 291.0), "standard_temperature": (216.0, 290.0), "pressure_exponent": (5.0, 5.5),
    "trial_labour": (0.0, 1.0), "worn_out_share": (0.01, 0.99), "link_kinds": (1.0, 2.0), "rated_power": (1e3, 1e5), "unladen_mass": (50.0, 300.0), "coasting_bend": (-0.9, 5.0), "driving_slip": (0.0, 0.5),
    "climb_share": (0.0, 0.9), "rolling_share": (0.0, 0.1), "grip": (0.1, 1.0), "shift_share": (0.0, 0.6), "wheelbase": (1.2, 1.6), "centre_ahead": (0.4, 0.8), "centre_height": (0.4, 0.9),
}  # fmt: skip
ANYTHING_ELSE = (0.2, 3.0)


def span(kind: str, word: str) -> tuple[float, float]:
    return SPANS.get(word, SPANS.get(kind, ANYTHING_ELSE))
