#pragma once

#include <string>
#include <vector>

#include "netmend/isolation/short_places.h"
#include "netmend/netgraph/resistance.h"
#include "support/drawn_board.h"

/// A supply rail on a board of one layer with parts to ground, read in milliohms.
namespace netmend::test {

inline ShortPriors shortPriors() {
  return readShortPriors(NETMEND_SOURCE_DIR "/data/fault_priors.json").value();
}

inline MeterProfile fourWireMeter() {
  return *findMeter(loadMeters(NETMEND_SOURCE_DIR "/data/meters.json").value(), "bench-200000");
}

struct RailBoard {
  DrawnBoard drawn;
  LayerId top = drawn.layer("top");
  LayerId bottom = drawn.layer("bottom");
  NetId rail = drawn.net("VDD");
  NetId ground = drawn.net("GND");

  RailBoard() {
    drawn.board.info.layerOrder = {top, bottom};
    for (const LayerId id : {top, bottom}) {
      Layer layer = *drawn.board.layers.find(id);
      layer.copperThickness = fromFile(usualCopperThickness);
      drawn.board.layers.put(layer);
    }
  }

  /// Pin 1 on the rail at (x, 0), pin 2 on ground 1 mm below; pads of 0.4 mm.
  PartId capacitor(const std::string& reference, double x, PartKind kind = PartKind::capacitor) {
    Part more;
    more.kind = fromUser(kind);
    const PartId id = drawn.part(reference, Side::top, {}, more);
    Pad open;
    open.access = fromUser(Access::open);
    drawn.pad(drawn.pin(id, "1", rail), mm(x, 0), PadReach::top, 0.4, open);
    drawn.pad(drawn.pin(id, "2", ground), mm(x, -1), PadReach::top, 0.4, open);
    return id;
  }

  /// Along y = 0.
  void track(double from, double to, double width = 0.5) {
    drawn.track(mm(from, 0), mm(to, 0), top, rail, width);
  }

  [[nodiscard]] PinId pinOf(const std::string& label) const {
    return Lookup(drawn.board).pinsLabelled(label).front();
  }

  [[nodiscard]] ShortSearch search(const std::vector<Reading>& readings,
                                   const std::vector<ShortSign>& signs = {},
                                   const std::string& injectedAt = {}) const {
    const Lookup lookup(drawn.board);
    const BoardGraph graph = buildBoardGraph(drawn.board);
    const Line line = lineOf(lookup, graph, rail);
    return findShort({lookup, graph, line, shortPriors(),
                      readProbeEfforts(NETMEND_SOURCE_DIR "/data/efforts.json").value(), fourWireMeter(),
                      injectedAt.empty() ? PinId{} : pinOf(injectedAt)},
                     readings, signs);
  }

  [[nodiscard]] Reading milliohms(const std::string& label, double value) const {
    Reading out;
    out.point = {pinOf(label), label};
    out.mode = ReadingMode::milliohms;
    out.value = value * 1e-3;
    return out;
  }
  [[nodiscard]] Reading drop(const std::string& label, double millivolts, double amperes) const {
    Reading out = milliohms(label, millivolts);
    out.mode = ReadingMode::dropUnderCurrent;
    out.injected = Amperes(amperes);
    return out;
  }
};

/// Of all places of that part.
inline double probabilityOfPart(const ShortSearch& search, PartId part) {
  double sum = 0.0;
  for (const ShortPlace& place : search.places)
    if (place.part == part) sum += place.probability;
  return sum;
}

} // namespace netmend::test
