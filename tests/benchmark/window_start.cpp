#include "window_start.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "bench/stations/station.h"
#include "netmend/jobbook/job_book.h"

namespace netmend::benchmarks {

namespace {

constexpr int runs = 7;
constexpr double mostOfEmpty = 3.0;

std::vector<char*> pointersTo(std::vector<std::string>& texts) {
  std::vector<char*> out;
  for (std::string& text : texts)
    out.push_back(text.data());
  out.push_back(nullptr);
  return out;
}

struct Start {
  double ms = 0;          ///< until the program's first picture
  double processorMs = 0; ///< of all its threads: what other programs do to it left out
};

Start firstFrameOf(std::vector<std::string> arguments, const std::filesystem::path& settings) {
  std::vector<std::string> environment{"LD_PRELOAD=" FIRST_FRAME, "QT_QPA_PLATFORM=offscreen",
                                       "XDG_CONFIG_HOME=" + settings.string()};
  for (char** each = environ; *each != nullptr; ++each) {
    const std::string_view name = std::string_view(*each).substr(0, std::string_view(*each).find('='));
    if (name != "LD_PRELOAD" && name != "QT_QPA_PLATFORM" && name != "XDG_CONFIG_HOME")
      environment.emplace_back(*each);
  }
  int ends[2];
  if (::pipe(ends) != 0) throw std::runtime_error("no pipe");
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
  posix_spawn_file_actions_addclose(&actions, ends[0]);
  posix_spawn_file_actions_addclose(&actions, ends[1]);
  pid_t process = -1;
  char told = 0;
  bool shown = false;
  const double ms = millisecondsOf([&] {
    const int failed = ::posix_spawn(&process, arguments.front().c_str(), &actions, nullptr,
                                     pointersTo(arguments).data(), pointersTo(environment).data());
    ::close(ends[1]);
    shown = failed == 0 && ::read(ends[0], &told, 1) == 1;
  });
  ::close(ends[0]);
  posix_spawn_file_actions_destroy(&actions);
  rusage used{};
  if (process > 0) ::wait4(process, nullptr, 0, &used);
  if (!shown) throw std::runtime_error(arguments.front() + " shows no window");
  const auto milliseconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
  };
  return {ms, milliseconds(used.ru_utime) + milliseconds(used.ru_stime)};
}

} // namespace

void measureStart(const DemoStore& store, Report& report) {
  const std::filesystem::path settings = store.folder / "settings";
  const auto leaveAt = [&](Station station) {
    auto book = JobBook::open(store.book, BookUse::change);
    if (!book || !book->leaveOpen({store.job, {}, static_cast<int>(station)}))
      throw std::runtime_error("the demo's job cannot be left open");
  };
  const std::vector<std::string> bench{NETMEND_BENCH, "--store", store.folder.string(), "--language", "en"};
  std::vector<double> empty, emptyProcessor;
  std::map<Station, std::vector<double>> ours, oursProcessor;
  for (int run = 0; run <= runs; ++run) {
    const Start alone = firstFrameOf({EMPTY_WINDOW}, settings);
    if (run > 0) { // the first only brings the files into memory
      empty.push_back(alone.ms);
      emptyProcessor.push_back(alone.processorMs);
    }
    for (const Station station : stations) {
      leaveAt(station);
      const Start start = firstFrameOf(bench, settings);
      if (run == 0) continue;
      ours[station].push_back(start.ms);
      oursProcessor[station].push_back(start.processorMs);
    }
  }
  double slowest = 0, slowestProcessor = 0;
  for (const Station station : stations) {
    const double median = medianOf(ours[station]);
    slowest = std::max(slowest, median);
    slowestProcessor = std::max(slowestProcessor, medianOf(oursProcessor[station]));
    report.note(stationName(station).toStdString() + ": first picture after " +
                std::to_string(static_cast<int>(median)) + " ms");
  }
  report.add("start_ms", slowest, "ms to the first picture, the demo's job reopened (the slowest station)");
  report.add("empty_window_ms", medianOf(empty), "ms, nothing but a QMainWindow");
  report.add("start_processor_ms", slowestProcessor, "ms of processor time");
  report.add("empty_window_processor_ms", medianOf(emptyProcessor), "ms of processor time");
  report.add("start_vs_empty_processor", slowestProcessor / medianOf(emptyProcessor), "of processor time");
  report.add("start_vs_empty_window", slowest / medianOf(empty), "", mostOfEmpty);
}

} // namespace netmend::benchmarks
