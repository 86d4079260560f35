#include "netmend/sketch/pin_array.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <string_view>

#include "netmend/base/plane.h"

namespace netmend {

namespace {

constexpr std::size_t mostPins = 10'000;

/// Pitches of connectors and packages in millimetres (common practice, no source).
constexpr std::array usualPitches{0.3, 0.35, 0.4,  0.5, 0.635, 0.65, 0.8,  1.0,  1.1,
                                  1.2, 1.25, 1.27, 1.5, 2.0,   2.5,  2.54, 3.96, 5.08};

std::string letterOf(std::size_t row) {
  constexpr std::string_view letters = "ABCDEFGHJKLMNPRTUVWY";
  std::string out;
  for (std::size_t n = row + 1; n > 0; n = (n - 1) / letters.size())
    out.insert(out.begin(), letters[(n - 1) % letters.size()]);
  return out;
}

/// A place in the array: column and row, counted from the first pin; of four sides the side and the place on
/// it.
struct Slot {
  std::size_t column;
  std::size_t row;
  std::string name;
};

std::size_t columnsOf(const PinArray& array) {
  return array.form == PinForm::fourSides ? array.pins / 4 : array.pins / array.rows;
}

std::string nameAt(const PinArray& array, std::size_t column, std::size_t row) {
  const std::size_t columns = columnsOf(array);
  if (array.form == PinForm::fourSides) return std::to_string(row * columns + column + 1);
  if (array.form == PinForm::grid || (array.order == PinOrder::lettered && array.rows > 1))
    return letterOf(row) + std::to_string(column + 1);
  switch (array.rows == 1 ? PinOrder::along : array.order) {
  case PinOrder::alternating:
    return std::to_string(column * array.rows + row + 1);
  case PinOrder::round:
    return std::to_string(row == 0 ? column + 1 : array.pins - column);
  default:
    return std::to_string(row * columns + column + 1);
  }
}

bool isLeftOut(const PinArray& array, const std::string& name) {
  return std::find(array.left.begin(), array.left.end(), name) != array.left.end();
}

std::vector<Slot> slotsOf(const PinArray& array) {
  const std::size_t rows = array.form == PinForm::fourSides ? 4 : array.rows;
  std::vector<Slot> out;
  for (std::size_t row = 0; row < rows; ++row)
    for (std::size_t column = 0; column < columnsOf(array); ++column) {
      Slot slot{column, row, nameAt(array, column, row)};
      if (!isLeftOut(array, slot.name)) out.push_back(std::move(slot));
    }
  const bool numbered = array.form == PinForm::rows && array.order != PinOrder::lettered;
  if (numbered)
    std::stable_sort(out.begin(), out.end(),
                     [](const Slot& a, const Slot& b) { return std::stoul(a.name) < std::stoul(b.name); });
  return out;
}

Vec leftOf(Vec a) {
  return {-a.y, a.x};
}

/// In millimetres, as the side is seen: from below the board is turned over about its upright axis.
Vec seen(Point p, Side side) {
  return {(side == Side::bottom ? -1.0 : 1.0) * p.x.mm(), p.y.mm()};
}
Point unseen(Vec p, Side side) {
  return {Length::fromMm((side == Side::bottom ? -1.0 : 1.0) * p.x), Length::fromMm(p.y)};
}

/// The array's own axes, as seen: along a row from its first pin, and from the first row to the next.
struct Lie {
  Vec along; ///< unit
  Vec across;
  double pitch = 0.0; ///< between columns
  double step = 0.0;  ///< between rows; of four sides: from one side to the one opposite
};

double oddness(double pitch, const PinArray& array) {
  if (array.pitch) return std::abs(std::log(pitch / array.pitch->mm()));
  double least = 1e300;
  for (const double usual : usualPitches)
    least = std::min(least, std::abs(std::log(pitch / usual)));
  return least;
}

double gaps(std::size_t count) {
  return static_cast<double>(std::max<std::size_t>(count, 2) - 1);
}

/// Of rows that lie with the picture: `alongX` says which way.
Lie straightLie(Vec d, bool alongX, std::size_t columns, std::size_t rows) {
  Lie lie;
  lie.along = alongX ? Vec{d.x < 0 ? -1.0 : 1.0, 0.0} : Vec{0.0, d.y < 0 ? -1.0 : 1.0};
  lie.across = alongX ? Vec{0.0, d.y < 0 ? -1.0 : 1.0} : Vec{d.x < 0 ? -1.0 : 1.0, 0.0};
  lie.pitch = std::abs(alongX ? d.x : d.y) / gaps(columns);
  lie.step = std::abs(alongX ? d.y : d.x) / gaps(rows);
  return lie;
}

Lie turnedLie(Vec d, Vec toRowEnd, std::size_t columns, std::size_t rows) {
  Lie lie;
  const double length = netmend::length(toRowEnd);
  lie.along = toRowEnd * (1.0 / length);
  const double side = dot(d, leftOf(lie.along));
  lie.across = leftOf(lie.along) * (side < 0 ? -1.0 : 1.0);
  lie.pitch = length / gaps(columns);
  lie.step = std::abs(side) / gaps(rows);
  return lie;
}

/// Of a single row, or of a single pin in each row or on each side: the line between the two clicks is one of
/// its axes, whatever its angle.
Lie lineLie(const PinArray& array, Vec d, bool otherWay) {
  const double length = netmend::length(d);
  const Vec way = d * (1.0 / length);
  const double hand = otherWay ? -1.0 : 1.0;
  if (array.form != PinForm::fourSides && array.rows == 1)
    return {way, leftOf(way) * hand, length / gaps(array.pins), 0.0};
  // Nothing says how wide a lone pin is; on four sides there has to be room for the neighbours.
  const double step = array.form == PinForm::fourSides ? length : length / gaps(array.rows);
  const double usual = array.form == PinForm::fourSides ? length / 3.0 : step;
  return {leftOf(way) * -hand, way, array.pitch ? array.pitch->mm() : usual, step};
}

/// Counted round the body, counter-clockwise as seen, the second row lies to the left of the first one's way;
/// a grid's, lettered downwards, to the right.
bool hasHand(const PinArray& array) {
  return array.form != PinForm::rows || (array.order == PinOrder::round && array.rows == 2);
}

Lie lieOf(const PinArray& array, const PinClicks& clicks) {
  const Vec d = seen(clicks.opposite, clicks.side) - seen(clicks.first, clicks.side);
  const std::size_t columns = columnsOf(array);
  const std::size_t rows = array.form == PinForm::fourSides ? 2 : array.rows;
  if (rows == 1 || columns == 1) return lineLie(array, d, clicks.otherWay);
  if (clicks.rowEnd)
    return turnedLie(d, seen(*clicks.rowEnd, clicks.side) - seen(clicks.first, clicks.side), columns, rows);
  const Lie x = straightLie(d, true, columns, rows);
  const Lie y = straightLie(d, false, columns, rows);
  bool alongX = true;
  if (hasHand(array)) {
    const double wanted = array.form == PinForm::grid ? -1.0 : 1.0;
    alongX = dot(leftOf(x.along), x.across) * wanted > 0.0;
  } else if (d.x == 0.0 || d.y == 0.0) {
    alongX = d.y == 0.0;
  } else {
    alongX = oddness(x.pitch, array) <= oddness(y.pitch, array);
  }
  return alongX != clicks.otherWay ? x : y;
}

double guessedWidth(double pitch) {
  return std::round(pitch * 0.6 * 100.0) / 100.0;
}

Size padSizeOf(const PinArray& array, double pitch) {
  if (array.pad) return *array.pad;
  const double width = guessedWidth(pitch);
  if (array.form == PinForm::grid) return {Length::fromMm(width), Length::fromMm(width)};
  if (array.drill) {
    const Length ring = std::max(array.drill->width + Length(400'000), Length::fromMm(width));
    return {ring, ring};
  }
  return {Length::fromMm(width), Length::fromMm(std::clamp(1.6 * pitch, 0.6, 2.0))};
}

/// Puts the array's own places on the board.
class Placer {
public:
  Placer(const PinArray& array, const PinClicks& clicks, const Lie& lie)
      : array_(array), clicks_(clicks), lie_(lie), origin_(seen(clicks.first, clicks.side)),
        columns_(columnsOf(array)), padSize_(padSizeOf(array, lie.pitch)) {}

  PlacedArray place() {
    for (const Slot& slot : slotsOf(array_)) {
      const bool turned = array_.form == PinForm::fourSides && slot.row % 2 == 1;
      add(slot.name, atSlot(slot), padSize_, turned);
    }
    const double last = lie_.pitch * static_cast<double>(columns_ - 1);
    const double rows = lie_.step * static_cast<double>(depth() - 1);
    out_.middle = onBoard(0.5 * last, 0.5 * rows);
    out_.pitch = Length::fromMm(lie_.pitch);
    if (rows > 0.0) out_.across = Length::fromMm(rows);
    addBody(last, rows);
    return std::move(out_);
  }

private:
  [[nodiscard]] std::size_t depth() const { return array_.form == PinForm::fourSides ? 2 : array_.rows; }
  [[nodiscard]] Point onBoard(double along, double across) const {
    return unseen(origin_ + lie_.along * along + lie_.across * across, clicks_.side);
  }

  [[nodiscard]] Point atSlot(const Slot& slot) const {
    const double c = lie_.pitch * static_cast<double>(slot.column);
    if (array_.form != PinForm::fourSides) return onBoard(c, lie_.step * static_cast<double>(slot.row));
    // Counter-clockwise from the first side; each side's middle is half the body away from the array's.
    const double half = 0.5 * lie_.pitch * static_cast<double>(columns_ - 1);
    const double reach = 0.5 * lie_.step;
    const double along = c - half;
    switch (slot.row) {
    case 0:
      return onBoard(half + along, 0.0);
    case 1:
      return onBoard(half + reach, reach + along);
    case 2:
      return onBoard(half - along, 2.0 * reach);
    default:
      return onBoard(half - reach, reach - along);
    }
  }

  void add(std::string name, Point at, Size size, bool quarter) {
    // `size` is along the row and across it; the row's angle as seen from the top.
    const double mirror = clicks_.side == Side::bottom ? -1.0 : 1.0;
    double turn = std::atan2(lie_.along.y, mirror * lie_.along.x) * 180.0 / std::numbers::pi;
    if (quarter) turn += 90.0;
    turn = std::fmod(turn + 360.0, 180.0); // the same copper
    if (std::abs(turn - std::round(turn)) < 1e-9) turn = std::round(turn);
    out_.pads.push_back({std::move(name), at, size, Degrees(turn == 180.0 ? 0.0 : turn)});
  }

  void addBody(double last, double rows) {
    const double padAcross = padSize_.height.mm();
    const double over = lie_.pitch; // beyond the last pins
    double from = 0.5 * padAcross;
    double to = rows - 0.5 * padAcross;
    double before = -over;
    double after = last + over;
    if (array_.form == PinForm::fourSides) {
      before = 0.5 * (last - rows) + 0.5 * padAcross;
      after = 0.5 * (last + rows) - 0.5 * padAcross;
    } else if (array_.form == PinForm::grid || array_.drill) {
      from = -over;
      to = rows + over;
    } else if (array_.rows == 1) {
      to = from + std::max(2.0, 2.0 * padAcross); // the connector lies behind its pins
    }
    if (to - from < 0.2) { // rows too near each other for a body between them
      from = -0.5 * padAcross;
      to = rows + 0.5 * padAcross;
    }
    for (const auto& [a, b] : {std::pair{before, from}, {after, from}, {after, to}, {before, to}})
      out_.body.push_back(onBoard(a, b));
    if (!array_.tabs) return;
    const double middle = 0.5 * (from + to);
    const Size tab{Length::fromMm(std::max(0.8, lie_.pitch)),
                   Length::fromMm(std::max(1.2, 0.5 * (to - from)))};
    add("MP1", onBoard(before - 0.5 * tab.width.mm(), middle), tab, false);
    add("MP2", onBoard(after + 0.5 * tab.width.mm(), middle), tab, false);
  }

  const PinArray& array_;
  const PinClicks& clicks_;
  const Lie& lie_;
  Vec origin_;
  std::size_t columns_;
  Size padSize_;
  PlacedArray out_;
};

} // namespace

Result<void> check(const PinArray& array) {
  const auto wrongCount = [](std::size_t pins) {
    return failure({pattern("core", "a part has from 1 to 10000 pins"), "", "", std::to_string(pins)});
  };
  if (array.pins == 0 || array.pins > mostPins) return wrongCount(array.pins);
  const bool fourSides = array.form == PinForm::fourSides;
  if (fourSides && array.pins % 4 != 0)
    return failure({pattern("core", "the pins do not fill four sides"), "", "", std::to_string(array.pins)});
  if (!fourSides && (array.rows == 0 || array.pins % array.rows != 0))
    return failure({pattern("core", "the pins do not fill the rows"), "", "",
                    said(pattern("core", "{} pins in {} rows"), array.pins, array.rows)});
  if (array.order == PinOrder::round && array.form == PinForm::rows && array.rows > 2)
    return failure(
        {pattern("core", "only two rows are counted round the body"), "", "", std::to_string(array.rows)});
  if (slotsOf(array).empty()) return wrongCount(0);
  return {};
}

std::vector<std::string> pinNames(const PinArray& array) {
  std::vector<std::string> out;
  for (Slot& slot : slotsOf(array))
    out.push_back(std::move(slot.name));
  return out;
}

std::string firstPin(const PinArray& array) {
  return nameAt(array, 0, 0);
}

std::string oppositePin(const PinArray& array) {
  if (array.form == PinForm::fourSides) return std::to_string(array.pins / 2 + 1);
  return nameAt(array, columnsOf(array) - 1, array.rows - 1);
}

Result<PlacedArray> placeArray(const PinArray& array, const PinClicks& clicks) {
  if (auto sound = check(array); !sound) return failure(sound.error());
  const auto apart = [](Point a, Point b) { return distance(a, b) > Length(10'000); };
  if (!apart(clicks.first, clicks.opposite) || (clicks.rowEnd && !apart(clicks.first, *clicks.rowEnd)))
    return failure({pattern("core", "both clicks are at the same place")});
  const Lie lie = lieOf(array, clicks);
  return Placer(array, clicks, lie).place();
}

} // namespace netmend
