// SPDX-License-Identifier: MIT
#pragma once

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

/// @file
/// Google Benchmark, read as ratios. The contestants of a subject run in rounds, in random order, and each is compared
/// with the first of its subject, by the best of its rounds and by their median. No times are printed: they would be
/// true of one machine only.
namespace ratios {

struct Contestant {
  std::string subject;
  std::string name;
  std::vector<double> rounds;  ///< time of one call, in any unit

  [[nodiscard]] std::string title() const { return subject + ": " + name; }
};
/// In the order they were added.
inline std::vector<Contestant> contestants;

/// Adds a contestant. `work` does the whole work once and returns something that depends on all of it.
template <class Work>
void add(const char* subject, const char* name, Work work) {
  contestants.push_back({subject, name, {}});
  const auto run = [work](benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(work());
  };
  benchmark::RegisterBenchmark(contestants.back().title().c_str(), run)->MinTime(0.02);
}

/// Ends the program where two contestants do not give the same value, to within a relative difference.
inline void must_agree(const char* what, double ours, double theirs, double relative) {
  if (std::fabs(ours - theirs) <= relative * std::fabs(ours)) return;
  std::fprintf(stderr, "%s: %.17g by layshaft, %.17g by the rival\n", what, ours, theirs);
  std::exit(1);
}

/// Gathers the rounds and prints the table at the end.
class Table : public benchmark::BenchmarkReporter {
 public:
  bool ReportContext(const Context&) override { return true; }
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      for (Contestant& contestant : contestants)
        if (contestant.title() == run.run_name.function_name) contestant.rounds.push_back(run.GetAdjustedCPUTime());
    }
  }
  void Finalize() override {
    const Contestant* first = nullptr;
    for (Contestant& contestant : contestants) {
      if (contestant.rounds.empty()) continue;  // left out by --benchmark_filter
      std::sort(contestant.rounds.begin(), contestant.rounds.end());
      const std::size_t middle = contestant.rounds.size() / 2;
      if (first == nullptr || first->subject != contestant.subject) {
        first = &contestant;
        std::printf("\n%s\n  %-64s%8s%8s\n", contestant.subject.c_str(),
                    "time over that of the first, by rounds:", "best", "median");
      }
      std::printf("  %-64s%8.2f%8.2f\n", contestant.name.c_str(), contestant.rounds[0] / first->rounds[0],
                  contestant.rounds[middle] / first->rounds[middle]);
    }
  }
};

/// Runs what was added; arguments are Google Benchmark's own.
inline int run(int count, char** arguments) {
  std::vector<std::string> texts(arguments, arguments + count);
  texts.insert(texts.begin() + 1, {"--benchmark_enable_random_interleaving=true", "--benchmark_repetitions=15"});
  std::vector<char*> pointers;
  for (std::string& text : texts) pointers.push_back(text.data());
  int size = static_cast<int>(pointers.size());
  pointers.push_back(nullptr);
  benchmark::Initialize(&size, pointers.data());
  if (benchmark::ReportUnrecognizedArguments(size, pointers.data())) return 1;
  Table table;
  benchmark::RunSpecifiedBenchmarks(&table);
  benchmark::Shutdown();
  return 0;
}

}  // namespace ratios
