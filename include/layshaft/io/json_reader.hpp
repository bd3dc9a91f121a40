// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/core/band.hpp>
#include <layshaft/core/counts.hpp>
#include <layshaft/core/quantity_text.hpp>
#include <layshaft/core/utf8.hpp>

#include <boost/json.hpp>

#include <algorithm>  // find
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// @file
/// Reads values out of a JSON text, strictly: each error names the path to the place, `$.gearbox.gears[2]`.
namespace layshaft::detail {

/// The largest JSON text that is read; a machine takes about two thousand bytes.
inline constexpr std::size_t longest_json = 1 << 20;

/// Boost's quick way with numbers can miss the last bit; versions that know no other are taken as they are.
template <class Options>
[[nodiscard]] Options exact_numbers() {
  Options options;
  if constexpr (requires { options.numbers; }) options.numbers = decltype(options.numbers)::precise;
  return options;
}

/// What is wrong at a byte. What stands around the place says more than the start of the file.
[[nodiscard]] inline Error json_error(std::string_view text, std::size_t place, std::string_view problem,
                                      std::string_view expected) {
  constexpr std::size_t around = 40;
  std::size_t from = place > around ? place - around : 0;
  while (from < place && (static_cast<unsigned char>(text[from]) & 0xc0) == 0x80) ++from;  // no character cut in two
  return Error::parse(utf8_start(text.substr(from), 2 * around), place - from, problem, expected)
      .in("byte " + std::to_string(place));
}

/// Refuses an object that has a key twice: whoever wrote it meant one of the two, and no reader can tell which.
/// @param text well-formed JSON
inline void refuse_repeated_keys(std::string_view text) {
  std::vector<std::set<boost::json::string>> open;  // the keys of each object and list that is open
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '{' || text[i] == '[') open.emplace_back();
    if (text[i] == '}' || text[i] == ']') open.pop_back();
    if (text[i] != '"') continue;
    const std::size_t begin = i;
    for (++i; text[i] != '"'; ++i)
      if (text[i] == '\\') ++i;
    const std::size_t next = text.find_first_not_of(" \t\r\n", i + 1);
    if (next == text.npos || text[next] != ':') continue;
    const auto key = boost::json::parse(boost::json::string_view(text.data() + begin, i + 1 - begin)).as_string();
    if (open.back().insert(key).second) continue;
    std::string problem = "the key \"";
    append_printable(problem, {key.data(), key.size()});
    raise(json_error(text, begin, problem.append("\" stands here a second time"), "each key of an object once"));
  }
}

[[nodiscard]] inline boost::json::value parse_json(std::string_view text) {
  if (text.size() > longest_json)
    raise(Error::range("size of the JSON text", std::to_string(text.size()) + " bytes",
                       "at most " + std::to_string(longest_json)));
  boost::json::stream_parser parser(boost::json::storage_ptr(), exact_numbers<boost::json::parse_options>());
  boost::system::error_code error;
  std::size_t read = parser.write_some(boost::json::string_view(text.data(), text.size()), error);
  if (!error && read < text.size()) error = boost::json::error::extra_data;
  if (!error) parser.finish(error);
  if (error) raise(json_error(text, read, error.message(), "well-formed JSON"));
  refuse_repeated_keys(text);
  return parser.release();
}

/// One value with the path that leads to it.
class JsonValue {
 public:
  JsonValue(const boost::json::value& value, std::string path) : value_(&value), path_(std::move(path)) {}

  [[nodiscard]] const std::string& path() const noexcept { return path_; }
  [[nodiscard]] bool is_object() const noexcept { return value_->is_object(); }
  [[nodiscard]] bool is_string() const noexcept { return value_->is_string(); }

  [[noreturn]] void expected(std::string_view what) const {
    const std::string got = boost::json::serialize(*value_);
    constexpr std::size_t longest = 60;
    std::string sentence = std::string("expected ").append(what).append(", got ");
    append_printable(sentence, utf8_start(got, longest));
    if (got.size() > longest) sentence.append("...");
    raise(Error::value(std::move(sentence)).in(path_));
  }
  /// The value of a result, or its error told at this path.
  template <class T>
  [[nodiscard]] T checked(Result<T> result) const {
    if (!result) raise(result.error().in(path_));
    return std::move(result).value();
  }

