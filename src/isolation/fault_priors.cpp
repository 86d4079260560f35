#include "netmend/isolation/fault_priors.h"

#include <array>
#include <cmath>
#include <limits>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "netmend/base/file.h"
#include "netmend/base/words.h"

namespace netmend {

namespace {

using Json = nlohmann::json;

constexpr std::array<Word<PartKind>, 22> partWords{{{PartKind::resistor, "resistor"},
                                                    {PartKind::zeroOhmLink, "zeroOhmLink"},
                                                    {PartKind::resistorArray, "resistorArray"},
                                                    {PartKind::capacitor, "capacitor"},
                                                    {PartKind::inductor, "inductor"},
                                                    {PartKind::ferrite, "ferrite"},
                                                    {PartKind::choke, "choke"},
                                                    {PartKind::filter, "filter"},
                                                    {PartKind::fuse, "fuse"},
                                                    {PartKind::diode, "diode"},
                                                    {PartKind::led, "led"},
                                                    {PartKind::transistor, "transistor"},
                                                    {PartKind::chip, "chip"},
                                                    {PartKind::crystal, "crystal"},
                                                    {PartKind::connector, "connector"},
                                                    {PartKind::switchOrKey, "switchOrKey"},
                                                    {PartKind::battery, "battery"},
                                                    {PartKind::antenna, "antenna"},
                                                    {PartKind::shield, "shield"},
                                                    {PartKind::testPoint, "testPoint"},
                                                    {PartKind::mechanical, "mechanical"},
                                                    {PartKind::other, "other"}}};

constexpr std::array<Word<Access>, 4> accessWords{{{Access::open, "open"},
                                                   {Access::underMask, "underMask"},
                                                   {Access::underLid, "underLid"},
                                                   {Access::underPart, "underPart"}}};

struct Range {
  double least;
  double most;
};
constexpr Range shareRange{0.0, 1.0};
constexpr Range weightRange{0.0, 1e6};
constexpr Range positiveRange{1e-15, 1e12};

/// Walks a data file and keeps the first thing that is wrong, with its place.
class DataFile {
public:
  DataFile(std::string_view text, std::string_view fileName) : file_(fileName) {
    root_ = Json::parse(text, nullptr, false);
    if (root_.is_discarded()) fail("", "is not JSON", "", "a JSON object");
  }

  void expectFormat(std::string_view format) {
    const Json* at = find("/format");
    if (at && *at != std::string(format)) fail("/format", "another kind of file", at->dump(), format);
    const Json* version = find("/version");
    if (version && *version != 1) fail("/version", "a version that cannot be read", version->dump(), "1");
  }

  [[nodiscard]] const Json* find(const std::string& pointer) {
    if (error_) return nullptr;
    const Json::json_pointer at(pointer);
    if (root_.contains(at)) return &root_.at(at);
    fail(pointer, "is missing", "", "a value");
    return nullptr;
  }

  double number(const std::string& pointer, Range range) {
    const Json* at = find(pointer);
    if (!at) return range.least;
    if (!at->is_number()) return fail(pointer, "is not a number", at->dump(), "a number"), range.least;
    const auto value = at->get<double>();
    if (!(value >= range.least && value <= range.most)) {
      fail(pointer, "is out of range", at->dump(), fmt::format("{} to {}", range.least, range.most));
      return range.least;
    }
    return value;
  }

  /// Each entry says where its figure comes from.
  void expectSource(const std::string& pointer) {
    const Json* at = find(pointer + "/source");
    if (at && !(at->is_string() && !at->get_ref<const std::string&>().empty()))
      fail(pointer + "/source", "is no source", at->dump(), "a text");
  }

  double entry(const std::string& pointer, std::string_view member, Range range) {
    expectSource(pointer);
    return number(fmt::format("{}/{}", pointer, member), range);
  }

