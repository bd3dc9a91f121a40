// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/road_load.hpp>

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <span>
#include <string>
#include <utility>

/// @file
/// A road load from a coast-down: roll out with the clutch pulled, write down the speed every second or so, both ways
/// along the road, and let the log tell what resists.
///
/// The log is not differentiated, which would turn every error of a speed into a large one of a force. Instead the
/// coast-down itself is fitted: the speed at the start and the coefficients for which m dv/dt = -F(v) runs nearest to
/// the logged speeds, by least squares (Gauss and Newton's steps; the run and its derivatives by the classic
/// Runge-Kutta method, which on these slow curves errs by less than 1e-8). How sure the coefficients are follows from
/// how far the speeds scatter about the fitted run, if those errors are independent of each other and of equal size.
namespace layshaft {

/// A log of a machine that rolls with its clutch pulled.
struct CoastDownLog {
  std::span<const Duration> times;        ///< rising; seconds apart at the most ten minutes
  std::span<const Speed> speeds;          ///< as many, above 0 and to 1000 km/h; the last below the first
  Mass mass;                              ///< with rider, 0.1 kg to 100 t
  std::optional<Mass> equivalent_mass{};  ///< with what the wheels' inertia adds, from the mass to twice that
  Slope slope{};                          ///< of the road
  bool with_linear = false;  ///< also fit the part that goes with speed, which short logs hardly tell from the others
};

/// What a coast-down log tells. Standard uncertainties are of one standard deviation; the errors of the coefficients
/// are strongly bound together (one too large goes with another too small), so that the resistance at a speed is known
/// far better than each: ask `resistance`.
struct CoastDownFit {
  RoadLoad road;           ///< on the level, in still air; its coefficients as fitted
  Speed start_speed;       ///< where the fitted run begins
  Speed scatter;           ///< of the logged speeds about it, one standard deviation
  Speed slowest, fastest;  ///< of the log: the road load holds between
  int freedom;             ///< samples over fitted numbers
  Force constant_uncertainty;
  ForcePerSpeed linear_uncertainty;  ///< nothing where that part was not fitted
  LinearDensity quadratic_uncertainty;
  /// Covariance of constant, linear and quadratic part, in SI: upper half by rows.
  std::array<double, 6> covariance;

  /// The resistance on the level in still air, with the ends between which it lies with 95 % certainty; or a RangeError
  /// outside the speeds of the log.
  [[nodiscard]] Result<Band<Force>> try_resistance(Speed speed) const {
    if (auto error = detail::outside("speed", speed, slowest, fastest)) return *std::move(error);
    const double v = speed.value();
    const auto& c = covariance;
    const double variance =
        c[0] + 2.0 * v * c[1] + 2.0 * v * v * c[2] + v * v * c[3] + 2.0 * v * v * v * c[4] + v * v * v * v * c[5];
    const Force half = sureness() * std::sqrt(std::max(0.0, variance)) * units::N;
    const Force nominal = road.resistance(Unwatched(), speed, Slope(), Corner::nominal);
    return Band<Force>{nominal - half, nominal, nominal + half};
  }
#if LAYSHAFT_EXCEPTIONS
  /// @throws RangeError outside the speeds of the log.
  [[nodiscard]] Band<Force> resistance(Speed speed) const { return try_resistance(speed).value(); }
#endif
  /// How many standard deviations to either side hold the truth with 95 % certainty: Student's factor for the degrees
  /// of freedom (series of Cornish and Fisher, to 0.2 % from 5 on; logs have many samples, and Boost's exact quantile
  /// would add two seconds to every compile).
  [[nodiscard]] double sureness() const noexcept {
    constexpr double z = 1.959963984540054;
    const double n = freedom;
    const double z3 = z * z * z, z5 = z3 * z * z, z7 = z5 * z * z;
    return z + (z3 + z) / (4.0 * n) + (5.0 * z5 + 16.0 * z3 + 3.0 * z) / (96.0 * n * n) +
           (3.0 * z7 + 19.0 * z5 + 17.0 * z3 - 15.0 * z) / (384.0 * n * n * n);
  }

  /// What try_fit_coast_down makes of its solution.
  [[nodiscard]] static RoadLoad road_of(double constant, double linear, double quadratic, Mass mass) noexcept {
    return RoadLoad(Band<Force>::exactly(constant * units::N), linear * units::N_per_mps,
                    Band<LinearDensity>::exactly(quadratic * units::kg_per_m), mass, Speed(), RoadLoadKind::coast_down,
                    fitted_source);
  }
};

namespace detail {

/// Least squares over a coast-down log, in SI. Unknowns: start speed, constant, linear and quadratic part.
class CoastDownSolver {
 public:
  static constexpr std::size_t most = 4;
  using Vector = std::array<double, most>;
  using Matrix = std::array<Vector, most>;

