#include <catch2/catch.hpp>

#include <algorithm>
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

TEST_CASE("a key that nobody knows is refused in every object of the data, with its place") {
  for (const char* file : {"zones.json", "landings.json", "wires.json", "work_steps.json"}) {
    const json doc = treeData(file);
    std::vector<std::string> objects{""};
    for (std::size_t i = 0; i < objects.size(); ++i) {
      const json& here = doc[json::json_pointer(objects[i])];
      for (const auto& [key, value] : here.items())
        if (value.is_object() || value.is_array())
          objects.push_back(objects[i] + "/" + (here.is_array() ? std::to_string(std::stoul(key)) : key));
    }
    std::erase_if(objects, [&](const std::string& at) { return doc[json::json_pointer(at)].is_array(); });
    CHECK(objects.size() > 5);
    for (const std::string& at : objects) {
      INFO(file << " " << at);
      const Error error = errorAfter(file, at + "/misspelt", 1);
      CHECK(error.file.ends_with(file));
      CHECK(wordsOf(error.place) == at + "/misspelt");
    }
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
                        {"work_steps.json", "/kinds/wire/0/measure/at", "scraped"},
                        {"work_steps.json", "/kinds/wire/2/measure/reads", "expected_from"},
                        {"work_steps.json", "/kinds/remove_bridge/0/measure/at", "wire"},
                        {"work_steps.json", "/kinds/jumper/0/measure/at", "target"},
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

TEST_CASE("every figure of the data is read into its own place") {
  const auto data = loadJumperData(dataOfTree);
  REQUIRE(data);
  const json zones = treeData("zones.json"), landings = treeData("landings.json"),
             wires = treeData("wires.json");
  const auto is = [](Length length, const json& mm) {
    CHECK(length.mm() == Approx(mm.get<double>()).margin(1e-9));
  };
  REQUIRE(data->zones.zones.size() == zones["zones"].size());
  for (std::size_t i = 0; i < data->zones.zones.size(); ++i) {
    const ZoneRule& rule = data->zones.zones[i];
    const json& in = zones["zones"][i];
    is(rule.margin, in["margin_mm"]);
    CHECK(rule.price.value == in.value("price", 0.0));
    CHECK(rule.reason == in["reason"]);
    CHECK(rule.source == in["source"]);
    CHECK((rule.effect == ZoneEffect::forbidden) == (in["effect"] == "forbidden"));
    CHECK((rule.effect == ZoneEffect::perCrossing) == (in["effect"] == "per_crossing"));
    CHECK(&data->zones.of(rule.kind) == &rule);
  }
  REQUIRE(data->zones.parts.size() == zones["parts"].size());
  for (std::size_t i = 0; i < data->zones.parts.size(); ++i) {
    CHECK(data->zones.parts[i].wallOnly == zones["parts"][i].value("wall_only", false));
    CHECK(data->zones.parts[i].source == zones["parts"][i]["source"]);
    CHECK(data->zones.of(data->zones.parts[i].part) == &data->zones.parts[i]);
  }
  const json& bodies = zones["bodies"];
  is(data->zones.edgeMargin, bodies["edge_margin_mm"]);
  is(data->zones.holeMargin, bodies["hole_margin_mm"]);
  is(data->zones.jointMargin, bodies["joint_margin_mm"]);
  is(data->zones.tallFrom, bodies["tall_from_mm"]);
  is(data->zones.lowUpTo, bodies["low_up_to_mm"]);
  is(data->zones.guessedBodyMargin, bodies["guessed_body_margin_mm"]);

  const LandingPrices& p = data->landings;
  REQUIRE(p.kinds.size() == landings["landings"].size());
  for (std::size_t i = 0; i < p.kinds.size(); ++i) {
    CHECK(p.kinds[i].price.value == landings["landings"][i]["price"]);
    CHECK(p.kinds[i].source == landings["landings"][i]["source"]);
    CHECK(p.of(p.kinds[i].kind) == p.kinds[i].price);
  }
  CHECK(LandingPrices{}.of(LandingKind::via) == Price(0));
  const json& extras = landings["extras"];
  CHECK(p.underMask.value == extras["under_mask"]);
  CHECK(p.smallPart.value == extras["small_part"]);
  is(p.smallWidth, extras["small_width_mm"]);
  CHECK(p.unknownFarSide.value == extras["unknown_far_side"]);
  CHECK(p.opened.value == extras["opened_margin"]);
  CHECK(p.perBend.value == landings["way"]["per_bend"]);
  CHECK(p.tight.value == landings["way"]["tight"]);
  is(p.tightBelow, landings["way"]["tight_below_mm"]);

  const WireTable& t = data->wires;
  REQUIRE(t.wires.size() == wires["wires"].size());
  for (std::size_t i = 0; i < t.wires.size(); ++i) {
    if (i > 0) CHECK(t.wires[i - 1].copper <= t.wires[i].copper);
    const auto in = std::find_if(wires["wires"].begin(), wires["wires"].end(),
                                 [&](const json& w) { return w["name"] == t.wires[i].name; });
    REQUIRE(in != wires["wires"].end());
    is(t.wires[i].copper, (*in)["copper_mm"]);
    is(t.wires[i].outer, (*in)["outer_mm"]);
    CHECK(t.wires[i].insulation == (*in)["insulation"]);
    CHECK(t.wires[i].stripping == (*in)["stripping"]);
    CHECK(t.wires[i].source == (*in)["source"]);
  }
  REQUIRE(t.roles.size() == wires["roles"].size());
  for (std::size_t i = 0; i < t.roles.size(); ++i) {
    const json& in = wires["roles"][i];
    CHECK(t.roles[i].current.value == in["current_A"]);
    CHECK(t.roles[i].most.has_value() == in.contains("most_A"));
    if (t.roles[i].most) CHECK(t.roles[i].most->value == in["most_A"]);
    CHECK(t.roles[i].mostDrop.value == in["most_drop_V"]);
    CHECK(t.roles[i].warning == in.value("warning", ""));
    CHECK(t.roles[i].source == in["source"]);
    CHECK(&t.of(t.roles[i].role) == &t.roles[i]);
  }
  const json& rules = wires["rules"];
  CHECK(t.mostRise.value == rules["most_rise_K"]);
  CHECK(t.copperRise.value == rules["copper_rise_K"]);
  is(t.signalUpTo, rules["signal_up_to_mm"]);
  CHECK(t.ambient.value == rules["ambient_C"]);
  CHECK(t.fusingShare == rules["fusing_share"]);
  is(t.thinnestByChoice, rules["thinnest_by_choice_mm"]);
  CHECK(t.slack == rules["slack"]);
  is(t.endAllowance, rules["end_allowance_mm"]);
  is(t.endTack, rules["end_tack_mm"]);
  is(t.tackSpacing, rules["tack_spacing_mm"]);
  CHECK(t.landingShare == rules["landing_share"]);
}

TEST_CASE("each figure is taken at the ends of its range and refused beyond them") {
  struct Range {
    std::string file, pointer;
    double least, most;
    bool aboveLeast = false; ///< the least itself is refused
  };
  for (const Range& r : {Range{"zones.json", "/bodies/edge_margin_mm", 0, 10, true},
                         {"zones.json", "/bodies/hole_margin_mm", 0, 10, true},
                         {"zones.json", "/bodies/joint_margin_mm", 0, 10, true},
                         {"zones.json", "/bodies/tall_from_mm", 0, 100, true},
                         {"zones.json", "/bodies/low_up_to_mm", 0, 100, true},
                         {"zones.json", "/bodies/guessed_body_margin_mm", 0, 10, true},
                         {"landings.json", "/landings/0/price", 0, 1e6},
                         {"landings.json", "/extras/under_mask", 0, 1e6},
                         {"landings.json", "/extras/small_width_mm", 0, 10},
                         {"landings.json", "/way/tight_below_mm", 0, 10},
                         {"wires.json", "/wires/0/copper_mm", 0.001, 0.013}, // its own outside
                         {"wires.json", "/wires/0/outer_mm", 0.01, 40},
                         {"wires.json", "/roles/0/current_A", 0, 1000},
                         {"wires.json", "/roles/0/most_A", 1e-6, 1000},
                         {"wires.json", "/roles/0/most_drop_V", 1e-6, 1000},
                         {"wires.json", "/rules/most_rise_K", 1, 200},
                         {"wires.json", "/rules/copper_rise_K", 1, 200},
                         {"wires.json", "/rules/signal_up_to_mm", 0, 10},
                         {"wires.json", "/rules/ambient_C", -50, 150},
                         {"wires.json", "/rules/fusing_share", 0.01, 1},
                         {"wires.json", "/rules/thinnest_by_choice_mm", 0, 5},
                         {"wires.json", "/rules/slack", 0, 5},
                         {"wires.json", "/rules/end_allowance_mm", 0, 100},
                         {"wires.json", "/rules/end_tack_mm", 0.1, 100},
                         {"wires.json", "/rules/tack_spacing_mm", 0.5, 1000},
                         {"wires.json", "/rules/landing_share", 0.1, 10}}) {
    INFO(r.file << " " << r.pointer);
    const double off = std::max(1e-6, r.most * 1e-9);
    const auto refused = [&](double value) { return !errorAfter(r.file, r.pointer, value).message.empty(); };
    CHECK(refused(r.least) == r.aboveLeast);
    CHECK(refused(r.least - std::min(off, std::max(1e-9, r.least / 2))));
    CHECK_FALSE(refused(r.most));
    CHECK(refused(r.most + off));
    CHECK_FALSE(refused((r.least + r.most) / 2));
  }
}
