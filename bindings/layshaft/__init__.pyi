# SPDX-License-Identifier: MIT
from . import arrays as arrays
from . import gpx as gpx
from . import report as report
from ._core import *
from ._core import __version__ as __version__
