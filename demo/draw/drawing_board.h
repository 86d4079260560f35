#pragma once

#include <string>
#include <vector>

#include "netmend/board/edit.h"

/// Draws a board as a person would, part by part: everything goes through edits. Millimetres throughout,
/// since the drawing below is read by people.
namespace netmend::demo {

/// A pad of a footprint, relative to the part's middle.
struct FootprintPad {
  std::string pin;
  double x, y, width, height;
};

struct Footprint {
  std::string name;
  double bodyWidth, bodyHeight, tall;
  std::vector<FootprintPad> pads;
};

[[nodiscard]] Footprint chipSize(const std::string& name); ///< 0402, 0603, 1206 two-terminal parts
[[nodiscard]] Footprint twoRows(const std::string& name, int pins, double pitch, double span,
                                double padLength, double padWidth, double bodyWidth, double bodyHeight,
                                double tall);
[[nodiscard]] Footprint quad(int pins, double pitch, double span, double padLength, double padWidth,
                             double body);
[[nodiscard]] Footprint row(const std::string& name, int pins, double pitch, double padWidth,
                            double padHeight, double bodyWidth, double bodyHeight, double bodyY, double tall);

/// What a part is put down with; pins are joined to nets in the footprint's order ("" is not known, "-"
/// joined to nothing).
struct Placement {
  std::string reference;
  PartKind kind;
  std::string value;
  double x, y, turn;
  Side side;
  std::vector<std::string> nets;
};

class DrawingBoard {
public:
  DrawingBoard(std::string uuid, std::string name, std::string revision, double width, double height);

  PartId place(const Placement& placement, const Footprint& footprint);
  void testPad(const std::string& name, double x, double y, Side side, const std::string& net);
  void track(const std::string& layer, const std::string& net, double width, const std::vector<Point>& way);
  void unknownRun(const std::string& net, Point from, Point to);
  void via(const std::string& net, double x, double y, MaskOpening opening);
  void area(const std::string& layer, const std::string& net, Polygon polygon);
  void zone(ZoneKind kind, const std::string& name, Polygon polygon, Fact<Side> side, PartId part = {});
  void role(const std::string& net, NetRole role, double volts);
  void lidOver(PartId part, PartId lid);

  [[nodiscard]] const Board& board() const { return board_; }

private:
  void draw(const Edit& edit);
  NetId netNamed(const std::string& name);
  Board board_;
};

[[nodiscard]] Point at(double x, double y);
[[nodiscard]] Polygon box(double left, double bottom, double right, double top);
[[nodiscard]] Polygon disc(double x, double y, double radius);

} // namespace netmend::demo
