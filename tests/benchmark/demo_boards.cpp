#include "demo_boards.h"

#include <cstdint>
#include <filesystem>
#include <iostream>
#include <system_error>

namespace netmend::benchmarks {

// It is the one with most pads, and with most tracks and vias, too.
std::optional<std::string> largestDemoBoard() {
  namespace fs = std::filesystem;
  std::optional<std::string> largest;
  std::uintmax_t size = 0;
  std::error_code error;
  for (fs::recursive_directory_iterator it("/usr/share/kicad/demos", error), end; !error && it != end;
       it.increment(error)) {
    if (it->path().extension() != ".kicad_pcb" || !it->is_regular_file() || it->file_size() <= size) continue;
    size = it->file_size();
    largest = it->path().string();
  }
  return largest;
}

int noBoard() {
  std::cerr << "no board: name a FILE, or install the package kicad-demos\n";
  return 2;
}

} // namespace netmend::benchmarks
