#pragma once

#include "merging.h"

namespace netmend::test {

/// From the file's places to the drawing's: a quarter turn counter-clockwise, then by (10, 20) mm.
inline Point carried(Point p) {
  return {Length(10'000'000) - p.y, Length(20'000'000) + p.x};
}
inline Ring carried(Ring ring) {
  for (Point& p : ring)
    p = carried(p);
  return ring;
}

struct PinTold {
  const char* label;
  const char* net;
  Point at;
};
inline const std::vector<PinTold>& crossPins() {
  static const std::vector<PinTold> pins = {{"J1.1", "A", mm(10, 0)},
                                            {"J1.2", "A", mm(0, 10)},
                                            {"J1.3", "B", mm(-10, 0)},
                                            {"J1.4", "B", mm(0, -10)}};
  return pins;
}

/// J1's four pins at the ends of a cross of 20 mm, in the file; and in the drawing carried, J1.1 farther out
/// by `slip`. That turns nothing: of least squares the whole moves by a quarter of it.
struct Cross {
  Told drawn = drawnBoard();
  Told file = fileBoard();
  explicit Cross(Length slip = {}, bool turned = true) {
    for (const auto& [label, net, at] : crossPins()) {
      file.pin(label, net, at);
      drawn.pin(label, net, turned ? carried(at) : at);
    }
    const PadId pad = drawn.board.pads[0].id;
    drawn.with(drawn.board.pads, pad,
               [&](Pad& one) { (turned ? one.position.value.y : one.position.value.x) += slip; });
  }
};

} // namespace netmend::test
