#include "pad_layout.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace netmend {

namespace {

constexpr double sameLine = 0.4;    ///< of the pitch: that far apart, pads still stand in one row
constexpr double leastFilled = 0.3; ///< of rows times columns; emptier, it is no grid
constexpr std::size_t fewPads = 12; ///< are a grid however they lie
constexpr double oneRowApart = 0.9; ///< of the pitch: fingers of two lengths still make one row
constexpr double loose = 1.35;      ///< columns by the longest row; looser, each row is counted by itself

double distance(QPointF a, QPointF b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y());
}

/// How far a pad is from the next one: the middle one of all.
double pitchOf(const std::vector<PadPlace>& places) {
  std::vector<double> nearest;
  for (const PadPlace& pad : places) {
    double least = std::numeric_limits<double>::max();
    for (const PadPlace& other : places)
      if (const double d = distance(pad.at, other.at); other.below == pad.below && d > 1e-6)
        least = std::min(least, d);
    if (least < std::numeric_limits<double>::max()) nearest.push_back(least);
  }
  if (nearest.empty()) return 1.0;
  const auto middle = nearest.begin() + static_cast<std::ptrdiff_t>(nearest.size() / 2);
  std::nth_element(nearest.begin(), middle, nearest.end());
  return *middle;
}

/// The number of the line that each value stands on, counted from the lowest.
std::vector<int> linesOf(const std::vector<double>& values, double apart) {
  std::vector<std::size_t> order(values.size());
  for (std::size_t i = 0; i < order.size(); ++i)
    order[i] = i;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<int> out(values.size());
  int line = -1;
  double first = 0.0;
  for (const std::size_t i : order) {
    if (line < 0 || values[i] - first > apart) {
      ++line;
      first = values[i];
    }
    out[i] = line;
  }
  return out;
}

int countOf(const std::vector<int>& lines) {
  return lines.empty() ? 0 : *std::max_element(lines.begin(), lines.end()) + 1;
}

std::vector<double> along(const std::vector<PadPlace>& places, bool x) {
  std::vector<double> out;
  out.reserve(places.size());
  for (const PadPlace& pad : places)
    out.push_back(x ? pad.at.x() : pad.at.y());
  return out;
}

/// Indices of each row's pads, from left to right.
std::vector<std::vector<std::size_t>> rowsOf(const PadGrid& grid) {
  std::vector<std::vector<std::size_t>> out(static_cast<std::size_t>(grid.rows));
  for (std::size_t i = 0; i < grid.cells.size(); ++i)
    out[static_cast<std::size_t>(grid.cells[i].row)].push_back(i);
  for (auto& row : out)
    std::stable_sort(row.begin(), row.end(), [&](std::size_t a, std::size_t b) {
      return grid.cells[a].column < grid.cells[b].column;
    });
  return out;
}

/// Columns between neighbours of a row, the least of all; 0: two pads in one place.
int leastStep(const PadGrid& grid) {
  int least = 0;
  for (const auto& row : rowsOf(grid))
    for (std::size_t i = 1; i < row.size(); ++i) {
      const int step = grid.cells[row[i]].column - grid.cells[row[i - 1]].column;
      if (step == 0) return 0;
      least = least == 0 ? step : std::min(least, step);
    }
  return std::max(least, 1);
}

void countEachRow(PadGrid& grid) {
  grid.span = 1;
  grid.columns = 0;
  for (const auto& row : rowsOf(grid)) {
    for (std::size_t i = 0; i < row.size(); ++i)
      grid.cells[row[i]].column = static_cast<int>(i);
    grid.columns = std::max(grid.columns, static_cast<int>(row.size()));
  }
}

PadGrid oneRow(std::size_t pads) {
  PadGrid out;
  out.inOrder = true;
  out.rows = 1;
  out.columns = static_cast<int>(pads);
  for (int i = 0; i < out.columns; ++i)
    out.cells.push_back({0, i});
  return out;
}

