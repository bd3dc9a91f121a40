// SPDX-License-Identifier: MIT
#include <boost/json.hpp>

// Uses Boost.JSON out of line, so that it links only where layshaft::json brings the definitions.
int members_of(const char* text);
int members_of(const char* text) { return static_cast<int>(boost::json::parse(text).as_object().size()); }
