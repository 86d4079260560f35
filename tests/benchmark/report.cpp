#include "report.h"

#include <fstream>
#include <iostream>

#include <fmt/format.h>

namespace netmend::benchmarks {

std::optional<Arguments> argumentsFrom(int argc, char** argv) {
  Arguments arguments;
  for (int i = 1; i < argc; ++i) {
    const std::string_view text = argv[i];
    if (text == "--json") {
      arguments.json = true;
    } else if (text.starts_with("-")) {
      std::cerr << "unknown option " << text << " (known: --json)\n";
      return std::nullopt;
    } else {
      arguments.files.emplace_back(text);
    }
  }
  return arguments;
}

void Report::add(std::string_view name, double value, std::string_view unit, std::optional<double> most) {
  object_[std::string(name)] = value;
  // Written so that a figure that is not a number is not as wanted.
  const bool good = !most || value <= *most;
  asWanted_ = asWanted_ && good;
  std::string line = fmt::format("{:<28} {:>10.4g} {}", name, value, unit);
  if (most) line += fmt::format("  (wanted: at most {:g}){}", *most, good ? "" : "  NOT MET");
  std::cout << line << std::endl;
}

void Report::skip(std::string_view name, std::string_view why) {
  object_[std::string(name)] = nullptr;
  note(fmt::format("{} skipped: {}", name, why));
}

void Report::note(std::string_view text) {
  object_["notes"].push_back(std::string(text));
  std::cerr << text << std::endl;
}

int Report::finish() {
  object_["as_wanted"] = asWanted_;
  if (json_) std::cout << object_.dump() << std::endl;
  return asWanted_ ? 0 : 1;
}

double peakMegabytes() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.starts_with("VmHWM:")) return std::stod(line.substr(6)) * 1024e-6;
  return std::numeric_limits<double>::quiet_NaN();
}

} // namespace netmend::benchmarks
