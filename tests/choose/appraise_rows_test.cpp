// SPDX-License-Identifier: MIT
#include <layshaft/choose/appraise_rows.hpp>

#include <setup/machines.hpp>

#include <layshaft/road/drag_area.hpp>
#include <layshaft/setup/comparison.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace {
using namespace layshaft_test;

/// A trail bike that states all that a measure can need.
Machine whole_trail_bike(SpeedometerSensor sensor = SpeedometerSensor::layshaft) {
  MachineParts parts = trail_bike_parts();
  parts.adjuster = Adjuster(570_mm, 650_mm, 30_mm);
  parts.speedometer = Speedometer(sensor, Band<double>{0.02, 0.04, 0.07});
  parts.engine = EngineCurve({1500_rpm, 6500_rpm, 9100_rpm}, {18_Nm, 25_Nm, 20_Nm});
  parts.body = Body({.mass = 210_kg, .wheelbase = 1420_mm, .centre_ahead = 690_mm, .centre_height = 640_mm});
  parts.road_load = RoadLoad::from_parts({.mass = 210_kg,
                                          .rolling_coefficient = surface(SurfaceKind::gravel).rolling_coefficient,
                                          .drag_area = drag_area(DragKind::motorcycle).area});
  return Machine(parts);
}

/// Parts that rows draw from: some drives close no chain, one tyre has no size at all.
struct Table {
  std::vector<RowDrive> drives;
  std::vector<TyreOffer> tyres;
  std::vector<std::uint32_t> drive, tyre;

  explicit Table(std::size_t rows, unsigned seed = 5) {
    std::mt19937 random(seed);
    for (int front = 11; front <= 14; ++front)
      for (int rear = 42; rear <= 52; rear += 2)
        for (const int links : {0, 104, 106, 20}) {
          RowDrive of_row{{Teeth(front), {}, {Band<double>::exactly(20.0), {}}},
                          {Teeth(rear), {}, {Band<double>::exactly(40.0 + rear), {}}},
                          {.made = {.seal = ChainSeal::shaped, .tensile_strength = 34_kN},
                           .offer = {Band<double>::exactly(70.0), {}}},
                          {}};
          if (links > 0) of_row.links = Links(links);
          drives.push_back(of_row);
        }
    for (const char* marking : {"110/100-18 64M", "120/90-18 65M", "130/80R18 66V", "4.10-18 59P"})
      tyres.push_back({TyreSize(marking), {}, {Band<double>::exactly(90.0), {}}});
    std::uniform_real_distribution<double> rolls(1.8, 2.2);
    for (int i = 0; i < 20; ++i) {
      const Length at = rolls(random) * 1.0_m;
      tyres.push_back({{}, i % 2 ? Band<Length>::exactly(at) : Band<Length>{at - 5_mm, at, at + 3_mm}, {}});
    }
    tyres.push_back({});
    std::uniform_int_distribution<std::size_t> any_drive(0, drives.size() - 1), any_tyre(0, tyres.size() - 1);
    for (std::size_t i = 0; i < rows; ++i) {
      drive.push_back(i % 50 == 7 ? SetupRows::none : static_cast<std::uint32_t>(any_drive(random)));
      tyre.push_back(i % 50 == 9 ? SetupRows::none : static_cast<std::uint32_t>(any_tyre(random)));
    }
  }
  [[nodiscard]] SetupRows rows(std::size_t first = 0, std::size_t size = std::dynamic_extent) const {
    return {drives, tyres, std::span(drive).subspan(first, size), std::span(tyre).subspan(first, size)};
  }
  /// The set-up of a row, where it has one.
  [[nodiscard]] std::optional<layshaft::Setup> setup(std::size_t row) const {
    if (drive[row] == SetupRows::none || tyre[row] == SetupRows::none) return std::nullopt;
    const RowDrive& of_drive = drives[drive[row]];
    const TyreOffer& of_tyre = tyres[tyre[row]];
    const auto made = layshaft::Setup::make({.front = of_drive.front.teeth,
                                             .rear = of_drive.rear.teeth,
                                             .tyre = of_tyre.tyre,
                                             .links = of_drive.links,
                                             .circumference = of_tyre.circumference,
                                             .chain_made = of_drive.chain.made});
    if (!made) return std::nullopt;
    return *made;
  }
};

