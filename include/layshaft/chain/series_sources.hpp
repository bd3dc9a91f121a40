// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/source.hpp>

/// @file
/// The documents that the figures of chain series come from.
namespace layshaft::detail::chain_sources {

inline constexpr Source unknown{"", Certainty::secondary};
inline constexpr Source iso{"ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1", Certainty::published};
inline constexpr Source footnote{"ISO 606:1994 as adopted in GOST 13568-97, Annex A, Table A.1, footnote",
                                 Certainty::published};
inline constexpr Source national{"GOST 13568-97, Table 1", Certainty::published};
inline constexpr Source catalogue{"a chain maker's 2020 catalogue, pp. 18-19 and 24-25", Certainty::published};
inline constexpr Source works{"a chain maker's 2020 catalogue, pp. 296-297", Certainty::published};
inline constexpr Source another{"another chain maker's catalogue, pp. 10-11", Certainty::published};
inline constexpr Source charts{
    "charts of motorcycle chain sizes; inner widths also in a chain engineering guide, p. 127", Certainty::secondary};
inline constexpr Source forum{"a kart forum that quotes a chain maker's catalogue", Certainty::secondary};
inline constexpr Source memory{"sizes as recalled", Certainty::from_memory};

}  // namespace layshaft::detail::chain_sources
