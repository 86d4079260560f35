#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QPainter>

#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/overlay.h"
#include "netmend/probing/verdict.h"

namespace netmend {

/// From low to high, in the strip's mode's SI unit.
struct StripInterval {
  double low = 0.0;
  double high = 0.0;
};

/// What a meter showed at a pin; no value is OL.
struct StripReading {
  std::optional<double> value;        ///< in the strip's mode's SI unit
  std::optional<VerdictKind> verdict; ///< none: not judged; findings are named in the picture
  [[nodiscard]] bool odd() const { return verdict && isFlag(*verdict); }
};

struct StripPin {
  std::string label;                   ///< "11"
  std::string net;                     ///< may be empty
  std::vector<StripInterval> expected; ///< more than one for a mixture
  bool expectedOl = false;
  std::optional<StripReading> reading; ///< as found
  std::optional<StripReading> after;   ///< after the repair
};

/// A connector's expected values against readings.
struct PinStrip {
  std::string points; ///< the connector; empty: points of no connector
  ReadingMode mode = ReadingMode::diode;
  std::string other;      ///< where the other lead was; empty: nobody said
  bool continued = false; ///< a further row of a strip
  std::vector<StripPin> pins;
};

[[nodiscard]] MarkShape markForVerdict(VerdictKind kind);

/// A mark of so many units across, filled with its colour, edged in ink.
void paintMark(QPainter& painter, MarkShape shape, QPointF at, double size, const PictureColors& colors = {});

/// How tall the strip will be at this width; pins that do not fit side by side go on in further rows.
[[nodiscard]] double pinStripHeight(const PinStrip& strip, double width, const PictureType& type);
/// The rows alone, for a page that has to break between them.
[[nodiscard]] std::vector<PinStrip> pinStripRows(const PinStrip& strip, double width,
                                                 const PictureType& type);

void paintPinStrip(QPainter& painter, const PinStrip& strip, const QRectF& frame, const PictureType& type,
                   const PictureColors& colors = {});

} // namespace netmend
