// SPDX-License-Identifier: MIT
#include <layshaft/choose/survey.hpp>

#include <setup/machines.hpp>

#include <layshaft/setup/comparison.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <thread>
#include <vector>

namespace {
using namespace layshaft_test;

Machine roomy() {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(560_mm, 660_mm, 30_mm);
  return Machine(parts);
}
std::vector<SprocketOffer> sprockets(int first, int last, double price = 10.0) {
  std::vector<SprocketOffer> offers;
  for (int teeth = first; teeth <= last; ++teeth)
    offers.push_back({Teeth(teeth), {}, {Band<double>::exactly(price + teeth), {}}});
  return offers;
}
TyreOffer tyre(std::string_view marking, double price) {
  return {TyreSize(marking), {}, {Band<double>::exactly(price), {}}};
}
Space space_of(std::vector<TyreOffer> tyres = {tyre("110/100-18 64M", 80.0), tyre("120/90-18 65M", 95.0)}) {
  return {.fronts = sprockets(11, 14),
          .rears = sprockets(42, 52),
          .tyres = std::move(tyres),
          .chains = {{.offer = {Band<double>::exactly(70.0), {}}}}};
}
Limit at_least(Measure what, double least) { return {{what}, Amount::fraction(least), {}}; }
Limit at_most(Measure what, double most) { return {{what}, {}, Amount::fraction(most)}; }
Wish wish(Measure what, Want want, double weight = 1.0) { return {{what}, want, {}, weight}; }
Wish towards(Measure what, double target, double weight = 1.0) {
  return {{what}, Want::target, Amount::fraction(target), weight};
}
std::string name(const layshaft::Setup& setup) {
  return std::to_string(setup.front().count()) + "/" + std::to_string(setup.rear().count()) + " " +
         std::to_string(setup.links()->count()) + " " + (setup.tyre() ? setup.tyre()->designation() : "");
}
std::vector<std::string> names(const std::vector<Chosen>& list) {
  std::vector<std::string> all;
  for (const Chosen& one : list) all.push_back(name(one.setup));
  return all;
}

// Every measure that a comparison tells, by the comparison itself.
const std::map<Measure, std::function<Band<double>(const Comparison&)>> compared = {
    {Measure::thrust_change, [](const Comparison& c) { return c.thrust_change; }},
    {Measure::speed_change, [](const Comparison& c) { return c.speed_change; }},
    {Measure::chain_pull_change, [](const Comparison& c) { return c.wear.chain_tension_change; }},
    {Measure::chain_stretch_change, [](const Comparison& c) { return c.wear.chain_stretch_change; }},
    {Measure::front_life_change, [](const Comparison& c) { return c.wear.front_life_change; }},
    {Measure::rear_life_change, [](const Comparison& c) { return c.wear.rear_life_change; }},
    {Measure::loss_change, [](const Comparison& c) { return c.wear.loss_change; }},
    {Measure::wear_room, [](const Comparison& c) { return c.trial.chain().wear_room; }},
    {Measure::teeth_in_mesh,
     [](const Comparison& c) { return Band<double>::exactly(c.trial.drive().engagement.front); }},
};

// No pruning, no caches: every set-up compared by itself, limits and wishes judged one by one.
TEST(Choose, IsWhatBruteForceFinds) {
  const Machine machine = roomy();
  std::mt19937 random(11);
  std::vector<Measure> measures;
  for (const auto& [measure, told] : compared) measures.push_back(measure);
  std::uniform_int_distribution<std::size_t> any(0, measures.size() - 1);
  std::uniform_real_distribution<double> near(-0.15, 0.15);
  for (int round = 0; round < 40; ++round) {
    const Space space = space_of();
    Goals goals;
    goals.robust = round % 2 == 1;
    for (int i = 0; i < 2; ++i) {
      const Measure what = measures[any(random)];
      goals.limits.push_back(i == 0 ? at_least(what, near(random)) : at_most(what, near(random)));
    }
    for (int i = 0; i < 3; ++i) {
      const Measure what = measures[any(random)];
      goals.wishes.push_back(i == 0 ? towards(what, near(random)) : wish(what, i == 1 ? Want::less : Want::more));
    }
    struct Kept {
      std::string name;
      Losses losses;
    };
    std::vector<Kept> kept;
    std::size_t examined = 0;
    for (const auto& front : space.fronts)
      for (const auto& rear : space.rears)
        for (const auto& one : space.tyres) {
          const auto trial = with(machine.stock(), [&](SetupParts& parts) {
            parts.front = front.teeth;
            parts.rear = rear.teeth;
            parts.tyre = one.tyre;
            parts.links.reset();
          });
          const auto comparison = try_compare(machine, machine.stock(), trial);
          if (!comparison) continue;
          ++examined;
          bool keeps = true;
          for (const Limit& limit : goals.limits) {
            const Band<double> value = compared.at(limit.measured.what)(*comparison);
            const double low = goals.robust ? value.low : value.nominal;
            const double high = goals.robust ? value.high : value.nominal;
            keeps = keeps && !(limit.least && low < limit.least->value) && !(limit.most && high > limit.most->value);
          }
          if (!keeps) continue;
          Losses losses;
          for (const Wish& one_wish : goals.wishes) {
            const Band<double> value = compared.at(one_wish.measured.what)(*comparison);
            const auto loss = [&](double v) {
              return one_wish.want == Want::less   ? v
                     : one_wish.want == Want::more ? -v
                                                   : std::fabs(v - one_wish.target->value);
            };
            losses.push_back(goals.robust ? std::max({loss(value.low), loss(value.nominal), loss(value.high)})
                                          : loss(value.nominal));
          }
          kept.push_back(
              {name(with(trial, [&](SetupParts& parts) { parts.links = comparison->trial.chain().links; })), losses});
        }
    std::vector<std::string> expected;
    for (const Kept& one : kept)
      if (std::none_of(kept.begin(), kept.end(),
                       [&](const Kept& other) { return dominates(other.losses, one.losses); }))
        expected.push_back(one.name);
    const Choice choice = choose(machine, space, goals);
    std::vector<std::string> front = names(choice.front);
    std::sort(front.begin(), front.end());
    std::sort(expected.begin(), expected.end());
    ASSERT_EQ(front, expected) << "round " << round;
    ASSERT_EQ(choice.kept, kept.size());
    ASSERT_EQ(choice.examined, examined);
    std::uint64_t sum = choice.kept + choice.untold;
    for (const std::uint64_t out : choice.ruled_out) sum += out;
    ASSERT_EQ(sum, choice.examined);
    ASSERT_EQ(choice.relaxations.empty(), !kept.empty());
  }
}

// More tyres than are worked out together, measured and marked ones, sharing causes with the stock tyre or not.
std::vector<TyreOffer> many_tyres(std::size_t measured) {
  std::vector<TyreOffer> tyres{tyre("110/100-18 64M", 80.0), tyre("120/90-18 65M", 95.0), tyre("130/80R18 66V", 99.0)};
  for (std::size_t i = 0; i < measured; ++i) {
    const Length rolls = (1.7 + 0.6 * double(i) / double(measured)) * 1.0_m;
    tyres.push_back({{}, Band<Length>{rolls - 7_mm, rolls, rolls + 4_mm}, {}});
    if (i % 3 > 0) tyres.back().offer.price = Band<double>::exactly(60.0 + double(i % 50));
  }
  return tyres;
}

// The same number, whether it is worked out for many set-ups at once or for one alone.
TEST(Choose, TellsOfManyAtOnceWhatItTellsOfEachAlone) {
  const auto speed_of = [](Measure what) {
    return what == Measure::engine_speed ? std::optional(90_kmh) : std::nullopt;
  };
  for (const auto sensor : {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel, SpeedometerSensor::front_wheel})
    for (const bool stated : {false, true}) {
      MachineParts parts = trail_bike_parts();
      parts.adjuster = Adjuster(560_mm, 660_mm, 30_mm);
      parts.speedometer = stated ? Speedometer(sensor, Band<double>{0.02, 0.04, 0.07}) : Speedometer(sensor);
      Goals goals;
      for (const Measure what : {Measure::thrust_change, Measure::speed_change, Measure::engine_speed,
                                 Measure::walking_pace, Measure::chain_pull_change, Measure::speedometer_beyond_rule})
        goals.wishes.push_back({{what, {}, speed_of(what)}, Want::more});
      const auto study = layshaft::detail::Study::make(Machine(parts), space_of(many_tyres(50)), goals);
      ASSERT_TRUE(study);
      std::size_t compared_bands = 0;
      for (std::size_t combination = 0; combination < study->combinations(); combination += 7)
        study->each_drive(combination, [&](const layshaft::detail::StudyDrive& drive) {
          for (const Wish& asked : goals.wishes) {
            auto block = std::make_unique<layshaft::detail::BandBlock>();
            const std::size_t first = 5, n = study->tyres().size() - first;
            const bool known = study->fill(asked.measured, drive, first, n, *block);
            ASSERT_EQ(known, sensor != SpeedometerSensor::front_wheel ||
                                 asked.measured.what != Measure::speedometer_beyond_rule);
            for (std::size_t i = 0; known && i < n; ++i) {
              const auto alone = study->value(asked.measured, drive, study->tyres()[first + i]);
              ASSERT_TRUE(alone);
              EXPECT_DOUBLE_EQ(block->low[i], alone->low) << to_string(asked.measured.what) << i;
              EXPECT_DOUBLE_EQ(block->nominal[i], alone->nominal) << to_string(asked.measured.what) << i;
              EXPECT_DOUBLE_EQ(block->high[i], alone->high) << to_string(asked.measured.what) << i;
              ++compared_bands;
            }
          }
        });
      EXPECT_GT(compared_bands, 1000u);
    }
}

// Blocks of tyres, of which some are ruled out, or have no price, against a survey of one set-up after the other.
TEST(Choose, FindsInBlocksWhatASurveyTells) {
  const Machine machine = roomy();
  Space space = space_of(many_tyres(layshaft::detail::block_size * 2 + 100));
  space.fronts = sprockets(12, 13);
  space.rears = sprockets(44, 48);
  const auto on = [](const Limit& limit) { return measure_row(limit.measured.what).on; };
  for (const bool robust : {false, true})
    for (const bool by_cost : {false, true}) {
      Goals goals{{at_least(Measure::thrust_change, -0.1), at_most(Measure::thrust_change, 0.3),
                   at_most(Measure::circumference_change, 0.06), at_least(Measure::wear_room, 0.001),
                   at_most(Measure::speedometer_beyond_rule, 0.2)},
                  {towards(Measure::speed_change, 0.03), wish(Measure::wear_room, Want::more)},
                  robust};
      if (by_cost) goals.wishes.push_back(wish(Measure::cost, Want::less));
      std::vector<std::uint64_t> ruled_out(goals.limits.size(), 0);
      std::uint64_t kept = 0, untold = 0;
      TradeOff<std::pair<Links, layshaft::Setup>> trade_off;
      const auto visited = try_survey(machine, space, goals, [&](const Surveyed& one) {
        for (const MeasuredOn part : {MeasuredOn::drive, MeasuredOn::tyre, MeasuredOn::both})
          for (const std::size_t place : one.broken)
            if (on(goals.limits[place]) == part) {
              ++ruled_out[place];
              return true;
            }
        Losses losses;
        for (std::size_t w = 0; w < goals.wishes.size(); ++w) {
          if (!one.wishes[w]) {
            ++untold;
            return true;
          }
          const Band<double>& value = *one.wishes[w];
          const auto loss = [&](double v) { return layshaft::detail::Study::loss(goals.wishes[w], v); };
          losses.push_back(robust ? std::max({loss(value.low), loss(value.nominal), loss(value.high)})
                                  : loss(value.nominal));
        }
        ++kept;
        trade_off.add(losses, {*one.setup.links(), one.setup});
        return true;
      });
      const Choice choice = choose(machine, space, goals);
      EXPECT_EQ(choice.examined, *visited);
      EXPECT_EQ(choice.ruled_out, ruled_out);
      EXPECT_EQ(choice.kept, kept);
      EXPECT_EQ(choice.untold, untold);
      EXPECT_EQ(untold > 0, by_cost);
      EXPECT_GT(kept, 100u);
      const auto key = [](const layshaft::Setup& setup) {
        return name(setup) + " " + std::to_string(setup.circumference() ? setup.circumference()->nominal.value() : 0.0);
      };
      std::vector<std::string> expected, found;
      for (const auto& member : trade_off.members()) expected.push_back(key(member.item.second));
      for (const Chosen& one : choice.front) found.push_back(key(one.setup));
      std::sort(expected.begin(), expected.end());
      std::sort(found.begin(), found.end());
      EXPECT_EQ(found, expected);
    }
}

// Common practice, no source: with 14/40 and a tyre 6 % taller, 42 behind comes nearest to the old pull (-0.9 %), 43 is
// the first to restore it fully (+1.4 %), 45 gives +6.1 % and 46 +8.5 % over it.
TEST(Choose, FindsTheOldPullOnATallerTyre) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(540_mm, 680_mm, 30_mm);
  const Band<Length> rolls = Band<Length>::exactly(2000_mm);
  parts.stock = layshaft::Setup({.front = 14_teeth, .rear = 40_teeth, .circumference = rolls});
  const Machine machine(parts);
  Space space{.fronts = {{14_teeth}}, .rears = sprockets(38, 48)};
  space.tyres = {{{}, Band<Length>::exactly(1.06 * 2000_mm)}};
  const auto best = [&](Goals goals) { return choose(machine, space, goals).front.front(); };
  const Chosen nearest = best({{}, {towards(Measure::thrust_change, 0.0)}});
  EXPECT_EQ(nearest.setup.rear(), 42_teeth);
  EXPECT_NEAR(nearest.reason.wishes[0].value.nominal, -0.009, 0.0006);
  const Chosen restored = best({{at_least(Measure::thrust_change, 0.0)}, {towards(Measure::thrust_change, 0.0)}});
  EXPECT_EQ(restored.setup.rear(), 43_teeth);
  EXPECT_NEAR(restored.reason.wishes[0].value.nominal, 0.014, 0.0006);
  for (const auto& [rear, pull] : {std::pair{45_teeth, 0.061}, std::pair{46_teeth, 0.085}}) {
    const Chosen one = best({{}, {towards(Measure::thrust_change, pull)}});
    EXPECT_EQ(one.setup.rear(), rear);
    EXPECT_NEAR(one.reason.wishes[0].value.nominal, pull, 0.0006);
  }
  // One tooth fewer in front plus three behind is about six more behind.
  space.fronts = {{13_teeth}};
  const Chosen both = best({{at_most(Measure::rear_teeth, 43.0), at_least(Measure::rear_teeth, 43.0)},
                            {towards(Measure::thrust_change, 0.0)}});
  EXPECT_NEAR(both.reason.wishes[0].value.nominal, 46.0 / 40.0 / 1.06 - 1.0, 0.01);
}

