// Whole jobs by an independent simulator: is the program right about how sure it is?
// docs/methods/isolation_benchmark.md
#include <algorithm>
#include <atomic>
#include <charconv>
#include <chrono>
#include <filesystem>
#include <iostream>
#include <thread>

#include <fmt/format.h>

#include "demo_boards.h"
#include "isolation_story.h"
#include "netmend/base/data_folder.h"
#include "netmend/board/exchange/import.h"
#include "report.h"
#include "simulation/figures.h"
#include "simulation/technician.h"
#include "simulation/worlds.h"

using namespace netmend;
using namespace netmend::benchmarks;
using namespace netmend::simulation;

namespace {

struct Asked {
  Arguments arguments;
  std::uint64_t jobs = 3000;
  std::uint64_t seed = 1;
  std::uint64_t seconds = 1700; ///< after which no further job is begun
  bool list = false;
  std::optional<std::uint64_t> show;
};

std::optional<Asked> askedFrom(int argc, char** argv) {
  Asked out;
  for (int i = 1; i < argc; ++i) {
    const std::string_view text = argv[i];
    const auto number = [&](std::uint64_t& to) {
      const std::string_view value = i + 1 < argc ? argv[++i] : "";
      const auto read = std::from_chars(value.data(), value.data() + value.size(), to);
      return !value.empty() && read.ec == std::errc() && read.ptr == value.data() + value.size();
    };
    std::uint64_t shown = 0;
    bool good = true;
    if (text == "--json")
      out.arguments.json = true;
    else if (text == "--list")
      out.list = true;
    else if (text == "--jobs")
      good = number(out.jobs);
    else if (text == "--seed")
      good = number(out.seed);
    else if (text == "--seconds")
      good = number(out.seconds);
    else if (text == "--show") {
      good = number(shown);
      out.show = shown;
    } else if (text.starts_with("-"))
      good = false;
    else
      out.arguments.files.emplace_back(text);
    if (!good) {
      std::cerr << "usage: isolation [--json] [--jobs N] [--seed N] [--seconds N] [--list] [--show JOB] "
                   "[BOARD …]\n";
      return std::nullopt;
    }
  }
  return out;
}

std::vector<SimBoard> loadBoards(const std::vector<std::string>& files) {
  std::vector<SimBoard> out;
  for (const std::string& file : files) {
    auto imported = importBoard(file);
    if (!imported) {
      std::cerr << file << ": could not be read\n";
      continue;
    }
    out.push_back(simBoard(std::move(imported->board), std::filesystem::path(file).stem().string()));
  }
  return out;
}

/// Some worlds, as many as can be begun in that time.
std::vector<Outcome> playAll(const Shop& shop, std::uint64_t first, std::uint64_t worlds, double seconds) {
  const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double>(seconds);
  std::vector<Outcome> out(worlds * grades.size());
  std::atomic<std::uint64_t> next{0};
  const auto work = [&] {
    for (std::uint64_t world = next++; world < worlds; world = next++) {
      if (std::chrono::steady_clock::now() > until) break;
      const auto played = playWorld(shop, first + world);
      std::copy(played.begin(), played.end(),
                out.begin() + static_cast<std::ptrdiff_t>(world * grades.size()));
      if ((world + 1) % 50 == 0) std::cerr << fmt::format("{} of {} worlds\n", world + 1, worlds);
    }
  };
  std::vector<std::thread> threads;
  for (unsigned i = 0; i < std::max(1U, std::thread::hardware_concurrency()); ++i)
    threads.emplace_back(work);
  for (std::thread& thread : threads)
    thread.join();
  return out;
}

} // namespace

int main(int argc, char** argv) {
  const auto asked = askedFrom(argc, argv);
  if (!asked) return 2;
  const auto files = asked->arguments.files.empty() ? demoBoards() : asked->arguments.files;
  const auto folder = std::filesystem::path(NETMEND_BENCHMARK_DIR) / "../../data";
  const auto data = loadRepairData(folder);
  if (!data) {
    std::cerr << "the data folder could not be read\n";
    return 2;
  }
  auto boards = loadBoards(files);
  if (boards.empty()) return noBoard();
  const MeterProfile& meter = *findMeter(data->probing.meters, "handheld-4000");
  const Worlds worlds(std::move(boards), faultShares(folder / "fault_priors.json"), meter, asked->seed);
  const Shop shop{worlds, *data, meter, *findMeter(data->probing.meters, "bench-200000")};
  if (asked->show) {
    std::cout << storyOf(shop, *asked->show);
    return 0;
  }
  Report report(asked->arguments);
  const auto start = std::chrono::steady_clock::now();
  const std::uint64_t count = (asked->jobs + grades.size() - 1) / grades.size();
  const auto time = static_cast<double>(asked->seconds);
  const auto byShares = playAll(shop, 0, count, 0.8 * time);
  const auto strange = playAll(shop, outsideFrom, count / 10, 0.07 * time);
  const auto evenly = playAll(shop, evenlyFrom, count / 5, 0.13 * time);
  if (asked->list)
    for (const auto* outcomes : {&byShares, &strange, &evenly})
      listJobs(*outcomes);
  addFigures(report, byShares, strange, evenly);
  const LargeLine large = largeLine(*data, meter);
  report.add("large_line_edges", static_cast<double>(large.edges));
  report.add("first_ms", large.oneMoreMs, "ms", 100.0);
  report.add("settled_ms", large.allMs, "ms", 2000.0);
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  report.add("jobs", static_cast<double>(std::count_if(byShares.begin(), byShares.end(),
                                                       [](const Outcome& one) { return one.played; })));
  report.add("seconds", seconds, "s", 1800.0);
  return report.finish();
}
