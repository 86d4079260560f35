#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "netmend/base/fact.h"
#include "netmend/base/geometry.h"
#include "netmend/base/quantity.h"
#include "netmend/board/ids.h"
#include "netmend/board/table.h"

/// What is known of a board. Plain values: everything except an id may be unknown, and every
/// fact says where it comes from. An object's own `origin` covers its existence and its
/// geometry; attributes that can be learnt separately are `Fact`s of their own.
/// Lengths in nanometres, seen from the top side with y up, whatever side an object is on.
/// A board changes through `apply(Board&, Edit)` only (edit.h).
namespace netmend {

/// No length or coordinate of a board is larger than this (10 m), so that sums and differences never
/// overflow; readers and files refuse more.
inline constexpr Length largestLength{10'000'000'000};

enum class Side { top, bottom };

/// One copper layer. The order from top to bottom is `BoardInfo::layerOrder`, so that a layer
/// found later can be put between two others without renaming anything.
struct Layer {
  LayerId id;
  std::string name;
  Fact<Length> copperThickness;
  Fact<Length> dielectricBelow; ///< to the next copper layer; meaningless for the last one
  Origin origin = Origin::unknown;
  friend bool operator==(const Layer&, const Layer&) = default;
};

enum class PartKind {
  resistor,
  zeroOhmLink,
  resistorArray,
  capacitor,
  inductor,
  ferrite,
  choke,
  filter,
  fuse,
  diode,
  led,
  transistor,
  chip,
  crystal,
  connector,
  switchOrKey,
  battery,
  antenna,
  shield,
  testPoint,
  mechanical,
  other
};

/// A current path inside a part, from pin to pin: what a line continues through.
struct Through {
  PinId from;
  PinId to;
  Fact<Ohms> resistance;
  friend bool operator==(const Through&, const Through&) = default;
};

struct Part {
  PartId id;
  std::string reference; ///< a label: may repeat or be empty
  Fact<PartKind> kind;
  Fact<std::string> value; ///< as written: `4k7`, `0R`, `100n`; see value.h
  Fact<std::string> package;
  Fact<Side> side;
  Fact<Point> position;
  Fact<Ring> body; ///< outline on the board
  Fact<Length> height;
  Fact<bool> fitted;
  Fact<PartId> lid;                   ///< the shield or lid over it; known and none: nothing over it
  Fact<std::vector<Through>> through; ///< unknown: derived from kind and pins, see netgraph/line.h
  Origin origin = Origin::unknown;
  friend bool operator==(const Part&, const Part&) = default;
};

/// What a meter finds behind a pin.
enum class Termination { none, junction, resistive };

/// A place of a part (or, without part, of the board: a test pad) that a net can reach.
struct Pin {
  PinId id;
  PartId part;      ///< none: a test pad or other free point
  std::string name; ///< a label: "11", "A4"; may repeat or be empty
  Fact<NetId> net;  ///< known and none: connected to nothing
  Fact<Termination> termination;
  Origin origin = Origin::unknown;
  friend bool operator==(const Pin&, const Pin&) = default;
};

enum class PadShape { circle, oval, rectangle, roundedRectangle, polygon };

/// Which copper layers a pad has copper on.
enum class PadReach { top, bottom, topAndBottom, allLayers };

/// Which faces of a pad or via the solder mask leaves open.
enum class MaskOpening { none, top, bottom, both };

/// How a point can be reached with a probe; ordered by the trouble it takes.
enum class Access { open, underMask, underLid, underPart };

struct Pad {
  PadId id;
  PinId pin; ///< always one: a pad of no part has a pin without part
  Fact<Point> position;
  Fact<PadShape> shape;
  Fact<Size> size;     ///< before rotation
  Length cornerRadius; ///< roundedRectangle only
  Ring polygon;        ///< polygon only: corners relative to `position`, before rotation
  Degrees rotation;
  Fact<PadReach> reach;
  Fact<Size> drill;  ///< zero: no hole; unequal: a slot
  Point drillOffset; ///< hole's centre relative to `position`, before rotation
  Fact<bool> plated;
  Fact<MaskOpening> maskOpening;
  Fact<Access> access; ///< unknown: derived, see access.h
  Fact<bool> gone;     ///< torn off: there is no copper
  Origin origin = Origin::unknown;
  friend bool operator==(const Pad&, const Pad&) = default;
};

enum class NetRole { signal, ground, supply, fastPair, radio };

struct Net {
  NetId id;
  std::string name;
  Fact<NetRole> role;
  Fact<Volts> ratedVoltage;
  Fact<Amperes> ratedCurrent;
  Origin origin = Origin::unknown;
  friend bool operator==(const Net&, const Net&) = default;
};

/// `unknownWay`: it runs from start to end, but nobody has seen how.
enum class TrackWay { straight, arc, unknownWay };

struct Track {
  TrackId id;
  TrackWay way = TrackWay::straight;
  Point start;
  Point end;
  Point mid; ///< arc only: a point of the arc between start and end
  Fact<LayerId> layer;
  Fact<Length> width;
  Fact<NetId> net;
  Origin origin = Origin::unknown;
  friend bool operator==(const Track&, const Track&) = default;
};

struct Via {
  ViaId id;
  Point position;
  Fact<Length> diameter;
  Fact<Length> drill;
  Fact<LayerId> from;            ///< unknown or none: from the top layer
  Fact<LayerId> to;              ///< unknown or none: to the bottom layer
  Fact<MaskOpening> maskOpening; ///< `none` is tented on both sides
  Fact<NetId> net;
  Origin origin = Origin::unknown;
  friend bool operator==(const Via&, const Via&) = default;
};

struct Area {
  AreaId id;
  Polygon polygon;
  Fact<LayerId> layer;
  Fact<NetId> net;
  Origin origin = Origin::unknown;
  friend bool operator==(const Area&, const Area&) = default;
};

enum class ZoneKind { connector, shieldWall, battery, fastener, antenna, flex, heatSensitive, tallPart };

/// A place with a rule for wires. The margin and what the rule costs come from data/zones.json
/// unless given here.
struct Zone {
  ZoneId id;
  ZoneKind kind = ZoneKind::connector;
  std::string name;
  Polygon polygon;
  Fact<Side> side; ///< unknown: both sides
  Fact<Length> margin;
  PartId part; ///< the part that it was made from, or none
  Origin origin = Origin::unknown;
  friend bool operator==(const Zone&, const Zone&) = default;
};

/// A place in a photo as it is looked at: x to the right, y down, from the outer corner of the first pixel.
struct PhotoPoint {
  Pixels x;
  Pixels y;
  friend bool operator==(const PhotoPoint&, const PhotoPoint&) = default;
};

/// Where in a photo the board is seen. With (u, v, w) = `plane`·(x, y, 1), x and y in millimetres, a lens
/// without fault shows a place at (u/w, v/w); the real one shows it, from the photo's middle, 1 + `radial`·r²
/// times as far out, r being the former's distance from the middle in half diagonals. See underlay.h.
struct PhotoLie {
  std::array<double, 9> plane{1, 0, 0, 0, 1, 0, 0, 0, 1}; ///< row by row
  double radial = 0.0;
  friend bool operator==(const PhotoLie&, const PhotoLie&) = default;
};

/// A place of the board that somebody has found in a photo.
struct PhotoPair {
  PhotoPoint photo;
  Point board;
  friend bool operator==(const PhotoPair&, const PhotoPair&) = default;
};

/// A photo that lies under the drawing. Its file is in the folder beside the board's file (underlay.h).
struct Underlay {
  UnderlayId id;
  std::string name; ///< a label: what the photo's file was called
  std::string file; ///< without folder
  Pixels width;     ///< as it is looked at
  Pixels height;
  Side side = Side::top;        ///< what of the board it shows
  bool closeUp = false;         ///< lies on the photo of the whole side
  Fact<PhotoLie> lie;           ///< guessed: nobody has straightened it yet
  std::vector<PhotoPair> pairs; ///< what it was straightened by
  Share faded;                  ///< 0: as it is; 1: not to be seen
  Share lightened;              ///< -1 black to 1 white; 0: as it is
  Origin origin = Origin::unknown;
  friend bool operator==(const Underlay&, const Underlay&) = default;
};

/// How much of the copper between a board's pins is in its description.
enum class DrawnCopper {
  points,    ///< pads and vias; how they are joined only their nets say
  tracks,    ///< tracks too, but no areas
  everything ///< where a net is in pieces, it is broken
};

struct BoardInfo {
  std::string uuid; ///< identifies the board description over all its revisions
  Fact<std::string> name;
  Fact<std::string> revision;
  Fact<std::vector<Polygon>> outline; ///< holes are cut-outs; more than one polygon on a panel
  std::vector<LayerId> layerOrder;    ///< top to bottom
  Fact<DrawnCopper> copper;           ///< unknown: see drawnCopper (summary.h)
  friend bool operator==(const BoardInfo&, const BoardInfo&) = default;
};

struct Board {
  BoardInfo info;
  Table<Layer> layers;
  Table<Part> parts;
  Table<Net> nets;
  Table<Pin> pins;
  Table<Pad> pads;
  Table<Track> tracks;
  Table<Via> vias;
  Table<Area> areas;
  Table<Zone> zones;
  Table<Underlay> underlays;
  std::uint64_t lastId = 0; ///< highest id ever given out on this board

  /// A fresh id, e.g. `board.newId<PartId>()`.
  template <class IdType> [[nodiscard]] IdType newId() { return IdType(++lastId); }
  /// Equal in content; `lastId` only grows, also over an undo, and does not count.
  friend bool operator==(const Board& a, const Board& b) {
    return a.info == b.info && a.layers == b.layers && a.parts == b.parts && a.nets == b.nets &&
           a.pins == b.pins && a.pads == b.pads && a.tracks == b.tracks && a.vias == b.vias &&
           a.areas == b.areas && a.zones == b.zones && a.underlays == b.underlays;
  }
};

} // namespace netmend