  explicit CoastDownSolver(const CoastDownLog& log)
      : log_(log),
        mass_(log.equivalent_mass.value_or(log.mass).value()),
        cosine_(std::cos(log.slope.angle().value())),
        climb_(log.mass.value() * standard_gravity.value() * std::sin(log.slope.angle().value())) {
    fitted_ = log.with_linear ? std::array{true, true, true, true} : std::array{true, true, false, true};
  }

  /// The unknowns, or nothing where the log does not tell them.
  [[nodiscard]] bool solve() {
    if (!first_guess()) return false;
    double squares = sum_up(unknowns_);
    constexpr int enough = 50;
    double damping = 0.0;
    for (int i = 0; i < enough; ++i) {
      Vector step{};
      if (!solve_for(gradient_, damping, step)) return false;
      Vector trial = unknowns_;
      double size = 0.0;
      for (std::size_t j = 0; j < most; ++j) {
        trial[j] += step[j];
        size = std::max(size, std::fabs(step[j]) / scale(j));
      }
      const Matrix normal_before = normal_;
      const Vector gradient_before = gradient_;
      const double now = sum_up(trial);
      if (now <= squares * (1.0 + 1e-12) || size < 1e-13) {
        unknowns_ = trial;
        squares = now;
        if (size < 1e-10) {
          squares_ = now;
          return true;
        }
        damping *= 0.1;
        if (damping < 1e-12) damping = 0.0;
      } else {
        normal_ = normal_before;
        gradient_ = gradient_before;
        damping = damping == 0.0 ? 1e-6 : damping * 10.0;
        if (damping > 1e6) return false;
      }
    }
    return false;
  }

  [[nodiscard]] const Vector& unknowns() const noexcept { return unknowns_; }
  [[nodiscard]] double squares() const noexcept { return squares_; }
  [[nodiscard]] int fitted() const noexcept { return log_.with_linear ? 4 : 3; }
  /// The inverse of the normal matrix; rows of what was not fitted are zero.
  [[nodiscard]] bool inverse(Matrix& inverse) {
    for (std::size_t column = 0; column < most; ++column) {
      Vector unit{}, solution{};
      if (fitted_[column]) unit[column] = 1.0;
      if (!solve_for(unit, 0.0, solution)) return false;
      for (std::size_t row = 0; row < most; ++row) inverse[row][column] = solution[row];
    }
    return true;
  }

 private:
  /// Speed and its derivatives by the unknowns.
  struct State {
    double speed;
    Vector by;
  };

  /// What an unknown is measured by, so that none is large or small by its unit.
  [[nodiscard]] double scale(std::size_t which) const noexcept {
    const double fast = log_.speeds[0].value();
    const double slowing = std::max(mass_ * (fast - log_.speeds[log_.speeds.size() - 1].value()) /
                                        (log_.times[log_.times.size() - 1] - log_.times[0]).value(),
                                    std::numeric_limits<double>::min());
    return which == 0 ? fast : which == 1 ? slowing : which == 2 ? slowing / fast : slowing / (fast * fast);
  }