/// Low, nominal and high of a measure of all rows.
struct RowValues {
  std::vector<double> low, nominal, high;
  RowErrors errors;
};
RowValues values_of(const Machine& machine, const SetupRows& rows, Measured measured, double unit = 1.0,
                    const RowOptions& options = {}) {
  const std::size_t size = rows.drive.size();
  RowValues values{
      std::vector<double>(size, -1.0), std::vector<double>(size, -1.0), std::vector<double>(size, -1.0), {}};
  const RowColumn column{measured, unit, {values.low.data()}, {values.nominal.data()}, {values.high.data()}};
  values.errors = appraise_rows(machine, rows, std::span(&column, 1), options);
  return values;
}
Measured asked(Measure what) {
  Measured measured{what};
  if (what == Measure::engine_speed) measured.speed = 90_kmh;
  return measured;
}

using Told = std::optional<Band<double>>;
template <class Quantity>
Told told_si(const Band<Quantity>& band) {
  return Band<double>{band.low.value(), band.nominal.value(), band.high.value()};
}
Told told_exactly(double value) { return Band<double>::exactly(value); }

// What an appraisal or a comparison with the stock set-up tells of the same.
const std::map<Measure, std::function<Told(const Comparison&)>> told_alone = {
    {Measure::thrust_change, [](const Comparison& c) { return Told(c.thrust_change); }},
    {Measure::speed_change, [](const Comparison& c) { return Told(c.speed_change); }},
    {Measure::engine_speed, [](const Comparison& c) { return told_si(c.trial.engine_speed_at(90_kmh, 5)); }},
    {Measure::chain_pull_change, [](const Comparison& c) { return Told(c.wear.chain_tension_change); }},
    {Measure::chain_stretch_change, [](const Comparison& c) { return Told(c.wear.chain_stretch_change); }},
    {Measure::front_life_change, [](const Comparison& c) { return Told(c.wear.front_life_change); }},
    {Measure::rear_life_change, [](const Comparison& c) { return Told(c.wear.rear_life_change); }},
    {Measure::loss_change, [](const Comparison& c) { return Told(c.wear.loss_change); }},
    {Measure::wear_room, [](const Comparison& c) { return Told(c.trial.chain().wear_room); }},
    {Measure::links, [](const Comparison& c) { return told_exactly(c.trial.chain().links.count()); }},
    {Measure::front_teeth, [](const Comparison& c) { return told_exactly(c.setups.trial.front().count()); }},
    {Measure::teeth_in_mesh, [](const Comparison& c) { return told_exactly(c.trial.drive().engagement.front); }},
    {Measure::wrap, [](const Comparison& c) { return told_exactly(c.trial.drive().engagement.wrap_front.value()); }},
    {Measure::chain_safety,
     [](const Comparison& c) -> Told {
       const auto& loads = c.trial.drive().loads;
       return loads && loads->safety ? told_exactly(*loads->safety) : std::nullopt;
     }},
    {Measure::top_speed,
     [](const Comparison& c) -> Told {
       return c.trial.road() ? told_si(c.trial.road()->top_speed.speed) : std::nullopt;
     }},
};