/// Upright, it is laid down so that its first pad comes left.
void layDown(std::vector<PadPlace>& places, double pitch) {
  const int lines = countOf(linesOf(along(places, false), sameLine * pitch));
  const int across = countOf(linesOf(along(places, true), sameLine * pitch));
  if (5 * lines <= 6 * across) return;
  double middle = 0.0;
  for (const PadPlace& pad : places)
    middle += pad.at.y() / static_cast<double>(places.size());
  const bool firstAbove = places.front().at.y() <= middle;
  for (PadPlace& pad : places)
    pad.at = firstAbove ? QPointF(pad.at.y(), -pad.at.x()) : QPointF(-pad.at.y(), pad.at.x());
}

/// Rows closer to each other than the pads within them, and side by side: contacts of two lengths, not two
/// rows.
void joinRows(const std::vector<PadPlace>& places, double pitch, PadGrid& grid) {
  for (int row = 0; row + 1 < grid.rows;) {
    std::vector<double> x, y, next;
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (grid.cells[i].row != row && grid.cells[i].row != row + 1) continue;
      x.push_back(places[i].at.x());
      (grid.cells[i].row == row ? y : next).push_back(places[i].at.y());
    }
    std::sort(x.begin(), x.end());
    double closest = std::numeric_limits<double>::max();
    for (std::size_t i = 1; i < x.size(); ++i)
      closest = std::min(closest, x[i] - x[i - 1]);
    const double apart = *std::max_element(next.begin(), next.end()) - *std::min_element(y.begin(), y.end());
    if (closest < oneRowApart * pitch || apart > oneRowApart * pitch) {
      ++row;
      continue;
    }
    for (PadGrid::Cell& cell : grid.cells)
      if (cell.row > row) --cell.row;
    --grid.rows;
  }
}

} // namespace

PadGrid padGrid(const std::vector<PadPlace>& asGiven) {
  if (asGiven.empty()) return {};
  std::vector<PadPlace> places = asGiven;
  const double pitch = pitchOf(places);
  layDown(places, pitch);
  PadGrid out;
  // What is on the other side of the board is a row further down, however close it lies.
  double lowest = -std::numeric_limits<double>::max();
  double highest = std::numeric_limits<double>::max();
  for (const PadPlace& pad : places)
    if (pad.below)
      highest = std::min(highest, pad.at.y());
    else
      lowest = std::max(lowest, pad.at.y());
  for (PadPlace& pad : places)
    if (pad.below && lowest > -std::numeric_limits<double>::max())
      pad.at.ry() += lowest - highest + 2 * pitch;
  const std::vector<int> rows = linesOf(along(places, false), sameLine * pitch);
  const std::vector<int> columns = linesOf(along(places, true), sameLine * pitch);
  for (std::size_t i = 0; i < places.size(); ++i)
    out.cells.push_back({rows[i], columns[i]});
  out.rows = countOf(rows);
  out.columns = countOf(columns);
  joinRows(places, pitch, out);
  if (places.size() >= fewPads && out.rows > 2 &&
      static_cast<double>(places.size()) < leastFilled * out.rows * out.columns)
    return oneRow(places.size());
  const int step = leastStep(out);
  std::size_t longest = 0;
  for (const auto& row : rowsOf(out))
    longest = std::max(longest, row.size());
  out.span = std::max(step, 1);
  out.columns += out.span - 1;
  const bool isLoose = out.columns > loose * static_cast<double>(longest) * out.span;
  if (step == 0 || (out.rows <= 2 && isLoose)) countEachRow(out);
  return out;
}

PadGrid turned(const PadGrid& grid, int quarters, bool mirrored) {
  PadGrid out = grid;
  // Turned by a quarter, columns become rows: only where every pad takes one of them.
  const bool quarter = quarters % 2 != 0 && grid.span == 1;
  const bool half = quarters % 4 >= 2;
  if (quarter) std::swap(out.rows, out.columns);
  for (PadGrid::Cell& cell : out.cells) {
    if (quarter) cell = {cell.column, grid.rows - 1 - cell.row};
    if (half) cell = {out.rows - 1 - cell.row, out.columns - out.span - cell.column};
    if (mirrored) cell.column = out.columns - out.span - cell.column;
  }
  return out;
}

} // namespace netmend
