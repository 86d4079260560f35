#pragma once

#include <map>
#include <tuple>
#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/netgraph/place_name.h"

namespace netmend {

/// Names of all places of one line, no two alike: where one could probe, and where it may be broken.
class LineNames {
public:
  LineNames() = default;
  LineNames(const PlaceNames& names, const Line& line, const Isolation& isolation);

  /// Of `Isolation::places`.
  [[nodiscard]] const PlaceName& probe(std::size_t place) const { return probes_[place]; }
  /// Of a place of the isolation that these names were made for.
  [[nodiscard]] const PlaceName& fault(const FaultPlace& place) const;

  /// What a class is called by: its likeliest place. Where that is a stretch of a track and all suspected
  /// stretches of this track are in the class, it is the whole track.
  struct ClassName {
    PlaceName place;
    std::size_t places = 0; ///< how many there are so called, this one and others
  };
  [[nodiscard]] ClassName nameOf(const FaultClass& faultClass) const;

private:
  /// What tells places of faults apart.
  using Key = std::tuple<FaultKind, std::size_t, PinId, std::vector<Point>, std::vector<PinId>>;
  [[nodiscard]] static Key keyOf(const FaultPlace& place);

  std::vector<PlaceName> probes_;
  std::map<Key, PlaceName> faults_;
  std::map<PlaceName, std::size_t> stretches_; ///< how many of each track are suspected
};

} // namespace netmend
