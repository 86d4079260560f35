#include "pad_layout.h"

#include <algorithm>

namespace netmend {

namespace {

constexpr int mostColumns = 24; ///< shown in full
constexpr int spanColumns = 20; ///< of a connector that has more

/// First of `shown` lines of `all` so that the one at `at` is among them, moved no more than it must.
int firstShown(int first, int shown, int all, std::optional<int> at, int margin) {
  if (at && (*at < first + margin || *at >= first + shown - margin)) first = *at - shown / 4;
  return std::clamp(first, 0, std::max(0, all - shown));
}

constexpr double sideMargin = 24;   ///< units, left and right
constexpr double topMargin = 16;    ///< above and below
constexpr double axisWidth = 48;    ///< for the chart's words, and the rows' letters
constexpr double padGap = 8;        ///< between pads and body
constexpr double bodyHeight = 40;   ///< of it
constexpr double leastGridRow = 36; ///< of a grid
constexpr double gridRow = 44;      ///< where not all are shown
constexpr double lowPicture = 200;  ///< lower than this the pads have all of it

/// What is shown in full, and where.
struct Portion {
  int columns;
  int rows;
  QRectF room;
  double body;   ///< height of the connector's own, with the gap below; none: left out
  QSizeF cell{}; ///< of the small ones; none: there are none
  QPointF at{};
};

Portion wholeRoom(const PadGrid& grid, const PadRoom& room, bool lettered) {
  const double u = room.unit;
  const bool low = room.size.height() < lowPicture * u;
  const double left = (sideMargin + (lettered && !low ? axisWidth : 0)) * u;
  const double above = (low ? padGap : topMargin) * u;
  return {grid.columns, grid.rows,
          QRectF(left, above, std::max(1.0, room.size.width() - left - sideMargin * u),
                 std::max(1.0, room.size.height() - 2 * above)),
          low ? 0.0 : (bodyHeight + padGap) * u};
}

/// The small picture of rows stands above the large one, that of a grid left of it.
Portion portionOf(const PadGrid& grid, const PadRoom& room) {
  const double u = room.unit;
  const bool grids = grid.rows > 2;
  const bool low = room.size.height() < lowPicture * u;
  const double narrowest = grids || low ? std::max(room.narrowest, room.narrowestLow) : room.narrowest;
  const auto fitting = [&](double width) {
    return std::clamp(static_cast<int>(width / (narrowest + 6 * u)), 1, mostColumns) * grid.span;
  };
  const auto rowsFit = [&](const Portion& portion) {
    return !grids || (portion.room.height() - portion.body) / grid.rows >= leastGridRow * u;
  };
  Portion out = wholeRoom(grid, room, room.chart && !grids);
  if (grid.columns <= fitting(out.room.width()) && rowsFit(out)) return out;
  if (out.body > 0 && grid.rows <= 4) {
    out = wholeRoom(grid, room, true);
    const double height = std::min(28.0 * u, out.room.height() * 0.3 / grid.rows);
    out.cell = {out.room.width() / grid.columns, height};
    out.at = {out.room.left(), out.room.top() + 18 * u};
    out.room.setTop(out.at.y() + height * grid.rows + 14 * u);
  } else if (out.body > 0) {
    const double edge =
        std::min({14 * u, out.room.height() / grid.rows, 0.32 * out.room.width() / grid.columns});
    out.cell = {edge, edge};
    out.at = out.room.topLeft();
    out.room.setLeft(out.room.left() + edge * grid.columns + sideMargin * u);
  }
  if (grid.columns > fitting(out.room.width()))
    out.columns = std::min(fitting(out.room.width()), spanColumns * grid.span);
  if (!rowsFit(out))
    out.rows = std::clamp(static_cast<int>((out.room.height() - out.body) / (gridRow * u)), 1, grid.rows);
  return out;
}

PadChart chartIn(const QRectF& area, int row) {
  const double h = area.height();
  return {row,
          area,
          area.top() + 0.24 * h,
          area.top() + 0.45 * h,
          area.top() + 0.74 * h,
          area.bottom() - 0.17 * h};
}

/// What stands on top of each other.
struct Heights {
  double pad = 0.0;
  double chart = 0.0; ///< none: left out
  double total = 0.0;
};

Heights heightsOf(const PadGrid& grid, const Portion& portion, double padWidth, const PadRoom& room) {
  const double u = room.unit;
  const double high = portion.room.height() - portion.body;
  Heights out;
  if (grid.rows > 2) {
    out.pad = std::min(high / portion.rows, 96 * u);
    out.total = portion.body + portion.rows * out.pad;
    return out;
  }
  const double each = high / grid.rows - padGap * u;
  if (room.chart && portion.body > 0 && each >= (60 + 56 + padGap) * u) {
    out.pad = std::clamp(0.44 * each, 60 * u, 96 * u);
    out.chart = std::min(each - out.pad - padGap * u, 150 * u);
  } else {
    out.pad = std::clamp(each, 1.0, std::min(132 * u, std::max(84 * u, 2.2 * padWidth)));
  }
  const double chart = out.chart > 0 ? out.chart + padGap * u : 0.0;
  out.total = portion.body + grid.rows * (out.pad + chart) + (grid.rows - 1) * padGap * u;
  return out;
}

/// From the top down: a grid stands beneath its body, rows on both sides of it, each with its chart outside.
std::vector<double> stack(const PadGrid& grid, const PadRoom& room, const Portion& portion,
                          const Heights& heights, const QRectF& across, PadLayout& out) {
  const double gap = padGap * room.unit;
  double y = portion.room.top() + std::max(0.0, (portion.room.height() - heights.total) / 2);
  std::vector<double> rowTop(static_cast<std::size_t>(grid.rows), -1.0);
  const auto body = [&] {
    if (portion.body <= 0) return;
    // As wide as the pads, and at least as its words want.
    const double wide = std::min(std::max(across.width(), 640 * room.unit), portion.room.width());
    out.body = QRectF(portion.room.center().x() - wide / 2, y, wide, portion.body - gap);
    y += portion.body;
  };
  if (grid.rows > 2) {
    body();
    for (int r = 0; r < portion.rows; ++r)
      rowTop[static_cast<std::size_t>(out.firstRow) + static_cast<std::size_t>(r)] = y + r * heights.pad;
    return rowTop;
  }
  for (int row = 0; row < grid.rows; ++row) {
    const auto chart = [&] {
      if (heights.chart <= 0) return;
      out.charts.push_back(chartIn(QRectF(across.left(), y, across.width(), heights.chart), row));
      y += heights.chart + gap;
    };
    if (row == 0) chart();
    rowTop[static_cast<std::size_t>(row)] = y;
    y += heights.pad + gap;
    if (row == 0)
      body();
    else
      chart();
  }
  return rowTop;
}

void laySmall(const PadGrid& grid, const Portion& portion, PadLayout& out) {
  if (portion.cell.isEmpty()) return;
  const double w = portion.cell.width(), h = portion.cell.height();
  const auto place = [&](int column, int row) { return portion.at + QPointF(w * column, h * row); };
  for (const PadGrid::Cell& cell : grid.cells) {
    const double wide = w * grid.span;
    out.small.emplace_back(place(cell.column, cell.row) + QPointF(0.1 * wide, 0.1 * h),
                           QSizeF(0.8 * wide, 0.8 * h));
  }
  out.frame = QRectF(place(out.firstColumn, out.firstRow), QSizeF(w * portion.columns, h * portion.rows));
}

} // namespace

PadLayout layPads(const PadGrid& grid, const PadRoom& room) {
  PadLayout out;
  out.pads.resize(grid.cells.size());
  if (grid.cells.empty()) return out;
  const double u = room.unit;
  const Portion portion = portionOf(grid, room);
  std::optional<int> dueColumn, dueRow;
  if (room.due) {
    dueColumn = grid.cells.at(*room.due).column;
    dueRow = grid.cells.at(*room.due).row;
  }
  out.firstColumn = firstShown(room.firstColumn, portion.columns, grid.columns, dueColumn,
                               portion.columns > 4 * grid.span ? grid.span : 0);
  out.firstRow = firstShown(room.firstRow, portion.rows, grid.rows, dueRow, portion.rows > 4 ? 1 : 0);
  // Few pads are not drawn apart across the room.
  const double pitch = std::min(portion.room.width() / portion.columns, 136 * u / grid.span);
  const double wide = pitch * portion.columns;
  const QRectF across(portion.room.center().x() - wide / 2, 0, wide, 0);
  const double between = std::min(8 * u, 0.12 * pitch * grid.span);
  const double padWidth = pitch * grid.span - between;
  const Heights heights = heightsOf(grid, portion, padWidth, room);
  const std::vector<double> rowTop = stack(grid, room, portion, heights, across, out);
  const double lower = grid.rows > 2 ? std::min(8 * u, 0.12 * heights.pad) : 0.0;
  for (std::size_t i = 0; i < grid.cells.size(); ++i) {
    const PadGrid::Cell& cell = grid.cells[i];
    const double at = rowTop[static_cast<std::size_t>(cell.row)];
    const int column = cell.column - out.firstColumn;
    if (at < 0 || column < 0 || column + grid.span > portion.columns) continue;
    out.pads[i] = QRectF(across.left() + column * pitch + between / 2, at, padWidth, heights.pad - lower);
  }
  laySmall(grid, portion, out);
  return out;
}

} // namespace netmend
