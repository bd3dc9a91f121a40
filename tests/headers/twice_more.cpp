// SPDX-License-Identifier: MIT
#include <every_header.hpp>

layshaft::Length length_of_the_other_unit();
layshaft::Length length_of_the_other_unit() { return layshaft::parse_quantity<layshaft::Length>("2 inch"); }
