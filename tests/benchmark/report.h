#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

namespace netmend::benchmarks {

/// What follows the benchmark's name on the command line.
struct Arguments {
  bool json = false;
  std::vector<std::string> files;
};
/// Nothing after telling of an unknown option.
[[nodiscard]] std::optional<Arguments> argumentsFrom(int argc, char** argv);

/// Figures with what is wanted of them. `add` prints a line for people; `finish` the object.
class Report {
public:
  explicit Report(const Arguments& arguments) : json_(arguments.json) {}
  /// `most`: the figure is wanted at or below it.
  void add(std::string_view name, double value, std::string_view unit = {}, std::optional<double> most = {});
  /// A figure that could not be had, and why: null in the object.
  void skip(std::string_view name, std::string_view why);
  void note(std::string_view text);
  /// Anything else that goes into the object only.
  nlohmann::json& object() { return object_; }
  /// Gives the exit code: 0 when all figures are as wanted, 1 when one is not.
  [[nodiscard]] int finish();

private:
  bool json_;
  bool asWanted_ = true;
  nlohmann::json object_ = nlohmann::json::object();
};

/// The middle one, the upper of two; of at least one value.
[[nodiscard]] inline double medianOf(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// Milliseconds that one call takes.
template <class Work> [[nodiscard]] double millisecondsOf(Work&& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

/// The least of several runs: what the work costs when nothing else gets in its way.
template <class Work> [[nodiscard]] double leastMillisecondsOf(int runs, Work&& work) {
  double least = std::numeric_limits<double>::infinity();
  for (int run = 0; run < runs; ++run)
    least = std::min(least, millisecondsOf(work));
  return least;
}

/// Keeps a result from being optimised away.
template <class T> void keep(const T& value) {
  asm volatile("" : : "r,m"(&value) : "memory");
}

/// Most memory that this process has had resident since it started, in MB (10^6 bytes); Linux only.
[[nodiscard]] double peakMegabytes();

} // namespace netmend::benchmarks
