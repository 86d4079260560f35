#include "netmend/probing/words.h"
#include "support.h"
#include "support/ranged_figures.h"

using namespace netmend;
using nlohmann::json;
using test::changed;
using test::dataText;
using test::RangedFigure;
using test::Written;

namespace {

using Members = std::vector<std::pair<const char*, json>>;

/// Place of the error when these members of one object are changed at once; empty: none.
template <class Load>
std::string placeWith(const std::string& name, const std::string& pointer, const Members& members,
                      const Load& load) {
  auto whole = json::parse(dataText(name));
  for (const auto& [member, value] : members)
    whole[json::json_pointer(pointer)][member] = value;
  const Written file("changed.json", whole.dump());
  const auto read = load(file.path);
  return read ? std::string() : wordsOf(read.error().place);
}

/// Places at which a text is wanted and a member that nobody knows is refused.
template <class Load>
void checkKeysAndSources(const std::string& name, const std::vector<std::string>& objects,
                         const std::vector<std::string>& sourced, const Load& load) {
  for (const auto& object : objects) {
    INFO(object);
    CHECK(placeWith(name, object, {{"colour", "red"}}, load) == object + "/colour");
  }
  for (const auto& object : sourced) {
    INFO(object);
    CHECK(placeWith(name, object, {{"source", ""}}, load) == object + "/source");
  }
}

} // namespace

TEST_CASE("every figure of the verdict rules is read within its range, and into its own field") {
  using R = VerdictRules;
  const auto temperature = [](double FaultReadings::*field) {
    return [field](const R& rules) { return rules.find(ReadingMode::temperature)->*field; };
  };
  const std::vector<RangedFigure<R>> figures{
      {"/false_flags_per_good_walk/value", 1e-6, 0.99, [](const R& r) { return r.falseFlagsPerGoodWalk; }},
      {"/fault_prior/value", 1e-9, 0.5, [](const R& r) { return r.faultPrior; }},
      {"/decisive_odds/value", 1.0, 1e12, [](const R& r) { return r.decisiveOdds; }},
      {"/variants/share", 1e-9, 0.5, [](const R& r) { return r.variants.share; }},
      {"/variants/weight", 1.0, 1e9, [](const R& r) { return r.variants.weight; }},
      {"/variants/split_at", 3.0, 1e3, [](const R& r) { return r.variants.splitAt; }},
      {"/faults/7/short_scale", 1e-9, 1e9, temperature(&FaultReadings::shortScale)},
      {"/faults/7/shift_scale", 1e-9, 1e9, temperature(&FaultReadings::shiftScale)}};
  test::checkRanges<R>("verdict.json", figures, loadVerdictRules);
  checkKeysAndSources(
      "verdict.json",
      {"", "/false_flags_per_good_walk", "/fault_prior", "/decisive_odds", "/variants", "/faults/2"},
      {"/false_flags_per_good_walk", "/fault_prior", "/decisive_odds", "/variants", "/faults/2"},
      loadVerdictRules);
  CHECK_FALSE(loadVerdictRules("/nowhere/verdict.json"));
}

