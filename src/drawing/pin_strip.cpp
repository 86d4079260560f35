#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>

#include "netmend/words/reading.h"
#include "netmend/words/verdict.h"
#include "strip_scale.h"

namespace netmend {

namespace {

/// Where things are within a row of the strip; everything follows from the letters' size.
struct Layout {
  double letter;
  double axis;  ///< width of the scale's figures
  double slot;  ///< width of a pin
  double title; ///< heights from here on
  double lane;  ///< of OL
  double gap;   ///< between the lane and the values
  double plot;
  double names;
  std::size_t pinsPerRow;

  [[nodiscard]] double row() const { return title + lane + gap + plot + names; }
};

QString nameOf(const StripPin& pin) {
  QString text = QString::fromStdString(pin.label);
  if (!pin.net.empty()) text += QStringLiteral("  ") + QString::fromStdString(pin.net);
  for (const auto* reading : {&pin.after, &pin.reading})
    if (*reading && (*reading)->odd()) {
      text += QStringLiteral(": ") + shown(netmend::nameOf(*(*reading)->verdict));
      break;
    }
  return text;
}

bool flagged(const StripPin& pin) {
  return (pin.reading && pin.reading->odd()) || (pin.after && pin.after->odd());
}

constexpr double mostStretch = 4.0; // of the plot's usual height
constexpr double widestSlot = 8.0;  // letters; a few pins are not drawn apart across the room

QFont nameFont(const PictureType& type, bool bold) {
  QFont font = type.font;
  font.setPixelSize(std::max(1, font.pixelSize() * 17 / 20));
  font.setBold(bold);
  return font;
}

Layout layoutOf(const PinStrip& strip, double width, const PictureType& type) {
  Layout out{};
  const double t = type.font.pixelSize();
  out.letter = t;
  out.axis = 5.2 * t;
  out.title = 1.9 * t;
  out.lane = 2.0 * t;
  out.gap = 0.8 * t;
  out.plot = 9.0 * t;
  const double room = std::max(t, width - out.axis);
  const auto most = static_cast<std::size_t>(std::max(1.0, std::floor(room / (1.45 * t))));
  const std::size_t count = std::max<std::size_t>(1, strip.pins.size());
  const std::size_t rows = (count + most - 1) / most;
  out.pinsPerRow = (count + rows - 1) / rows;
  out.slot = std::min(room / static_cast<double>(out.pinsPerRow), widestSlot * t);
  double longest = 3 * t;
  for (const StripPin& pin : strip.pins)
    longest = std::max(longest, QFontMetricsF(nameFont(type, flagged(pin))).horizontalAdvance(nameOf(pin)));
  out.names = std::min(longest, 15.0 * t) + 1.2 * t;
  return out;
}

struct Row {
  const PinStrip& strip;
  std::size_t first;
  std::size_t count;
  QRectF frame;
  Layout layout;
  StripScale scale;
  const PictureColors& colors;

