// SPDX-License-Identifier: MIT
#include "amount.hpp"
#include "formula.hpp"
#include "pickle.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/tyre/tyre.hpp>

namespace layshaft::python {
namespace detail {
template <>
struct Words<FitnessCode> {
  static constexpr FitnessCode values[] = {FitnessCode::load, FitnessCode::speed, FitnessCode::radius,
                                           FitnessCode::width, FitnessCode::tread};
};
}  // namespace detail

namespace {

/// What was asked, kept beside the answer: it is the repr, and pickles ask again.
struct PyFitness {
  Remake asked;
  TyreFitness fitness;

  friend bool operator==(const PyFitness& a, const PyFitness& b) { return a.fitness == b.fitness; }
};
/// One of its checks.
struct PyCheck {
  PyFitness whole;
  FitnessCheck check;

  friend bool operator==(const PyCheck& a, const PyCheck& b) { return a.check == b.check; }
};

py::object checks_of(const PyFitness& fitness) {
  py::list checks;
  for (const FitnessCheck& check : fitness.fitness.checks) checks.append(py::cast(PyCheck{fitness, check}));
  return py::tuple(checks);
}

void register_check(py::module_& module) {
  Class<PyCheck> type(module, "FitnessCheck",
                      "One thing that tyre_fitness() looked at; an amount that is not known is None.");
  def_property(type, "what", "'load', 'speed', 'radius', 'width' or 'tread'.",
               [](const PyCheck& c) { return c.check.what; });
  def_property(type, "asked", "Axle load, top speed, clearance or least depth.",
               [](const PyCheck& c) { return give_amount(c.check.asked); });
  def_property(type, "has", "Load capacity of all the axle's tyres, rated speed, growth or depth.",
               [](const PyCheck& c) { return give_amount(c.check.has); });
  def_property(type, "margin", "How much more there is than asked; of a clearance, how much room is left.",
               [](const PyCheck& c) { return give_amount(c.check.margin); });
  def_property(type, "verdict", "'enough', 'short' or 'unknown'.", [](const PyCheck& c) { return c.check.verdict; });
  def_property(type, "rule", "Whose word stands behind it: a Source.", [](const PyCheck& c) { return c.check.rule; });
  def_special(type, "__repr__", [](const PyCheck& c) {
    const auto words = [](const Amount& amount) { return py::repr(give_amount(amount)).cast<std::string>(); };
    return "<FitnessCheck " + std::string(to_string(c.check.what)) + " " + std::string(to_string(c.check.verdict)) +
           ": asked " + words(c.check.asked) + ", has " + words(c.check.has) + ">";
  });
  def_special(type, "__eq__",
              [](const PyCheck& c, const py::object& other) { return is<PyCheck>(other) && c == as<PyCheck>(other); });
  def_special(type, "__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  def_special(type, "__reduce__",
              [](const PyCheck& c) { return tuple_of(py::cast(c.whole).attr("check"), tuple_of(give(c.check.what))); });
}

void register_tyre_fitness(py::module_& module) {
  Class<PyFitness> type(module, "TyreFitness",
                        "A tyre held against what a machine asks of it; made by tyre_fitness().");
  def_property(type, "checks", "All that was looked at, a tuple of FitnessCheck.", checks_of);
  def_property(type, "ride_height_change",
               "How much higher the axle stands than on the stock tyre, a Band of Length; None where no stock tyre is "
               "stated.",
               [](const PyFitness& f) { return f.fitness.ride_height_change; });
  def(type, "check(what)", "The FitnessCheck of 'load', 'speed', 'radius', 'width' or 'tread'; None if not asked for.",
      [](const PyFitness& f, const Arguments& given) -> py::object {
        const auto what = given.want<FitnessCode>("what");
        for (const FitnessCheck& check : f.fitness.checks)
          if (check.what == what) return py::cast(PyCheck{f, check});
        return py::none();
      });
  def_special(type, "__repr__", [](const PyFitness& f) { return call_text("tyre_fitness", f.asked); });
  def_special(type, "__eq__", [](const PyFitness& f, const py::object& other) {
    return is<PyFitness>(other) && f == as<PyFitness>(other);
  });
  def_special(type, "__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  def_special(type, "__reduce__", [](const PyFitness& f) {
    const py::module_ core = py::module_::import("layshaft._core");
    return pickled(core.attr("tyre_fitness"), f.asked.positional, f.asked.named);
  });

