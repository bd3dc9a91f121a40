// SPDX-License-Identifier: MIT
#include "amount.hpp"
#include "quick.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/io/question_json.hpp>
#include <layshaft/show/choice_text.hpp>

namespace layshaft::python {
namespace detail {

template <>
struct Words<DecisionInput> {
  static constexpr auto& values = decision_inputs;
};
template <>
struct Want<SprocketOffer> {
  static SprocketOffer from(py::handle object, std::string_view argument) {
    if (is<SprocketOffer>(object)) return as<SprocketOffer>(object);
    return {Want<Teeth>::from(object, argument)};
  }
};
template <>
struct Want<TyreOffer> {
  static TyreOffer from(py::handle object, std::string_view argument) {
    if (is<TyreOffer>(object)) return as<TyreOffer>(object);
    return {Want<TyreSize>::from(object, argument)};
  }
};

}  // namespace detail

namespace {

Amount want_amount(const py::object& object, Measure measure, std::string_view argument) {
  const Dimension dimension = measure_row(measure).dimension;
  Amount amount = Amount::number(0.0);
  amount.dimension = dimension;
  const Kind* kind = kind_of(dimension);
  amount.value = kind ? want_quantity(object, *kind, argument) : want_number(object, argument);
  return amount;
}
py::object give_value(Measure measure, double value) {
  return value_to_python(kind_of(measure_row(measure).dimension), value);
}
py::object give_value(Measure measure, const Band<double>& value) {
  return py::cast(PyBand{kind_of(measure_row(measure).dimension), value});
}
/// A function to be called back, or None.
py::object want_callback(const Arguments& given, std::string_view name) {
  py::object callback = given.object(name);
  if (!callback.is_none() && !PyCallable_Check(callback.ptr())) wrong_type(name, "a function, or None", callback);
  return callback;
}
Measured want_measured(const Arguments& given) {
  return {given.want<Measure>("measure"), given.want<std::optional<int>>("gear"),
          given.want<std::optional<Speed>>("speed")};
}
Offer want_offer(const Arguments& given) {
  Offer offer{given.want<std::optional<Band<double>>>("price"), given.want<Band<double>>("labour", Band<double>())};
  if (auto error = layshaft::detail::outside(offer)) raise(*error);
  return offer;
}
void name_offer(py::dict& named, const Offer& offer) {
  name_if(named, "price", offer.price);
  if (offer.labour != Band<double>()) named["labour"] = give(offer.labour);
}
void name_measured(py::dict& named, const Measured& measured) {
  name_if(named, "gear", measured.gear);
  name_if(named, "speed", measured.speed);
}
template <class T>
void def_offer(Class<T>& type) {
  def_property(type, "price", "A Band, or None where it is not known.", [](const T& t) { return t.offer.price; });
  def_property(type, "labour", "Of fitting it, a Band.", [](const T& t) { return t.offer.labour; });
}

void register_offers(py::module_& module) {
  const char* sprocket = "SprocketOffer(teeth, *, material=None, price=None, labour=0.0)";
  Class<SprocketOffer> front(
      module, "SprocketOffer",
      Signature(sprocket)
          .doc("A sprocket to choose: its teeth, what it is made of, and what it costs to buy and to fit, in any one "
               "currency (numbers or Bands, 0 to 1e12).",
               false)
          .c_str());
  def_init(front, sprocket, [](const Arguments& given) {
    return SprocketOffer{given.want<Teeth>("teeth"), given.want<std::optional<SprocketMaterial>>("material"),
                         want_offer(given)};
  });
  def_property(front, "teeth", "An int.", [](const SprocketOffer& s) { return s.teeth; });
  def_property(front, "material", "Its word, or None.", [](const SprocketOffer& s) { return s.material; });
  def_offer(front);
  def_value(front, [](const SprocketOffer& s) {
    Remake remake{tuple_of(give(s.teeth)), {}};
    name_if(remake.named, "material", s.material);
    name_offer(remake.named, s.offer);
    return remake;
  });

  const char* tyre = "TyreOffer(tyre=None, *, circumference=None, price=None, labour=0.0)";
  Class<TyreOffer> rear(
      module, "TyreOffer",
      Signature(tyre)
          .doc("A rear tyre to choose: a TyreSize or its marking, a measured rollout (a Length or a Band, 0.2 to 5 m) "
               "that overrides it or stands in its place, and what it costs to buy and to fit.",
               false)
          .c_str());
  def_init(rear, tyre, [](const Arguments& given) {
    TyreOffer offer{given.want<std::optional<TyreSize>>("tyre"),
                    given.want<std::optional<Band<Length>>>("circumference"), want_offer(given)};
    if (auto error = layshaft::detail::outside(offer)) raise(*error);
    return offer;
  });
  def_property(rear, "tyre", "A TyreSize, or None.", [](const TyreOffer& t) { return t.tyre; });
  def_property(rear, "circumference", "As measured, a Band of Length, or None.",
               [](const TyreOffer& t) { return t.circumference; });
  def_offer(rear);
  def_value(rear, [](const TyreOffer& t) {
    Remake remake;
    name_if(remake.named, "tyre", t.tyre);
    name_if(remake.named, "circumference", t.circumference);
    name_offer(remake.named, t.offer);
    return remake;
  });

  const char* chain = "ChainOffer(*, series=None, made=None, longest=None, price=None, labour=0.0)";
  Class<ChainOffer> type(
      module, "ChainOffer",
      Signature(chain)
          .doc("A chain to choose: its series (None: the machine's), a ChainMade, the links it is sold with or has on "
               "the machine (it can be made shorter, not longer; None: any), and what it costs to buy and to fit.",
               false)
          .c_str());
  def_init(type, chain, [](const Arguments& given) {
    return ChainOffer{given.want<std::optional<ChainSeries>>("series"),
                      given.want<std::optional<ChainMade>>("made").value_or(ChainMade()),
                      given.want<std::optional<Links>>("longest"), want_offer(given)};
  });
  def_property(type, "series", "A ChainSeries, or None.", [](const ChainOffer& c) { return c.series; });
  def_property(type, "made", "A ChainMade.", [](const ChainOffer& c) { return c.made; });
  def_property(type, "longest", "Links, or None.", [](const ChainOffer& c) { return c.longest; });
  def_offer(type);
  def_value(type, [](const ChainOffer& c) {
    Remake remake;
    name_if(remake.named, "series", c.series);
    if (c.made != ChainMade()) remake.named["made"] = give(c.made);
    name_if(remake.named, "longest", c.longest);
    name_offer(remake.named, c.offer);
    return remake;
  });
}

void register_space(py::module_& module) {
  const char* signature = "Space(*, fronts, rears, tyres=(), chains=(), links=(), present=None)";
  Class<Space> type(
      module, "Space",
      Signature(signature)
          .doc("What there is to choose from; every combination is a set-up. fronts and rears are teeth or "
               "SprocketOffers; tyres are TyreSizes, markings or TyreOffers (none: the tyre that is on the machine); "
               "chains are ChainOffers (none: one like that on the machine); links are counts (none: for every pair "
               "the shortest even count that closes); present is the Setup on the machine now, whose parts cost "
               "nothing (None: the stock one). Duplicates count once, and order means nothing.",
               false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    Space space{given.want<std::vector<SprocketOffer>>("fronts"), given.want<std::vector<SprocketOffer>>("rears"),
                given.want<std::vector<TyreOffer>>("tyres", {}),  given.want<std::vector<ChainOffer>>("chains", {}),
                given.want<std::vector<Links>>("links", {}),      given.want<std::optional<Setup>>("present")};
    if (auto error = layshaft::detail::outside(space)) raise(*error);
    return space;
  });
  def_property(type, "fronts", "A tuple of SprocketOffer.",
               [](const Space& s) { return py::object(give_list(s.fronts)); });
  def_property(type, "rears", "A tuple of SprocketOffer.",
               [](const Space& s) { return py::object(give_list(s.rears)); });
  def_property(type, "tyres", "A tuple of TyreOffer.", [](const Space& s) { return py::object(give_list(s.tyres)); });
  def_property(type, "chains", "A tuple of ChainOffer.",
               [](const Space& s) { return py::object(give_list(s.chains)); });
  def_property(type, "links", "A tuple of counts.", [](const Space& s) { return py::object(give_list(s.links)); });
  def_property(type, "present", "The Setup on the machine now, or None.", [](const Space& s) { return s.present; });
  def_value(type, [](const Space& s) {
    Remake remake;
    remake.named["fronts"] = give_list(s.fronts);
    remake.named["rears"] = give_list(s.rears);
    if (!s.tyres.empty()) remake.named["tyres"] = give_list(s.tyres);
    if (!s.chains.empty()) remake.named["chains"] = give_list(s.chains);
    if (!s.links.empty()) remake.named["links"] = give_list(s.links);
    name_if(remake.named, "present", s.present);
    return remake;
  });
}

void register_goals(py::module_& module) {
  const char* limit_signature = "Limit(measure, *, least=None, most=None, gear=None, speed=None)";
  Class<Limit> limit(
      module, "Limit",
      Signature(limit_signature)
          .doc("What a set-up must keep: a measure by its name (measures() lists them), at the least, at the most, or "
               "both, as a quantity of its kind or a number; a fraction is a share of one, 0.02. 'engine speed' needs "
               "a speed and takes a gear, 'climb' takes a gear.\n\n"
               ">>> ls.Limit(\"engine speed\", most=\"6800 rpm\", speed=\"90 km/h\")\n"
               "Limit('engine speed', most=AngularSpeed('6800 rpm'), speed=Speed('90 km/h'))",
               false)
          .c_str());
  def_init(limit, limit_signature, [](const Arguments& given) {
    Limit made{want_measured(given)};
    if (given.has("least") && !given.object("least").is_none())
      made.least = want_amount(given.object("least"), made.measured.what, "least");
    if (given.has("most") && !given.object("most").is_none())
      made.most = want_amount(given.object("most"), made.measured.what, "most");
    if (auto error = layshaft::detail::outside(made, most_gears)) raise(*error);
    return made;
  });
  def_property(limit, "measure", "Its name.", [](const Limit& l) { return to_string(l.measured.what); });
  def_property(limit, "gear", "As asked for, or None.", [](const Limit& l) { return l.measured.gear; });
  def_property(limit, "speed", "As asked for, or None.", [](const Limit& l) { return l.measured.speed; });
  def_property(limit, "least", "A quantity or a number, or None.",
               [](const Limit& l) { return l.least ? give_value(l.measured.what, l.least->value) : py::none(); });
  def_property(limit, "most", "A quantity or a number, or None.",
               [](const Limit& l) { return l.most ? give_value(l.measured.what, l.most->value) : py::none(); });
  def_value(limit, [](const Limit& l) {
    Remake remake{tuple_of(give(to_string(l.measured.what))), {}};
    if (l.least) remake.named["least"] = give_value(l.measured.what, l.least->value);
    if (l.most) remake.named["most"] = give_value(l.measured.what, l.most->value);
    name_measured(remake.named, l.measured);
    return remake;
  });

  const char* wish_signature = "Wish(measure, want, *, weight=1.0, gear=None, speed=None)";
  Class<Wish> wish(module, "Wish",
                   Signature(wish_signature)
                       .doc("What a set-up should come near: a measure by its name, 'less', 'more', or a target "
                            "of its kind, and how much it matters against the others (above 0, to 1e6).",
                            false)
                       .c_str());
  def_init(wish, wish_signature, [](const Arguments& given) {
    Wish made{want_measured(given)};
    const py::object want = given.object("want");
    const std::string word = py::isinstance<py::str>(want) ? want.cast<std::string>() : std::string();
    if (word == "less" || word == "more") {
      made.want = word == "less" ? layshaft::Want::less : layshaft::Want::more;
    } else {
      made.want = layshaft::Want::target;
      made.target = want_amount(want, made.measured.what, "want");
    }
    made.weight = given.want<double>("weight", 1.0);
    if (auto error = layshaft::detail::outside(made, most_gears)) raise(*error);
    return made;
  });
  def_property(wish, "measure", "Its name.", [](const Wish& w) { return to_string(w.measured.what); });
  def_property(wish, "gear", "As asked for, or None.", [](const Wish& w) { return w.measured.gear; });
  def_property(wish, "speed", "As asked for, or None.", [](const Wish& w) { return w.measured.speed; });
  def_property(wish, "want", "'less', 'more', or the target.", [](const Wish& w) {
    return w.target ? give_value(w.measured.what, w.target->value) : give(to_string(w.want));
  });
  def_property(wish, "weight", "How much it matters.", [](const Wish& w) { return w.weight; });
  def_value(wish, [](const Wish& w) {
    Remake remake{tuple_of(give(to_string(w.measured.what)),
                           w.target ? give_value(w.measured.what, w.target->value) : give(to_string(w.want))),
                  {}};
    if (w.weight != 1.0) remake.named["weight"] = give(w.weight);
    name_measured(remake.named, w.measured);
    return remake;
  });

  const char* goals_signature = "Goals(*, limits=(), wishes, robust=False)";
  Class<Goals> goals(
      module, "Goals",
      Signature(goals_signature)
          .doc("All that a rider wants: up to 32 Limits, 1 to 16 Wishes; robust judges everything by the worse end of "
               "its band, not by what is likely.\n\n"
               ">>> goals = ls.Goals(limits=[ls.Limit(\"links\", most=110)], wishes=[ls.Wish(\"thrust change\", 0.0), "
               "ls.Wish(\"links\", \"less\")])\n"
               ">>> len(goals.wishes)\n"
               "2",
               false)
          .c_str());
  def_init(goals, goals_signature, [](const Arguments& given) {
    Goals made{given.want<std::vector<Limit>>("limits", {}), given.want<std::vector<Wish>>("wishes"),
               given.want<bool>("robust", false)};
    if (auto error = layshaft::detail::outside(made, most_gears)) raise(*error);
    return made;
  });
  def_property(goals, "limits", "A tuple of Limit.", [](const Goals& g) { return py::object(give_list(g.limits)); });
  def_property(goals, "wishes", "A tuple of Wish.", [](const Goals& g) { return py::object(give_list(g.wishes)); });
  def_property(goals, "robust", "Whether the worse end of every band counts.", [](const Goals& g) { return g.robust; });
  def_value(goals, [](const Goals& g) {
    Remake remake;
    if (!g.limits.empty()) remake.named["limits"] = give_list(g.limits);
    remake.named["wishes"] = give_list(g.wishes);
    if (g.robust) remake.named["robust"] = give(g.robust);
    return remake;
  });
  def(module, "measures()", "Every measure that a limit or a wish can name: a dict of what each means.",
      [](const Arguments&) {
        py::dict all;
        for (const MeasureRow& row : measure_rows) all[give(row.name)] = give(row.meaning);
        return py::object(all);
      });
  def(module, "question_from_json(text)", "The Space and the Goals of a question in JSON: a tuple of both.",
      [](const Arguments& given) {
        const Question question = question_from_json(given.want<std::string>("text"));
        return py::object(tuple_of(py::cast(question.space), py::cast(question.goals)));
      });
}

// What a study brings back from another process goes by pickle, as tuples of what pickles already.
template <class T>
T part_of(const py::tuple& state, std::size_t place) {
  return want<T>(state[place], "state");
}
py::tuple state_of(const Band<double>& band) { return tuple_of(band.low, band.nominal, band.high); }
Band<double> band_of(const py::tuple& state) {
  return {part_of<double>(state, 0), part_of<double>(state, 1), part_of<double>(state, 2)};
}
py::tuple state_of(const Chosen& chosen) {
  py::list wishes, limits;
  for (const WishTold& told : chosen.reason.wishes)
    wishes.append(tuple_of(told.wish, state_of(told.value), told.next, told.best));
  for (const LimitTold& told : chosen.limits) limits.append(tuple_of(told.limit, state_of(told.value)));
  return tuple_of(chosen.setup, chosen.score, wishes, limits, chosen.sure, give_list(chosen.cautions));
}
Chosen chosen_of(const py::tuple& state) {
  Chosen chosen{part_of<Setup>(state, 0), part_of<double>(state, 1), {}, {}, part_of<bool>(state, 4), {}};
  for (const py::handle one : state[2]) {
    const auto told = one.cast<py::tuple>();
    chosen.reason.wishes.push_back(
        {part_of<Wish>(told, 0), band_of(told[1]), part_of<std::optional<double>>(told, 2), part_of<bool>(told, 3)});
  }
  for (const py::handle one : state[3]) {
    const auto told = one.cast<py::tuple>();
    chosen.limits.push_back({part_of<Limit>(told, 0), band_of(told[1])});
  }
  for (const Caution& caution : part_of<std::vector<Caution>>(state, 5)) chosen.cautions.push_back(caution);
  return chosen;
}
py::tuple state_of(const Relaxation& relaxation) {
  py::list limits;
  for (const RelaxedLimit& one : relaxation.limits) limits.append(tuple_of(one.place, one.limit, one.by));
  return tuple_of(relaxation.setup, limits);
}
Relaxation relaxation_of(const py::tuple& state) {
  Relaxation relaxation{{}, part_of<Setup>(state, 0)};
  for (const py::handle one : state[1]) {
    const auto limit = one.cast<py::tuple>();
    relaxation.limits.push_back({limit[0].cast<std::size_t>(), part_of<Limit>(limit, 1), part_of<double>(limit, 2)});
  }
  return relaxation;
}
py::tuple state_of(const Choice& choice) {
  return tuple_of(give_list(choice.ranked), give_list(choice.front), give_list(choice.relaxations), choice.examined,
                  choice.kept, give_list(choice.ruled_out), choice.untold, choice.complete, choice.best_at_low,
                  choice.best_at_high);
}
Choice choice_of(const py::tuple& state) {
  const auto count = [&](std::size_t place) { return state[place].cast<std::uint64_t>(); };
  std::vector<std::uint64_t> ruled_out;
  for (const py::handle one : state[5]) ruled_out.push_back(one.cast<std::uint64_t>());
  return {part_of<std::vector<Chosen>>(state, 0),
          part_of<std::vector<Chosen>>(state, 1),
          part_of<std::vector<Relaxation>>(state, 2),
          count(3),
          count(4),
          std::move(ruled_out),
          count(6),
          part_of<bool>(state, 7),
          part_of<std::optional<Setup>>(state, 8),
          part_of<std::optional<Setup>>(state, 9)};
}
template <class T, class From>
void def_state(Class<T>& type, From from) {
  def_pickle(
      type, [](const T& value) { return state_of(value); }, from);
}

void register_choice(py::module_& module) {
  Class<Chosen> chosen(module, "Chosen", "A set-up that keeps all limits, and that nothing beats in every wish.");
  def_property(chosen, "setup", "The Setup.", [](const Chosen& c) { return c.setup; });
  def_property(chosen, "score", "0: the best of the trade-off in every wish; 1: the worst.",
               [](const Chosen& c) { return c.score; });
  def_property(chosen, "sure", "Whether the limits are kept over the whole of every band.",
               [](const Chosen& c) { return c.sure; });
  def_property(chosen, "cautions",
               "What the rider must be told before riding on it, a tuple of Caution; of those ranked.",
               [](const Chosen& c) { return py::object(give_list(c.cautions)); });
  def_property(chosen, "reason", "Why it stands where it does, in words.",
               [](const Chosen& c) { return sentence(c.reason); });
  def(chosen, "tell(units='metric')", "The reason with metric or 'us' units.",
      [](const Chosen& c, const Arguments& given) {
        return sentence(c.reason, given.want<UnitSystem>("units", UnitSystem::metric));
      });
  def_property(chosen, "wishes", "What each wish comes to, a tuple of Bands.", [](const Chosen& c) {
    py::list values;
    for (const WishTold& told : c.reason.wishes) values.append(give_value(told.wish.measured.what, told.value));
    return py::object(py::tuple(values));
  });
  def_property(chosen, "limits", "What each limit's measure comes to, a tuple of Bands.", [](const Chosen& c) {
    py::list values;
    for (const LimitTold& told : c.limits) values.append(give_value(told.limit.measured.what, told.value));
    return py::object(py::tuple(values));
  });
  def_state(chosen, chosen_of);
  def_special(chosen, "__repr__", [](const Chosen& c) { return "<Chosen: " + sentence(c.reason) + ">"; });

  Class<Relaxation> relaxation(module, "Relaxation",
                               "The least that would have to give way for a set-up to keep all other limits.");
  def_property(relaxation, "setup", "The Setup that then keeps them.", [](const Relaxation& r) { return r.setup; });
  def_property(relaxation, "limits", "By the place of each limit, how far it would have to give way: a dict.",
               [](const Relaxation& r) {
                 py::dict limits;
                 for (const RelaxedLimit& one : r.limits)
                   limits[py::int_(one.place)] = give_value(one.limit.measured.what, one.by);
                 return py::object(limits);
               });
  def_property(relaxation, "reason", "The same in words.", [](const Relaxation& r) { return sentence(r); });
  def_state(relaxation, relaxation_of);
  def_special(relaxation, "__repr__", [](const Relaxation& r) { return "<Relaxation: " + sentence(r) + ">"; });

  Class<Choice> choice(module, "Choice", "What came of a choice; made by choose().");
  def_property(choice, "ranked", "The best set-ups first: a tuple of Chosen.",
               [](const Choice& c) { return py::object(give_list(c.ranked)); });
  def_property(choice, "front", "The whole trade-off, the best first: nothing beats one of these in every wish.",
               [](const Choice& c) { return py::object(give_list(c.front)); });
  def_property(choice, "relaxations", "Where nothing keeps all limits, what would have to give way, the least first.",
               [](const Choice& c) { return py::object(give_list(c.relaxations)); });
  def_property(choice, "examined", "Set-ups looked at.",
               [](const Choice& c) { return py::object(py::int_(c.examined)); });
  def_property(choice, "kept", "Set-ups that keep all limits.",
               [](const Choice& c) { return py::object(py::int_(c.kept)); });
  def_property(choice, "ruled_out", "By each limit, how many set-ups break it first: a tuple.", [](const Choice& c) {
    py::list counts;
    for (const std::uint64_t count : c.ruled_out) counts.append(py::int_(count));
    return py::object(py::tuple(counts));
  });
  def_property(choice, "untold", "Set-ups of which a wish cannot be told, as a price is not known.",
               [](const Choice& c) { return py::object(py::int_(c.untold)); });
  def_property(choice, "complete", "False where the progress callback stopped it.",
               [](const Choice& c) { return c.complete; });
  def_property(choice, "best_at_low", "The best Setup at the low end of every band, where it is another; else None.",
               [](const Choice& c) { return c.best_at_low; });
  def_property(choice, "best_at_high", "The same at the high end.", [](const Choice& c) { return c.best_at_high; });
  def_state(choice, choice_of);
  def_special(choice, "__repr__", [](const Choice& c) {
    return "<Choice: " + std::to_string(c.examined) + " examined, " + std::to_string(c.kept) + " kept, " +
           std::to_string(c.front.size()) + " on the front>";
  });

  def(module, "_choose(machine, space, goals, *, shortlist=3, threads=1, progress=None)", "What choose() calls.",
      [](const Arguments& given) {
        const Machine machine = given.want<Machine>("machine");
        const Space space = given.want<Space>("space");
        const Goals goals = given.want<Goals>("goals");
        ChooseOptions options{given.want<int>("shortlist", 3), given.want<int>("threads", 1), {}};
        const py::object progress = want_callback(given, "progress");
        std::optional<py::error_already_set> raised;  // by the callback, which must not end a thread of the library
        if (!progress.is_none())
          options.progress = [&](std::uint64_t done, std::uint64_t all) {
            const py::gil_scoped_acquire held;
            try {
              return !progress(done, all).is(py::bool_(false));
            } catch (py::error_already_set& error) {
              raised.emplace(error);
              return false;
            }
          };
        std::optional<Result<Choice>> choice;
        {
          const py::gil_scoped_release released;
          choice = quick::choose(machine, space, goals, options);
        }
        if (raised) throw *raised;
        return std::move(*choice).value();
      });
  def(module, "survey(machine, space, goals, visit=None)",
      "Every set-up of the space whose chain closes, with all its numbers: calls visit(setup, wishes, limits, broken), "
      "with Bands or None for what cannot be told, and the places of the limits that it breaks, until that returns "
      "False; the number of set-ups. Without visit, a tuple of all of them.",
      [](const Arguments& given) -> py::object {
        const Goals goals = given.want<Goals>("goals");
        const py::object visit = want_callback(given, "visit");
        py::list all;
        const auto values = [](const auto& told, const auto& asked) {
          py::list list;
          for (std::size_t i = 0; i < told.size(); ++i)
            list.append(told[i] ? give_value(asked[i].measured.what, *told[i]) : py::none());
          return py::tuple(list);
        };
        const auto visited =
            quick::survey(given.want<Machine>("machine"), given.want<Space>("space"), goals, [&](const Surveyed& one) {
              py::list broken;
              for (const std::size_t place : one.broken) broken.append(py::int_(place));
              const py::tuple told = tuple_of(one.setup, values(one.wishes, goals.wishes),
                                              values(one.limits, goals.limits), py::tuple(broken));
              if (!visit.is_none()) return !visit(*told).is(py::bool_(false));
              all.append(told);
              return true;
            });
        if (!visited) raise(visited.error());
        if (visit.is_none()) return py::tuple(all);
        return py::int_(*visited);
      });
}

void register_sensitivity(py::module_& module) {
  def_struct<Flip>(module, "Flip", "Where a decision changes.", Field{"factor", &Flip::factor, "Of the input."},
                   Field{"best", &Flip::best,
                         "The Setup that then comes first; None: nothing keeps the limits, or nothing can be asked."});
  def_struct<Sensitivity>(
      module, "Sensitivity", "What one input does to a decision.",
      Field{"input", &Sensitivity::input,
            "'tyre size', 'torque', 'drag', 'mass', 'front price', 'rear price', 'chain price' or 'tyre price'."},
      Field{"below", &Sensitivity::below, "The nearest Flip with less of it, or None."},
      Field{"above", &Sensitivity::above, "The nearest Flip with more of it, or None."});
  def(module, "sensitivity(machine, space, goals, *, span=1.25, steps=10)",
      "What a decision hangs on: for each input that the question has, where another set-up would come first, looked "
      "for from 1/span to span (above 1, to 4) in so many steps each way: a tuple of Sensitivity.",
      [](const Arguments& given) {
        const SensitivityOptions options{given.want<double>("span", 1.25), given.want<int>("steps", 10)};
        const Machine machine = given.want<Machine>("machine");
        const Space space = given.want<Space>("space");
        const Goals goals = given.want<Goals>("goals");
        std::optional<Result<std::vector<Sensitivity>>> all;
        {
          const py::gil_scoped_release released;
          all = quick::sensitivity(machine, space, goals, options);
        }
        return py::object(give_list(std::move(*all).value()));
      });
}

}  // namespace

void register_choose(py::module_& module) {
  register_offers(module);
  register_space(module);
  register_goals(module);
  register_choice(module);
  register_sensitivity(module);
}

}  // namespace layshaft::python
