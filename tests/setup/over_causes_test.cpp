// SPDX-License-Identifier: MIT
#include <layshaft/setup/over_causes.hpp>

#include <gtest/gtest.h>

namespace {
using namespace layshaft;

constexpr auto quotient = [](Length base, Length trial) { return double(trial / base); };

/// The band over every corner of all four causes, the nominal ones in between as well, that the two wheels can stand
/// at.
Band<double> over_every_corner(const Rollout& base, const Rollout& trial) {
  auto band = Band<double>::exactly(quotient(base.circumference().nominal, trial.circumference().nominal));
  for (const Corner base_size : corners)
    for (const Corner base_rolling : corners)
      for (const Corner trial_size : corners)
        for (const Corner trial_rolling : corners) {
          if (share_size(base, trial) && trial_size != base_size) continue;
          if (share_rolling(base, trial) && trial_rolling != base_rolling) continue;
          band.include(quotient(base.at(base_size, base_rolling), trial.at(trial_size, trial_rolling)));
        }
  return band;
}

TEST(OverCauses, FindsTheEndsAmongAllCorners) {
  const Rollout all[] = {Rollout("110/100-18"_tyre),
                         Rollout(TyreSize("110/100-18", TyreUse::special)),
                         Rollout("120/100-18"_tyre),
                         Rollout("120/80R18"_tyre),
                         Rollout(Band<Length>{2000_mm, 2010_mm, 2030_mm}),
                         Rollout(Band<Length>::exactly(2050_mm))};
  for (const Rollout& base : all)
    for (const Rollout& trial : all) {
      const Band<double> band = over_causes(base, trial, quotient), every = over_every_corner(base, trial);
      EXPECT_NEAR(band.low, every.low, 4e-16);  // the corners in between may round another way
      EXPECT_EQ(band.nominal, every.nominal);
      EXPECT_NEAR(band.high, every.high, 4e-16);
    }
}

TEST(OverCauses, CancelsWhatBothShareToZeroWidth) {
  static_assert(over_causes(Rollout("110/100-18"_tyre), Rollout("110/100-18"_tyre), quotient).width() == 0.0);
  static_assert(over_causes(Rollout(Band<Length>{2000_mm, 2010_mm, 2030_mm}),
                            Rollout(Band<Length>{2000_mm, 2010_mm, 2030_mm}), quotient)
                    .width() == 0.0);
  // Of another size but built alike, only the rolling factor cancels: what is left is the two sizes' own.
  const TyreSize base = "110/100-18"_tyre, trial = "120/100-18"_tyre;
  const Band<double> change = over_causes(Rollout(base), Rollout(trial), quotient);
  EXPECT_NEAR(change.low, double(trial.overall_diameter().low / base.overall_diameter().high), 1e-15);
  EXPECT_NEAR(change.high, double(trial.overall_diameter().high / base.overall_diameter().low), 1e-15);
}

TEST(OverCauses, SharesNothingBetweenAMarkingAndAMeasurement) {
  const TyreSize base = "110/100-18"_tyre;
  const Band<Length> measured{2000_mm, 2010_mm, 2030_mm};
  const Band<double> change = over_causes(Rollout(base), Rollout(measured), quotient);
  EXPECT_EQ(change.low, double(measured.low / rolling_circumference(base).high));
  EXPECT_EQ(change.high, double(measured.high / rolling_circumference(base).low));
}

}  // namespace
