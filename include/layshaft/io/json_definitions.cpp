// SPDX-License-Identifier: MIT
// The one translation unit that holds Boost.JSON's definitions; the CMake target layshaft::json builds it. Without
// CMake, compile this file into your program once.
#include <boost/json/src.hpp>
