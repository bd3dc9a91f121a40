# SPDX-License-Identifier: MIT
"""Quantities as C++ reads them against a reader of a few lines of Python, over mutated texts.

    against_python.py READ_QUANTITIES SECONDS [SEED]

The reader below knows the units by their definitions alone (SI brochure, 9th edition; the international yard and pound of
1959; standard gravity) and leaves the number to Python's float. Ends with the number of texts, or at the first difference.
"""

from __future__ import annotations

import math
import random
import re
import subprocess
import sys
import time

NUMBER = re.compile(r"(?:\+(?!-))?(-?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)")
SPACES = re.compile("(?:[ \t]|\u00a0|\u202f|\u2009)*")
POUND = 0.45359237
UNITS = {
    "Length": {"mm": 1e-3, "cm": 1e-2, "m": 1.0, "km": 1e3, "inch": 0.0254, "in": 0.0254, "mile": 1609.344},
    "Speed": {"km/h": 1.0 / 3.6, "kmh": 1.0 / 3.6, "mph": 0.44704, "m/s": 1.0, "mps": 1.0},
    "Mass": {"kg": 1.0, "g": 1e-3, "lb": POUND},
    "Torque": {"Nm": 1.0, "N m": 1.0, "lbf ft": POUND * 9.80665 * 0.3048, "lbf_ft": POUND * 9.80665 * 0.3048},
    "AngularSpeed": {"rpm": math.pi / 30.0, "rad/s": 1.0},
}
CLOSE = 4e-16  # a unit's own last bit, and the product's
PIECES = ["1", "0", "9", ".", "e", "E", "-", "+", " ", "\t", "\u00a0", "\u2009", "x", "1e5", "e-3", "inf", "nan", "0x1", ",",
          "m", "/", "'", "\u00b2", "1e308", "4e-324", "000"]  # fmt: skip
BATCH = 50_000


def read(kind: str, text: str) -> float | None:
    text = text.strip(" \t")
    number = NUMBER.match(text)
    if number is None:
        return None
    value = float(number[1])
    if math.isinf(value) or (value == 0.0 and re.search("[1-9]", re.split("[eE]", number[1])[0])):
        return None  # too large, too small
    spaces = SPACES.match(text, number.end())
    assert spaces is not None
    unit = UNITS[kind].get(text[spaces.end() :])
    return None if unit is None or math.isinf(value * unit) else value * unit


def mutated(draw: random.Random) -> tuple[str, str]:
    kind = draw.choice(list(UNITS))
    unit = draw.choice(list(UNITS[kind if draw.random() < 0.9 else draw.choice(list(UNITS))]))
    number = repr(draw.choice([draw.uniform(-1e3, 1e3), draw.randint(-99, 9999), 10 ** draw.uniform(-320, 308)]))
    text = number + draw.choice(["", " ", "  ", "\u202f"]) + unit
    for _ in range(draw.choice([0, 0, 1, 1, 2, 3])):
        place = draw.randint(0, len(text))
        match draw.randint(0, 2):
            case 0:
                text = text[:place] + draw.choice(PIECES) + text[place:]
            case 1:
                text = text[:place] + text[place + draw.randint(1, 2) :]
            case _:
                text = text[:place] + draw.choice(PIECES) + text[place + 1 :]
    return kind, text


def differs(expected: float | None, told: str) -> bool:
    if expected is None or told == "!":
        return (expected is None) != (told == "!")
    value = float.fromhex(told)
    return abs(value - expected) > max(CLOSE * abs(expected), 5e-324)


def main(program: str, seconds: float, seed: int = 20261126) -> int:
    draw = random.Random(seed)
    began = time.monotonic()
    done = read_alike = 0
    while time.monotonic() - began < seconds:
        texts = [mutated(draw) for _ in range(BATCH)]
        lines = "".join(f"{kind}\t{text}\n" for kind, text in texts)
        told = (
            subprocess.run([program], input=lines.encode(), capture_output=True, check=True).stdout.decode().split("\n")
        )
        for (kind, text), answer in zip(texts, told[:-1], strict=True):
            expected = read(kind, text)
            if differs(expected, answer):
                print(f"{kind} {text!r}: C++ reads {answer}, Python {expected!r}")
                return 1
            read_alike += expected is not None
        done += BATCH
    print(f"{done} executions, {read_alike} of them of quantities")
    return 0 if read_alike > done / 20 else 1  # texts that are all refused would prove little


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], float(sys.argv[2]), *map(int, sys.argv[3:])))
