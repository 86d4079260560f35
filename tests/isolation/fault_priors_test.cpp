#include <array>
#include <filesystem>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "drawn_line.h"
#include "support/ranged_figures.h"

using namespace netmend;
using netmend::test::changed;
using netmend::test::dataText;
using netmend::test::RangedFigure;
using netmend::test::Written;

namespace {

Result<FaultPriors> priorsIn(const std::string& text) {
  const Written file("priors.json", text);
  return readFaultPriors(file.path);
}

} // namespace

TEST_CASE("every figure of the fault priors is read within its range, and into its own field") {
  using F = FaultPriors;
  const std::vector<RangedFigure<F>> figures{
      {"/shares/slippedProbe/share", 0.0, 1.0, [](const F& p) { return p.slippedShare; }},
      {"/weights/solderJoint/perPlace", 0.0, 1e6, [](const F& p) { return p.solderJoint; }},
      {"/weights/connectorJoint/perPlace", 0.0, 1e6, [](const F& p) { return p.connectorJoint; }},
      {"/weights/track/perMm", 0.0, 1e6, [](const F& p) { return p.trackPerMm; }},
      {"/weights/via/perPlace", 0.0, 1e6, [](const F& p) { return p.via; }},
      {"/weights/part/perPlace", 0.0, 1e6, [](const F& p) { return p.part; }},
      {"/weights/unknownWay/perMm", 0.0, 1e6, [](const F& p) { return p.unknownWayPerMm; }},
      {"/weights/unknownWay/mmWhenUnknown", 0.01, 1e4, [](const F& p) { return p.unknownWayLength.mm(); }},
      {"/weights/deadPin/perPlace", 0.0, 1e6, [](const F& p) { return p.deadPin; }},
      {"/weights/shortToGround/perLine", 0.0, 1e6, [](const F& p) { return p.shortToGround; }},
      {"/pullUp/railOhms", 1e-15, 1e12, [](const F& p) { return p.railOhms.value; }},
      {"/pullUp/railFactor", 1.0, 1e6, [](const F& p) { return p.railFactor; }},
      {"/junction/alike/0/spread_V", 1e-3, 1.0, [](const F& p) { return p.alike.at(0).spread.value; }},
      {"/junction/alike/1/spread_V", 1e-3, 1.0, [](const F& p) { return p.alike.at(1).spread.value; }},
      {"/junction/ownTechnologyAmongAlike", 0.0, 1.0, [](const F& p) { return p.ownInAlike; }},
      {"/junction/atCurrent_A", 1e-9, 1.0, [](const F& p) { return p.dropCurrent.value; }},
      {"/junction/emission", 0.5, 10.0, [](const F& p) { return p.emission; }},
      {"/junction/emissionSpread", 0.0, 5.0, [](const F& p) { return p.emissionSpread; }},
      {"/junction/series_ohm", 0.0, 1e6, [](const F& p) { return p.junctionSeries.value; }},
      {"/spread/boardToBoard_V", 1e-5, 1.0, [](const F& p) { return p.boardSpread.value; }},
      {"/spread/reading_V", 1e-5, 1.0, [](const F& p) { return p.readingSpread.value; }}};
  test::checkRanges<F>("fault_priors.json", figures, readFaultPriors);
}

