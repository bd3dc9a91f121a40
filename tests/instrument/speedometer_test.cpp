// SPDX-License-Identifier: MIT
#include <layshaft/instrument/speedometer.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace {
using namespace layshaft;

TEST(Speedometer, NeedNotKnowItsOwnError) {
  const Speedometer speedometer(SpeedometerSensor::front_wheel);
  EXPECT_EQ(speedometer.sensor(), SpeedometerSensor::front_wheel);
  EXPECT_FALSE(speedometer.reading_error());
  EXPECT_FALSE(speedometer == Speedometer(SpeedometerSensor::front_wheel, Band<double>::exactly(0.0)));
}

TEST(Speedometer, HasAnErrorFromThirtyPercentSlowToFiftyPercentFast) {
  for (const double good : {-0.3, 0.0, 0.04, 0.5}) {
    const auto made = Speedometer::make(SpeedometerSensor::layshaft, Band<double>::exactly(good));
    ASSERT_TRUE(made) << good;
    EXPECT_EQ(made->reading_error(), Band<double>::exactly(good));
  }
  for (const double bad : {-0.3001, 0.5001, 4.0, std::numeric_limits<double>::quiet_NaN(),
                           std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()})
    for (const Band<double>& band :
         {Band<double>{bad, 0.1, 0.2}, Band<double>{0.0, bad, 0.2}, Band<double>{0.0, 0.1, bad}}) {
      const auto made = Speedometer::make(SpeedometerSensor::layshaft, band);
      ASSERT_FALSE(made) << bad;
      EXPECT_EQ(made.error().kind(), ErrorKind::range);
      EXPECT_TRUE(std::string(made.error().what()).starts_with("reading_error is ")) << made.error().what();
      EXPECT_EQ(made.error().expected(), "-0.3 to 0.5");
      EXPECT_THROW(Speedometer(SpeedometerSensor::layshaft, band), RangeError);
    }
  EXPECT_STREQ(Speedometer::make(SpeedometerSensor::layshaft, Band<double>{0.1, 0.0, 0.2}).error().what(),
               "reading_error is 0.1, 0, 0.2; expected low, nominal and high in rising order");
}

TEST(Speedometer, IsAnotherOnAnotherWheel) {
  EXPECT_FALSE(Speedometer(SpeedometerSensor::front_wheel) == Speedometer(SpeedometerSensor::layshaft));
  EXPECT_TRUE(Speedometer(SpeedometerSensor::layshaft) == Speedometer(SpeedometerSensor::layshaft));
}

}  // namespace
