#pragma once

#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "kicad_cursor.h"
#include "kicad_graphic.h"
#include "netmend/board/exchange/import.h"
#include "outline.h"

namespace netmend::kicad {

/// What is known of the file so far; each `read…` takes one list and adds to it.
struct KicadReader {
  Cursor in;
  const ImportSource& source;
  Imported result{};

  long version = 0;
  /// By every name that the file's items may use: the table's own, and the fixed one of the place in the
  /// stack.
  std::unordered_map<std::string_view, LayerId> copperLayers{};
  std::unordered_set<std::string_view> otherLayers{}; ///< declared ones without copper
  std::unordered_map<long, NetId> netsByNumber{};
  std::unordered_map<std::string, NetId> netsByName{};
  std::vector<EdgePiece> edges{};
  std::size_t edgePoints = 0;
  Fact<MaskOpening> viaMask{}; ///< what holds for vias that say nothing themselves
  Fact<Length> boardThickness{};
  bool viasOnMask = false;

  /// What is told once for all of a kind: how many, and where the first is.
  struct Counted {
    Pattern what;
    std::size_t count = 0;
    std::size_t first = 0; ///< a place of the cursor
  };
  std::map<std::string_view, Counted> counted{}; ///< by what it is, in English

  explicit KicadReader(const ImportSource& s) : in(s.content), source(s) {}

  [[nodiscard]] Board& board() { return result.board; }
  void notice(Said said) { result.notices.push_back(std::move(said)); }
  void count(const Pattern& kind, std::size_t place) {
    Counted& c = counted.try_emplace(kind.english, Counted{kind, 0, place}).first->second;
    ++c.count;
  }
  void count(const Pattern& kind) { count(kind, in.place()); }
};

// kicad_setup.cpp
void readLayers(KicadReader& r);
void readGeneral(KicadReader& r);
void readSetup(KicadReader& r);
void readTitle(KicadReader& r);
/// `(net 3 "GND")` of the board.
void readNetDeclaration(KicadReader& r);
/// The value of a `(net …)` of an item: a number, or from version 10 on a name. The list is left.
[[nodiscard]] Fact<NetId> readItemNet(KicadReader& r);
[[nodiscard]] Fact<NetId> itemNet(KicadReader& r, const Item& item);
/// Unknown for a layer without copper, and for one that the file does not declare.
[[nodiscard]] Fact<LayerId> copperLayer(const KicadReader& r, std::string_view name);

// kicad_text.cpp
/// The rest of a list that draws without giving its strokes. Where that would be copper, it counts as `kind`,
/// at the place of the list.
void readStrokeless(KicadReader& r, const Pattern& kind, std::size_t place);
/// The kind for texts.
inline constexpr Pattern textsLeftOut = pattern("core", "texts on copper layers, left out");

// kicad_copper.cpp
void readSegment(KicadReader& r);
void readArc(KicadReader& r);
void readVia(KicadReader& r);
void readZone(KicadReader& r);

// kicad_drawing.cpp
/// A drawn shape: edge of the board, or copper without a pin. Its place is that of its owner.
void addDrawing(KicadReader& r, const Graphic& graphic, Point origin, Degrees rotation);

// kicad_footprint.cpp
void readFootprint(KicadReader& r);

/// A pad as the file has it, before it belongs to a pin.
struct PadItem {
  std::string_view number;
  Fact<NetId> net;
  Pad pad;
  /// Copper of a custom pad that does not hang together with it; about its position, before rotation.
  std::vector<Polygon> otherPieces;
  std::size_t place = 0; ///< in the file
};
// kicad_pad.cpp
[[nodiscard]] PadItem readPad(KicadReader& r, Point origin, Degrees rotation);

// kicad_custom_pad.cpp
void readPrimitives(KicadReader& r, std::vector<Graphic>& into);
/// Copper of a custom pad about its position, anchor and primitives together; the piece at the anchor first.
[[nodiscard]] std::vector<Polygon> customPadPieces(const std::vector<Graphic>& primitives, Size size,
                                                   bool rectAnchor);
/// Corners of a rectangle with its corners cut or rounded.
[[nodiscard]] Ring chamferedRing(Size size, Length radius, Length cut,
                                 const std::vector<std::string_view>& cutCorners);
[[nodiscard]] Ring trapezoidRing(Size size, Size delta);

} // namespace netmend::kicad
