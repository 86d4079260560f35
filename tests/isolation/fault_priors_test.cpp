#include <filesystem>
#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include "drawn_line.h"

using namespace netmend;

namespace {

std::string dataText(const std::string& name) {
  std::ifstream file(NETMEND_SOURCE_DIR "/data/" + name);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string changed(const std::string& name, const std::string& pointer, const nlohmann::json& value) {
  auto json = nlohmann::json::parse(dataText(name));
  json[nlohmann::json::json_pointer(pointer)] = value;
  return json.dump();
}

/// A file that is gone after the test.
struct Written {
  std::filesystem::path path;
  Written(const std::string& name, const std::string& text)
      : path(std::filesystem::temp_directory_path() / (std::to_string(::getpid()) + "-" + name)) {
    std::ofstream(path) << text;
  }
  Written(const Written&) = delete;
  Written& operator=(const Written&) = delete;
  ~Written() { std::filesystem::remove(path); }
};

Result<FaultPriors> priorsIn(const std::string& text) {
  const Written file("priors.json", text);
  return readFaultPriors(file.path);
}

} // namespace

TEST_CASE("the priors and efforts that come with the program can be read") {
  const auto priors = test::priorsFromData();
  CHECK(priors.slippedShare == Approx(0.02));
  CHECK(priors.terminations.at(PartKind::chip).junction > 0.5);
  const auto efforts = test::effortsFromData();
  CHECK(efforts.of(fromUser(Access::open)).value() < efforts.of(fromUser(Access::underMask)).value());
  CHECK_FALSE(efforts.of(fromUser(Access::underPart)).has_value());
  CHECK(efforts.of({}) == efforts.unknownReach);
}

TEST_CASE("a spoilt data file gives an error with file and place") {
  const auto errorOf = [](const std::string& text) {
    const auto priors = priorsIn(text);
    REQUIRE_FALSE(priors.has_value());
    CHECK(priors.error().file.ends_with("-priors.json"));
    return priors.error();
  };
  const std::string name = "fault_priors.json";
  CHECK(wordsOf(errorOf(changed(name, "/weights/via/perPlace", "much")).place) == "/weights/via/perPlace");
  CHECK(wordsOf(errorOf(changed(name, "/weights/via/perPlace", -1)).place) == "/weights/via/perPlace");
  CHECK(wordsOf(errorOf(changed(name, "/weights/via/source", "")).place) == "/weights/via/source");
  CHECK(wordsOf(errorOf(changed(name, "/weights/via", nullptr)).place) == "/weights/via/source");
  CHECK(wordsOf(errorOf(changed(name, "/terminations/0/part", "gizmo")).place) == "/terminations/0/part");
  CHECK(wordsOf(errorOf(changed(name, "/terminations/0/none", 0.5)).place) == "/terminations/0");
  CHECK(wordsOf(errorOf(changed(name, "/terminations", 3)).place) == "/terminations");
  CHECK(wordsOf(errorOf(changed(name, "/shares/sound/share", 0.99)).place) == "/shares");
  CHECK(wordsOf(errorOf(changed(name, "/version", 2)).place) == "/version");
  CHECK(wordsOf(errorOf(dataText("efforts.json")).place) == "/format");
  const auto whole = dataText(name);
  for (std::size_t length = 0; length + 3 < whole.size(); length += 97)
    CHECK_FALSE(priorsIn(whole.substr(0, length)).has_value());
  CHECK_FALSE(priorsIn(std::string(200000, '[')).has_value());
  CHECK_FALSE(readFaultPriors("/nowhere/priors.json").has_value());
  const Written file("efforts.json", changed("efforts.json", "/reach/open/seconds", 0));
  const auto efforts = readProbeEfforts(file.path);
  REQUIRE_FALSE(efforts.has_value());
  CHECK(wordsOf(efforts.error().place) == "/reach/open/seconds");
}
