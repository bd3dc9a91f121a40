# SPDX-License-Identifier: MIT
"""Goes through the pages: `python check.py FOLDER`. Every public name and header is there, every link leads somewhere,
no page is out of reach, and none fetches anything from the network."""

from __future__ import annotations

import importlib
import sys
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import layshaft as ls
from headers import HEADERS, group_of
from subjects import MODULES


class Page(HTMLParser):
    """The anchors of a page, where it leads, and what it loads."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.anchors: set[str] = set()
        self.links: set[str] = set()
        self.loads: set[str] = set()
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attributes}
        self.anchors.update(given[name] for name in ("id", "name") if name in given)
        if tag == "a" and "href" in given:
            self.links.add(given["href"])
        self.loads.update(given[name] for name in ("src",) if name in given)
        if tag == "link":
            self.loads.add(given.get("href", ""))


def names_missing(pages: dict[Path, Page], folder: Path) -> list[str]:
    """Public names and headers that the reference does not have."""
    anchors = {anchor for path, page in pages.items() if path.parent == folder / "python" for anchor in page.anchors}
    wanted = [f"layshaft.{name}" for name in vars(ls)["__all__"]]
    for module in MODULES:
        public: list[str] = vars(importlib.import_module(f"layshaft.{module}"))["__all__"]
        wanted += [f"layshaft.{module}.{name}" for name in public]
    missing = [name for name in wanted if name not in anchors]
    for header in sorted(HEADERS.rglob("*.hpp")):
        page = group_of(header).replace("_", "__")
        if not (folder / "cpp" / f"group__{page}.html").exists():
            missing.append(header.relative_to(HEADERS.parent).as_posix())
    return missing


def links_to_nowhere(pages: dict[Path, Page]) -> list[str]:
    """Links that lead to no page or anchor, and whatever is loaded from elsewhere."""
    wrong = []
    for path, page in pages.items():
        for link in sorted(page.loads | page.links):
            parts = urlsplit(link)
            if parts.scheme or parts.netloc:
                if link in page.loads:
                    wrong.append(f"{path}: loads {link}")
                continue
            target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            anchor = unquote(parts.fragment)
            if not target.exists() or (anchor and target in pages and anchor not in pages[target].anchors):
                wrong.append(f"{path}: {link}")
    return wrong


def out_of_reach(pages: dict[Path, Page], folder: Path) -> list[str]:
    """Pages that no page leads to."""
    reached = {
        (path.parent / unquote(urlsplit(link).path)).resolve() for path, page in pages.items() for link in page.links
    }
    return [str(path) for path in pages if path not in reached]


def main(folder: Path) -> int:
    folder = folder.resolve()
    pages = {path: Page(path) for path in folder.rglob("*.html")}
    wrong = [f"not in the reference: {name}" for name in names_missing(pages, folder)]
    wrong += [f"leads nowhere: {link}" for link in links_to_nowhere(pages)]
    wrong += [f"out of reach: {path}" for path in out_of_reach(pages, folder)]
    print("\n".join([*wrong, f"{len(pages)} pages, {len(wrong)} wrong"]))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