  [[nodiscard]] State change(const State& at, const Vector& of) const noexcept {
    const double v = at.speed;
    const double size = std::fabs(v);
    const double slope = -(of[2] + 2.0 * of[3] * size) / mass_;
    State change{-(of[1] * cosine_ + climb_ + of[2] * v + of[3] * v * size) / mass_, {}};
    const Vector own{0.0, -cosine_ / mass_, -v / mass_, -v * size / mass_};
    for (std::size_t i = 0; i < most; ++i) change.by[i] = slope * at.by[i] + own[i];
    return change;
  }
  [[nodiscard]] static State moved(const State& from, const State& change, double time) noexcept {
    State to{from.speed + time * change.speed, from.by};
    for (std::size_t i = 0; i < most; ++i) to.by[i] += time * change.by[i];
    return to;
  }
  /// The classic Runge-Kutta step, in stretches of at most half a second.
  [[nodiscard]] State run(State at, double time, const Vector& of) const noexcept {
    const double stretches = std::max(1.0, std::ceil(time / 0.5));
    const double step = time / stretches;
    for (double done = 0.0; done < stretches; done += 1.0) {
      const State a = change(at, of);
      const State b = change(moved(at, a, 0.5 * step), of);
      const State c = change(moved(at, b, 0.5 * step), of);
      const State d = change(moved(at, c, step), of);
      at.speed += step / 6.0 * (a.speed + 2.0 * b.speed + 2.0 * c.speed + d.speed);
      for (std::size_t i = 0; i < most; ++i)
        at.by[i] += step / 6.0 * (a.by[i] + 2.0 * b.by[i] + 2.0 * c.by[i] + d.by[i]);
    }
    return at;
  }
  /// Runs along the log; leaves the normal matrix and the gradient, and gives the sum of squares.
  double sum_up(const Vector& of) {
    normal_ = Matrix{};
    gradient_ = Vector{};
    double squares = 0.0;
    State at{of[0], {1.0, 0.0, 0.0, 0.0}};
    for (std::size_t i = 0; i < log_.times.size(); ++i) {
      if (i > 0) at = run(at, (log_.times[i] - log_.times[i - 1]).value(), of);
      const double off = log_.speeds[i].value() - at.speed;
      squares += off * off;
      for (std::size_t row = 0; row < most; ++row) {
        gradient_[row] += at.by[row] * off;
        for (std::size_t column = 0; column < most; ++column) normal_[row][column] += at.by[row] * at.by[column];
      }
    }
    return is_finite(squares) ? squares : std::numeric_limits<double>::infinity();
  }

  /// A start from the integral of the equation: what momentum is lost is the integral of each part of the resistance.
  [[nodiscard]] bool first_guess() {
    normal_ = Matrix{};
    gradient_ = Vector{};
    double since = 0.0, way = 0.0, square_way = 0.0;
    for (std::size_t i = 0; i < log_.times.size(); ++i) {
      const double v = log_.speeds[i].value();
      if (i > 0) {
        const double time = (log_.times[i] - log_.times[i - 1]).value();
        const double before = log_.speeds[i - 1].value();
        since += time;
        way += 0.5 * time * (v + before);
        square_way += time * (v * v + v * before + before * before) / 3.0;
      }
      const Vector by{1.0, -cosine_ * since / mass_, -way / mass_, -square_way / mass_};
      const double target = v + climb_ * since / mass_;
      for (std::size_t row = 0; row < most; ++row) {
        gradient_[row] += by[row] * target;
        for (std::size_t column = 0; column < most; ++column) normal_[row][column] += by[row] * by[column];
      }
    }
    return solve_for(gradient_, 0.0, unknowns_);
  }

  /// Solves the normal equations for what is fitted, by Cholesky on a matrix scaled to ones along its diagonal.
  [[nodiscard]] bool solve_for(const Vector& right, double damping, Vector& solution) const {
    Matrix lower{};
    Vector size{};
    for (std::size_t i = 0; i < most; ++i) size[i] = fitted_[i] ? std::sqrt(normal_[i][i]) : 1.0;
    for (std::size_t i = 0; i < most; ++i) {
      if (!positive(size[i])) return false;
      for (std::size_t j = 0; j <= i; ++j) {
        double entry = i == j ? 1.0 + damping : fitted_[i] && fitted_[j] ? normal_[i][j] / (size[i] * size[j]) : 0.0;
        for (std::size_t k = 0; k < j; ++k) entry -= lower[i][k] * lower[j][k];
        if (i != j) {
          lower[i][j] = entry / lower[j][j];
        } else {
          if (!(entry > 1e-14)) return false;
          lower[i][i] = std::sqrt(entry);
        }
      }
    }
    Vector half{};
    for (std::size_t i = 0; i < most; ++i) {
      double rest = fitted_[i] ? right[i] / size[i] : 0.0;
      for (std::size_t k = 0; k < i; ++k) rest -= lower[i][k] * half[k];
      half[i] = rest / lower[i][i];
    }
    for (std::size_t i = most; i-- > 0;) {
      double rest = half[i];
      for (std::size_t k = i + 1; k < most; ++k) rest -= lower[k][i] * solution[k];
      solution[i] = rest / lower[i][i];
    }
    for (std::size_t i = 0; i < most; ++i) solution[i] /= size[i];
    return true;
  }

