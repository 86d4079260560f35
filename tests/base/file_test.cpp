#include "netmend/base/file.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

namespace fs = std::filesystem;
using namespace netmend;

namespace {

struct TemporaryFolder {
  fs::path path = fs::temp_directory_path() / ("netmend-file-test-" + std::to_string(::getpid()));
  TemporaryFolder() { fs::create_directories(path); }
  ~TemporaryFolder() { fs::remove_all(path); }
};

} // namespace

TEST_CASE("what was written is read back, zero bytes included") {
  const TemporaryFolder folder;
  const std::string content("a\0b\n", 4);
  REQUIRE(writeFileAtomically(folder.path / "x", content));
  CHECK(readFile(folder.path / "x").value() == content);
}

TEST_CASE("replacing a file leaves nothing else behind") {
  const TemporaryFolder folder;
  REQUIRE(writeFileAtomically(folder.path / "x", "old"));
  REQUIRE(writeFileAtomically(folder.path / "x", "new"));
  CHECK(readFile(folder.path / "x").value() == "new");
  CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 1);
}

TEST_CASE("a missing file, a folder and a file over the limit are refused by name") {
  const TemporaryFolder folder;
  CHECK(wordsOf(readFile(folder.path / "none").error().message) == "no such file");
  CHECK(wordsOf(readFile(folder.path).error().message) == "is not a regular file");
  REQUIRE(writeFileAtomically(folder.path / "x", "12345"));
  CHECK(readFile(folder.path / "x", 4).error().file == (folder.path / "x").string());
}

TEST_CASE("a file in a missing folder cannot be written and says so") {
  const auto result = writeFileAtomically("/nonexistent-netmend/x", "1");
  REQUIRE_FALSE(result);
  CHECK(result.error().file == "/nonexistent-netmend/x");
}
