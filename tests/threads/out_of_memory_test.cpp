// SPDX-License-Identifier: MIT
// Every request for memory is refused once. Each time bad_alloc comes out, whatever was begun is given back, and what
// was handed in, or was to be written to, is as it was.
#include "threads/allocations.hpp"

#include <layshaft/choose/appraise_rows.hpp>
#include <layshaft/choose/choose.hpp>
#include <layshaft/explain.hpp>
#include <layshaft/io/json.hpp>
#include <layshaft/io/ride_log.hpp>
#include <layshaft/show/working_text.hpp>

#include <setup/example_machines.hpp>

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace {
using namespace layshaft_test;

#define EXPECT_WHOLE(least, ...)                             \
  do {                                                       \
    const RanOut ran = run_out_of_memory(__VA_ARGS__);       \
    EXPECT_EQ(ran.trouble, "");                              \
    EXPECT_GE(ran.requests, std::size_t{least}) << "so few"; \
  } while (false)

TEST(OutOfMemory, the_harness_finds_what_is_left_behind_and_what_goes_wrong) {
  int* lost = nullptr;
  const RanOut leaking = run_out_of_memory([&] {
    delete std::exchange(lost, nullptr);
    lost = new int(1);
    const std::vector<int> then(3);
    return true;
  });
  delete lost;
  EXPECT_EQ(leaking.trouble, "memory was left behind with request 1 refused");  // what the run before it held is gone
  const RanOut swallowing = run_out_of_memory([] {
    try {
      return std::vector<int>(3).size() == 3;
    } catch (...) {
      return false;
    }
  });
  EXPECT_EQ(swallowing.trouble, "it went wrong with request 1 refused");
  const RanOut another = run_out_of_memory([] {
    try {
      return std::vector<int>(3).size() == 3;
    } catch (...) {
      throw 1;
    }
  });
  EXPECT_EQ(another.trouble, "something else than bad_alloc came out with request 1 refused");
  EXPECT_EQ(run_out_of_memory([] { return false; }).trouble, "it went wrong with all the memory there is");
}

TEST(OutOfMemory, texts_that_cannot_be_read) {
  EXPECT_WHOLE(3, [] { return !TyreSize::make("a marking that is none, and longer than a short string"); });
  EXPECT_WHOLE(3, [] {
    try {
      const TyreSize size("110/9O-18");
      return false;
    } catch (const ParseError& error) {
      return !error.caret().empty();
    }
  });
  EXPECT_WHOLE(3, [] { return !ChainSeries::make("a chain that is none, and longer than a short string"); });
  EXPECT_WHOLE(3, [] { return !try_parse_quantity<Length>("612 leagues, which is no unit of length"); });
  EXPECT_WHOLE(1, [] { return Teeth::make(3).error().in("front").kind() == ErrorKind::range; });
  EXPECT_WHOLE(1, [] { return TyreSize("LT245/75R16 120/116Q").designation() == "LT245/75R16 120/116Q"; });
}

TEST(OutOfMemory, machines_as_json) {
  for (const Machine& machine : {trail_bike(), all_machines().back()}) {  // one of few parts, one of many
    const std::string text = to_json(machine);
    EXPECT_WHOLE(20, [&] { return machine_from_json(text) == machine; });
    EXPECT_WHOLE(10, [&] { return to_json(machine) == text; });
    EXPECT_WHOLE(20, [&] { return *try_machine_from_json(text) == machine; });
  }
  const std::string text = to_json(all_machines().front());
  for (const std::string& broken : {text.substr(0, text.size() / 2), std::string(R"({"layshaft": 1, "wheels": 3})")})
    EXPECT_WHOLE(5, [&] { return !try_machine_from_json(broken); });
  EXPECT_WHOLE(5, [] { return !try_setup_from_json(R"({"layshaft": 1, "front": 14.5, "rear": 45})"); });
}

TEST(OutOfMemory, a_machine_that_was_to_be_read_anew_is_as_it_was) {
  const std::vector<Machine> machines = all_machines();
  const std::string text = to_json(machines[1]);
  Machine machine = machines[0];
  for (std::size_t number = 1;; ++number) {
    bool refused = false;
    {
      const RefusedRequest of(number);
      try {
        machine = machine_from_json(text);
      } catch (const std::bad_alloc&) {
        refused = true;
      }
    }
    if (!refused) break;
    ASSERT_EQ(machine, machines[0]) << number;
  }
  EXPECT_EQ(machine, machines[1]);
}

TEST(OutOfMemory, appraisals_and_comparisons_that_end_in_an_error) {
  // Without an error they ask for no memory: allocates_nothing_test.cpp.
  for (const Machine& machine : {trail_bike(), cargo_cycle()})
    for (const int links : {20, 0}) {
      const layshaft::Setup none = with(machine.stock(), [&](SetupParts& parts) {
        parts.rear = 300_teeth;
        parts.links.reset();
        if (links > 0) parts.links = Links(links);
      });
      const auto appraisal = try_appraise(machine, none);
      ASSERT_FALSE(appraisal);
      const std::string what = appraisal.error().what();
      EXPECT_WHOLE(3, [&] { return std::string_view(try_appraise(machine, none).error().what()) == what; });
      EXPECT_WHOLE(3, [&] { return !try_compare(machine, machine.stock(), none); });
      EXPECT_WHOLE(3, [&] {
        try {
          static_cast<void>(appraise(machine, none));
          return false;
        } catch (const Error& error) {
          return error.what() == what;
        }
      });
    }
}

TEST(OutOfMemory, workings_and_their_text) {
  const Machine machine = trail_bike();
  EXPECT_WHOLE(50, [&] { return !to_text(explain(machine, machine.stock(), "overall ratio", {.gear = 1})).empty(); });
  EXPECT_WHOLE(5, [&] { return !try_explain(machine, machine.stock(), "no such number", {}); });
}

TEST(OutOfMemory, a_choice_in_one_thread_and_in_three) {
  const Machine machine = all_machines().front();
  Space space{.fronts = {{12_teeth, {}, {}}, {13_teeth, {}, {}}},
              .rears = {{46_teeth, {}, {}}, {47_teeth, {}, {}}, {48_teeth, {}, {}}, {49_teeth, {}, {}}},
              .tyres = {{TyreSize("110/100-18 64M"), {}, {}}, {TyreSize("120/90-18 65M"), {}, {}}},
              .chains = {}};
  Goals goals;
  goals.wishes = {{{Measure::thrust_change}, Want::more}, {{Measure::rear_life_change}, Want::more}};
  for (const int threads : {1, 3}) {
    const Choice choice = choose(machine, space, goals, {.shortlist = 2, .threads = threads, .progress = {}});
    EXPECT_WHOLE(50, [&] {
      const auto again = try_choose(machine, space, goals, {.shortlist = 2, .threads = threads, .progress = {}});
      return again->front.size() == choice.front.size() && again->front.front().setup == choice.front.front().setup;
    });
  }
  goals.limits = {
      {{Measure::thrust_change}, Amount::fraction(9.0), {}}};  // which nothing keeps: what would have to give way
  EXPECT_WHOLE(50, [&] { return !try_choose(machine, space, goals)->relaxations.empty(); });
  goals.wishes.clear();
  EXPECT_WHOLE(1, [&] { return !try_choose(machine, space, goals); });
}

TEST(OutOfMemory, rows_in_one_thread_and_in_three) {
  const Machine machine = all_machines().front();
  std::vector<RowDrive> drives;
  for (int rear = 40; rear < 60; ++rear) drives.push_back({{12_teeth, {}, {}}, {Teeth(rear), {}, {}}});
  std::vector<TyreOffer> tyres;
  for (const char* marking : {"110/100-18 64M", "120/90-18 65M"}) tyres.push_back({TyreSize(marking), {}, {}});
  std::vector<std::uint32_t> drive, tyre;
  for (std::uint32_t i = 0; i < 40; ++i) {
    drive.push_back(i % 20);
    tyre.push_back(i % 2);
  }
  std::vector<double> thrust(drive.size());
  const RowColumn column{{Measure::thrust_change}, 1.0, {}, {thrust.data()}, {}};
  for (const int threads : {1, 3}) {
    EXPECT_WHOLE(30, [&] {
      const auto errors = try_appraise_rows(machine, {drives, tyres, drive, tyre}, {&column, 1}, {.threads = threads});
      return errors && errors->drives.size() == drives.size();
    });
  }
}

TEST(OutOfMemory, ride_logs) {
  std::string text = "time_s,speed_kmh,engine_rpm\n";
  for (int i = 0; i < 200; ++i) text += std::to_string(i) + ",40.5,4200\n";
  EXPECT_WHOLE(10, [&] { return read_ride_log(text).columns().times.size() == 200; });
  EXPECT_WHOLE(3, [&] { return !try_read_ride_log("time_s,speed_kmh\n0,no number at all, and a long one\n"); });
  EXPECT_WHOLE(1, [&] { return !try_read_ride_log(""); });
}

#undef EXPECT_WHOLE

}  // namespace
