#pragma once

#include <optional>
#include <string>
#include <vector>

#include "suspect_tree.h"

namespace netmend {

/// Copper of a line that hangs together whatever single thing breaks, and where it hangs in the tree of such
/// pieces.
struct CopperPiece {
  struct OnePin {
    PinId pin;
    NodeIndex node = 0;
    std::string label;
    std::optional<Point> at;
    double suspicion = 0.0; ///< that it is dead
    const PlaceReading* reading = nullptr;
    bool probe = false;
  };
  std::vector<OnePin> pins;
  bool hub = false;                      ///< of an unknown way
  std::optional<Point> at;               ///< of some copper of it
  PlaceName placeName;                   ///< of the place that `reading` or `probe` is about
  const PlaceReading* reading = nullptr; ///< at copper that is no pin
  bool probe = false;
  double suspicion = 0.0; ///< of copper inside it

  std::optional<std::size_t> parent; ///< none: the source, or not reached
  std::vector<std::size_t> children; ///< pieces
  const CopperEdge* above = nullptr; ///< to the parent; null: the source, or no way is known
  double aboveSuspicion = 0.0;
  bool leadsToPins = false; ///< itself or below
  bool loud = false;        ///< suspicion, reading or next probe, itself, above it or below

  [[nodiscard]] bool worthShowing() const { return leadsToPins || loud; }
};

struct LinePieces {
  std::vector<CopperPiece> pieces;
  std::size_t source = 0;
  double elsewhere = 0.0;
  const Board* board = nullptr;
  std::vector<const CopperEdge*> edges; ///< by `CopperEdge::index`

  /// Calls for the piece and all below it.
  template <class Visit> void below(std::size_t piece, const Visit& visit) const {
    std::vector<std::size_t> waiting{piece};
    while (!waiting.empty()) {
      const CopperPiece& here = pieces[waiting.back()];
      waiting.pop_back();
      visit(here);
      waiting.insert(waiting.end(), here.children.begin(), here.children.end());
    }
  }
};

/// Refers to `board`, `fault` and `wishes`.
[[nodiscard]] LinePieces linePieces(const Board& board, const FaultCase& fault, const TreeWishes& wishes);

} // namespace netmend
