#include "demo_boards.h"

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <system_error>

namespace netmend::benchmarks {

namespace fs = std::filesystem;

std::vector<std::string> demoBoards() {
  std::vector<std::string> boards;
  std::error_code error;
  for (fs::recursive_directory_iterator it("/usr/share/kicad/demos", error), end; !error && it != end;
       it.increment(error))
    if (it->path().extension() == ".kicad_pcb" && it->is_regular_file())
      boards.push_back(it->path().string());
  std::sort(boards.begin(), boards.end());
  return boards;
}

// It is the one with most pads, and with most tracks and vias, too.
std::optional<std::string> largestDemoBoard() {
  const auto boards = demoBoards();
  const auto largest = std::max_element(boards.begin(), boards.end(), [](const auto& a, const auto& b) {
    return fs::file_size(a) < fs::file_size(b);
  });
  return largest == boards.end() ? std::nullopt : std::optional(*largest);
}

int noBoard() {
  std::cerr << "no board: name a FILE, or install the package kicad-demos\n";
  return 2;
}

} // namespace netmend::benchmarks
