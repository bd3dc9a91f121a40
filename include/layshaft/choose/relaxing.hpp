// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/scan.hpp>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <tuple>
#include <utility>
#include <vector>

/// @file
/// What would have to give way, where nothing keeps all limits.
namespace layshaft::detail {

/// The least that would have to give way: of every set of limits that some set-up breaks, where no fewer of them are
/// broken by another, the set-up that breaks them least, in shares of the limits' own size.
class Relaxing {
 public:
  explicit Relaxing(const Study& study) : study_(study) {}

  void look_at(std::size_t combination) {
    study_.each_drive(combination, [&](const StudyDrive& drive) {
      for (std::size_t t = 0; t < study_.tyres().size(); ++t) {
        const MeasuredValues values = all_values(study_, drive, study_.tyres()[t]);
        add(values, {combination, drive.fit.links, t});
      }
    });
  }
  [[nodiscard]] std::vector<Relaxation> told() const {
    std::vector<Broken> list = least_;
    std::sort(list.begin(), list.end(), [](const Broken& a, const Broken& b) {
      return std::tuple(std::popcount(a.limits), a.size, a.limits) <
             std::tuple(std::popcount(b.limits), b.size, b.limits);
    });
    std::vector<Relaxation> relaxations;
    for (const Broken& one : list) {
      std::vector<RelaxedLimit> limits;
      for (std::size_t i = 0; i < one.by.size(); ++i)
        if (one.by[i] > 0.0) limits.push_back({i, study_.goals().limits[i], one.by[i]});
      const auto drive = study_.drive(one.place.combination, one.place.links);
      relaxations.push_back({std::move(limits), study_.setup_of(*drive, study_.tyres()[one.place.tyre])});
    }
    return relaxations;
  }

 private:
  struct Broken {
    std::uint32_t limits;
    double size;  // the greatest share of its limit by which one is overstepped
    std::vector<double> by;
    Place place;
  };

  void add(const MeasuredValues& values, const Place& place) {
    const auto& limits = study_.goals().limits;
    Broken broken{0, 0.0, std::vector<double>(limits.size(), 0.0), place};
    for (std::size_t i = 0; i < limits.size(); ++i) {
      const auto& value = values[study_.place_of_limit(i)];
      if (!value) return;  // what cannot be told gives way to nothing
      broken.by[i] = study_.overstepped(limits[i], *value);
      if (!(broken.by[i] > 0.0)) continue;
      broken.limits |= std::uint32_t(1) << i;
      broken.size = std::max(broken.size, broken.by[i] / size_of(limits[i]));
    }
    for (std::size_t i = 0; i < study_.goals().wishes.size(); ++i)
      if (!values[study_.place_of_wish(i)]) return;
    // A set of limits that holds another one asks for more.
    for (const Broken& one : least_)
      if (one.limits != broken.limits && (one.limits & broken.limits) == one.limits) return;
    std::erase_if(least_, [&](const Broken& one) {
      return one.limits != broken.limits && (one.limits & broken.limits) == broken.limits;
    });
    for (Broken& one : least_)
      if (one.limits == broken.limits) {
        if (std::pair(broken.size, broken.place) < std::pair(one.size, one.place)) one = broken;
        return;
      }
    least_.push_back(broken);
  }
  [[nodiscard]] static double size_of(const Limit& limit) noexcept {
    const double least = limit.least ? std::fabs(limit.least->value) : 0.0;
    const double most = limit.most ? std::fabs(limit.most->value) : 0.0;
    const double size = std::max(least, most);
    return size > 0.0 ? size : 1.0;
  }

  const Study& study_;
  std::vector<Broken> least_;
};

}  // namespace layshaft::detail
