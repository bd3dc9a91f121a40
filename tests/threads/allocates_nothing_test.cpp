// SPDX-License-Identifier: MIT
// What is asked of one set-up after the other allocates nothing, so that millions of them run at the speed of the
// arithmetic, and in as many threads as there are.
#include "threads/allocations.hpp"

#include <layshaft/chain/loop_bulk.hpp>
#include <layshaft/choose/choose.hpp>

#include <setup/example_machines.hpp>

#include <gtest/gtest.h>

#include <array>
#include <memory>
#include <string>
#include <vector>

namespace {
using namespace layshaft_test;

/// How often the work asks for memory.
template <class Work>
[[nodiscard]] std::size_t requests_of(const Work& work) {
  const std::size_t before = allocations();
  work();
  return allocations() - before;
}

TEST(AllocatesNothing, this_program_counts) {
  EXPECT_EQ(requests_of([] { const auto probe = std::make_unique<int>(1); }), 1u);
  struct alignas(64) Wide {
    char first;
  };
  EXPECT_EQ(requests_of([] { const auto probe = std::make_unique<Wide>(); }), 1u);
  EXPECT_EQ(requests_of([] { const auto probe = std::make_unique<int[]>(3); }), 1u);
}

TEST(AllocatesNothing, an_appraisal_and_what_is_asked_of_it) {
  int appraised = 0, on_the_road = 0;
  for (const Machine& machine : all_machines())
    for (const layshaft::Setup& setup : all_setups(machine)) {
      const std::size_t before = allocations();
      const auto appraisal = try_appraise(machine, setup);
      if (!appraisal) continue;  // an error is a sentence, which is text
      const auto range = appraisal->try_speed_range(1);
      const AngularSpeed turning = machine.gearbox().rev_limit();
      const auto speed = appraisal->try_speed_at(turning, 1);
      const auto engine = appraisal->try_engine_speed_at(range->lowest.nominal, 1);
      const auto downshift = appraisal->try_downshift(1, range->lowest.nominal);
      const auto shown = appraisal->speedometer().indicated(range->lowest.nominal);
      ASSERT_EQ(allocations(), before) << machine.name();
      EXPECT_TRUE(range && speed && engine && downshift && is_finite(shown.high)) << machine.name();
      ++appraised;
      on_the_road += appraisal->road().has_value();
    }
  EXPECT_GT(appraised, 80);
  EXPECT_GT(on_the_road, 20);
}

TEST(AllocatesNothing, a_comparison_and_its_contributions) {
  int compared = 0;
  for (const Machine& machine : all_machines())
    for (const layshaft::Setup& trial : all_setups(machine)) {
      const std::size_t before = allocations();
      const auto comparison = try_compare(machine, machine.stock(), trial);
      if (!comparison) continue;
      const auto parts = comparison->contributions(Change::thrust);
      ASSERT_EQ(allocations(), before) << machine.name();
      EXPECT_TRUE(!parts.empty()) << machine.name();
      ++compared;
    }
  EXPECT_GT(compared, 80);
}

TEST(AllocatesNothing, thrust_at_a_speed_and_what_resists_there) {
  int asked = 0;
  for (const Machine& machine : all_machines()) {
    if (!machine.engine() || !machine.road_load()) continue;
    const Speed speed = try_appraise(machine, machine.stock())->try_speed_range(2)->highest.nominal * 0.9;
    const std::size_t before = allocations();
    const auto thrust = try_thrust(machine, machine.stock(), 2, speed);
    const Force resists = machine.road_load()->resistance(Unwatched(), speed, Slope(), Corner::nominal);
    const auto pace = walking_pace(machine, machine.stock());
    const auto climbs = try_best_climb(machine, machine.stock(), *machine.road_load(), 1);
    const auto starts = try_standing_start(machine, machine.stock(), *machine.road_load());
    const auto shifts = try_shift_points(machine, machine.stock());
    ASSERT_EQ(allocations(), before) << machine.name();
    EXPECT_TRUE(thrust && climbs && starts && shifts && is_finite(resists) && is_finite(pace.high)) << machine.name();
    ++asked;
  }
  EXPECT_GT(asked, 0);
}

TEST(AllocatesNothing, a_marking_that_can_be_read_and_what_follows_from_it) {
  for (const char* marking : {"110/90-18 M/C 61R TL", "MT90B16", "4.10-18", "31x10.50R15LT", "37-622", "140/80ZR17"}) {
    const std::size_t before = allocations();
    const auto tyre = TyreSize::make(marking);
    const auto rolls = rolling_circumference(*tyre);
    const auto series = ChainSeries::make("520");
    const auto length = try_parse_quantity<Length>("612 mm");
    ASSERT_EQ(allocations(), before) << marking;
    EXPECT_TRUE(tyre && series && length && positive(rolls.low)) << marking;
  }
}

TEST(AllocatesNothing, formulas_and_the_loop_one_by_one_and_in_columns) {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 50_teeth);
  constexpr std::size_t size = 1000;
  std::vector<double> front(size, 13.0), rear(size, 50.0), links(size, 110.0), centre(size);
  rear[7] = 14.5;  // no count of teeth: NaN, not an error
  const double pitch = 15.875;
  EXPECT_EQ(requests_of([&] {
              EXPECT_FALSE(try_chain_centres_mm({&pitch, 1}, front, rear, links, centre));
              EXPECT_FALSE(try_chain_links_of_mm({&pitch, 1}, front, rear, centre, links));
            }),
            0u);
  EXPECT_NEAR(centre[0], 615.99, 0.01);
  EXPECT_FALSE(is_finite(centre[7]));
  double sum = 0.0;
  EXPECT_EQ(requests_of([&] {
              sum += overall_ratio(3.0, 2.5, 13_teeth, 50_teeth) + loop.links(615_mm) +
                     loop.centre(110_links) / units::mm + road_speed(6000_rpm, 20.0, 2.0_m) / units::kmh +
                     chain_pull(300_Nm, 0.2_m) / units::N + hunting(13_teeth, 110_links).evenness;
            }),
            0u);
  EXPECT_TRUE(is_finite(sum));
}