TEST(Choose, TiesSameRatiosInThrustAndTellsThemApartByWear) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(540_mm, 680_mm, 30_mm);
  const Machine machine(parts);
  const Space space{.fronts = {{12_teeth}, {14_teeth}}, .rears = {{48_teeth}, {56_teeth}}};
  const Goals pull{{}, {towards(Measure::thrust_change, 48.0 / 47.0 - 1.0)}};
  const Choice by_pull = choose(machine, space, pull);
  ASSERT_EQ(by_pull.front.size(), 2u);
  EXPECT_EQ(by_pull.front[0].reason.wishes[0].value, by_pull.front[1].reason.wishes[0].value);
  Goals wear = pull;
  wear.wishes.push_back(wish(Measure::rear_life_change, Want::more));
  const Choice by_wear = choose(machine, space, wear);
  ASSERT_EQ(by_wear.front.size(), 1u);
  EXPECT_EQ(by_wear.front[0].setup.front(), 14_teeth);
}

TEST(Choose, DoesNotHangOnOrderThreadsOrTheSizeOfWeights) {
  const Machine machine = roomy();
  Space space = space_of();
  Goals goals{{at_least(Measure::wear_room, 0.01)},
              {towards(Measure::thrust_change, 0.05, 2.0), wish(Measure::cost, Want::less),
               wish(Measure::front_life_change, Want::more, 0.5)}};
  const Choice choice = choose(machine, space, goals);
  ASSERT_GT(choice.front.size(), 3u);
  std::mt19937 random(3);
  for (auto* list : {&space.fronts, &space.rears}) {
    std::shuffle(list->begin(), list->end(), random);
    list->push_back(list->front());  // once more is no more
  }
  std::reverse(space.tyres.begin(), space.tyres.end());
  for (Wish& one : goals.wishes) one.weight *= 37.0;
  const Choice again = choose(machine, space, goals, {.threads = 3});
  EXPECT_EQ(names(again.front), names(choice.front));
  EXPECT_EQ(again.examined, choice.examined);
  EXPECT_EQ(again.ruled_out, choice.ruled_out);
  EXPECT_EQ(choice.ranked.size(), 3u);
}