TEST_CASE("shares of a sound line, of none of these and behind each kind of part are read as they add up") {
  const std::string name = "fault_priors.json";
  const auto as = test::priorsFromData();
  CHECK(as.soundShare == 0.06);
  CHECK(as.noneOfTheseShare == 0.04);
  const auto placeWith = [&](double sound, double none) {
    auto json = nlohmann::json::parse(dataText(name));
    json["shares"]["sound"]["share"] = sound;
    json["shares"]["noneOfThese"]["share"] = none;
    const auto read = priorsIn(json.dump());
    if (!read) return wordsOf(read.error().place);
    CHECK(read->soundShare == sound);
    CHECK(read->noneOfTheseShare == none);
    return std::string();
  };
  CHECK(placeWith(0.0, 0.0).empty());
  CHECK(placeWith(0.5, 0.499).empty());
  CHECK(placeWith(0.5, 0.5) == "/shares");
  CHECK(placeWith(1.0, 0.0) == "/shares");
  CHECK(placeWith(0.0, 1.0) == "/shares");
  CHECK(placeWith(1.05, 0.0) == "/shares/sound/share");
  CHECK(placeWith(0.0, 1.05) == "/shares/noneOfThese/share");
  CHECK(placeWith(-0.01, 0.0) == "/shares/sound/share");
  CHECK(placeWith(0.0, -0.01) == "/shares/noneOfThese/share");

  const auto json = nlohmann::json::parse(dataText(name));
  const auto isAs = [](const TerminationShares& shares, const nlohmann::json& row) {
    return shares.junction == row["junction"] && shares.resistive == row["resistive"] &&
           shares.none == row["none"];
  };
  std::size_t kinds = 0;
  for (const auto& row : json["terminations"]) {
    INFO(row["part"]);
    if (row["part"] == "unknown")
      CHECK(isAs(as.unknownPart, row));
    else if (row["part"] == "otherwise")
      CHECK(isAs(as.otherPart, row));
    else
      ++kinds;
  }
  CHECK(as.terminations.size() == kinds);
  CHECK(isAs(as.terminations.at(PartKind::chip), json["terminations"][0]));
  CHECK(isAs(as.terminations.at(PartKind::battery), json["terminations"][10]));
  const auto sharesOf = [&](double junction, double resistive, double none) {
    auto with = json;
    with["terminations"][0]["junction"] = junction;
    with["terminations"][0]["resistive"] = resistive;
    with["terminations"][0]["none"] = none;
    const auto read = priorsIn(with.dump());
    return read ? std::string() : wordsOf(read.error().place);
  };
  CHECK(sharesOf(1.0, 0.0, 0.0).empty());
  CHECK(sharesOf(0.0, 1.0, 0.0).empty());
  CHECK(sharesOf(0.0, 0.0, 1.0).empty());
  CHECK(sharesOf(0.5, 0.25, 0.25 + 0.9e-6).empty());
  CHECK(sharesOf(0.5, 0.25, 0.25 - 0.9e-6).empty());
  CHECK(sharesOf(0.5, 0.25, 0.25 + 1.05e-6) == "/terminations/0");
  CHECK(sharesOf(0.5, 0.25, 0.25 - 1.05e-6) == "/terminations/0");
  CHECK(sharesOf(1.05, 0.0, -0.05) == "/terminations/0/junction");
  CHECK(sharesOf(0.0, 1.05, -0.05) == "/terminations/0/resistive");
  CHECK(sharesOf(-0.05, 0.0, 1.05) == "/terminations/0/junction");
  CHECK(sharesOf(0.0, 0.0, 1.05) == "/terminations/0/none");
}

