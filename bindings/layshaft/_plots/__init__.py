# SPDX-License-Identifier: MIT
"""The pictures of layshaft.plots, a file for each subject."""