TEST(Choose, LosesNothingByATighterLimitOrAnotherCandidate) {
  const Machine machine = roomy();
  const std::vector<Wish> wishes = {towards(Measure::thrust_change, 0.0), wish(Measure::rear_life_change, Want::more)};
  std::uint64_t before = 1000000;
  for (const double most : {0.3, 0.2, 0.1, 0.05, 0.0, -0.05}) {
    const Choice choice = choose(machine, space_of(), {{at_most(Measure::thrust_change, most)}, wishes});
    EXPECT_LE(choice.kept, before);
    before = choice.kept;
  }
  Space few = space_of(), more = few;
  few.rears.erase(few.rears.begin() + 4, few.rears.end());
  const auto losses = [](const Chosen& one) {
    return Losses{{std::fabs(one.reason.wishes[0].value.nominal), -one.reason.wishes[1].value.nominal}};
  };
  const Choice small = choose(machine, few, {{}, wishes}), large = choose(machine, more, {{}, wishes});
  for (const Chosen& one : small.front)
    EXPECT_TRUE(std::any_of(large.front.begin(), large.front.end(), [&](const Chosen& other) {
      return losses(other) == losses(one) || dominates(losses(other), losses(one));
    }));
}

TEST(Choose, SaysWhatWouldHaveToGiveWay) {
  const Machine machine = roomy();
  const Goals goals{{at_least(Measure::thrust_change, 0.10), at_most(Measure::rear_teeth, 48.0),
                     at_least(Measure::front_teeth, 12.0)},
                    {towards(Measure::thrust_change, 0.10)}};
  const Choice choice = choose(machine, space_of({tyre("110/100-18 64M", 80.0)}), goals);
  EXPECT_EQ(choice.kept, 0u);
  EXPECT_TRUE(choice.ranked.empty());
  ASSERT_EQ(choice.relaxations.size(), 3u);  // one for each limit, since each alone would do
  double least_teeth = 0.0;
  for (const Relaxation& relaxation : choice.relaxations) {
    ASSERT_EQ(relaxation.limits.size(), 1u);
    const RelaxedLimit& one = relaxation.limits.front();
    if (one.place == 1) least_teeth = one.by;
    if (one.place == 2) {
      EXPECT_EQ(one.by, 1.0);
    }
    if (one.place == 0) {
      EXPECT_NEAR(one.by, 0.10 - (48.0 / 47.0 - 1.0), 1e-12);
    }
  }
  EXPECT_EQ(least_teeth, std::ceil(1.10 * 47.0) - 48.0);
}

