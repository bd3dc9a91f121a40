// SPDX-License-Identifier: MIT
#pragma once

#include "value.hpp"

#include <layshaft/core/working.hpp>

#include <memory>
#include <string>
#include <utility>

/// @file
/// How a number came about, and how it was asked for.
namespace layshaft::python {

/// A working with the call that made it, which pickles make again.
struct PyWorking {
  std::shared_ptr<const Working> working;
  py::object asked;  ///< what was called
  py::tuple positional;
  py::dict named;

  PyWorking(Working made, py::object called, py::tuple with, py::dict by_name)
      : working(std::make_shared<const Working>(std::move(made))),
        asked(std::move(called)),
        positional(std::move(with)),
        named(std::move(by_name)) {}
};

/// The name of the number that is asked about.
[[nodiscard]] inline std::string want_what(const Arguments& given) {
  return want_text(given.object("what"), "what", "the name of a number, a str");
}

/// Binds `explain(what)` of a value that needs no more to be said.
template <class T>
void def_explain(Class<T>& type, const char* doc) {
  def(type, "explain(what)", doc, [](const T& self, const Arguments& given) {
    const std::string what = want_what(given);
    return PyWorking(self.explain(what), py::cast(self).attr("explain"), tuple_of(what), {});
  });
}

}  // namespace layshaft::python