/// A choice that asks for a measure of each kind.
struct Question {
  Machine machine = all_machines().front();
  Space space{.fronts = {}, .rears = {}, .tyres = {}, .chains = {}};
  Goals goals;

  explicit Question(int rears = 8) {
    for (int teeth = 12; teeth <= 14; ++teeth) space.fronts.push_back({Teeth(teeth), {}, {}});
    for (int teeth = 52; teeth > 52 - rears; --teeth) space.rears.push_back({Teeth(teeth), {}, {}});
    for (const char* marking : {"110/100-18 64M", "120/90-18 65M", "4.10-18 59P"})
      space.tyres.push_back({TyreSize(marking), {}, {}});
    goals.wishes = {{{Measure::thrust_change}, Want::more}, {{Measure::rear_life_change}, Want::more}};
    goals.limits = {{{Measure::wear_room}, Amount::fraction(0.0), {}},
                    {{Measure::circumference_change}, Amount::fraction(-1.0), {}}};
  }
};

TEST(AllocatesNothing, the_study_of_a_set_up_alone_and_of_a_block) {
  const Question asked;
  const auto study = detail::Study::make(asked.machine, asked.space, asked.goals);
  ASSERT_TRUE(study);
  const auto block = std::make_unique<detail::BandBlock>();
  std::size_t told = 0;
  EXPECT_EQ(requests_of([&] {
              for (std::size_t i = 0; i < study->combinations(); ++i)
                study->each_drive(i, [&](const detail::StudyDrive& drive) {
                  for (const detail::StudyTyre& tyre : study->tyres())
                    told += study->value({Measure::thrust_change}, drive, tyre).has_value();
                  told += study->value({Measure::rear_life_change}, drive).has_value();
                  told += study->fill({Measure::thrust_change}, drive, 0, study->tyres().size(), *block);
                });
            }),
            0u);
  EXPECT_GT(told, 10u);
}

TEST(AllocatesNothing, a_scan_of_set_ups_that_a_limit_rules_out) {
  Question asked;
  asked.goals.limits.push_back({{Measure::thrust_change}, Amount::fraction(9.0), {}});
  const auto study = detail::Study::make(asked.machine, asked.space, asked.goals);
  ASSERT_TRUE(study);
  detail::Scan scan(*study);
  EXPECT_EQ(requests_of([&] {
              for (std::size_t i = 0; i < study->combinations(); ++i) scan.look_at(i);
            }),
            0u);
  EXPECT_GT(scan.found().examined, 20u);
  EXPECT_EQ(scan.found().kept, 0u);
}

TEST(AllocatesNothing, a_choice_asks_for_memory_as_its_trade_off_grows_not_as_its_space_does) {
  const auto requests = [](int rears) {
    Question asked(rears);
    asked.goals.wishes.resize(1);  // one best, so that the trade-off is one set-up
    std::uint64_t examined = 0;
    const auto study = detail::Study::make(asked.machine, asked.space, asked.goals);
    const std::size_t told = requests_of([&] {
      detail::Scan scan(*study);
      for (std::size_t i = 0; i < study->combinations(); ++i) scan.look_at(i);
      examined = scan.found().examined;
    });
    return std::pair(told, examined);
  };
  const auto few = requests(4), many = requests(12);
  EXPECT_GT(many.second, 2 * few.second);
  EXPECT_EQ(many.first, few.first);
}

}  // namespace