TEST(Choose, SaysWhenTheBestHangsOnWhatIsNotKnown) {
  const Machine machine = roomy();
  // Nominally the one tyre is nearer, at the low end of its size the other.
  const Choice choice = choose(machine, space_of(), {{}, {towards(Measure::thrust_change, 0.02)}});
  ASSERT_FALSE(choice.front.empty());
  EXPECT_TRUE(choice.best_at_low || choice.best_at_high);
  const Choice sure = choose(machine, space_of(), {{}, {wish(Measure::front_teeth, Want::less)}});
  EXPECT_FALSE(sure.best_at_low);
  EXPECT_FALSE(sure.best_at_high);
}

TEST(Choose, CostsNothingWhereNothingIsBought) {
  const Machine machine = roomy();
  const Space space = space_of();
  const Choice cheap = choose(machine, space, {{}, {wish(Measure::cost, Want::less)}});
  EXPECT_EQ(name(cheap.front.front().setup).substr(0, 5), "12/47");
  EXPECT_EQ(cheap.front.front().reason.wishes[0].value, Band<double>::exactly(0.0));
  Space unpriced = space;
  for (SprocketOffer& rear : unpriced.rears) rear.offer.price.reset();
  const Choice told = choose(machine, unpriced, {{}, {wish(Measure::cost, Want::less)}});
  EXPECT_EQ(told.untold + told.kept, told.examined);
  EXPECT_GT(told.untold, 0u);
}