TEST_CASE("what a fault reads is read in shares that add up to one, and a range that is none is refused") {
  const auto whole = json::parse(dataText("verdict.json"));
  const auto rules = loadVerdictRules(NETMEND_SOURCE_DIR "/data/verdict.json").value();
  REQUIRE(rules.faults.size() == 8);
  for (const auto& row : whole["faults"]) {
    const auto* faults = rules.find(*readingModeFrom(row["mode"].get<std::string>()));
    REQUIRE(faults != nullptr);
    CHECK(word(faults->mode) == row["mode"]);
    CHECK(faults->open == row["open"]);
    CHECK(faults->shorted == row["short"]);
    CHECK(faults->shift == row["shift"]);
    CHECK(faults->anywhere == row["anywhere"]);
    CHECK(faults->shortScale == row["short_scale"]);
    CHECK(faults->shiftScale == row["shift_scale"]);
    CHECK(faults->lowest == row["lowest"]);
    CHECK(faults->highest == row["highest"]);
    CHECK(faults->source == row["source"]);
  }
  const auto with = [](const Members& members) {
    return placeWith("verdict.json", "/faults/1", members, loadVerdictRules);
  };
  const auto shares = [&](double open, double shorted, double shift, double anywhere) {
    return with({{"open", open}, {"short", shorted}, {"shift", shift}, {"anywhere", anywhere}});
  };
  CHECK(shares(0.0, 0.0, 0.0, 1.0).empty());
  CHECK(shares(1.0 - 1e-6, 0.0, 0.0, 1e-6).empty());
  CHECK(shares(0.0, 1.0 - 1e-6, 0.0, 1e-6).empty());
  CHECK(shares(0.0, 0.0, 1.0 - 1e-6, 1e-6).empty());
  CHECK(shares(0.25, 0.25, 0.25, 0.25 + 0.95e-9).empty());
  CHECK(shares(0.25, 0.25, 0.25, 0.25 - 0.95e-9).empty());
  CHECK(shares(0.25, 0.25, 0.25, 0.25 + 1.05e-9) == "/faults/1");
  CHECK(shares(0.25, 0.25, 0.25, 0.25 - 1.05e-9) == "/faults/1");
  CHECK(shares(1.05, 0.0, 0.0, 0.0) == "/faults/1/open");
  CHECK(shares(-0.05, 0.0, 0.0, 1.0) == "/faults/1/open");
  CHECK(shares(0.0, 1.05, 0.0, 0.0) == "/faults/1/short");
  CHECK(shares(0.0, -0.05, 0.0, 1.0) == "/faults/1/short");
  CHECK(shares(0.0, 0.0, 1.05, 0.0) == "/faults/1/shift");
  CHECK(shares(0.0, 0.0, -0.05, 1.0) == "/faults/1/shift");
  CHECK(shares(0.0, 0.0, 0.0, 1.05) == "/faults/1/anywhere");
  CHECK(shares(0.5, 0.5, 0.0, 0.95e-6) == "/faults/1/anywhere");
  // All of a share of exactly 1 leaves nothing for the rest, which always holds a little.
  CHECK(shares(1.0, 0.0, 0.0, 1e-6) == "/faults/1");
  CHECK(shares(0.0, 1.0, 0.0, 1e-6) == "/faults/1");
  CHECK(shares(0.0, 0.0, 1.0, 1e-6) == "/faults/1");
  const auto range = [&](double lowest, double highest) {
    return with({{"lowest", lowest}, {"highest", highest}});
  };
  CHECK(range(-1e9, 1e9).empty());
  CHECK(range(-1e9, -0.95e9).empty());
  CHECK(range(0.95e9, 1e9).empty());
  CHECK(range(-1.05e9, 1.0) == "/faults/1/lowest");
  CHECK(range(0.0, 1.05e9) == "/faults/1/highest");
  CHECK(range(1e9, 1e9) == "/faults/1/highest");
  CHECK(range(-1e9, -1e9) == "/faults/1/highest");
  CHECK(range(0.5, 0.4) == "/faults/1/highest");
  CHECK(with({{"mode", "diode"}}) == "/faults/1/mode");
  CHECK(with({{"mode", "warp"}}) == "/faults/1/mode");
}

