// SPDX-License-Identifier: MIT
// Many designations at once: texts in, the rows of a structured array out.
#include "arrow_text.hpp"
#include "convert.hpp"
#include "function.hpp"

#include <layshaft/tyre/tyre.hpp>

#include <algorithm>  // clamp, max, min
#include <bit>        // bit_ceil
#include <cstdint>
#include <cstring>  // memcpy
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace layshaft::python {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// A tyre, with what several columns are made of.
struct Read {
  TyreSize size;
  Band<Length> diameter = size.overall_diameter();
  Band<Length> rolls = rolling_circumference(size);
};

double number(const std::optional<double>& marked) { return marked ? *marked : none; }

/// A column: of numbers, or of texts of so many characters at most.
struct Column {
  const char* name;
  double (*number)(const Read&);
  std::string_view (*text)(const Read&) = nullptr;
  std::size_t width = 0;
};
constexpr Column columns[] = {
    {"notation", nullptr, [](const Read& r) { return to_string(r.size.notation()); }, 9},
    {"construction", nullptr, [](const Read& r) { return to_string(r.size.construction()); }, 11},
    {"section_width_mm", [](const Read& r) { return in(r.size.section_width(), units::mm); }},
    {"aspect_ratio", [](const Read& r) { return number(r.size.aspect_ratio()); }},
    {"rim_code", [](const Read& r) { return number(r.size.rim_code()); }},
    {"rim_diameter_mm", [](const Read& r) { return in(r.size.rim_diameter(), units::mm); }},
    {"overall_diameter_low_mm", [](const Read& r) { return in(r.diameter.low, units::mm); }},
    {"overall_diameter_mm", [](const Read& r) { return in(r.diameter.nominal, units::mm); }},
    {"overall_diameter_high_mm", [](const Read& r) { return in(r.diameter.high, units::mm); }},
    {"circumference_low_mm", [](const Read& r) { return in(r.rolls.low, units::mm); }},
    {"circumference_mm", [](const Read& r) { return in(r.rolls.nominal, units::mm); }},
    {"circumference_high_mm", [](const Read& r) { return in(r.rolls.high, units::mm); }},
    {"load_index", [](const Read& r) { return number(r.size.load_index()); }},
    {"load_capacity_kg",
     [](const Read& r) {
       const auto index = r.size.load_index();
       return index ? in(load_capacity(*index), units::kg) : none;
     }},
    {"speed_symbol", nullptr,
     [](const Read& r) {
       const auto symbol = r.size.speed_symbol();
       return symbol ? symbol->name : std::string_view();
     },
     2},
    {"rated_speed_kmh",
     [](const Read& r) {
       const auto symbol = r.size.speed_symbol();
       return symbol ? in(symbol->speed, units::kmh) : none;
     }},
};

/// What all rows came to, before there is an array to put it in.
struct Rows {
  std::vector<std::size_t> same_as;  ///< of each row: the first that has the same text, as far as is remembered
  std::vector<std::optional<TyreSize>> sizes;  ///< of the rows that are the first of their text, and so on
  std::string designations;                    ///< one after the other
  std::vector<std::size_t> ends;               ///< of each in `designations`
  std::vector<std::size_t> bad;
  std::size_t widest = 1;
};

/// Which row a text stood in: a column has far more rows than designations. Where two texts have the same place, the
/// one that came last is remembered.
class Remembered {
 public:
  explicit Remembered(std::size_t rows)
      : slots_(std::bit_ceil(std::clamp<std::size_t>(rows, 1, most)), std::numeric_limits<std::size_t>::max()) {}

  /// The row of the same text, or this one, which is remembered from now on.
  std::size_t row_of(const std::vector<Text>& texts, std::size_t row) {
    const Text text = texts[row];
    std::size_t& slot = slots_[place(text)];
    if (slot < row && texts[slot] == text) return slot;
    return slot = row;
  }

 private:
  static constexpr std::size_t most = std::size_t{1} << 20;
  [[nodiscard]] std::size_t place(Text text) const {
    std::uint64_t sum = text.size();
    for (std::size_t i = 0; i < text.size(); i += 8) {
      std::uint64_t part = 0;
      std::memcpy(&part, text.data() + i, std::min<std::size_t>(8, text.size() - i));
      sum = (sum ^ part) * 0x9E3779B97F4A7C15u;
      sum ^= sum >> 32;
    }
    return sum % slots_.size();
  }
  std::vector<std::size_t> slots_;
};

Rows read_rows(const std::vector<Text>& texts, TyreUse use) {
  Rows rows;
  Remembered remembered(texts.size());
  rows.same_as.reserve(texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const std::size_t first = texts[i].data() ? remembered.row_of(texts, i) : i;
    rows.same_as.push_back(first);
    if (first != i) continue;
    std::optional<TyreSize>& size = rows.sizes.emplace_back();
    const std::size_t begin = rows.designations.size();
    if (texts[i].data()) {
      if (const auto made = TyreSize::make(texts[i], use)) {
        size = *made;
        rows.designations += size->designation();
      }
    }
    rows.ends.push_back(rows.designations.size());
    rows.widest = std::max(rows.widest, rows.designations.size() - begin);
  }
  std::vector<bool> is_bad(texts.size());
  std::size_t distinct = 0;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const std::size_t first = rows.same_as[i];
    is_bad[i] = first == i ? !rows.sizes[distinct++] : is_bad[first];
    if (is_bad[i]) rows.bad.push_back(i);
  }
  return rows;
}

void put(char* place, std::string_view ascii) {
  auto* letters = reinterpret_cast<Py_UCS4*>(place);
  for (const char c : ascii) *letters++ = static_cast<unsigned char>(c);
}

