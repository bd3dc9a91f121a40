// SPDX-License-Identifier: MIT
#include <layshaft/chain/rounding.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <string_view>

namespace {
using namespace layshaft;

TEST(LinksToCut, AreWhatIsLeftOver) {
  EXPECT_EQ(links_to_cut(120_links, 110_links), 10);
  EXPECT_EQ(links_to_cut(110_links, 110_links), 0);
  const auto missing = try_links_to_cut(108_links, 110_links);
  ASSERT_FALSE(missing);
  EXPECT_NE(std::string_view(missing.error().what()).find("2 are missing"), std::string_view::npos);
}

TEST(RoundLinks, OfAWholeCountKeepsIt) {
  for (const auto rounding :
       {LinkRounding::up_to_even, LinkRounding::nearest_even, LinkRounding::down_to_even, LinkRounding::up})
    EXPECT_EQ(round_links(106.0, rounding), 106_links) << to_string(rounding);
  EXPECT_EQ(round_links(105.3), 106_links);
  EXPECT_EQ(round_links(104.9, LinkRounding::nearest_even), 104_links);
  EXPECT_EQ(round_links(105.9, LinkRounding::down_to_even), 104_links);
  EXPECT_EQ(round_links(104.1, LinkRounding::up), 105_links);
  for (const double bad : {-1.0, 1e9, std::nan("")}) EXPECT_FALSE(try_round_links(bad));
}

// A billionth of a link is the rounding of arithmetic, not a reason to buy two more.
TEST(RoundLinks, TakesACountWithinABillionthForWhole) {
  for (const auto rounding :
       {LinkRounding::up_to_even, LinkRounding::nearest_even, LinkRounding::down_to_even, LinkRounding::up})
    for (const double hair : {-0.9e-9, 0.9e-9}) EXPECT_EQ(round_links(106.0 + hair, rounding), 106_links);
  EXPECT_EQ(round_links(106.0 + 2e-9), 108_links);
  EXPECT_EQ(round_links(106.0 - 2e-9, LinkRounding::down_to_even), 104_links);
  EXPECT_EQ(round_links(106.0 + 2e-9, LinkRounding::up), 107_links);
}

TEST(RoundLinks, TakesTheLargerOfTwoEvenCountsAsNear) {
  EXPECT_EQ(round_links(105.0, LinkRounding::nearest_even), 106_links);
  EXPECT_EQ(round_links(105.0 - 1e-6, LinkRounding::nearest_even), 104_links);
}

TEST(RoundLinks, StaysWithinTheCountsAChainCanHave) {
  EXPECT_EQ(round_links(10000.0), 10000_links);
  EXPECT_EQ(round_links(4.0), 4_links);
  EXPECT_EQ(round_links(2.5), 4_links);
  for (const double bad : {0.0, 2.0, -4.0, 10000.5, HUGE_VAL, -HUGE_VAL}) {
    const auto links = try_round_links(bad);
    ASSERT_FALSE(links) << bad;
    EXPECT_EQ(links.error().kind(), ErrorKind::range);
    EXPECT_THROW(static_cast<void>(round_links(bad)), RangeError);
  }
  EXPECT_FALSE(try_round_links(3.9, LinkRounding::down_to_even));
}

// 2026-11-25: a hair above the most links, and what rounds down to them, were refused.
TEST(RoundLinks, AsksTheWholeCountForItsRange) {
  EXPECT_EQ(round_links(10000.0 + 0.9e-9), 10000_links);
  EXPECT_EQ(round_links(10001.9, LinkRounding::down_to_even), 10000_links);
  EXPECT_EQ(round_links(10000.9, LinkRounding::nearest_even), 10000_links);
  EXPECT_FALSE(try_round_links(10001.0, LinkRounding::nearest_even));
  EXPECT_FALSE(try_round_links(10000.0 + 2e-9, LinkRounding::up));
  EXPECT_EQ(round_links(3.1, LinkRounding::up), 4_links);
  EXPECT_FALSE(try_round_links(3.0, LinkRounding::up));
}

// 2026-11-25: the range was given as 0 to 10000 at times, and the count named was not the one asked about.
TEST(RoundLinks, NamesTheCountAskedForAndTheRange) {
  const auto sentence = [](double links, LinkRounding rounding) {
    return std::string(try_round_links(links, rounding).error().what());
  };
  EXPECT_EQ(sentence(-1.0, LinkRounding::up_to_even), "number of links is -1; expected 4 to 10000");
  EXPECT_EQ(sentence(3.9, LinkRounding::down_to_even), "number of links is 3.9; expected 4 to 10000");
  EXPECT_EQ(sentence(10000.5, LinkRounding::up), "number of links is 10000.5; expected 4 to 10000");
  EXPECT_EQ(sentence(std::nan(""), LinkRounding::up), "number of links is not a number; expected 4 to 10000");
  EXPECT_EQ(sentence(HUGE_VAL, LinkRounding::nearest_even), "number of links is infinite; expected 4 to 10000");
}

TEST(LinksToCut, SaysOfOneLinkThatItIsMissing) {
  EXPECT_STREQ(try_links_to_cut(109_links, 110_links).error().what(),
               "number of links bought is 109; expected at least 110 (1 is missing)");
  EXPECT_THROW(static_cast<void>(links_to_cut(109_links, 110_links)), RangeError);
}

TEST(LinkRounding, HasItsName) {
  EXPECT_EQ(to_string(LinkRounding::up_to_even), "up to even");
  EXPECT_EQ(to_string(LinkRounding::nearest_even), "nearest even");
  EXPECT_EQ(to_string(LinkRounding::down_to_even), "down to even");
  EXPECT_EQ(to_string(LinkRounding::up), "up");
}

TEST(RoundLinks, RefusesARoundingThatIsNone) {
  const auto none = try_round_links(110.0, static_cast<LinkRounding>(99));
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().kind(), ErrorKind::range);
}

}  // namespace