TEST(Choose, StopsWhenItIsToldTo) {
  const Machine machine = roomy();
  int calls = 0;
  const Goals goals{{}, {wish(Measure::front_teeth, Want::less)}};
  const Choice stopped = choose(machine, space_of(), goals, {.progress = [&](std::uint64_t done, std::uint64_t all) {
                                  EXPECT_LE(done, all);
                                  return ++calls < 5;
                                }});
  EXPECT_FALSE(stopped.complete);
  EXPECT_EQ(calls, 5);
  EXPECT_TRUE(choose(machine, space_of(), goals).complete);
}

// Stopped before anything was found that keeps the limits, nobody knows what would have to give way.
TEST(Choose, SaysNothingOfWhatWouldGiveWayWhereItWasStopped) {
  const Goals goals{{at_least(Measure::front_teeth, 100.0)}, {wish(Measure::front_teeth, Want::less)}};
  const Choice stopped = choose(roomy(), space_of(), goals, {.progress = [](auto, auto) { return false; }});
  EXPECT_FALSE(stopped.complete);
  EXPECT_TRUE(stopped.front.empty());
  EXPECT_TRUE(stopped.relaxations.empty());
  EXPECT_FALSE(choose(roomy(), space_of(), goals).relaxations.empty());
}

TEST(Choose, AsksNoThreadAgainOnceOneWasToldToStop) {
  int calls = 0;
  const auto stop_slowly = [&](std::uint64_t, std::uint64_t) {
    ++calls;
    std::this_thread::sleep_for(std::chrono::milliseconds(100));  // the others come and wait for their turn
    return false;
  };
  const Goals goals{{}, {wish(Measure::front_teeth, Want::less)}};
  EXPECT_FALSE(choose(roomy(), space_of(), goals, {.threads = 4, .progress = stop_slowly}).complete);
  EXPECT_EQ(calls, 1);
}

