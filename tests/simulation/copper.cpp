#include "simulation/copper.h"

#include <map>
#include <numeric>

#include "netmend/board/shape.h"
#include "reference/own_copper.h"

namespace netmend::simulation {

using test::nearer;
using test::OwnCopper;
using test::OwnShape;

namespace {

constexpr double touch = 5.0;             ///< nm
constexpr double copperMetre = 1.7241e-8; ///< Ω·m at 20 °C (IEC 60028:1925)
constexpr double foil = 35e-6;            ///< m

struct Item {
  OwnShape shape;
  int first = 0;
  int last = 0;
  std::vector<std::size_t> spots; ///< by layer from `first`, or one for all
  [[nodiscard]] bool on(int layer) const { return layer >= first && layer <= last; }
  [[nodiscard]] std::size_t spotOn(int layer) const {
    return spots.size() == 1 ? spots.front() : spots[static_cast<std::size_t>(layer - first)];
  }
};

struct Run {
  const Track* track = nullptr;
  Ring way;
  double radius = 0.0;
  int layer = 0;
  OwnShape shape;
  double mm = 0.0;
  std::map<double, std::size_t> joints; ///< by mm along
};

double millimetresOf(const Ring& way) {
  double mm = 0.0;
  for (std::size_t i = 1; i < way.size(); ++i)
    mm += std::hypot((way[i].x - way[i - 1].x).mm(), (way[i].y - way[i - 1].y).mm());
  return mm;
}

/// Where the way comes nearest to a point: mm along it, and how near (nm).
std::pair<double, double> nearestOn(const Ring& way, Point p) {
  double best = std::numeric_limits<double>::infinity();
  double where = 0.0;
  double before = 0.0;
  for (std::size_t i = 1; i < way.size(); ++i) {
    const Point a = way[i - 1], b = way[i];
    const double dx = (b.x - a.x).mm(), dy = (b.y - a.y).mm();
    const double length = std::hypot(dx, dy);
    const double t =
        length > 0.0
            ? std::clamp(((p.x - a.x).mm() * dx + (p.y - a.y).mm() * dy) / (length * length), 0.0, 1.0)
            : 0.0;
    const double off = std::hypot((p.x - a.x).mm() - t * dx, (p.y - a.y).mm() - t * dy);
    if (off < best) {
      best = off;
      where = before + t * length;
    }
    before += length;
  }
  return {where, 1e6 * best};
}

Point pointOn(const Ring& way, double along) {
  for (std::size_t i = 1; i < way.size(); ++i) {
    const double dx = (way[i].x - way[i - 1].x).mm(), dy = (way[i].y - way[i - 1].y).mm();
    const double length = std::hypot(dx, dy);
    if (along <= length && length > 0.0)
      return way[i - 1] + Point{Length::fromMm(dx * along / length), Length::fromMm(dy * along / length)};
    along -= length;
  }
  return way.back();
}

class NetCopper {
public:
  NetCopper(Copper& out, const Lookup& lookup, NetId net)
      : out_(out), lookup_(lookup), board_(lookup.board()) {
    for (const PinId pin : lookup.pinsOf(net))
      addPin(pin);
    for (const Via& via : board_.vias)
      if (via.net.known() && via.net.value == net) addVia(via);
    for (const Area& area : board_.areas)
      if (area.net.known() && area.net.value == net && area.layer.known()) addArea(area);
    for (const Track& track : board_.tracks)
      if (track.net.known() && track.net.value == net) addTrack(track);
    joinItems();
    for (Run& run : runs_)
      meetItems(run);
    for (Run& run : runs_)
      for (Run& other : runs_)
        if (&run != &other && run.layer == other.layer) meetRuns(run, other);
    for (const Run& run : runs_)
      layPieces(run);
  }

private:
  std::size_t spot(Spot s) {
    out_.spots.push_back(s);
    return out_.spots.size() - 1;
  }
  void contact(std::size_t a, std::size_t b) {
    if (a != b) out_.bonds.push_back({Bond::Kind::contact, a, b, 0, 0.0, 0.0});
  }

