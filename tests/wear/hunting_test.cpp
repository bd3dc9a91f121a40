// SPDX-License-Identifier: MIT
#include <layshaft/wear/hunting.hpp>

#include <gtest/gtest.h>
#include <core/formula_range.hpp>

#include <set>
#include <vector>

namespace {
using namespace layshaft;
using layshaft_test::expect_range;

// Source: a club's published example of sprocket and chain periods: 96 links on 15 teeth meet the same pair after 5
// passes of the chain, on 14 after 7.
TEST(Hunting, AgreesWithThePublishedExample) {
  static_assert(hunting(15_teeth, 96_links).passes == 5);
  static_assert(hunting(14_teeth, 96_links).passes == 7);
}

// 14 teeth repeat later, and yet each of them meets only one kind of link: the period alone ranks wrongly.
TEST(Hunting, KnowsTheKindsOfLinksToo) {
  EXPECT_EQ(hunting(15_teeth, 96_links), (Hunting{5, 32, 2, 32.0 / 96.0, 0.0, 0.0}));
  EXPECT_EQ(hunting(14_teeth, 96_links), (Hunting{7, 48, 1, 0.25, 0.5, 0.5}));
}

// Counted out, link by link.
TEST(Hunting, AgreesWithCountingOut) {
  for (int teeth = 9; teeth <= 60; ++teeth)
    for (int links = 60; links <= 130; ++links) {
      std::set<int> met;
      std::set<int> kinds;
      int link = 0;
      int turns = 0;
      do {
        met.insert(link);
        kinds.insert(links % 2 != 0 ? 0 : link % 2);
        link = (link + teeth) % links;
        ++turns;
      } while (link != 0);
      const Hunting found = hunting(Teeth(teeth), Links(links));
      ASSERT_EQ(found.distinct_links, static_cast<int>(met.size()));
      ASSERT_EQ(found.passes, turns * teeth / links);
      if (links % 2 == 0) {
        ASSERT_EQ(found.link_kinds, static_cast<int>(kinds.size()));
      }
    }
}

// A real loop, tooth by tooth: which kinds of link does each tooth get to see?
TEST(Hunting, CountsTheTeethOfOneKindLikeAWalkOfTheLoop) {
  for (int teeth = 9; teeth <= 40; ++teeth)
    for (int links = 60; links <= 130; links += 2) {
      std::vector<std::set<int>> sees(static_cast<std::size_t>(teeth));
      for (int meeting = 0; meeting < teeth * links; ++meeting)
        sees[static_cast<std::size_t>(meeting % teeth)].insert(meeting % links % 2);
      int inner = 0, outer = 0;
      for (const auto& kinds : sees) {
        if (kinds == std::set{0}) ++inner;
        if (kinds == std::set{1}) ++outer;
      }
      const Hunting found = hunting(Teeth(teeth), Links(links));
      ASSERT_EQ(found.inner_only * teeth, inner) << teeth << " teeth, " << links << " links";
      ASSERT_EQ(found.outer_only * teeth, outer) << teeth << " teeth, " << links << " links";
    }
}

TEST(HuntingFormulas, AreThoseOfTheHunting) {
  for (int teeth = Teeth::least; teeth <= 60; ++teeth)
    for (int links = 60; links <= 130; ++links) {
      const Hunting found = hunting(Teeth(teeth), Links(links));
      ASSERT_EQ(passes(Teeth(teeth), Links(links)), found.passes);
      ASSERT_EQ(distinct_links(Teeth(teeth), Links(links)), found.distinct_links);
    }
  expect_range<formula::passes>("##", 14_teeth, 96_links);
  expect_range<formula::distinct_links>("##", 14_teeth, 96_links);
}

}  // namespace
