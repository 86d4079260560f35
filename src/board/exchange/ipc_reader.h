#pragma once

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "folded_notices.h"
#include "ipc_line.h"
#include "ipc_record.h"
#include "netmend/board/exchange/import.h"
#include "outline.h"
#include "pin_points.h"
#include "text.h"

namespace netmend::ipc {

/// What the file says before its points can be understood: units, long names, how many layers.
struct Preamble {
  Units units;
  bool unitsGiven = false;
  std::string title, job, revision;
  std::unordered_map<std::string, std::string> longNames; ///< by the name that records use
  int layers = 2;
  std::set<int> layersSeen;
  std::set<int> viaLayers; ///< from which 317 says that vias can be reached
  /// Nobody can reach an inner layer: a file that says so of vias means the layer that they begin on.
  [[nodiscard]] bool hasBlindVias() const {
    return std::any_of(viaLayers.begin(), viaLayers.end(), [&](int l) { return l > 1 && l < layers; });
  }
  bool ended = false;
  /// Written by the one program that says `arrayDim` where the standard has `DIM`, which counts angles
  /// clockwise.
  bool countsClockwise = false;
  FoldedNotices folded;
  std::vector<Said> notices;
};
[[nodiscard]] Result<Preamble> preambleOf(const ImportSource& source);

/// A point that the records since the last 3x7 describe together.
struct Group {
  std::string reference, pin, net;
  std::vector<TestRecord> records;
  FilePlace place;
};

/// What a pad's angle leaves open about its copper: nothing, whether its size is before turning, or which way
/// the angle counts.
enum class Turn { indifferent, quarterDrilled, quarterSurface, odd };

struct IpcReader {
  const ImportSource& source;
  Preamble preamble;
  PinPoints points;
  std::vector<LayerId> layers{}; ///< by number - 1
  Group group{};
  std::vector<EdgePiece> edges{};
  FoldedNotices folded{};
  bool tracks = false;                    ///< there are records of conductors
  std::array<FilePlace, 4> firstTurned{}; ///< by `Turn`: where the first pad so turned stands

  IpcReader(const ImportSource& s, Preamble p)
      : source(s), preamble(std::move(p)), points(s, LabelConflict::separate) {}
  [[nodiscard]] std::string netName(const std::string& field) const;
};

/// Calls `use(line, number)` for each line of the board itself, without those of a panel's image, up to the
/// record that ends the file or until it gives false. Gives the number of the panel's first line, or 0.
template <class Use> std::size_t forEachBoardLine(std::string_view content, Use use) {
  std::size_t firstOfPanel = 0;
  bool inPanel = false;
  forEachLine(content, [&](std::string_view text, std::size_t number) {
    if (text.starts_with('P') && trimmed(text.substr(1)).starts_with("IMAGE")) {
      inPanel = text.find("PANEL") != std::string_view::npos;
      if (inPanel && firstOfPanel == 0) firstOfPanel = number;
    }
    return codeOf(text) == 999 ? use(RecordLine(text), number) && false
                               : inPanel || use(RecordLine(text), number);
  });
  return firstOfPanel;
}

// ipc_points.cpp
/// Turns the group into pads of a pin or a via, and empties it.
[[nodiscard]] Result<void> finishGroup(IpcReader& r);

[[nodiscard]] Turn turnOf(const Pad& pad);

// ipc_drawn.cpp
void addConductor(IpcReader& r, const std::string& net, int layer, const Drawn& drawn);
void addEdge(IpcReader& r, const Drawn& drawn);

// ipc_pads.cpp
/// Decides what angles, sizes and rectangles of the file's pads mean where that is open, by the fewest
/// overlaps of different nets, and changes the pads accordingly.
void settlePads(IpcReader& r);

// ipc_points.cpp
/// Turns the group into pads of a pin or a via, and empties it.
[[nodiscard]] Result<void> finishGroup(IpcReader& r);

[[nodiscard]] Turn turnOf(const Pad& pad);

// ipc_drawn.cpp
void addConductor(IpcReader& r, const std::string& net, int layer, const Drawn& drawn);
void addEdge(IpcReader& r, const Drawn& drawn);

// ipc_turns.cpp
/// Decides what the file's angles mean, where that makes a difference, by the fewest overlaps of different
/// nets, and turns its pads accordingly.

} // namespace netmend::ipc
