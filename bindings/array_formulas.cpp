// SPDX-License-Identifier: MIT
// The loops of layshaft.arrays, one a formula, all from one template.
#include "array_formulas.hpp"

#include <layshaft/accuracy.hpp>
#include <layshaft/chain/loop_bulk.hpp>
#include <layshaft/formulas.hpp>

#include <concepts>
#include <limits>
#include <utility>

namespace layshaft::python::arrays {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// Says that no element of the result is an argument of another, so that loops need not look.
#if defined(__clang__)
#define LAYSHAFT_ELEMENTS_ARE_APART _Pragma("clang loop vectorize(assume_safety)")
#elif defined(__GNUC__)
#define LAYSHAFT_ELEMENTS_ARE_APART _Pragma("GCC ivdep")
#else
#define LAYSHAFT_ELEMENTS_ARE_APART
#endif
// AVX2 has no fused multiplication and addition, so that its results are the same to the last bit.
#if defined(__GNUC__) && defined(__x86_64__)
#define LAYSHAFT_FOR_AVX2 __attribute__((target("avx2")))
#else
#define LAYSHAFT_FOR_AVX2
#endif

/// Any value of a type.
template <class T>
constexpr T some() {
  if constexpr (requires { T::from_value(1.0); })
    return T::from_value(1.0);
  else if constexpr (requires { T::least; })
    return T(T::least);
  else
    return 1.0;
}

template <class T>
struct Element {
  static bool fits(double) { return true; }
  static T from(double element, double unit) { return T::from_value(element * unit); }
  static double to(T value, double unit) { return value.value() / unit; }
};
template <>
struct Element<double> {
  static bool fits(double) { return true; }
  static double from(double element, double) { return element; }
  static double to(double value, double) { return value; }
};
template <class CountKind>
struct Element<Count<CountKind>> {
  using T = Count<CountKind>;
  static int whole(double element) {
    return static_cast<int>(element >= T::least && element <= T::greatest ? element : T::least);
  }
  static bool fits(double element) { return element == whole(element); }
  // What fits lies within; said again in whole numbers, the compiler sees it as well, and leaves the check out.
  static T from(double element, double) { return T(std::min(std::max(whole(element), T::least), T::greatest)); }
};

template <class Formula, class Type = typename Formula::type>
struct Looped;

template <class Formula, class Result, class... Parameters>
struct Looped<Formula, Result(Parameters...)> {
  static constexpr bool takes_numbers = Kinds::has<Result> && (Kinds::has<Parameters> && ...);
  static constexpr std::size_t inputs = sizeof...(Parameters);

  /// The size in SI of each argument's unit, and last of the result's.
  static consteval std::array<double, inputs + 1> unit_sizes() {
    static_assert(inputs <= Words::most);
    const Words words = words_of(Formula::about.parameters);
    std::array<double, inputs + 1> sizes{};
    std::size_t i = 0;
    const auto add = [&](const Kind& kind) {
      const UnitName* unit = unit_of(kind, Formula::about.name, i < inputs ? words.word[i] : std::string_view());
      sizes[i++] = unit ? unit->unit : 1.0;
    };
    (add(KindOf<Parameters>::kind), ...);
    add(KindOf<Result>::kind);
    return sizes;
  }