  const CoastDownLog& log_;
  double mass_, cosine_, climb_;
  std::array<bool, most> fitted_{};
  Vector unknowns_{}, gradient_{};
  Matrix normal_{};
  double squares_ = 0.0;
};

[[nodiscard]] inline std::optional<Error> refused(const CoastDownLog& log) {
  const std::size_t fewest = log.with_linear ? 6 : 5;
  if (log.times.size() != log.speeds.size())
    return Error::range("number of speeds", std::to_string(log.speeds.size()),
                        std::to_string(log.times.size()) + ", one a time");
  if (log.times.size() < fewest)
    return Error::range("number of samples", std::to_string(log.times.size()), "at least " + std::to_string(fewest));
  if (auto error = outside("mass", log.mass, 0.1_kg, 100000.0_kg)) return error;
  if (log.equivalent_mass)
    if (auto error = outside("equivalent_mass", *log.equivalent_mass, log.mass, 2.0 * log.mass)) return error;
  const auto numbered = [](const char* what, std::size_t place) {
    return std::string(what).append(" ").append(std::to_string(place + 1));
  };
  for (std::size_t i = 0; i < log.times.size(); ++i) {
    if (auto error = outside(numbered("time", i), log.times[i], -1e12_s, 1e12_s)) return error;
    if (auto error = outside(numbered("speed", i), log.speeds[i], 1e-3_kmh, 1000.0_kmh)) return error;
    if (i == 0) continue;
    if (!(log.times[i - 1] < log.times[i]))
      return Error::range(numbered("time", i), in_words(log.times[i]),
                          "more than the " + in_words(log.times[i - 1]) + " before it");
    if (log.times[i] - log.times[i - 1] > 600.0_s)
      return Error::range(numbered("time", i), in_words(log.times[i]), "at most 10 minutes after the one before it");
  }
  const std::size_t last = log.times.size() - 1;
  if (!(log.speeds[last] < log.speeds[0]))
    return Error::range("last speed", in_words(log.speeds[last]), "less than the first, " + in_words(log.speeds[0]));
  return std::nullopt;
}

}  // namespace detail

/// The road load that a coast-down log tells, and how sure that is. Or a RangeError that names what is wrong with the
/// log, or an Error where it does not tell the coefficients apart or tells a drag below zero. Error: within 1.7e-5 N
/// and 1.8e-7 kg/m for a log without any error, a sample a second.
[[nodiscard]] inline Result<CoastDownFit> try_fit_coast_down(const CoastDownLog& log) {
  if (auto error = detail::refused(log)) return *std::move(error);
  detail::CoastDownSolver solver(log);
  detail::CoastDownSolver::Matrix inverse{};
  if (!solver.solve() || !solver.inverse(inverse))
    return Error::value(
        "the coast-down log does not tell the parts of the resistance apart; expected a longer one, over "
        "a wider range of speeds");
  const auto& found = solver.unknowns();
  if (found[3] < 0.0)
    return Error::value("the coast-down log tells a resistance that bends down with speed (" +
                        detail::in_words(found[3]) +
                        " N/(m/s)^2); expected one that rises with its square. Was the clutch pulled, the wind still?");
  const int freedom = static_cast<int>(log.times.size()) - solver.fitted();
  const double variance = solver.squares() / freedom;
  const auto deviation = [&](std::size_t i) { return std::sqrt(variance * inverse[i][i]); };
  Speed slowest = log.speeds[0], fastest = log.speeds[0];
  for (const Speed& speed : log.speeds) {
    slowest = std::min(slowest, speed);
    fastest = std::max(fastest, speed);
  }
  return CoastDownFit{CoastDownFit::road_of(found[1], found[2], found[3], log.mass),
                      found[0] * units::mps,
                      std::sqrt(variance) * units::mps,
                      slowest,
                      fastest,
                      freedom,
                      deviation(1) * units::N,
                      deviation(2) * units::N_per_mps,
                      deviation(3) * units::kg_per_m,
                      {variance * inverse[1][1], variance * inverse[1][2], variance * inverse[1][3],
                       variance * inverse[2][2], variance * inverse[2][3], variance * inverse[3][3]}};
}

inline Result<RoadLoad> RoadLoad::try_from_coast_down(const CoastDownLog& log) {
  auto fit = try_fit_coast_down(log);
  if (!fit) return fit.error();
  return fit->road;
}
#if LAYSHAFT_EXCEPTIONS
/// @throws RangeError or Error as `try_fit_coast_down` says.
[[nodiscard]] inline CoastDownFit fit_coast_down(const CoastDownLog& log) { return try_fit_coast_down(log).value(); }
inline RoadLoad RoadLoad::from_coast_down(const CoastDownLog& log) { return try_from_coast_down(log).value(); }
#endif

}  // namespace layshaft
