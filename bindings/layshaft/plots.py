# SPDX-License-Identifier: MIT
"""Pictures that explain, with matplotlib: each a function that draws into your axes, or into a new figure.

Every one takes ``ax=None`` (a new figure) and ``units="metric"`` or ``"us"``, and returns its artists as a dict, so
that each can be changed afterwards. Nothing global is touched: neither rcParams nor style nor backend.
``COLOURS`` names the colours, which people who lack one kind of cone tell apart as well.

>>> import layshaft as ls
>>> drawn = ls.plots.chain_loop(ls.ChainLoop("520", 13, 50), "615 mm", units="us")
>>> drawn["note"].set_color(ls.plots.COLOURS["plum"])
"""

from __future__ import annotations

try:
    import matplotlib as _matplotlib  # noqa: F401
except ImportError as _problem:  # pragma: no cover
    raise ImportError("layshaft.plots needs matplotlib 3.8: pip install 'layshaft[plots]'") from _problem

from ._plots.choice import space as space
from ._plots.choice import trade_off as trade_off
from ._plots.common import COLOURS as COLOURS
from ._plots.flow import drivetrain as drivetrain
from ._plots.loop import chain_loop as chain_loop
from ._plots.road import gear_ranges as gear_ranges
from ._plots.road import speed_over_engine_speed as speed_over_engine_speed
from ._plots.road import thrust_diagram as thrust_diagram
from ._plots.slack import slack_over_travel as slack_over_travel
from ._plots.strip import what_if as what_if
from ._plots.wear import circumference_over_wear as circumference_over_wear
from ._plots.wear import contact_map as contact_map
from ._plots.wear import stretch as stretch
from ._plots.wear import wear_weights as wear_weights

__all__ = [
    "COLOURS",
    "chain_loop",
    "circumference_over_wear",
    "contact_map",
    "drivetrain",
    "gear_ranges",
    "slack_over_travel",
    "space",
    "speed_over_engine_speed",
    "stretch",
    "thrust_diagram",
    "trade_off",
    "wear_weights",
    "what_if",
]