TEST(Choose, RefusesOptionsOutOfRange) {
  const Goals goals{{}, {wish(Measure::front_teeth, Want::less)}};
  const auto text = [&](const ChooseOptions& options) {
    const auto told = try_choose(roomy(), space_of(), goals, options);
    return told ? std::string() : std::string(told.error().what());
  };
  for (const int shortlist : {0, -1, 1001})
    EXPECT_EQ(text({.shortlist = shortlist}), "shortlist is " + std::to_string(shortlist) + "; expected 1 to 1000");
  for (const int threads : {-1, 257})
    EXPECT_EQ(text({.threads = threads}), "threads is " + std::to_string(threads) + "; expected 0 to 256");
  EXPECT_EQ(text({.shortlist = 1, .threads = 256}), "");
  EXPECT_EQ(text({.shortlist = 1000}), "");
  const Choice by_all_cores = choose(roomy(), space_of(), goals, {.threads = 0});
  EXPECT_EQ(names(by_all_cores.front), names(choose(roomy(), space_of(), goals).front));
}

// Each tyre counts for the first limit of its own that it breaks, once for each drive; 64 is 280 kg, 65 is 290 kg.
TEST(Choose, CountsATyreForTheFirstOfItsLimitsThatItBreaks) {
  MachineParts parts = roomy().parts();
  parts.tyre_asked.axle_load = 180_kg;
  const Machine machine(parts);
  TyreOffer pumped_up = tyre("120/90-18 65M", 90.0);  // carries enough, and is too large
  pumped_up.circumference = Band<Length>::exactly(2.4_m);
  TyreOffer both = tyre("110/100-18 64M", 70.0);
  both.circumference = Band<Length>::exactly(2.4_m);
  const Space space =
      space_of({tyre("120/90-18 65M", 95.0), tyre("110/100-18 64M", 80.0), tyre("4.10-18", 60.0), pumped_up, both});
  const Goals goals{{at_least(Measure::front_teeth, 1.0),
                     at_most(Measure::circumference_change, 0.05),
                     {{Measure::load_margin}, 105_kg, {}}},
                    {wish(Measure::rear_teeth, Want::less)}};
  const Choice choice = choose(machine, space, goals);
  const std::uint64_t drives = choice.examined / 5;
  EXPECT_EQ(choice.examined, 5 * drives);
  EXPECT_GT(drives, 10u);
  EXPECT_EQ(choice.kept, drives);
  EXPECT_EQ(choice.ruled_out, (std::vector<std::uint64_t>{0, 2 * drives, 2 * drives}));
  for (const Chosen& one : choice.front) EXPECT_EQ(one.setup.tyre()->designation(), "120/90-18 65M");
}