/// Fills zeroed rows; a bad row has numbers that are NaN and texts that are empty.
void fill(char* array, std::size_t row_bytes, const std::vector<std::size_t>& offsets, const Rows& rows) {
  std::size_t begin = 0, distinct = 0;
  for (std::size_t i = 0; i < rows.same_as.size(); ++i) {
    char* const row = array + i * row_bytes;
    if (rows.same_as[i] != i) {
      std::memcpy(row, array + rows.same_as[i] * row_bytes, row_bytes);
      continue;
    }
    const auto& size = rows.sizes[distinct];
    const std::size_t end = rows.ends[distinct++];
    put(row + offsets[0], std::string_view(rows.designations).substr(begin, end - begin));
    begin = end;
    const auto read = size ? std::optional<Read>(Read{*size}) : std::nullopt;
    for (std::size_t c = 0; c < std::size(columns); ++c) {
      char* const place = row + offsets[c + 1];
      if (columns[c].number) {
        const double value = read ? columns[c].number(*read) : none;
        std::memcpy(place, &value, sizeof value);
      } else if (read) {
        put(place, columns[c].text(*read));
      }
    }
  }
}

/// numpy.dtype of the rows, with every field where the processor likes it.
py::object row_type(std::size_t designation, std::size_t reason) {
  const auto letters = [](std::size_t width) { return "U" + std::to_string(width); };
  py::list fields;
  fields.append(py::make_tuple("designation", letters(designation)));
  for (const Column& column : columns)
    fields.append(py::make_tuple(column.name, column.number ? "f8" : letters(column.width)));
  fields.append(py::make_tuple("reason", letters(reason)));
  return py::module_::import("numpy").attr("dtype")(fields, py::arg("align") = true);
}

/// The bytes of an array, which is in a row.
class WritableBytes {
 public:
  explicit WritableBytes(const py::object& array) {
    if (PyObject_GetBuffer(array.ptr(), &view_, PyBUF_WRITABLE) != 0) throw py::error_already_set();
  }
  WritableBytes(const WritableBytes&) = delete;
  WritableBytes& operator=(const WritableBytes&) = delete;
  ~WritableBytes() { PyBuffer_Release(&view_); }
  [[nodiscard]] char* start() const { return static_cast<char*>(view_.buf); }

 private:
  Py_buffer view_;
};

/// Texts of a Python sequence, which is held as a tuple so that nobody can let go of one meanwhile.
std::vector<Text> texts_of(const py::tuple& held) {
  std::vector<Text> texts;
  texts.reserve(held.size());
  for (const py::handle one : held) {
    Py_ssize_t size = 0;
    const char* utf8 = PyUnicode_Check(one.ptr()) ? PyUnicode_AsUTF8AndSize(one.ptr(), &size) : nullptr;
    if (!utf8) PyErr_Clear();  // half of a surrogate pair: no text
    texts.emplace_back(utf8, static_cast<std::size_t>(size));
  }
  return texts;
}

py::tuple parse_tyres(const py::object& given, int use, const py::function& reason_of) {
  ArrowTexts column;
  py::tuple held;
  std::vector<Text> from_sequence;
  const bool arrow = py::hasattr(given, "__arrow_c_stream__") && column.read(given);
  if (!arrow) {
    held = py::tuple(given);
    from_sequence = texts_of(held);
  }
  const std::vector<Text>& texts = arrow ? column.texts() : from_sequence;

  Rows rows;
  {
    const py::gil_scoped_release others_may_run;
    rows = read_rows(texts, tyre_uses[use]);
  }

  std::vector<py::str> reasons;
  std::size_t longest = 1;
  for (const std::size_t i : rows.bad) {
    const py::object text = !arrow            ? py::object(held[i])
                            : texts[i].data() ? py::object(py::str(texts[i].data(), texts[i].size()))
                                              : py::object(py::none());
    reasons.emplace_back(reason_of(i, text));
    longest = std::max(longest, static_cast<std::size_t>(PyUnicode_GetLength(reasons.back().ptr())));
  }

  const py::object type = row_type(rows.widest, longest);
  const py::object array = py::module_::import("numpy").attr("zeros")(texts.size(), type);
  std::vector<std::size_t> offsets;
  for (const py::handle name : type.attr("names"))
    offsets.push_back(py::object(type.attr("fields")[name])[py::int_(1)].cast<std::size_t>());
  const auto row_bytes = type.attr("itemsize").cast<std::size_t>();
  const WritableBytes bytes(array);
  {
    const py::gil_scoped_release others_may_run;
    fill(bytes.start(), row_bytes, offsets, rows);
  }
  for (std::size_t i = 0; i < reasons.size(); ++i) {
    auto* const place = reinterpret_cast<Py_UCS4*>(bytes.start() + rows.bad[i] * row_bytes + offsets.back());
    const Py_ssize_t length = PyUnicode_GetLength(reasons[i].ptr());
    if (length > 0 && !PyUnicode_AsUCS4(reasons[i].ptr(), place, length, 0)) throw py::error_already_set();
  }
  // As bytes of which NumPy makes an array.
  const auto* const same_as = reinterpret_cast<const char*>(rows.same_as.data());
  return py::make_tuple(array, py::bytes(same_as, rows.same_as.size() * sizeof(std::size_t)));
}

}  // namespace

void register_parse_tyres(py::module_& module) {
  def(module, "_parse_tyres(texts, use, reason_of)",
      "What arrays.parse_tyres() calls: designations to rows, and of each row the first that has the same text, as the "
      "bytes of an array of uintp; reason_of(row, text) says why a text is none, or raises.",
      [](const Arguments& given) {
        return py::object(
            parse_tyres(given.object("texts"), given.want<int>("use"), given.object("reason_of").cast<py::function>()));
      });
}

}  // namespace layshaft::python
