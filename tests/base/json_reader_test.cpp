#include "netmend/base/json_reader.h"

#include <catch2/catch.hpp>

using namespace netmend;

namespace {

JsonReader readerOf(std::string_view text) {
  auto reader = JsonReader::ofText(text, "things.json");
  REQUIRE(reader.has_value());
  return std::move(*reader);
}

Error errorOf(const JsonReader& reader) {
  const auto result = reader.result(0);
  REQUIRE_FALSE(result.has_value());
  CHECK(result.error().file == "things.json");
  return result.error();
}

} // namespace

TEST_CASE("a reader keeps the first thing that is wrong") {
  auto reader = readerOf(R"({"list": [1, "two", null]})");
  double sum = 0.0;
  for (const auto& item : reader.root().at("list").items())
    sum += item.number(0.0, 10.0);
  CHECK(sum == 1.0);
  CHECK(errorOf(reader).text() ==
        "things.json: /list/1: wrong kind of value (found \"two\"; expected a number)");
}

TEST_CASE("what is missing is told with its place, and reads as nothing further down") {
  auto reader = readerOf("{}");
  CHECK(reader.root().at("a").at("b").text().empty());
  CHECK(wordsOf(errorOf(reader).place) == "/a");
}

TEST_CASE("a pointer escapes the signs that mean something in it") {
  auto reader = readerOf(R"({"a/b~c": {"d": 1}})");
  reader.root().at("a/b~c").onlyKeys({"e"});
  CHECK(wordsOf(errorOf(reader).place) == "/a~1b~0c/d");
}

TEST_CASE("an unknown word is told with those that could stand there") {
  enum class Colour { red, green };
  constexpr auto words = std::to_array<Word<Colour>>({{Colour::red, "red"}, {Colour::green, "green"}});
  auto reader = readerOf(R"(["green", "blue"])");
  const auto items = reader.root().items();
  CHECK(items[0].oneOf(words) == Colour::green);
  CHECK(items[1].oneOf(words) == Colour::red);
  CHECK(wordsOf(errorOf(reader).expected) == "red, green");
}

TEST_CASE("an entry without source is refused") {
  auto reader = readerOf(R"({"source": ""})");
  reader.root().source();
  CHECK(wordsOf(errorOf(reader).place) == "/source");
}

TEST_CASE("a file of another kind or of a newer version is refused") {
  const auto placeOf = [](std::string_view text) {
    auto reader = readerOf(text);
    reader.expectFormat("netmend-things", 2);
    return reader.failed() ? wordsOf(errorOf(reader).place) : "none";
  };
  CHECK(placeOf(R"({"format": "netmend-things", "version": 2})") == "none");
  CHECK(placeOf(R"({"format": "netmend-things", "version": 3})") == "/version");
  CHECK(placeOf(R"({"format": "netmend-things", "version": 0})") == "/version");
  CHECK(placeOf(R"({"format": "netmend-things"})") == "/version");
  CHECK(placeOf(R"({"format": "netmend-board", "version": 1})") == "/format");
  CHECK(placeOf("[]") == "/");
}

TEST_CASE("a name that stands twice, a broken text and an endless nesting are refused with their place") {
  const auto placeOf = [](std::string_view text) {
    const auto reader = JsonReader::ofText(text, "things.json");
    REQUIRE_FALSE(reader.has_value());
    CHECK(reader.error().file == "things.json");
    return wordsOf(reader.error().place);
  };
  CHECK(placeOf(R"({"a": [{"b": 1, "b": 2}]})") == "/a/0");
  CHECK(placeOf("{\"a\":\n oops}") == "line 2, column 2");
  CHECK(placeOf("").empty());
  CHECK(placeOf(std::string(100000, '[')).starts_with("/0/0/0"));
}
