// SPDX-License-Identifier: MIT
#include "pickle.hpp"

#include <layshaft/core/error.hpp>
#include <layshaft/version.hpp>

#include <charconv>
#include <optional>
#include <utility>

namespace layshaft::python {
namespace {

/// Major and minor of a version: a patch changes no pickle.
std::optional<std::pair<int, int>> series_of(std::string_view version) {
  const char* const end = version.data() + version.size();
  std::pair<int, int> series;
  const auto [dot, bad_major] = std::from_chars(version.data(), end, series.first);
  if (bad_major != std::errc() || dot == end || *dot != '.') return std::nullopt;
  const auto [rest, bad_minor] = std::from_chars(dot + 1, end, series.second);
  if (bad_minor != std::errc() || (rest != end && *rest != '.')) return std::nullopt;
  return series;
}

void refuse_newer(py::handle version) {
  const std::string word = want_text(version, "version of the pickle", "the version that wrote it, such as '0.1.0'");
  const auto series = series_of(word);
  if (series && *series <= *series_of(LAYSHAFT_VERSION)) return;
  raise(Error::range("version of the pickle", in_quotes(word),
                     "that of a layshaft no newer than the one that reads it, " LAYSHAFT_VERSION));
}

/// The same object each time: a pickle of many values then holds the text once.
py::handle own_version() {
  static PyObject* const version = PyUnicode_InternFromString(LAYSHAFT_VERSION);
  return version;
}

}  // namespace

void register_remake(py::module_& module) {
  def(module, "_remake(version, function, positional, named)", "For pickles.", [](const Arguments& given) {
    refuse_newer(given.object("version"));
    return given.object("function")(*py::tuple(given.object("positional")), **py::dict(given.object("named")));
  });
}

py::object pickled(py::handle function, const py::tuple& positional, const py::dict& named) {
  return tuple_of(py::module_::import("layshaft._core").attr("_remake"),
                  tuple_of(own_version(), function, positional, named));
}

py::object detail::pickled_state(const py::tuple& state) { return tuple_of(own_version(), state); }

py::tuple detail::state_of_pickle(py::handle pickled) {
  constexpr const char* expected = "a tuple of the version that wrote it and what it holds";
  if (!PyTuple_Check(pickled.ptr()) || PyTuple_GET_SIZE(pickled.ptr()) != 2) wrong_type("state", expected, pickled);
  const auto both = py::reinterpret_borrow<py::tuple>(pickled);
  refuse_newer(both[0]);
  const py::object state = both[1];
  if (!PyTuple_Check(state.ptr())) wrong_type("state", expected, pickled);
  return state;
}

}  // namespace layshaft::python
