#include "netmend/base/error.h"

#include <catch2/catch.hpp>

using netmend::Error;

TEST_CASE("an error names file, place, what was found and what was expected") {
  const Error error{netmend::pattern("core", "unknown side"), "board.csv", "line 3",
                    netmend::asItIs("\"up\""), netmend::pattern("core", "top or bottom")};
  CHECK(error.text() == "board.csv: line 3: unknown side (found \"up\"; expected top or bottom)");
}

TEST_CASE("an error leaves out what is not known") {
  CHECK(Error{netmend::pattern("core", "no such file"), "a.csv"}.text() == "a.csv: no such file");
  CHECK(Error{netmend::pattern("core", "not a number"), "", "", netmend::asItIs("4k")}.text() ==
        "not a number (found 4k)");
}