TEST_CASE("every figure of a kind of pin is read within its range, and into its own field") {
  using K = PinKindData;
  // A signal in diode mode, whose two humps hold 0.97 of the boards.
  const auto signal = [](const K& kinds) { return *kinds.find(PinKind::signal, ReadingMode::diode); };
  const std::string at = "/kinds/1/modes/0";
  const std::vector<RangedFigure<K>> figures{
      {at + "/board_spread/spread", 1e-12, 1e9, [=](const K& k) { return signal(k).boardSpread; }},
      {at + "/board_spread/dof", 1.0, 1e6, [=](const K& k) { return signal(k).boardSpreadDof; }},
      {at + "/default/humps/1/centre", 0.0, 1e9, [=](const K& k) { return signal(k).humps.at(1).centre; }},
      {at + "/default/humps/1/scale", 1e-12, 1e9, [=](const K& k) { return signal(k).humps.at(1).scale; }},
      {at + "/default/humps/1/dof", 1.0, 1e6, [=](const K& k) { return signal(k).humps.at(1).dof; }}};
  test::checkRanges<K>("pin_kinds.json", figures, loadPinKinds);
  checkKeysAndSources("pin_kinds.json",
                      {"", "/kinds/1", at, at + "/board_spread", at + "/default", at + "/default/humps/0"},
                      {at}, loadPinKinds);
  CHECK_FALSE(loadPinKinds("/nowhere/kinds.json"));

  const auto kinds = loadPinKinds(NETMEND_SOURCE_DIR "/data/pin_kinds.json").value();
  REQUIRE(kinds.byKind.size() == pinKindCount);
  const json file = json::parse(dataText("pin_kinds.json"));
  for (const auto& row : file["kinds"]) {
    const auto kind = pinKindFrom(row["kind"].get<std::string>());
    REQUIRE(kind);
    CHECK(word(*kind) == row["kind"]);
    for (const auto& mode : row["modes"]) {
      const auto* read = kinds.find(*kind, *readingModeFrom(mode["mode"].get<std::string>()));
      REQUIRE(read != nullptr);
      CHECK(read->boardSpread == mode["board_spread"]["spread"]);
      CHECK(read->boardSpreadDof == mode["board_spread"]["dof"]);
      CHECK(read->source == mode["source"]);
      CHECK(read->overLimitShare.has_value() == mode.contains("default"));
      if (!mode.contains("default")) continue;
      CHECK(*read->overLimitShare == mode["default"]["over_limit_share"]);
      REQUIRE(read->humps.size() == mode["default"]["humps"].size());
      for (std::size_t i = 0; i < read->humps.size(); ++i) {
        const auto& hump = mode["default"]["humps"][i];
        CHECK(read->humps[i] ==
              ExpectedHump{hump["weight"], hump["centre"], hump["scale"], hump["dof"], 0.0});
      }
    }
  }
  CHECK(kinds.find(static_cast<PinKind>(6), ReadingMode::diode) == nullptr);
  CHECK(PinKindData{}.find(PinKind::unknown, ReadingMode::diode) == nullptr);
}

TEST_CASE("shares of a kind's default add up to one, and each kind and mode is given once") {
  const auto with = [](double overLimit, const std::vector<double>& weights) {
    json humps = json::array();
    for (const double weight : weights)
      humps.push_back({{"weight", weight}, {"centre", 0.5}, {"scale", 0.1}, {"dof", 4}});
    return placeWith("pin_kinds.json", "/kinds/1/modes/0",
                     {{"default", {{"over_limit_share", overLimit}, {"humps", humps}}}}, loadPinKinds);
  };
  const std::string at = "/kinds/1/modes/0/default";
  CHECK(with(1.0, {}).empty());
  CHECK(with(0.0, {1.0}).empty());
  CHECK(with(0.0, {0.0, 1.0}).empty());
  CHECK(with(0.25, {0.5, 0.25 + 0.95e-9}).empty());
  CHECK(with(0.25, {0.5, 0.25 - 0.95e-9}).empty());
  CHECK(with(0.25, {0.5, 0.25 + 1.05e-9}) == at);
  CHECK(with(0.25, {0.5, 0.25 - 1.05e-9}) == at);
  CHECK(with(0.5, {}) == at);
  CHECK(with(1.05, {}) == at + "/over_limit_share");
  CHECK(with(-0.05, {1.0}) == at + "/over_limit_share");
  CHECK(with(0.0, {1.05}) == at + "/humps/0/weight");
  CHECK(with(0.0, {1.0, -0.05}) == at + "/humps/1/weight");
  CHECK(placeWith("pin_kinds.json", "/kinds/1/modes/1", {{"mode", "diode"}}, loadPinKinds) ==
        "/kinds/1/modes/1/mode");
  CHECK(placeWith("pin_kinds.json", "/kinds/1", {{"kind", "unknown"}}, loadPinKinds) == "/kinds/1/kind");
  CHECK(placeWith("pin_kinds.json", "/kinds/1", {{"kind", "odd"}}, loadPinKinds) == "/kinds/1/kind");
  for (const auto& [kind, text] :
       std::vector<std::pair<PinKind, const char*>>{{PinKind::unknown, "unknown"},
                                                    {PinKind::signal, "signal"},
                                                    {PinKind::junction, "junction"},
                                                    {PinKind::supply, "supply"},
                                                    {PinKind::ground, "ground"},
                                                    {PinKind::unconnected, "unconnected"}}) {
    CHECK(word(kind) == text);
    CHECK(pinKindFrom(text) == kind);
  }
  CHECK_FALSE(pinKindFrom("odd"));
}

