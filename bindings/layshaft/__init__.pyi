# SPDX-License-Identifier: MIT
from . import adapters as adapters
from . import arrays as arrays
from . import exercises as exercises
from . import fleet as fleet
from . import frames as frames
from . import gpx as gpx
from . import plots as plots
from . import report as report
from . import studies as studies
from . import testing as testing
from ._core import *
from ._core import __version__ as __version__
from .choosing import choose as choose
