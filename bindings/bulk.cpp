// SPDX-License-Identifier: MIT
// Whole set-ups by columns, as frames.py hands them over: buffers of doubles, without NumPy, which need not be there.
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/choose/appraise_rows.hpp>

#include <cmath>
#include <map>
#include <span>

namespace layshaft::python {
namespace {

/// What a measure's column is called and counted in.
struct RowUnit {
  const char* suffix;
  double in_si;
};
RowUnit row_unit(Dimension dimension) {
  switch (dimension) {
    case Dimension::length: return {"mm", units::mm.value()};
    case Dimension::mass: return {"kg", units::kg.value()};
    case Dimension::speed: return {"kmh", units::kmh.value()};
    case Dimension::angular_speed: return {"rpm", units::rpm.value()};
    case Dimension::angle: return {"deg", units::deg.value()};
    default: return {"", 1.0};
  }
}

/// A column of numbers, or of places in a list of words; NaN: none.
struct InColumn {
  std::span<const double> numbers;
  std::vector<std::string> words;

  [[nodiscard]] std::optional<double> number(std::size_t row) const {
    if (numbers.empty() || std::isnan(numbers[row])) return std::nullopt;
    return numbers[row];
  }
  [[nodiscard]] const std::string* word(std::size_t row) const {
    const auto place = number(row);
    return place ? &words[static_cast<std::size_t>(*place)] : nullptr;
  }
};

/// The columns by their names, and the buffers that they stand in.
class InColumns {
 public:
  InColumns(const py::dict& given, std::size_t rows) {
    for (const auto& [name, column] : given) {
      InColumn in;
      py::object numbers = py::reinterpret_borrow<py::object>(column);
      if (py::isinstance<py::tuple>(column)) {
        numbers = column[py::int_(0)];
        for (const py::handle word : column[py::int_(1)]) in.words.push_back(word.cast<std::string>());
      }
      buffers_.push_back(py::buffer(numbers).request());
      in.numbers = {static_cast<const double*>(buffers_.back().ptr), rows};
      columns_.emplace(name.cast<std::string>(), std::move(in));
    }
  }
  /// One that was not given has no numbers.
  [[nodiscard]] const InColumn& at(const char* name) const {
    static const InColumn none;
    const auto found = columns_.find(name);
    return found == columns_.end() ? none : found->second;
  }
  /// Rows that agree in these, once each.
  [[nodiscard]] layshaft::detail::RowGroups groups(std::span<const char* const> names, std::size_t rows) const {
    std::vector<std::span<const double>> given;
    for (const char* name : names)
      if (const InColumn& column = at(name); !column.numbers.empty()) given.push_back(column.numbers);
    return {given, rows};
  }

