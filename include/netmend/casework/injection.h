#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/lookup.h"

/// How a short may be fed from a bench supply without harm to what hangs on it. Rule and what counts as
/// within reach: docs/methods/isolation_shorts.md.
namespace netmend {

/// Read from data/injection.json, where each entry has its source.
struct InjectionRules {
  Volts start;
  Volts mostUnrated; ///< while the rating of any net within reach is not known
  Amperes current;
  Volts step;
  Seconds stepTime;
  Seconds duration;
};
[[nodiscard]] Result<InjectionRules> loadInjectionRules(const std::filesystem::path& path);

/// A net that the injected voltage may come to.
struct ReachedNet {
  NetId net;
  PartId through;              ///< the part that it is reached by; none: the line itself
  std::optional<Volts> rating; ///< empty: nobody has entered one. A guess is none
};

/// All nets that can be reached from these through parts: resistors, links, inductors, ferrites, fuses,
/// diodes, transistors (body diodes), switches and parts of unknown kind join all their nets; a chip joins
/// supplies to supplies. Not through capacitors, crystals, connectors, batteries, parts that are not fitted,
/// and not through ground. Breadth first; each net once.
[[nodiscard]] std::vector<ReachedNet> netsWithinReach(const Lookup& lookup, const std::vector<NetId>& from);

struct InjectionProposal {
  std::vector<ReachedNet> nets;
  Volts limit; ///< never above this
  Volts start;
  NetId lowest;            ///< the net whose rating is the limit; none: no rating is
  std::size_t unrated = 0; ///< so many nets have no rating; then the limit is at most `mostUnrated`
  Amperes current;         ///< limit
  Volts step;
  Seconds stepTime;
  Seconds duration;
};
[[nodiscard]] InjectionProposal proposeInjection(const Lookup& lookup, const std::vector<NetId>& line,
                                                 const InjectionRules& rules);

} // namespace netmend
