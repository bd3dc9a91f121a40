// SPDX-License-Identifier: MIT
#pragma once

#include <pybind11/pybind11.h>

#include <cstdint>
#include <cstring>
#include <string_view>
#include <vector>

/// @file
/// Texts out of an Arrow column, by Arrow's C stream interface, so that no Arrow library is needed and nothing is
/// copied. The structures are those of that interface (the Apache Arrow specification, "The Arrow C data interface").
extern "C" {
struct ArrowSchema {
  const char* format;
  const char* name;
  const char* metadata;
  std::int64_t flags;
  std::int64_t n_children;
  ArrowSchema** children;
  ArrowSchema* dictionary;
  void (*release)(ArrowSchema*);
  void* private_data;
};
struct ArrowArray {
  std::int64_t length;
  std::int64_t null_count;
  std::int64_t offset;
  std::int64_t n_buffers;
  std::int64_t n_children;
  const void** buffers;
  ArrowArray** children;
  ArrowArray* dictionary;
  void (*release)(ArrowArray*);
  void* private_data;
};
struct ArrowArrayStream {
  int (*get_schema)(ArrowArrayStream*, ArrowSchema*);
  int (*get_next)(ArrowArrayStream*, ArrowArray*);
  const char* (*get_last_error)(ArrowArrayStream*);
  void (*release)(ArrowArrayStream*);
  void* private_data;
};
}

namespace layshaft::python {

/// A text, or none where `data()` is null.
using Text = std::string_view;

/// Holds what an Arrow structure points to.
template <class T>
struct ArrowHeld : T {
  ArrowHeld() : T{} {}
  ArrowHeld(ArrowHeld&& other) noexcept : T(other) { other.release = nullptr; }
  ArrowHeld& operator=(ArrowHeld&&) = delete;
  ~ArrowHeld() {
    if (this->release) this->release(this);
  }
};

/// The texts of a column that has `__arrow_c_stream__`.
class ArrowTexts {
 public:
  /// False where it is no column of texts, or its own library refuses to hand it over.
  bool read(pybind11::handle column) {
    namespace py = pybind11;
    py::capsule capsule;
    try {
      capsule = column.attr("__arrow_c_stream__")();
    } catch (py::error_already_set& error) {
      if (!error.matches(PyExc_Exception)) throw;
      return false;
    }
    auto* stream = static_cast<ArrowArrayStream*>(PyCapsule_GetPointer(capsule.ptr(), "arrow_array_stream"));
    if (!stream) throw py::error_already_set();
    ArrowHeld<ArrowSchema> schema;
    if (stream->get_schema(stream, &schema) != 0 || schema.dictionary) return false;
    const std::string_view format = schema.format;
    if (format != "u" && format != "U" && format != "vu") return false;
    for (;;) {
      ArrowHeld<ArrowArray> chunk;
      if (stream->get_next(stream, &chunk) != 0) return false;
      if (!chunk.release) return true;  // the end
      add(chunk, format);
      chunks_.push_back(std::move(chunk));
    }
  }
  [[nodiscard]] const std::vector<Text>& texts() const noexcept { return texts_; }

 private:
  void add(const ArrowArray& chunk, std::string_view format) {
    const auto* valid = static_cast<const std::uint8_t*>(chunk.buffers[0]);
    for (std::int64_t i = chunk.offset; i < chunk.offset + chunk.length; ++i) {
      const bool none = valid && !(valid[i / 8] >> (i % 8) & 1);
      texts_.push_back(none            ? Text()
                       : format == "u" ? part<std::int32_t>(chunk, i)
                       : format == "U" ? part<std::int64_t>(chunk, i)
                                       : view(chunk, i));
    }
  }
  /// The ends of all texts in one buffer, the texts themselves in another.
  template <class Offset>
  static Text part(const ArrowArray& chunk, std::int64_t i) {
    const auto* ends = static_cast<const Offset*>(chunk.buffers[1]);
    return text(static_cast<const char*>(chunk.buffers[2]) + ends[i], ends[i + 1] - ends[i]);
  }
  /// Sixteen bytes a text: its length, then itself where it is short, else its start, its buffer and its place there.
  static Text view(const ArrowArray& chunk, std::int64_t i) {
    const char* entry = static_cast<const char*>(chunk.buffers[1]) + 16 * i;
    std::int32_t numbers[4];
    std::memcpy(numbers, entry, sizeof numbers);
    if (numbers[0] <= 12) return text(entry + 4, numbers[0]);
    return text(static_cast<const char*>(chunk.buffers[2 + numbers[2]]) + numbers[3], numbers[0]);
  }
  static Text text(const char* start, std::int64_t length) {
    return length == 0 ? Text("") : Text(start, static_cast<std::size_t>(length));
  }

  std::vector<ArrowHeld<ArrowArray>> chunks_;
  std::vector<Text> texts_;
};

}  // namespace layshaft::python
