// SPDX-License-Identifier: MIT
#include "amount.hpp"
#include "formula.hpp"
#include "quick.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/setup/costs_after.hpp>
#include <layshaft/setup/explain.hpp>
#include <layshaft/show/caution_text.hpp>

namespace layshaft::python {
namespace {

/// What was asked, kept beside the answer: it is the repr, and pickles ask again.
struct PyAppraisal {
  std::shared_ptr<const Machine> machine;
  Setup base;  ///< what the cautions are told against
  Setup setup;
  Appraisal appraisal;

  friend bool operator==(const PyAppraisal& a, const PyAppraisal& b) { return a.appraisal == b.appraisal; }
};
struct PyComparison {
  std::shared_ptr<const Machine> machine;
  Setup base;
  Setup trial;
  Comparison comparison;

  friend bool operator==(const PyComparison& a, const PyComparison& b) { return a.comparison == b.comparison; }
};

py::tuple amounts_of(const Caution& caution) {
  py::list amounts;
  for (const Amount& amount : caution.amounts)
    if (amount.dimension != Dimension::none) amounts.append(give_amount(amount));
  return py::tuple(amounts);
}

CautionCode code_of(const std::string& word) {
  for (std::size_t i = 0; i < Cautions::capacity; ++i)
    if (const auto code = static_cast<CautionCode>(i); to_string(code) == word) return code;
  raise(Error::range("code", in_quotes(word), "that of a caution"));
}

void register_caution(py::module_& module) {
  Class<Caution> type(module, "Caution",
                      "What a rider must be told: .code, the .amounts that raised it, and .sentence(units).");
  def_property(type, "code", "Its code.", [](const Caution& c) { return c.code; });
  def_property(type, "amounts", "The quantities that raised it.",
               [](const Caution& c) { return py::object(amounts_of(c)); });
  def(type, "sentence(units='metric')", "The caution in words, in 'metric' or 'us' units.",
      [](const Caution& c, const Arguments& given) {
        return sentence(c, given.want<UnitSystem>("units", UnitSystem::metric));
      });
  def_special(type, "__str__", [](const Caution& c) { return sentence(c, UnitSystem::metric); });
  def_special(type, "__repr__", [](const Caution& c) {
    std::string text = "<Caution " + std::string(to_string(c.code));
    for (const py::handle amount : amounts_of(c)) text += " " + py::repr(amount).cast<std::string>();
    return text + ">";
  });
  def_special(type, "__eq__",
              [](const Caution& c, const py::object& other) { return is<Caution>(other) && c == as<Caution>(other); });
  def_special(type, "__hash__", [](const py::object& self) { return py::hash(py::repr(self)); });
  // A caution comes only with what raised it, so that a pickle keeps its parts: code, then value and dimension of each
  // amount. Dimensions are numbered as they stand in the library, where a new one goes to the end.
  def_pickle(
      type,
      [](const Caution& c) {
        return tuple_of(c.code, c.amounts[0].value, static_cast<int>(c.amounts[0].dimension), c.amounts[1].value,
                        static_cast<int>(c.amounts[1].dimension));
      },
      [](const py::tuple& state) {
        const auto amount = [&](std::size_t at) {
          Amount made;
          made.value = want<double>(state[at], "amount");
          const int dimension = want<int>(state[at + 1], "dimension");
          if (dimension < 0 || dimension > static_cast<int>(Dimension::temperature))
            raise(Error::range("dimension", std::to_string(dimension), "that of an amount"));
          made.dimension = static_cast<Dimension>(dimension);
          return made;
        };
        return Caution{code_of(want<std::string>(state[0], "code")), {amount(1), amount(3)}};
      });
}

void register_appraisal(py::module_& module) {
  def_struct<SpeedRange>(module, "SpeedRange", "The speeds a gear covers.",
                         Field{"lowest", &SpeedRange::lowest, "At the lowest engine speed that pulls cleanly, a Band."},
                         Field{"highest", &SpeedRange::highest, "At the limit, a Band."});
  Class<PyAppraisal> type(module, "Appraisal",
                          "Every number that follows from a machine and a set-up; made by appraise().");
  def_property(type, "machine", "The machine.", [](const PyAppraisal& a) { return *a.machine; });
  def_property(type, "setup", "The set-up.", [](const PyAppraisal& a) { return a.setup; });
  def_property(type, "overall_ratios", "Engine turns per wheel turn, from first gear up.",
               [](const PyAppraisal& a) { return py::object(give_list(a.appraisal.overall_ratios())); });
  def_property(type, "circumference", "Rolling circumference, a Band of Length.",
               [](const PyAppraisal& a) { return a.appraisal.circumference(); });
  def_property(type, "chain", "Links, axle position and room: a ChainFit.",
               [](const PyAppraisal& a) { return a.appraisal.chain(); });
  def_property(type, "road",
               "Top speed, hills, start and shifts, an OnRoad; None unless the machine states an engine, a road load "
               "and a mass.",
               [](const PyAppraisal& a) { return a.appraisal.road(); });
  def(type, "downshift(into_gear, speed)",
      "What a shift down into a gear, from 1, makes the engine turn at a road Speed: a Downshift.",
      [](const PyAppraisal& a, const Arguments& given) {
        return a.appraisal.downshift(given.want<int>("into_gear"), given.want<Speed>("speed"));
      });
  def_property(type, "drive", "Teeth in mesh, slack through the travel, pulls, safety and losses: a ChainDrive.",
               [](const PyAppraisal& a) { return a.appraisal.drive(); });
  def_property(type, "wear", "How often each tooth meets the chain: a ToothWear.",
               [](const PyAppraisal& a) { return a.appraisal.wear(); });
  def_property(type, "speedometer", "What the instrument shows: a SpeedometerReading.",
               [](const PyAppraisal& a) { return a.appraisal.speedometer(); });
  def_property(type, "cautions", "What the rider must be told, a tuple of Caution.",
               [](const PyAppraisal& a) { return py::object(give_list(a.appraisal.cautions())); });
  def(type, "speed_at(engine_speed, gear)", "Road speed at an engine speed in a gear (from 1), a Band of Speed.",
      [](const PyAppraisal& a, const Arguments& given) {
        return a.appraisal.speed_at(given.want<AngularSpeed>("engine_speed"), given.want<int>("gear"));
      });
  def(type, "engine_speed_at(speed, gear)", "Engine speed at a road speed in a gear (from 1), a Band of AngularSpeed.",
      [](const PyAppraisal& a, const Arguments& given) {
        return a.appraisal.engine_speed_at(given.want<Speed>("speed"), given.want<int>("gear"));
      });
  def(type, "speed_range(gear)", "The speeds a gear (from 1) covers: a SpeedRange.",
      [](const PyAppraisal& a, const Arguments& given) { return a.appraisal.speed_range(given.want<int>("gear")); });
  def_special(type, "__eq__", [](const PyAppraisal& a, const py::object& other) {
    return is<PyAppraisal>(other) && a == as<PyAppraisal>(other);
  });
  def_special(type, "__hash__", [](const PyAppraisal& a) { return py::hash(py::repr(py::cast(a.setup))); });
  def_special(type, "__repr__", [](const PyAppraisal& a) {
    return "<Appraisal of " + py::repr(py::cast(a.setup)).cast<std::string>() + " on " + a.machine->name() + ">";
  });
  const auto make = [](std::shared_ptr<const Machine> machine, const Setup& base, const Setup& setup) {
    auto made = quick::appraise(*machine, base, setup);
    return PyAppraisal{std::move(machine), base, setup, std::move(made).value()};
  };
  def(module, "_appraise_against(machine, base, setup)", "For pickles.", [make](const Arguments& given) {
    return make(std::make_shared<const Machine>(given.want<Machine>("machine")), given.want<Setup>("base"),
                given.want<Setup>("setup"));
  });
  def_special(type, "__reduce__", [](const PyAppraisal& a) {
    return tuple_of(py::module_::import("layshaft._core").attr("_appraise_against"),
                    tuple_of(py::cast(*a.machine), a.base, a.setup));
  });
  def(module, "appraise(machine, setup)",
      "Every number that follows from a machine and a set-up: an Appraisal. Error where no even chain fits the "
      "adjuster; it names the nearest sprockets that would.\n\n"
      ">>> appraisal = ls.appraise(machine, trial)\n"
      ">>> appraisal.chain.links, ls.show(appraisal.chain.centre)\n"
      "(108, '599.9 (599.9 to 601.2) mm')\n"
      ">>> ls.show(appraisal.speed_at(\"6000 rpm\", gear=5))\n"
      "'71.8 (70.0 to 74.6) km/h'",
      [make](const Arguments& given) {
        const Machine& machine = given.want<Machine>("machine");
        return make(std::make_shared<const Machine>(machine), machine.stock(), given.want<Setup>("setup"));
      });
}

/// One of the changes that can be shared out, by its name; underscores count as spaces.
Change want_change(const Arguments& given) {
  const std::string what = want_what(given);
  std::string names;
  for (const Change change : {Change::thrust, Change::speed, Change::engine_speed}) {
    if (layshaft::detail::same_name(to_string(change), what)) return change;
    names.append(names.empty() ? "\"" : ", \"").append(to_string(change)).append("\"");
  }
  raise(Error::parse(what, 0, "no change of this name to share out", "one of " + names));
}

void register_comparison(py::module_& module) {
  def_struct<WearChange>(
      module, "WearChange", "What wears otherwise than before: Bands of fractions, trial / base - 1.",
      Field{"chain_tension_change", &WearChange::chain_tension_change, "The chain's pull at equal thrust."},
      Field{"front_contacts_change", &WearChange::front_contacts_change, "Meetings of each front tooth."},
      Field{"rear_contacts_change", &WearChange::rear_contacts_change, "Meetings of each rear tooth."},
      Field{"chain_stretch_change", &WearChange::chain_stretch_change,
            "How fast the chain grows at equal thrust, its centrifugal pull left out."},
      Field{"front_tooth_change", &WearChange::front_tooth_change,
            "How fast each front tooth wears, of its material where both set-ups state it."},
      Field{"rear_tooth_change", &WearChange::rear_tooth_change, "How fast each rear tooth wears."},
      Field{"loss_change", &WearChange::loss_change, "Share of power that the joints lose, at equal thrust."},
      Field{"front_life_change", &WearChange::front_life_change, "How far the front sprocket lasts."},
      Field{"rear_life_change", &WearChange::rear_life_change, "How far the rear sprocket lasts."});
  def_struct<RuleOfThumb>(
      module, "RuleOfThumb", "The trade's answer beside the exact one.",
      Field{"thrust_change", &RuleOfThumb::thrust_change, "The rule's change of thrust, a fraction."},
      Field{"error", &RuleOfThumb::error, "Rule less exact."});

  Class<PyComparison> type(
      module, "Comparison",
      "Two set-ups of one machine side by side; made by compare(). Changes are Bands of fractions, trial / base - 1.");
  def_property(type, "base", "The base's Appraisal.", [](const PyComparison& c) {
    return PyAppraisal{c.machine, c.base, c.base, c.comparison.base};
  });
  def_property(type, "trial", "The trial's Appraisal.", [](const PyComparison& c) {
    return PyAppraisal{c.machine, c.base, c.trial, c.comparison.trial};
  });
  const auto part = [&]<class Member>(const char* name, const char* doc, Member Comparison::*member) {
    def_property(type, name, doc, [member](const PyComparison& c) { return c.comparison.*member; });
  };
  part("thrust_change", "In every gear, at equal engine torque and drive efficiency.", &Comparison::thrust_change);
  part("speed_change", "In every gear, at equal engine speed.", &Comparison::speed_change);
  part("engine_speed_change", "In every gear, at equal road speed.", &Comparison::engine_speed_change);
  part("indicated_ratio", "What the speedometer shows after over before, at the same true speed.",
       &Comparison::indicated_ratio);
  part("links_change", "Links more (or, below 0, fewer).", &Comparison::links_change);
  part("wear", "What wears otherwise: a WearChange.", &Comparison::wear);
  part("rule_of_thumb", "The trade's answer for thrust: a RuleOfThumb.", &Comparison::rule_of_thumb);
  def(type, "contributions(what)",
      "Who takes and who gives how much of the change of 'thrust', 'speed' or 'engine speed': a dict of the causes, "
      "each a Band of fractions; they add up to the change. Wear and drive loss are among them where they count.",
      [](const PyComparison& c, const Arguments& given) {
        py::dict points;
        for (const Contribution& one : c.comparison.contributions(want_change(given)))
          points[give(one.cause)] = give(one.points);
        return py::object(points);
      });
  def(type, "explain(what)",
      "How a change came about, such as 'thrust', 'speed' or 'chain tension': a Working. An unknown name is a "
      "ParseError that lists those there are.",
      [](const PyComparison& c, const Arguments& given) {
        const std::string what = want_what(given);
        return PyWorking(c.comparison.explain(what), py::cast(c).attr("explain"), tuple_of(what), {});
      });
  def_property(type, "cautions", "What the rider must be told, a tuple of Caution.",
               [](const PyComparison& c) { return py::object(give_list(c.comparison.cautions())); });
  def_special(type, "__eq__", [](const PyComparison& c, const py::object& other) {
    return is<PyComparison>(other) && c == as<PyComparison>(other);
  });
  def_special(type, "__hash__", [](const PyComparison& c) {
    return py::hash(tuple_of(py::repr(py::cast(c.base)), py::repr(py::cast(c.trial))));
  });
  def_special(type, "__repr__", [](const PyComparison& c) {
    return "<Comparison of " + py::repr(py::cast(c.base)).cast<std::string>() + " with " +
           py::repr(py::cast(c.trial)).cast<std::string>() + " on " + c.machine->name() + ">";
  });
  def_special(type, "__reduce__", [](const PyComparison& c) {
    return tuple_of(py::module_::import("layshaft").attr("compare"), tuple_of(py::cast(*c.machine), c.base, c.trial));
  });
  def(module, "compare(machine, base, trial)",
      "Two set-ups of one machine side by side: a Comparison. An Error names the set-up that cannot be appraised.\n\n"
      ">>> comparison = ls.compare(machine, machine.stock, trial)\n"
      ">>> ls.show_percent(comparison.thrust_change)\n"
      "'+0.5 (-2.6 to +3.5) %'\n"
      ">>> comparison.links_change\n"
      "2",
      [](const Arguments& given) {
        const Machine& machine = given.want<Machine>("machine");
        const Setup& base = given.want<Setup>("base");
        const Setup& trial = given.want<Setup>("trial");
        return PyComparison{std::make_shared<const Machine>(machine), base, trial,
                            quick::compare(machine, base, trial).value()};
      });
}

void register_costs_after(py::module_& module) {
  def_struct<CostChange>(
      module, "CostChange", "What chain and sprockets cost on two set-ups.",
      Field{"chain_life_change", &CostChange::chain_life_change, "How far the chain lasts, trial / base - 1, a Band."},
      Field{"trial", &CostChange::trial, "What the base's parts become: a DriveCosts."},
      Field{"base_per_1000_km", &CostChange::base_per_1000_km, "Each part replaced by itself, a Band."},
      Field{"trial_per_1000_km", &CostChange::trial_per_1000_km, "The same on the trial, a Band."},
      Field{"difference", &CostChange::difference, "Trial less base, of money and lives that both share, a Band."});
  def(module,
      "costs_after(comparison, base, *, chain_price=None, front_price=None, rear_price=None, makers_limit=0.02)",
      "What chain and sprockets cost on the comparison's trial set-up, from what they cost and how long they last on "
      "its base, a DriveCosts: a CostChange. Lives change as comparison.wear says, and the chain's by how far it may "
      "grow; prices stay unless stated (numbers or Bands, 0 to 1e12). RangeError where a price or a life, before or "
      "after, lies outside its range.",
      [](const Arguments& given) {
        const auto price = [&](const char* name) { return given.want<std::optional<Band<double>>>(name); };
        return costs_after(given.want<PyComparison>("comparison").comparison, given.want<DriveCosts>("base"),
                           {price("chain_price"), price("front_price"), price("rear_price")},
                           given.want<double>("makers_limit", usual_stretch_limit));
      });
}

}  // namespace

void register_appraisals(py::module_& module) {
  register_caution(module);
  register_appraisal(module);
  register_comparison(module);
  register_costs_after(module);
  def_formula<formula::contribution>(module, "The points that one factor contributes to a change by the ratio of all.");
  def_formula<formula::tyre_factor>(module, "What another tyre multiplies engine turns over a distance by.");
  def_formula<formula::front_factor>(module, "What another front sprocket multiplies them by.");
  def_formula<formula::rear_factor>(module, "What another rear sprocket multiplies them by.");
  def_formula<formula::wear_factor>(module,
                                    "What the wear of both tyres does, each against itself with all its tread.");
  def_formula<formula::loss_factor>(module, "What another efficiency of the chain drive multiplies thrust by.");
  def_formula<formula::thrust_ratio>(module, "Thrust after over before, where the drive's efficiency changes as well.");
  def_formula<formula::speed_factor>(module, "What a factor of turns multiplies road speed by, at equal engine speed.");
  def_formula<formula::rear_added>(module, "Teeth more behind.");
  def_formula<formula::front_removed>(module, "Teeth fewer in front.");
  def_formula<formula::thrust_change_by_thumb>(module, "The change of thrust by the trade's rule, a fraction.");
}

}  // namespace layshaft::python
