// SPDX-License-Identifier: MIT
// Prints results of every formula, of the solves, and of whole set-ups, one a line to the last bit: what a compiler, an
// optimisation level, a standard library or a processor must not change. matrix.py builds it many times and compares.

#include <layshaft/chain/loop_bulk.hpp>
#include <layshaft/formulas.hpp>
#include <setup/draw.hpp>
#include <setup/plain_numbers.hpp>

#include <bit>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

namespace {

using namespace layshaft;
using layshaft_test::Draw;
using layshaft_test::plain_number;

int unreached = 0;

void tell(std::string_view of, double value) {
  std::printf("%.*s\t%016llx\n", static_cast<int>(of.size()), of.data(),
              static_cast<unsigned long long>(std::bit_cast<std::uint64_t>(value)));
}
void tell(std::string_view of, const layshaft_test::PlainNumber& number) {
  for (const Corner corner : corners) tell(of, number.at(corner).value);
}

// --- Formulas --------------------------------------------------------------------------------------------------------

/// Between the ends, evenly over their logarithms: square roots alone, which are exact everywhere.
double spread(Draw& draw, double low, double high) {
  const double share = draw.between(0.0, 1.0);
  return low + (high - low) * share * share * std::sqrt(share);
}
template <class T>
T drawn(Draw& draw) {
  if constexpr (std::is_same_v<T, Teeth>)
    return *Teeth::make(draw.between(9, 70));
  else if constexpr (std::is_same_v<T, Links>)
    return *Links::make(draw.between(80, 200));
  else if constexpr (std::is_same_v<T, double>)
    switch (draw.between(1, 4)) {
      case 1: return draw.between(-0.9, 1.0);
      case 2: return draw.between(0.0, 1.0);
      case 3: return draw.between(25.0, 200.0);
      default: return spread(draw, 0.05, 40.0);
    }
  else if constexpr (std::is_same_v<T, Angle>)
    return T::from_value(draw.between(-1.2, 1.2));
  else if constexpr (std::is_same_v<T, Temperature>)
    return T::from_value(draw.between(216.0, 300.0));
  else if constexpr (std::is_same_v<T, Length>)
    switch (draw.between(1, 4)) {
      case 1: return T::from_value(draw.between(0.004, 0.12));
      case 2: return T::from_value(draw.between(0.35, 3.0));
      case 3: return T::from_value(draw.between(6.3e6, 6.4e6));
      default: return T::from_value(spread(draw, 0.001, 11000.0));
    }
  else
    return T::from_value(spread(draw, 0.2, 9000.0));
}
/// The number of a result, in SI.
template <class T>
double number_of(const T& result) {
  if constexpr (std::is_arithmetic_v<T>)
    return static_cast<double>(result);
  else
    return result.value();
}

template <class F, class Result, class... Parameters>
void print_formula(Result (*)(Parameters...)) {
  constexpr int rows = 40, tries = 40000;
  Draw draw;
  int found = 0;
  for (int i = 0; i < tries && found < rows; ++i) {
    const std::tuple<Parameters...> arguments{drawn<Parameters>(draw)...};  // braces keep the order
    std::apply(
        [&](const auto&... all) {
          if (!F::in_range(all...)) return;
          const double result = number_of(F::of(all...));
          if (!std::isfinite(result)) return;
          tell(F::about.name, result);
          ++found;
        },
        arguments);
  }
  if (found == 0) {
    std::fprintf(stderr, "no arguments in the range of %.*s were found\n", static_cast<int>(F::about.name.size()),
                 F::about.name.data());
    ++unreached;
  }
}
template <class... All>
void print_formulas(FormulaList<All...>) {
  (print_formula<All>(static_cast<typename All::type*>(nullptr)), ...);
}

// --- Solves and whole set-ups ----------------------------------------------------------------------------------------

void print_loops(Draw& draw) {
  constexpr std::size_t size = 3000;
  std::vector<double> front(size), rear(size), links(size), centre(size), back(size);
  for (std::size_t i = 0; i < size; ++i) {
    front[i] = draw.between(9, 60);
    rear[i] = draw.between(9, 80);
    links[i] = draw.between(70, 140);
  }
  const double pitch_mm = 15.875;
  if (try_chain_centres_mm({&pitch_mm, 1}, front, rear, links, centre) ||
      try_chain_links_of_mm({&pitch_mm, 1}, front, rear, centre, back))
    std::fputs("columns of one length were refused\n", stderr), ++unreached;
  for (std::size_t i = 0; i < size; ++i) {
    if (std::isnan(centre[i])) continue;  // no loop, and a NaN's bits mean nothing
    tell("chain_centres_mm", centre[i]);
    tell("chain_links_of_mm", back[i]);
    const Length one =
        chain_centre(15.875_mm, Teeth(static_cast<int>(front[i])), Teeth(static_cast<int>(rear[i])), links[i]);
    tell("chain_centre", one.value());
  }
}

void print_setups(Draw& draw, int setups) {
  namespace detail = layshaft::detail;
  for (int i = 0; i < setups; ++i) {
    const Machine machine = draw.machine();
    const layshaft::Setup trial = draw.setup();
    const int gear = draw.between(1, static_cast<int>(machine.gearbox().gears().size()));
    const AngularSpeed engine_speed = draw.between(500.0, 15000.0) * units::rpm;
    const Speed speed = draw.between(1.0, 250.0) * units::kmh;
    const SetupQuestion at{.gear = gear, .engine_speed = engine_speed, .speed = speed};
    for (const auto& one : detail::explained_of_setup)
      if (const auto number = plain_number(machine, trial, one.what, at)) tell(one.what, *number);
    if (const auto comparison = try_compare(machine, machine.stock(), trial))
      for (const auto& one : detail::explained_of_comparison)
        if (const auto number = plain_number(*comparison, one.what)) tell(one.what, *number);
    if (trial.tyre())
      for (const auto& one : detail::explained_of_tyre) tell(one.what, plain_number(*trial.tyre(), one.what));
    const Sprocket sprocket(machine.chain(), trial.rear());
    for (const auto& one : detail::explained_of_sprocket) tell(one.what, plain_number(sprocket, one.what));
    const AnsiToothForm form(sprocket);
    for (const auto& one : detail::explained_of_ansi_tooth_form) tell(one.what, plain_number(form, one.what));
  }
}

void print_texts(Draw& draw) {
  for (int i = 0; i < 2000; ++i) {
    const double number = spread(draw, -50.0, 20000.0);
    const std::string text = to_text(number, 10);
    tell("text of a number", static_cast<double>(text.size()));
    if (const auto length = try_parse_quantity<Length>(text + " mm")) tell("number of a text", length->value());
  }
}

}  // namespace

int main() {
  Draw draw;
  print_formulas(Formulas());
  print_loops(draw);
  print_setups(draw, 300);
  print_texts(draw);
  return unreached == 0 ? 0 : 1;
}
