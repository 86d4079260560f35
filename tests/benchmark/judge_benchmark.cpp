// Ten thousand verdicts: a walk over 10 connectors of 1000 pins against expected values from eight good
// boards. Peers in the same run: one quantile of Student's t a reading, and a bare comparison with an
// interval.
#include <iostream>
#include <map>
#include <random>

#include <benchmark/benchmark.h>
#include <boost/math/distributions/students_t.hpp>
#include <fmt/format.h>

#include "netmend/base/data_folder.h"
#include "netmend/probing/verdict.h"
#include "report.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr std::size_t points = 10'000;
constexpr std::size_t pinsOfPart = 1000;
constexpr int goodBoards = 8;

Board connectors() {
  Board board;
  board.info.uuid = "9b0f0d51-0000-4000-8000-000000000001";
  for (std::size_t i = 0; i < points; ++i) {
    if (i % pinsOfPart == 0) {
      Part part;
      part.id = board.newId<PartId>();
      part.reference = fmt::format("J{}", i / pinsOfPart + 1);
      part.kind = fromFile(PartKind::connector);
      board.parts.put(part);
    }
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = board.parts[board.parts.size() - 1].id;
    pin.name = std::to_string(i % pinsOfPart + 1);
    board.pins.put(pin);
  }
  return board;
}

/// Not where good boards read OL: there an open is none.
bool hasFault(std::size_t point) {
  return point % 97 == 5 && point % 20 != 0;
}

/// One specimen: each pin near its own value, one in twenty OL on every board, and some faults on the faulty
/// one.
Walk specimen(const Board& board, const std::vector<double>& values, Specimen kind, const std::string& meter,
              unsigned seed) {
  std::mt19937 random(seed);
  std::normal_distribution<double> spread(0.0, 0.004);
  Walk walk;
  walk.boardUuid = board.info.uuid;
  walk.specimen = kind;
  walk.meter = meter;
  for (std::size_t i = 0; i < points; ++i) {
    Reading reading;
    const auto& pin = board.pins[i];
    reading.point = {pin.id, pinLabel(board, pin.id)};
    reading.other.label = "GND";
    reading.settling = Settling::settled;
    reading.meter = meter;
    if (i % 20 != 0) reading.value = values[i] + spread(random);
    if (kind == Specimen::faulty && hasFault(i))
      reading.value = i % 2 == 0 ? std::nullopt : std::optional(0.002);
    walk.points.push_back(reading.point);
    walk.readings.push_back(std::move(reading));
  }
  return walk;
}

/// Least processor time of each benchmark, in milliseconds: one thread, and other work on the machine does
/// not count.
class LeastTimes : public benchmark::BenchmarkReporter {
public:
  bool ReportContext(const Context&) override { return true; }
  void ReportRuns(const std::vector<Run>& runs) override {
    for (const auto& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      const auto name = run.run_name.function_name;
      const double ms = run.GetAdjustedCPUTime();
      const auto [it, isNew] = times.emplace(name, ms);
      if (!isNew) it->second = std::min(it->second, ms);
    }
  }
  std::map<std::string, double> times;
};

template <class Work> void measure(const char* name, Work work) {
  benchmark::RegisterBenchmark(name,
                               [work](benchmark::State& state) {
                                 for (auto _ : state)
                                   work();
                               })
      ->Unit(benchmark::kMillisecond)
      ->Repetitions(5)
      ->MinTime(0.1);
}

} // namespace

int main(int argc, char** argv) {
  const auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  const auto data = loadProbingData(dataFolder());
  if (!data) {
    std::cerr << data.error().text() << '\n';
    return 3;
  }
  const auto board = connectors();
  const Lookup lookup(board);
  std::vector<double> values(points);
  std::mt19937 random(1);
  for (auto& value : values)
    value = std::uniform_real_distribution<double>(0.3, 0.8)(random);
  const auto meter = data->meters.front().id;
  std::vector<Walk> good;
  for (unsigned i = 0; i < goodBoards; ++i)
    good.push_back(specimen(board, values, Specimen::good, meter, 10 + i));
  const auto faulty = specimen(board, values, Specimen::faulty, meter, 99);
  ExpectedOptions options;
  options.variants = data->rules.variants;
  const auto makeExpected = [&] {
    return expectedFromWalks(good, &lookup, data->kinds, data->meters, options);
  };
  const auto expected = makeExpected();

  measure("judge", [&] { keep(judgeWalk(faulty, expected, &lookup, *data)); });
  measure("expected", [&] { keep(makeExpected()); });
  measure("quantiles", [&] {
    double sum = 0.0;
    for (std::size_t i = 0; i < points; ++i) {
      const boost::math::students_t distribution(7.0 + static_cast<double>(i % 5));
      sum += boost::math::quantile(distribution, 0.9 + 1e-6 * static_cast<double>(i));
    }
    keep(sum);
  });
  measure("interval", [&] {
    std::size_t outside = 0;
    for (std::size_t i = 0; i < points; ++i) {
      const auto& value = faulty.readings[i].value;
      outside += !value || *value < values[i] - 0.02 || *value > values[i] + 0.02 ? 1U : 0U;
    }
    keep(outside);
  });
  int one = 1;
  benchmark::Initialize(&one, argv);
  LeastTimes reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  const auto& times = reporter.times;

  const auto judged = judgeWalk(faulty, expected, &lookup, *data);
  Report report(*arguments);
  report.object()["verdicts"] = judged.verdicts.size();
  report.object()["flags"] = judged.flags();
  std::size_t faults = 0;
  for (std::size_t i = 0; i < points; ++i)
    faults += hasFault(i) ? 1U : 0U;
  if (judged.verdicts.size() != points || judged.flags() < faults || judged.flags() > faults + 5) {
    std::cerr << "the walk was not judged: " << judged.flags() << " flags for " << faults << " faults\n";
    return 3;
  }
  report.add("judge_10000_ms", times.at("judge"), "ms", 50.0);
  report.add("expected_10000_ms", times.at("expected"), "ms (eight boards)");
  report.add("judge_vs_quantiles", times.at("judge") / times.at("quantiles"),
             "times one t quantile a reading");
  report.add("judge_vs_interval", times.at("judge") / times.at("interval"), "times a bare comparison");
  return report.finish();
}
