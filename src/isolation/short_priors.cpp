#include "netmend/isolation/short_priors.h"

#include "netmend/base/json_reader.h"
#include "netmend/board/words.h"

namespace netmend {

namespace {

using ShortNode = JsonReader::Node;

constexpr double mostFactor = 1000.0;

double sourced(const ShortNode& node, const std::string& member, double least, double most) {
  node.source();
  return node.at(member).number(least, most);
}

double weightIn(const ShortNode& node, const std::string& member) {
  return sourced(node, member, 0.0, 1e6);
}

double factorIn(const ShortNode& node, const std::string& member) {
  return node.at(member).number(1.0, mostFactor);
}

Ohms ohmsIn(const ShortNode& node, const std::string& member) {
  return Ohms(sourced(node, member, 1e-9, 1e6));
}

void readParts(const ShortNode& list, ShortPriors& priors) {
  for (const ShortNode& item : list.items()) {
    const double weight = weightIn(item, "weight");
    const ShortNode part = item.at("part");
    if (part.is("unknown"))
      priors.unknownPart = weight;
    else if (part.is("otherwise"))
      priors.otherPart = weight;
    else
      priors.parts[part.wordOf([](std::string_view text) { return fromWord(boardWords<PartKind>, text); },
                               "a kind of part, \"unknown\" or \"otherwise\"")] = weight;
  }
}

void readGaps(const ShortNode& root, ShortPriors& priors) {
  const ShortNode bridge = root.at("bridge");
  priors.bridge = weightIn(bridge, "perPlace");
  priors.usualBridgeGap = bridge.at("usualGap_mm").mmAboveZero(10.0);
  priors.mostBridgeGap = bridge.at("mostGap_mm").mmAboveZero(10.0);
  const ShortNode near = root.at("nearGround");
  priors.nearGroundPerMm = weightIn(near, "perMm");
  priors.usualGap = near.at("usualGap_mm").mmAboveZero(10.0);
  priors.mostGap = near.at("mostGap_mm").mmAboveZero(10.0);
}

void readResistances(const ShortNode& root, ShortPriors& priors) {
  const ShortNode shorted = root.at("resistance");
  priors.shortResistance = ohmsIn(shorted, "short_ohm");
  priors.shortFactor = factorIn(shorted, "factor");
  const ShortNode copper = root.at("copper");
  copper.source();
  priors.thicknessFactor = factorIn(copper, "thicknessFactor");
  priors.trackFactor = factorIn(copper, "trackFactor");
  priors.viaFactor = factorIn(copper, "viaFactor");
  const ShortNode way = root.at("unknownWay");
  priors.unknownWayPerMm = ohmsIn(way, "perMm_ohm");
  priors.unknownWayFactor = factorIn(way, "factor");
  priors.unknownLineFactor = factorIn(way, "lineFactor");
  priors.unknownWayLength = way.at("mmWhenUnknown").mmAboveZero(1e4);
  const ShortNode part = root.at("unknownPart");
  priors.unknownPartOhms = ohmsIn(part, "ohm");
  priors.unknownPartFactor = factorIn(part, "factor");
  const ShortNode reading = root.at("reading");
  priors.repeatOhms = ohmsIn(reading, "repeat_ohm");
  priors.repeatVolts = Volts(reading.at("repeat_V").number(1e-9, 1.0));
  priors.mostShort = ohmsIn(root.at("mostShort_ohm"), "value");
}

Result<ShortPriors> readShorts(JsonReader& reader) {
  ShortPriors priors{};
  const ShortNode shares = reader.root().at("shares");
  priors.slippedShare = sourced(shares.at("slippedProbe"), "share", 0.0, 0.5);
  const ShortNode root = reader.root().at("shorts");
  priors.noneOfTheseShare = sourced(root.at("noneOfThese"), "share", 0.0, 0.9);
  readParts(root.at("parts"), priors);
  priors.partToSupply = sourced(root.at("partToSupply"), "factor", 0.0, 1.0);
  readGaps(root, priors);
  readResistances(root, priors);
  const ShortNode warm = root.at("warmSpot");
  priors.warmFactor = sourced(warm, "factor", 1.0, 1e6);
  priors.warmReach = warm.at("reach_mm").mmAboveZero(100.0);
  priors.leastRise = Kelvins(warm.at("leastRise_K").number(0.1, 100.0));
  priors.damageFactor = sourced(root.at("damage"), "factor", 1.0, 1e6);
  return reader.result(std::move(priors));
}

} // namespace

double ShortPriors::weightOf(const Fact<PartKind>& kind) const {
  if (!kind.known()) return unknownPart;
  const auto found = parts.find(kind.value);
  return found == parts.end() ? otherPart : found->second;
}

Result<ShortPriors> readShortPriors(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-fault-priors");
  if (!reader) return failure(reader.error());
  return readShorts(*reader);
}

} // namespace netmend
