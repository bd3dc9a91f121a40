// SPDX-License-Identifier: MIT
#include "quantity.hpp"

#include "function.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace layshaft::python {
namespace {

// In the order in which the documentation lists them.
std::vector<Kind*>& kinds() {
  static std::vector<Kind*> all;
  return all;
}

struct UnitConstant {
  const char* name;
  const Kind* kind;
  double value;
};

/// One unit of Python, a quantity of one; its name is that of the C++ unit.
#define LAYSHAFT_UNIT(NAME) \
  UnitConstant { #NAME, &kind_of < std::remove_const_t < decltype(units::NAME)>>(), units::NAME.value() }
// clang-format off
const std::array unit_constants{
    LAYSHAFT_UNIT(mm), LAYSHAFT_UNIT(cm), LAYSHAFT_UNIT(m), LAYSHAFT_UNIT(km), LAYSHAFT_UNIT(inch), LAYSHAFT_UNIT(mile),
    LAYSHAFT_UNIT(m2),
    LAYSHAFT_UNIT(mps), LAYSHAFT_UNIT(kmh), LAYSHAFT_UNIT(mph),
    LAYSHAFT_UNIT(mps2),
    LAYSHAFT_UNIT(rpm), LAYSHAFT_UNIT(radps),
    LAYSHAFT_UNIT(N), LAYSHAFT_UNIT(kN), LAYSHAFT_UNIT(lbf),
    LAYSHAFT_UNIT(Nm), LAYSHAFT_UNIT(lbf_ft),
    LAYSHAFT_UNIT(W), LAYSHAFT_UNIT(kW), LAYSHAFT_UNIT(hp),
    LAYSHAFT_UNIT(J),
    LAYSHAFT_UNIT(Pa), LAYSHAFT_UNIT(bar), LAYSHAFT_UNIT(MPa),
    LAYSHAFT_UNIT(kg), LAYSHAFT_UNIT(lb), LAYSHAFT_UNIT(g),
    LAYSHAFT_UNIT(kg_per_m3), LAYSHAFT_UNIT(kg_per_m), LAYSHAFT_UNIT(N_per_kmh2),
    LAYSHAFT_UNIT(N_per_mps), LAYSHAFT_UNIT(N_per_kmh),
    LAYSHAFT_UNIT(deg), LAYSHAFT_UNIT(rad),
    LAYSHAFT_UNIT(s), LAYSHAFT_UNIT(minute), LAYSHAFT_UNIT(hour),
    LAYSHAFT_UNIT(kg_m2),
    LAYSHAFT_UNIT(kelvin)};
// clang-format on
#undef LAYSHAFT_UNIT

/// left times right gives product. Which products there are, and what they are, is for the table below.
struct Product {
  const Kind* left;
  const Kind* right;
  const Kind* product;
};

template <class Left, class Right>
Product product() {
  return {&kind_of<Left>(), &kind_of<Right>(), &kind_of<decltype(Left() * Right())>()};
}
/// A product at a radius: the radian, which Boost.Units counts as a dimension, goes away.
template <class Left, class Right, class Result>
Product at_radius() {
  static_assert(!std::is_same_v<decltype(Left() * Right()), Result>, "this one needs no help");
  return {&kind_of<Left>(), &kind_of<Right>(), &kind_of<Result>()};
}

const std::vector<Product>& products() {
  static const std::vector<Product> all{
      product<Length, Length>(),                 // area
      product<Speed, Duration>(),                // length
      product<Acceleration, Duration>(),         // speed
      product<AngularSpeed, Duration>(),         // angle
      product<Mass, Acceleration>(),             // force
      product<Pressure, Area>(),                 // force
      product<Force, Length>(),                  // energy; a torque is at a radius, torque / length a force
      product<Torque, Angle>(),                  // energy
      product<Power, Duration>(),                // energy
      product<Force, Speed>(),                   // power
      product<Torque, AngularSpeed>(),           // power
      product<LinearDensity, Length>(),          // mass
      product<Density, Area>(),                  // linear density
      product<ForcePerSpeed, Speed>(),           // force
      product<LinearDensity, Speed>(),           // force per speed
      at_radius<AngularSpeed, Length, Speed>(),  // at that radius
  };
  return all;
}
/// Quotients that are not a product turned round.
const std::vector<Product>& quotients() {  // product / right = left
  static const std::vector<Product> all{
      {&kind_of<Force>(), &kind_of<Length>(), &kind_of<Torque>()},  // the force at that radius
      {&kind_of<Length>(), &kind_of<Force>(), &kind_of<Torque>()},  // the radius of that force
  };
  return all;
}

std::string called(py::handle object) {
  if (const Kind* kind = kind_of(object)) return with_article(kind->name);
  return with_article(py::str(py::type::handle_of(object).attr("__name__")).cast<std::string>());
}

/// The kind of the object a method was called on.
const Kind& own_kind(py::handle self) {
  if (const Kind* kind = kind_of(self)) return *kind;
  raise_type_error("self: expected a quantity, got " + what_came(self));
}

py::object made(const Kind& kind, double value) {
  if (!is_finite(value)) raise(Error::range(kind.name, "too large", "a finite " + std::string(kind.name)));
  return kind.make(value);
}
py::object not_implemented() { return py::reinterpret_borrow<py::object>(Py_NotImplemented); }

[[noreturn]] void refuse_array(const char* doing, const Kind& kind) {
  raise_type_error(std::string("an array cannot be ") + doing + " " + with_article(kind.name) +
                   ": a quantity is one value. Keep arrays as plain numbers in the units that the functions of "
                   "layshaft.arrays name");
}

py::object multiply(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  if (const Kind* by = kind_of(other)) {
    for (const Product& rule : products())
      if ((rule.left == &kind && rule.right == by) || (rule.left == by && rule.right == &kind))
        return made(*rule.product, kind.value(self) * by->value(other));
    raise_type_error(with_article(kind.name) + " times " + with_article(by->name) +
                     " is no quantity that layshaft has");
  }
  if (is_real_number(other)) return made(kind, kind.value(self) * want_number(other, "factor"));
  if (is_array(other)) refuse_array("multiplied with", kind);
  return not_implemented();
}

py::object divide(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  const auto quotient = [&](double divisor) {
    if (divisor == 0.0) {
      PyErr_SetString(PyExc_ZeroDivisionError, (with_article(kind.name) + " divided by zero").c_str());
      throw py::error_already_set();
    }
    return kind.value(self) / divisor;
  };
  if (const Kind* by = kind_of(other)) {
    const double value = by->value(other);
    if (by == &kind) {
      const double ratio = quotient(value);
      if (!is_finite(ratio)) raise(Error::range("quotient", "too large", "a finite number"));
      return py::float_(ratio);
    }
    for (const Product& rule : quotients())
      if (rule.product == &kind && rule.right == by) return made(*rule.left, quotient(value));
    for (const Product& rule : products()) {
      if (rule.product != &kind) continue;
      if (rule.right == by) return made(*rule.left, quotient(value));
      if (rule.left == by) return made(*rule.right, quotient(value));
    }
    raise_type_error(with_article(kind.name) + " divided by " + with_article(by->name) +
                     " is no quantity that layshaft has");
  }
  if (is_real_number(other)) return made(kind, quotient(want_number(other, "divisor")));
  if (is_array(other)) refuse_array("the divisor of", kind);
  return not_implemented();
}

/// number / quantity: there is no such quantity, but an array gets its hint.
py::object divided_by(const py::object& self, const py::object& other) {
  if (is_array(other)) refuse_array("divided by", own_kind(self));
  raise_type_error(called(other) + " divided by " + with_article(own_kind(self).name) +
                   " is no quantity that layshaft has");
}

/// The value of what is to be added to a quantity, compared with it, or taken from it.
double same_kind(const Kind& kind, py::handle other, const char* doing) {
  if (kind_of(other) == &kind) return kind.value(other);
  if (is_array(other)) refuse_array(doing, kind);
  std::string sentence = called(other) + " cannot be " + doing + " " + with_article(kind.name);
  if (is_real_number(other)) sentence += ": give the number a unit, such as " + ways_to_write(kind);
  raise_type_error(sentence);
}
py::object add(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  return made(kind, kind.value(self) + same_kind(kind, other, "added to"));
}
py::object subtract(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  return made(kind, kind.value(self) - same_kind(kind, other, "subtracted from"));
}
py::object subtracted_from(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  return made(kind, same_kind(kind, other, "lessened by") - kind.value(self));
}

template <class Compare>
bool compare(const py::object& self, const py::object& other) {
  const Kind& kind = own_kind(self);
  return Compare()(kind.value(self), same_kind(kind, other, "compared with"));
}

std::string text_of(const py::object& self) {
  const Kind& kind = own_kind(self);
  return kind.text(kind.value(self));
}

/// `f"{length:.1f inch}"`: a number's format, a unit, or both; without a unit, the first one of its kind.
std::string formatted(const py::object& self, const py::object& format) {
  const Kind& kind = own_kind(self);
  const std::string spec = want_text(format, "format", "a str");
  if (spec.empty()) return text_of(self);
  const UnitName* unit = nullptr;
  std::string number = spec;
  for (const UnitName& one : kind.units) {
    if (unit && one.name.size() <= unit->name.size()) continue;
    if (!spec.ends_with(one.name)) continue;
    const std::size_t before = spec.size() - one.name.size();
    if (before == 0 ? one.name == "g" : spec[before - 1] != ' ') continue;  // "g" alone is a number's format
    unit = &one;
    number = before == 0 ? "" : spec.substr(0, before - 1);
  }
  if (!unit) unit = &kind.units[0];
  const double value = kind.value(self) / unit->unit;
  const py::object shown =
      number.empty() ? py::object(py::str(to_text(value))) : py::object(py::float_(value).attr("__format__")(number));
  return shown.cast<std::string>() + " " + std::string(unit->name);
}

/// The methods that are the same for every kind, by their names.
py::dict make_methods() {
  py::dict methods;
  const auto method = [&]<class Function>(const std::string& name, Function function) {
    constexpr bool alone = std::invocable<const Function&, py::object>;
    methods[name.c_str()] = detail::free_method(
        name + (alone ? "(self)" : "(self, other)"),
        [](const void* kept, py::handle, const Arguments& given) {
          const auto& call = detail::kept<Function>(kept);
          const auto object = [&](std::size_t place) { return py::reinterpret_borrow<py::object>(given[place]); };
          if constexpr (alone)
            return detail::give_new(call(object(0)));
          else
            return detail::give_new(call(object(0), object(1)));
        },
        detail::keep(function));
  };
  method("__mul__", multiply);
  method("__rmul__", multiply);
  method("__truediv__", divide);
  method("__rtruediv__", divided_by);
  method("__add__", add);
  method("__radd__", add);
  method("__sub__", subtract);
  method("__rsub__", subtracted_from);
  method("__neg__", [](const py::object& self) { return own_kind(self).make(-own_kind(self).value(self)); });
  method("__pos__", [](const py::object& self) { return self; });
  method("__abs__", [](const py::object& self) {
    const double value = own_kind(self).value(self);
    return own_kind(self).make(value < 0.0 ? -value : value);
  });
  method("__bool__", [](const py::object& self) { return own_kind(self).value(self) != 0.0; });
  method("__lt__", compare<std::less<>>);
  method("__le__", compare<std::less_equal<>>);
  method("__gt__", compare<std::greater<>>);
  method("__ge__", compare<std::greater_equal<>>);
  method("__eq__", [](const py::object& self, const py::object& other) -> py::object {
    if (kind_of(other) != &own_kind(self)) return not_implemented();
    return py::bool_(own_kind(self).value(self) == kind_of(other)->value(other));
  });
  method("__hash__", [](const py::object& self) {
    return py::hash(tuple_of(std::string(own_kind(self).name), own_kind(self).value(self)));
  });
  method("__str__", text_of);
  method("__repr__",
         [](const py::object& self) { return std::string(own_kind(self).name) + "('" + text_of(self) + "')"; });
  method("__format__", formatted);
  method("__reduce__", [](const py::object& self) { return tuple_of(py::type::of(self), tuple_of(text_of(self))); });
  method("__copy__", [](const py::object& self) { return self; });
  method("__deepcopy__", [](const py::object& self, const py::object&) { return self; });
  methods["__array_ufunc__"] = py::none();  // NumPy leaves arithmetic to the methods above
  return methods;
}

/// Registers a class, but for what needs the C++ type.
void register_kind(Kind& kind, AnyClass& type, const py::dict& methods) {
  kind.type = reinterpret_cast<PyTypeObject*>(type.ptr());
  kinds().push_back(&kind);
  for (const auto& [name, method] : methods) type.attr(name) = method;
}
std::string doc_of(const Kind& kind) {
  const std::string name(kind.name);
  std::string list;
  for (const UnitName& unit : kind.units) list.append(list.empty() ? "" : ", ").append(unit.name);
  return name + "(value)\n--\n\nA" + with_article(kind.name).substr(1) + ": " + ways_to_write(kind) +
         ". Units in text: " + list + ".\n\nImmutable; NaN and infinity are refused.";
}

template <class Quantity>
void register_quantity(py::module_& module, const py::dict& methods) {
  Kind& kind = detail::kind<Quantity>;
  const std::string name(kind.name);
  Class<Quantity> type(module, name.c_str(), doc_of(kind).c_str());
  register_kind(kind, type, methods);
  def_init(type, name + "(value)",
           [](const Arguments& given) { return python::want<Quantity>(given[0], QuantityNames<Quantity>::name); });
}

}  // namespace

const Kind* kind_of(py::handle object) {
  for (const Kind* kind : kinds())
    if (Py_TYPE(object.ptr()) == kind->type) return kind;
  return nullptr;
}

std::string ways_to_write(const Kind& kind) {
  const std::string example(kind.example);
  const std::string number = example.substr(0, example.find(' '));
  const std::string_view unit_name = kind.example.substr(number.size() + 1);
  const auto unit = std::ranges::find(kind.units, unit_name, &UnitName::name);
  for (const UnitConstant& constant : unit_constants)
    if (constant.kind == &kind && constant.value == unit->unit)
      return number + " * " + constant.name + " or '" + example + "'";
  return "'" + example + "'";
}

void register_quantities(py::module_& module) {
  const py::dict methods = make_methods();
  register_quantity<Length>(module, methods);
  register_quantity<Area>(module, methods);
  register_quantity<Mass>(module, methods);
  register_quantity<Duration>(module, methods);
  register_quantity<Speed>(module, methods);
  register_quantity<Acceleration>(module, methods);
  register_quantity<Force>(module, methods);
  register_quantity<Torque>(module, methods);
  register_quantity<Power>(module, methods);
  register_quantity<Energy>(module, methods);
  register_quantity<Pressure>(module, methods);
  register_quantity<Density>(module, methods);
  register_quantity<LinearDensity>(module, methods);
  register_quantity<ForcePerSpeed>(module, methods);
  register_quantity<Angle>(module, methods);
  register_quantity<AngularSpeed>(module, methods);
  register_quantity<MomentOfInertia>(module, methods);
  register_quantity<Temperature>(module, methods);
  for (const UnitConstant& constant : unit_constants) module.attr(constant.name) = constant.kind->make(constant.value);
}

}  // namespace layshaft::python
