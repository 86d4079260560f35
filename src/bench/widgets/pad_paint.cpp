// How a connector's pads and their charts are painted.
#include "pad_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QPainter>

#include "face_style.h"
#include "letters.h"
#include "netmend/drawing/picture_colors.h"
#include "netmend/drawing/pin_strip.h"

namespace netmend {

namespace {

constexpr double nextToNothing = 0.05; ///< of the highest value that good boards read on the connector

struct Paint {
  QPainter& painter;
  const PadScene& scene;
  const FaceColors& face;
  PictureColors odd;  ///< of their marks
  PictureColors calm; ///< without the edge in ink: they ask for nothing
  QColor ground;
  double u;
  QFont number;   ///< of a pad that was not read
  QFont value;    ///< of one that was
  double highest; ///< that good boards read

  void text(const QRectF& rect, const QFont& font, const QColor& colour, const QString& words,
            int align = Qt::AlignCenter) const {
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(rect, align, QFontMetricsF(font).elidedText(words, Qt::ElideRight, rect.width() + 1));
  }
  void mark(const PadState& pad, QPointF at, double size) const {
    paintMark(painter, pad.shape, at, size, pad.odd ? odd : calm);
  }
  [[nodiscard]] QPen pen(const QColor& colour, double width) const { return {colour, width * u}; }
};

QFont bolder(QFont font) {
  font.setBold(true);
  return font;
}

/// The largest of the face's letters in which the widest of these fits.
QFont fitting(const std::vector<QString>& words, double width, double height, Letters most, bool bold) {
  QFont font = lettersFont(Letters::small, bold);
  for (const Letters letters : {Letters::reading, Letters::metre, Letters::large}) {
    if (letters > most) break;
    const QFont larger = lettersFont(letters, bold);
    const QFontMetricsF metrics(larger);
    const bool fits = std::all_of(words.begin(), words.end(), [&](const QString& each) {
      return metrics.horizontalAdvance(each) <= width;
    });
    if (!fits || metrics.height() > height) break;
    font = larger;
  }
  return font;
}

void paintNumberValue(const Paint& p, const PadState& pad, const QRectF& rect, const QColor& ink,
                      const QColor& quiet) {
  const double small = QFontMetricsF(lettersFont(Letters::small)).height();
  const double value = QFontMetricsF(p.value).height();
  const QFont name = lettersFont(Letters::small, pad.odd);
  const double mark = (pad.odd ? 22 : 18) * p.u;
  const auto strip = [&](double top, double height) {
    return QRectF(rect.left(), top, rect.width(), height);
  };
  if (rect.height() >= small + value + 20 * p.u) {
    const double between = rect.height() - small - value;
    p.text(strip(rect.top() + 1, small), name, quiet, pad.name);
    p.mark(pad, {rect.center().x(), rect.top() + small + between / 2}, std::min(mark, between - 2 * p.u));
    p.text(strip(rect.bottom() - value - 1, value), pad.odd ? bolder(p.value) : p.value, ink, pad.value);
    return;
  }
  // Lower: number and shape beside each other, the value beneath, or what there is room for.
  const bool two = rect.height() >= 1.9 * small;
  const double line = two ? rect.height() / 2 : rect.height();
  const double markWidth = std::min(14 * p.u, line);
  const QRectF first = strip(rect.top(), line);
  p.text(first.adjusted(3 * p.u, 0, -markWidth - 2 * p.u, 0), name, quiet, pad.name,
         Qt::AlignLeft | Qt::AlignVCenter);
  p.mark(pad, {rect.right() - markWidth / 2 - 3 * p.u, first.center().y()}, markWidth * 0.85);
  if (two) p.text(strip(rect.top() + line, line), lettersFont(Letters::small, pad.odd), ink, pad.value);
}

void paintDue(const Paint& p, const PadState& pad, const QRectF& at) {
  const QRectF rect = at.adjusted(-3 * p.u, -4 * p.u, 3 * p.u, 4 * p.u);
  p.painter.setPen(QPen(p.face.card, 3 * p.u));
  p.painter.setBrush(p.face.accent);
  p.painter.drawRoundedRect(rect, 3 * p.u, 3 * p.u);
  // What it read before is read again: it stays to be seen.
  const double beneath = pad.isRead() ? QFontMetricsF(p.value).height() : 0.0;
  const bool room = rect.height() > 2.4 * beneath;
  const QRectF inside = rect.adjusted(2 * p.u, 2 * p.u, -2 * p.u, -2 * p.u - (room ? beneath : 0.0));
  p.text(inside, fitting({pad.name}, inside.width(), inside.height(), Letters::large, true), p.face.onAccent,
         pad.name);
  if (pad.isRead() && room)
    p.text(QRectF(rect.left(), rect.bottom() - beneath - 2 * p.u, rect.width(), beneath), p.value,
           p.face.onAccent, pad.value);
}

void paintPad(const Paint& p, const PadState& pad, const QRectF& rect) {
  const bool read = pad.isRead();
  p.painter.setBrush(pad.odd && read ? p.face.oddTint : read ? p.face.card : p.ground);
  QPen pen = pad.odd && read ? p.pen(p.face.odd, 1.25 * p.face.edge) : p.pen(p.face.outline, p.face.hair);
  if (pad.noNet && !read) pen.setDashPattern({3, 3});
  p.painter.setPen(pen);
  p.painter.drawRoundedRect(rect, 3 * p.u, 3 * p.u);
  if (read)
    return paintNumberValue(p, pad, rect.adjusted(1, 1, -1, -1), p.face.ink,
                            pad.odd ? p.face.ink : p.face.quiet);
  if (!pad.noNet && !pad.skipped) return p.text(rect, p.number, p.face.ink, pad.name);
  // Neither of them will be asked for: it steps back, and says why where there is room.
  const QFont small = lettersFont(Letters::small);
  const QString why = pad.noNet ? PadPicture::tr("no net") : PadPicture::tr("skipped");
  const QFontMetricsF metrics(small);
  const double line = metrics.height();
  if (rect.height() < 2.2 * line || metrics.horizontalAdvance(why) > rect.width())
    return p.text(rect, small, p.face.quiet, pad.name);
  const double y = rect.center().y() - line;
  p.text(QRectF(rect.left(), y, rect.width(), line), small, p.face.quiet, pad.name);
  p.text(QRectF(rect.left(), y + line, rect.width(), line), small, p.face.quiet, why);
}

void paintBody(const Paint& p) {
  const QRectF body = p.scene.layout.body;
  if (body.isNull()) return;
  p.painter.setPen(p.pen(p.face.outline, 1.5));
  p.painter.setBrush(p.face.card);
  p.painter.drawRect(body);
  QRectF inside = body.adjusted(14 * p.u, 0, -14 * p.u, 0);
  const QFont bold = lettersFont(Letters::reading, true);
  const QFont plain = lettersFont(Letters::reading);
  const double count = QFontMetricsF(plain).horizontalAdvance(p.scene.words.count) + 2;
  const double name = QFontMetricsF(bold).horizontalAdvance(p.scene.words.name) + 2;
  const double seen = QFontMetricsF(plain).horizontalAdvance(p.scene.words.seen) + 2;
  p.text(inside, bold, p.face.ink, p.scene.words.name, Qt::AlignLeft | Qt::AlignVCenter);
  const double left = inside.width() - name - 16 * p.u;
  if (left < count) return;
  p.text(inside, plain, p.face.quiet, p.scene.words.count, Qt::AlignRight | Qt::AlignVCenter);
  if (left < count + seen + 16 * p.u) return;
  inside.setLeft(inside.left() + name + 16 * p.u);
  p.text(inside, plain, p.face.quiet, p.scene.words.seen, Qt::AlignLeft | Qt::AlignVCenter);
}

/// Points from the body at the first pad: which end is which is never guessed.
void paintFirst(const Paint& p) {
  if (p.scene.layout.body.isNull() || p.scene.layout.pads.empty() || p.scene.layout.pads.front().isNull() ||
      p.scene.grid.rows > 2)
    return;
  const QRectF pad = p.scene.layout.pads.front();
  const QRectF body = p.scene.layout.body;
  const bool above = pad.center().y() < body.center().y();
  const double s = 7 * p.u;
  const double x = pad.center().x();
  const double base = above ? body.top() : body.bottom();
  const double tip = above ? base - s : base + s;
  p.painter.setPen(Qt::NoPen);
  p.painter.setBrush(p.face.outline);
  p.painter.drawPolygon(QPolygonF({QPointF(x - s, base), QPointF(x + s, base), QPointF(x, tip)}));
}

void paintChartGround(const Paint& p, const PadChart& chart) {
  const QRectF& area = chart.area;
  p.painter.fillRect(QRectF(area.left(), area.top(), area.width(), chart.laneBottom - area.top()),
                     p.face.shade);
  p.painter.setPen(p.pen(p.face.outline, 1));
  p.painter.drawLine(area.bottomLeft(), area.bottomRight());
  const QFont small = lettersFont(Letters::small);
  const double line = QFontMetricsF(small).height();
  const auto word = [&](double y, const QString& text) {
    p.text(QRectF(0, y - line / 2, area.left() - 8 * p.u, line), small, p.face.quiet, text,
           Qt::AlignRight | Qt::AlignVCenter);
  };
  word((area.top() + chart.laneBottom) / 2, QStringLiteral("OL"));
  word((chart.boxTop + chart.boxBottom) / 2, PadPicture::tr("good"));
  word(area.bottom() - line / 4, p.scene.words.zero);
}

void paintChart(const Paint& p, const PadChart& chart) {
  paintChartGround(p, chart);
  const PadScene& scene = p.scene;
  for (std::size_t i = 0; i < scene.pads.size(); ++i) {
    const QRectF& rect = scene.layout.pads[i];
    const PadState& pad = scene.pads[i];
    if (rect.isNull() || scene.grid.cells[i].row != chart.row) continue;
    const double x = rect.center().x();
    if (pad.due) {
      const bool above = rect.top() > chart.area.top();
      p.painter.fillRect(QRectF(rect.left(), above ? chart.area.top() : rect.bottom(), rect.width(),
                                above ? rect.top() - chart.area.top() : chart.area.bottom() - rect.bottom()),
                         p.face.accentTint);
    }
    if (!pad.good && !pad.goodOl) continue;
    const bool onFloor = readsNothing(pad, p.highest);
    const double wide = std::min(rect.width() * 0.72, 56 * p.u);
    p.painter.setPen(p.pen(p.face.calm, 1.2));
    p.painter.setBrush(p.face.calmTint);
    const auto box = [&](double top, double bottom) {
      p.painter.drawRect(QRectF(x - wide / 2, top, wide, bottom - top));
    };
    if (pad.goodOl) box(chart.area.top() + 2 * p.u, chart.laneBottom - 2 * p.u);
    if (pad.good)
      box(onFloor ? chart.floorTop : chart.boxTop, onFloor ? chart.area.bottom() : chart.boxBottom);
    if (!pad.isRead()) continue;
    const double y = chartHeight(chart, pad, onFloor);
    const double most = std::min(rect.width() * 0.6, (pad.odd ? 22.0 : 13.0) * p.u);
    if (pad.odd) {
      const double from = !pad.good ? chart.laneBottom
                          : onFloor ? chart.floorTop
                                    : std::clamp(y, chart.boxTop, chart.boxBottom);
      p.painter.setPen(p.pen(p.face.odd, 2.5));
      // To the mark's edge: within it, it would fill the gap of an open pin.
      if (const double left = std::abs(y - from) - most / 2; left > 0)
        p.painter.drawLine(QPointF(x, from), QPointF(x, from + std::copysign(left, y - from)));
    }
    p.mark(pad, {x, y}, most);
  }
}

/// Letters before the digits: "B" of "B33".
QString rowOf(const QString& name) {
  qsizetype letters = 0;
  while (letters < name.size() && !name[letters].isDigit())
    ++letters;
  return letters == name.size() ? QString() : name.left(letters);
}

void paintSmallNames(const Paint& p) {
  const PadScene& scene = p.scene;
  const QFont small = lettersFont(Letters::small);
  const QFontMetricsF metrics(small);
  double firstLeft = scene.layout.small.front().left();
  for (const QRectF& rect : scene.layout.small)
    firstLeft = std::min(firstLeft, rect.left());
  std::vector<bool> named(static_cast<std::size_t>(scene.grid.rows), false);
  for (std::size_t i = 0; i < scene.pads.size(); ++i) {
    const QRectF& rect = scene.layout.small[i];
    const PadGrid::Cell& cell = scene.grid.cells[i];
    const QString row = rowOf(scene.pads[i].name);
    if (!named[static_cast<std::size_t>(cell.row)] && !row.isEmpty() && scene.grid.rows <= 4) {
      named[static_cast<std::size_t>(cell.row)] = true;
      p.text(QRectF(0, rect.center().y() - metrics.height() / 2, firstLeft - 10 * p.u, metrics.height()),
             bolder(small), p.face.ink, row, Qt::AlignRight | Qt::AlignVCenter);
    }
    const int column = cell.column / scene.grid.span;
    if (cell.row != 0 || column % 5 != 4 || scene.grid.rows > 4) continue;
    const QString number = scene.pads[i].name.mid(row.size());
    const double wide = metrics.horizontalAdvance(number) + 4;
    p.text(QRectF(rect.center().x() - wide / 2, rect.top() - 18 * p.u, wide, 17 * p.u), small, p.face.quiet,
           number);
  }
}

void paintSmall(const Paint& p) {
  const PadScene& scene = p.scene;
  if (scene.layout.small.empty()) return;
  for (std::size_t i = 0; i < scene.pads.size(); ++i) {
    const PadState& pad = scene.pads[i];
    const QRectF& rect = scene.layout.small[i];
    const double across = std::min(rect.width(), rect.height());
    if (pad.due) {
      const double w = std::min(rect.width(), 18 * p.u);
      p.painter.fillRect(QRectF(rect.center().x() - w / 2, rect.top(), w, rect.height()), p.face.accent);
    } else if (pad.isRead()) {
      const double size = pad.odd ? std::min(1.3 * across, 20 * p.u) : std::min(0.9 * across, 12 * p.u);
      p.mark(pad, rect.center(), size);
    } else if (pad.noNet || pad.skipped) {
      p.painter.setPen(p.pen(p.face.outline, 1.5));
      const double half = 0.3 * across;
      p.painter.drawLine(rect.center() - QPointF(half, 0), rect.center() + QPointF(half, 0));
    } else {
      p.painter.setPen(p.pen(p.face.outline, 1));
      p.painter.setBrush(Qt::NoBrush);
      const double w = std::min(0.8 * rect.width(), 10 * p.u), h = std::min(0.8 * rect.height(), 13 * p.u);
      p.painter.drawRect(QRectF(rect.center().x() - w / 2, rect.center().y() - h / 2, w, h));
    }
  }
  paintSmallNames(p);
  p.painter.setPen(p.pen(p.face.ink, 2));
  p.painter.setBrush(Qt::NoBrush);
  p.painter.drawRoundedRect(scene.layout.frame.adjusted(-1, -2, 1, 2), 2 * p.u, 2 * p.u);
}

} // namespace

bool readsNothing(const PadState& pad, double highest) {
  return pad.good && pad.good->high < nextToNothing * highest;
}

double chartHeight(const PadChart& chart, const PadState& pad, bool onFloor) {
  if (!pad.read) return (chart.area.top() + chart.laneBottom) / 2;
  if (!pad.good) return (chart.boxTop + chart.boxBottom) / 2;
  const double top = onFloor ? chart.floorTop : chart.boxTop;
  const double bottom = onFloor ? chart.area.bottom() : chart.boxBottom;
  const double value = *pad.read, low = pad.good->low, high = pad.good->high;
  // A reading that is not called odd stays within its box, whatever the last digit says.
  if (!pad.odd || (value >= low && value <= high)) {
    const double share = high > low ? std::clamp((value - low) / (high - low), 0.1, 0.9) : 0.5;
    return bottom - share * (bottom - top);
  }
  if (value > high) return top - (1.0 - std::max(high, 0.0) / value) * (top - chart.laneBottom);
  return bottom + (1.0 - std::max(value, 0.0) / std::max(low, 1e-12)) * (chart.area.bottom() - bottom);
}

void paintPads(QPainter& painter, const PadScene& scene) {
  painter.setRenderHint(QPainter::Antialiasing);
  const FaceColors& face = faceColors(faceTheme());
  const PictureColors marks = pictureColors(faceTheme());
  Paint p{painter,     scene, face, marks, marks, scene.good ? face.goodGround : face.ground,
          faceScale(), {},    {},   0.0};
  p.calm.ink = face.calm;
  painter.fillRect(painter.viewport(), p.ground);
  if (scene.pads.empty()) return;
  std::vector<QString> names, values;
  QRectF one;
  for (std::size_t i = 0; i < scene.pads.size(); ++i) {
    const PadState& pad = scene.pads[i];
    if (pad.good) p.highest = std::max(p.highest, pad.good->high);
    if (pad.isRead()) values.push_back(pad.value);
    if (scene.layout.pads[i].isNull()) continue;
    one = scene.layout.pads[i];
    names.push_back(pad.name);
  }
  if (values.empty()) values.push_back(QStringLiteral("0.000"));
  p.number = fitting(names, one.width() - 6 * p.u, one.height(), Letters::metre, false);
  p.value = fitting(values, one.width() - 4 * p.u, one.height() / 3, Letters::metre, true);
  p.value.setBold(false);
  for (const PadChart& chart : scene.layout.charts)
    paintChart(p, chart);
  for (std::size_t i = 0; i < scene.pads.size(); ++i)
    if (!scene.layout.pads[i].isNull() && !scene.pads[i].due)
      paintPad(p, scene.pads[i], scene.layout.pads[i]);
  paintBody(p);
  paintFirst(p);
  for (std::size_t i = 0; i < scene.pads.size(); ++i)
    if (!scene.layout.pads[i].isNull() && scene.pads[i].due) paintDue(p, scene.pads[i], scene.layout.pads[i]);
  paintSmall(p);
}

} // namespace netmend