// What has no price keeps no limit of the cost, breaks it in a survey, and is not what a limit gives way for.
TEST(Choose, HoldsWhatCannotBeToldToKeepNoLimit) {
  const Machine machine = roomy();
  Space space = space_of();
  space.tyres[1].offer.price.reset();
  Goals goals{{{{Measure::cost}, Amount::number(0.0), Amount::number(1e6)}}, {wish(Measure::front_teeth, Want::less)}};
  const auto marking = [&](std::size_t i) { return space.tyres[i].tyre->designation(); };
  const auto priced = [&](const layshaft::Setup& setup) { return setup.tyre()->designation() == marking(0); };
  const Choice choice = choose(machine, space, goals);
  EXPECT_EQ(2 * choice.kept, choice.examined);
  EXPECT_EQ(choice.ruled_out, std::vector<std::uint64_t>{choice.kept});
  std::uint64_t broken = 0;
  const auto visited = try_survey(machine, space, goals, [&](const Surveyed& one) {
    EXPECT_EQ(one.limits[0].has_value(), priced(one.setup));
    EXPECT_EQ(one.broken, priced(one.setup) ? std::vector<std::size_t>() : std::vector<std::size_t>{0});
    broken += one.broken.size();
    return true;
  });
  EXPECT_EQ(*visited, choice.examined);
  EXPECT_EQ(broken, choice.ruled_out[0]);
  // Nothing is as cheap as the limit then asks.
  goals.limits[0].most = Amount::number(1.0);
  goals.limits[0].least = Amount::number(0.5);
  const Choice none = choose(machine, space, goals);
  EXPECT_EQ(none.kept, 0u);
  ASSERT_FALSE(none.relaxations.empty());
  for (const Relaxation& one : none.relaxations) EXPECT_TRUE(priced(one.setup));
  // The same where only a wish cannot be told.
  goals.limits = {at_most(Measure::front_teeth, 1.0)};
  goals.wishes = {wish(Measure::cost, Want::less)};
  const Choice wished = choose(machine, space, goals);
  EXPECT_EQ(wished.kept, 0u);
  ASSERT_EQ(wished.relaxations.size(), 1u);
  EXPECT_TRUE(priced(wished.relaxations[0].setup));
  EXPECT_EQ(wished.relaxations[0].limits[0].by, 10.0);  // eleven teeth where one was asked for
}

// A limit of nothing has no size of its own: it is overstepped by what it is overstepped by.
TEST(Choose, MeasuresALimitOfNothingByOne) {
  Space space = space_of({tyre("110/100-18 64M", 80.0)});
  space.fronts = sprockets(13, 14);
  const Goals goals{{at_most(Measure::front_changed, 0.0), at_most(Measure::front_teeth, 12.0)},
                    {wish(Measure::rear_teeth, Want::less)}};
  const Choice choice = choose(roomy(), space, goals);
  ASSERT_EQ(choice.relaxations.size(), 1u);
  ASSERT_EQ(choice.relaxations[0].limits.size(), 2u);
  EXPECT_EQ(choice.relaxations[0].limits[0].by, 1.0);
  EXPECT_EQ(choice.relaxations[0].limits[1].by, 1.0);
  EXPECT_EQ(choice.relaxations[0].setup.front(), 13_teeth);
}

TEST(Choose, BringsTheCautionsOfWhatItChooses) {
  const Machine machine = roomy();
  const Chosen best = choose(machine, space_of(), {{}, {wish(Measure::front_teeth, Want::less)}}).ranked.front();
  EXPECT_EQ(best.cautions, appraise(machine, best.setup).cautions());
  bool smaller = false;
  for (const Caution& caution : best.cautions) smaller = smaller || caution.code == CautionCode::front_sprocket_smaller;
  EXPECT_TRUE(smaller);
}

TEST(Choose, TakesAWornTyreByItsMeasuredCircumference) {
  const Machine machine = roomy();
  Space space = space_of({{{}, Band<Length>::exactly(2_m), {}}, tyre("110/100-18 64M", 80.0)});
  space.present = with(machine.stock(), [](SetupParts& parts) { parts.tread_worn = 3_mm; });
  const Choice choice = choose(machine, space, {{}, {wish(Measure::circumference_change, Want::more)}});
  for (const Chosen& one : choice.front)
    EXPECT_EQ(one.reason.wishes[0].value.nominal,
              Rollout(one.setup).circumference().nominal / Rollout(machine.stock()).circumference().nominal - 1.0);
}