// A change is the last bits of one that are left when one is taken away.
void expect_close(double value, double alone, std::size_t row) {
  EXPECT_NEAR(value, alone, 2.0 * std::numeric_limits<double>::epsilon() * (1.0 + std::fabs(alone))) << row;
}
void expect_as_alone(const Machine& machine, const Table& table, Measure what, std::size_t stride = 1) {
  SCOPED_TRACE(std::string(to_string(what)));
  const RowValues values = values_of(machine, table.rows(), asked(what));
  std::size_t told = 0, untold = 0;
  for (std::size_t row = 0; row < table.drive.size(); row += stride) {
    const auto setup = table.setup(row);
    const auto comparison =
        setup ? try_compare(machine, machine.stock(), *setup) : Result<Comparison>(Error::value("no set-up"));
    const Told alone = comparison ? told_alone.at(what)(*comparison) : std::nullopt;
    if (!alone) {
      ++untold;
      EXPECT_TRUE(std::isnan(values.low[row]) && std::isnan(values.nominal[row]) && std::isnan(values.high[row]))
          << row;
      continue;
    }
    ++told;
    expect_close(values.low[row], alone->low, row);
    expect_close(values.nominal[row], alone->nominal, row);
    expect_close(values.high[row], alone->high, row);
  }
  EXPECT_GT(told, untold);
  EXPECT_GT(untold, 0u);
}

TEST(AppraiseRows, TellWhatEachSetUpAloneTells) {
  const Table table(1500);
  for (const auto& [what, told] : told_alone)
    expect_as_alone(whole_trail_bike(), table, what, what == Measure::top_speed ? 40 : 3);
}

// Every measure there is, by what choosing tells of the same set-up.
TEST(AppraiseRows, TellWhatChoosingTells) {
  for (const auto sensor :
       {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel, SpeedometerSensor::front_wheel}) {
    const Machine machine = whole_trail_bike(sensor);
    const Table table(600, 8);
    std::size_t compared = 0, skipped = 0;
    for (const MeasureRow& row : measure_rows) {
      const Measured measured = asked(row.kind);
      const auto study = layshaft::detail::Study::make(machine, std::span(&measured, 1));
      if (!study) {
        ++skipped;
        continue;
      }
      SCOPED_TRACE(std::string(row.name));
      const RowValues values = values_of(machine, table.rows(), measured);
      const bool slow = row.kind == Measure::top_speed || row.kind == Measure::climb;
      for (std::size_t i = 0; i < table.drive.size(); i += slow ? 20 : 1) {
        if (!table.setup(i)) continue;
        const RowDrive& of_row = table.drives[table.drive[i]];
        const auto drive = study->drive(of_row.front, of_row.rear, of_row.chain, of_row.links);
        if (!drive) continue;
        const auto tyre = study->tyre(table.tyres[table.tyre[i]]);
        Measured as_told = measured;
        if (as_told.what == Measure::front_contacts_change) as_told.what = Measure::thrust_change;
        const auto alone = row.on == MeasuredOn::drive  ? study->value(as_told, *drive)
                           : row.on == MeasuredOn::tyre ? study->value(as_told, tyre)
                                                        : study->value(as_told, *drive, tyre);
        ASSERT_EQ(!alone, std::isnan(values.nominal[i])) << i;
        if (!alone) continue;
        ++compared;
        ASSERT_DOUBLE_EQ(values.low[i], alone->low) << i;
        ASSERT_DOUBLE_EQ(values.nominal[i], alone->nominal) << i;
        ASSERT_DOUBLE_EQ(values.high[i], alone->high) << i;
        if (!has_ends(row.kind)) {
          ASSERT_EQ(alone->low, alone->high) << i;
        }
      }
    }
    EXPECT_GT(compared, 8000u);
    EXPECT_LT(skipped, 6u);  // what the machine's tyre is asked for, and the slack through a travel
  }
}

