#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "netmend/board/lookup.h"

namespace netmend {

enum class MapHitKind { part, pin, net };

/// Something of the board that a search found.
struct MapHit {
  MapHitKind kind = MapHitKind::part;
  PartId part; ///< of a part or a pin
  PinId pin;
  NetId net;          ///< of a net or a pin
  std::string name;   ///< "R12", "J4.11", "KEY_COL3"
  std::string detail; ///< a part's value, a pin's net; may be empty
  friend bool operator==(const MapHit&, const MapHit&) = default;
};

/// Finds parts, pins and nets as somebody types. Its own copies of the words: the board may go.
class MapIndex {
public:
  MapIndex() = default;
  explicit MapIndex(const Lookup& lookup);

  /// References, pins (`J4.11`), net names and values that hold the text, whatever its case: those that are
  /// it first, then those that begin with it, then the rest, each in the order of names with numbers as
  /// numbers. At most `most`. Nothing for an empty text.
  [[nodiscard]] std::vector<MapHit> find(std::string_view text, std::size_t most = 50) const;

private:
  struct Entry {
    MapHit hit;
    std::string key;   ///< the name folded to lower case
    std::string other; ///< the detail that is searched too: a part's value
  };
  std::vector<Entry> entries_; ///< in the order of names
};

} // namespace netmend
