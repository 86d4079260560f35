#include "netmend/casework/proof.h"

#include <algorithm>
#include <charconv>
#include <tuple>

#include "netmend/casework/function_check.h"
#include "netmend/casework/take_reading.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"

namespace netmend {

namespace {

constexpr double jointsAllowed = 2.0;     ///< times the wire's resistance: above it a joint is bad
constexpr std::size_t mostNeighbours = 4; ///< of one point
constexpr Length solderRuns =
    Length(3'000'000); ///< as far as solder or heat may get: common practice, no source

/// The latest reading of each place before the repair.
std::vector<const JobReading*> readingsBefore(const Job& job) {
  std::vector<const JobReading*> out;
  for (const JobReading* entry : inForce(job.readings)) {
    if (!isEvidence(*entry)) continue;
    const Reading& now = entry->reading;
    const auto same = std::find_if(out.begin(), out.end(), [&](const JobReading* other) {
      const Reading& before = other->reading;
      return before.mode == now.mode && samePoint(before.point, now.point) &&
             samePoint(before.other, now.other);
    });
    if (same == out.end())
      out.push_back(entry);
    else
      *same = entry;
  }
  return out;
}

const MeterProfile& meterFor(const std::string& id, const ProofBasis& basis) {
  const MeterProfile* found = findMeter(basis.data.probing.meters, id);
  return found != nullptr ? *found : basis.data.probing.meters.front();
}

ReadingSetting settingAt(const ProofPoint& point) {
  return {point.mode, point.other, point.condition, std::nullopt};
}

/// Copper of one net reads the same everywhere, so a landing should read what the net's walked pins do.
void expectAsNet(ProofPoint& point, const ProofBasis& basis) {
  const Lookup* lookup = basis.lookup;
  const Pin* pin = lookup != nullptr ? lookup->board().pins.find(point.point.pin) : nullptr;
  if (pin == nullptr || !pin->net.known() || !pin->net.value) return;
  for (const PinId other : lookup->pinsOf(pin->net.value)) {
    const std::string label = pinLabel(lookup->board(), other);
    const Expected* expected = basis.expected.find({other, label}, settingAt(point));
    if (expected == nullptr) continue;
    point.expected = *expected;
    point.expectedBy = ExpectedBy::sameNet;
    point.asAt = label;
    return;
  }
}

/// What the work steps say the bridged line reads.
void expectAsStep(ProofPoint& point, const RepairAction& action) {
  for (auto step = action.steps.rbegin(); step != action.steps.rend(); ++step) {
    if (!step->measure || step->measure->mode != point.mode || !step->measure->interval) continue;
    point.limits = step->measure->interval;
    point.expectedBy = ExpectedBy::workSteps;
    return;
  }
}

class PointList {
public:
  explicit PointList(const ProofBasis& basis) : basis_(basis), before_(readingsBefore(basis.job)) {}

  void addOdd(RepairActionId action) {
    for (const JobReading* entry : before_)
      if (entry->odd()) add(fromReading(*entry, ProofWhy::odd, action));
  }

  void addWire(const RepairAction& action) {
    const ProbePoint from =
        withPin(action.jumper ? action.jumper->from.point : action.places[0], basis_.lookup);
    const ProbePoint to = withPin(action.jumper ? action.jumper->to.point : action.places[1], basis_.lookup);
    for (const ProbePoint& landing : {from, to})
      addLanding(action, landing);
    ProofPoint wire = plain(ProofWhy::endToEnd, from, action.id);
    wire.other = to;
    wire.mode = ReadingMode::continuity;
    wire.limits = wireLimits(action);
    wire.expectedBy = ExpectedBy::wire;
    add(std::move(wire));
  }

  /// What was worked on by hand, where somebody knows what it must read.
  void addWorkedOn(const RepairAction& action) {
    if (action.kind == RepairKind::wire || !isSoldered(action.kind)) return;
    for (const ProbePoint& place : action.places)
      if (place.pin) addNeighbour(action.id, withPin(place, basis_.lookup));
  }

