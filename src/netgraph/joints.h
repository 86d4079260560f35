#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "contacts.h"
#include "copper_items.h"

namespace netmend::copper {

/// Joints of a track this near to each other are one place.
inline constexpr double jointMerge = 1000.0;

/// A place on a track where something meets, or one of its ends.
struct Joint {
  std::size_t track = 0; ///< dense index in board.tracks
  double along = 0.0;    ///< nm from the track's start, along its centre line
  Vec at;
  int layer = -1;
};

/// Copper other than a track that touches a joint; `other` is an item.
struct Touch {
  std::size_t joint = 0;
  std::size_t item = 0;
  int layer = -1; ///< -1: the layer is not known
  Vec onItem;
};

/// Two joints of different tracks that touch.
struct Meeting {
  std::size_t a = 0;
  std::size_t b = 0;
};

/// All places on all tracks. Joints 2k and 2k + 1 are the start and the end of the track with dense index k.
struct Joints {
  std::vector<Joint> joints;
  std::vector<double> trackLength; ///< nm, by dense track index
  std::vector<Touch> touches;
  std::vector<Meeting> meetings;
};

[[nodiscard]] Joints jointsOf(const Board& board, const Items& items, const std::vector<Contact>& contacts);

} // namespace netmend::copper
