// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/choose/goals.hpp>
#include <layshaft/choose/space.hpp>
#include <layshaft/io/json.hpp>

#include <string>
#include <string_view>

/// @file
/// A rider's question as JSON: what there is to choose from, and what is wanted. Opt-in, as io/json.hpp is.
///
///     {"layshaft": 1,
///      "space": {"fronts": [13, {"teeth": 14, "price": 21}], "rears": [48, 49, 50], "tyres": ["120/90-18"]},
///      "goals": {"limits": [{"measure": "engine speed", "speed": "90 km/h", "most": "6800 rpm"}],
///                "wishes": [{"measure": "thrust change", "target": 0.1, "weight": 2}, {"measure": "cost", "want":
///                "less"}]}}
namespace layshaft {

/// What a rider asks.
struct Question {
  Space space;
  Goals goals;

  friend bool operator==(const Question&, const Question&) = default;
};

namespace detail {

[[nodiscard]] inline Band<double> read_money(const JsonValue& value) {
  return read_band(value, [](const JsonValue& one) { return one.number("an amount of money"); });
}
[[nodiscard]] inline Offer read_offer(JsonObject& object) {
  Offer offer;
  if (const auto price = object.find("price")) offer.price = read_money(*price);
  if (const auto labour = object.find("labour")) offer.labour = read_money(*labour);
  return offer;
}
[[nodiscard]] inline SprocketOffer read_sprocket(const JsonValue& value) {
  if (!value.is_object()) return {value.count<TeethKind>()};
  JsonObject object(value, "a sprocket");
  SprocketOffer sprocket{object.at("teeth").count<TeethKind>()};
  if (const auto material = object.find("material")) sprocket.material = read_word(*material, sprocket_materials);
  sprocket.offer = read_offer(object);
  object.done();
  return sprocket;
}
[[nodiscard]] inline TyreOffer read_tyre_offer(const JsonValue& value) {
  if (value.is_string()) return {value.checked(TyreSize::make(value.text("a tyre's marking")))};
  JsonObject object(value, "a tyre's marking, or a tyre");
  TyreOffer tyre{read_tyre(object, "tyre", "tyre_use")};
  if (const auto measured = object.find("circumference"))
    tyre.circumference = read_band(*measured, [](const JsonValue& one) { return one.quantity<Length>(); });
  tyre.offer = read_offer(object);
  object.done();
  return tyre;
}
[[nodiscard]] inline ChainOffer read_chain_offer(const JsonValue& value) {
  JsonObject object(value, "a chain");
  ChainOffer chain;
  if (const auto series = object.find("chain"))
    chain.series = series->checked(ChainSeries::make(series->text("a chain series, such as \"520\"")));
  if (const auto made = object.find("chain_made")) chain.made = read_chain_made(*made);
  if (const auto longest = object.find("longest")) chain.longest = longest->count<LinksKind>();
  chain.offer = read_offer(object);
  object.done();
  return chain;
}
/// Each element of a list that may be missing.
template <class Item, class Read>
[[nodiscard]] std::vector<Item> read_list(JsonObject& object, std::string_view key, std::string_view what, Read read) {
  std::vector<Item> list;
  if (const auto values = object.find(key))
    for (const JsonValue& one : values->elements(what)) list.push_back(read(one));
  return list;
}
[[nodiscard]] inline Space read_space(const JsonValue& value) {
  JsonObject object(value, "what there is to choose from");
  Space space{.fronts = read_list<SprocketOffer>(object, "fronts", "a list of front sprockets", read_sprocket),
              .rears = read_list<SprocketOffer>(object, "rears", "a list of rear sprockets", read_sprocket),
              .tyres = read_list<TyreOffer>(object, "tyres", "a list of tyres", read_tyre_offer),
              .chains = read_list<ChainOffer>(object, "chains", "a list of chains", read_chain_offer),
              .links = read_list<Links>(object, "links", "a list of links",
                                        [](const JsonValue& one) { return one.count<LinksKind>(); })};
  if (const auto present = object.find("present")) {
    JsonObject setup(*present, "a set-up");
    space.present = read_setup(*present, setup);
  }
  object.done();
  if (auto error = outside(space)) raise(error->in(value.path()));
  return space;
}

/// An amount of a measure: a number, or a quantity as text with its unit.
[[nodiscard]] inline Amount read_amount(const JsonValue& value, Measure measure) {
  switch (measure_row(measure).dimension) {
    case Dimension::length: return value.quantity<Length>();
    case Dimension::mass: return value.quantity<Mass>();
    case Dimension::speed: return value.quantity<Speed>();
    case Dimension::angular_speed: return value.quantity<AngularSpeed>();
    case Dimension::angle: return value.quantity<Angle>();
    case Dimension::fraction: return Amount::fraction(value.number("a share of one, such as 0.02"));
    default: return Amount::number(value.number("a number"));
  }
}
[[nodiscard]] inline Measured read_measured(JsonObject& object) {
  const JsonValue word = object.at("measure");
  const std::string_view name = word.text("the name of a measure");
  const auto row = std::find_if(std::begin(measure_rows), std::end(measure_rows),
                                [&](const MeasureRow& one) { return one.name == name; });
  if (row == std::end(measure_rows)) {
    std::string list;
    for (const MeasureRow& one : measure_rows) list.append(list.empty() ? "one of \"" : ", \"").append(one.name) += '"';
    word.expected(list);
  }
  Measured measured{row->kind};
  if (const auto gear = object.find("gear")) measured.gear = gear->whole("a gear, counted from 1");
  if (const auto speed = object.find("speed")) measured.speed = speed->quantity<Speed>();
  return measured;
}
[[nodiscard]] inline Limit read_limit(const JsonValue& value) {
  JsonObject object(value, "a limit");
  Limit limit{read_measured(object)};
  if (const auto least = object.find("least")) limit.least = read_amount(*least, limit.measured.what);
  if (const auto most = object.find("most")) limit.most = read_amount(*most, limit.measured.what);
  object.done();
  return limit;
}
[[nodiscard]] inline Wish read_wish(const JsonValue& value) {
  constexpr Want wants[] = {Want::less, Want::more};
  JsonObject object(value, "a wish");
  Wish wish{read_measured(object)};
  const auto want = object.find("want"), target = object.find("target");
  if (want.has_value() == target.has_value()) value.expected("\"want\": \"less\" or \"more\", or else a \"target\"");
  if (target) {
    wish.want = Want::target;
    wish.target = read_amount(*target, wish.measured.what);
  } else {
    wish.want = read_word(*want, wants);
  }
  if (const auto weight = object.find("weight")) wish.weight = weight->number("a weight such as 2");
  object.done();
  return wish;
}
[[nodiscard]] inline Goals read_goals(const JsonValue& value) {
  JsonObject object(value, "limits and wishes");
  Goals goals{.limits = read_list<Limit>(object, "limits", "a list of limits", read_limit),
              .wishes = read_list<Wish>(object, "wishes", "a list of wishes", read_wish)};
  if (const auto robust = object.find("robust")) goals.robust = robust->truth();
  object.done();
  return goals;
}

}  // namespace detail

/// Reads a question. Or the error, which names the path to the place.
[[nodiscard]] inline Result<Question> try_question_from_json(std::string_view text) {
  return detail::caught<Question>([&] {
    return detail::read_json(text, "a question", [](const detail::JsonValue&, detail::JsonObject& object) {
      Question question{detail::read_space(object.at("space")), detail::read_goals(object.at("goals"))};
      object.done();
      return question;
    });
  });
}
/// @throws Error, ParseError or RangeError that names the path to the place.
[[nodiscard]] inline Question question_from_json(std::string_view text) { return try_question_from_json(text).value(); }

}  // namespace layshaft
