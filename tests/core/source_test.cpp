// SPDX-License-Identifier: MIT
#include <layshaft/core/source.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>

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

TEST(Weaker, IsTheLessSureOfTwo) {
  // From what is stated to what is from memory, each weaker than the one before.
  constexpr Certainty by_doubt[] = {Certainty::stated,    Certainty::published,       Certainty::derived,
                                    Certainty::secondary, Certainty::common_practice, Certainty::from_memory};
  for (std::size_t a = 0; a < std::size(by_doubt); ++a)
    for (std::size_t b = 0; b < std::size(by_doubt); ++b)
      EXPECT_EQ(weaker(by_doubt[a], by_doubt[b]), by_doubt[std::max(a, b)]);
}

// A number that was cast without a look says nothing of how sure it is: as much as what is recalled.
TEST(Weaker, IsWhatNamesNoCertainty) {
  const auto none = static_cast<Certainty>(99);
  EXPECT_EQ(weaker(Certainty::common_practice, none), none);
  EXPECT_EQ(weaker(none, Certainty::common_practice), none);
  EXPECT_EQ(weaker(Certainty::from_memory, none), Certainty::from_memory);
}

}  // namespace
