#include "netmend/sketch/merge.h"

#include <algorithm>
#include <set>

#include "matched_boards.h"

namespace netmend {

namespace {

using What = MergeDifference::What;
using Right = MergeDifference::Right;

constexpr std::size_t fewPins = 3;

/// A net as people tell it: its name, else some of its pins.
std::string netText(const Lookup& lookup, NetId id, PinId but) {
  const Net* net = lookup.board().nets.find(id);
  if (net == nullptr) return {};
  if (!net->name.empty()) return net->name;
  std::string out;
  std::size_t count = 0;
  for (const PinId pin : lookup.pinsOf(id))
    if (pin != but && count++ < fewPins) out += (out.empty() ? "" : " ") + pinLabel(lookup.board(), pin);
  return out;
}

Right proposed(Origin drawn) {
  if (drawn == Origin::measured) return Right::drawing;
  return drawn == Origin::guessed ? Right::file : Right::open;
}

class Planner {
public:
  Planner(const Lookup& drawn, const Lookup& file) : drawn_(drawn), file_(file), matched_(drawn, file) {}

  MergePlan plan() {
    out_.placesFit = matched_.laid.has_value();
    out_.worstPlace = matched_.worst;
    std::set<PinId> mine;
    for (const Pin& pin : file_.board().pins) {
      const auto found = matched_.drawnOf.find(pin.id);
      if (found == matched_.drawnOf.end()) {
        ++out_.onlyInFile;
        continue;
      }
      mine.insert(found->second);
      comparePin(pin, *drawn_.board().pins.find(found->second));
    }
    out_.onlyDrawn = drawn_.board().pins.size() - mine.size();
    for (const auto& [f, d] : matched_.netOf)
      compareNames(*file_.board().nets.find(f), *drawn_.board().nets.find(d));
    for (const auto& [f, d] : matched_.partOf)
      compareParts(*file_.board().parts.find(f), *drawn_.board().parts.find(d));
    return std::move(out_);
  }

private:
  void comparePin(const Pin& theirs, const Pin& mine) {
    if (!theirs.net.known()) {
      ++out_.agree;
      return;
    }
    if (!mine.net.known()) {
      ++out_.learnt;
      return;
    }
    const NetId f = theirs.net.value, d = mine.net.value;
    const bool same = f && d && matched_.drawnNet(f) == d;
    if ((!f && !d) || same || isNoOther(f, d)) {
      ++out_.agree;
      return;
    }
    MergeDifference difference;
    difference.what = What::net;
    difference.label = pinLabel(drawn_.board(), mine.id);
    difference.drawn = netText(drawn_, mine.net.value, mine.id);
    difference.file = netText(file_, theirs.net.value, theirs.id);
    difference.drawnOrigin = mine.net.origin;
    difference.pin = mine.id;
    difference.right = proposed(mine.net.origin);
    out_.differences.push_back(std::move(difference));
  }

  /// A net of which only this pin is told is no other one than that of the other board, unless it has another
  /// name; and as good as none.
  [[nodiscard]] bool isNoOther(NetId f, NetId d) const {
    const auto nameIn = [](const Lookup& lookup, NetId net) {
      const Net* found = lookup.board().nets.find(net);
      return found != nullptr ? found->name : std::string();
    };
    if (!d) return file_.pinsOf(f).size() == 1;
    if (drawn_.pinsOf(d).size() != 1) return false;
    const std::string name = nameIn(drawn_, d);
    return name.empty() || name == nameIn(file_, f);
  }

  void compareNames(const Net& theirs, const Net& mine) {
    if (mine.name.empty() || theirs.name.empty() || mine.name == theirs.name) return;
    MergeDifference difference;
    difference.what = What::name;
    difference.label = mine.name;
    difference.drawn = mine.name;
    difference.file = theirs.name;
    difference.drawnOrigin = mine.origin;
    difference.net = mine.id;
    difference.right = proposed(mine.origin);
    out_.differences.push_back(std::move(difference));
  }

  void compareParts(const Part& theirs, const Part& mine) {
    const auto differs = [&](const auto& a, const auto& b) {
      return a.known() && b.known() && !(a.value == b.value);
    };
    MergeDifference difference;
    difference.label = mine.reference;
    difference.part = mine.id;
    if (differs(theirs.value, mine.value)) {
      difference.what = What::value;
      difference.drawn = mine.value.value;
      difference.file = theirs.value.value;
      difference.drawnOrigin = mine.value.origin;
      difference.right = proposed(mine.value.origin);
      out_.differences.push_back(difference);
    }
    if (differs(theirs.fitted, mine.fitted)) {
      difference.what = mine.fitted.value ? What::fitted : What::missing;
      difference.drawn.clear();
      difference.file.clear();
      difference.drawnOrigin = mine.fitted.origin;
      // What somebody has seen on the board.
      difference.right = mine.fitted.origin == Origin::guessed ? Right::file : Right::drawing;
      out_.differences.push_back(difference);
    }
  }

  const Lookup& drawn_;
  const Lookup& file_;
  MatchedBoards matched_;
  MergePlan out_;
};

} // namespace

MergePlan planMerge(const Lookup& drawn, const Lookup& file) {
  return Planner(drawn, file).plan();
}

} // namespace netmend
