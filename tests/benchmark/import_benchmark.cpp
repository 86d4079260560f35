// Reading a board and building its graph, against the CAD program's own library on the same file in the same
// run.
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <sstream>

#include <fmt/format.h>
#include <sys/wait.h>

#include "demo_boards.h"
#include "netmend/board/exchange/import.h"
#include "netmend/netgraph/board_graph.h"
#include "report.h"
#include "support/tiled_board.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr int rounds = 3;
constexpr int passes = 3;

struct Times {
  double read = std::numeric_limits<double>::infinity();
  double graph = std::numeric_limits<double>::infinity(); ///< or connectivity, on the other side
  double peak = 0.0;                                      ///< MB
  void take(double readMs, double graphMs) {
    read = std::min(read, readMs);
    graph = std::min(graph, graphMs);
  }
};

std::string quoted(const std::string& text) {
  std::string result = "'";
  for (const char c : text)
    result += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return result + "'";
}

/// Runs a program that prints lines `ms A B [PEAK]` and gives its exit code.
int runAndTake(const std::string& command, Times& times) {
  FILE* output = popen(command.c_str(), "r");
  if (output == nullptr) return -1;
  std::array<char, 512> line{};
  while (std::fgets(line.data(), line.size(), output) != nullptr) {
    std::istringstream words(line.data());
    std::string head;
    double a = 0.0;
    double b = 0.0;
    double peak = 0.0;
    if (!(words >> head >> a >> b) || head != "ms") continue;
    times.take(a, b);
    if (words >> peak) times.peak = std::max(times.peak, peak);
  }
  const int status = pclose(output);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// In a process of its own, so that its peak memory is that of one board: prints `ms READ GRAPH [PEAK]`.
int onePassAfterTheOther(const std::string& file) {
  for (int pass = 0; pass < passes; ++pass) {
    std::optional<Imported> imported;
    const auto read = millisecondsOf([&] {
      if (auto result = importBoard(std::filesystem::path(file)))
        imported = std::move(*result);
      else
        std::cerr << result.error().text() << '\n';
    });
    if (!imported) return 3;
    std::optional<BoardGraph> graph;
    const auto built = millisecondsOf([&] { graph = buildBoardGraph(imported->board); });
    keep(*graph);
    std::cout << "ms " << read << ' ' << built;
    if (pass == 0) std::cout << ' ' << peakMegabytes();
    std::cout << std::endl;
  }
  return 0;
}

/// Of this process; work on one thread.
template <class Work> double cpuMillisecondsOf(Work&& work) {
  const auto start = std::clock();
  work();
  return 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// Worst of (processor time for k boards / time for one) / (n log n for k boards / for one), over k = 2, 4,
/// 8, 16.
void reportGrowth(const Board& board, Report& report) {
  const auto objects =
      static_cast<double>(board.pads.size() + board.tracks.size() + board.vias.size() + board.areas.size());
  std::vector<int> counts{1, 2, 4, 8, 16};
  std::vector<Board> boards;
  for (const int k : counts)
    boards.push_back(test::tiled(board, static_cast<std::size_t>(k)));
  std::vector<double> least(counts.size(), std::numeric_limits<double>::infinity());
  // All sizes in each round, so that a slow moment of the machine does not hit one size alone.
  for (int round = 0; round < 4; ++round)
    for (std::size_t i = 0; i < counts.size(); ++i)
      least[i] = std::min(least[i], cpuMillisecondsOf([&] { keep(buildBoardGraph(boards[i])); }));
  double worst = 0.0;
  auto& rows = report.object()["growth"];
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double k = counts[i];
    const double wanted = k * std::log(k * objects) / std::log(objects);
    const double ratio = least[i] / least[0] / wanted;
    if (i > 0) worst = std::max(worst, ratio);
    rows.push_back({{"copies", counts[i]}, {"graph_ms", least[i]}, {"vs_nlogn", ratio}});
    std::cout << fmt::format("  {:>2} copies: graph {:8.1f} ms, {:.2f} of n log n\n", counts[i], least[i],
                             ratio);
  }
  // A tenth over for the caches that a larger board outgrows and for the clock.
  report.add("growth_vs_nlogn", worst, "", 1.1);
}

struct Compared {
  std::string file;
  bool old = false; ///< one that was made from a demo board, as version 4 had it
  Times ours;
  std::optional<Times> cad;
};

/// The demo boards that have fills, as files of version 4; none without the CAD program's Python library.
std::vector<std::string> oldBoards() {
  const auto folder = std::filesystem::temp_directory_path() / "netmend-benchmark-version-4";
  std::string command =
      fmt::format("/usr/bin/python3 {}/old_boards.py {}", NETMEND_BENCHMARK_DIR, quoted(folder.string()));
  for (const auto& board : demoBoards())
    command += " " + quoted(board);
  std::vector<std::string> files;
  FILE* output = popen((command + " 2>/dev/null").c_str(), "r");
  if (output == nullptr) return files;
  std::array<char, 4096> line{};
  while (std::fgets(line.data(), line.size(), output) != nullptr)
    files.emplace_back(line.data(), std::string_view(line.data()).find_last_not_of('\n') + 1);
  if (pclose(output) != 0) files.clear();
  return files;
}

std::optional<Compared> compare(const std::string& self, const std::string& file, bool old) {
  Compared compared{file, old, {}, Times{}};
  const auto cadCommand = fmt::format("/usr/bin/python3 {}/cad_times.py {} {} 2>/dev/null",
                                      NETMEND_BENCHMARK_DIR, passes, quoted(file));
  for (int round = 0; round < rounds; ++round) {
    if (runAndTake(fmt::format("{} --one-board {}", quoted(self), quoted(file)), compared.ours) != 0)
      return std::nullopt;
    if (compared.cad && runAndTake(cadCommand, *compared.cad) != 0) compared.cad.reset();
  }
  return compared;
}

void reportBoard(const Compared& compared, Report& report) {
  const auto& [file, old, ours, cad] = compared;
  auto& row = report.object()["boards"].emplace_back();
  row = {{"file", file}, {"read_ms", ours.read}, {"graph_ms", ours.graph}, {"peak_mb", ours.peak}};
  std::cout << fmt::format("{}\n  ours: read {:.1f} ms, graph {:.1f} ms, peak {:.0f} MB\n", file, ours.read,
                           ours.graph, ours.peak);
  if (!cad) return;
  row["cad_load_ms"] = cad->read;
  row["cad_connectivity_ms"] = cad->graph;
  std::cout << fmt::format("  CAD program: load {:.1f} ms, connectivity {:.1f} ms\n", cad->read, cad->graph);
}

void reportWorst(const std::vector<Compared>& all, Report& report) {
  double read = 0.0;
  double both = 0.0;
  double worst = 0.0; // with boards of version 4
  double peak = 0.0;
  bool everywhere = true;
  for (const auto& [file, old, ours, cad] : all) {
    peak = std::max(peak, ours.peak);
    everywhere = everywhere && cad;
    if (!cad) continue;
    const double ratio = (ours.read + ours.graph) / (cad->read + cad->graph);
    worst = std::max(worst, ratio);
    if (old) continue;
    read = std::max(read, ours.read / cad->read);
    both = std::max(both, ratio);
  }
  if (everywhere) {
    report.add("read_vs_cad", read, "", 0.25);
    report.add("read_and_graph_vs_cad", both, "", 0.25);
    report.add("worst_read_and_graph_vs_cad", worst, "", 0.5);
  } else {
    report.skip("read_vs_cad", "the CAD program's Python library is not installed or cannot read the file");
    report.skip("read_and_graph_vs_cad", "as above");
    report.skip("worst_read_and_graph_vs_cad", "as above");
  }
  report.add("peak_mb", peak, "MB", 200.0);
}

} // namespace

int main(int argc, char** argv) {
  if (argc == 3 && std::string_view(argv[1]) == "--one-board") return onePassAfterTheOther(argv[2]);
  auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  if (arguments->files.empty()) {
    const auto largest = largestDemoBoard();
    if (!largest) return noBoard();
    arguments->files.push_back(*largest);
  }
  Report report(*arguments);
  const auto old = oldBoards();
  if (old.empty()) report.note("no boards of version 4: the CAD program's Python library is not installed");
  const auto self = std::filesystem::read_symlink("/proc/self/exe").string();
  std::vector<Compared> all;
  const auto take = [&](const std::string& file, bool isOld) {
    auto compared = compare(self, file, isOld);
    if (!compared) return false; // told by the process that read it
    reportBoard(*compared, report);
    all.push_back(std::move(*compared));
    return true;
  };
  for (const auto& file : arguments->files)
    if (!take(file, false)) return 3;
  for (const auto& file : old)
    if (!take(file, true)) return 3;
  reportWorst(all, report);
  const auto imported = importBoard(std::filesystem::path(arguments->files.front()));
  if (imported) reportGrowth(imported->board, report);
  return report.finish();
}