TEST(AppraiseRows, AreTheSameInAnyOrderOfRowsAndInAnyNumberOfThreads) {
  const Machine machine = whole_trail_bike();
  const Table table(40000);  // so many as are written past the cache; parts of them are not
  const auto same = [](const std::vector<double>& a, const std::vector<double>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](double x, double y) { return x == y || (x != x && y != y); });
  };
  for (const Measure what : {Measure::thrust_change, Measure::speedometer_beyond_rule, Measure::cost}) {
    const RowValues all = values_of(machine, table.rows(), asked(what));
    EXPECT_TRUE(same(values_of(machine, table.rows(), asked(what), 1.0, {.threads = 3}).high, all.high));
    std::vector<double> parts;
    for (std::size_t first = 0; first < 40000; first += 4321) {
      const auto part = values_of(machine, table.rows(first, std::min<std::size_t>(4321, 40000 - first)), asked(what));
      parts.insert(parts.end(), part.low.begin(), part.low.end());
    }
    EXPECT_TRUE(same(parts, all.low)) << to_string(what);
  }
}

TEST(AppraiseRows, ComeInTheUnitAndTheStepAskedForAndOnlyTheEndsWanted) {
  const Machine machine = whole_trail_bike();
  const Table table(700);
  const RowValues in_si = values_of(machine, table.rows(), asked(Measure::walking_pace));
  const RowValues in_kmh = values_of(machine, table.rows(), asked(Measure::walking_pace), units::kmh.value());
  struct Record {
    double before, pace, after;
  };
  std::vector<Record> records(700, Record{1.0, 2.0, 3.0});
  const RowColumn column{asked(Measure::walking_pace), units::kmh.value(), {}, {&records[0].pace, sizeof(Record)}, {}};
  EXPECT_TRUE(try_appraise_rows(machine, table.rows(), std::span(&column, 1)));
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (std::isnan(in_si.nominal[i])) continue;
    EXPECT_EQ(in_kmh.nominal[i], in_si.nominal[i] / units::kmh.value());
    EXPECT_EQ(records[i].pace, in_kmh.nominal[i]);
    EXPECT_EQ(records[i].before + records[i].after, 4.0);
  }
}

// Each end alone, of every measure that is worked out many rows at once, and of one looked up.
TEST(AppraiseRows, TellAnyEndWithoutTheOthers) {
  const Table table(700);
  for (const auto sensor : {SpeedometerSensor::layshaft, SpeedometerSensor::rear_wheel})
    for (const Measure what : {Measure::thrust_change, Measure::speed_change, Measure::engine_speed,
                               Measure::walking_pace, Measure::chain_pull_change, Measure::cost, Measure::parts_changed,
                               Measure::speedometer_beyond_rule, Measure::wear_room}) {
      const Machine machine = whole_trail_bike(sensor);
      const RowValues all = values_of(machine, table.rows(), asked(what));
      for (const auto& [end, whole] :
           {std::pair(&RowColumn::low, &all.low), std::pair(&RowColumn::nominal, &all.nominal),
            std::pair(&RowColumn::high, &all.high)}) {
        std::vector<double> alone(700, -1.0);
        RowColumn column{asked(what)};
        (column.*end).begin = alone.data();
        ASSERT_TRUE(try_appraise_rows(machine, table.rows(), std::span(&column, 1)));
        for (std::size_t i = 0; i < alone.size(); ++i)
          ASSERT_TRUE(alone[i] == (*whole)[i] || (std::isnan(alone[i]) && std::isnan((*whole)[i])))
              << to_string(what) << ' ' << i;
      }
    }
}

// So many rows as are written past the cache: an odd number of them, in another unit, and to where two numbers do not
// stand side by side as the processor writes them.
TEST(AppraiseRows, ComeWholeHoweverTheyAreWritten) {
  const Machine machine = whole_trail_bike();
  constexpr std::size_t rows = layshaft::detail::rows_past_the_cache + 1001;
  const Table table(rows);
  std::vector<double> expected;
  for (std::size_t first = 0; first < rows; first += 10000) {
    const auto part =
        values_of(machine, table.rows(first, std::min<std::size_t>(10000, rows - first)), asked(Measure::walking_pace));
    expected.insert(expected.end(), part.nominal.begin(), part.nominal.end());
  }
  for (const double unit : {1.0, units::kmh.value()})
    for (const std::size_t offset : {0u, 1u}) {
      std::vector<double> column(rows + 3, -7.0);
      double* const begin = column.data() + 1 + offset;
      const RowColumn to{asked(Measure::walking_pace), unit, {}, {begin}, {}};
      ASSERT_TRUE(try_appraise_rows(machine, table.rows(), std::span(&to, 1)));
      for (std::size_t i = 0; i < rows; ++i)
        ASSERT_TRUE(begin[i] == expected[i] / unit || (std::isnan(begin[i]) && std::isnan(expected[i]))) << i;
      EXPECT_EQ(begin[-1], -7.0);
      EXPECT_EQ(begin[rows], -7.0);
    }
}