  [[nodiscard]] double middleOf(std::size_t i) const {
    return frame.left() + layout.axis + layout.slot * (static_cast<double>(i) + 0.5);
  }
  [[nodiscard]] double right() const {
    return frame.left() + layout.axis + layout.slot * static_cast<double>(count);
  }
  [[nodiscard]] double laneTop() const { return frame.top() + layout.title; }
  [[nodiscard]] double plotTop() const { return laneTop() + layout.lane + layout.gap; }
  [[nodiscard]] double plotBottom() const { return plotTop() + layout.plot; }
  [[nodiscard]] double yOf(double value) const { return plotBottom() - scale.share(value) * layout.plot; }
};

void paintAxis(QPainter& painter, const Row& row, const PictureType& type) {
  const double t = row.layout.letter;
  const double left = row.frame.left() + row.layout.axis;
  painter.fillRect(QRectF(left, row.laneTop(), row.right() - left, row.layout.lane), row.colors.lane);
  painter.setFont(type.font);
  painter.setPen(row.colors.ink);
  const auto figure = [&](double y, const QString& text) {
    painter.drawText(QRectF(row.frame.left(), y - t, row.layout.axis - 0.5 * t, 2 * t),
                     Qt::AlignRight | Qt::AlignVCenter, text);
  };
  figure(row.laneTop() + row.layout.lane / 2, QStringLiteral("OL"));
  for (const StripTick& tick : row.scale.ticks) {
    const double y = row.yOf(tick.value);
    painter.setPen(QPen(row.colors.grid, 0.05 * t));
    painter.drawLine(QPointF(left, y), QPointF(row.right(), y));
    painter.setPen(row.colors.ink);
    figure(y, tick.text);
  }
  painter.setPen(QPen(row.colors.body, 0.08 * t));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(
      QRectF(left, row.laneTop(), row.right() - left, row.layout.lane + row.layout.gap + row.layout.plot));
}

void paintExpected(QPainter& painter, const Row& row, const StripPin& pin, double x) {
  const double t = row.layout.letter;
  const double width = row.layout.slot * 0.72;
  painter.setPen(QPen(row.colors.body, 0.06 * t));
  painter.setBrush(row.colors.range);
  if (pin.expectedOl)
    painter.drawRect(QRectF(x - width / 2, row.laneTop() + 0.3 * t, width, row.layout.lane - 0.6 * t));
  for (const StripInterval& interval : pin.expected) {
    const double top = row.yOf(std::max(interval.low, interval.high));
    const double bottom = row.yOf(std::min(interval.low, interval.high));
    // An interval of no height would vanish.
    const double height = std::max(bottom - top, 0.15 * t);
    painter.drawRect(QRectF(x - width / 2, (top + bottom - height) / 2, width, height));
  }
}

void paintReadings(QPainter& painter, const Row& row, const StripPin& pin, double x) {
  const double t = row.layout.letter;
  const bool both = pin.reading && pin.after;
  const double aside = both ? std::min(row.layout.slot * 0.24, 0.6 * t) : 0.0;
  const double size = std::min(0.95 * t, row.layout.slot * (both ? 0.45 : 0.7));
  const auto mark = [&](const StripReading& reading, double at) {
    const double y = reading.value ? row.yOf(*reading.value) : row.laneTop() + row.layout.lane / 2;
    paintMark(painter, markForVerdict(reading.verdict.value_or(VerdictKind::nothingToCompare)), {at, y}, size,
              row.colors);
  };
  if (pin.reading) mark(*pin.reading, x - aside);
  if (pin.after) mark(*pin.after, x + aside);
}

void paintName(QPainter& painter, const Row& row, const StripPin& pin, double x, const PictureType& type) {
  const double t = row.layout.letter;
  const QFont font = nameFont(type, flagged(pin));
  const double room = row.layout.names - 1.0 * t;
  const QString text = QFontMetricsF(font).elidedText(nameOf(pin), Qt::ElideRight, room);
  painter.save();
  painter.setFont(font);
  painter.setPen(row.colors.ink);
  painter.translate(x, row.plotBottom() + 0.4 * t);
  painter.rotate(-90);
  painter.drawText(QRectF(-room, -t, room, 2 * t), Qt::AlignRight | Qt::AlignVCenter, text);
  painter.restore();
}

void paintRow(QPainter& painter, const Row& row, const PictureType& type, const QString& title) {
  QFont bold = type.font;
  bold.setBold(true);
  painter.setFont(bold);
  painter.setPen(row.colors.ink);
  const double t = row.layout.letter;
  const QFontMetricsF metrics(bold);
  painter.drawText(QRectF(row.frame.left(), row.frame.top(), row.frame.width(), 1.5 * t),
                   Qt::AlignLeft | Qt::AlignTop,
                   metrics.elidedText(title, Qt::ElideRight, row.frame.width()));
  paintAxis(painter, row, type);
  for (std::size_t i = 0; i < row.count; ++i) {
    const StripPin& pin = row.strip.pins[row.first + i];
    paintExpected(painter, row, pin, row.middleOf(i));
    paintReadings(painter, row, pin, row.middleOf(i));
    paintName(painter, row, pin, row.middleOf(i), type);
  }
}

} // namespace

double pinStripHeight(const PinStrip& strip, double width, const PictureType& type) {
  const Layout layout = layoutOf(strip, width, type);
  const std::size_t rows = (strip.pins.size() + layout.pinsPerRow - 1) / layout.pinsPerRow;
  return static_cast<double>(rows) * layout.row();
}

std::vector<PinStrip> pinStripRows(const PinStrip& strip, double width, const PictureType& type) {
  const std::size_t perRow = layoutOf(strip, width, type).pinsPerRow;
  std::vector<PinStrip> rows;
  for (std::size_t first = 0; first < strip.pins.size(); first += perRow) {
    PinStrip row = strip;
    const std::size_t last = std::min(strip.pins.size(), first + perRow);
    row.pins.assign(strip.pins.begin() + static_cast<std::ptrdiff_t>(first),
                    strip.pins.begin() + static_cast<std::ptrdiff_t>(last));
    row.continued = first > 0;
    rows.push_back(std::move(row));
  }
  return rows;
}

namespace {

/// "J4, diode, other lead on GND".
QString titleOf(const PinStrip& strip, bool continued) {
  const Said points = strip.points.empty() ? Said(pattern("core", "Points")) : asItIs(strip.points);
  const Said title = strip.other.empty()
                         ? said(pattern("core", "{}, {}"), points, netmend::nameOf(strip.mode))
                         : said(pattern("core", "{}, {}, other lead on {}"), points,
                                netmend::nameOf(strip.mode), strip.other);
  return shown(continued ? said(pattern("core", "{} (continued)"), title) : title);
}

} // namespace

void paintPinStrip(QPainter& painter, const PinStrip& strip, const QRectF& frame, const PictureType& type,
                   const PictureColors& colors) {
  Layout layout = layoutOf(strip, frame.width(), type);
  // Room that is left makes the values easier to tell apart.
  const std::size_t fullRows = (strip.pins.size() + layout.pinsPerRow - 1) / layout.pinsPerRow;
  const auto rows = static_cast<double>(fullRows);
  const double spare = frame.height() / std::max(1.0, rows) - layout.row();
  layout.plot = std::clamp(layout.plot + spare, layout.plot, mostStretch * layout.plot);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const StripScale scale = stripScale(strip);
  double top = frame.top();
  for (std::size_t first = 0; first < strip.pins.size(); first += layout.pinsPerRow) {
    const std::size_t count = std::min(layout.pinsPerRow, strip.pins.size() - first);
    const QString title = titleOf(strip, first > 0 || strip.continued);
    paintRow(
        painter,
        {strip, first, count, QRectF(frame.left(), top, frame.width(), layout.row()), layout, scale, colors},
        type, title);
    top += layout.row();
  }
  painter.restore();
}

MarkShape markForVerdict(VerdictKind kind) {
  switch (kind) {
  case VerdictKind::inRange:
    return MarkShape::disc;
  case VerdictKind::open:
    return MarkShape::gap;
  case VerdictKind::shorted:
    return MarkShape::bar;
  case VerdictKind::low:
    return MarkShape::downward;
  case VerdictKind::high:
    return MarkShape::upward;
  case VerdictKind::readsWhereOverLimitExpected:
    return MarkShape::diamond;
  case VerdictKind::nothingToCompare:
    break;
  }
  return MarkShape::hollow;
}

} // namespace netmend