TEST_CASE("ranges of drops are read where they have two ends, lie within 10 mV to 5 V and add up") {
  const std::string name = "fault_priors.json";
  const auto priors = test::priorsFromData();
  const auto json = nlohmann::json::parse(dataText(name));
  REQUIRE(priors.drops.size() == json["junction"]["drops"].size());
  for (std::size_t i = 0; i < priors.drops.size(); ++i) {
    CHECK(priors.drops[i].from.value == json["junction"]["drops"][i]["from_V"]);
    CHECK(priors.drops[i].to.value == json["junction"]["drops"][i]["to_V"]);
    CHECK(priors.drops[i].share == json["junction"]["drops"][i]["share"]);
  }
  const auto placeWith = [&](const std::vector<std::array<double, 3>>& ranges) {
    auto with = json;
    with["junction"]["drops"] = nlohmann::json::array();
    for (const auto& [from, to, share] : ranges)
      with["junction"]["drops"].push_back(
          {{"from_V", from}, {"to_V", to}, {"share", share}, {"source", "this test"}});
    const auto read = priorsIn(with.dump());
    if (!read) return wordsOf(read.error().place);
    CHECK(read->drops.size() == ranges.size());
    CHECK(read->drops.back().from.value == ranges.back()[0]);
    CHECK(read->drops.back().to.value == ranges.back()[1]);
    CHECK(read->drops.back().share == ranges.back()[2]);
    return std::string();
  };
  CHECK(placeWith({{0.01, 5.0, 1.0}}).empty());
  CHECK(placeWith({{0.0099, 5.0, 1.0}}) == "/junction/drops/0/from_V");
  CHECK(placeWith({{0.01, 5.01, 1.0}}) == "/junction/drops/0/to_V");
  CHECK(placeWith({{0.4, 0.4001, 1.0}}).empty());
  CHECK(placeWith({{0.4, 0.4, 1.0}}) == "/junction/drops/0");
  CHECK(placeWith({{0.3, 0.8, 1.0}, {0.5, 0.4, 0.0}}) == "/junction/drops/1");
  CHECK(placeWith({}) == "/junction/drops");
  CHECK(placeWith({{0.3, 0.8, 0.7}, {0.1, 0.3, 0.3}}).empty());
  CHECK(placeWith({{0.3, 0.8, 0.0}, {0.1, 0.3, 1.0}}).empty());
  CHECK(placeWith({{0.3, 0.8, 1.0 + 0.9e-6}, {0.1, 0.3, 0.0}}) == "/junction/drops/0/share");
  CHECK(placeWith({{0.3, 0.8, 0.7}, {0.1, 0.3, 0.3 + 0.9e-6}}).empty());
  CHECK(placeWith({{0.3, 0.8, 0.7}, {0.1, 0.3, 0.3 - 0.9e-6}}).empty());
  CHECK(placeWith({{0.3, 0.8, 0.7}, {0.1, 0.3, 0.3 + 1.05e-6}}) == "/junction/drops");
  CHECK(placeWith({{0.3, 0.8, 0.7}, {0.1, 0.3, 0.3 - 1.05e-6}}) == "/junction/drops");
  CHECK(placeWith({{0.3, 0.8, -0.01}, {0.1, 0.3, 1.01}}) == "/junction/drops/0/share");
  CHECK(placeWith({{0.3, 0.8, 1.01}}) == "/junction/drops/0/share");
}

TEST_CASE("boards whose chips are alike are at most all boards, and may be none") {
  const auto json = nlohmann::json::parse(dataText("fault_priors.json"));
  const auto priors = test::priorsFromData();
  REQUIRE(priors.alike.size() == json["junction"]["alike"].size());
  for (std::size_t i = 0; i < priors.alike.size(); ++i)
    CHECK(priors.alike[i].share == json["junction"]["alike"][i]["boards"]);
  const auto placeWith = [&](const std::vector<double>& boards) {
    auto with = json;
    with["junction"]["alike"] = nlohmann::json::array();
    for (const double share : boards)
      with["junction"]["alike"].push_back({{"spread_V", 0.02}, {"boards", share}, {"source", "this test"}});
    const auto read = priorsIn(with.dump());
    if (!read) return wordsOf(read.error().place);
    CHECK(read->alike.size() == boards.size());
    for (std::size_t i = 0; i < boards.size(); ++i)
      CHECK(read->alike[i].share == boards[i]);
    return std::string();
  };
  CHECK(placeWith({}).empty());
  CHECK(placeWith({0.0}).empty());
  CHECK(placeWith({1.0}).empty());
  CHECK(placeWith({0.5, 0.5}).empty());
  CHECK(placeWith({0.5, 0.51}) == "/junction/alike");
  CHECK(placeWith({1.01}) == "/junction/alike/0/boards");
  CHECK(placeWith({0.5, -0.01}) == "/junction/alike/1/boards");
}

TEST_CASE("an input that looks like a resistor is less than the greatest pull-up that counts") {
  const auto json = nlohmann::json::parse(dataText("fault_priors.json"));
  const auto placeWith = [&](double least, double most) {
    auto with = json;
    with["junction"]["leastInput_ohm"] = least;
    with["pullUp"]["mostOhms"] = most;
    const auto read = priorsIn(with.dump());
    if (!read) return wordsOf(read.error().place);
    CHECK(read->leastInput.value == least);
    CHECK(read->mostPullUp.value == most);
    return std::string();
  };
  CHECK(placeWith(100.0, 1e5).empty());
  CHECK(placeWith(1e-15, 1e12).empty());
  CHECK(placeWith(100.0, 101.0).empty());
  CHECK(placeWith(100.0, 100.0) == "/junction/leastInput_ohm");
  CHECK(placeWith(100.0, 50.0) == "/junction/leastInput_ohm");
  CHECK(placeWith(0.9e-15, 1e5) == "/junction/leastInput_ohm");
  CHECK(placeWith(1.05e12, 1.1e12) == "/pullUp/mostOhms");
  CHECK(placeWith(100.0, 1.05e12) == "/pullUp/mostOhms");
}