  void addNeighbours() {
    const std::vector<ProofPoint> centres = points_;
    for (const ProofPoint& centre : centres) {
      if (centre.why == ProofWhy::endToEnd) continue;
      std::size_t count = 0;
      for (const JobReading* entry : before_)
        if (count < mostNeighbours && beside(centre.point, entry->reading.point) &&
            add(fromReading(*entry, ProofWhy::neighbour, centre.action)))
          ++count;
    }
  }

  /// Solder runs to the next pad, of whatever part: those beside the ends of a wire and of a part that was
  /// soldered. Without a place there is no telling.
  void addBesideSolder(const RepairAction& action) {
    if (basis_.lookup == nullptr) return;
    if (action.jumper) {
      for (const LandingPlace* end : {&action.jumper->from, &action.jumper->to}) {
        const ProbePoint point = withPin(end->point, basis_.lookup);
        const auto at = positionOf(*basis_.lookup, point.pin);
        const NetId net = netOf(point.pin);
        addNearest(action.id, {{at.valueOr(end->at), point.pin, net ? net : netNamed(action.jumper->net)}});
      }
    } else if (isSoldered(action.kind)) {
      std::vector<SolderedEnd> ends;
      for (const PinId pin : pinsWorkedOn(action))
        if (const auto at = positionOf(*basis_.lookup, pin); at.known())
          ends.push_back({at.value, pin, netOf(pin)});
      addNearest(action.id, ends);
    }
  }

  [[nodiscard]] std::vector<ProofPoint> take() { return std::move(points_); }

private:
  struct SolderedEnd {
    Point at;
    PinId pin; ///< none: a via or track
    NetId net;
  };

  [[nodiscard]] NetId netOf(PinId pin) const {
    const Pin* found = basis_.lookup->board().pins.find(pin);
    return found != nullptr && found->net.known() ? found->net.value : NetId{};
  }

  /// A bridge to ground is read at the soldered end itself.
  [[nodiscard]] bool isGround(NetId net) const {
    const Net* found = basis_.lookup->board().nets.find(net);
    return found != nullptr && (found->name == ProofPoint().other.label ||
                                (found->role.known() && found->role.value == NetRole::ground));
  }

  [[nodiscard]] NetId netNamed(const std::string& name) const {
    const auto nets = basis_.lookup->netsNamed(name);
    return nets.empty() ? NetId{} : nets.front();
  }

  static bool isSoldered(RepairKind kind) {
    return kind == RepairKind::resolder || kind == RepairKind::replacePart || kind == RepairKind::wire ||
           kind == RepairKind::removeBridge;
  }

  /// A part by its reference: all its pins. Else the places themselves; of older books a pin by its label.
  [[nodiscard]] std::vector<PinId> pinsWorkedOn(const RepairAction& action) const {
    for (const Part& part : basis_.lookup->board().parts)
      if (part.reference == action.target) return basis_.lookup->pinsOf(part.id);
    if (action.places.empty()) return basis_.lookup->pinsLabelled(action.target);
    std::vector<PinId> out;
    for (const ProbePoint& place : action.places)
      out.push_back(withPin(place, basis_.lookup).pin);
    return out;
  }

  /// The pins nearest to any of the ends, on nets of their own: copper of the soldered net cannot be bridged
  /// to it. Only where something says what they must read.
  void addNearest(RepairActionId action, const std::vector<SolderedEnd>& ends) {
    struct Near {
      Length away;
      PinId pin;
    };
    std::vector<Near> near;
    for (const Pin& pin : basis_.lookup->board().pins) {
      if (!pin.net.known() || !pin.net.value || isGround(pin.net.value)) continue;
      const auto at = positionOf(*basis_.lookup, pin.id);
      if (!at.known()) continue;
      std::optional<Length> away;
      for (const SolderedEnd& end : ends) {
        if (end.pin == pin.id || end.net == pin.net.value) {
          away.reset();
          break;
        }
        const Length here = distance(end.at, at.value);
        if (here <= solderRuns && (!away || here < *away)) away = here;
      }
      if (away) near.push_back({*away, pin.id});
    }
    std::sort(near.begin(), near.end(), [](const Near& a, const Near& b) {
      return std::tuple(a.away, a.pin) < std::tuple(b.away, b.pin);
    });
    std::size_t count = 0;
    for (const Near& one : near) {
      if (count == mostNeighbours) return;
      const bool listed = std::any_of(points_.begin(), points_.end(), [&](const ProofPoint& point) {
        return point.why == ProofWhy::neighbour && point.point.pin == one.pin;
      });
      if (listed || addNeighbour(action, {one.pin, pinLabel(basis_.lookup->board(), one.pin)})) ++count;
    }
  }

