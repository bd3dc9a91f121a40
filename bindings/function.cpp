// SPDX-License-Identifier: MIT
#include "function.hpp"

#include <algorithm>
#include <stdexcept>

namespace layshaft::python {

namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace

Signature::Signature(std::string_view text) {
  const std::size_t open = text.find('(');
  if (open == text.npos || text.back() != ')') throw std::logic_error("a signature reads name(parameters)");
  name_ = text.substr(0, open);
  parameters_text_ = text.substr(open + 1, text.size() - open - 2);
  bool keyword_only = false;
  for (std::string_view rest = parameters_text_; !trimmed(rest).empty();) {
    const std::size_t comma = rest.find(',');
    const std::string_view one = trimmed(rest.substr(0, comma));
    rest = comma == rest.npos ? std::string_view() : rest.substr(comma + 1);
    if (one == "*") {
      keyword_only = true;
      continue;
    }
    const std::size_t equals = one.find('=');
    parameters_.push_back({std::string(trimmed(one.substr(0, equals))), equals == one.npos, keyword_only});
  }
}

std::size_t Signature::index(std::string_view parameter) const {
  const auto found = std::ranges::find(parameters_, parameter, &Parameter::name);
  if (found == parameters_.end())
    throw std::logic_error(name_ + " has no parameter " + std::string(parameter));  // a mistake in the bindings
  return static_cast<std::size_t>(found - parameters_.begin());
}

std::string Signature::doc(std::string_view name, std::string_view doc, bool method) const {
  std::string text(name);
  text += "(";
  if (method) text += parameters_text_.empty() ? "self" : "self, ";
  return text + parameters_text_ + ")\n--\n\n" + std::string(doc);
}

std::vector<py::object> Signature::bind(const py::args& args, const py::kwargs& kwargs) const {
  std::vector<py::object> values(parameters_.size());
  const auto positional = static_cast<std::size_t>(std::ranges::count(parameters_, false, &Parameter::keyword_only));
  if (args.size() > positional)
    raise_type_error(name_ + "() takes " + (positional == 0 ? "no" : "at most " + std::to_string(positional)) +
                     " positional argument" + (positional == 1 ? "" : "s") + " (" + std::to_string(args.size()) +
                     " given); it is called as " + name_ + "(" + parameters_text_ + ")");
  for (std::size_t i = 0; i < args.size(); ++i) values[i] = args[i];
  for (const auto& [key, value] : kwargs) {
    const auto name = key.cast<std::string>();
    const auto found = std::ranges::find(parameters_, name, &Parameter::name);
    if (found == parameters_.end())
      raise_type_error(name_ + "() has no parameter '" + name + "'; it is called as " + name_ + "(" + parameters_text_ +
                       ")");
    py::object& place = values[static_cast<std::size_t>(found - parameters_.begin())];
    if (place) raise_type_error(name_ + "() got the argument '" + name + "' twice");
    place = py::reinterpret_borrow<py::object>(value);
  }
  std::string missing;
  for (std::size_t i = 0; i < parameters_.size(); ++i)
    if (parameters_[i].required && !values[i])
      missing.append(missing.empty() ? "" : ", ").append("'").append(parameters_[i].name).append("'");
  if (!missing.empty())
    raise_type_error(name_ + "() is missing " + missing + "; it is called as " + name_ + "(" + parameters_text_ + ")");
  return values;
}

namespace detail {

void bind_function(py::module_& module, std::string_view signature, std::string_view doc,
                   std::function<py::object(const Arguments&)> call) {
  const auto shape = std::make_shared<Signature>(signature);
  module.def(
      shape->name().c_str(),
      [shape, call = std::move(call)](const py::args& args, const py::kwargs& kwargs) {
        return call(Arguments(*shape, args, kwargs));
      },
      shape->doc(doc, false).c_str());
}

void bind_static(py::handle type, std::string_view signature, std::string_view doc,
                 std::function<py::object(const Arguments&)> call) {
  const auto shape = std::make_shared<Signature>(signature);
  const py::cpp_function bound(
      [shape, call = std::move(call)](const py::args& args, const py::kwargs& kwargs) {
        return call(Arguments(*shape, args, kwargs));
      },
      py::name(shape->name().c_str()), py::scope(type), shape->doc(doc, false).c_str());
  type.attr(shape->name().c_str()) = py::staticmethod(bound);
}

void bind_method(py::handle type, std::string_view signature, std::string_view doc,
                 std::function<py::object(py::handle, const Arguments&)> call) {
  const auto shape = std::make_shared<Signature>(signature);
  type.attr(shape->name().c_str()) = py::cpp_function(
      [shape, call = std::move(call)](const py::object& self, const py::args& args, const py::kwargs& kwargs) {
        return call(self, Arguments(*shape, args, kwargs));
      },
      py::name(shape->name().c_str()), py::is_method(type), shape->doc(doc, true).c_str());
}

void bind_property(py::handle type, const char* name, const char* doc, std::function<py::object(py::handle)> get) {
  const py::cpp_function bound([get = std::move(get)](const py::object& self) { return get(self); }, py::name(name),
                               py::is_method(type));
  const py::handle property(reinterpret_cast<PyObject*>(&PyProperty_Type));
  type.attr(name) = property(bound, py::none(), py::none(), doc);
}

}  // namespace detail

}  // namespace layshaft::python
