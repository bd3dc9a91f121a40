// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "wants.hpp"
#include "working.hpp"

#include <layshaft/chain/chain.hpp>
#include <layshaft/chain/explain.hpp>

namespace layshaft::python {
namespace {

void register_slack(py::module_& module) {
  const char* signature = "Slack(movement, method='by hand')";
  Class<Slack> type(
      module, "Slack",
      Signature(signature)
          .doc("A slack and how it is measured: 'by hand' (the middle of one run moved up plus down, the other "
               "straight), "
               "'sag of one run', 'sag of both runs', or 'gap' (to swingarm or slipper, which geometry cannot tell).",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return Slack{given.want<Length>("movement"), given.want<SlackMethod>("method", SlackMethod::by_hand)};
  });
  def_property(type, "movement", "The Length.", [](const Slack& s) { return s.movement; });
  def_property(type, "method", "How it is measured.", [](const Slack& s) { return to_string(s.method); });
  def(type, "measured_as(method, run_length)",
      "The same slack measured in another way, on straight runs of this length. Error for a gap.",
      [](const Slack& s, const Arguments& given) {
        return measured_as(s, given.want<SlackMethod>("method"), given.want<Length>("run_length"));
      });
  def(type, "spare_length(run_length)",
      "The chain length (Length) beyond the taut loop that it means. Error for a gap.",
      [](const Slack& s, const Arguments& given) { return spare_length(s, given.want<Length>("run_length")); });
  def_value(type, [](const Slack& s) {
    Remake remake{tuple_of(give(s.movement)), {}};
    if (s.method != SlackMethod::by_hand) remake.named["method"] = give(to_string(s.method));
    return remake;
  });
  def_formula<formula::hanging_sag>(module, "How far (Length) the middle of one run hangs with all the spare length.");
  def_formula<formula::spare_length_of_sag>(module, "Spare length (Length) of one run that hangs by so much.");
  def_formula<formula::spare_length_of_links>(module, "How much longer (Length) a chain is than the taut loop.");
}

void register_suspension(py::module_& module) {
  auto tight = def_struct<TightPoint>(module, "TightPoint",
                                      "Where the sprockets stand farthest apart: unpacks to angle, centre.",
                                      Field{"angle", &TightPoint::angle, "Of the arm, below the horizontal, an Angle."},
                                      Field{"centre", &TightPoint::centre, "Between the shafts, a Length."});
  def_special(tight, "__iter__", [](const TightPoint& t) { return py::iter(tuple_of(give(t.angle), give(t.centre))); });

  const char* signature = "Suspension(*, layshaft_ahead, layshaft_above, arm, droop, rest, bump)";
  Class<Suspension> type(
      module, "Suspension",
      Signature(signature)
          .doc("A swingarm, measured from its pivot on the machine standing level: layshaft ahead and above (below 0: "
               "behind, below), arm from pivot to axle (one Length, or a pair for the ends of the adjuster), and the "
               "arm's "
               "angles below the horizontal with the wheel hanging (droop), where slack is set (rest), and right up "
               "(bump). RangeError names the part and its range.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    SuspensionParts parts{.layshaft_ahead = given.want<Length>("layshaft_ahead"),
                          .layshaft_above = given.want<Length>("layshaft_above"),
                          .arm = {},
                          .droop = given.want<Angle>("droop"),
                          .rest = given.want<Angle>("rest"),
                          .bump = given.want<Angle>("bump")};
    const py::object arm = given.object("arm");
    if (py::isinstance<py::tuple>(arm) || py::isinstance<py::list>(arm)) {
      const auto pair = py::cast<py::sequence>(arm);
      if (pair.size() != 2)
        raise(Error::range("arm", std::to_string(pair.size()) + " lengths", "one Length, or a pair of them"));
      parts.arm = detail::Want<Length>::from(pair[0], "arm[0]");
      parts.arm_rear = detail::Want<Length>::from(pair[1], "arm[1]");
    } else {
      parts.arm = given.want<Length>("arm");
    }
    return Suspension(parts);
  });
  const auto part = [&](const char* name, const char* doc, auto member) {
    def_property(type, name, doc, [member](const Suspension& s) { return s.parts().*member; });
  };
  part("layshaft_ahead", "Layshaft ahead of the pivot.", &SuspensionParts::layshaft_ahead);
  part("layshaft_above", "Layshaft above the pivot.", &SuspensionParts::layshaft_above);
  def_property(type, "arm", "Pivot to axle, a Length, or a pair for the ends of the adjuster.",
               [](const Suspension& s) {
                 if (!s.parts().arm_rear) return give(s.parts().arm);
                 return py::object(tuple_of(give(s.parts().arm), give(*s.parts().arm_rear)));
               });
  part("droop", "Angle with the wheel hanging.", &SuspensionParts::droop);
  part("rest", "Angle where slack is set.", &SuspensionParts::rest);
  part("bump", "Angle with the wheel right up.", &SuspensionParts::bump);
  def(type, "centre(angle, arm=None)",
      "The centre distance (Length) with the arm at an angle within the travel; arm None: as stated, or the middle of "
      "the pair.",
      [](const Suspension& s, const Arguments& given) {
        return s.centre(given.want<Angle>("angle"), given.want<std::optional<Length>>("arm"));
      });
  def(type, "tight_point(arm=None)", "Where the sprockets stand farthest apart within the travel: a TightPoint.",
      [](const Suspension& s, const Arguments& given) {
        const auto arm = given.want<std::optional<Length>>("arm");
        return arm ? s.tight_point(*arm) : s.tight_point();
      });
  def_value(type, [](const Suspension& s) {
    Remake remake;
    const SuspensionParts& parts = s.parts();
    remake.named["layshaft_ahead"] = give(parts.layshaft_ahead);
    remake.named["layshaft_above"] = give(parts.layshaft_above);
    remake.named["arm"] =
        parts.arm_rear ? py::object(tuple_of(give(parts.arm), give(*parts.arm_rear))) : give(parts.arm);
    remake.named["droop"] = give(parts.droop);
    remake.named["rest"] = give(parts.rest);
    remake.named["bump"] = give(parts.bump);
    return remake;
  });
  def_formula<formula::suspension_centre>(module, "Centre distance (Length) with the swingarm at an angle.");
  def_formula<formula::arm_of_centre>(module, "Swingarm (Length) that gives a centre distance at an angle.");
  def_formula<formula::tight_angle>(module, "Angle at which layshaft, pivot and axle stand in line.");
}

SlackThroughTravel want_travel(const Arguments& given) {
  return slack_through_travel(
      given.want<Suspension>("suspension"), given.want<ChainLoop>("loop"), given.want<double>("links"),
      {.slack = given.want<std::optional<Length>>("slack"), .arm = given.want<std::optional<Length>>("arm")});
}

void register_travel(py::module_& module) {
  def_struct<SlackPoint>(module, "SlackPoint", "The chain at one point of the travel.",
                         Field{"angle", &SlackPoint::angle, "Of the arm, below the horizontal."},
                         Field{"centre", &SlackPoint::centre, "Between the shafts, a Length."},
                         Field{"spare_length", &SlackPoint::spare_length, "Beyond the taut loop; below 0: stretched."},
                         Field{"slack", &SlackPoint::slack, "By hand at mid-span, up plus down, a Length."},
                         Field{"sag", &SlackPoint::sag, "Of the lower run that hangs, the upper straight."});
  const char* signature = "SlackThroughTravel(suspension, loop, links, *, slack=None, arm=None)";
  Class<SlackThroughTravel> type(
      module, "SlackThroughTravel",
      Signature(signature)
          .doc("A chain over two sprockets on a swingarm: its slack at every angle. links may be real (a worn chain "
               "counts "
               "as more). State the slack set at rest, by hand, or the arm from pivot to axle; neither: the "
               "suspension's own arm. RangeError where links or arm cannot be.",
               false)
          .c_str());
  def_init(type, signature, want_travel);
  def_property(type, "suspension", "The Suspension.", [](const SlackThroughTravel& t) { return t.suspension(); });
  def_property(type, "loop", "The ChainLoop.", [](const SlackThroughTravel& t) { return t.loop(); });
  def_property(type, "links", "Length of the chain in pitches.", [](const SlackThroughTravel& t) { return t.links(); });
  def_property(type, "arm", "Pivot to axle, a Length.", [](const SlackThroughTravel& t) { return t.arm(); });
  def_property(type, "too_tight", "Whether the chain would be stretched anywhere: never ride so.",
               [](const SlackThroughTravel& t) { return t.too_tight(); });
  def(type, "at(angle)", "The chain at an angle within the travel: a SlackPoint. Error: within 6.7e-11 m.",
      [](const SlackThroughTravel& t, const Arguments& given) { return t.at(given.want<Angle>("angle")); });
  def(type, "tight_point()", "Where it is tightest: a SlackPoint.",
      [](const SlackThroughTravel& t, const Arguments&) { return t.tight_point(); });
  def(type, "rest()", "Where slack is set: a SlackPoint.",
      [](const SlackThroughTravel& t, const Arguments&) { return t.rest(); });
  def(type, "explain(what, angle)", "How 'slack' or 'spare length' at an angle came about: a Working.",
      [](const SlackThroughTravel& t, const Arguments& given) {
        const std::string what = want_what(given);
        const Angle angle = given.want<Angle>("angle");
        return PyWorking(t.explain(what, angle), py::cast(t).attr("explain"), tuple_of(what, angle), {});
      });
  def_value(type, [](const SlackThroughTravel& t) {
    Remake remake{tuple_of(give(t.suspension()), give(t.loop()), t.links()), {}};
    remake.named["arm"] = give(t.arm());
    return remake;
  });
  def(module, "slack_through_travel(suspension, loop, links, *, slack=None, arm=None)",
      "Slack at every point of the travel: a SlackThroughTravel, which says more.", want_travel);
  def(module, "slack_to_set(suspension, loop, links, least)",
      "The slack (Length) to set at rest, by hand, so that this much is left at the tight point.",
      [](const Arguments& given) {
        return slack_to_set(given.want<Suspension>("suspension"), given.want<ChainLoop>("loop"),
                            given.want<double>("links"), given.want<Length>("least"));
      });
  def(module, "carried_slack(suspension, stock_loop, stock_links, manual_slack, loop, links)",
      "The manual's slack for the stock sprockets carried over to others: the slack (Length) to set at rest, by hand, "
      "so "
      "that as much is left at the tight point. The manual comes first.",
      [](const Arguments& given) {
        return carried_slack(given.want<Suspension>("suspension"), given.want<ChainLoop>("stock_loop"),
                             given.want<double>("stock_links"), given.want<Length>("manual_slack"),
                             given.want<ChainLoop>("loop"), given.want<double>("links"));
      });
}

void register_envelope(py::module_& module) {
  const char* signature = "Obstacle(ahead, above, radius, *, on_arm=False)";
  Class<Obstacle> type(
      module, "Obstacle",
      Signature(signature)
          .doc("Something round that the chain must not touch: where its middle stands ahead of and above the "
               "swingarm's "
               "pivot, and its radius. on_arm: fixed to the swingarm, stated with the arm at rest.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return Obstacle{given.want<Length>("ahead"), given.want<Length>("above"), given.want<Length>("radius"),
                    given.want<bool>("on_arm", false)};
  });
  def_property(type, "ahead", "Ahead of the pivot.", [](const Obstacle& o) { return o.ahead; });
  def_property(type, "above", "Above the pivot.", [](const Obstacle& o) { return o.above; });
  def_property(type, "radius", "Its radius.", [](const Obstacle& o) { return o.radius; });
  def_property(type, "on_arm", "Whether it moves with the arm.", [](const Obstacle& o) { return o.on_arm; });
  def_value(type, [](const Obstacle& o) {
    Remake remake{tuple_of(give(o.ahead), give(o.above), give(o.radius)), {}};
    if (o.on_arm) remake.named["on_arm"] = true;
    return remake;
  });
  def_struct<Clearance>(module, "Clearance", "The least room within the travel, and where.",
                        Field{"least", &Clearance::least, "A Length; below 0: they touch."},
                        Field{"angle", &Clearance::angle, "Of the arm."});
  def(module, "chain_clearance(suspension, loop, arm, obstacle, plate_height)",
      "The least room between chain and obstacle over the whole travel: a Clearance. RangeError names what is out of "
      "range.",
      [](const Arguments& given) {
        return chain_clearance(given.want<Suspension>("suspension"), given.want<ChainLoop>("loop"),
                               given.want<Length>("arm"), given.want<Obstacle>("obstacle"),
                               given.want<Length>("plate_height"));
      });
  def_formula<formula::chain_outside_radius>(module, "Radius (Length) outside which no plate of the chain stands.");
  def_formula<formula::wall_clearance>(module, "Room (Length) between the chain on a sprocket and a wall.");
}

