# SPDX-License-Identifier: MIT
"""A second reader of tyre markings, written from the grammar's text in designation.hpp and from the tables of
tests/reference/, to hold the C++ parser against. Regular expressions say the form, tables and ranges the meaning."""

from __future__ import annotations

import csv
import re
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

REFERENCE = Path(__file__).resolve().parents[1] / "reference"


def rows(name: str) -> list[dict[str, str]]:
    with open(REFERENCE / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


# --- Tables -----------------------------------------------------------------------------------------------------------
RIMS = {row["rim_code"] for row in rows("tyre_rim_code.csv")}
LOADS = {row["load_index"] for row in rows("tyre_load_index.csv")}
SYMBOLS = {row["symbol"] for row in rows("tyre_speed_symbol.csv") if row["speed_km_h"].isdigit()}
SECTIONS: dict[str, set[str]] = {}  # by section: what its rim codes may be
for row in rows("tyre_code_designated.csv"):
    section = row["designation"].removesuffix("M/C").strip().rsplit("-", 1)[0].rstrip("B")
    family = row["family"]
    serves = {
        rim
        for rim in RIMS
        if ("rim code 14+" not in family or float(rim) >= 14) and ("12 and below" not in family or float(rim) <= 12)
    }
    SECTIONS.setdefault(section, set()).update(serves)
BEAD_SEATS = {row["bead_seat_diameter_mm"] for row in rows("cycle_bead_seat.csv")}

# The traditional names, taken from the list's own words: by kind and diameter, the least and greatest width that goes by
# it, and the bead seat. A name that the list calls one of several stands for the bead seat "another", too.
NAMES: dict[tuple[str, Fraction], list[tuple[Fraction, Fraction, str]]] = {}
NONE, ANY = Fraction(0), Fraction(1000)


def number(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction())


def add_name(kind: str, diameter: Fraction, least: Fraction, most: Fraction, seat: str) -> None:
    NAMES.setdefault((kind, diameter), []).append((least, most, seat))


def add_names(seat: str, names: str) -> None:
    for name in re.split(r"[;,] *| / |\band ", names.replace("(", "; ").replace(")", "")):
        name = name.strip()
        alternative = name.endswith(" alt")
        name = name.removesuffix(" alt")
        if match := re.fullmatch(r"(\d{3})([A-D])", name):
            add_name(f"French {match[2]}", Fraction(match[1]), NONE, ANY, seat)
        elif name == "200 x 50":
            add_name("French ", Fraction(200), Fraction(50), Fraction(50), seat)
        elif match := re.fullmatch(r"([\d.]+) in", name):
            add_name("decimal", Fraction(match[1]), NONE, ANY, seat)
        elif match := re.fullmatch(r"(\d+(?: 1/2)?) x (\d\.\d+)(?: to \d\.\d+)?", name):
            width = Fraction(match[2])  # wider ones are of the same rim, but for one
            add_name("decimal", number(match[1]), width, width if name == "26 x 1.25" else ANY, seat)
        elif match := re.fullmatch(r"(\d+(?: 1/2)?) x (\d(?: \d/\d)?)", name):
            width = number(match[2])
            for one in [seat, "another"] if alternative else [seat]:
                add_name("fractional", number(match[1]), width, width, one)


for row in rows("cycle_bead_seat.csv"):
    names = row["traditional_names"].replace("28 x (decimal)", "28 in").replace("x (decimal) ", "x ")
    add_names(row["bead_seat_diameter_mm"], names)
# What the list does not have, from memory.
add_name("decimal", Fraction(27), Fraction(1), Fraction("1.25"), "630")
add_name("three-part", Fraction(28), NONE, ANY, "622")


def cycle_rim(kind: str, diameter: Fraction, width: Fraction) -> str | None:
    """The one bead seat that a name stands for."""
    found = {seat for least, most, seat in NAMES.get((kind, diameter), []) if least <= width <= most}
    return found.pop() if len(found) == 1 else None


# --- Forms ------------------------------------------------------------------------------------------------------------
N = r"(?:0|[1-9][0-9]*)(?![0-9])"
CONSTRUCTION = r"(?P<construction>-|B|ZR|R)"
RIM = rf"(?P<rim>{N}(?:\.5(?![0-9]))?)"
FRACTION = rf"(?:{N} / {N})"
BY = r"[X*]"
DECIMAL = r"(?:\.[0-9]+(?![0-9]))"


def form(pattern: str) -> re.Pattern[str]:
    return re.compile(" *" + pattern.replace(" ", " *"))


METRIC = form(rf"(?:(?P<before>P|LT|AT) )?(?P<width>{N}) / (?P<aspect>{N}) {CONSTRUCTION} {RIM} (?P<behind>C|LT)?")
CODE = form(rf"(?P<section>{N}(?:{DECIMAL}| (?P<fraction>{FRACTION}))?) {CONSTRUCTION} {RIM} (?P<behind>C|LT)?")
LETTERED = form(rf"M (?P<letter>[A-Z]) (?P<aspect>{N}) {CONSTRUCTION} {RIM}")
FLOTATION = form(
    rf"(?:(?P<before>LT|AT) )?(?P<diameter>{N}{DECIMAL}?) {BY} (?P<width>{N}{DECIMAL}?) {CONSTRUCTION} {RIM}(?! /) (?P<behind>LT)?"
)
ISO = form(rf"(?P<width>{N}) - (?P<rim>{N})")
FRENCH = form(
    rf"(?P<diameter>{N}) (?:(?P<letter>[A-D]) )?{BY} (?P<width>{N})(?!\.)(?(letter)| (?P<later>[A-C]|D(?!O))?)"
)
INCHES = form(
    rf"(?P<diameter>{N}{DECIMAL}?)(?P<half> {FRACTION})? {BY} (?P<width>{N})"
    rf"(?:(?P<decimal>{DECIMAL})|(?P<fraction> (?:- )?{FRACTION})(?: {BY} (?P<third>{N} (?:- )?{FRACTION}))?)?"
)

SYMBOL = r"(?P<symbol>A[1-8]|[A-Z])"
SERVICE = rf"(?P<load>{N})(?: / (?P<second>{N}))? {SYMBOL}"
# In this order; the first that begins here is what stands here.
MARKS = [
    ("M/C", form("M /? C")),
    ("MST", form("M ST")),
    ("M+S", form(r"M [+&./-]? S")),
    ("PR", form(rf"(?P<ply>{N}) PR(?!E)")),
    ("service", form(SERVICE)),
    ("service", form(rf"(?P<open>\() {SERVICE} \)")),
    ("tube", form("(?P<tube>TL|TT)")),
    ("REINF", form("REINF")),
    ("NHS", form("NHS")),
    ("DOT", form(r"DOT (?P<week>[0-9]{2})(?P<year>[0-9]{2})(?![0-9])")),
]


def decimal(text: str, places: int = 0) -> str:
    """A decimal number with no more places than it needs; with two where it has any, or where so many are asked for."""
    value = Decimal(text)
    least = places if value == value.to_integral_value() else max(2, places)
    digits = f"{value:.{max(least, 0)}f}"
    return digits if Decimal(digits) == value else f"{value.normalize():f}"


def mixed(value: Fraction) -> str:
    whole, part = divmod(value, 1)
    return f"{whole} {part}" if part else f"{whole}"


def fraction(text: str) -> Fraction | None:
    """A fraction of the table's kind: halves, quarters, eighths in lowest terms."""
    above, below = (int(part) for part in text.replace("-", "").split("/"))
    ok = below in (2, 4, 8) and above < below and above % 2 == 1
    return Fraction(above, below) if ok else None


# --- Sizes: each gives the canonical form and where the size ends, or None ----------------------------------------------
Size = tuple[str, int, str]


def metric(text: str) -> Size | None:
    if not (m := METRIC.match(text)):
        return None
    before, behind = m["before"] or "", m["behind"] or ""
    if (before and behind) or m["rim"] not in RIMS:
        return None
    if not (50 <= int(m["width"]) <= 400 and int(m["width"]) % 5 == 0 and 25 <= int(m["aspect"]) <= 110):
        return None
    if behind == "LT":
        before, behind = "LT", ""
    return f"{before}{m['width']}/{m['aspect']}{m['construction']}{m['rim']}{behind}", m.end(), "metric"


def code(text: str) -> Size | None:
    if not (m := CODE.match(text)):
        return None
    section = m["section"]
    if m["fraction"]:
        if (part := fraction(m["fraction"])) is None:
            return None
        section = f"{section.split()[0]} {part}" if " " in section else f"{section.removesuffix(m['fraction'])} {part}"
    if m["rim"] not in SECTIONS.get(section, ()):
        return None
    return f"{section}{m['construction']}{m['rim']}{m['behind'] or ''}", m.end(), "code"


def lettered(text: str) -> Size | None:
    if not (m := LETTERED.match(text)):
        return None
    section = f"M{m['letter']}{m['aspect']}"
    if m["rim"] not in SECTIONS.get(section, ()):
        return None
    return f"{section}{m['construction']}{m['rim']}", m.end(), "lettered"


def flotation(text: str) -> Size | None:
    if not (m := FLOTATION.match(text)):
        return None
    before, behind = m["before"] or "", m["behind"] or ""
    diameter, width = m["diameter"], m["width"]
    if (before and behind) or m["rim"] not in RIMS or ("." not in diameter and len(diameter) > 2):
        return None
    for number_text, least, most in ((diameter, 8, 60), (width, 2, 30)):
        if not least <= Decimal(number_text) <= most or Decimal(number_text) * 100 % 1 != 0:
            return None
        if len(number_text.partition(".")[2]) > 3:
            return None
    if Decimal(m["rim"]) + 2 > Decimal(diameter):
        return None
    if before == "LT":
        before, behind = "", "LT"
    diameter = f"{Decimal(diameter).normalize():f}"
    return f"{before}{diameter}x{decimal(width)}{m['construction']}{m['rim']}{behind}", m.end(), "flotation"


def iso(text: str) -> Size | None:
    if not (m := ISO.match(text)) or m["rim"] not in BEAD_SEATS or not 15 <= int(m["width"]) <= 130:
        return None
    return f"{m['width']}-{m['rim']}", m.end(), "cycle"


def french(text: str) -> Size | None:
    if not (m := FRENCH.match(text)) or not 15 <= int(m["width"]) <= 130:
        return None
    letter = m["letter"] or m["later"] or ""
    if cycle_rim(f"French {letter}", Fraction(m["diameter"]), Fraction(m["width"])) is None:
        return None
    return f"{m['diameter']}x{m['width']}{letter}", m.end(), "cycle"


def inches(text: str) -> Size | None:
    if not (m := INCHES.match(text)):
        return None
    diameter, shown, width = Fraction(m["diameter"]), m["diameter"], Fraction(m["width"])
    if m["half"]:
        if "." in shown or (half := fraction(m["half"])) is None:
            return None
        diameter += half
    if "." not in shown and diameter >= 100:
        return None
    if len(shown.partition(".")[2]) > 3 or diameter * 2 % 1 != 0:
        return None
    shown = "27.5" if diameter == Fraction("27.5") else mixed(diameter)  # as the list writes them
    if m["decimal"]:
        if len(m["decimal"]) > 4:
            return None
        kind, width = "decimal", width + Fraction(m["decimal"])
        written = decimal(m["width"] + m["decimal"], 2)
    else:
        kind = "fractional"
        if m["fraction"]:
            if (part := fraction(m["fraction"])) is None:
                return None
            width += part
        if m["third"]:
            whole = re.match(N, m["third"])
            if whole is None or (part := fraction(m["third"][whole.end() :])) is None:
                return None
            widths = [width, int(whole[0]) + part]
            height = Fraction(13, 8)
            if height not in widths:
                return None
            kind, width = "three-part", widths[1] if widths[0] == height else widths[0]
        written = ("1 5/8x" if kind == "three-part" else "") + mixed(width)
    millimetres = int(width * Fraction("25.4") + Fraction(1, 2))
    if not 15 <= millimetres <= 130 or cycle_rim(kind, diameter, width) is None:
        return None
    return f"{shown}x{written}", m.end(), "cycle"


SIZES = (metric, code, lettered, flotation, iso, french, inches)


# --- The whole --------------------------------------------------------------------------------------------------------
def marks(text: str, place: int, family: str) -> str | None:
    said: dict[str, str] = {}
    while text[place:].strip(" "):
        found = ((kind, pattern.match(text, place)) for kind, pattern in MARKS)
        kind, m = next(((kind, m) for kind, m in found if m), ("", None))
        if m is None or kind in said:
            return None
        said[kind] = m[0]
        place = m.end()
        if kind == "service":
            brackets = "open" in m.groupdict() and m["open"] is not None
            if family == "cycle" or m["symbol"] not in SYMBOLS or m["load"] not in LOADS:
                return None
            if m["second"] is not None and m["second"] not in LOADS:
                return None
            if brackets and m["symbol"] not in ("V", "W", "Y"):
                return None
            said[kind] = m["load"] + (f"/{m['second']}" if m["second"] is not None else "") + m["symbol"]
            said[kind] = f"({said[kind]})" if brackets else said[kind]
        elif kind == "PR":
            if not 2 <= int(m["ply"]) <= 40:
                return None
            said[kind] = f"{m['ply']}PR"
        elif kind == "tube":
            said[kind] = m["tube"]
        elif kind == "DOT":
            if not 1 <= int(m["week"]) <= 53:
                return None
            said[kind] = f"DOT {m['week']}{m['year']}"
        else:
            said[kind] = kind
    order = ("M/C", "service", "PR", "tube", "REINF", "M+S", "MST", "NHS", "DOT")
    return "".join(f" {said[kind]}" for kind in order if kind in said)


POSSIBLE = re.compile(r" *(?:(?:P|LT|AT|M) *)?[A-Z]? *[0-9].*[0-9]", re.DOTALL)  # what every size begins with


def read(text: str) -> str | None:
    """The canonical form of a marking in ASCII, or None where it is none."""
    text = text.upper().replace(",", ".")
    if len(text) > 256 or not POSSIBLE.match(text):
        return None
    for size in SIZES:
        if found := size(text):
            canonical, end, family = found
            if (rest := marks(text, end, family)) is not None:
                return canonical + rest
    return None
