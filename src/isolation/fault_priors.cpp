#include "netmend/isolation/fault_priors.h"

#include <array>
#include <cmath>
#include <string>

#include "netmend/base/json_reader.h"
#include "netmend/board/words.h"

namespace netmend {

namespace {

using Node = JsonReader::Node;

struct Range {
  double least;
  double most;
};
constexpr Range shareRange{0.0, 1.0};
constexpr Range weightRange{0.0, 1e6};
constexpr Range positiveRange{1e-15, 1e12};

double numberIn(const Node& node, const std::string& member, Range range) {
  return node.at(member).number(range.least, range.most);
}

/// An object of a figure and where it comes from.
double entry(const Node& node, const std::string& member, Range range) {
  node.source();
  return numberIn(node, member, range);
}

void readTerminations(const Node& list, FaultPriors& priors) {
  for (const Node& item : list.items()) {
    TerminationShares shares;
    shares.junction = entry(item, "junction", shareRange);
    shares.resistive = numberIn(item, "resistive", shareRange);
    shares.none = numberIn(item, "none", shareRange);
    if (std::abs(shares.junction + shares.resistive + shares.none - 1.0) > 1e-6)
      item.wrong(pattern("core", "shares do not add up"), {}, pattern("core", "a sum of 1"));
    const Node part = item.at("part");
    if (part.is("unknown"))
      priors.unknownPart = shares;
    else if (part.is("otherwise"))
      priors.otherPart = shares;
    else
      priors.terminations[part.wordOf(
          [](std::string_view text) { return fromWord(boardWords<PartKind>, text); },
          "a kind of part, \"unknown\" or \"otherwise\"")] = shares;
  }
}

std::vector<DropRange> dropRanges(const Node& list) {
  std::vector<DropRange> result;
  double sum = 0.0;
  for (const Node& item : list.items()) {
    DropRange range;
    range.from = Volts(entry(item, "from_V", {0.01, 5.0}));
    range.to = Volts(numberIn(item, "to_V", {0.01, 5.0}));
    range.share = numberIn(item, "share", shareRange);
    if (!(range.to > range.from))
      item.wrong(pattern("core", "the range is empty"), {}, pattern("core", "\"to_V\" above \"from_V\""));
    sum += range.share;
    result.push_back(range);
  }
  if (result.empty() || std::abs(sum - 1.0) > 1e-6)
    list.wrong(pattern("core", "shares do not add up"), {}, pattern("core", "a sum of 1"));
  return result;
}

void readJunction(const Node& root, FaultPriors& priors) {
  const Node pullUp = root.at("pullUp");
  priors.mostPullUp = Ohms(entry(pullUp, "mostOhms", positiveRange));
  priors.railOhms = Ohms(numberIn(pullUp, "railOhms", positiveRange));
  priors.railFactor = numberIn(pullUp, "railFactor", {1.0, 1e6});
  const Node junction = root.at("junction");
  junction.source();
  priors.drops = dropRanges(junction.at("drops"));
  for (const Node& item : junction.at("alike").items())
    priors.alike.push_back(
        {Volts(entry(item, "spread_V", {1e-3, 1.0})), numberIn(item, "boards", shareRange)});
  double alike = 0.0;
  for (const auto& one : priors.alike)
    alike += one.share;
  if (alike > 1.0)
    junction.at("alike").wrong(pattern("core", "shares add up to too much"), {},
                               pattern("core", "at most 1 together"));
  priors.ownInAlike = numberIn(junction, "ownTechnologyAmongAlike", shareRange);
  priors.leastInput = Ohms(numberIn(junction, "leastInput_ohm", positiveRange));
  if (priors.leastInput >= priors.mostPullUp)
    junction.at("leastInput_ohm")
        .wrong(pattern("core", "inputs have no range"), {},
               pattern("core", "less than \"mostOhms\" of \"pullUp\""));
  priors.dropCurrent = Amperes(numberIn(junction, "atCurrent_A", {1e-9, 1.0}));
  priors.emission = numberIn(junction, "emission", {0.5, 10.0});
  priors.emissionSpread = numberIn(junction, "emissionSpread", {0.0, 5.0});
  priors.junctionSeries = Ohms(numberIn(junction, "series_ohm", {0.0, 1e6}));
  const Node spread = root.at("spread");
  priors.boardSpread = Volts(entry(spread, "boardToBoard_V", {1e-5, 1.0}));
  priors.readingSpread = Volts(numberIn(spread, "reading_V", {1e-5, 1.0}));
}

Result<FaultPriors> readPriors(JsonReader& reader) {
  const Node root = reader.root();
  FaultPriors priors{};
  const Node shares = root.at("shares");
  priors.soundShare = entry(shares.at("sound"), "share", shareRange);
  priors.noneOfTheseShare = entry(shares.at("noneOfThese"), "share", shareRange);
  priors.slippedShare = entry(shares.at("slippedProbe"), "share", shareRange);
  if (priors.soundShare + priors.noneOfTheseShare >= 1.0)
    shares.wrong(pattern("core", "leaves nothing for faults"), {},
                 pattern("core", "sound and none of these together below 1"));
  const Node weights = root.at("weights");
  priors.solderJoint = entry(weights.at("solderJoint"), "perPlace", weightRange);
  priors.connectorJoint = entry(weights.at("connectorJoint"), "perPlace", weightRange);
  priors.trackPerMm = entry(weights.at("track"), "perMm", weightRange);
  priors.via = entry(weights.at("via"), "perPlace", weightRange);
  priors.part = entry(weights.at("part"), "perPlace", weightRange);
  priors.unknownWayPerMm = entry(weights.at("unknownWay"), "perMm", weightRange);
  priors.unknownWayLength = Length::fromMm(numberIn(weights.at("unknownWay"), "mmWhenUnknown", {0.01, 1e4}));
  priors.deadPin = entry(weights.at("deadPin"), "perPlace", weightRange);
  priors.shortToGround = entry(weights.at("shortToGround"), "perLine", weightRange);
  readTerminations(root.at("terminations"), priors);
  readJunction(root, priors);
  return reader.result(std::move(priors));
}

Result<ProbeEfforts> readEfforts(JsonReader& reader) {
  const Node root = reader.root();
  constexpr Range seconds{0.1, 1e6};
  ProbeEfforts efforts{};
  const auto reach = [&](std::string_view name) -> std::optional<Seconds> {
    const Node place = root.at("reach").at(std::string(name));
    if (place.has("seconds") && place.at("seconds").isNull()) {
      place.source();
      return std::nullopt;
    }
    return Seconds(entry(place, "seconds", seconds));
  };
  for (const auto& word : boardWords<Access>)
    efforts.reach[word.value] = reach(word.text);
  efforts.scrapedTrack = reach("scraped_track");
  efforts.unknownReach = Seconds(entry(root.at("reach").at("unknown"), "seconds", seconds));
  efforts.secondLead = Seconds(entry(root.at("secondLead"), "seconds", seconds));
  efforts.scrapeEvery = Length::fromMm(entry(root.at("scrapeEvery_mm"), "value", {0.1, 1e4}));
  efforts.wrongRepair = Seconds(entry(root.at("wrongRepair"), "seconds", {0.0, 1e7}));
  efforts.wrongLift = Seconds(entry(root.at("wrongLift"), "seconds", {0.0, 1e7}));
  return reader.result(std::move(efforts));
}

} // namespace

Result<FaultPriors> readFaultPriors(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-fault-priors");
  if (!reader) return failure(reader.error());
  return readPriors(*reader);
}

Result<ProbeEfforts> readProbeEfforts(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-efforts");
  if (!reader) return failure(reader.error());
  return readEfforts(*reader);
}

std::optional<Seconds> ProbeEfforts::of(const Fact<Access>& access) const {
  if (!access.known()) return unknownReach;
  const auto it = reach.find(access.value);
  return it == reach.end() ? std::optional(unknownReach) : it->second;
}

} // namespace netmend
