#include "fault_classes.h"

#include <algorithm>
#include <map>
#include <random>

namespace netmend {

namespace {

/// A random number for each thing that a reading can notice; a set of such things is the exclusive or of
/// theirs, so that two breaks of equal effect have equal numbers (Zobrist hashing).
class Signatures {
public:
  explicit Signatures(const LineView& view) : cellKey_(view.cells.size(), 0), pinKey_(view.pins.size(), 0) {
    std::mt19937_64 random(0x5eed);
    std::vector<char> reachable(view.cells.size(), 0);
    for (std::size_t i = 0; i < view.places.size(); ++i)
      if (view.places[i].effort) reachable[view.cellOfPlace[i]] = 1;
    for (std::size_t cell = 0; cell < cellKey_.size(); ++cell)
      if (reachable[cell]) cellKey_[cell] = random();
    pinsOfCell_.assign(view.cells.size(), 0);
    for (std::size_t i = 0; i < pinKey_.size(); ++i) {
      const auto& shares = view.pins[i].termination.shares;
      ++pinsOfCell_[view.pins[i].cell];
      if (shares.junction + shares.resistive <= 0.0) continue;
      pinKey_[i] = random();
      cellKey_[view.pins[i].cell] ^= pinKey_[i];
    }
    reachable_ = std::move(reachable);
    prefix_.push_back(0);
    pinsBefore_.push_back(0);
    for (std::size_t cell = 0; cell < cellKey_.size(); ++cell) {
      prefix_.push_back(prefix_.back() ^ cellKey_[cell]);
      pinsBefore_.push_back(pinsBefore_.back() + pinsOfCell_[cell]);
    }
  }

  struct Signature {
    std::uint64_t value = 0;
    bool mattersAtAll = true; ///< false: a stub that leads to no pin
  };

  [[nodiscard]] Signature of(const LineView& view, const FaultEffect& effect) const {
    if (effect.kind == FaultKind::deadPin) return ofDeadPin(view, effect.deadPin);
    const std::size_t root = view.cells.root[effect.below.front().first];
    const std::size_t last = view.cells.end[root];
    std::uint64_t below = 0;
    std::size_t pinsBelow = 0;
    for (const auto& [from, to] : effect.below) {
      below ^= prefix_[to] ^ prefix_[from];
      pinsBelow += pinsBefore_[to] - pinsBefore_[from];
    }
    const std::uint64_t above = below ^ prefix_[last] ^ prefix_[root];
    const std::size_t pinsAbove = pinsBefore_[last] - pinsBefore_[root] - pinsBelow;
    return {std::min(below, above), pinsBelow > 0 && pinsAbove > 0};
  }

private:
  /// Where the leg itself cannot be probed, a dead pin and an open joint are the same.
  [[nodiscard]] Signature ofDeadPin(const LineView& view, std::size_t pin) const {
    const std::size_t cell = view.pins[pin].cell;
    if (reachable_[cell] || pinsOfCell_[cell] > 1) return {pinKey_[pin] * 2654435761u + 1, true};
    const std::size_t root = view.cells.root[cell];
    const std::uint64_t others = pinKey_[pin] ^ prefix_[view.cells.end[root]] ^ prefix_[root];
    return {std::min(pinKey_[pin], others), true};
  }

  std::vector<std::uint64_t> cellKey_;
  std::vector<std::uint64_t> pinKey_;
  std::vector<std::size_t> pinsOfCell_;
  std::vector<char> reachable_;
  std::vector<std::uint64_t> prefix_;
  std::vector<std::size_t> pinsBefore_;
};

struct Group {
  std::vector<FaultCandidate> members;
  double weight = 0.0;
};

FaultClass classOf(Group& group, double scale) {
  std::stable_sort(group.members.begin(), group.members.end(),
                   [](const FaultCandidate& a, const FaultCandidate& b) { return a.weight > b.weight; });
  FaultClass result;
  for (auto& member : group.members) {
    member.place.share = group.weight > 0.0 ? member.weight / group.weight : 0.0;
    result.places.push_back(member.place);
  }
  result.kind = result.places.front().kind;
  result.prior = group.weight * scale;
  return result;
}

/// An open joint and a dead pin of one class act alike on all that can be read; the break says it in full.
FaultEffect effectOf(const Group& group) {
  for (const auto& member : group.members)
    if (member.effect.kind == FaultKind::open) return member.effect;
  return group.members.front().effect;
}

void addFixed(ClassesOnLine& result, FaultKind kind, double prior) {
  FaultClass added;
  added.kind = kind;
  added.prior = prior;
  result.classes.push_back(std::move(added));
  result.effects.push_back({kind, {}, noCell});
}

std::vector<Group> grouped(const LineView& view, std::vector<FaultCandidate> candidates) {
  const Signatures signatures(view);
  std::map<std::uint64_t, std::size_t> index;
  std::vector<Group> groups;
  for (auto& candidate : candidates) {
    const auto signature = signatures.of(view, candidate.effect);
    if (!signature.mattersAtAll || !(candidate.weight > 0.0)) continue;
    const auto [it, fresh] = index.try_emplace(signature.value, groups.size());
    if (fresh) groups.emplace_back();
    groups[it->second].weight += candidate.weight;
    groups[it->second].members.push_back(std::move(candidate));
  }
  std::stable_sort(groups.begin(), groups.end(),
                   [](const Group& a, const Group& b) { return a.weight > b.weight; });
  return groups;
}

} // namespace

std::vector<PinId> pinsOf(const LineView& view, const FaultEffect& effect, bool below, std::size_t root) {
  std::vector<PinId> pins;
  for (const auto& pin : view.pins)
    if (view.cells.root[pin.cell] == root && effect.isBelow(pin.cell) == below) pins.push_back(pin.pin);
  return pins;
}

ClassesOnLine faultClasses(const LineView& view) {
  ClassesOnLine result;
  auto candidates = singlePlaceFaults(view);
  addUnknownWays(view, candidates);
  double unknownWeight = 0.0;
  for (const auto& candidate : candidates)
    if (candidate.place.edgeKind == EdgeKind::unknownWay) unknownWeight += candidate.weight;
  auto groups = grouped(view, std::move(candidates));

  double total = view.priors.shortToGround;
  for (const auto& group : groups)
    total += group.weight;
  const double faulty = 1.0 - view.priors.soundShare - view.priors.noneOfTheseShare;
  const double scale = total > 0.0 ? faulty / total : 0.0;
  addFixed(result, FaultKind::sound, view.priors.soundShare);
  addFixed(result, FaultKind::noneOfThese, view.priors.noneOfTheseShare);
  addFixed(result, FaultKind::shortToGround, view.priors.shortToGround * scale);
  for (auto& group : groups) {
    result.effects.push_back(effectOf(group));
    result.classes.push_back(classOf(group, scale));
  }
  result.unknownWayShare = unknownWeight * scale;
  return result;
}

} // namespace netmend