// What takes a solve beside what does not, and the same measure twice, in two units.
TEST(AppraiseRows, TellSeveralMeasuresAtOnceAsEachAlone) {
  const Machine machine = whole_trail_bike();
  const Table table(90);
  std::vector<double> top(90), links(90), thrust(90), top_kmh(90);
  const RowColumn columns[] = {{{Measure::top_speed}, 1.0, {}, {top.data()}, {}},
                               {{Measure::links}, 1.0, {}, {links.data()}, {}},
                               {{Measure::thrust_change}, 1.0, {}, {thrust.data()}, {}},
                               {{Measure::top_speed}, units::kmh.value(), {}, {top_kmh.data()}, {}}};
  ASSERT_TRUE(try_appraise_rows(machine, table.rows(), columns));
  const auto alone = [&](Measure what) { return values_of(machine, table.rows(), {what}).nominal; };
  const auto expect_same = [](const std::vector<double>& a, const std::vector<double>& b) {
    for (std::size_t i = 0; i < a.size(); ++i)
      EXPECT_TRUE(a[i] == b[i] || (std::isnan(a[i]) && std::isnan(b[i]))) << i << ": " << a[i] << ", " << b[i];
  };
  expect_same(top, alone(Measure::top_speed));
  expect_same(links, alone(Measure::links));
  expect_same(thrust, alone(Measure::thrust_change));
  for (double& speed : top) speed /= units::kmh.value();
  expect_same(top_kmh, top);
}

TEST(AppraiseRows, NameWhatIsWrongWithAPartAndTellTheOtherRows) {
  const Machine machine = whole_trail_bike();
  const Table table(300);
  const RowValues values = values_of(machine, table.rows(), asked(Measure::thrust_change));
  for (std::size_t i = 0; i < table.drives.size(); ++i) {
    const auto alone = try_appraise(machine, layshaft::Setup({.front = table.drives[i].front.teeth,
                                                              .rear = table.drives[i].rear.teeth,
                                                              .tyre = TyreSize("120/90-18 65M"),
                                                              .links = table.drives[i].links}));
    ASSERT_EQ(bool(values.errors.drives[i]), !alone);
    if (alone) continue;
    EXPECT_STREQ(values.errors.drives[i]->what(), alone.error().what());
  }
  EXPECT_STREQ(values.errors.tyres.back()->what(),
               "a tyre needs a marking, or a measured circumference in its place; neither was stated");
  Table weak(300);
  weak.drives[3].chain.made.tensile_strength = 1_N;
  const RowValues told = values_of(machine, weak.rows(), asked(Measure::thrust_change));
  EXPECT_STREQ(told.errors.drives[3]->what(), "chain: tensile_strength is 1 N; expected 100 N to 10000000 N");
  for (std::size_t i = 0; i < weak.drive.size(); ++i) {
    if (weak.drive[i] == 3) {
      EXPECT_TRUE(std::isnan(told.nominal[i])) << i;
    } else {
      EXPECT_EQ(std::isnan(told.nominal[i]), std::isnan(values.nominal[i])) << i;
    }
  }
  EXPECT_NE(std::find(weak.drive.begin(), weak.drive.end(), 3u), weak.drive.end());
}

