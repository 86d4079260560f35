#include <algorithm>

#include "data_reader.h"
#include "netmend/jumper/landing.h"

namespace netmend {
namespace {

/// In the order of LandingKind.
const std::vector<std::string_view> landingWords{"test_pad",   "part_terminal", "via",
                                                 "tented_via", "outer_track",   "connector_pin"};
constexpr std::string_view kindNames[] = {"test pad",   "part terminal", "via",
                                          "tented via", "scraped track", "connector pin"};

} // namespace

std::string_view nameOf(LandingKind kind) {
  return kindNames[static_cast<std::size_t>(kind)];
}

Price Landing::price() const {
  Price sum;
  for (const ScoreTerm& term : terms)
    sum += term.price;
  return sum;
}

Price LandingPrices::of(LandingKind kind) const {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const LandingRule& r) { return r.kind == kind; });
  return found != kinds.end() ? found->price : Price{};
}

Result<LandingPrices> loadLandingPrices(const std::filesystem::path& path) {
  auto file = jumper::openData(path, "netmend-landings");
  if (!file) return failure(file.error());
  const auto root = jumper::rootOf(*file);
  root.onlyKeys({"format", "version", "landings", "extras", "way"});
  LandingPrices prices;
  std::vector<bool> given(landingWords.size(), false);
  for (const auto& node : root.at("landings").items()) {
    node.onlyKeys({"landing", "price", "source"});
    const std::size_t kind = node.at("landing").oneOf(landingWords);
    if (given[kind])
      node.at("landing").wrong("a second price for the same landing", std::string(landingWords[kind]),
                               "one for each");
    given[kind] = true;
    prices.kinds.push_back(
        {static_cast<LandingKind>(kind), node.at("price").price(), node.at("source").text()});
  }
  for (std::size_t kind = 0; kind < given.size(); ++kind)
    if (!given[kind])
      root.at("landings").wrong("no price for a kind of landing", "", std::string(landingWords[kind]));

  const auto extras = root.at("extras");
  extras.onlyKeys(
      {"under_mask", "small_part", "small_width_mm", "unknown_far_side", "opened_margin", "source"});
  prices.underMask = extras.at("under_mask").price();
  prices.smallPart = extras.at("small_part").price();
  prices.smallWidth = extras.at("small_width_mm").mm(10);
  prices.unknownFarSide = extras.at("unknown_far_side").price();
  prices.opened = extras.at("opened_margin").price();
  static_cast<void>(extras.at("source").text());
  const auto way = root.at("way");
  way.onlyKeys({"per_bend", "tight", "tight_below_mm", "source"});
  prices.perBend = way.at("per_bend").price();
  prices.tight = way.at("tight").price();
  prices.tightBelow = way.at("tight_below_mm").mm(10);
  static_cast<void>(way.at("source").text());
  if (file->error) return failure(*file->error);
  return prices;
}

} // namespace netmend
