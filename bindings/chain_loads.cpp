// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/chain/chain.hpp>
#include <layshaft/chain/explain.hpp>

namespace layshaft::python {
namespace {

void register_made(py::module_& module) {
  const char* signature =
      "ChainMade(*, seal='none', pin_diameter=None, tensile_strength=None, mass_per_length=None, plate_height=None, "
      "joint_friction=None, seal_drag=None)";
  Class<ChainMade> type(
      module, "ChainMade",
      Signature(signature)
          .doc(
              "What is known of a chain beyond its series, from its maker or measured: seal 'none', 'O-ring' or "
              "'shaped'; "
              "pin diameter, tensile strength, mass, plate height; friction of pin in bush (a Band; 0.05 to 0.15 where "
              "nobody says, from memory) and the torque of one joint's seals (a Band of Torque; an assumption where "
              "nobody says).",
              false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const ChainMade made{.seal = given.want<ChainSeal>("seal", ChainSeal::none),
                         .pin_diameter = given.want<std::optional<Length>>("pin_diameter"),
                         .tensile_strength = given.want<std::optional<Force>>("tensile_strength"),
                         .mass_per_length = given.want<std::optional<LinearDensity>>("mass_per_length"),
                         .plate_height = given.want<std::optional<Length>>("plate_height"),
                         .joint_friction = given.want<std::optional<Band<double>>>("joint_friction"),
                         .seal_drag = given.want<std::optional<Band<Torque>>>("seal_drag")};
    if (auto error = layshaft::detail::outside(made)) raise(*error);
    return made;
  });
  const auto part = [&](const char* name, const char* doc, auto member) {
    def_property(type, name, doc, [member](const ChainMade& made) { return made.*member; });
  };
  def_property(type, "seal", "What keeps the grease in.", [](const ChainMade& made) { return to_string(made.seal); });
  part("pin_diameter", "A Length, or None.", &ChainMade::pin_diameter);
  part("tensile_strength", "A Force, or None.", &ChainMade::tensile_strength);
  part("mass_per_length", "A LinearDensity, or None.", &ChainMade::mass_per_length);
  part("plate_height", "A Length, or None.", &ChainMade::plate_height);
  part("joint_friction", "A Band of numbers, or None.", &ChainMade::joint_friction);
  part("seal_drag", "A Band of Torque, or None.", &ChainMade::seal_drag);
  def_value(type, [](const ChainMade& made) {
    Remake remake;
    if (made.seal != ChainSeal::none) remake.named["seal"] = give(to_string(made.seal));
    name_if(remake.named, "pin_diameter", made.pin_diameter);
    name_if(remake.named, "tensile_strength", made.tensile_strength);
    name_if(remake.named, "mass_per_length", made.mass_per_length);
    name_if(remake.named, "plate_height", made.plate_height);
    name_if(remake.named, "joint_friction", made.joint_friction);
    name_if(remake.named, "seal_drag", made.seal_drag);
    return remake;
  });
}

void register_duty(py::module_& module) {
  const char* signature = "ChainDuty(*, torque, shaft_speed, spike=1.0, slack_tension='0 N')";
  Class<ChainDuty> type(
      module, "ChainDuty",
      Signature(signature)
          .doc("What acts on a chain: torque on the front sprocket (above 0) and its speed (0 to 30,000 rpm), the "
               "greatest "
               "torque over this one when gears or ground strike (1 to 20), and the slack run's pull besides the "
               "centrifugal.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    const ChainDuty duty{.torque = given.want<Torque>("torque"),
                         .shaft_speed = given.want<AngularSpeed>("shaft_speed"),
                         .spike = given.want<double>("spike", 1.0),
                         .slack_tension = given.want<Force>("slack_tension", Force())};
    if (auto error = layshaft::detail::outside(duty)) raise(*error);
    return duty;
  });
  def_property(type, "torque", "On the front sprocket.", [](const ChainDuty& d) { return d.torque; });
  def_property(type, "shaft_speed", "Of the front sprocket.", [](const ChainDuty& d) { return d.shaft_speed; });
  def_property(type, "spike", "Greatest torque over this one.", [](const ChainDuty& d) { return d.spike; });
  def_property(type, "slack_tension", "Pull of the slack run.", [](const ChainDuty& d) { return d.slack_tension; });
  def_value(type, [](const ChainDuty& d) {
    Remake remake;
    remake.named["torque"] = give(d.torque);
    remake.named["shaft_speed"] = give(d.shaft_speed);
    if (d.spike != 1.0) remake.named["spike"] = d.spike;
    if (d.slack_tension != Force()) remake.named["slack_tension"] = give(d.slack_tension);
    return remake;
  });
}

void register_loads(py::module_& module) {
  def_struct<ChainLoads>(
      module, "ChainLoads", "A chain under its duty; what no source tells and nobody stated is None.",
      Field{"chain_speed", &ChainLoads::chain_speed, "A Speed."},
      Field{"pull", &ChainLoads::pull, "Of the tight run over the slack one, a Force."},
      Field{"centrifugal_tension", &ChainLoads::centrifugal_tension, "In both runs; None without the chain's mass."},
      Field{"tight_tension", &ChainLoads::tight_tension, "Of the tight run, all told."},
      Field{"greatest_tension", &ChainLoads::greatest_tension, "The same when the torque strikes."},
      Field{"safety", &ChainLoads::safety,
            "Strength over the greatest pull; None without the strength. To be held beside the stock set-up's."},
      Field{"efficiency", &ChainLoads::efficiency, "Power out over power in, a Band; None without the pin's diameter."},
      Field{"loss", &ChainLoads::loss, "A Band of Power, or None."});
  def(module, "chain_loads(loop, duty, *, made=None)",
      "What a chain carries under its duty: ChainLoads. Figures of its series, or those of made, a ChainMade.",
      [](const Arguments& given) {
        return chain_loads(given.want<ChainLoop>("loop"), given.want<ChainDuty>("duty"),
                           given.want<std::optional<ChainMade>>("made").value_or(ChainMade()));
      });
  def(module, "explain_chain_loads(loop, duty, what, *, made=None)",
      "How 'pull', 'tight tension', 'safety' or 'efficiency' of chain_loads() came about: a Working.",
      [](const Arguments& given) {
        const ChainLoop loop = given.want<ChainLoop>("loop");
        const ChainDuty duty = given.want<ChainDuty>("duty");
        const std::string what = want_what(given);
        const auto made = given.want<std::optional<ChainMade>>("made");
        py::dict named;
        name_if(named, "made", made);
        return PyWorking(explain_chain_loads(loop, duty, made.value_or(ChainMade()), what),
                         py::module_::import("layshaft").attr("explain_chain_loads"), tuple_of(loop, duty, what),
                         named);
      });
  def_formula<formula::chain_pull>(module, "Pull (Force) of the tight run over the slack one that a torque makes.");
  def_formula<formula::chain_speed>(module, "Speed of the chain.");
  def_formula<formula::centrifugal_tension>(module, "Pull (Force) that bends the chain's mass round the sprockets.");
  def_formula<formula::slack_tension>(module, "Pull (Force) of the slack run, all told.");
  def_formula<formula::tight_tension>(module, "Pull (Force) of the tight run, all told.");
  def_formula<formula::chain_power>(module, "Power that a chain carries.");
  def_formula<formula::chain_safety>(module, "Strength over the greatest pull.");
  def_formula<formula::joint_friction_pull>(module, "Pull (Force) that the joints' friction takes.");
  def_formula<formula::seal_drag_pull>(module, "Pull (Force) that the seals take.");
  def_formula<formula::chain_efficiency>(module, "Power out over power in.");
  def_formula<formula::chain_efficiency_approximate>(module, "Power out over power in, by the short rule.");
}

void register_teeth(py::module_& module) {
  def_struct<ToothShare>(module, "ToothShare", "One tooth in mesh, counted from the tight run; both over its pull.",
                         Field{"tension", &ToothShare::tension, "Pull of the link that runs onto it, a Band."},
                         Field{"force", &ToothShare::force, "On the tooth, a Band."});
  const char* signature = "ToothShares(*, teeth, rest)";
  Class<ToothShares> type(module, "ToothShares",
                          Signature(signature)
                              .doc("How the teeth in mesh share the chain's pull: at most 64 ToothShare, and the Band "
                                   "that is left. Made by tooth_shares().",
                                   false)
                              .c_str());
  def_init(type, signature, [](const Arguments& given) {
    ToothShares shares{{}, given.want<Band<double>>("rest")};
    const auto teeth = given.want<std::vector<ToothShare>>("teeth");
    if (teeth.size() > most_shared_teeth)
      raise(Error::range("teeth", std::to_string(teeth.size()), "at most " + std::to_string(most_shared_teeth)));
    for (const ToothShare& one : teeth) shares.teeth.push_back(one);
    return shares;
  });
  def_property(type, "teeth", "From the tight run on, a tuple of ToothShare.",
               [](const ToothShares& s) { return py::object(give_list(s.teeth)); });
  def_property(type, "rest", "Pull that the slack run must hold, over the tight run's, a Band.",
               [](const ToothShares& s) { return s.rest; });
  def_value(type, [](const ToothShares& s) {
    Remake remake;
    remake.named["teeth"] = give_list(s.teeth);
    remake.named["rest"] = give(s.rest);
    return remake;
  });
  def(module, "tooth_shares(teeth, engaged)",
      "How engaged teeth (1 to 64) of a sprocket share the pull, as Bands over the pressure angles of the tooth form's "
      "limits (least published, most from memory): ToothShares.",
      [](const Arguments& given) { return tooth_shares(given.want<Teeth>("teeth"), given.want<int>("engaged")); });
  def_formula<formula::pressure_angle_least>(module, "Least angle (Angle) at which a roller presses on a tooth.");
  def_formula<formula::pressure_angle_most>(module, "Greatest angle (Angle) at which a roller presses on a tooth.");
  def_formula<formula::tension_left>(module, "Pull left for the next link, over that of the link before.");
  def_formula<formula::tooth_force_share>(module, "Force on a tooth, over the pull of its link.");
}

void register_rating(py::module_& module) {
  auto rating =
      def_struct<PowerRating>(module, "PowerRating", "What industry rates a chain for: context, never a verdict.",
                              Field{"plate", &PowerRating::plate, "Power as the plates limit it."},
                              Field{"roller", &PowerRating::roller, "Power as rollers and bushes limit it."},
                              Field{"governing", &PowerRating::governing, "The lower."});
  def_property(rating, "governed_by", "'plates' or 'rollers and bushes'.",
               [](const PowerRating& r) { return r.governed_by(); });
  def(module, "power_rating(series, teeth, shaft_speed)",
      "The Power that ANSI B29.1 rates a single strand for: 15,000 hours, lubricated, without shock. Motorcycle and B "
      "series are not in the standard; theirs is what a chain of their pitch would have. Context, never a verdict.",
      [](const Arguments& given) {
        return power_rating(given.want<ChainSeries>("series"), given.want<Teeth>("teeth"),
                            given.want<AngularSpeed>("shaft_speed"));
      });
  def(module, "power_ratings(series, teeth, shaft_speed)", "Both branches of the rating: a PowerRating.",
      [](const Arguments& given) {
        return power_ratings(given.want<ChainSeries>("series"), given.want<Teeth>("teeth"),
                             given.want<AngularSpeed>("shaft_speed"));
      });
  def_formula<formula::plate_rating>(module, "Rated Power as the plates limit it.");
  def_formula<formula::roller_rating>(module, "Rated Power as rollers and bushes limit it.");
}

void register_drive(py::module_& module) {
  auto left = def_struct<SlackLeft>(
      module, "SlackLeft", "The slack that is left through the suspension's travel, by hand at mid-span.",
      Field{"tightest", &SlackLeft::tightest, "Angle of the arm where there is least."},
      Field{"least_slack", &SlackLeft::least_slack, "There, with the stated slack set at rest, a Band of Length."},
      Field{"stretch", &SlackLeft::stretch, "How much (Length) too short the chain is there; 0 where it has slack."},
      Field{"stock_least_slack", &SlackLeft::stock_least_slack, "What the stock sprockets leave there."},
      Field{"slack_to_set", &SlackLeft::slack_to_set,
            "At rest, so that as much is left as the stock sprockets leave; None where the stock chain itself would be "
            "stretched."});
  def_property(left, "too_tight", "Whether the chain would be stretched somewhere: never ride so.",
               [](const SlackLeft& s) { return s.too_tight(); });
  def_struct<ChainDrive>(
      module, "ChainDrive", "A machine's chain drive; what the machine does not state is None.",
      Field{"engagement", &ChainDrive::engagement, "Wrap and teeth in mesh, an Engagement."},
      Field{"stock_teeth_in_mesh", &ChainDrive::stock_teeth_in_mesh,
            "Teeth of the stock front sprocket in mesh, a float, with the stock sprockets as far apart."},
      Field{"slack", &ChainDrive::slack, "A SlackLeft, with a suspension and a slack to set."},
      Field{"loads", &ChainDrive::loads, "ChainLoads at the engine's greatest torque in first gear."},
      Field{"stock_safety", &ChainDrive::stock_safety, "The stock set-up's own safety there."});
}

}  // namespace

void register_chain_loads(py::module_& module) {
  register_made(module);
  register_duty(module);
  register_loads(module);
  register_teeth(module);
  register_rating(module);
  register_drive(module);
}

}  // namespace layshaft::python
