#include "netmend/casework/proof.h"

#include <algorithm>
#include <charconv>

#include "netmend/casework/function_check.h"
#include "netmend/casework/take_reading.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"

namespace netmend {

namespace {

constexpr double jointsAllowed = 2.0;     ///< times the wire's resistance: above it a joint is bad
constexpr std::size_t mostNeighbours = 4; ///< of one point

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

  void addJumper(const RepairAction& action) {
    const ProbePoint from = withPin(action.jumper->from.point, basis_.lookup);
    const ProbePoint to = withPin(action.jumper->to.point, basis_.lookup);
    for (const ProbePoint& landing : {from, to})
      addLanding(action, landing);
    ProofPoint wire = plain(ProofWhy::endToEnd, from, action.id);
    wire.other = to;
    wire.mode = ReadingMode::continuity;
    wire.limits = wireLimits(action);
    wire.expectedBy = ExpectedBy::wire;
    add(std::move(wire));
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

  [[nodiscard]] std::vector<ProofPoint> take() { return std::move(points_); }

private:
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

  [[nodiscard]] ValueInterval wireLimits(const RepairAction& action) const {
    const JumperRecord& jumper = *action.jumper;
    Length way;
    for (std::size_t i = 1; i < jumper.way.size(); ++i)
      way += distance(jumper.way[i - 1], jumper.way[i]);
    double highest = 0.0;
    for (const Wire& wire : basis_.data.jumper.wires.wires)
      if (wire.name == jumper.wire) highest = jointsAllowed * wireResistance(wire.copper, way).value;
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
    if (action.jumper) list.addJumper(action);
  list.addNeighbours();
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
