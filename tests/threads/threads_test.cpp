// SPDX-License-Identifier: MIT
// Many threads may ask the library at once, also for the first time: nothing it keeps changes. Under the thread
// sanitizer (the preset "tsan") these tests find every place where that were not so.
#include <layshaft/layshaft.hpp>

#include <layshaft/choose/choose.hpp>
#include <layshaft/explain.hpp>
#include <layshaft/io/json.hpp>
#include <layshaft/show/caution_text.hpp>
#include <layshaft/show/working_text.hpp>

#include <setup/example_machines.hpp>

#include <gtest/gtest.h>

#include <barrier>
#include <functional>
#include <string>
#include <thread>
#include <vector>

namespace {
using namespace layshaft_test;

/// Lets eight threads do the work at once, and then one alone; all must have the same to tell.
void expect_the_same_of_all(const std::function<std::string()>& work) {
  constexpr std::size_t threads = 8;
  std::vector<std::string> told(threads);
  {
    std::barrier together(static_cast<std::ptrdiff_t>(threads));
    std::vector<std::jthread> running;
    for (std::size_t i = 0; i < threads; ++i)
      running.emplace_back([&, i] {
        together.arrive_and_wait();
        told[i] = work();
      });
  }
  const std::string alone = work();
  EXPECT_FALSE(alone.empty());
  for (const std::string& one : told) EXPECT_EQ(one, alone);
}

/// A band to the last bit.
template <class T>
std::string exactly(const Band<T>& band) {
  std::string text;
  for (const T& end : {band.low, band.nominal, band.high}) {
    if constexpr (std::is_same_v<T, double>)
      text += to_text(end) + " ";
    else
      text += to_text(end.value()) + " ";
  }
  return text;
}

TEST(Threads, appraise_at_once) {
  const std::vector<Machine> machines = all_machines();  // shared by all of them
  expect_the_same_of_all([&] {
    std::string text;
    for (const Machine& machine : machines)
      for (const layshaft::Setup& setup : all_setups(machine)) {
        const auto appraisal = try_appraise(machine, setup);
        if (!appraisal) {
          text.append(appraisal.error().what()).append("\n");
          continue;
        }
        text += exactly(appraisal->circumference()) + exactly(appraisal->chain().wear_room) + "\n";
        for (const Caution& caution : appraisal->cautions()) text += sentence(caution, UnitSystem::metric);
      }
    return text;
  });
}

TEST(Threads, compare_and_explain_at_once) {
  const std::vector<Machine> machines = all_machines();
  expect_the_same_of_all([&] {
    std::string text;
    for (const Machine& machine : machines) {
      const auto trials = all_setups(machine);
      const auto comparison = try_compare(machine, machine.stock(), trials[1]);
      if (!comparison) continue;
      for (const char* what : {"thrust", "speed", "engine speed", "chain tension"})
        text += to_text(comparison->explain(what));
      text += to_text(explain(machine, trials[1], "centre", {}));
      text += to_html(explain(machine, trials[1], "overall ratio", {.gear = 1}));
    }
    return text;
  });
}

TEST(Threads, read_and_refuse_texts_at_once) {
  expect_the_same_of_all([] {
    std::string text;
    for (const char* marking : {"110/90-18 M/C 61R TL", "MT90B16", "4.10-18", "140/80ZR17", "110/90-", "wheel", ""}) {
      const auto tyre = TyreSize::make(marking);
      text += tyre ? tyre->designation() : tyre.error().what();
    }
    for (const char* name : {"520", "08B", "08B narrow", "no chain"}) {
      const auto chain = ChainSeries::make(name);
      text += chain ? std::string(chain->name()) : chain.error().what();
    }
    for (const char* length : {"612 mm", "24 in", "2 m", "2 furlongs"}) {
      const auto read = try_parse_quantity<Length>(length);
      text += read ? to_text(*read) : read.error().what();
    }
    return text;
  });
}

TEST(Threads, read_and_write_machines_at_once) {
  const std::vector<Machine> machines = all_machines();
  expect_the_same_of_all([&] {
    std::string text;
    for (const Machine& machine : machines) text += to_json(machine_from_json(to_json(machine)));
    return text;
  });
}

TEST(Threads, choose_at_once_with_threads_of_their_own) {
  const Machine machine = all_machines().front();
  Space space{.fronts = {}, .rears = {}, .tyres = {{TyreSize("110/100-18 64M"), {}, {}}}, .chains = {}};
  for (int teeth = 12; teeth <= 14; ++teeth) space.fronts.push_back({Teeth(teeth), {}, {}});
  for (int teeth = 44; teeth <= 52; ++teeth) space.rears.push_back({Teeth(teeth), {}, {}});
  Goals goals;
  goals.wishes.push_back({{Measure::thrust_change}, Want::more, {}, 1.0});
  goals.wishes.push_back({{Measure::rear_life_change}, Want::more, {}, 1.0});
  expect_the_same_of_all([&] {
    std::uint64_t told = 0, most = 0;  // by one thread at a time, as the library promises
    ChooseOptions options{.shortlist = 3, .threads = 3, .progress = [&](std::uint64_t done, std::uint64_t all) {
                            told = done;
                            most = all;
                            return true;
                          }};
    const Choice choice = choose(machine, space, goals, options);
    EXPECT_EQ(told, most);
    std::string text = std::to_string(choice.examined) + " " + std::to_string(choice.kept);
    for (const Chosen& one : choice.front) text += to_json(one.setup) + to_text(one.score);
    return text;
  });
}

}  // namespace