 private:
  std::vector<py::buffer_info> buffers_;
  std::map<std::string, InColumn> columns_;
};

constexpr const char* drive_columns[] = {"front",          "rear",          "links",       "chain",      "chain_seal",
                                         "front_material", "rear_material", "front_price", "rear_price", "chain_price"};
constexpr const char* tyre_columns[] = {
    "tyre", "tyre_use", "circumference_low_mm", "circumference_mm", "circumference_high_mm", "tyre_price"};

template <class Count>
Result<Count> count_of(const char* name, double number) {
  if (number != std::floor(number) || std::fabs(number) > 1e9)
    return Error::range(name, layshaft::detail::in_words(number),
                        "a whole number, " + std::to_string(Count::least) + " to " + std::to_string(Count::greatest));
  const auto count = Count::make(static_cast<int>(number));
  if (!count) return count.error().in(name);
  return *count;
}
template <class Enum>
Result<std::optional<Enum>> word_of(const char* name, const std::string* word) {
  if (word == nullptr) return std::optional<Enum>();
  std::string words;
  for (const Enum value : detail::Words<Enum>::values) {
    if (to_string(value) == *word) return std::optional(value);
    words.append(words.empty() ? "one of '" : ", '").append(to_string(value)).append("'");
  }
  return Error::range(name, in_quotes(*word), words);
}

/// A row's sprocket.
Result<SprocketOffer> sprocket_of(const InColumns& in, std::size_t row, const std::string& name) {
  const auto teeth = in.at(name.c_str()).number(row);
  if (!teeth) return Error::value(name + " is missing");
  const auto count = count_of<Teeth>(name.c_str(), *teeth);
  if (!count) return count.error();
  const auto made_of =
      word_of<SprocketMaterial>((name + "_material").c_str(), in.at((name + "_material").c_str()).word(row));
  if (!made_of) return made_of.error();
  return SprocketOffer{*count, *made_of, {}};
}
/// What a part costs, where it is told.
std::optional<Error> set_price(Offer& offer, const InColumns& in, std::size_t row, const char* name) {
  if (const auto price = in.at(name).number(row)) offer.price = Band<double>::exactly(*price);
  if (auto error = layshaft::detail::outside(offer)) return error->in(name);
  return std::nullopt;
}
Result<RowDrive> drive_of_row(const InColumns& in, std::size_t row) {
  const auto front = sprocket_of(in, row, "front"), rear = sprocket_of(in, row, "rear");
  if (!front) return front.error();
  if (!rear) return rear.error();
  RowDrive drive{*front, *rear, {}, {}};
  if (const auto links = in.at("links").number(row)) {
    const auto count = count_of<Links>("links", *links);
    if (!count) return count.error();
    drive.links = *count;
  }
  if (const std::string* name = in.at("chain").word(row)) {
    const auto series = ChainSeries::make(*name);
    if (!series) return series.error().in("chain");
    drive.chain.series = *series;
  }
  const auto seal = word_of<ChainSeal>("chain_seal", in.at("chain_seal").word(row));
  if (!seal) return seal.error();
  if (*seal) drive.chain.made.seal = **seal;
  if (auto error = set_price(drive.front.offer, in, row, "front_price")) return *error;
  if (auto error = set_price(drive.rear.offer, in, row, "rear_price")) return *error;
  if (auto error = set_price(drive.chain.offer, in, row, "chain_price")) return *error;
  return drive;
}
Result<TyreOffer> tyre_of_row(const InColumns& in, std::size_t row) {
  TyreOffer tyre;
  const auto use = word_of<TyreUse>("tyre_use", in.at("tyre_use").word(row));
  if (!use) return use.error();
  if (const std::string* marking = in.at("tyre").word(row)) {
    const auto size = TyreSize::make(*marking, use->value_or(TyreUse::road));
    if (!size) return size.error().in("tyre");
    tyre.tyre = *size;
  }
  const auto likely = in.at("circumference_mm").number(row);
  const auto low = in.at("circumference_low_mm").number(row), high = in.at("circumference_high_mm").number(row);
  if (likely)
    tyre.circumference =
        Band<Length>{low.value_or(*likely) * units::mm, *likely * units::mm, high.value_or(*likely) * units::mm};
  else if (low || high)
    return Error::value("circumference_mm is missing, of which the low or the high end is stated");
  if (auto error = layshaft::detail::outside(tyre)) return *error;
  if (auto error = set_price(tyre.offer, in, row, "tyre_price")) return *error;
  return tyre;
}

/// The parts that rows name, and why some are none.
template <class Part>
struct RowParts {
  std::vector<Part> parts;
  std::vector<std::uint32_t> place;         // by row, among the parts
  std::vector<std::uint32_t> group;         // by row, among all that rows agree in
  std::vector<std::optional<Error>> wrong;  // by group
  std::vector<std::uint32_t> part_of;       // by group

