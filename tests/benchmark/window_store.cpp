#include "window_store.h"

#include <sstream>
#include <stdexcept>
#include <vector>

#include "cli/cli.h"

namespace netmend::benchmarks {

namespace {

std::string device(const std::string& file) {
  return (std::filesystem::path(NETMEND_BENCHMARK_DIR) / "../../demo/device" / file).lexically_normal();
}

void run(std::vector<std::string> arguments) {
  std::istringstream in;
  std::ostringstream out, err;
  const ExitCode code = runCli(arguments, {in, out, err});
  if (code != ExitCode::good && code != ExitCode::finding) throw std::runtime_error(err.str());
}

} // namespace

DemoStore makeDemoStore(const std::filesystem::path& folder) {
  DemoStore store{folder, folder / "jobs.netmend-book", {}};
  const std::string book = store.book.string();
  const std::string board = device("tide-logger.netmend-board.json");
  std::vector<std::string> keep{"walk", "keep", "--book", book};
  for (int i = 1; i <= 8; ++i)
    keep.push_back(device("good-" + std::to_string(i) + ".netmend-walk.json"));
  run(keep);
  run({"job", "new", "--book", book, "--customer", "North pier, harbour office", "--device", "Tide logger",
       "--board", board, "--symptom", "Third column of the keypad is dead"});
  auto opened = JobBook::open(store.book, BookUse::make);
  if (!opened) throw std::runtime_error(opened.error().text());
  const auto jobs = opened->jobs();
  if (!jobs || jobs->size() != 1) throw std::runtime_error("the demo's job is not in its book");
  store.job = jobs->front().id;
  const std::string number = jobs->front().number;
  run({"job", "add", "--book", book, "--job", number, "--walk", device("faulty.netmend-walk.json")});
  for (const char* reading : {"C28.1 0.649", "pad of J4.9 OL"})
    run({"job", "add", "--book", book, "--job", number, "--purpose", "check", "--reading", reading});
  return store;
}

} // namespace netmend::benchmarks
