// SPDX-License-Identifier: MIT
#include <layshaft/io/ride_log.hpp>

#include <gtest/gtest.h>

#include <random>
#include <string>

namespace {
using namespace layshaft;

// The LEGAL list beside the reader, and what people's recorders make of it.
TEST(ReadRideLog, TakesWhatRecordersWrite) {
  const RideColumns expected{{0, 1}, {36.0 * units::kmh.value(), 18.0 * units::kmh.value()}, {}, {}};
  for (const char* text :
       {"time_s,speed_kmh\n0,36\n1,18\n", "time_s,speed_kmh\r\n0,36\r\n1,18",
        "\xEF\xBB\xBFtime_s,speed_kmh\n0,36\n1,18\n", "# a ride\n\ntime_s;speed_kmh\n0;36\n\n# a bridge\n1;18\n",
        "speed_kmh\ttime_s\n36\t0\n18\t1\n", "\"time_s\",\"note\",\"speed_kmh\"\n0,abc,\"36\"\n1,,\"18\"\n",
        "time_s, speed_kmh\n0, 36.0\n1, 1.8e1\n"}) {
    const auto log = try_read_ride_log(text);
    ASSERT_TRUE(log) << text << log.error().what();
    EXPECT_EQ(log->columns(), expected) << text;
  }
  const RideLog all = read_ride_log("time_s,speed_mps,height_m,engine_rpm\n0,10,612,4000\n0.5,11,613,4100\n", 2_s);
  EXPECT_EQ(all.columns().heights[1], 613.0);
  EXPECT_EQ(all.columns().engine_speeds[0], (4000_rpm).value());
  EXPECT_EQ(all.gap(), 2_s);
  EXPECT_EQ(read_ride_log("time_s,speed_mph\n0,10\n1,10\n").columns().speeds[0], (10_mph).value());
}

std::string refusal(std::string_view text) {
  const auto log = try_read_ride_log(text);
  return log ? "none" : log.error().what();
}

TEST(ReadRideLog, SaysWhichLineAndColumnIsWrong) {
  EXPECT_EQ(refusal(""), "the ride log is empty; expected a line that names its columns");
  EXPECT_EQ(refusal("# nothing\n\n"), "the ride log is empty; expected a line that names its columns");
  EXPECT_EQ(refusal("0,12.5\n1,13\n"), "line 1 names no column time_s; expected names such as \"time_s,speed_kmh\"");
  EXPECT_EQ(refusal("time_s,height_m\n0,3\n"), "line 1 names no column of speeds: speed_kmh, speed_mps or speed_mph");
  EXPECT_EQ(refusal("time_s,speed_kmh,speed_mps\n0,3,3\n"),
            "line 1 names the column speed_mps, or another of the same, twice");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0,36\n1,\n"),
            "line 3, speed_kmh: the cell is empty; expected a number with a decimal point");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0,fast\n"),
            "line 2, speed_kmh: no number, \"fast\"; expected a number with a decimal point");
  EXPECT_EQ(refusal("time_s;speed_kmh\n0;12,5\n"),
            "line 2, speed_kmh: no number, \"12,5\"; expected a number with a decimal point");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0,12,5\n"), "line 2 has more cells than the first line; expected 2");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0\n"), "line 2 has fewer cells than the first line; expected 2");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0,nan\n1,1\n"),
            "line 2, speed_kmh: no number, \"nan\"; expected a number with a decimal point");
  EXPECT_EQ(refusal("time_s,speed_kmh\n0,1e999\n1,1\n").substr(0, 18), "line 2, speed_kmh:");
  EXPECT_EQ(refusal("time_s,speed_kmh\n1,36\n0,36\n"), "time 2 is 0 s; expected more than the 1 s before it");
  EXPECT_EQ(refusal("time_s,speed_kmh\n"), "number of samples is 0; expected at least 2");
  EXPECT_THROW((void)read_ride_log(""), Error);
}

TEST(ReadRideLog, NeverBreaksOnWhateverComes) {
  std::mt19937_64 random(2);
  const std::string good = "time_s,speed_kmh,height_m\n0,36,600\n1,37.5,601\n2,38,602\n";
  const char signs[] = ",;\n\r\t\"#.e-0123456789\0\xff x";
  for (int round = 0; round < 20000; ++round) {
    std::string text = good;
    for (int i = 0; i < 3; ++i) text[random() % text.size()] = signs[random() % (sizeof signs - 1)];
    text.resize(random() % (text.size() + 1));
    const auto log = try_read_ride_log(text);
    if (!log) {
      EXPECT_FALSE(std::string(log.error().what()).empty());
    }
  }
}

}  // namespace
