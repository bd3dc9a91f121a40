# SPDX-License-Identifier: MIT
"""Writes the pages of the Python reference and the table of formulas for Sphinx: `python pages.py OUT CPP_TAGS`.

Names, order and types come from the type stubs, what is said of each from the installed package.
"""

from __future__ import annotations

import ast
import importlib
import inspect
import re
import sys
import xml.etree.ElementTree as ElementTree
from collections.abc import Iterable, Iterator
from html import escape
from pathlib import Path
from types import ModuleType

import layshaft as ls
from headers import FORMULAS, HEADERS, TOP, formulas_in, printed_by_the_example
from stubs import Stub, Subject
from subjects import FOLDERS, MODULES

STUB = Stub(Path(ls.__file__).with_name("_core.pyi"))
# What is public in layshaft itself, but written in Python: no part of the core's stub.
IN_PYTHON = {"choose": "Choosing"}


def indented(text: str, by: int) -> str:
    return "\n".join(" " * by + line if line else "" for line in text.splitlines())


def told(member: object) -> str:
    """A docstring, ready to stand in a page."""
    return inspect.cleandoc(getattr(member, "__doc__", None) or "")


def slug(title: str) -> str:
    return re.sub(r"[^a-z]+", "_", title.split(":")[0].lower()).strip("_")


def heading(title: str) -> str:
    return f"{title}\n{'=' * len(title)}\n\n"


def shown(types: str) -> str:
    """Types as people write them."""
    return types.replace("_T_co", "T").replace("T | str", "T")


def signatures(name: str) -> list[str]:
    """`name(arguments) -> result`, one for each way to call it."""
    last = name.split(".")[-1]
    found = []
    for node in STUB.functions(name):
        arguments, result = STUB.signature_of(node, in_class="." in name)
        if last == "__init__":
            found.append(f"{name.split('.')[0]}{shown(arguments)}")
        else:
            found.append(f"{last}{shown(arguments)} -> {shown(result)}")
    return found


def directive(kind: str, lines: list[str], options: Iterable[str], text: str, depth: int = 0) -> str:
    """One entry: `.. py:kind:: first`, further lines below it, options, and what is said."""
    start = f".. py:{kind}:: "
    out = start + f"\n{' ' * len(start)}".join(lines) + "\n"
    out += "".join(f"   {option}\n" for option in options) + "\n" + indented(text, 3) + "\n\n"
    return indented(out, depth) + "\n\n"


def class_entry(name: str) -> str:
    """A class with all its public members, in the order of the stub."""
    made = getattr(ls, name)
    if issubclass(made, Exception):
        return directive("exception", [name], [], told(made))
    lines = signatures(f"{name}.__init__") or [name]
    text = told(made)
    body = next(node for node in STUB.body if isinstance(node, ast.ClassDef) and node.name == name)
    seen: set[str] = set()
    for node in body.body:
        if not isinstance(node, ast.FunctionDef) or node.name.startswith("_") or node.name in seen:
            continue
        seen.add(node.name)
        decorators = {ast.unparse(one) for one in node.decorator_list}
        member = f"{name}.{node.name}"
        said = told(inspect.getattr_static(made, node.name))
        if isinstance(static := inspect.getattr_static(made, node.name), staticmethod):
            said = told(static.__func__)
        if "property" in decorators:
            entry = directive("property", [node.name], [f":type: {shown(STUB.type_of(member) or '')}"], said)
        else:
            options = [":staticmethod:"] if "staticmethod" in decorators else []
            entry = directive("method", signatures(member), options, said)
        text += "\n\n" + entry.rstrip()
    return directive("class", lines, [":final:"], text)


def function_entry(name: str) -> str:
    return directive("function", signatures(name), [], told(getattr(ls, name)))


def values_entry(names: list[str]) -> str:
    """Units, all of one kind in one entry."""
    kinds: dict[str, list[str]] = {}
    for name in names:
        kinds.setdefault(STUB.type_of(name) or "", []).append(name)
    return "".join(directive("data", units, [f":type: {kind}"], "") for kind, units in kinds.items() if kind != "str")


def arithmetic() -> str:
    """Which quantity times, or over, which other gives which."""
    rows = []
    for node in STUB.body:
        if not isinstance(node, ast.ClassDef):
            continue
        for operator, sign in (("__mul__", "×"), ("__truediv__", "/")):
            for one in STUB.functions(f"{node.name}.{operator}"):
                other, result = one.args.args[1].annotation, one.returns
                assert other is not None and result is not None
                right = ast.unparse(other)
                if right in ("_Real", "Self") or (sign == "×" and right < node.name):
                    continue
                rows.append(f"   {node.name} {sign} {right},{ast.unparse(result)}\n")
    return (
        "Any quantity times or over a number is of its own kind, and over one of its own kind a number.\n\n"
        ".. csv-table:: What two quantities make\n   :header: these, make this\n\n" + "".join(rows) + "\n"
    )