TEST_CASE("every figure of the efforts is read within its range, and into its own field") {
  using E = ProbeEfforts;
  const auto reach = [](Access access) {
    return [access](const E& e) { return e.reach.at(access).value_or(Seconds(-1)).value; };
  };
  const std::vector<RangedFigure<E>> figures{
      {"/reach/open/seconds", 0.1, 1e6, reach(Access::open)},
      {"/reach/under_mask/seconds", 0.1, 1e6, reach(Access::underMask)},
      {"/reach/under_lid/seconds", 0.1, 1e6, reach(Access::underLid)},
      {"/reach/unknown/seconds", 0.1, 1e6, [](const E& e) { return e.unknownReach.value; }},
      {"/reach/scraped_track/seconds", 0.1, 1e6,
       [](const E& e) { return e.scrapedTrack.value_or(Seconds(-1)).value; }},
      {"/secondLead/seconds", 0.1, 1e6, [](const E& e) { return e.secondLead.value; }},
      {"/scrapeEvery_mm/value", 0.1, 1e4, [](const E& e) { return e.scrapeEvery.mm(); }},
      {"/wrongRepair/seconds", 0.0, 1e7, [](const E& e) { return e.wrongRepair.value; }},
      {"/wrongLift/seconds", 0.0, 1e7, [](const E& e) { return e.wrongLift.value; }}};
  test::checkRanges<E>("efforts.json", figures, readProbeEfforts);

  const auto efforts = test::effortsFromData();
  CHECK(efforts.of(fromUser(Access::underMask)) == Seconds(60));
  CHECK(efforts.of(guessed(Access::underMask)) == Seconds(60));
  CHECK(efforts.of({}) == Seconds(20));
  ProbeEfforts sparse;
  sparse.unknownReach = Seconds(33);
  CHECK(sparse.of(fromUser(Access::open)) == Seconds(33));
  // Nobody can reach such a place, and a source is wanted for that as well.
  const Written none("efforts.json", changed("efforts.json", "/reach/scraped_track/seconds", nullptr));
  CHECK_FALSE(readProbeEfforts(none.path).value().scrapedTrack.has_value());
  const Written unsaid("efforts.json", changed("efforts.json", "/reach/under_part/source", ""));
  CHECK(wordsOf(readProbeEfforts(unsaid.path).error().place) == "/reach/under_part/source");
  for (const char* place :
       {"/reach/open", "/reach/unknown", "/secondLead", "/scrapeEvery_mm", "/wrongRepair", "/wrongLift"}) {
    const Written spoilt("efforts.json", changed("efforts.json", std::string(place) + "/source", ""));
    CHECK(wordsOf(readProbeEfforts(spoilt.path).error().place) == std::string(place) + "/source");
  }
  CHECK_FALSE(readProbeEfforts("/nowhere/efforts.json").has_value());
}

TEST_CASE("a figure of the fault priors without a source is refused") {
  for (const char* place :
       {"/shares/sound", "/shares/noneOfThese", "/shares/slippedProbe", "/weights/solderJoint",
        "/weights/connectorJoint", "/weights/track", "/weights/via", "/weights/part", "/weights/unknownWay",
        "/weights/deadPin", "/weights/shortToGround", "/terminations/3", "/pullUp", "/junction",
        "/junction/drops/1", "/junction/alike/1", "/spread"}) {
    const auto read = priorsIn(changed("fault_priors.json", std::string(place) + "/source", ""));
    INFO(place);
    REQUIRE_FALSE(read.has_value());
    CHECK(wordsOf(read.error().place) == std::string(place) + "/source");
  }
}

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
