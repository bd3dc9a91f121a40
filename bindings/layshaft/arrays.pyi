# SPDX-License-Identifier: MIT
from ._array_tyres import parse_tyres as parse_tyres
from ._arrays import *

__all__: list[str]
