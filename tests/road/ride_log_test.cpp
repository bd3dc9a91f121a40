// SPDX-License-Identifier: MIT
#include <layshaft/road/ride_log.hpp>

#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <vector>

namespace {
using namespace layshaft;

std::string refusal(RideColumns columns, Duration gap = RideLog::usual_gap) {
  const auto log = RideLog::make(std::move(columns), gap);
  return log ? "none" : log.error().what();
}

TEST(RideLog, SaysWhichSampleIsWrong) {
  constexpr double nothing = std::numeric_limits<double>::quiet_NaN(),
                   endless = std::numeric_limits<double>::infinity();
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}}), "none");
  EXPECT_EQ(refusal({}), "number of samples is 0; expected at least 2");
  EXPECT_EQ(refusal({{0}, {3}, {}, {}}), "number of samples is 1; expected at least 2");
  EXPECT_EQ(refusal({{0, 1}, {}, {}, {}}), "number of speeds is 0; expected 2, one a time");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {600}, {}}), "number of heights is 1; expected 2, one a time");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {1, 2, 3}}), "number of engine speeds is 3; expected 2, one a time");
  EXPECT_EQ(refusal({{0, 1, 1}, {3, 4, 5}, {}, {}}), "time 3 is 1 s; expected more than the 1 s before it");
  EXPECT_EQ(refusal({{0, 2, 1}, {3, 4, 5}, {}, {}}), "time 3 is 1 s; expected more than the 2 s before it");
  EXPECT_EQ(refusal({{0, nothing}, {3, 4}, {}, {}}),
            "time 2 is not a number; expected -1000000000000 s to 1000000000000 s");
  EXPECT_EQ(refusal({{0, 1}, {3, -1}, {}, {}}), "speed 2 is -3.6 km/h; expected 0 km/h to 1000 km/h");
  EXPECT_EQ(refusal({{0, 1}, {endless, 4}, {}, {}}), "speed 1 is infinite; expected 0 km/h to 1000 km/h");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {600, 12000}, {}}), "height 2 is 12000 m; expected -1000 m to 11000 m");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {nothing, 3}}),
            "engine speed 1 is not a number; expected 0 rpm to 100000 rpm");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}, {3.1, 4.1}, {7000, 7000}}), "none");  // it counts in steps
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}, {3.1}, {}}), "number of indicated speeds is 1; expected 2, one a time");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}, {3, -1}, {}}),
            "indicated speed 2 is -3.6 km/h; expected 0 km/h to 1000 km/h");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}, {}, {0}}), "number of odometer readings is 1; expected 2, one a time");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}, {}, {0, nothing}}),
            "odometer reading 2 is not a number; expected 0 km to 10000000 km");
  EXPECT_EQ(refusal({{0, 1, 2}, {3, 4, 5}, {}, {}, {}, {8000, 9000, 8000}}),
            "odometer reading 3 is 8 km; expected at least the 9 km before it");
  EXPECT_EQ(refusal({{0, 1}, {3, 4}, {}, {}}, 0_s), "gap is 0 s; expected 0.01 s to 86400 s");
  EXPECT_THROW(RideLog(RideColumns{}), RangeError);
}

TEST(RideLog, LeavesOutItsGaps) {
  const RideLog log({{0, 1, 2, 100, 101}, {3, 4, 5, 6, 7}, {}, {}});
  std::vector<std::size_t> places;
  log.for_each_stretch([&](std::size_t place, double seconds) {
    EXPECT_EQ(seconds, 1.0);
    places.push_back(place);
  });
  EXPECT_EQ(places, (std::vector<std::size_t>{0, 1, 3}));
  EXPECT_EQ(log.samples(), 5u);
  EXPECT_FALSE(log.has_heights() || log.has_engine_speeds() || log.has_indicated_speeds() || log.has_odometers());
}

}  // namespace
