#include "netmend/base/data_folder.h"

#include <cstdlib>

#include <catch2/catch.hpp>

namespace fs = std::filesystem;

TEST_CASE("data comes from the folder that NETMEND_DATA names, else from the source tree") {
  ::unsetenv("NETMEND_DATA");
  CHECK(fs::equivalent(netmend::dataFolder(), fs::path(NETMEND_SOURCE_DIR) / "data"));
  ::setenv("NETMEND_DATA", "/somewhere/else", 1);
  CHECK(netmend::dataFile("meters.json") == fs::path("/somewhere/else/meters.json"));
  ::setenv("NETMEND_DATA", "", 1);
  CHECK(fs::equivalent(netmend::dataFolder(), fs::path(NETMEND_SOURCE_DIR) / "data"));
  ::unsetenv("NETMEND_DATA");
}
