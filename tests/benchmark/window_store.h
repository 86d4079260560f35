#pragma once

#include <filesystem>
#include <string>

#include "netmend/jobbook/job_book.h"

namespace netmend::benchmarks {

/// The demo's device with its eight good walks in a book of its own, the bad board walked and probed as
/// demo/run does it. Throws std::runtime_error when the command line refuses a step.
struct DemoStore {
  std::filesystem::path folder;
  std::filesystem::path book;
  JobId job;
};
[[nodiscard]] DemoStore makeDemoStore(const std::filesystem::path& folder);

} // namespace netmend::benchmarks
