#include "netmend/casework/injection.h"

#include <algorithm>
#include <set>

#include "netmend/base/json_reader.h"
#include "netmend/netgraph/net_role.h"

namespace netmend {

namespace {

enum class Joins { nothing, supplies, all };

Joins joinsOf(const Part& part) {
  if (!part.fitted.valueOr(true)) return Joins::nothing;
  if (!part.kind.known()) return Joins::all;
  switch (part.kind.value) {
  case PartKind::capacitor:
  case PartKind::crystal:
  case PartKind::connector:
  case PartKind::battery:
  case PartKind::antenna:
  case PartKind::shield:
  case PartKind::testPoint:
  case PartKind::mechanical:
    return Joins::nothing;
  case PartKind::chip:
    return Joins::supplies;
  default:
    return Joins::all;
  }
}

bool hasRole(const Net& net, NetRole role) {
  const auto known = roleOf(net);
  return known.known() && known.value == role;
}

/// A guess does not protect anything.
std::optional<Volts> ratingOf(const Net& net) {
  return net.ratedVoltage.certain() ? std::optional(net.ratedVoltage.value) : std::nullopt;
}

class Reach {
public:
  explicit Reach(const Lookup& lookup) : lookup_(lookup), board_(lookup.board()) {}

  std::vector<ReachedNet> from(const std::vector<NetId>& nets) {
    for (const NetId net : nets)
      enter(net, {});
    std::size_t next = 0;
    while (next < out_.size()) // grows as it goes
      goOnFrom(out_[next++].net);
    return std::move(out_);
  }

private:
  void enter(NetId id, PartId through) {
    const Net* net = board_.nets.find(id);
    if (net == nullptr || hasRole(*net, NetRole::ground) || !entered_.insert(id).second) return;
    out_.push_back({id, through, ratingOf(*net)});
  }

  void goOnFrom(NetId id) {
    const bool supply = hasRole(*board_.nets.find(id), NetRole::supply);
    for (const PinId pin : lookup_.pinsOf(id)) {
      const Part* part = board_.parts.find(board_.pins.find(pin)->part);
      const Joins joins = part != nullptr ? joinsOf(*part) : Joins::nothing;
      if (joins == Joins::nothing || (joins == Joins::supplies && !supply)) continue;
      for (const PinId other : lookup_.pinsOf(part->id)) {
        const auto& net = board_.pins.find(other)->net;
        const Net* found = net.known() ? board_.nets.find(net.value) : nullptr;
        if (found == nullptr || (joins == Joins::supplies && !hasRole(*found, NetRole::supply))) continue;
        enter(found->id, part->id);
      }
    }
  }

  const Lookup& lookup_;
  const Board& board_;
  std::set<NetId> entered_;
  std::vector<ReachedNet> out_;
};

Result<InjectionRules> readRules(JsonReader& reader) {
  const auto root = reader.root();
  const auto figure = [&](const char* name, double least, double most) {
    const auto entry = root.at(name);
    entry.source();
    return entry.at("value").number(least, most);
  };
  InjectionRules rules;
  rules.start = Volts(figure("start_V", 0.01, 0.5));
  rules.mostUnrated = Volts(figure("mostUnrated_V", 0.01, 1.0));
  rules.current = Amperes(figure("current_A", 0.001, 10.0));
  rules.step = Volts(figure("step_V", 0.001, 0.5));
  rules.stepTime = Seconds(figure("stepSeconds", 0.1, 600.0));
  rules.duration = Seconds(figure("mostSeconds", 0.1, 600.0));
  return reader.result(rules);
}

} // namespace

Result<InjectionRules> loadInjectionRules(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-injection");
  if (!reader) return failure(reader.error());
  return readRules(*reader);
}

std::vector<ReachedNet> netsWithinReach(const Lookup& lookup, const std::vector<NetId>& from) {
  return Reach(lookup).from(from);
}

InjectionProposal proposeInjection(const Lookup& lookup, const std::vector<NetId>& line,
                                   const InjectionRules& rules) {
  InjectionProposal out;
  out.nets = netsWithinReach(lookup, line);
  std::optional<Volts> limit;
  for (const ReachedNet& reached : out.nets) {
    if (!reached.rating) {
      ++out.unrated;
    } else if (!limit || *reached.rating < *limit) {
      limit = reached.rating;
      out.lowest = reached.net;
    }
  }
  // A line of which not even the net is known has no rating either.
  if (out.unrated > 0 || !limit) {
    if (!limit || *limit > rules.mostUnrated) out.lowest = {};
    limit = std::min(limit.value_or(rules.mostUnrated), rules.mostUnrated);
  }
  out.limit = *limit;
  out.start = std::min(rules.start, out.limit);
  out.current = rules.current;
  for (const NetId id : line)
    if (const Net* net = lookup.board().nets.find(id); net != nullptr && net->ratedCurrent.certain())
      out.current = std::min(out.current, net->ratedCurrent.value);
  out.step = rules.step;
  out.stepTime = rules.stepTime;
  out.duration = rules.duration;
  return out;
}

} // namespace netmend