TEST(AppraiseRows, RefuseWhatCannotBeAsked) {
  const Table table(3);
  const auto text = [&](const Machine& machine, Measured measured, const RowOptions& options = {}) {
    const RowColumn column{measured};
    const auto told = try_appraise_rows(machine, table.rows(), std::span(&column, 1), options);
    return told ? std::string() : std::string(told.error().what());
  };
  EXPECT_EQ(text(trail_bike(), {Measure::top_speed}), "\"top speed\" needs the machine's engine and road load");
  EXPECT_EQ(text(trail_bike(), {Measure::engine_speed}), "\"engine speed\" needs the road speed that it is asked at");
  EXPECT_EQ(text(trail_bike(), {Measure::links}, {.threads = 300}), "threads is 300; expected 0 to 256");
  EXPECT_EQ(text(trail_bike(), {Measure::links}, {.threads = -1}), "threads is -1; expected 0 to 256");
  EXPECT_EQ(text(trail_bike(), {Measure::links}, {.threads = 0}), "");
  EXPECT_EQ(text(trail_bike(), {Measure::links}), "");
  SetupRows rows = table.rows();
  rows.tyre = rows.tyre.first(2);
  EXPECT_FALSE(try_appraise_rows(trail_bike(), rows, {}));
}

TEST(AppraiseRows, OfNoRowsAreNone) {
  const Table table(0);
  EXPECT_TRUE(values_of(whole_trail_bike(), table.rows(), asked(Measure::thrust_change)).low.empty());
}

TEST(RowGroups, FindEqualRowsOnceInTheOrderTheyCome) {
  std::mt19937 random(3);
  std::vector<double> a, b;
  for (int i = 0; i < 5000; ++i) {
    a.push_back(static_cast<double>(random() % 40));
    b.push_back(static_cast<double>(random() % 30) + 0.5);
  }
  const std::span<const double> columns[] = {a, b};
  const layshaft::detail::RowGroups groups(columns, a.size());
  std::map<std::pair<double, double>, std::size_t> expected;
  std::vector<std::size_t> first;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto [at, fresh] = expected.try_emplace({a[i], b[i]}, first.size());
    if (fresh) first.push_back(i);
    ASSERT_EQ(groups.place[i], at->second);
  }
  EXPECT_EQ(groups.first, first);
  EXPECT_TRUE(layshaft::detail::RowGroups(columns, 0).first.empty());
}

// Of two rows whose hashes are the same number the bits decide. Each step of the hash can be undone, so that for any
// first number there is a second one that leads to a given hash.
TEST(RowGroups, TellRowsOfEqualHashesApart) {
  const auto mixed = [](std::uint64_t hash, std::uint64_t bits) {
    const std::uint64_t product = (std::rotl(hash, 23) ^ bits ^ (bits >> 32)) * 0x9E3779B97F4A7C15u;
    return product ^ (product >> 32);
  };
  const auto folded = [](std::uint64_t bits) { return bits ^ (bits >> 32); };  // twice is not at all
  const double first_a = 12.0, first_b = 47.0, second_a = 13.0;
  const std::uint64_t after_first = mixed(0, std::bit_cast<std::uint64_t>(first_a));
  const std::uint64_t after_second = mixed(0, std::bit_cast<std::uint64_t>(second_a));
  const std::uint64_t bits =
      folded(std::rotl(after_first, 23) ^ folded(std::bit_cast<std::uint64_t>(first_b)) ^ std::rotl(after_second, 23));
  ASSERT_EQ(mixed(after_second, bits), mixed(after_first, std::bit_cast<std::uint64_t>(first_b)));
  const std::vector<double> a{first_a, second_a, first_a, second_a},
      b{first_b, std::bit_cast<double>(bits), first_b, std::bit_cast<double>(bits)};
  const std::span<const double> columns[] = {a, b};
  const layshaft::detail::RowGroups groups(columns, a.size());
  EXPECT_EQ(groups.place, (std::vector<std::uint32_t>{0, 1, 0, 1}));
  EXPECT_EQ(groups.first, (std::vector<std::size_t>{0, 1}));
}

}  // namespace