  // The loop stands here twice, since an attribute cannot be a template's argument; `one` is inlined into both.
  template <std::size_t... I>
  static void run(const double* const* arguments, double* result, std::ptrdiff_t count, std::index_sequence<I...>) {
    const double* const in[] = {arguments[I]...};
    LAYSHAFT_ELEMENTS_ARE_APART
    for (std::ptrdiff_t i = 0; i < count; ++i) result[i] = one<I...>(in[I][i]...);
  }
  template <std::size_t... I>
  LAYSHAFT_FOR_AVX2 static void run_wide(const double* const* arguments, double* result, std::ptrdiff_t count,
                                         std::index_sequence<I...>) {
    const double* const in[] = {arguments[I]...};
    LAYSHAFT_ELEMENTS_ARE_APART
    for (std::ptrdiff_t i = 0; i < count; ++i) result[i] = one<I...>(in[I][i]...);
  }
  template <std::size_t... I>
  static double one(std::same_as<double> auto... element) {
    static constexpr auto unit = unit_sizes();
    if (!(Element<Parameters>::fits(element) && ...)) return nan;
    if (!Formula::in_range(Element<Parameters>::from(element, unit[I])...)) return nan;
    const double value = Element<Result>::to(Formula::of(Element<Parameters>::from(element, unit[I])...), unit[inputs]);
    return value - value == 0.0 ? value : nan;
  }
  static void loop(const double* const* arguments, double* result, std::ptrdiff_t count) {
    run(arguments, result, count, std::index_sequence_for<Parameters...>());
  }
  /// A formula that calls libm does so for one element after the other, on any processor; it is not constexpr.
  static constexpr bool calls_no_libm = requires {
    std::bool_constant<(static_cast<void>(Formula::of(some<Parameters>()...)), true)>();
  };
  static constexpr Loop best_loop() {
    if constexpr (calls_no_libm)
      return wide_loop;
    else
      return loop;
  }
  static void wide_loop(const double* const* arguments, double* result, std::ptrdiff_t count) {
    run_wide(arguments, result, count, std::index_sequence_for<Parameters...>());
  }
  static constexpr ArrayFormula entry() {
    std::string_view meaning;
    if constexpr (requires { Formula::meaning; }) meaning = Formula::meaning;
    ArrayFormula made{Formula::about, meaning, nullptr,
                      nullptr,        inputs,  {Kinds::index<Parameters>()..., Kinds::index<Result>()}};
    made.about.body = {};
    if constexpr (constexpr double error = error_ulp(Formula::about.name); error < 25.0)
      made.error = static_cast<unsigned char>(10.0 * error + 0.5);
    if constexpr (requires { &Formula::loop; }) {
      made.loop = made.wide = Formula::loop;
    } else {
      made.loop = loop;
      made.wide = best_loop();
    }
    return made;
  }
};

template <class Formula>
[[nodiscard]] constexpr auto entry_of() {
  if constexpr (Looped<Formula>::takes_numbers)
    return std::array{Looped<Formula>::entry()};
  else
    return std::array<ArrayFormula, 0>{};
}
template <class Formula>
[[nodiscard]] constexpr auto left_out_of() {
  if constexpr (Looped<Formula>::takes_numbers)
    return std::array<std::string_view, 0>{};
  else
    return std::array{Formula::about.name};
}
template <class T, std::size_t... Sizes>
[[nodiscard]] constexpr auto joined(const std::array<T, Sizes>&... parts) {
  std::array<T, (0 + ... + Sizes)> all{};
  [[maybe_unused]] std::size_t at = 0;
  const auto add = [&](const auto& part) {
    for (const T& one : part) all[at++] = one;
  };
  (add(parts), ...);
  return all;
}

template <class... Formulas>
struct Table {
  static constexpr auto entries = joined<ArrayFormula>(entry_of<Formulas>()...);
  static constexpr auto left_out = joined<std::string_view>(left_out_of<Formulas>()...);
};

// --- What is no single formula ---------------------------------------------------------------------------------------

layshaft::detail::Column column_of(const double* numbers) { return {numbers, sizeof(double)}; }

/// The loop both ways.
struct LinksOfCentre {
  using type = double(Length, Teeth, Teeth, Length);
  static constexpr Formula about{"chain_links",
                                 "(Length pitch, Teeth front, Teeth rear, Length centre)",
                                 "the circles that the chain runs on do not overlap",
                                 {},
                                 sources::geometry};
  static constexpr std::string_view meaning = "links of the closed loop over two sprockets, a real number, exactly";
  // A solve over columns, which asks for its own range and answers NaN outside it.
  static void loop(const double* const* in, double* links, std::ptrdiff_t count) {
    layshaft::detail::links_of_mm({column_of(in[0]), column_of(in[1]), column_of(in[2]), column_of(in[3])}, links,
                                  sizeof(double), static_cast<std::size_t>(count));
  }
};
struct CentreOfLinks {
  using type = Length(Length, Teeth, Teeth, double);
  static constexpr Formula about{"chain_centre",
                                 "(Length pitch, Teeth front, Teeth rear, double links)",
                                 "so many go around",
                                 {},
                                 sources::geometry};
  static constexpr std::string_view meaning =
      "centre distance of a closed loop of so many links, whole or real, exactly: the inverse of chain_links";
  static void loop(const double* const* in, double* centre, std::ptrdiff_t count) {
    layshaft::detail::centres_mm({column_of(in[0]), column_of(in[1]), column_of(in[2]), column_of(in[3])}, centre,
                                 sizeof(double), static_cast<std::size_t>(count));
  }
};
/// The lower of two formulas.
struct RatingOfPitch {
  using type = Power(Length, Teeth, AngularSpeed);
  static constexpr Formula about{"chain_power_rating",
                                 "(Length pitch, Teeth teeth, AngularSpeed shaft_speed)",
                                 "positive(pitch) && positive(shaft_speed)",
                                 {},
                                 sources::ansi_b29_1_power};
  static constexpr std::string_view meaning =
      "power that the standard chain of a pitch is rated for, one strand, by the lower of its two branches; context, "
      "never a verdict";
  static bool in_range(Length pitch, Teeth, AngularSpeed shaft_speed) {
    return positive(pitch) && positive(shaft_speed);
  }
  static Power of(Length pitch, Teeth teeth, AngularSpeed shaft_speed) {
    return power_rating_of_pitch(pitch, teeth, shaft_speed);
  }
};

template <class... Formulas>
Table<Formulas..., LinksOfCentre, CentreOfLinks, RatingOfPitch> table_of(FormulaList<Formulas...>);

using All = decltype(table_of(Formulas()));

}  // namespace

std::span<const ArrayFormula> array_formulas() { return All::entries; }
std::span<const std::string_view> left_out() { return All::left_out; }

}  // namespace layshaft::python::arrays