  def(module, "tyre_fitness(tyre, asked, *, stock=None, tread_depth=None, tread_rule=None)",
      "Holds a tyre, with so much tread on it, against a TyreAsked and, for room and ride height, against the stock "
      "tyre as marked: a TyreFitness. tread_rule is a LegalTread that states the least depth. What is asked for but "
      "cannot be told is 'unknown', never 'enough'.",
      [](const Arguments& given) {
        const auto tyre = given.want<TyreSize>("tyre");
        auto asked = given.want<TyreAsked>("asked");
        const auto stock = given.want<std::optional<TyreSize>>("stock");
        const auto depth = given.want<std::optional<Length>>("tread_depth");
        const auto rule = given.want<std::optional<LegalTread>>("tread_rule");
        Remake made{tuple_of(give(tyre), give(asked)), {}};
        name_if(made.named, "stock", stock);
        name_if(made.named, "tread_depth", depth);
        name_if(made.named, "tread_rule", rule);
        if (rule && asked.least_tread_depth)
          raise(Error::value("tread_rule: the least tread depth is stated already, in asked; state one of them"));
        if (rule) asked.take(*rule);
        return PyFitness{made, tyre_fitness(tyre, asked, stock, depth)};
      });
}

void register_growth(py::module_& module) {
  def(module, "greatest_section_width(tyre)",
      "The greatest section width (Length) that a tyre with this marking may have, from memory; None for flotation and "
      "cycle sizes, of which no limit is known.",
      [](const Arguments& given) { return greatest_section_width(given.want<TyreSize>("tyre")); });
  def(module, "greatest_radius_growth(tyre, stock)",
      "How much more radius (Length) the tallest tyre of this marking has than the stock tyre as marked, at rest; "
      "growth with speed comes on top.",
      [](const Arguments& given) {
        return greatest_radius_growth(given.want<TyreSize>("tyre"), given.want<TyreSize>("stock"));
      });
  def(module, "greatest_width_growth(tyre, stock)",
      "How much wider (Length), over both sides, the widest tyre of this marking is than the stock tyre as marked; "
      "None "
      "where no limit is known.",
      [](const Arguments& given) {
        return greatest_width_growth(given.want<TyreSize>("tyre"), given.want<TyreSize>("stock"));
      });
  def(module, "speed_growth(tyre, road_speed)",
      "How much a tyre's radius grows at a speed up to its speed symbol's, a Band of Length from nothing to a wide "
      "bound "
      "that is from memory. Error for a tyre without a speed symbol, RangeError for a higher speed.",
      [](const Arguments& given) {
        return speed_growth(given.want<TyreSize>("tyre"), given.want<Speed>("road_speed"));
      });
  def_formula<formula::radius_growth_at_speed>(module, "How much a tyre's radius (Length) grows at a speed.");
  def_formula<formula::radius_growth>(module, "How much more radius (Length) a tyre has than another.");
  def_formula<formula::width_growth>(module, "How much wider (Length) a tyre is than another, over both sides.");
  def_formula<formula::ride_height_change>(module, "How much higher (Length) the axle stands.");
}

void register_closeness(py::module_& module) {
  def_struct<CloseSize>(module, "CloseSize", "A size, and what it does to the stock tyre's circumference.",
                        Field{"tyre", &CloseSize::tyre, "The TyreSize."},
                        Field{"circumference_change", &CloseSize::circumference_change,
                              "Change of the rolling circumference as trial / base - 1, a Band."});
  def(module, "closest_sizes(stock, within, *, rim_code=None)",
      "The sizes whose nominal circumference lies within this fraction (0 to 0.5) of the stock tyre's, built alike, "
      "for "
      "a rim of this code (None: the stock tyre's own): a tuple of CloseSize, the nearest first. A size that could be "
      "is no tyre that is made.",
      [](const Arguments& given) {
        const auto stock = given.want<TyreSize>("stock");
        const auto within = given.want<double>("within");
        const auto rim_code = given.want<std::optional<double>>("rim_code");
        return py::object(give_list(rim_code ? closest_sizes(stock, *rim_code, within) : closest_sizes(stock, within)));
      });
  def_formula<formula::circumference_change>(module, "Change of the rolling circumference, as trial / base - 1.");
}

}  // namespace

void register_fitness(py::module_& module) {
  register_check(module);
  register_tyre_fitness(module);
  register_growth(module);
  register_closeness(module);
}

}  // namespace layshaft::python
