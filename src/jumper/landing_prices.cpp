#include <algorithm>

#include "netmend/base/json_reader.h"
#include "netmend/jumper/landing.h"

namespace netmend {
namespace {

constexpr auto landingWords =
    std::to_array<Word<LandingKind>>({{LandingKind::testPad, "test_pad"},
                                      {LandingKind::partTerminal, "part_terminal"},
                                      {LandingKind::via, "via"},
                                      {LandingKind::tentedVia, "tented_via"},
                                      {LandingKind::outerTrack, "outer_track"},
                                      {LandingKind::connectorPin, "connector_pin"}});

Price readPrice(const JsonReader::Node& node) {
  return Price(node.number(0.0, 1e6));
}

bool hasPrice(const LandingPrices& prices, LandingKind kind) {
  return std::any_of(prices.kinds.begin(), prices.kinds.end(),
                     [&](const LandingRule& rule) { return rule.kind == kind; });
}

} // namespace

Price Landing::price() const {
  Price sum;
  for (const ScoreTerm& term : terms)
    sum += term.price;
  return sum;
}

bool Landing::has(LandingNote note) const {
  return std::find(notes.begin(), notes.end(), note) != notes.end();
}

ProbePoint probePointOf(const Landing& landing) {
  const PinId* pin = std::get_if<PinId>(&landing.object);
  return {pin != nullptr ? *pin : PinId{}, landing.point};
}

Price LandingPrices::of(LandingKind kind) const {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const LandingRule& r) { return r.kind == kind; });
  return found != kinds.end() ? found->price : Price{};
}

Result<LandingPrices> loadLandingPrices(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-landings");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "landings", "extras", "way"});
  LandingPrices prices;
  for (const auto& node : root.at("landings").items()) {
    node.onlyKeys({"landing", "price", "source"});
    const LandingKind kind = node.at("landing").oneOf(landingWords);
    if (hasPrice(prices, kind))
      node.at("landing").wrong(pattern("core", "a second price for the same landing"),
                               std::string(wordFor(landingWords, kind)), pattern("core", "one for each"));
    prices.kinds.push_back({kind, readPrice(node.at("price")), node.source()});
  }
  for (const auto& kind : landingWords)
    if (!hasPrice(prices, kind.value))
      root.at("landings")
          .wrong(pattern("core", "no price for a kind of landing"), {}, std::string(kind.text));

  const auto extras = root.at("extras");
  extras.onlyKeys(
      {"under_mask", "small_part", "small_width_mm", "unknown_far_side", "opened_margin", "source"});
  prices.underMask = readPrice(extras.at("under_mask"));
  prices.smallPart = readPrice(extras.at("small_part"));
  prices.smallWidth = extras.at("small_width_mm").mm(10);
  prices.unknownFarSide = readPrice(extras.at("unknown_far_side"));
  prices.opened = readPrice(extras.at("opened_margin"));
  extras.source();
  const auto way = root.at("way");
  way.onlyKeys({"per_bend", "tight", "tight_below_mm", "source"});
  prices.perBend = readPrice(way.at("per_bend"));
  prices.tight = readPrice(way.at("tight"));
  prices.tightBelow = way.at("tight_below_mm").mm(10);
  way.source();
  return reader->result(std::move(prices));
}

} // namespace netmend
