// SPDX-License-Identifier: MIT
#include "setup/machines.hpp"

#include <gtest/gtest.h>

#include <string>

namespace {
using namespace layshaft;
using layshaft_test::trail_bike_parts;

Result<Machine> named(const std::string& name) {
  MachineParts parts = trail_bike_parts();
  parts.name = name;
  return Machine::make(parts);
}

TEST(Machine, KeepsWhatItIsMadeOf) {
  const Machine machine = layshaft_test::cargo_cycle();
  const MachineParts parts = layshaft_test::cargo_cycle_parts();
  EXPECT_EQ(machine.name(), "Weir cargo cycle");
  EXPECT_EQ(machine.kind(), MachineKind::cycle);
  EXPECT_EQ(machine.gearbox(), parts.gearbox);
  EXPECT_EQ(machine.adjuster(), parts.adjuster);
  EXPECT_EQ(machine.chain(), parts.chain);
  EXPECT_EQ(machine.speedometer(), parts.speedometer);
  EXPECT_EQ(machine.stock(), parts.stock);
  EXPECT_EQ(machine, Machine(parts));
  EXPECT_FALSE(machine == layshaft_test::trail_bike());
}

TEST(Machine, IsAMotorcycleUnlessItIsToldOtherwise) {
  EXPECT_EQ(layshaft_test::trail_bike().kind(), MachineKind::motorcycle);
  EXPECT_EQ(to_string(layshaft_test::trail_bike().kind()), "motorcycle");
  EXPECT_EQ(to_string(layshaft_test::cargo_cycle().kind()), "cycle");
  static_assert(to_string(MachineKind::motorcycle) == "motorcycle" && to_string(MachineKind::cycle) == "cycle");
}

TEST(Machine, HasANameOf1To200Bytes) {
  for (const std::size_t good : {1u, 2u, 199u, 200u}) EXPECT_TRUE(named(std::string(good, 'n'))) << good;
  for (const std::size_t bad : {0u, 201u, 100000u}) {
    const auto machine = named(std::string(bad, 'n'));
    ASSERT_FALSE(machine) << bad;
    EXPECT_EQ(machine.error().kind(), ErrorKind::range);
    EXPECT_EQ(machine.error().what(),
              "length of the machine's name is " + std::to_string(bad) + " bytes; expected 1 to 200");
  }
  MachineParts parts = trail_bike_parts();
  parts.name.clear();
  EXPECT_THROW(Machine{parts}, RangeError);
}

// A name in another encoding would make a JSON file that nobody can read.
TEST(Machine, HasANameInUtf8) {
  EXPECT_TRUE(named("Wühlmaus 🛵"));
  const auto latin = named("W\xfchlmaus");
  ASSERT_FALSE(latin);
  EXPECT_EQ(latin.error().kind(), ErrorKind::parse);
  EXPECT_EQ(latin.error().position(), 1u);
  EXPECT_STREQ(latin.error().what(),
               "a byte of the machine's name that is no character at position 1 of "
               "\"W\\xfchlmaus\"; expected text in UTF-8");
}

// 2026-11-26: a name goes into pages, pictures and terminals, where a control character is a command.
TEST(Machine, HasANameWithoutControlCharacters) {
  for (const char* bad : {"A\nB", "A\x1b[2J", "A\x7f",
                          "A\xc2\x9b"
                          "31m",
                          "A\xe2\x80\xae"
                          "B"}) {
    const auto refused = named(bad);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().position(), 1u);
    EXPECT_TRUE(std::string(refused.error().what()).starts_with("a control character in the machine's name"));
  }
  EXPECT_FALSE(named(std::string("A\0B", 3)));
  EXPECT_TRUE(named("A\xc2\xa0\xe2\x80\x93 B, \xd7\x9e"));  // other blanks, dashes and scripts are characters
}

TEST(Machine, TakesADriveEfficiencyFromThreeTenthsToOne) {
  const auto of_efficiency = [](const Band<double>& efficiency) {
    MachineParts parts = trail_bike_parts();
    parts.drive_efficiency = efficiency;
    return Machine::make(parts);
  };
  for (const Band<double>& good :
       {Band<double>{0.3, 0.8, 1.0}, Band<double>::exactly(0.3), Band<double>::exactly(1.0)}) {
    ASSERT_TRUE(of_efficiency(good));
    EXPECT_EQ(of_efficiency(good)->drive_efficiency(), good);
  }
  for (const double bad : {0.2999, 1.0001, -0.8, 85.0}) {
    const auto refused = of_efficiency(Band<double>::exactly(bad));
    ASSERT_FALSE(refused) << bad;
    EXPECT_EQ(refused.error().expected(), "0.3 to 1");
    EXPECT_TRUE(std::string(refused.error().what()).starts_with("drive_efficiency is ")) << refused.error().what();
  }
}

TEST(Machine, IsAnotherWithAnotherGreatestTorque) {
  const auto of = [](Torque torque, AngularSpeed speed) {
    MachineParts parts = trail_bike_parts();
    parts.peak_torque = PeakTorque{torque, speed};
    return Machine(parts);
  };
  EXPECT_EQ(of(26_Nm, 6800_rpm), of(26_Nm, 6800_rpm));
  EXPECT_FALSE(of(26_Nm, 6800_rpm) == of(27_Nm, 6800_rpm));
  EXPECT_FALSE(of(26_Nm, 6800_rpm) == of(26_Nm, 6900_rpm));
}

TEST(Machine, ChecksWhatItAsksOfItsTyre) {
  MachineParts parts = layshaft_test::trail_bike_parts();
  parts.tyre_asked.axle_load = Mass::from_value(-1.0);
  const auto refused = Machine::make(parts);
  ASSERT_FALSE(refused);
  EXPECT_TRUE(std::string(refused.error().what()).starts_with("tyre_asked: axle_load"));
  parts.tyre_asked = {.least_tread_depth = 1_mm};
  EXPECT_FALSE(Machine::make(parts));
  parts.tyre_asked = {.axle_load = 205_kg};
  EXPECT_EQ(Machine(parts).tyre_asked().axle_load, 205_kg);
}

TEST(Machine, ChecksItsGreatestTorque) {
  const auto refusal = [](Torque torque, AngularSpeed speed) {
    MachineParts parts = layshaft_test::trail_bike_parts();
    parts.peak_torque = PeakTorque{torque, speed};
    const auto made = Machine::make(parts);
    return made ? std::string() : std::string(made.error().what());
  };
  EXPECT_EQ(refusal(0.09_Nm, 6000_rpm), "peak_torque: torque is 0.09 Nm; expected 0.1 Nm to 10000 Nm");
  EXPECT_EQ(refusal(26_Nm, 0_rpm), "peak_torque: engine_speed is 0 rpm; expected 1 rpm to 100000 rpm");
  EXPECT_NE(refusal(10001_Nm, 6000_rpm), "");
  EXPECT_NE(refusal(26_Nm, 100001_rpm), "");
  EXPECT_EQ(refusal(0.1_Nm, 1_rpm), "");
  EXPECT_EQ(refusal(10000_Nm, 100000_rpm), "");
}

}  // namespace
