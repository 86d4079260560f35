#pragma once

#include <filesystem>
#include <string>

#include <unistd.h>

namespace netmend::test {

/// A folder that is gone with the test.
struct TemporaryFolder {
  std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("netmend-casework-test-" + std::to_string(::getpid()));
  TemporaryFolder() { std::filesystem::create_directories(path); }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder() { std::filesystem::remove_all(path); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path / name).string(); }
};

} // namespace netmend::test
