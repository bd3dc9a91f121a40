// SPDX-License-Identifier: MIT
#include "function.hpp"
#include "wants.hpp"

#include <layshaft/show/display.hpp>

namespace layshaft::python {
namespace {

/// Calls `shown` with the quantity, or the band of quantities, that the object is; null where it is of another kind.
template <class Quantity>
[[nodiscard]] std::optional<std::string> show_as(const py::object& value, UnitSystem units) {
  if (kind_of(value) == &kind_of<Quantity>()) return show(want<Quantity>(value, "value"), units);
  if (is<PyBand>(value) && as<PyBand>(value).kind == &kind_of<Quantity>())
    return show(want<Band<Quantity>>(value, "value"), units);
  return std::nullopt;
}

}  // namespace

void register_show(py::module_& module) {
  def(module, "show(value, units='metric')",
      "A Length, Speed, Mass, AngularSpeed, Angle, Force, Torque, Power, Duration or Energy, or a Band of them, as "
      "people read it, in "
      "'metric' or 'us' units: "
      "'615.4 (615.4 to 616.7) mm'.\n\n"
      ">>> ls.show(615.4 * ls.mm, \"us\")\n"
      "'24.23 in'",
      [](const Arguments& given) {
        const py::object value = given.object("value");
        const auto units = given.want<UnitSystem>("units", UnitSystem::metric);
        if (const auto text = show_as<Length>(value, units)) return *text;
        if (const auto text = show_as<Speed>(value, units)) return *text;
        if (const auto text = show_as<Mass>(value, units)) return *text;
        if (const auto text = show_as<AngularSpeed>(value, units)) return *text;
        if (const auto text = show_as<Angle>(value, units)) return *text;
        if (const auto text = show_as<Force>(value, units)) return *text;
        if (const auto text = show_as<Torque>(value, units)) return *text;
        if (const auto text = show_as<Power>(value, units)) return *text;
        if (const auto text = show_as<Duration>(value, units)) return *text;
        if (const auto text = show_as<Energy>(value, units)) return *text;
        wrong_type(
            "value",
            "a Length, Speed, Mass, AngularSpeed, Angle, Force, Torque, Power, Duration or Energy, or a Band of them",
            value);
      });
  def(module, "show_number(value, decimals)",
      "A number, or a Band of numbers, with so many decimals: '0.971 (0.952 to 0.990)'.",
      [](const Arguments& given) { return show(given.want<Band<double>>("value"), given.want<int>("decimals")); });
  def(module, "show_signed(value, decimals)", "A number with its sign: '+6.1'.",
      [](const Arguments& given) { return show_signed(given.want<double>("value"), given.want<int>("decimals")); });
  def(module, "show_percent(value, decimals=1)",
      "A fraction, or a Band of fractions, as a percentage with its sign: '+6.1 %'.", [](const Arguments& given) {
        return show_percent(given.want<Band<double>>("value"), given.want<int>("decimals", 1));
      });
}

}  // namespace layshaft::python
