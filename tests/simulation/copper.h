#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "netmend/board/lookup.h"

/// The simulator's own copper: found from the board's objects by plain loops, without the program's graph.
namespace netmend::simulation {

/// A place where a lead or a wire can be put, or where copper meets.
struct Spot {
  enum class Kind { leg, pad, joint, ring, area };
  Kind kind = Kind::joint;
  std::uint64_t object = 0; ///< a leg's pin, a pad, track, via or area
  PinId pin;                ///< of a leg, and of a pad
  Point at;
  int layer = -1;      ///< dense; -1: all
  double along = -1.0; ///< joint only: mm from the track's start
};

/// What joins two spots. A contact does not break.
struct Bond {
  enum class Kind { contact, joint, track, barrel, part };
  Kind kind = Kind::contact;
  std::size_t a = 0;
  std::size_t b = 0;
  std::uint64_t object = 0; ///< a joint's pin, a track, via or part
  double mm = 0.0;          ///< track only
  double ohms = 0.0;        ///< of a part; of copper at 20 °C
};

struct Copper {
  std::vector<Spot> spots;
  std::vector<Bond> bonds;
  [[nodiscard]] std::optional<std::size_t> leg(PinId pin) const;
};

/// Adds all copper that is said to be of this net, with the legs on it.
void addNet(Copper& copper, const Lookup& lookup, NetId net);

/// Which spots hang together without these bonds: the label of each is the lowest spot of its piece.
[[nodiscard]] std::vector<std::size_t> pieces(const Copper& copper, const std::vector<std::size_t>& without);

/// The spot of a place that a lead is held to: a pin's leg, a pad, a via's ring, a point of a track. Nothing
/// when there is no such copper.
[[nodiscard]] std::optional<std::size_t> spotOf(const Copper& copper, const Lookup& lookup, PinId pin);
[[nodiscard]] std::optional<std::size_t> spotOfPad(const Copper& copper, PadId pad);
[[nodiscard]] std::optional<std::size_t> spotOfVia(const Copper& copper, ViaId via, int layer);
/// `crack`: a broken piece of a track, with the place of the crack in mm from the track's start.
struct Crack {
  std::size_t bond = 0;
  double along = 0.0;
};
[[nodiscard]] std::optional<std::size_t> spotOfTrack(const Copper& copper, const Board& board, TrackId track,
                                                     Point at, const std::optional<Crack>& crack);

} // namespace netmend::simulation
