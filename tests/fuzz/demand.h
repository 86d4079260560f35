#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>

#include "netmend/base/error.h"

/// What the fuzzers demand of a reader; libFuzzer keeps the input where it is not met.
namespace netmend::fuzz {

inline std::string_view textOf(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

inline void demand(bool met, std::string_view what, const std::string& detail = {}) {
  if (met) return;
  std::fprintf(stderr, "demanded: %.*s\n%s\n", static_cast<int>(what.size()), what.data(), detail.c_str());
  std::abort();
}

inline void demandFile(const Error& error, const std::string& file) {
  demand(error.file == file && !error.message.empty(), "an error says what is wrong and names the file",
         error.text());
}

/// A file for readers that take a path; tests/fuzz/run sets TMPDIR to a folder in memory.
inline std::string fileOf(std::string_view content, const char* name) {
  static const std::string folder = [] {
    std::string pattern = std::filesystem::temp_directory_path() / "netmend-fuzz-XXXXXX";
    demand(::mkdtemp(pattern.data()) != nullptr, "a folder of one's own");
    return pattern;
  }();
  const std::string path = folder + "/" + name;
  std::FILE* file = std::fopen(path.c_str(), "wb");
  demand(file != nullptr && std::fwrite(content.data(), 1, content.size(), file) == content.size() &&
             std::fclose(file) == 0,
         "a file is written");
  return path;
}

} // namespace netmend::fuzz