def subject_page(subject: Subject) -> str:
    title, _, more = subject.title.partition(":")
    text = heading(title) + ".. py:currentmodule:: layshaft\n\n"
    if more:
        text += more.strip()[0].upper() + more.strip()[1:] + ".\n\n"
    functions = subject.functions + [name for name, at in IN_PYTHON.items() if at == title]
    links = [f":py:class:`{name}`" for name in subject.classes if not name.startswith("_")]
    links += [f":py:func:`{name}`" for name in functions]
    if links:
        text += ".. rst-class:: on-this-page\n\n" + " ".join(links) + "\n\n"
    text += "".join(class_entry(name) for name in subject.classes)
    text += "".join(function_entry(name) for name in subject.functions)
    text += "".join(f".. autofunction:: layshaft.{name}\n\n" for name in functions[len(subject.functions) :])
    text += values_entry(subject.values)
    if "Length" in subject.classes:
        text += arithmetic()
    return text


def ufunc_entry(name: str, member: object) -> str:
    """A ufunc: its own signature stands behind NumPy's in its docstring."""
    said = told(member).partition("\n\n")[2]
    match = re.match(rf"{name}\(([^)]*)\): (.*)", said, re.DOTALL)
    assert match is not None, name
    text = match[2][0].upper() + match[2][1:]
    return directive("function", [f"{name}({match[1]}, /)"], [], text)


def constant_entry(name: str, value: object) -> str:
    """A constant of a module: its text or number, what it lists, or how much of what it holds."""
    kind = type(value).__name__
    if isinstance(value, tuple) and value and not isinstance(value[0], str):
        kind, said = f"tuple[{type(value[0]).__name__}, ...]", f"{len(value)} of them."
    elif isinstance(value, tuple):
        kind, said = "tuple[str, ...]", ", ".join(f"'{one}'" for one in value) + "."
    else:
        said = str(value)
    return directive("data", [name], [f":type: {kind}"] if isinstance(value, (str, float, int, tuple)) else [], said)


def module_page(name: str) -> str:
    module: ModuleType = importlib.import_module(f"layshaft.{name}")
    text = heading(f"layshaft.{name}") + f".. automodule:: layshaft.{name}\n\n"
    public = module.__all__
    ufuncs = [one for one in public if type(getattr(module, one)).__name__ == "ufunc"]
    if ufuncs:
        text += "Each takes by name what every ufunc takes: `out`, `where`, `dtype` and so on.\n\n"
    text += "".join(ufunc_entry(one, getattr(module, one)) for one in ufuncs)
    for one in public:
        member = getattr(module, one)
        if one in ufuncs:
            continue
        if inspect.isclass(member):
            text += f".. autoclass:: layshaft.{name}.{one}\n   :members:\n   :undoc-members:\n\n"
        elif inspect.isroutine(member):
            text += f".. autofunction:: layshaft.{name}.{one}\n\n"
        else:
            text += constant_entry(one, member)
    return text


def python_pages() -> dict[str, str]:
    """Every page of the Python reference, by its name."""
    subjects = STUB.subjects("Errors")
    pages = {slug(one.title): subject_page(one) for one in subjects if one.classes or one.functions or one.values}
    modules = {f"module_{name}": module_page(name) for name in MODULES}
    index = heading("The Python package") + told(ls) + "\n\n"
    index += (
        "Wherever a quantity is taken, so is text with its unit; wherever a `TyreSize` or a `ChainSeries` is taken, so "
        "is its marking or name. A wrong argument is a `TypeError`, a wrong value one of layshaft's own errors, which "
        "are `ValueError`\\ s; both say which argument, what came and what was expected. In the examples `machine` and "
        "`trial` are those made under :py:class:`layshaft.Machine` and :py:class:`layshaft.Setup`.\n\n"
    )
    index += ".. toctree::\n   :caption: layshaft\n   :maxdepth: 1\n\n"
    index += "".join(f"   {name}\n" for name in pages)
    index += "\n.. toctree::\n   :caption: Modules beside it\n   :maxdepth: 1\n\n"
    index += "".join(f"   layshaft.{name}: {title} <module_{name}>\n" for name, title in MODULES.items()) + "\n"
    return {"index": index, **pages, **modules}


# --- The formulas -----------------------------------------------------------------------------------------------------

GREEK = {
    "alpha": "α", "beta": "β", "delta": "δ", "Delta": "Δ", "epsilon": "ε", "eta": "η", "lambda": "λ", "mu": "μ",
    "phi": "φ", "rho": "ρ", "theta": "θ",
}  # fmt: skip


def glossary() -> dict[str, tuple[str, str, str]]:
    """Symbol, meaning and unit of each word, from the table that the formulas' texts are read with."""
    text = (HEADERS / "core/glossary.hpp").read_text(encoding="utf-8")
    rows = re.findall(r'^  \{"(\w+)", +"([^"]+)", +"[^"]+", +"([^"]+)", +"([^"]*)"\}', text, re.MULTILINE)
    return {word: (symbol, meaning, unit) for word, symbol, meaning, unit in rows}


