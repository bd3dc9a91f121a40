// SPDX-License-Identifier: MIT
#include <layshaft/core/core.hpp>

layshaft::Length length_of_the_other_unit();
layshaft::Length length_of_the_other_unit() { return layshaft::parse_quantity<layshaft::Length>("2 inch"); }