  template <class Make>
  RowParts(layshaft::detail::RowGroups groups, Make make) : wrong(groups.first.size()), part_of(groups.first.size()) {
    bool all = true;
    for (std::size_t i = 0; i < groups.first.size(); ++i) {
      auto part = make(groups.first[i]);
      part_of[i] = part ? static_cast<std::uint32_t>(parts.size()) : SetupRows::none;
      all = all && part;
      if (part)
        parts.push_back(*part);
      else
        wrong[i] = part.error();
    }
    group = std::move(groups.place);
    if (all) return;
    place.reserve(group.size());
    for (const std::uint32_t of : group) place.push_back(part_of[of]);
  }
  /// Where every group is a part, they are the same.
  [[nodiscard]] std::span<const std::uint32_t> places() const { return place.size() == group.size() ? place : group; }
  /// Why a row's part is none, or cannot be appraised.
  [[nodiscard]] const Error* why(std::size_t row, const std::vector<std::optional<Error>>& appraised) const {
    const std::uint32_t of = group[row];
    if (wrong[of]) return &*wrong[of];
    return appraised[part_of[of]] ? &*appraised[part_of[of]] : nullptr;
  }
  [[nodiscard]] bool any_wrong(const std::vector<std::optional<Error>>& appraised) const {
    const auto is = [](const std::optional<Error>& error) { return error.has_value(); };
    return std::any_of(wrong.begin(), wrong.end(), is) || std::any_of(appraised.begin(), appraised.end(), is);
  }
};

/// Rows worked out, and why some cannot be.
struct RowsDone {
  RowParts<RowDrive> drives;
  RowParts<TyreOffer> tyres;
  Result<RowErrors> errors;
};
RowsDone work_out(const Machine& machine, const InColumns& in, std::size_t rows, std::span<const RowColumn> columns,
                  const RowOptions& options) {
  RowParts<RowDrive> drives(in.groups(drive_columns, rows), [&](std::size_t row) { return drive_of_row(in, row); });
  RowParts<TyreOffer> tyres(in.groups(tyre_columns, rows), [&](std::size_t row) { return tyre_of_row(in, row); });
  auto errors =
      try_appraise_rows(machine, {drives.parts, tyres.parts, drives.places(), tyres.places()}, columns, options);
  return {std::move(drives), std::move(tyres), std::move(errors)};
}
/// (row, why) of the rows that have no set-up, as many as are asked for.
py::list bad_rows(const RowsDone& done, std::size_t rows, bool first_alone) {
  py::list bad;
  if (!done.drives.any_wrong(done.errors->drives) && !done.tyres.any_wrong(done.errors->tyres)) return bad;
  for (std::size_t row = 0; row < rows; ++row) {
    const Error* why = done.drives.why(row, done.errors->drives);
    if (why == nullptr) why = done.tyres.why(row, done.errors->tyres);
    if (why == nullptr) continue;
    bad.append(tuple_of(row, std::string_view(why->what())));
    if (first_alone) break;
  }
  return bad;
}

/// (measure, gear, speed, low, nominal, high), the last three buffers or None.
RowColumn out_column(const py::tuple& given, std::vector<py::buffer_info>& buffers) {
  const auto what = want<Measure>(given[0], "columns");
  RowColumn column{{what, want<std::optional<int>>(given[1], "gear"), want<std::optional<Speed>>(given[2], "speed")},
                   row_unit(measure_row(what).dimension).in_si};
  const auto take = [&](std::size_t place) -> RowEnd {
    if (given[place].is_none()) return {};
    buffers.push_back(py::buffer(given[place]).request(true));
    return {static_cast<double*>(buffers.back().ptr), buffers.back().strides[0]};
  };
  column.low = take(3);
  column.nominal = take(4);
  column.high = take(5);
  return column;
}

}  // namespace

void register_bulk(py::module_& module) {
  def(module, "_row_measures()",
      "Of every measure its name, the unit of its column ('' for none), whether it has a low and a high end, and what "
      "else it needs ('', 'gear', 'gear and speed').",
      [](const Arguments&) {
        py::list all;
        for (const MeasureRow& row : measure_rows)
          all.append(tuple_of(row.name, std::string_view(row_unit(row.dimension).suffix), has_ends(row.kind),
                              std::string_view(row.needs == MeasureNeeds::nothing ? ""
                                               : row.needs == MeasureNeeds::gear  ? "gear"
                                                                                  : "gear and speed")));
        return py::object(py::tuple(all));
      });
  def(module, "_told_measures(machine)", "The measures that need nothing more than the machine states.",
      [](const Arguments& given) {
        const Machine& machine = given.want<Machine>("machine");
        py::list told;
        for (const MeasureRow& row : measure_rows) {
          Measured one{row.kind};
          if (row.needs == MeasureNeeds::gear_and_speed) one.speed = 100_kmh;
          if (layshaft::detail::Study::make(machine, std::span(&one, 1))) told.append(give(row.name));
        }
        return py::object(py::tuple(told));
      });
  def(module, "_appraise_rows(machine, rows, parts, columns, *, present=None, threads=1, first_bad_alone=False)",
      "What frames.appraise() calls: fills the columns, and tells (row, why) of rows that have no set-up.",
      [](const Arguments& given) {
        const Machine machine = given.want<Machine>("machine");
        const auto rows = static_cast<std::size_t>(given.want<int>("rows"));
        const RowOptions options{given.want<int>("threads", 1), given.want<std::optional<Setup>>("present")};
        const InColumns in(given.object("parts").cast<py::dict>(), rows);
        std::vector<py::buffer_info> buffers;
        std::vector<RowColumn> columns;
        for (const py::handle column : given.object("columns"))
          columns.push_back(out_column(column.cast<py::tuple>(), buffers));
        std::optional<RowsDone> done;
        {
          const py::gil_scoped_release released;
          done.emplace(work_out(machine, in, rows, columns, options));
        }
        if (!done->errors) raise(done->errors.error());
        return py::object(bad_rows(*done, rows, given.want<bool>("first_bad_alone", false)));
      });
}

}  // namespace layshaft::python