def symbol_html(symbol: str) -> str:
    symbol, prime = symbol.removesuffix("'"), "′" * symbol.endswith("'")
    letters = re.match("[A-Za-z]*", symbol)
    base = letters[0] if letters else ""
    index = symbol[len(base) :].removeprefix("_")
    below = f"<sub>{escape(index)}</sub>" if index else ""
    return f"<i>{GREEK.get(base, base)}</i>{prime}{below}"


def links_to_cpp(tags: Path) -> dict[str, str]:
    """Where Doxygen describes each function: the first of its name."""
    links: dict[str, str] = {}
    for member in ElementTree.parse(tags).iter("member"):
        name, file, anchor = (member.findtext(part) or "" for part in ("name", "anchorfile", "anchor"))
        links.setdefault(name, f"cpp/{file}#{anchor}")
    return links


def parameters_of(formula: ls.Formula) -> list[str]:
    return re.findall(r"(\w+)(?=[,)])", formula.parameters)


def in_folders() -> Iterator[tuple[str, list[str]]]:
    """The formulas of each folder of headers, in their order."""
    for folder in FOLDERS:
        names = [
            arguments[2]
            for header in sorted((HEADERS / folder).glob("*.hpp"))
            for _, _, arguments in formulas_in(header.read_text(encoding="utf-8"))
        ]
        if names:
            yield folder, names


def formula_html(name: str, words: dict[str, tuple[str, str, str]], cpp: dict[str, str], python: dict[str, str]) -> str:
    formula = FORMULAS[name]
    links = [f'<a href="{escape(cpp[name])}">C++</a>']
    if name in python:
        links.append(f'<a href="{python[name]}">Python</a>')
    rows = ""
    for word in [name, *parameters_of(formula)]:
        symbol, meaning, unit = words[word]
        shown_unit = f" <span class='unit'>{escape(unit)}</span>" if unit and unit != "%" else ""
        rows += f"<li>{symbol_html(symbol)} {escape(meaning)}{shown_unit}</li>"
    holds = "" if formula.range == "true" else f"<p class='holds'>holds for <code>{escape(formula.range)}</code></p>"
    source = f"{escape(formula.source.document)} <em>({escape(formula.source.certainty)})</em>"
    source += f"; error within {formula.error_ulp:g} ulp"
    return (
        f"<section class='formula' id='{name}'><h3><code>{name}</code> <span>{' '.join(links)}</span></h3>"
        f"<div class='line'>{formula.to_mathml()}</div><ul>{rows}</ul>{holds}<p class='source'>{source}</p></section>"
    )


def formulas_page(tags: Path) -> str:
    words, cpp = glossary(), links_to_cpp(tags)
    python = {
        name: f"python/{slug(subject.title)}.html#layshaft.{name}"
        for subject in STUB.subjects("Errors")
        for name in subject.functions
    }
    text = heading("Formulas")
    text += (
        f"Every formula of the library, {len(FORMULAS)} of them, set from the very text of the code that computes it: "
        "its symbols, the range of its arguments, and where it comes from, with how sure that is. Units are those in "
        "which numbers are shown; the code takes any.\n\n"
    )
    for folder, names in in_folders():
        title = FOLDERS[folder]
        text += f"{title}\n{'-' * len(title)}\n\n.. raw:: html\n\n"
        text += "".join(f"   {formula_html(name, words, cpp, python)}\n" for name in names) + "\n"
    return text


START = """
The maths of a vehicle's final drive: tyre, gears, chain, wear and speedometer, with units. One library with two front
doors, which share names, values and error texts.

.. rst-class:: doors

- :doc:`Python <python/index>`: typed quantities, machines and set-ups, NumPy functions, pages and exercises.
- `C++ <cpp/index.html>`_: header-only C++20 on Boost.Units; one header a concept.
- :doc:`Formulas <formulas>`: all of them in symbols, with source and range, by subject.

In Python, and what it prints:

.. code-block:: python

{example}

.. code-block:: text

{printed}

.. toctree::
   :hidden:

   python/index
   formulas
"""


def start_page() -> str:
    program = (TOP / "examples/readme.py").read_text(encoding="utf-8")
    example = indented(program[program.index("import layshaft") :], 3)
    printed = indented(printed_by_the_example(), 3)
    return heading("layshaft, the reference") + START.lstrip().format(example=example, printed=printed)


def main(out: Path, tags: Path) -> None:
    (out / "python").mkdir(parents=True, exist_ok=True)
    for name, text in python_pages().items():
        (out / "python" / f"{name}.rst").write_text(text, encoding="utf-8")
    (out / "formulas.rst").write_text(formulas_page(tags), encoding="utf-8")
    (out / "index.rst").write_text(start_page(), encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
