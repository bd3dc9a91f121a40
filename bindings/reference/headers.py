# SPDX-License-Identifier: MIT
"""Writes a copy of the C++ headers that Doxygen understands: `python headers.py OUT`.

Each header becomes a page of its own (a group) under the page of its folder, and each LAYSHAFT_FORMULA the function
that it makes, whose documentation gets what the formula knows of itself: symbols, range and source.
"""

from __future__ import annotations

import contextlib
import io
import re
import runpy
import sys
from collections.abc import Iterator
from pathlib import Path

import layshaft as ls
from subjects import FOLDERS

TOP = Path(__file__).resolve().parents[2]
HEADERS = TOP / "include/layshaft"
MACRO = "LAYSHAFT_FORMULA("
INCLUDE = re.compile(r"^#include <(layshaft/[^>]+)>", re.MULTILINE)

FORMULAS = {formula.name: formula for formula in ls.formulas()}


def group_of(header: Path) -> str:
    """The name of a header's page: `tyre_rolling`."""
    return "header_" + "_".join(header.relative_to(HEADERS).with_suffix("").parts)


def arguments_at(text: str, start: int) -> tuple[list[str], int]:
    """The arguments of the call whose opening bracket stands before `start`, and where it ends."""
    arguments, depth, begin = [], 1, start
    for place in range(start, len(text)):
        character = text[place]
        if character in "([{":
            depth += 1
        elif character in ")]}":
            depth -= 1
        if depth == 0 or (depth == 1 and character == ","):
            arguments.append(text[begin:place].strip())
            begin = place + 1
        if depth == 0:
            return arguments, place + 1
    raise ValueError(f"a bracket is not closed: {text[start : start + 60]}")


def formulas_in(text: str) -> Iterator[tuple[int, int, list[str]]]:
    """Where each formula begins and ends, and its arguments; but not where the macro is defined or spoken of."""
    for match in re.finditer(rf"^{re.escape(MACRO)}", text, re.MULTILINE):
        arguments, end = arguments_at(text, match.end())
        yield match.start(), end, arguments


def told_of(formula: ls.Formula) -> str:
    """What a formula knows of itself, as lines of a comment."""
    holds = "all values" if formula.range == "true" else f"`{formula.range}`"
    return (
        "///\n/// @par Formula\n"
        f"/// @htmlonly {formula.to_mathml()} @endhtmlonly\n"
        f"/// @par Holds for\n/// {holds}\n"
        f"/// @par Error\n/// within {formula.error_ulp:g} ulp (accuracy.hpp)\n"
        f"/// @par Source\n/// {formula.source.document} ({formula.source.certainty})\n"
    )


def with_functions(text: str) -> str:
    """The text with every formula turned into the function it makes."""
    out, copied = [], 0
    for start, end, (spec, result, name, parameters, *_) in formulas_in(text):
        before = text[copied:start]
        if not before.rstrip().split("\n")[-1].startswith("///"):
            raise ValueError(f"the formula {name} has no comment")
        out += [before, told_of(FORMULAS[name]), f"[[nodiscard]] {spec} {result} {name}{' '.join(parameters.split())};"]
        copied = end
    return "".join(out) + text[copied:]


def with_macros_told(text: str) -> str:
    """The text with what its two other macros make: units, and the codes of cautions."""
    text = re.sub(r"^// clang-format (off|on)\n", "", text, flags=re.MULTILINE)
    text = re.sub(
        r"^LAYSHAFT_UNIT\((\w+), (\w+), (.+)\)$",
        r"namespace units {\n/// One \2; as a literal `110.0_\2`.\ninline constexpr \1 \2 = \1::from_value(\3);\n}",
        text,
        flags=re.MULTILINE,
    )
    codes = re.findall(r"^  CAUTION\((\w+)\) */\* (.+?) \*/", text, re.MULTILINE)
    text = text.replace("0 LAYSHAFT_CAUTIONS(LAYSHAFT_CAUTION_COUNT)", str(len(codes)))
    rows = "".join(f"  {name},  ///< {meaning}\n" for name, meaning in codes)
    return re.sub(r"(enum class CautionCode \{\n).*?^\};", rf"\1{rows}}};", text, flags=re.MULTILINE | re.DOTALL)


def prepared(header: Path) -> str:
    """The text of a header for Doxygen."""
    name = header.relative_to(HEADERS.parent).as_posix()
    folder = header.relative_to(HEADERS).parts[0]
    group = group_of(header)
    text = with_functions(with_macros_told(header.read_text(encoding="utf-8")))
    title = f"/// @defgroup {group} {name}\n"
    if folder in FOLDERS:
        title += f"/// @ingroup folder_{folder}\n"
    says, code = text.split("/// @file\n", 1)
    if "namespace layshaft {" not in code and "namespace layshaft::detail {" in code:
        code = "/// For the library's own use; nothing here is promised to stay.\n///\n" + code
    if "namespace layshaft" not in code and (others := INCLUDE.findall(says)):
        lines = "".join(f"/// - @ref {group_of(HEADERS.parent / other)}\n" for other in others)
        code = re.sub(r"^((?:///.*\n)+)", lambda comment: f"{comment[1]}///\n/// Includes\n{lines}", code, count=1)
    code = re.sub(
        r"^(namespace layshaft(?:::(?!detail)\w+)? \{)$(.*?)^(\}  // namespace layshaft.*)$",
        rf"\1\n/// @addtogroup {group}\n/// @{{\n\2\n/// @}}\n\3",
        code,
        flags=re.MULTILINE | re.DOTALL,
    )
    return says + title + code


def printed_by_the_example() -> str:
    """What examples/readme.py prints; a test holds it against what examples/readme.cpp does."""
    with contextlib.redirect_stdout(io.StringIO()) as out:
        runpy.run_path(str(TOP / "examples/readme.py"))
    return out.getvalue()


def start_page() -> str:
    """The page that leads to the folders, and the folders."""
    folders = "".join(f"/// @defgroup folder_{name} {title}\n\n" for name, title in FOLDERS.items())
    rows = "".join(f'/// - @ref folder_{name} "{title}": `layshaft/{name}/`\n' for name, title in FOLDERS.items())
    alone = ", ".join(f"@ref {group_of(header)}" for header in sorted(HEADERS.glob("*.hpp")))
    printed = "".join(f"/// {line}\n" for line in printed_by_the_example().splitlines())
    return f"""{folders}/// @mainpage The C++ library
///
/// Headers only; everything is in the namespace `layshaft`. One folder a subject, one header a concept; each folder has
/// a header of its own name that includes all of it, and `layshaft/layshaft.hpp` includes everything but what is marked
/// as opt-in. A function that can refuse what it is given throws one of the errors of core/error.hpp, and has a twin
/// (`make`, or the name with `try_` in front) that returns the error as a value.
///
{rows}///
/// Beside them: {alone}.
///
/// A program (examples/readme.cpp), and what it prints:
///
/// @include readme.cpp
///
/// @code{{.unparsed}}
{printed}/// @endcode
///
/// @htmlonly <p><a href="../formulas.html">All formulas in symbols</a></p> @endhtmlonly
"""


def main(out: Path) -> None:
    for header in sorted(HEADERS.rglob("*.hpp")):
        copy = out / header.relative_to(HEADERS.parent)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_text(prepared(header), encoding="utf-8")
    (out / "start.hpp").write_text(start_page(), encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