  bool addNeighbour(RepairActionId action, const ProbePoint& place) {
    ProofPoint point = plain(ProofWhy::neighbour, place, action);
    for (const JobReading* entry : before_)
      if (isAt(point, entry->reading)) point = fromReading(*entry, ProofWhy::neighbour, action);
    if (const Expected* expected = basis_.expected.find(point.point, settingAt(point)))
      point.expected = *expected;
    if (!point.expected) expectAsNet(point, basis_);
    return (point.expected || point.before) && add(std::move(point));
  }

  bool add(ProofPoint point) {
    for (const ProofPoint& other : points_)
      if (other.mode == point.mode && samePoint(other.point, point.point) &&
          samePoint(other.other, point.other))
        return false;
    if (!point.expected)
      if (const Expected* expected = basis_.expected.find(point.point, settingAt(point)))
        point.expected = *expected;
    for (const JobReading& entry : basis_.job.readings)
      if (entry.purpose == ReadingPurpose::proof && isAt(point, entry.reading)) point.now = entry;
    points_.push_back(std::move(point));
    return true;
  }

  [[nodiscard]] ProofPoint fromReading(const JobReading& entry, ProofWhy why, RepairActionId action) const {
    ProofPoint out;
    out.why = why;
    out.point = entry.reading.point;
    out.other = entry.reading.other;
    out.mode = entry.reading.mode;
    out.condition = entry.reading.condition;
    out.action = action;
    out.before = entry;
    return out;
  }

  /// As the walk before was made.
  [[nodiscard]] ProofPoint plain(ProofWhy why, const ProbePoint& point, RepairActionId action) const {
    ProofPoint out;
    out.why = why;
    out.point = point;
    out.action = action;
    if (!before_.empty()) out.condition = before_.front()->reading.condition;
    return out;
  }

  void addLanding(const RepairAction& action, const ProbePoint& landing) {
    ProofPoint point = plain(ProofWhy::landing, landing, action.id);
    for (const JobReading* entry : before_)
      if (isAt(point, entry->reading)) point = fromReading(*entry, ProofWhy::landing, action.id);
    if (const Expected* expected = basis_.expected.find(point.point, settingAt(point)))
      point.expected = *expected;
    if (!point.expected) expectAsNet(point, basis_);
    if (!point.expected) expectAsStep(point, action);
    add(std::move(point));
  }

  /// Of a wire that was routed, by its kind and length.
  [[nodiscard]] double mostWireOhms(const RepairAction& action) const {
    if (!action.jumper) return joinedOhms;
    const JumperRecord& jumper = *action.jumper;
    Length way;
    for (std::size_t i = 1; i < jumper.way.size(); ++i)
      way += distance(jumper.way[i - 1], jumper.way[i]);
    double most = 0.0;
    for (const Wire& wire : basis_.data.jumper.wires.wires)
      if (wire.name == jumper.wire) most = jointsAllowed * wireResistance(wire.copper, way).value;
    return most;
  }

  [[nodiscard]] ValueInterval wireLimits(const RepairAction& action) const {
    double highest = mostWireOhms(action);
    const MeterProfile& meter = meterFor(before_.empty() ? "" : before_.front()->reading.meter, basis_);
    highest += 2.0 * meter.leadResistance.value; // each reading has up to twice the stated one
    if (const MeterMode* mode = meter.mode(ReadingMode::continuity)) {
      const MeterRange& range = mode->ranges.front();
      highest += range.digits * range.resolution + highest * range.percent / 100.0;
    }
    return {0.0, highest};
  }