  void addPin(PinId id) {
    const Pin* pin = board_.pins.find(id);
    const Fact<Point> at = positionOf(lookup_, id);
    const std::size_t leg = spot({Spot::Kind::leg, id.value, id, at.valueOr({}), -1});
    for (const PadId padId : lookup_.padsOf(id)) {
      const Pad* pad = board_.pads.find(padId);
      if (!pad || pad->gone.valueOr(false) || !pad->reach.known()) continue;
      const auto shape = padShape(*pad);
      if (!shape) continue;
      const int last = OwnCopper::layers(board_) - 1;
      const bool plated = drillCentre(*pad) && pad->plated.valueOr(true);
      const bool through =
          plated || pad->reach.value == PadReach::allLayers || pad->reach.value == PadReach::topAndBottom;
      Item item{OwnShape::of(*shape),
                through || pad->reach.value == PadReach::top ? 0 : last,
                through || pad->reach.value == PadReach::bottom ? last : 0,
                {}};
      item.spots = {spot({Spot::Kind::pad, padId.value, id, pad->position.value, through ? -1 : item.first})};
      const auto kind = pin->part ? Bond::Kind::joint : Bond::Kind::contact;
      out_.bonds.push_back({kind, leg, item.spots.front(), id.value, 0.0, 0.0});
      items_.push_back(std::move(item));
    }
  }

  void addVia(const Via& via) {
    const auto layer = [&](const Fact<LayerId>& id, int otherwise) {
      return id.known() && id.value ? OwnCopper::layerOf(board_, id.value) : otherwise;
    };
    const auto [first, last] =
        std::minmax({layer(via.from, 0), layer(via.to, OwnCopper::layers(board_) - 1)});
    Item item{OwnShape::make({{via.position}}, false, via.diameter.value / 2), first, last, {}};
    for (int l = first; l <= last; ++l) {
      item.spots.push_back(spot({Spot::Kind::ring, via.id.value, {}, via.position, l}));
      if (l > first)
        out_.bonds.push_back({Bond::Kind::barrel, item.spots[item.spots.size() - 2], item.spots.back(),
                              via.id.value, 0.0, 1e-3});
    }
    items_.push_back(std::move(item));
  }

  void addArea(const Area& area) {
    if (area.polygon.outer.size() < 3) return;
    std::vector<Ring> rings{area.polygon.outer};
    rings.insert(rings.end(), area.polygon.holes.begin(), area.polygon.holes.end());
    const int layer = OwnCopper::layerOf(board_, area.layer.value);
    const auto node = spot({Spot::Kind::area, area.id.value, {}, area.polygon.outer.front(), layer});
    items_.push_back({OwnShape::make(std::move(rings), true, {}), layer, layer, {node}});
  }

  void addTrack(const Track& track) {
    if (!track.layer.known() || track.way == TrackWay::unknownWay) return;
    Run run;
    run.track = &track;
    run.way = centreLine(track);
    run.radius = static_cast<double>(track.width.value.nm) / 2;
    run.layer = OwnCopper::layerOf(board_, track.layer.value);
    run.shape = OwnShape::make({run.way}, false, track.width.value / 2);
    run.mm = millimetresOf(run.way);
    jointAt(run, 0.0);
    jointAt(run, run.mm);
    runs_.push_back(std::move(run));
  }

  std::size_t jointAt(Run& run, double along) {
    const double snap = std::min(0.5e-6 * run.radius, 0.5 * run.mm);
    for (const auto& [at, node] : run.joints)
      if (std::abs(at - along) <= snap) return node;
    const Point at = run.way.size() > 1 ? pointOn(run.way, along) : run.way.front();
    return run.joints[along] = spot({Spot::Kind::joint, run.track->id.value, {}, at, run.layer, along});
  }

  void joinItems() {
    for (std::size_t i = 0; i < items_.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        const int first = std::max(items_[i].first, items_[j].first);
        const int last = std::min(items_[i].last, items_[j].last);
        if (first > last || !nearer(items_[i].shape, items_[j].shape, touch)) continue;
        for (int layer = first; layer <= last; ++layer)
          contact(items_[i].spotOn(layer), items_[j].spotOn(layer));
      }
  }

  /// A track meets an item at each end that touches it; one that only passes, where it is nearest.
  void meetItems(Run& run) {
    for (const Item& item : items_) {
      if (!item.on(run.layer) || !nearer(run.shape, item.shape, touch)) continue;
      bool met = false;
      for (const double along : {0.0, run.mm}) {
        const Point end = along == 0.0 ? run.way.front() : run.way.back();
        const OwnShape cap = OwnShape::make({{end}}, false, Length(std::llround(run.radius)));
        if (!nearer(cap, item.shape, touch)) continue;
        contact(jointAt(run, along), item.spotOn(run.layer));
        met = true;
      }
      if (!met) contact(jointAt(run, passing(run, item.shape)), item.spotOn(run.layer));
    }
  }

  /// Where a way comes nearest to a shape, to a hundredth of its length.
  static double passing(const Run& run, const OwnShape& shape) {
    double best = std::numeric_limits<double>::infinity();
    double where = 0.0;
    for (int step = 0; step <= 100; ++step) {
      const double along = run.mm * step / 100.0;
      const Point p = pointOn(run.way, along);
      double off = shape.holds(p) ? 0.0 : std::numeric_limits<double>::infinity();
      shape.edges([&](Point a, Point b) { off = std::min(off, test::pointToSegment(p, a, b)); });
      if (off < best) {
        best = off;
        where = along;
      }
    }
    return where;
  }

