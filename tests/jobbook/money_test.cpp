#include "netmend/jobbook/money.h"

#include <catch2/catch.hpp>

using namespace netmend;

TEST_CASE("amounts are read exactly, with point or comma") {
  CHECK(parseDecimal("12")->units == 120000);
  CHECK(parseDecimal("0.1")->units == 1000);
  CHECK(parseDecimal("0,75")->units == 7500);
  CHECK(parseDecimal("-3.10")->units == -31000);
  CHECK(parseDecimal("0.0125")->units == 125);
}

TEST_CASE("what is no amount is refused, not taken as zero") {
  for (const char* text : {"", "-", ".", "1.2.3", "1e3", "abc", "1.23456", "99999999999999999999", " 1"}) {
    INFO(text);
    CHECK_FALSE(parseDecimal(text));
  }
}

TEST_CASE("ten times a tenth is one, which binary floating point does not give") {
  Decimal total;
  for (int i = 0; i < 10; ++i)
    total = sum(total, parseDecimal("0.1").value()).value();
  CHECK(total == parseDecimal("1").value());
}

TEST_CASE("a product is rounded once, halves away from zero") {
  CHECK(product(parseDecimal("1.5").value(), parseDecimal("42.33").value()) == parseDecimal("63.50").value());
  CHECK(product(parseDecimal("-1.5").value(), parseDecimal("42.33").value()) ==
        parseDecimal("-63.50").value());
  CHECK(product(parseDecimal("0.25").value(), parseDecimal("0.01").value()) == parseDecimal("0").value());
}

TEST_CASE("an amount prints its cents and no more than it needs") {
  CHECK(toText(parseDecimal("12.5").value(), 2) == "12.50");
  CHECK(toText(parseDecimal("0.0125").value(), 2) == "0.0125");
  CHECK(toText(parseDecimal("-3").value(), 2) == "-3.00");
  CHECK(toText(parseDecimal("1.5").value(), 0) == "1.5");
  CHECK(toText(parseDecimal("2").value(), 0) == "2");
}

TEST_CASE("a sum that leaves the range fails") {
  const auto most = parseDecimal("1000000000000").value();
  CHECK_FALSE(sum(most, most));
}
