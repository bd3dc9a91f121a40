// SPDX-License-Identifier: MIT
#include <layshaft/io/ride_log.hpp>

#include <layshaft/io/json.hpp>
#include <layshaft/road/log_machine.hpp>
#include <layshaft/road/log_use.hpp>
#include <layshaft/setup/setup.hpp>

#include <gtest/gtest.h>

#include <road/invented_ride.hpp>

#include <fstream>
#include <iterator>
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
  const RideColumns shown =
      read_ride_log("indicated_kmh,odometer_km,time_s,speed_mps\n37,3412.1,0,10\n38,3412.2,1,10\n").columns();
  EXPECT_EQ(shown.indicated_speeds[0], (37.0_kmh).value());
  EXPECT_EQ(shown.odometers[1], 3412.2 * 1000.0);
  const RideColumns miles =
      read_ride_log("indicated_mph,odometer_mile,time_s,speed_mps\n37,3412,0,10\n38,3412,1,10\n").columns();
  EXPECT_EQ(miles.indicated_speeds[0], (37.0_mph).value());
  EXPECT_EQ(miles.odometers[1], (3412.0_mile).value());
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
  EXPECT_EQ(refusal("time_s,speed_kmh,odometer_km,odometer_mile\n0,3,3,3\n"),
            "line 1 names the column odometer_mile, or another of the same, twice");
  EXPECT_EQ(refusal("time_s,speed_kmh,odometer_km\n0,3,4\n1,3,3.5\n"),
            "odometer reading 2 is 3.5 km; expected at least the 4 km before it");
  EXPECT_EQ(refusal("time_s,speed_kmh,indicated_kmh\n0,3,\n"),
            "line 2, indicated_kmh: the cell is empty; expected a number with a decimal point");
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

std::string text_of(const std::string& path) {
  std::ifstream file(path);
  EXPECT_TRUE(file) << path << " is missing";
  return std::string(std::istreambuf_iterator<char>(file), {});
}

// The example log is what tests/road/invented_ride.hpp makes for the machine beside it, to the digits it is written in:
// `to_csv(invented(evening_loop(...)))` writes it anew.
TEST(EveningLoop, IsTheInventedRideOfTheTrailBike) {
  const Machine machine = machine_from_json(text_of(std::string(LAYSHAFT_MACHINES_DIR) + "/trail_bike.json"));
  const layshaft::Setup& stock = machine.stock();
  const Length circumference = rolling_circumference(*stock.tyre()).nominal;
  const layshaft_test::InventedRide ride = layshaft_test::evening_loop(circumference.value());
  const RoadSpeeds speeds(machine.gearbox(), stock.front(), stock.rear(), Band<Length>::exactly(circumference));
  ASSERT_EQ(speeds.overall_ratios().size(), ride.overall_ratios.size());
  for (std::size_t i = 0; i < 6; ++i) EXPECT_NEAR(ride.overall_ratios[i], speeds.overall_ratios()[i], 1e-12);
  const std::string text = text_of(std::string(LAYSHAFT_MACHINES_DIR) + "/../rides/evening_loop.csv");
  EXPECT_LT(text.size(), 80000u);
  EXPECT_TRUE(text.starts_with("# invented ride\n"));
  const RideLog log = read_ride_log(text);
  const RideColumns expected = read_ride_log(layshaft_test::to_csv(layshaft_test::invented(ride))).columns();
  const RideColumns& columns = log.columns();
  ASSERT_EQ(columns.times, expected.times);
  for (std::size_t i = 0; i < log.samples(); ++i) {  // another library's sine may round another way
    EXPECT_NEAR(columns.speeds[i], expected.speeds[i], 0.011 / 3.6);
    EXPECT_NEAR(columns.heights[i], expected.heights[i], 0.11);
    EXPECT_NEAR(columns.engine_speeds[i], expected.engine_speeds[i], (11.0_rpm).value());
    EXPECT_NEAR(columns.indicated_speeds[i], expected.indicated_speeds[i], 0.11 / 3.6);
    EXPECT_NEAR(columns.odometers[i], expected.odometers[i], 10.1);
  }

  const LogMachine told = machine_of_log(log);
  ASSERT_EQ(told.gears.size(), 6u);
  for (std::size_t i = 0; i < 6; ++i)
    EXPECT_NEAR(told.gears[i].overall_ratio(circumference).nominal / ride.overall_ratios[i], 1.0, 0.005);
  const InstrumentError error = instrument_error(log);
  EXPECT_NEAR(error.speedometer->nominal, machine.speedometer().reading_error()->nominal, 0.005);
  EXPECT_NEAR(*error.odometer, ride.odometer_error, 0.005);

  OverallRatios ratios;
  for (const double ratio : ride.overall_ratios) ratios.push_back(ratio);
  const RideDrive drive{ratios, circumference, ShiftRule::at_engine_speeds(5400_rpm, 2600_rpm, ratios, circumference),
                        RideLoad{RoadLoad::by_mass(230_kg), 230_kg}};
  const RideUse use = ride_use(log, drive);
  EXPECT_NEAR(use.gaps() / units::s, 46.0, 1.5);
  for (int gear = 1; gear <= 6; ++gear) EXPECT_GT(use.gear(gear).time, 20_s);
  EXPECT_GT(*use.wheel_work(), *use.held_back());
}

}  // namespace
