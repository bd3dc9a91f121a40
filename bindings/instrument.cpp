// SPDX-License-Identifier: MIT
#include "formula.hpp"
#include "value.hpp"
#include "wants.hpp"

#include <layshaft/instrument/instrument.hpp>

namespace layshaft::python {

void register_instrument(py::module_& module) {
  const char* signature = "Speedometer(sensor, reading_error=None)";
  Class<Speedometer> type(
      module, "Speedometer",
      Signature(signature)
          .doc(
              "What the speedometer senses ('layshaft', 'rear wheel' or 'front wheel'), and the stock reading over the "
              "true speed less one, a number or a Band (-0.3 to 0.5); None where nobody measured it.",
              false)
          .c_str());
  def_init(type, signature, [](const Arguments& given) {
    return Speedometer(given.want<SpeedometerSensor>("sensor"),
                       given.want<std::optional<Band<double>>>("reading_error"));
  });
  def_property(type, "sensor", "What it senses.", [](const Speedometer& s) { return s.sensor(); });
  def_property(type, "reading_error", "Its own error, a Band of fractions, or None.",
               [](const Speedometer& s) { return s.reading_error(); });
  def_value(type, [](const Speedometer& s) {
    Remake remake{tuple_of(give(s.sensor())), {}};
    if (s.reading_error()) remake.named["reading_error"] = give(s.reading_error());
    return remake;
  });

  const char* reading_signature = "SpeedometerReading(reading_error, indicated_ratio)";
  Class<SpeedometerReading> reading(
      module, "SpeedometerReading",
      Signature(reading_signature).doc("What the instrument makes of a set-up, against the stock one.", false).c_str());
  def_init(reading, reading_signature, [](const Arguments& given) {
    return SpeedometerReading(given.want<std::optional<Band<double>>>("reading_error"),
                              given.want<Band<double>>("indicated_ratio"));
  });
  def_property(reading, "reading_error", "The stock instrument's own error, a Band of fractions, or None.",
               [](const SpeedometerReading& r) { return r.reading_error(); });
  def_property(reading, "indicated_ratio", "Reading over the stock reading at the same true speed, a Band.",
               [](const SpeedometerReading& r) { return r.indicated_ratio(); });
  def_property(reading, "correction_factor", "What brings the stock reading back, a Band.",
               [](const SpeedometerReading& r) { return r.correction_factor(); });
  def_property(reading, "odometer_drift", "How far the odometer drifts from its stock count, a Band of fractions.",
               [](const SpeedometerReading& r) { return r.odometer_drift(); });
  def(reading, "indicated(true_speed)", "What the speedometer shows at a true speed, a Band of Speed.",
      [](const SpeedometerReading& r, const Arguments& given) { return r.indicated(given.want<Speed>("true_speed")); });
  def(reading, "verdict(true_speed)", "What UN R39 says: 'lawful', 'too low', 'too high' or 'uncertain'.",
      [](const SpeedometerReading& r, const Arguments& given) { return r.verdict(given.want<Speed>("true_speed")); });
  def_value(reading, [](const SpeedometerReading& r) {
    return Remake{tuple_of(give(r.reading_error()), give(r.indicated_ratio())), {}};
  });

  def_formula<formula::wheel_indicated_ratio>(module,
                                              "Speedometer reading after over before, where a wheel is sensed.");
  def_formula<formula::correction_factor>(module, "The factor that brings the speedometer back.");
  def_formula<formula::odometer_drift>(module, "How far the odometer drifts from its stock count, a fraction.");
  def_formula<formula::stock_reading>(module, "What the stock instrument shows (Speed) at a true speed.");
  def_formula<formula::indicated_speed>(module, "What it shows (Speed) once parts are changed.");
  def_formula<formula::highest_lawful_reading>(module,
                                               "The highest reading (Speed) that UN R39 allows at a true speed.");
}

}  // namespace layshaft::python
