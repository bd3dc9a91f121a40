# SPDX-License-Identifier: MIT
"""Settings of Sphinx; bindings/reference/build runs it on the pages that pages.py writes."""

from __future__ import annotations

import inspect

import layshaft
from sphinx.application import Sphinx

project = "layshaft"
author = "The layshaft authors"
release = version = layshaft.__version__
extensions = ["sphinx.ext.autodoc", "sphinx.ext.napoleon"]  # the second reads sections such as "Args:"

default_role = "code"
smartquotes = False  # words in quotes are to be typed as they stand
nitpicky = False  # names of other libraries and of the stubs stand in signatures as well
add_module_names = False
autodoc_typehints = "signature"
napoleon_use_rtype = False
autodoc_member_order = "bysource"
python_maximum_signature_line_length = 96
toc_object_entries = False
highlight_language = "python"
pygments_style = "bw"

html_theme = "basic"
html_title = "layshaft"
templates_path = ["templates"]
html_static_path = ["static"]
html_css_files = ["style.css"]
html_sidebars: dict[str, list[str]] = {"**": []}
html_copy_source = False
html_use_index = True
html_domain_indices = False
html_show_sphinx = False
html_permalinks_icon = "#"


def _without_constructor_of_dataclass(
    app: Sphinx, what: str, name: str, member: object, options: object, lines: list[str]
) -> None:
    """A dataclass without a docstring of its own gets its signature as one from Python: that says nothing new."""
    if inspect.isclass(member) and len(lines) > 0 and lines[0].startswith(f"{member.__name__}("):
        lines.clear()


def setup(app: Sphinx) -> None:
    app.connect("autodoc-process-docstring", _without_constructor_of_dataclass)
