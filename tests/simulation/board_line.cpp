#include "simulation/board_line.h"

#include <algorithm>
#include <set>

#include "netmend/board/value.h"
#include "netmend/netgraph/net_role.h"

namespace netmend::simulation {

namespace {

constexpr double mostSeriesOhms = 1000.0;
constexpr double coilOhms = 0.3; ///< of coils and ferrites, whose value is none in ohms

struct Way {
  PinId from, to;
  double ohms = 0.0; ///< zero: a resistor of unknown value
  bool resistor = false;
};

bool numberBefore(const std::string& a, const std::string& b) {
  return a.size() != b.size() ? a.size() < b.size() : a < b;
}

/// The current paths of a part by its kind.
std::vector<Way> waysThrough(const Board& board, const Lookup& lookup, const Part& part) {
  std::vector<Way> out;
  if (part.through.known()) {
    for (const Through& t : part.through.value)
      out.push_back({t.from, t.to, t.resistance.known() ? t.resistance.value.value : coilOhms, false});
    return out;
  }
  if (!part.kind.known()) return out;
  const PartKind kind = part.kind.value;
  const bool resistor = kind == PartKind::resistor || kind == PartKind::resistorArray;
  const bool coil = kind == PartKind::inductor || kind == PartKind::ferrite || kind == PartKind::fuse ||
                    kind == PartKind::choke;
  auto pins = lookup.pinsOf(part.id);
  const bool fits = pins.size() == 2 || (pins.size() % 2 == 0 && pins.size() >= 4 &&
                                         (kind == PartKind::resistorArray || kind == PartKind::choke));
  if (!fits || !(resistor || coil || kind == PartKind::zeroOhmLink)) return out;
  std::stable_sort(pins.begin(), pins.end(), [&](PinId a, PinId b) {
    return numberBefore(board.pins.find(a)->name, board.pins.find(b)->name);
  });
  double ohms = coil ? coilOhms : 0.0;
  if (kind == PartKind::zeroOhmLink) ohms = 1e-3;
  if (resistor && part.value.known())
    if (const auto value = parsePartValue(part.value.value); value && value->magnitude >= 1e-4)
      ohms = value->magnitude;
  for (std::size_t i = 0; i < pins.size() / 2; ++i)
    out.push_back({pins[i], pins[pins.size() - 1 - i], ohms, resistor});
  return out;
}

class Search {
public:
  explicit Search(const Lookup& lookup) : lookup_(lookup), board_(lookup.board()) {}

  std::optional<BoardLine> from(NetId start) {
    const Fact<NetRole> role = roleOf(*board_.nets.find(start));
    if (role.known() && (role.value == NetRole::ground || role.value == NetRole::supply)) return std::nullopt;
    enter(start);
    for (std::size_t at = 0; at < line_.nets.size(); ++at) {
      const auto& pins = lookup_.pinsOf(line_.nets[at]);
      if (line_.pins.size() + pins.size() > mostPins) return std::nullopt;
      addNet(line_.copper, lookup_, line_.nets[at]);
      if (line_.copper.bonds.size() > mostBonds) return std::nullopt;
      for (const PinId pin : pins)
        if (!addPin(pin)) return std::nullopt;
    }
    for (const auto& [part, way] : series_)
      bridge(part, way);
    const auto label = pieces(line_.copper, {});
    const bool whole = std::all_of(line_.pins.begin(), line_.pins.end(), [&](const LinePin& pin) {
      return label[pin.spot] == label[line_.pins.front().spot];
    });
    if (line_.pins.size() < 2 || !whole) return std::nullopt;
    findParting();
    return std::move(line_);
  }

private:
  void enter(NetId net) {
    if (entered_.insert(net).second) line_.nets.push_back(net);
  }

  bool addPin(PinId id) {
    const auto spot = line_.copper.leg(id);
    const Pin& pin = *board_.pins.find(id);
    const Part* part = board_.parts.find(pin.part);
    if (!spot) return false;
    const bool fitted = part && part->fitted.valueOr(true);
    line_.pins.push_back(
        {id, pin.part, *spot, part && part->kind.known() ? std::optional(part->kind.value) : std::nullopt});
    if (!fitted) return true;
    for (const Way& way : waysThrough(board_, lookup_, *part))
      if (way.from == id || way.to == id) leave(*spot, *part, way, way.from == id ? way.to : way.from);
    return true;
  }

  void leave(std::size_t spot, const Part& part, const Way& way, PinId other) {
    const Pin& far = *board_.pins.find(other);
    const Net* net = far.net.known() ? board_.nets.find(far.net.value) : nullptr;
    if (!net) return;
    const Fact<NetRole> role = roleOf(*net);
    const bool ground = role.known() && role.value == NetRole::ground;
    const bool supply = role.known() && role.value == NetRole::supply;
    const bool known = !way.resistor || way.ohms > 0.0;
    if (!ground && !supply && known && way.ohms <= mostSeriesOhms) {
      enter(net->id);
      series_.insert({part.id, {way.from, way.to, way.ohms}});
      return;
    }
    const auto to = ground ? LineExit::To::ground : supply ? LineExit::To::supply : LineExit::To::signal;
    line_.exits.push_back({spot, to, net->id, way.ohms});
  }

  struct Series {
    PinId from, to;
    double ohms;
    friend auto operator<=>(const Series&, const Series&) = default;
  };
  void bridge(PartId part, const Series& way) {
    const auto a = line_.copper.leg(way.from), b = line_.copper.leg(way.to);
    if (a && b)
      line_.copper.bonds.push_back({Bond::Kind::part, *a, *b, part.value, 0.0, std::max(way.ohms, 1e-3)});
  }

  void findParting() {
    for (std::size_t i = 0; i < line_.copper.bonds.size(); ++i) {
      if (line_.copper.bonds[i].kind == Bond::Kind::contact) continue;
      const auto label = pieces(line_.copper, {i});
      const auto first = label[line_.pins.front().spot];
      if (std::any_of(line_.pins.begin(), line_.pins.end(),
                      [&](const LinePin& pin) { return label[pin.spot] != first; }))
        line_.parting.push_back(i);
    }
  }

  const Lookup& lookup_;
  const Board& board_;
  BoardLine line_;
  std::set<NetId> entered_;
  std::set<std::pair<PartId, Series>> series_;
};

} // namespace

bool BoardLine::oneNode() const {
  return std::none_of(copper.bonds.begin(), copper.bonds.end(),
                      [](const Bond& bond) { return bond.kind == Bond::Kind::part; });
}

std::optional<BoardLine> boardLine(const Lookup& lookup, NetId net) {
  return Search(lookup).from(net);
}

} // namespace netmend::simulation