  /// An end of the one on the other; where neither has an end there, the place where they cross.
  void meetRuns(Run& run, Run& other) {
    if (!nearer(run.shape, other.shape, touch)) return;
    bool met = false;
    for (const double along : {0.0, run.mm}) {
      const auto [where, off] = nearestOn(other.way, along == 0.0 ? run.way.front() : run.way.back());
      if (off > run.radius + other.radius + touch) continue;
      contact(jointAt(run, along), jointAt(other, where));
      met = true;
    }
    if (met || &run > &other) return;
    for (const Point end : {other.way.front(), other.way.back()})
      if (nearestOn(run.way, end).second <= run.radius + other.radius + touch)
        return; // met the other way round
    contact(jointAt(run, passing(run, other.shape)), jointAt(other, passing(other, run.shape)));
  }

  void layPieces(const Run& run) {
    const double width = static_cast<double>(run.track->width.value.nm) * 1e-9;
    for (auto it = run.joints.begin(), next = std::next(it); next != run.joints.end(); ++it, ++next) {
      const double mm = next->first - it->first;
      const double ohms = copperMetre * mm * 1e-3 / (std::max(width, 1e-5) * foil);
      out_.bonds.push_back({Bond::Kind::track, it->second, next->second, run.track->id.value, mm, ohms});
    }
  }

  Copper& out_;
  const Lookup& lookup_;
  const Board& board_;
  std::vector<Item> items_;
  std::vector<Run> runs_;
};

} // namespace

std::optional<std::size_t> Copper::leg(PinId pin) const {
  for (std::size_t i = 0; i < spots.size(); ++i)
    if (spots[i].kind == Spot::Kind::leg && spots[i].pin == pin) return i;
  return std::nullopt;
}

void addNet(Copper& copper, const Lookup& lookup, NetId net) {
  NetCopper(copper, lookup, net);
}

std::vector<std::size_t> pieces(const Copper& copper, const std::vector<std::size_t>& without) {
  std::vector<std::size_t> label(copper.spots.size());
  std::iota(label.begin(), label.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (label[i] != i)
      i = label[i] = label[label[i]];
    return i;
  };
  for (std::size_t i = 0; i < copper.bonds.size(); ++i) {
    if (std::find(without.begin(), without.end(), i) != without.end()) continue;
    const auto a = find(copper.bonds[i].a), b = find(copper.bonds[i].b);
    label[std::max(a, b)] = std::min(a, b);
  }
  for (std::size_t i = 0; i < label.size(); ++i)
    label[i] = find(i);
  return label;
}

std::optional<std::size_t> spotOf(const Copper& copper, const Lookup& lookup, PinId pin) {
  if (const auto leg = copper.leg(pin)) return leg;
  for (const PadId pad : lookup.padsOf(pin))
    if (const auto spot = spotOfPad(copper, pad)) return spot;
  return std::nullopt;
}

std::optional<std::size_t> spotOfPad(const Copper& copper, PadId pad) {
  for (std::size_t i = 0; i < copper.spots.size(); ++i)
    if (copper.spots[i].kind == Spot::Kind::pad && copper.spots[i].object == pad.value) return i;
  return std::nullopt;
}

std::optional<std::size_t> spotOfVia(const Copper& copper, ViaId via, int layer) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < copper.spots.size(); ++i) {
    const Spot& spot = copper.spots[i];
    if (spot.kind != Spot::Kind::ring || spot.object != via.value) continue;
    if (spot.layer == layer) return i;
    if (!found) found = i;
  }
  return found;
}

std::optional<std::size_t> spotOfTrack(const Copper& copper, const Board& board, TrackId track, Point at,
                                       const std::optional<Crack>& crack) {
  const Track* found = board.tracks.find(track);
  if (!found) return std::nullopt;
  const double along = nearestOn(centreLine(*found), at).first;
  std::optional<std::size_t> best;
  double bestOff = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < copper.bonds.size(); ++i) {
    const Bond& bond = copper.bonds[i];
    if (bond.kind != Bond::Kind::track || bond.object != track.value) continue;
    const double from = copper.spots[bond.a].along, to = copper.spots[bond.b].along;
    const double off = std::max({from - along, along - to, 0.0});
    if (off >= bestOff) continue;
    bestOff = off;
    const double parted = crack && crack->bond == i ? crack->along : 0.5 * (from + to);
    best = along < parted ? bond.a : bond.b;
  }
  return best;
}

} // namespace netmend::simulation
