# SPDX-License-Identifier: MIT
from ._arrays import *
