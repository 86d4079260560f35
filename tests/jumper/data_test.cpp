#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include "netmend/jumper/work_steps.h"

using namespace netmend;
using nlohmann::json;

namespace {

const std::filesystem::path dataOfTree = std::filesystem::path(NETMEND_SOURCE_DIR) / "data";

json treeData(const std::string& name) {
  std::ifstream in(dataOfTree / name);
  return json::parse(in);
}

/// A folder of its own with the tree's data, one file of it changed.
class ChangedData {
public:
  ChangedData(const std::string& name, const std::string& content)
      : folder_(std::filesystem::temp_directory_path() / ("netmend-jumper-" + std::to_string(getpid()))) {
    std::filesystem::create_directories(folder_);
    for (const char* file : {"zones.json", "landings.json", "wires.json", "work_steps.json"})
      std::filesystem::copy_file(dataOfTree / file, folder_ / file,
                                 std::filesystem::copy_options::overwrite_existing);
    std::ofstream(folder_ / name) << content;
  }
  ChangedData(const ChangedData&) = delete;
  ChangedData& operator=(const ChangedData&) = delete;
  ~ChangedData() { std::filesystem::remove_all(folder_); }

  [[nodiscard]] Error error() const {
    auto data = loadJumperData(folder_);
    if (!data) return data.error();
    auto steps = loadWorkSteps(folder_ / "work_steps.json");
    return steps ? Error{} : steps.error();
  }

private:
  std::filesystem::path folder_;
};

Error errorAfter(const std::string& name, const std::string& pointer, const json& value) {
  json doc = treeData(name);
  doc[json::json_pointer(pointer)] = value;
  return ChangedData(name, doc.dump()).error();
}

} // namespace

TEST_CASE("the data that comes with the program loads, and every entry names its source") {
  CHECK(loadJumperData(dataOfTree));
  CHECK(loadWorkSteps(dataOfTree / "work_steps.json"));
  for (const auto& [file, list] : {std::pair{"zones.json", "zones"},
                                   {"zones.json", "parts"},
                                   {"landings.json", "landings"},
                                   {"wires.json", "wires"},
                                   {"wires.json", "roles"},
                                   {"work_steps.json", "cautions"}}) {
    const json doc = treeData(file);
    for (const json& entry : doc[list])
      CHECK_FALSE(entry.value("source", "").empty());
  }
}

TEST_CASE("a mistake in the data is told with file and place") {
  struct Case {
    std::string file, pointer;
    json value;
  };
  for (const Case& c : {Case{"zones.json", "/zones/2/margin_mm", -1},
                        {"zones.json", "/zones/0/margin_mm", 0},
                        {"zones.json", "/bodies/edge_margin_mm", 0},
                        {"zones.json", "/bodies/tall_from_mm", 0},
                        {"zones.json", "/bodies/low_up_to_mm", 0},
                        {"zones.json", "/bodies/guessed_body_margin_mm", 0},
                        {"zones.json", "/zones/0/effect", "allowed"},
                        {"zones.json", "/zones/1/zone", "connector"},
                        {"zones.json", "/bodies/tall_from_mm", "tall"},
                        {"zones.json", "/parts/0/part", "gizmo"},
                        {"landings.json", "/landings/1/price", nullptr},
                        {"landings.json", "/extras/colour", 3},
                        {"landings.json", "/way/per_bend", 1e300},
                        {"wires.json", "/wires/0/copper_mm", 0},
                        {"wires.json", "/wires/3/outer_mm", 0.001},
                        {"wires.json", "/roles/4/current_A", "much"},
                        {"wires.json", "/rules/fusing_share", 3},
                        {"work_steps.json", "/kinds/jumper/1/text", "Uncover {frm}"},
                        {"work_steps.json", "/kinds/clean/2/when", "moon"},
                        {"work_steps.json", "/kinds/jumper/0/measure/at", "moon"},
                        {"work_steps.json", "/kinds/jumper/0/measure/mode", "guess"},
                        {"work_steps.json", "/kinds/jumper/0/measure/reads", "much"},
                        {"work_steps.json", "/kinds/clean/0/measure/at", "from"},
                        {"work_steps.json", "/kinds/clean/0/measure/reads", "resistance"},
                        {"work_steps.json", "/kinds/clean", json::array()},
                        {"work_steps.json", "/kinds/polish", json::array()}}) {
    INFO(c.file << " " << c.pointer);
    const Error error = errorAfter(c.file, c.pointer, c.value);
    CHECK(error.file.ends_with(c.file));
    CHECK(wordsOf(error.place).starts_with(c.pointer));
    CHECK_FALSE(error.message.empty());
  }
}

TEST_CASE("a file that is no JSON, empty, of another kind, newer or too deep is refused") {
  CHECK(wordsOf(ChangedData("wires.json", "{\n \"format\": oops").error().place).starts_with("line 2"));
  CHECK_FALSE(ChangedData("wires.json", "").error().message.empty());
  CHECK_FALSE(ChangedData("wires.json", "[]").error().message.empty());
  CHECK_FALSE(ChangedData("wires.json", std::string(100000, '[')).error().message.empty());
  CHECK(wordsOf(errorAfter("zones.json", "/format", "netmend-wires").place) == "/format");
  CHECK(wordsOf(errorAfter("zones.json", "/version", 2).place) == "/version");
  CHECK_FALSE(loadJumperData("/no/such/folder"));
}

TEST_CASE("a kind of zone, landing or role without entry is refused") {
  for (const auto& [file, list] :
       {std::pair{"zones.json", "zones"}, {"landings.json", "landings"}, {"wires.json", "roles"}}) {
    json doc = treeData(file);
    doc[list].erase(1);
    CHECK(wordsOf(ChangedData(file, doc.dump()).error().place) == std::string("/") + list);
  }
}