TEST_CASE("every figure of a meter is read within its range, and into its own field") {
  using M = std::vector<MeterProfile>;
  const auto diode = [](const M& meters) { return *meters[0].mode(ReadingMode::diode); };
  const auto range = [=](const M& meters) { return diode(meters).ranges[0]; };
  const std::string at = "/meters/0/modes/0";
  const std::vector<RangedFigure<M>> figures{
      {"/meters/0/lead_resistance_ohm", 0.0, 1000.0, [](const M& m) { return m[0].leadResistance.value; }},
      {"/meters/0/input_resistance_ohm", 1.0, 1e12, [](const M& m) { return m[0].inputResistance.value; }},
      {at + "/test_current_A", 1e-9, 100.0, [=](const M& m) { return diode(m).testCurrent->value; }},
      {at + "/compliance_V", 1e-3, 1000.0, [=](const M& m) { return diode(m).compliance->value; }},
      {at + "/short_below", 0.0, 1e12, [=](const M& m) { return diode(m).shortBelow.value(); }},
      {at + "/ranges/0/full_scale", 1e-9, 1e12, [=](const M& m) { return range(m).fullScale; }},
      {at + "/ranges/0/resolution", 1e-12, 1e12, [=](const M& m) { return range(m).resolution; }},
      {at + "/ranges/0/percent", 0.0, 100.0, [=](const M& m) { return range(m).percent; }},
      {at + "/ranges/0/digits", 0.0, 1000.0, [=](const M& m) { return range(m).digits; }}};
  test::checkRanges<M>("meters.json", figures, loadMeters);
  checkKeysAndSources("meters.json", {"", "/meters/0", at, at + "/ranges/0"}, {"/meters/0"}, loadMeters);

  const auto with = [](const std::string& pointer, const Members& members) {
    return placeWith("meters.json", pointer, members, loadMeters);
  };
  CHECK(with("/meters/0", {{"id", ""}}) == "/meters/0/id");
  const auto whole = json::parse(dataText("meters.json"));
  CHECK(with("/meters/1", {{"id", whole["meters"][0]["id"]}}) == "/meters/1/id");
  CHECK(with("/meters/0/modes/1", {{"mode", "diode"}}) == "/meters/0/modes/1/mode");
  CHECK(with(at, {{"ranges", json::array()}}) == at + "/ranges");
  // Ohms of the first meter: ranges ascend.
  CHECK(with("/meters/0/modes/2/ranges/1", {{"full_scale", 400.0}}) ==
        "/meters/0/modes/2/ranges/1/full_scale");
  CHECK(with("/meters/0/modes/2/ranges/1", {{"full_scale", 400.1}}).empty());
  const auto meters = loadMeters(NETMEND_SOURCE_DIR "/data/meters.json").value();
  REQUIRE(meters.size() == whole["meters"].size());
  for (std::size_t i = 0; i < meters.size(); ++i) {
    const auto& row = whole["meters"][i];
    CHECK(meters[i].id == row["id"]);
    CHECK(meters[i].name == row["name"]);
    CHECK(meters[i].source == row["source"]);
    REQUIRE(meters[i].modes.size() == row["modes"].size());
    for (std::size_t k = 0; k < meters[i].modes.size(); ++k) {
      const auto& mode = meters[i].modes[k];
      CHECK(word(mode.mode) == row["modes"][k]["mode"]);
      CHECK(mode.testCurrent.has_value() == row["modes"][k].contains("test_current_A"));
      CHECK(mode.compliance.has_value() == row["modes"][k].contains("compliance_V"));
      CHECK(mode.shortBelow.has_value() == row["modes"][k].contains("short_below"));
      CHECK(mode.ranges.size() == row["modes"][k]["ranges"].size());
      CHECK(mode.displayLimit() == row["modes"][k]["ranges"].back()["full_scale"]);
    }
  }
}

TEST_CASE("the folder of data is read whole, or its first bad file is named") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / (std::to_string(::getpid()) + "-data");
  fs::create_directories(folder);
  const std::vector<std::string> files{"meters.json", "pin_kinds.json", "verdict.json"};
  for (const auto& file : files) {
    const auto missing = loadProbingData(folder);
    REQUIRE_FALSE(missing);
    CHECK(missing.error().file == (folder / file).string());
    fs::copy_file(fs::path(NETMEND_SOURCE_DIR) / "data" / file, folder / file);
  }
  const auto read = loadProbingData(folder);
  REQUIRE(read);
  CHECK(read->meters.size() == test::data().meters.size());
  CHECK(read->kinds.byKind.size() == pinKindCount);
  CHECK(read->rules.faults.size() == 8);
  fs::remove_all(folder);
}
