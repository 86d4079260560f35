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

TEST_CASE("amounts go to 10^12 either way, and no further") {
  const std::int64_t largest = 1'000'000'000'000 * 10'000;
  CHECK(parseDecimal("1000000000000")->units == largest);
  CHECK(parseDecimal("-1000000000000.0000")->units == -largest);
  CHECK(parseDecimal("999999999999.9999")->units == largest - 1);
  for (const char* text : {"1000000000000.0001", "-1000000000000.0001", "1000000000001", "10000000000000000",
                           "100000000000000000", "1000000000000000000000"}) {
    INFO(text);
    const auto read = parseDecimal(text);
    REQUIRE_FALSE(read);
  }
  CHECK(wordsOf(parseDecimal("1000000000000.0001").error().message) == "amount is too large");
  CHECK(wordsOf(parseDecimal("x").error().message) == "not an amount");
  CHECK(wordsOf(parseDecimal("x").error().found) == "\"x\"");
  const Decimal most{largest}, least{-largest}, one{1};
  CHECK(sum(most, Decimal{0}) == most);
  CHECK(sum(least, Decimal{0}) == least);
  CHECK(sum(Decimal{largest - 1}, one) == most);
  CHECK(sum(Decimal{1 - largest}, Decimal{-1}) == least);
  CHECK_FALSE(sum(most, one));
  CHECK_FALSE(sum(least, Decimal{-1}));
  CHECK(product(most, Decimal{10'000}) == most);
  CHECK(product(least, Decimal{10'000}) == least);
  CHECK_FALSE(product(most, Decimal{10'001}));
  CHECK_FALSE(product(most, most)); // beyond 64 bits
  CHECK_FALSE(product(least, most));
}

TEST_CASE("all four places count, before a point there may be nothing, and behind it too") {
  CHECK(parseDecimal("1.2345")->units == 12345);
  CHECK(parseDecimal("1.234")->units == 12340);
  CHECK(parseDecimal("0.0001")->units == 1);
  CHECK(parseDecimal("-0.0001")->units == -1);
  CHECK(parseDecimal(".5")->units == 5000);
  CHECK(parseDecimal("5.")->units == 50000);
  CHECK(parseDecimal("5,")->units == 50000);
  CHECK(parseDecimal("0")->units == 0);
  CHECK(parseDecimal("-0")->units == 0);
  for (const char* text : {"--1", "1-", "+1", "1.2,3", "1 ", ",", "-.", "0x1", "1.00000"}) {
    INFO(text);
    CHECK_FALSE(parseDecimal(text));
  }
}

TEST_CASE("products are rounded to hundredths at half a hundredth, away from zero") {
  const auto by = [](std::int64_t quantity, std::int64_t price) {
    return product(Decimal{quantity}, Decimal{price})->units;
  };
  CHECK(by(10'000, 49) == 0);    // 0.0049
  CHECK(by(10'000, 50) == 100);  // 0.005 gives 0.01
  CHECK(by(10'000, 149) == 100); // 0.0149
  CHECK(by(10'000, 150) == 200); // 0.015
  CHECK(by(-10'000, 49) == 0);
  CHECK(by(-10'000, 50) == -100);
  CHECK(by(10'000, -149) == -100);
  CHECK(by(-10'000, -150) == 200);
  CHECK(by(15'000, 480'000) == 720'000); // an hour and a half at 48.00
  CHECK(by(1, 4999) == 0);               // 0.0001 × 0.4999
  CHECK(by(0, 480'000) == 0);
}

TEST_CASE("amounts print every place that counts, from none to four") {
  const auto text = [](std::int64_t units, int places) { return toText(Decimal{units}, places); };
  CHECK(text(0, 0) == "0");
  CHECK(text(0, 2) == "0.00");
  CHECK(text(1, 2) == "0.0001");
  CHECK(text(-1, 0) == "-0.0001");
  CHECK(text(10, 2) == "0.001");
  CHECK(text(100, 2) == "0.01");
  CHECK(text(1000, 2) == "0.10");
  CHECK(text(1000, 1) == "0.1");
  CHECK(text(1000, 4) == "0.1000");
  CHECK(text(10'000, 4) == "1.0000");
  CHECK(text(9'999, 0) == "0.9999");
  CHECK(text(123'456'789, 2) == "12345.6789");
  CHECK(text(-123'450'000, 2) == "-12345.00");
}
