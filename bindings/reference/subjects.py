# SPDX-License-Identifier: MIT
"""What the reference is made of: the one list of Python modules, and the one list of folders of headers."""

from __future__ import annotations

# A new module of the package needs one line here. The names of `layshaft` itself are grouped by the sections of its
# type stub, and those of a module by what its __all__ says; neither is listed again.
MODULES = {
    "arrays": "The formulas as NumPy ufuncs over plain numbers",
    "adapters": "Quantities of other libraries, let into the array functions",
    "frames": "Whole set-ups in bulk, frame in and frame out",
    "exercises": "Exercises for a class",
    "report": "Whole pages",
    "plots": "Pictures",
    "studies": "Every set-up of a space, and questions in words",
    "testing": "Hypothesis strategies for the tests of others",
    "gpx": "Recorded tracks",
    "fleet": "One study of many machines",
}

# A new folder under include/layshaft needs one line here; its headers are found.
FOLDERS = {
    "core": "Units, bands, errors, sources and formulas",
    "tyre": "Tyres",
    "gearing": "Gearing",
    "chain": "Chains and sprockets",
    "wear": "Wear, cost and replacement",
    "instrument": "Speedometer and odometer",
    "road": "Engine and road",
    "setup": "Machines, set-ups and what follows from them",
    "choose": "Choosing the whole set at once (opt-in)",
    "show": "Words, text, TeX and MathML for people (opt-in)",
    "io": "JSON and ride logs (opt-in)",
}
