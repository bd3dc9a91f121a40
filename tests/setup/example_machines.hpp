// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/io/json.hpp>

#include <setup/machines.hpp>

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

/// @file
/// Machines and set-ups of all kinds, to try everything on.
namespace layshaft_test {

/// The machines of the tests, and those of examples/machines.
[[nodiscard]] inline std::vector<Machine> all_machines() {
  std::vector<Machine> all = machines();
  for (const char* name : {"trail_bike", "farm_bike", "cargo_cycle"}) {
    const std::string path = std::string(LAYSHAFT_MACHINES_DIR) + "/" + name + ".json";
    std::ifstream file(path);
    if (!file) throw std::runtime_error(path + " is missing");
    all.push_back(machine_from_json(std::string(std::istreambuf_iterator<char>(file), {})));
  }
  return all;
}

/// Set-ups that a machine might be ridden with: its own, other sprockets, tyres of every notation for road and special
/// use, new and worn, measured rollouts, stated efficiencies, and all of it at once.
[[nodiscard]] inline std::vector<layshaft::Setup> all_setups(const Machine& machine) {
  const layshaft::Setup& stock = machine.stock();
  const auto on = [](SetupParts& parts, const TyreSize& tyre) {
    parts.tyre = tyre;
    parts.circumference.reset();
  };
  const auto tyre = [&](const char* marking, TyreUse use = TyreUse::road, Length worn = {}) {
    return with(stock, [&](SetupParts& parts) {
      on(parts, TyreSize(marking, use));
      parts.tread_worn = worn;
    });
  };
  const auto more = [](Teeth teeth, int added) { return Teeth(teeth.count() + added); };
  return {
      stock,
      with(stock, [&](SetupParts& parts) { parts.rear = more(parts.rear, 1); }),
      with(stock,
           [&](SetupParts& parts) {
             parts.front = more(parts.front, -1);
             parts.links.reset();
           }),
      with(stock, [](SetupParts& parts) { parts.links = Links(parts.front.count() + parts.rear.count() + 49); }),
      tyre("120/80-18 M/C 62R TT"),
      tyre("120/90-18", TyreUse::special),
      tyre("120/90-18", TyreUse::special, 4_mm),
      tyre("140/80ZR17", TyreUse::road, 2.5_mm),
      tyre("130/90B16"),
      tyre("4.10-18", TyreUse::road, 1_mm),
      tyre("4.10-18", TyreUse::special),
      tyre("2.00-18", TyreUse::special),
      tyre("2.00-20", TyreUse::special, 2_mm),
      tyre("3.50-10"),
      tyre("5.4-14"),
      tyre("MT90B16"),
      with(stock,
           [](SetupParts& parts) {
             parts.circumference = Band<Length>{1980_mm, 2000_mm, 2010_mm};
           }),
      with(stock, [](SetupParts& parts) { parts.circumference = Band<Length>::exactly(2010_mm); }),
      with(stock,
           [](SetupParts& parts) {
             parts.drive_efficiency = Band<double>{0.95, 0.97, 0.98};
           }),
      with(tyre("120/90-18", TyreUse::special, 3_mm),
           [&](SetupParts& parts) {
             parts.rear = more(parts.rear, 2);
             parts.chain = ChainSeries(machine.chain().name() == "520" ? "525" : "428");
             parts.front_tyre = TyreSize("90/100-21 57M");
             parts.drive_efficiency = Band<double>{0.92, 0.94, 0.97};
           }),
  };
}

}  // namespace layshaft_test
