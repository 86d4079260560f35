#pragma once

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>
#include <unistd.h>

#include "netmend/probing/verdict.h"

namespace netmend::test {

/// The data that comes with the program.
inline const ProbingData& data() {
  static const ProbingData loaded = [] {
    auto read = loadProbingData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
    if (!read) throw std::runtime_error(read.error().text());
    return *read;
  }();
  return loaded;
}

/// A reading at J1.`pin` against ground with the bench meter.
inline Reading at(int pin, std::optional<double> value, ReadingMode mode = ReadingMode::diode) {
  Reading reading;
  reading.point.label = "J1." + std::to_string(pin);
  reading.value = value;
  reading.mode = mode;
  reading.meter = "bench-200000";
  return reading;
}

inline Walk walkOf(std::vector<Reading> readings, Specimen specimen) {
  Walk walk;
  walk.specimen = specimen;
  walk.readings = std::move(readings);
  return walk;
}

/// Good boards that read these values at one point J1.1.
inline std::vector<Walk> boardsReading(const std::vector<std::optional<double>>& values,
                                       ReadingMode mode = ReadingMode::diode) {
  std::vector<Walk> walks;
  for (const auto& value : values)
    walks.push_back(walkOf({at(1, value, mode)}, Specimen::good));
  return walks;
}

inline ExpectedTable expectedFrom(const std::vector<Walk>& walks, const Lookup* lookup = nullptr) {
  return expectedFromWalks(walks, lookup, data().kinds, data().meters, {data().rules.variants, {}});
}

/// The verdict on one reading at J1.1 as one of `points` points.
inline Verdict verdictOn(const std::vector<Walk>& good, const Reading& reading, double points = 40.0) {
  const auto table = expectedFrom(good);
  return judgeReading(reading, table.find(reading), findMeter(data().meters, reading.meter), data().rules,
                      data().rules.falseFlagsPerGoodWalk / points);
}

/// A file that is gone after the test.
class TemporaryFile {
public:
  TemporaryFile(const std::string& name, std::string_view content)
      : path_(std::filesystem::temp_directory_path() / (std::to_string(::getpid()) + "-" + name)) {
    std::ofstream(path_, std::ios::binary) << content;
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  ~TemporaryFile() {
    std::error_code ec;
    std::filesystem::remove(path_, ec);
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
  std::filesystem::path path_;
};

} // namespace netmend::test
