// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// The version of layshaft, read from here by CMake, the Python package and pkg-config alike.

/// Major, minor and patch, as in semantic versioning.
#define LAYSHAFT_VERSION "0.1.0"
