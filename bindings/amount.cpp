// SPDX-License-Identifier: MIT
#include "amount.hpp"

namespace layshaft::python {

const Kind* kind_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::none:
    case Dimension::number:
    case Dimension::fraction:
    case Dimension::teeth:
    case Dimension::links: return nullptr;
    case Dimension::length: return &kind_of<Length>();
    case Dimension::mass: return &kind_of<Mass>();
    case Dimension::speed: return &kind_of<Speed>();
    case Dimension::angular_speed: return &kind_of<AngularSpeed>();
    case Dimension::area: return &kind_of<Area>();
    case Dimension::duration: return &kind_of<Duration>();
    case Dimension::acceleration: return &kind_of<Acceleration>();
    case Dimension::force: return &kind_of<Force>();
    case Dimension::torque: return &kind_of<Torque>();
    case Dimension::power: return &kind_of<Power>();
    case Dimension::energy: return &kind_of<Energy>();
    case Dimension::pressure: return &kind_of<Pressure>();
    case Dimension::density: return &kind_of<Density>();
    case Dimension::linear_density: return &kind_of<LinearDensity>();
    case Dimension::force_per_speed: return &kind_of<ForcePerSpeed>();
    case Dimension::angle: return &kind_of<Angle>();
    case Dimension::moment_of_inertia: return &kind_of<MomentOfInertia>();
    case Dimension::temperature: return &kind_of<Temperature>();
  }
  return nullptr;
}

py::object give_amount(const Amount& amount) {
  switch (amount.dimension) {
    case Dimension::none: return py::none();
    case Dimension::teeth:
    case Dimension::links: return py::int_(static_cast<int>(amount.value));
    default: return value_to_python(kind_of(amount.dimension), amount.value);
  }
}

}  // namespace layshaft::python