void register_squat(py::module_& module) {
  def_struct<Squat>(module, "Squat", "The two slopes of squat as angles, and their ratio.",
                    Field{"transfer_angle", &Squat::transfer_angle, "Of the load transfer."},
                    Field{"squat_angle", &Squat::squat_angle, "To where tight run and swingarm meet."},
                    Field{"ratio", &Squat::ratio, "Above 1 it squats under power, below 1 it rises."});
  const auto at = [](const Arguments& given) {
    const Suspension suspension = given.want<Suspension>("suspension");
    const SquatGeometry geometry{.wheel_radius = given.want<Length>("wheel_radius"),
                                 .mass_centre_height = given.want<Length>("mass_centre_height"),
                                 .wheelbase = given.want<Length>("wheelbase")};
    return squat(suspension, given.want<ChainLoop>("loop"),
                 given.want<std::optional<Length>>("arm").value_or(suspension.arm()), given.want<Angle>("angle"),
                 geometry);
  };
  def(module, "squat(suspension, loop, angle, *, wheel_radius, mass_centre_height, wheelbase, arm=None)",
      "How chain pull and swingarm hold against the load that moves to the rear: a Squat. arm None: as stated.", at);
  def(module, "squat_ratio(suspension, loop, angle, *, wheel_radius, mass_centre_height, wheelbase, arm=None)",
      "The ratio alone: above 1 it squats under power, below 1 it rises.",
      [at](const Arguments& given) { return at(given).ratio; });
  def_formula<formula::line_angle>(module, "Slope (Angle) of the line of centres.");
  def_formula<formula::tight_run_angle>(module, "Slope (Angle) of the tight run.");
  def_formula<formula::squat_slope>(module, "Tangent of the slope to where tight run and swingarm meet.");
  def_formula<formula::transfer_slope>(module, "Tangent of the load transfer's slope.");
  def_formula<formula::ratio_of_slopes>(module, "Squat ratio, from both slopes.");
  def_formula<formula::angle_of_slope>(module, "Angle whose tangent a slope is.");
}

}  // namespace

void register_chain_travel(py::module_& module) {
  register_slack(module);
  register_suspension(module);
  register_travel(module);
  register_envelope(module);
  register_squat(module);
}

}  // namespace layshaft::python
