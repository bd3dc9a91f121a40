// SPDX-License-Identifier: MIT
#pragma once

#include "function.hpp"

/// @file
/// Pickles: what writes and reads them. Each says which layshaft wrote it, and one of a newer is refused: what it says
/// more, and what it means by it, cannot be known here. A quantity, a band and a row of a table need no such word,
/// since their pickle is no more than the call that anybody writes.
namespace layshaft::python {

/// Registers the function by which pickles make values again.
void register_remake(py::module_& module);

/// What __reduce__ gives back: the call that makes a value again.
[[nodiscard]] py::object pickled(py::handle function, const py::tuple& positional, const py::dict& named = {});

namespace detail {
/// What __getstate__ gives back.
[[nodiscard]] py::object pickled_state(const py::tuple& state);
/// The state out of it.
[[nodiscard]] py::tuple state_of_pickle(py::handle pickled);
}  // namespace detail

/// Pickles by a state: `state_of(const T&)` is a tuple, `made_of(const py::tuple&)` the value again.
template <class T, class StateOf, class MadeOf>
void def_pickle(Class<T>& type, StateOf state_of, MadeOf made_of) {
  def_special(type, "__getstate__", [state_of](const T& value) { return detail::pickled_state(state_of(value)); });
  detail::bind_maker(
      detail::class_record<T>, "__setstate__", "__setstate__(state)",
      [](const void* kept, const Arguments& given) -> void* {
        return new T(detail::kept<MadeOf>(kept)(detail::state_of_pickle(given[0])));
      },
      detail::keep(made_of));
}

}  // namespace layshaft::python
