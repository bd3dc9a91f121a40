# SPDX-License-Identifier: MIT
"""What the type stubs say: subjects, names, and signatures with their types, the short names for types written out."""

from __future__ import annotations

import ast
import copy
import re
from dataclasses import dataclass, field
from pathlib import Path

_SECTION = re.compile(r"# --- (.+?) -{3,}$")


@dataclass
class Subject:
    """One section of the stub, which is one page of the reference."""

    title: str
    classes: list[str] = field(default_factory=list)
    functions: list[str] = field(default_factory=list)
    values: list[str] = field(default_factory=list)


class Stub:
    """A stub file, read."""

    def __init__(self, path: Path) -> None:
        text = path.read_text(encoding="utf-8")
        self.body = ast.parse(text).body
        self._sections = [
            (number, match[1]) for number, line in enumerate(text.splitlines(), 1) if (match := _SECTION.match(line))
        ]
        self._short = {
            node.target.id: node.value
            for node in self.body
            if isinstance(node, ast.AnnAssign)
            and isinstance(node.target, ast.Name)
            and node.value is not None
            and ast.unparse(node.annotation) == "TypeAlias"
        }

    def subjects(self, before: str) -> list[Subject]:
        """Every public name under the heading of its section; `before` is the title of what stands before the first."""
        subjects = [Subject(title) for title in (before, *(title for _, title in self._sections))]
        for node in self.body:
            there = subjects[sum(line < node.lineno for line, _ in self._sections)]
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                there.classes.append(node.name)
            elif isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                if node.name not in there.functions:
                    there.functions.append(node.name)
            elif isinstance(node, ast.AnnAssign) and not ast.unparse(node.target).startswith("_"):
                there.values.append(ast.unparse(node.target))
        return subjects

    def written_out(self, annotation: ast.expr | None) -> ast.expr | None:
        """The annotation without the stub's own short names for types."""
        if annotation is None:
            return None
        short = self._short

        class Expand(ast.NodeTransformer):
            def visit_Name(self, node: ast.Name) -> ast.expr:
                found = short.get(node.id)
                expanded: ast.expr = self.visit(copy.deepcopy(found)) if found is not None else node
                return expanded

        expanded: ast.expr = Expand().visit(copy.deepcopy(annotation))
        return expanded

    def functions(self, name: str) -> list[ast.FunctionDef]:
        """The definitions (many where it is overloaded) of `function` or `Class.method`."""
        body = self.body
        *owner, last = name.split(".")
        if owner:
            found = [node for node in body if isinstance(node, ast.ClassDef) and node.name == owner[0]]
            body = found[0].body if found else []
        return [node for node in body if isinstance(node, ast.FunctionDef) and node.name == last]

    def signature_of(self, definition: ast.FunctionDef, *, in_class: bool) -> tuple[str, str]:
        """`(arguments)`, without self, and what is returned."""
        node = copy.deepcopy(definition)
        for argument in [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]:
            argument.annotation = self.written_out(argument.annotation)
        if in_class and not any(ast.unparse(one) == "staticmethod" for one in node.decorator_list):
            (node.args.posonlyargs or node.args.args).pop(0)
        returned = self.written_out(node.returns)
        return f"({ast.unparse(node.args)})", ast.unparse(returned) if returned is not None else ""

    def type_of(self, name: str) -> str | None:
        """The type of `Class.property`, or of a value of the module."""
        if "." in name:
            found = self.functions(name)
            return self.signature_of(found[0], in_class=True)[1] if found else None
        for node in self.body:
            if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.target.id == name:
                return ast.unparse(node.annotation).removeprefix("Final[").removesuffix("]")
        return None
