#pragma once

#include <compare>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/said.h"
#include "netmend/board/lookup.h"
#include "netmend/netgraph/copper_object.h"

/// How places are called, as facts: two places of equal facts are called alike. The words for them are made
/// in `words`; a job book keeps the facts, so that a name outlives the board it was made on.
namespace netmend {

/// "2.4 mm right of U102.76": by the nearest pin that a person sees on that side. Right and left are as one
/// looks at that side from above.
struct Beside {
  std::string pin;                  ///< its label; empty: no pin is in sight, and the place is given by `at`
  std::optional<Heading> heading{}; ///< none: it is at the pin
  int tenths = 0;                   ///< of a millimetre
  Point at;                         ///< only where no pin is in sight
  friend auto operator<=>(const Beside&, const Beside&) = default;
};

/// Where a track starts or ends. The lesser one is said first: where one starts is what one finds soonest.
struct TrackEnd {
  enum class Sort { pin, via, area, fork, end, unseen };
  Sort sort = Sort::unseen;
  std::string pin; ///< its label
  Beside beside;   ///< of all but pins
  friend auto operator<=>(const TrackEnd&, const TrackEnd&) = default;
};

struct PlaceName {
  enum class Sort {
    somewhere, ///< nothing is known of the place
    pin,
    pad,
    via,
    spot, ///< on a track, where one could scrape
    joint,
    deadPin,
    track, ///< or a stretch of it
    part,
    unknownWay, ///< to `beyond`, or between these and `before`
  };
  /// How much of a track.
  enum class Stretch { whole, first, last, between };
  enum class Layer { top, inner, bottom }; ///< unknown counts as top

  Sort sort = Sort::somewhere;
  std::string label; ///< of the pin or part
  Beside beside;     ///< of a via or spot
  Layer layer = Layer::top;
  TrackEnd from;
  TrackEnd to;
  Stretch stretch = Stretch::whole;
  int fromTenths = 0;              ///< of a millimetre along the track; `between` only
  int toTenths = 0;                ///< … there its end; of `first` and `last` the length
  std::vector<std::string> beyond; ///< labels of pins
  std::vector<std::string> before;
  std::string handle; ///< said as well, where only it tells two places apart
  friend auto operator<=>(const PlaceName&, const PlaceName&) = default;

  /// Without what is known of the place and not said: of two names that are alike so, the words are alike.
  [[nodiscard]] PlaceName asSaid() const;
};

/// Names places of a board. The board must outlive it.
class PlaceNames {
public:
  /// Looks once at every pad: which of them are in sight.
  explicit PlaceNames(const Lookup& lookup);

  /// Of equally near pins the first by label.
  [[nodiscard]] Beside beside(Point at, Side side) const;
  /// What a lead is held on, or a wire soldered to: PinId, PadId, ViaId or TrackId. `layer` is dense, -1: a
  /// via as a whole.
  [[nodiscard]] PlaceName of(const CopperObject& object, Point at, int layer) const;
  [[nodiscard]] PlaceName::Layer layerOf(int layer) const;
  /// The side that copper of this layer is looked at from.
  [[nodiscard]] Side sideOf(int layer) const;

  [[nodiscard]] const Board& board() const { return lookup_->board(); }

private:
  struct Seen {
    Point at;
    PinId pin;
  };
  const Lookup* lookup_;
  std::vector<Seen> top_;
  std::vector<Seen> bottom_;
};

} // namespace netmend
