// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/chain/drive.hpp>
#include <layshaft/chain/fit.hpp>
#include <layshaft/core/utf8.hpp>
#include <layshaft/gearing/gearbox.hpp>
#include <layshaft/instrument/speedometer.hpp>
#include <layshaft/road/body.hpp>
#include <layshaft/road/engine.hpp>
#include <layshaft/road/road_load.hpp>
#include <layshaft/setup/setup_parts.hpp>
#include <layshaft/tyre/fitness.hpp>

#include <algorithm>  // max
#include <string>
#include <string_view>
#include <utility>

/// @file
/// What stays on the machine.
namespace layshaft {

/// What kind of machine it is, where a caution depends on it.
enum class MachineKind { motorcycle, cycle };

[[nodiscard]] constexpr std::string_view to_string(MachineKind kind) noexcept {
  return kind == MachineKind::motorcycle ? "motorcycle" : "cycle";
}

/// An engine's greatest torque at the crank, and where it has it.
struct PeakTorque {
  Torque torque;              ///< 0.1 to 10,000 N m
  AngularSpeed engine_speed;  ///< 1 to 100,000 rpm

  friend constexpr bool operator==(const PeakTorque&, const PeakTorque&) noexcept = default;
};

/// What a Machine is made of. Each part has already been checked by its own constructor; later subjects add a part.
struct MachineParts {
  std::string name;
  Gearbox gearbox;
  Adjuster adjuster;
  ChainSeries chain;  ///< the series its sprockets are cut for
  Speedometer speedometer;
  Setup stock;  ///< what its maker fitted
  MachineKind kind = MachineKind::motorcycle;
  TyreAsked tyre_asked = {};                   ///< what it asks of its rear tyre, as far as it was stated
  std::optional<Suspension> suspension = {};   ///< its swingarm, whose angle at rest is that on the stand
  std::optional<PeakTorque> peak_torque = {};  ///< what the chain must bear; absent: that of the engine's curve
  std::optional<Engine> engine = {};           ///< torque over speed, inertia, clutch
  std::optional<Body> body = {};               ///< mass with rider, wheelbase, centre of mass
  /// Power at the ground over power where the engine's curve was measured, as a number or a band, 0.3 to 1. Where a
  /// set-up states its chain's own, this is without it; absent: by the gears and the chain's loads.
  std::optional<Band<double>> drive_efficiency = {};
  std::optional<RoadLoad> road_load = {};  ///< what resists on the road it is ridden on

  friend bool operator==(const MachineParts&, const MachineParts&) = default;
};

/// A machine: engine speeds, gearbox, adjuster, what its speedometer senses, and what its maker fitted.
class Machine {
 public:
  using Parts = MachineParts;
  static constexpr std::size_t longest_name = 200;

  /// The machine, or an error where the name is empty, longer than 200 bytes, not UTF-8 or has control characters (it
  /// is written into pages, pictures and terminals), where what it asks of its tyre, its greatest torque or its drive's
  /// efficiency is out of range, where the engine's curve and the gearbox's speeds do not meet, or where a loss is
  /// stated twice.
  [[nodiscard]] static Result<Machine> make(Parts parts) {
    if (parts.name.empty() || parts.name.size() > longest_name)
      return Error::range("length of the machine's name", std::to_string(parts.name.size()) + " bytes",
                          "1 to " + std::to_string(longest_name));
    if (const std::size_t place = detail::first_not_utf8(parts.name); place < parts.name.size())
      return Error::parse(parts.name, place, "a byte of the machine's name that is no character", "text in UTF-8");
    if (const std::size_t place = detail::first_steering(parts.name); place < parts.name.size())
      return Error::parse(parts.name, place, "a control character in the machine's name", "one line of plain text");
    if (auto error = detail::outside(parts.tyre_asked, std::nullopt)) return error->in("tyre_asked");
    if (parts.tyre_asked.least_tread_depth)
      return Error::value("tyre_asked: the least tread depth depends on where one rides, not on the machine");
    if (parts.peak_torque) {
      if (auto error = detail::outside("torque", parts.peak_torque->torque, 0.1_Nm, 10000.0_Nm))
        return error->in("peak_torque");
      if (auto error = detail::outside("engine_speed", parts.peak_torque->engine_speed, 1.0_rpm, 100000.0_rpm))
        return error->in("peak_torque");
    }
    if (parts.drive_efficiency) {
      if (auto error = detail::outside("drive_efficiency", *parts.drive_efficiency, 0.3, 1.0)) return *std::move(error);
    }
    if (parts.engine) {
      if (auto error = detail::loss_stated_twice(*parts.engine, parts.drive_efficiency.has_value()))
        return *std::move(error);
      if (auto error = detail::never_pulls(*parts.engine, parts.gearbox)) return error->in("engine");
    }
    return Machine(std::move(parts), Unchecked{});
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError or ParseError as `make` says.
  explicit Machine(Parts parts) : Machine(make(std::move(parts)).value()) {}
#endif

  [[nodiscard]] const std::string& name() const noexcept { return parts_.name; }
  [[nodiscard]] MachineKind kind() const noexcept { return parts_.kind; }
  [[nodiscard]] const Gearbox& gearbox() const noexcept { return parts_.gearbox; }
  [[nodiscard]] const Adjuster& adjuster() const noexcept { return parts_.adjuster; }
  [[nodiscard]] const ChainSeries& chain() const noexcept { return parts_.chain; }
  [[nodiscard]] const Speedometer& speedometer() const noexcept { return parts_.speedometer; }
  [[nodiscard]] const Setup& stock() const noexcept { return parts_.stock; }
  [[nodiscard]] const TyreAsked& tyre_asked() const noexcept { return parts_.tyre_asked; }
  [[nodiscard]] const std::optional<Suspension>& suspension() const noexcept { return parts_.suspension; }
  /// The greatest torque: as stated, else that of the engine's curve, as far as it was measured at the crank.
  [[nodiscard]] std::optional<PeakTorque> peak_torque() const noexcept {
    if (parts_.peak_torque || !parts_.engine || parts_.engine->measured_at() != MeasuredAt::crank)
      return parts_.peak_torque;
    const EnginePeak peak = parts_.engine->curve().peak_torque();
    return PeakTorque{peak.torque, std::max(peak.speed, 1.0_rpm)};
  }
  [[nodiscard]] const std::optional<Engine>& engine() const noexcept { return parts_.engine; }
  [[nodiscard]] const std::optional<Body>& body() const noexcept { return parts_.body; }
  [[nodiscard]] const std::optional<Band<double>>& drive_efficiency() const noexcept { return parts_.drive_efficiency; }
  [[nodiscard]] const std::optional<RoadLoad>& road_load() const noexcept { return parts_.road_load; }
  [[nodiscard]] const Parts& parts() const noexcept { return parts_; }

  friend bool operator==(const Machine&, const Machine&) = default;

 private:
  struct Unchecked {};
  Machine(Parts parts, Unchecked) : parts_(std::move(parts)) {}

  Parts parts_;
};

}  // namespace layshaft