TEST(Choose, ReadsASpeedometerOfTheFrontWheelByTheTyreThatIsThere) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(560_mm, 660_mm, 30_mm);
  parts.speedometer = Speedometer(SpeedometerSensor::front_wheel, Band<double>::exactly(0.0));
  const Machine machine(parts);
  Space space = space_of();
  const Goals goals{{}, {wish(Measure::speedometer_beyond_rule, Want::less)}};
  EXPECT_EQ(choose(machine, space, goals).front.front().reason.wishes[0].value.nominal, 0.0);
  space.present = with(machine.stock(), [](SetupParts& p) { p.front_tyre = TyreSize("100/100-21 51M"); });
  EXPECT_GT(choose(machine, space, goals).front.front().reason.wishes[0].value.nominal, 0.0);  // larger: reads low
}

TEST(Choose, AsksForABodyWhereTheFrontWheelMayLift) {
  MachineParts parts = roomy().parts();
  parts.engine = EngineCurve({2600_rpm, 9100_rpm}, {18_Nm, 17_Nm});
  parts.road_load = RoadLoad::by_mass(212_kg);
  const auto told = try_choose(Machine(parts), space_of(), {{}, {wish(Measure::thrust_over_limit, Want::less)}});
  ASSERT_FALSE(told);
  EXPECT_NE(std::string(told.error().what()).find("a body with its centre of mass"), std::string::npos);
}

TEST(Choose, SaysWhyNoChainCloses) {
  const Machine machine(trail_bike_parts());
  const Goals goals{{}, {wish(Measure::front_teeth, Want::less)}};
  Space space = space_of();
  space.links = {Links(90)};
  const auto none = try_choose(machine, space, goals);
  ASSERT_FALSE(none);
  EXPECT_EQ(
      std::string(none.error().what()).rfind("no chain of the space closes over any of its pairs; over 11/42: ", 0), 0u)
      << none.error().what();
  space.links.clear();
  space.chains[0].longest = Links(80);
  EXPECT_NE(std::string(try_choose(machine, space, goals).error().what()).find("links would, which are not offered"),
            std::string::npos);
}

TEST(Choose, SaysWhatIsWrongAndWhere) {
  const Machine machine = roomy();
  const auto text = [&](const Space& space, const Goals& goals) {
    const auto choice = try_choose(machine, space, goals);
    return choice ? std::string("none") : std::string(choice.error().what());
  };
  const Goals goals{{}, {wish(Measure::cost, Want::less)}};
  EXPECT_EQ(text({}, goals), "space: fronts: none was given; expected 1 to 200 sprockets");
  EXPECT_EQ(text(space_of(), {}), "goals: number of wishes is 0; expected 1 to 16");
  Space wrong = space_of();
  wrong.rears[3].offer.price = Band<double>::exactly(-2.0);
  EXPECT_EQ(text(wrong, goals), "space: rears[3]: price is -2; expected 0 to 1000000000000");
  EXPECT_EQ(text(space_of(), {{{{Measure::engine_speed}, {}, 6000_rpm}}, goals.wishes}),
            "goals: limits[0]: \"engine speed\" needs the road speed that it is asked at");
  EXPECT_EQ(text(space_of(), {{{{Measure::engine_speed, {}, 90_kmh}, {}, 6000_N}}, goals.wishes}),
            "goals: limits[0]: most of \"engine speed\" is a number; expected an angular speed");
  EXPECT_EQ(text(space_of(), {{{{Measure::thrust_change, 2}, Amount::fraction(0.0), {}}}, goals.wishes}),
            "goals: limits[0]: \"thrust change\" depends on no gear; leave gear out");
  EXPECT_EQ(text(space_of(), {{{{Measure::top_speed}, 100_kmh, {}}}, goals.wishes}),
            "\"top speed\" needs the machine's engine and road load");
  EXPECT_NE(text(space_of(), {{{{Measure::evenness}, {}, {}}}, goals.wishes}).find("least, most, or both"),
            std::string::npos);
}

}  // namespace
