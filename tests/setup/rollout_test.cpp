// SPDX-License-Identifier: MIT
#include <layshaft/setup/rollout.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

constexpr Band<Length> measured{1490_mm, 1500_mm, 1510_mm};
constexpr TyreSize tyre = "110/100-18"_tyre;

TEST(Rollout, OfAMarkedTyreHasItsSizeAndItsRollingFactorAsCauses) {
  static_assert(Rollout(tyre).circumference() == rolling_circumference(tyre));
  for (const Corner size : corners)
    for (const Corner rolling : corners)
      EXPECT_EQ(Rollout(tyre).at(size, rolling), rolling_circumference(tyre, size, rolling));
  EXPECT_LT(Rollout(tyre).at(Corner::low, Corner::nominal), Rollout(tyre).at(Corner::high, Corner::nominal));
  EXPECT_LT(Rollout(tyre).at(Corner::nominal, Corner::low), Rollout(tyre).at(Corner::nominal, Corner::high));
}

TEST(Rollout, ThatWasMeasuredHasOneCause) {
  static_assert(Rollout(measured).circumference() == measured);
  for (const Corner size : corners)
    for (const Corner rolling : corners) EXPECT_EQ(Rollout(measured).at(size, rolling), measured.at(size));
}

TEST(Rollout, OfASetupIsTheMeasurementWhereThereIsOne) {
  const layshaft::Setup marked({.front = 12_teeth, .rear = 47_teeth, .tyre = tyre});
  const layshaft::Setup both({.front = 12_teeth, .rear = 47_teeth, .tyre = tyre, .circumference = measured});
  EXPECT_EQ(Rollout(marked).circumference(), rolling_circumference(tyre));
  EXPECT_EQ(Rollout(both).circumference(), measured);
}

struct Shared {
  Rollout a, b;
  bool size, rolling;
};

TEST(Rollout, SharesTheCausesThatActOnBothAlike) {
  const Band<Length> other{1480_mm, 1500_mm, 1510_mm};
  const TyreSize special("110/100-18", TyreUse::special);
  const TyreSize with_service = "110/100-18 64M"_tyre;
  const TyreSize wider = "120/100-18"_tyre;
  const TyreSize radial = "110/100R18"_tyre;
  for (const Shared& one : {
           Shared{Rollout(tyre), Rollout(tyre), true, true},
           Shared{Rollout(tyre), Rollout(with_service), true, true},  // the same tyre, marked at length
           Shared{Rollout(tyre), Rollout(special), false, true},      // knobs stand higher
           Shared{Rollout(tyre), Rollout(wider), false, true},
           Shared{Rollout(tyre), Rollout(radial), false, false},  // built another way, it flattens another way
           Shared{Rollout(tyre), Rollout(measured), false, false},
           Shared{Rollout(measured), Rollout(measured), true, false},
           Shared{Rollout(measured), Rollout(other), false, false},
       }) {
    EXPECT_EQ(share_size(one.a, one.b), one.size);
    EXPECT_EQ(share_size(one.b, one.a), one.size);
    EXPECT_EQ(share_rolling(one.a, one.b), one.rolling);
    EXPECT_EQ(share_rolling(one.b, one.a), one.rolling);
  }
}

TEST(Rollout, OfAWornTyreHasTheTreadTakenOff) {
  const Rollout fresh(tyre), worn(tyre, 6_mm);
  for (const Corner size : corners)
    for (const Corner rolling : corners) {
      const double factor = rolling_factor(tyre.construction()).at(rolling);
      EXPECT_EQ(worn.at(size, rolling), rolling_circumference(tyre.overall_diameter().at(size) - 12_mm, factor));
      EXPECT_LT(worn.at(size, rolling), fresh.at(size, rolling));
    }
  // Worn or not, it is one tyre, with one size and one way to flatten.
  EXPECT_TRUE(share_size(fresh, worn));
  EXPECT_TRUE(share_rolling(fresh, worn));
}

TEST(Rollout, OfASetupHasItsTreadWorn) {
  const layshaft::Setup worn({.front = 12_teeth, .rear = 47_teeth, .tyre = tyre, .tread_worn = 6_mm});
  EXPECT_EQ(Rollout(worn).circumference(), Rollout(tyre, 6_mm).circumference());
}

}  // namespace
