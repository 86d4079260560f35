#include "netmend/base/data_folder.h"

#include <cstdlib>

namespace netmend {

namespace fs = std::filesystem;

fs::path dataFolder() {
  // NOLINTNEXTLINE(concurrency-mt-unsafe): nothing in the program changes the environment
  if (const char* named = std::getenv("NETMEND_DATA"); named != nullptr && *named != '\0') return named;
  std::error_code ec;
  const fs::path program = fs::read_symlink("/proc/self/exe", ec);
  if (!ec) {
    fs::path installed = program.parent_path().parent_path() / "share" / "netmend" / "data";
    if (fs::is_directory(installed, ec)) return installed;
  }
  return NETMEND_DATA_IN_SOURCE_TREE;
}

fs::path dataFile(std::string_view name) {
  return dataFolder() / name;
}

} // namespace netmend