  [[nodiscard]] std::string_view text(std::string_view what) const {
    const auto* text = value_->if_string();
    if (!text) expected(what);
    return {text->data(), text->size()};
  }
  [[nodiscard]] double number(std::string_view what) const {
    if (!value_->is_number()) expected(what);
    return value_->to_number<double>();  // a double can be had of every number
  }
  [[nodiscard]] int whole(std::string_view what) const {
    boost::system::error_code error;
    const int number = value_->is_number() ? value_->to_number<int>(error) : 0;
    if (!value_->is_number() || error) expected(what);
    return number;
  }
  [[nodiscard]] bool truth() const {
    const auto* truth = value_->if_bool();
    if (!truth) expected("true or false");
    return *truth;
  }
  template <class CountKind>
  [[nodiscard]] Count<CountKind> count() const {
    return checked(Count<CountKind>::make(whole(std::string("a whole ").append(CountKind::name))));
  }
  /// A quantity, as text with its unit.
  template <class Quantity>
  [[nodiscard]] Quantity quantity() const {
    using Names = QuantityNames<Quantity>;
    const auto what = std::string("a text with a unit, such as \"").append(Names::example).append("\"");
    return checked(try_parse_quantity<Quantity>(text(what)));
  }
  /// The elements of a list.
  [[nodiscard]] std::vector<JsonValue> elements(std::string_view what) const {
    const auto* array = value_->if_array();
    if (!array) expected(what);
    std::vector<JsonValue> list;
    for (std::size_t i = 0; i < array->size(); ++i)
      list.emplace_back((*array)[i], path_ + "[" + std::to_string(i) + "]");
    return list;
  }

 private:
  friend class JsonObject;
  const boost::json::value* value_;
  std::string path_;
};

/// An object whose keys are all accounted for: `done` refuses any that nobody asked for.
class JsonObject {
 public:
  JsonObject(const JsonValue& value, std::string_view what) : value_(value) {
    if (!value.is_object()) value.expected(what);
  }

  /// The value of a key, or nothing.
  [[nodiscard]] std::optional<JsonValue> find(std::string_view key) {
    if (std::find(known_.begin(), known_.end(), key) == known_.end()) known_.push_back(key);
    const auto* member = object().if_contains(boost::json::string_view(key.data(), key.size()));
    if (!member || member->is_null()) return std::nullopt;
    return JsonValue(*member, value_.path() + "." + std::string(key));
  }
  /// The value of a key that must be there.
  [[nodiscard]] JsonValue at(std::string_view key) {
    if (auto member = find(key)) return *std::move(member);
    raise(Error::value(std::string("missing key \"").append(key).append("\"")).in(value_.path()));
  }
  /// Refuses keys that nobody asked for.
  void done() const {
    for (const auto& member : object()) {
      const std::string_view key(member.key().data(), member.key().size());
      bool asked = false;
      for (const std::string_view known : known_) asked = asked || known == key;
      if (asked) continue;
      std::string list;
      for (const std::string_view known : known_) list.append(list.empty() ? "" : ", ").append(known);
      std::string sentence = "unknown key \"";
      append_printable(sentence, key);
      raise(Error::value(sentence.append("\"; expected one of ").append(list)).in(value_.path()));
    }
  }

 private:
  [[nodiscard]] const boost::json::object& object() const { return value_.value_->get_object(); }

  JsonValue value_;
  std::vector<std::string_view> known_;
};

/// A band: one value that is exact, or an object with low, nominal and high; `read` reads one value.
template <class Read>
[[nodiscard]] auto read_band(const JsonValue& value, Read read) {
  using Value = decltype(read(value));
  if (!value.is_object()) return Band<Value>::exactly(read(value));
  JsonObject object(value, "low, nominal and high");
  const Band<Value> band{read(object.at("low")), read(object.at("nominal")), read(object.at("high"))};
  object.done();
  return band;
}

/// One of the values of an enumeration, by the word that `to_string` has for it.
template <class Enum, std::size_t Size>
[[nodiscard]] Enum read_word(const JsonValue& value, const Enum (&values)[Size]) {
  std::string list;
  for (const Enum one : values) list.append(list.empty() ? "\"" : ", \"").append(to_string(one)).append("\"");
  const std::string_view word = value.text(list);
  for (const Enum one : values)
    if (to_string(one) == word) return one;
  value.expected("one of " + list);
}

}  // namespace layshaft::detail