  /// Next to each other on one part: by place where the board knows, else by number.
  [[nodiscard]] bool beside(const ProbePoint& a, const ProbePoint& b) const {
    if (samePoint(a, b)) return false;
    const Lookup* lookup = basis_.lookup;
    if (lookup != nullptr && a.pin && b.pin) {
      const Fact<Point> atA = positionOf(*lookup, a.pin);
      const Fact<Point> atB = positionOf(*lookup, b.pin);
      const Pin* pinA = lookup->board().pins.find(a.pin);
      const Pin* pinB = lookup->board().pins.find(b.pin);
      if (pinA == nullptr || pinB == nullptr || pinA->part != pinB->part) return false;
      if (atA.known() && atB.known())
        return distance(atA.value, atB.value) <= reachOf(a.pin, *pinA, atA.value);
    }
    return numberedBeside(a.label, b.label);
  }

  /// A little more than the least distance from this pin to another of its part.
  [[nodiscard]] Length reachOf(PinId pin, const Pin& of, Point at) const {
    std::optional<Length> least;
    for (const PinId other : basis_.lookup->pinsOf(of.part)) {
      if (other == pin) continue;
      const Fact<Point> place = positionOf(*basis_.lookup, other);
      if (!place.known()) continue;
      const Length away = distance(at, place.value);
      if (away > Length(0) && (!least || away < *least)) least = away;
    }
    return least ? *least + *least / 10 : Length(0);
  }

  static bool numberedBeside(const std::string& a, const std::string& b) {
    const auto numberIn = [](const std::string& label) -> std::optional<int> {
      int number = 0;
      const char* end = label.data() + label.size();
      const char* begin = label.data() + label.rfind('.') + 1;
      const auto read = std::from_chars(begin, end, number);
      return read.ec == std::errc{} && read.ptr == end ? std::optional(number) : std::nullopt;
    };
    const auto dotA = a.rfind('.'), dotB = b.rfind('.');
    if (dotA == std::string::npos || dotA != dotB || a.substr(0, dotA) != b.substr(0, dotB)) return false;
    const auto first = numberIn(a), second = numberIn(b);
    return first && second && std::abs(*first - *second) == 1;
  }

  ProofBasis basis_;
  std::vector<const JobReading*> before_;
  std::vector<ProofPoint> points_;
};

VerdictKind kindBy(const ValueInterval& limits, std::optional<double> value) {
  if (!value) return VerdictKind::open;
  if (*value < limits.lowest) return VerdictKind::low;
  return *value > limits.highest ? VerdictKind::high : VerdictKind::inRange;
}

} // namespace

bool isAt(const ProofPoint& point, const Reading& reading) {
  return point.mode == reading.mode && samePoint(point.point, reading.point) &&
         samePoint(point.other, reading.other);
}

std::vector<ProofPoint> proofPoints(const ProofBasis& basis) {
  const RepairAction* main = actionToProve(basis.job);
  if (main == nullptr) return {};
  PointList list(basis);
  list.addOdd(main->id);
  for (const RepairAction& action : basis.job.actions)
    if (action.jumper || (action.kind == RepairKind::wire && action.places.size() == 2)) list.addWire(action);
  for (const RepairAction& action : basis.job.actions)
    list.addWorkedOn(action);
  list.addNeighbours();
  for (const RepairAction& action : basis.job.actions)
    list.addBesideSolder(action);
  return list.take();
}

JobReading judgedProof(const ProofPoint& point, const Reading& reading, const ProofBasis& basis) {
  JobReading out;
  out.purpose = ReadingPurpose::proof;
  out.reading = reading;
  out.reading.point = point.point;
  out.reading.other = point.other;
  out.reading.mode = point.mode;
  out.reading.condition = point.condition;
  Judged judged;
  judged.by = point.expectedBy;
  judged.asAt = point.asAt;
  if (point.limits && !point.expected) {
    judged.limits = point.limits;
    judged.verdict.kind = kindBy(*point.limits, reading.value);
    judged.verdict.nothing = NothingBecause::judged;
  } else {
    // As at every other station: the rate is shared by all that good boards were read at in this way.
    const auto& probing = basis.data.probing;
    const std::size_t points = basis.expected.points().count(settingOf(out.reading));
    judged.verdict = judgeReading(out.reading, point.expected ? &*point.expected : nullptr,
                                  findMeter(probing.meters, reading.meter), probing.rules,
                                  ratePerPoint(points, probing.rules));
  }
  out.judged = std::move(judged);
  return out;
}

} // namespace netmend
