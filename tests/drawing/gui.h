#pragma once

#include <QGuiApplication>

#include <array>
#include <cstdio>
#include <filesystem>
#include <string>
#include <unistd.h>

/// What tests of pictures and documents share.
namespace netmend::testing {

/// One application a test program, without a display. Never taken down: Qt allows no second one.
template <class Application = QGuiApplication> inline void needApplication() {
  static int argc = 1;
  static char name[] = "test";
  static std::array<char*, 2> argv{name, nullptr};
  if (QCoreApplication::instance() != nullptr) return;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  new Application(argc, argv.data());
}

struct TemporaryFolder {
  std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("netmend-picture-test-" + std::to_string(::getpid()));
  TemporaryFolder() { std::filesystem::create_directories(path); }
  ~TemporaryFolder() { std::filesystem::remove_all(path); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path / name).string(); }
};

/// What a command prints; empty when it cannot be run.
inline std::string outputOf(const std::string& command) {
  std::string out;
  FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return out;
  std::array<char, 4096> part{};
  for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
    out.append(part.data(), n);
  return ::pclose(pipe) == 0 ? out : std::string();
}

} // namespace netmend::testing