  void fail(std::string_view place, std::string_view message, std::string_view found,
            std::string_view expected) {
    if (error_) return;
    const auto shown = found.size() > 60 ? std::string(found.substr(0, 60)) + " …" : std::string(found);
    error_ = Error{std::string(message), file_, std::string(place), shown, std::string(expected)};
  }

  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

private:
  std::string file_;
  Json root_;
  std::optional<Error> error_;
};

void readTerminations(DataFile& file, FaultPriors& priors) {
  const Json* list = file.find("/terminations");
  if (!list) return;
  if (!list->is_array()) return file.fail("/terminations", "is no list", "", "a list");
  for (std::size_t i = 0; i < list->size(); ++i) {
    const auto place = fmt::format("/terminations/{}", i);
    TerminationShares shares;
    shares.junction = file.entry(place, "junction", shareRange);
    shares.resistive = file.number(place + "/resistive", shareRange);
    shares.none = file.number(place + "/none", shareRange);
    const Json* part = file.find(place + "/part");
    if (!part) return;
    if (std::abs(shares.junction + shares.resistive + shares.none - 1.0) > 1e-6)
      return file.fail(place, "shares do not add up", "", "a sum of 1");
    const auto name = part->is_string() ? part->get<std::string>() : std::string();
    if (name == "unknown")
      priors.unknownPart = shares;
    else if (name == "otherwise")
      priors.otherPart = shares;
    else if (const auto kind = fromWord(partWords, name))
      priors.terminations[*kind] = shares;
    else
      return file.fail(place + "/part", "unknown kind of part", part->dump(),
                       "a kind of part, \"unknown\" or \"otherwise\"");
  }
}

void readJunction(DataFile& file, FaultPriors& priors) {
  file.expectSource("/pullUp");
  priors.mostPullUp = Ohms(file.number("/pullUp/mostOhms", positiveRange));
  priors.railOhms = Ohms(file.number("/pullUp/railOhms", positiveRange));
  priors.railFactor = file.number("/pullUp/railFactor", {1.0, 1e6});
  file.expectSource("/junction");
  priors.drop = Volts(file.number("/junction/drop_V", {0.05, 5.0}));
  priors.dropSpread = Volts(file.number("/junction/dropSpread_V", {1e-4, 5.0}));
  priors.dropCurrent = Amperes(file.number("/junction/atCurrent_A", {1e-9, 1.0}));
  priors.emission = file.number("/junction/emission", {0.5, 10.0});
  priors.emissionSpread = file.number("/junction/emissionSpread", {0.0, 5.0});
  priors.junctionSeries = Ohms(file.number("/junction/series_ohm", {0.0, 1e6}));
  priors.areaFactor = file.number("/junction/areaFactor", {1.0, 100.0});
  file.expectSource("/spread");
  priors.boardSpread = Volts(file.number("/spread/boardToBoard_V", {1e-5, 1.0}));
  priors.readingSpread = Volts(file.number("/spread/reading_V", {1e-5, 1.0}));
}

} // namespace

Result<FaultPriors> parseFaultPriors(std::string_view text, std::string_view fileName) {
  DataFile file(text, fileName);
  file.expectFormat("netmend-fault-priors");
  FaultPriors priors{};
  priors.soundShare = file.entry("/shares/sound", "share", shareRange);
  priors.noneOfTheseShare = file.entry("/shares/noneOfThese", "share", shareRange);
  priors.slippedShare = file.entry("/shares/slippedProbe", "share", shareRange);
  if (priors.soundShare + priors.noneOfTheseShare >= 1.0)
    file.fail("/shares", "leaves nothing for faults", "", "sound and none of these together below 1");
  priors.solderJoint = file.entry("/weights/solderJoint", "perPlace", weightRange);
  priors.connectorJoint = file.entry("/weights/connectorJoint", "perPlace", weightRange);
  priors.trackPerMm = file.entry("/weights/track", "perMm", weightRange);
  priors.via = file.entry("/weights/via", "perPlace", weightRange);
  priors.part = file.entry("/weights/part", "perPlace", weightRange);
  priors.unknownWayPerMm = file.entry("/weights/unknownWay", "perMm", weightRange);
  priors.unknownWayLength = Length::fromMm(file.number("/weights/unknownWay/mmWhenUnknown", {0.01, 1e4}));
  priors.deadPin = file.entry("/weights/deadPin", "perPlace", weightRange);
  priors.shortToGround = file.entry("/weights/shortToGround", "perLine", weightRange);
  readTerminations(file, priors);
  readJunction(file, priors);
  if (file.error()) return failure(*file.error());
  return priors;
}

Result<FaultPriors> readFaultPriors(const std::filesystem::path& path) {
  const auto text = readFile(path, 1u << 20);
  if (!text) return failure(text.error());
  return parseFaultPriors(*text, path.string());
}

Result<ProbeEfforts> parseProbeEfforts(std::string_view text, std::string_view fileName) {
  DataFile file(text, fileName);
  file.expectFormat("netmend-efforts");
  constexpr Range seconds{0.1, 1e6};
  ProbeEfforts efforts{};
  const auto reach = [&](const std::string& name) -> std::optional<Seconds> {
    const auto place = "/reach/" + name;
    const Json* at = file.find(place + "/seconds");
    if (at && at->is_null()) {
      file.expectSource(place);
      return std::nullopt;
    }
    return Seconds(file.entry(place, "seconds", seconds));
  };
  for (const auto& word : accessWords)
    efforts.reach[word.value] = reach(std::string(word.text));
  efforts.scrapedTrack = reach("scrapedTrack");
  efforts.unknownReach = Seconds(file.entry("/reach/unknown", "seconds", seconds));
  efforts.secondLead = Seconds(file.entry("/secondLead", "seconds", seconds));
  efforts.scrapeEvery = Length::fromMm(file.entry("/scrapeEvery_mm", "value", {0.1, 1e4}));
  efforts.wrongRepair = Seconds(file.entry("/wrongRepair", "seconds", {0.0, 1e7}));
  if (file.error()) return failure(*file.error());
  return efforts;
}

Result<ProbeEfforts> readProbeEfforts(const std::filesystem::path& path) {
  const auto text = readFile(path, 1u << 20);
  if (!text) return failure(text.error());
  return parseProbeEfforts(*text, path.string());
}

std::optional<Seconds> ProbeEfforts::of(const Fact<Access>& access) const {
  if (!access.known()) return unknownReach;
  const auto it = reach.find(access.value);
  return it == reach.end() ? std::optional(unknownReach) : it->second;
}

} // namespace netmend
