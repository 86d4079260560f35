#include "netmend/base/error.h"

#include <catch2/catch.hpp>

using netmend::Error;

TEST_CASE("an error names file, place, what was found and what was expected") {
  const Error error{"unknown side", "board.csv", "line 3", "\"up\"", "top or bottom"};
  CHECK(error.text() == "board.csv: line 3: unknown side (found \"up\"; expected top or bottom)");
}

TEST_CASE("an error leaves out what is not known") {
  CHECK(Error{"no such file", "a.csv"}.text() == "a.csv: no such file");
  CHECK(Error{"not a number", "", "", "4k"}.text() == "not a number (found 4k)");
}
