#include "netmend/probing/pin_kind.h"

#include <algorithm>
#include <cmath>

#include "by_mode.h"
#include "netmend/base/words.h"
#include "netmend/netgraph/net_role.h"
#include "netmend/probing/comparison.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

constexpr std::array<Word<PinKind>, pinKindCount> kindWords{{
    {PinKind::unknown, "unknown"},
    {PinKind::signal, "signal"},
    {PinKind::junction, "junction"},
    {PinKind::supply, "supply"},
    {PinKind::ground, "ground"},
    {PinKind::unconnected, "unconnected"},
}};

bool certainJunction(const Pin& pin) {
  return pin.termination.certain() && pin.termination.value == Termination::junction;
}

ExpectedHump readHump(const JsonReader::Node& node) {
  node.onlyKeys({"weight", "centre", "scale", "dof"});
  ExpectedHump hump;
  hump.weight = node.at("weight").number(0.0, 1.0);
  hump.centre = node.at("centre").number(0.0, 1e9);
  hump.scale = node.at("scale").number(1e-12, 1e9);
  hump.dof = node.at("dof").number(1.0, 1e6);
  return hump;
}

PinKindDefault readDefault(const JsonReader::Node& node) {
  node.onlyKeys({"mode", "default", "board_spread", "source"});
  PinKindDefault out;
  out.mode = probing::readMode(node.at("mode"));
  out.source = node.source();
  const auto spread = node.at("board_spread");
  spread.onlyKeys({"spread", "dof"});
  out.boardSpread = spread.at("spread").number(1e-12, 1e9);
  out.boardSpreadDof = spread.at("dof").number(1.0, 1e6);
  if (!node.has("default")) return out;
  const auto given = node.at("default");
  given.onlyKeys({"over_limit_share", "humps"});
  out.overLimitShare = given.at("over_limit_share").number(0.0, 1.0);
  double sum = *out.overLimitShare;
  for (const auto& item : given.at("humps").items()) {
    out.humps.push_back(readHump(item));
    sum += out.humps.back().weight;
  }
  if (std::abs(sum - 1.0) > 1e-9)
    given.wrong(pattern("core", "shares do not add up"), std::to_string(sum),
                pattern("core", "over_limit_share and all weights together 1"));
  return out;
}

} // namespace

std::string_view word(PinKind kind) {
  return wordFor(kindWords, kind);
}
std::optional<PinKind> pinKindFrom(std::string_view text) {
  return fromWord(kindWords, text);
}

PinKind pinKind(const Lookup& lookup, PinId id) {
  const Pin* pin = lookup.board().pins.find(id);
  if (pin == nullptr) return PinKind::unknown;
  if (!pin->net.known()) return certainJunction(*pin) ? PinKind::junction : PinKind::unknown;
  const Net* net = lookup.board().nets.find(pin->net.value);
  if (net == nullptr) return PinKind::unconnected;
  const auto role = roleOf(*net);
  if (role.known() && role.value == NetRole::ground) return PinKind::ground;
  if (role.known() && role.value == NetRole::supply) return PinKind::supply;
  const auto& others = lookup.pinsOf(net->id);
  const bool junction = std::any_of(others.begin(), others.end(), [&](PinId other) {
    return certainJunction(*lookup.board().pins.find(other));
  });
  return junction ? PinKind::junction : PinKind::signal;
}

const PinKindDefault* PinKindData::find(PinKind kind, ReadingMode mode) const {
  const auto index = static_cast<std::size_t>(kind);
  if (index >= byKind.size()) return nullptr;
  return probing::entryFor(byKind[index], mode);
}

Result<PinKindData> loadPinKinds(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-pin-kinds");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "kinds"});
  PinKindData data;
  data.byKind.resize(pinKindCount);
  for (const auto& item : root.at("kinds").items()) {
    item.onlyKeys({"kind", "modes"});
    const auto kind = item.at("kind").oneOf(kindWords);
    auto& modes = data.byKind[static_cast<std::size_t>(kind)];
    if (!modes.empty())
      item.at("kind").wrong(pattern("core", "kind given twice"), std::string(word(kind)),
                            pattern("core", "each kind once"));
    modes = probing::readEachMode(item.at("modes"), readDefault);
  }
  return reader->result(std::move(data));
}

} // namespace netmend
