// SPDX-License-Identifier: MIT
// The centre distance of a chain from its links: layshaft's own steps against Boost.Math's solvers on the same
// equation, in plain doubles and pitches. The sprockets' radii are worked out once a solve, as layshaft does.
#include <layshaft/chain/chain.hpp>

#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "ratios.hpp"

namespace {

using namespace layshaft::literals;

constexpr double pi = std::numbers::pi;
constexpr layshaft::Length pitch = 15.875_mm;  // 520

struct Drive {
  layshaft::Teeth front, rear;
  layshaft::Links links;
};

/// The drives of motorcycles: some 2000 of them.
std::vector<Drive> drives() {
  std::vector<Drive> all;
  for (int front = 11; front <= 17; ++front)
    for (int rear = 34; rear <= 53; ++rear)
      for (int links = 96; links <= 124; links += 2)
        all.push_back({layshaft::Teeth(front), layshaft::Teeth(rear), layshaft::Links(links)});
  return all;
}

/// The loop in pitches, as far as it does not depend on the centre distance.
struct Loop {
  double radii, arc, straight, touching;

  explicit Loop(const Drive& drive) {
    const double front = 0.5 / std::sin(pi / drive.front.count()), rear = 0.5 / std::sin(pi / drive.rear.count());
    radii = rear - front;
    arc = (drive.rear.count() - drive.front.count()) / pi;
    straight = drive.links.count() - (drive.front.count() + drive.rear.count()) / 2.0;
    touching = front + rear;
  }
  /// How many links too many the loop takes at this centre distance.
  [[nodiscard]] double excess(double centre) const {
    return 2.0 * std::sqrt(centre * centre - radii * radii) + arc * std::asin(radii / centre) - straight;
  }
  [[nodiscard]] double slope(double centre) const {
    const double run = std::sqrt(centre * centre - radii * radii);
    return 2.0 * centre / run - arc * radii / (centre * run);
  }
  /// The handbook's closed form.
  [[nodiscard]] double guess() const { return 0.25 * (straight + std::sqrt(straight * straight - 2.0 * arc * arc)); }
};

double by_layshaft(const Drive& drive) {
  return layshaft::chain_centre(pitch, drive.front, drive.rear, double(drive.links.count())).value();
}
double by_checked_layshaft(const Drive& drive) {
  static const layshaft::ChainSeries series("520");
  return layshaft::ChainLoop(series, drive.front, drive.rear).centre(drive.links).value();
}
/// Between the touching sprockets and half of the straight links.
double by_toms748(const Drive& drive) {
  const Loop loop(drive);
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve([&](double centre) { return loop.excess(centre); },
                                                             loop.touching, 0.5 * loop.straight + loop.radii,
                                                             boost::math::tools::eps_tolerance<double>(), steps);
  return 0.5 * (low + high) * pitch.value();
}
/// In a bracket around the closed form, which is right to 0.003 pitch for these drives: all the help there is.
double by_toms748_near(const Drive& drive) {
  const Loop loop(drive);
  const double guess = loop.guess();
  constexpr double near = 0.01;
  std::uintmax_t steps = 100;
  const auto [low, high] =
      boost::math::tools::toms748_solve([&](double centre) { return loop.excess(centre); }, guess - near, guess + near,
                                        boost::math::tools::eps_tolerance<double>(), steps);
  return 0.5 * (low + high) * pitch.value();
}
/// With the derivative, from the closed form.
double by_newton(const Drive& drive) {
  const Loop loop(drive);
  const double guess = loop.guess();
  std::uintmax_t steps = 20;
  constexpr int digits = std::numeric_limits<double>::digits * 6 / 10;  // as Boost advises: the next step doubles them
  return boost::math::tools::newton_raphson_iterate(
             [&](double centre) { return std::pair(loop.excess(centre), loop.slope(centre)); }, guess, 0.5 * guess,
             2.0 * guess, digits, steps) *
         pitch.value();
}

}  // namespace

int main(int count, char** arguments) {
  static const std::vector<Drive> all = drives();
  const struct {
    const char* name;
    double (*solve)(const Drive&);
  } contestants[] = {
      {"layshaft::chain_centre", by_layshaft},
      {"layshaft::ChainLoop::centre, which checks what comes in", by_checked_layshaft},
      {"boost::math toms748_solve, bracket around every answer", by_toms748},
      {"boost::math toms748_solve, bracket of 0.02 pitch", by_toms748_near},
      {"boost::math newton_raphson_iterate", by_newton},
  };
  for (const auto& contestant : contestants) {
    for (const Drive& drive : all)
      ratios::must_agree(contestant.name, by_layshaft(drive), contestant.solve(drive), 1e-14);
    ratios::add("centre distance from links", contestant.name, [solve = contestant.solve] {
      double sum = 0.0;
      for (const Drive& drive : all) sum += solve(drive);
      return sum;
    });
  }
  return ratios::run(count, arguments);
}
