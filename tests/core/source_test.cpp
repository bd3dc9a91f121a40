// SPDX-License-Identifier: MIT
#include <layshaft/core/source.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(Source, SaysHowSureItIs) {
  static_assert(to_string(Certainty::published) == "published");
  static_assert(to_string(Certainty::secondary) == "secondary");
  static_assert(to_string(Certainty::derived) == "derived");
  static_assert(to_string(Certainty::common_practice) == "common practice, no source");
  static_assert(to_string(Certainty::from_memory) == "from memory");
  static_assert(to_string(Certainty::stated) == "stated");
  static_assert(Source{"a book"}.certainty == Certainty::published);
  EXPECT_EQ(sources::un_r39, (Source{"UN Regulation No. 39, paragraph 5.3", Certainty::published}));
  EXPECT_NE(sources::definition, (Source{"definition", Certainty::published}));
}

}  // namespace
