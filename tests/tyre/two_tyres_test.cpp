// SPDX-License-Identifier: MIT
#include <layshaft/tyre/two_tyres.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

TEST(TwoTyres, ShareWhatMustBeTheSameForBoth) {
  const TyreSize stock("110/90-18"), marked("110/90-18 M/C 61R TL"), taller("120/90-18"), radial("110/90R18");
  EXPECT_TRUE(share_size(stock, marked));
  EXPECT_FALSE(share_size(stock, taller));
  EXPECT_FALSE(share_size(stock, radial));
  EXPECT_FALSE(share_size(stock, TyreSize("110/90-18", TyreUse::special)));
  EXPECT_TRUE(share_rolling(stock, taller));
  EXPECT_FALSE(share_rolling(stock, radial));
}

TEST(TwoTyres, RunAtEveryCornerOfWhatTheyDoNotShare) {
  const TyreSize stock("110/90-18");
  EXPECT_EQ(two_tyre_corners(stock, TyreSize("110/90-18 61R")).size(), 1u + 4u);
  EXPECT_EQ(two_tyre_corners(stock, TyreSize("120/90-18")).size(), 1u + 8u);
  EXPECT_EQ(two_tyre_corners(stock, TyreSize("120/90R18")).size(), 1u + 16u);
  for (const TyreSize& trial : {TyreSize("110/90-18 61R"), TyreSize("120/90-18"), TyreSize("120/90R18")}) {
    const auto runs = two_tyre_corners(stock, trial);
    EXPECT_EQ(runs[0].base_size, Corner::nominal);
    for (const TwoTyreCorners& at : runs) {
      EXPECT_TRUE(!share_size(stock, trial) || at.base_size == at.trial_size);
      EXPECT_TRUE(!share_rolling(stock, trial) || at.base_rolling == at.trial_rolling);
    }
    EXPECT_FALSE(runs.overfull());
  }
}

}  // namespace
