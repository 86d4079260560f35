#include "support/board_photo.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include <QBuffer>
#include <QPainter>
#include <QPainterPath>

#include "netmend/board/lookup.h"
#include "netmend/board/shape.h"
#include "netmend/board/summary.h"

namespace netmend::testing {

namespace {

constexpr double flatScale = 24.0; ///< pixels a millimetre of the picture that the camera looks at

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

/// A pinhole camera above the board, which lies at z = 0 as that side is seen: x to the right, y up.
struct Pinhole {
  double middleX, middleY, distance, focal, imageX, imageY, halfDiagonal, barrel;
  std::array<double, 9> r{}; ///< rows: right, down, forward

  Pinhole(const Camera& camera, double x, double y, QSize size)
      : middleX(x), middleY(y), distance(camera.distanceMm), focal(camera.pixelsPerMm * camera.distanceMm),
        imageX(size.width() / 2.0), imageY(size.height() / 2.0), halfDiagonal(std::hypot(imageX, imageY)),
        barrel(camera.barrel) {
    const double a = radians(camera.tiltX), b = radians(camera.tiltY), c = radians(camera.turn);
    // Tilt about x, then y, then turn about the line of sight; looking down.
    const double ca = std::cos(a), sa = std::sin(a), cb = std::cos(b), sb = std::sin(b), cc = std::cos(c),
                 sc = std::sin(c);
    const std::array<double, 9> base{cb, sa * sb, -ca * sb, 0, ca, sa, sb, -sa * cb, ca * cb};
    for (std::size_t i = 0; i < 3; ++i) {
      r[i] = cc * base[i] - sc * base[3 + i];
      r[3 + i] = sc * base[i] + cc * base[3 + i];
      r[6 + i] = base[6 + i];
    }
  }

  /// x and y as the side is seen, in mm.
  [[nodiscard]] QPointF see(double x, double y) const {
    const double dx = x - middleX, dy = -(y - middleY); // down
    const double u = r[0] * dx + r[1] * dy;
    const double v = r[3] * dx + r[4] * dy;
    const double w = distance + r[6] * dx + r[7] * dy;
    return distorted({focal * u / w, focal * v / w});
  }
  [[nodiscard]] QPointF distorted(QPointF ideal) const {
    const double s = (ideal.x() * ideal.x() + ideal.y() * ideal.y()) / (halfDiagonal * halfDiagonal);
    return QPointF(imageX, imageY) + ideal * (1.0 - barrel * s);
  }
  /// The place seen at a pixel.
  [[nodiscard]] QPointF placeAt(QPointF pixel) const {
    const QPointF d = pixel - QPointF(imageX, imageY);
    QPointF ideal = d;
    for (int i = 0; i < 12; ++i) {
      const double s = (ideal.x() * ideal.x() + ideal.y() * ideal.y()) / (halfDiagonal * halfDiagonal);
      ideal = d / (1.0 - barrel * s);
    }
    // On the plane: solve focal·(R·d)ₓ = ideal·(distance + (R·d)_z) for d.
    const double px = ideal.x() / focal, py = ideal.y() / focal;
    const double a11 = r[0] - px * r[6], a12 = r[1] - px * r[7];
    const double a21 = r[3] - py * r[6], a22 = r[4] - py * r[7];
    const double b1 = px * distance, b2 = py * distance;
    const double det = a11 * a22 - a12 * a21;
    return {middleX + (b1 * a22 - a12 * b2) / det, middleY - (a11 * b2 - a21 * b1) / det};
  }
};

class Plot {
public:
  Plot(const Board& board, const Camera& camera, const Box& box)
      : board_(board), camera_(camera), mirror_(camera.side == Side::top ? 1.0 : -1.0) {
    const double left = std::min(mirror_ * box.min.x.mm(), mirror_ * box.max.x.mm());
    left_ = left;
    top_ = box.max.y.mm();
    image_ = QImage(static_cast<int>(box.size().width.mm() * flatScale),
                    static_cast<int>(box.size().height.mm() * flatScale), QImage::Format_RGB32);
  }

  QImage draw() {
    QPainter painter(&image_);
    painter.fillRect(image_.rect(), QColor(0x8A, 0x82, 0x78));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setTransform(
        QTransform(mirror_ * flatScale, 0, 0, -flatScale, -left_ * flatScale, top_ * flatScale));
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0x2E, 0x6B, 0x45));
    painter.drawPath(outline());
    drawCopper(painter);
    drawPads(painter);
    drawSilk(painter);
    if (camera_.parts) drawParts(painter);
    return image_;
  }
  /// In the flat picture's pixels.
  [[nodiscard]] QPointF toFlat(QPointF seen) const {
    return {(seen.x() - left_) * flatScale, (top_ - seen.y()) * flatScale};
  }

private:
  static QPointF mm(Point p) { return {p.x.mm(), p.y.mm()}; }
  static QPolygonF polygon(const Ring& ring) {
    QPolygonF out;
    for (const Point p : ring)
      out << mm(p);
    return out;
  }

  [[nodiscard]] QPainterPath outline() const {
    QPainterPath path;
    path.setFillRule(Qt::OddEvenFill);
    if (board_.info.outline.known()) {
      for (const Polygon& each : board_.info.outline.value) {
        path.addPolygon(polygon(each.outer));
        path.closeSubpath();
        for (const Ring& hole : each.holes) {
          path.addPolygon(polygon(hole));
          path.closeSubpath();
        }
      }
    } else {
      const Box box = extentOf(board_);
      path.addRect(QRectF(mm(box.min), mm(box.max)).adjusted(-1, -1, 1, 1));
    }
    return path;
  }

  [[nodiscard]] bool onSide(const Fact<LayerId>& layer) const {
    const auto& order = board_.info.layerOrder;
    if (!layer.known() || order.empty()) return false;
    return layer.value == (camera_.side == Side::top ? order.front() : order.back());
  }

  void drawCopper(QPainter& painter) const {
    const QColor underMask(0x4C, 0x8E, 0x60);
    for (const Track& track : board_.tracks) {
      if (!onSide(track.layer) || track.way == TrackWay::unknownWay) continue;
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(underMask, track.width.valueOr(Length(200'000)).mm(), Qt::SolidLine, Qt::RoundCap,
                          Qt::RoundJoin));
      painter.drawPolyline(polygon(centreLine(track)));
    }
    painter.setPen(Qt::NoPen);
    for (const Via& via : board_.vias) {
      const double d = via.diameter.valueOr(Length(500'000)).mm();
      painter.setBrush(underMask);
      painter.drawEllipse(mm(via.position), d / 2, d / 2);
      painter.setBrush(QColor(0x20, 0x28, 0x24));
      painter.drawEllipse(mm(via.position), d / 4, d / 4);
    }
  }

  void drawPads(QPainter& painter) const {
    painter.setPen(Qt::NoPen);
    for (const Pad& pad : board_.pads) {
      const auto reach = pad.reach.valueOr(PadReach::allLayers);
      if (reach == (camera_.side == Side::top ? PadReach::bottom : PadReach::top)) continue;
      const auto shape = padShape(pad);
      if (!shape) continue;
      painter.setBrush(QColor(0xD8, 0xCF, 0xA8));
      painter.drawPolygon(polygon(outlineOf(*shape)));
      const auto hole = drillCentre(pad);
      if (!hole || !pad.drill.known()) continue;
      painter.setBrush(QColor(0x28, 0x26, 0x24));
      painter.drawEllipse(mm(*hole), pad.drill.value.width.mm() / 2, pad.drill.value.height.mm() / 2);
    }
  }

  void drawSilk(QPainter& painter) const {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(QColor(0xE6, 0xEA, 0xE6), 0.12));
    for (const Part& part : board_.parts)
      if (part.side.valueOr(Side::top) == camera_.side && part.body.known())
        painter.drawPolygon(polygon(part.body.value));
  }

  void drawParts(QPainter& painter) const {
    painter.setPen(Qt::NoPen);
    for (const Part& part : board_.parts) {
      const bool here =
          part.side.valueOr(Side::top) == camera_.side && part.body.known() && part.fitted.valueOr(true);
      const auto kind = part.kind.valueOr(PartKind::other);
      if (!here || kind == PartKind::shield || kind == PartKind::testPoint) continue;
      const QColor body = kind == PartKind::capacitor   ? QColor(0xA8, 0x8A, 0x60)
                          : kind == PartKind::connector ? QColor(0xC8, 0xBC, 0x98)
                                                        : QColor(0x38, 0x3A, 0x3E);
      // The middle alone: terminals stay to be seen.
      const QPolygonF whole = polygon(part.body.value);
      const QPointF c = whole.boundingRect().center();
      QPolygonF small;
      for (const QPointF p : whole)
        small << c + (p - c) * 0.8;
      const QRectF box = whole.boundingRect();
      const bool two = std::max(box.width(), box.height()) < 7.0 && kind != PartKind::chip;
      if (two) {
        const bool wide = box.width() > box.height();
        small = QPolygonF(QRectF(c.x() - box.width() * (wide ? 0.2 : 0.5),
                                 c.y() - box.height() * (wide ? 0.5 : 0.2), box.width() * (wide ? 0.4 : 1.0),
                                 box.height() * (wide ? 1.0 : 0.4)));
      }
      painter.setBrush(body);
      painter.drawPolygon(small);
    }
  }

  const Board& board_;
  const Camera& camera_;
  double mirror_;
  double left_ = 0.0;
  double top_ = 0.0;
  QImage image_;
};

QRgb at(const QImage& image, QPointF p) {
  const double x = p.x() - 0.5, y = p.y() - 0.5;
  const int x0 = static_cast<int>(std::floor(x)), y0 = static_cast<int>(std::floor(y));
  if (x0 < 0 || y0 < 0 || x0 + 1 >= image.width() || y0 + 1 >= image.height()) return qRgb(0x8A, 0x82, 0x78);
  const double fx = x - x0, fy = y - y0;
  const auto* a = reinterpret_cast<const QRgb*>(image.constScanLine(y0)) + x0;
  const auto* b = reinterpret_cast<const QRgb*>(image.constScanLine(y0 + 1)) + x0;
  const auto mix = [&](int (*part)(QRgb)) {
    return static_cast<int>((part(a[0]) * (1 - fx) + part(a[1]) * fx) * (1 - fy) +
                            (part(b[0]) * (1 - fx) + part(b[1]) * fx) * fy);
  };
  return qRgb(mix(qRed), mix(qGreen), mix(qBlue));
}

/// Rows, then columns.
void blur(QImage& image, double sigma) {
  if (sigma <= 0.0) return;
  const int reach = std::max(1, static_cast<int>(std::ceil(3 * sigma)));
  std::vector<double> weights;
  double sum = 0.0;
  for (int i = -reach; i <= reach; ++i) {
    weights.push_back(std::exp(-0.5 * i * i / (sigma * sigma)));
    sum += weights.back();
  }
  for (const bool rows : {true, false}) {
    const QImage before = image.copy();
    for (int y = 0; y < image.height(); ++y) {
      auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
      for (int x = 0; x < image.width(); ++x) {
        std::array<double, 3> all{};
        for (int i = -reach; i <= reach; ++i) {
          const int u = std::clamp(rows ? x + i : x, 0, image.width() - 1);
          const int v = std::clamp(rows ? y : y + i, 0, image.height() - 1);
          const QRgb p = reinterpret_cast<const QRgb*>(before.constScanLine(v))[u];
          const double w = weights[static_cast<std::size_t>(i + reach)] / sum;
          all[0] += w * qRed(p);
          all[1] += w * qGreen(p);
          all[2] += w * qBlue(p);
        }
        line[x] = qRgb(static_cast<int>(all[0]), static_cast<int>(all[1]), static_cast<int>(all[2]));
      }
    }
  }
}

void lightAndNoise(QImage& image, const Camera& camera) {
  std::mt19937 random(camera.seed);
  std::normal_distribution<double> grain(0.0, std::max(1e-9, camera.noise));
  for (int y = 0; y < image.height(); ++y) {
    auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < image.width(); ++x) {
      const double u = static_cast<double>(x) / image.width(), v = static_cast<double>(y) / image.height();
      const double light = 1.0 - camera.uneven * (0.6 * u + 0.4 * v * v);
      const auto lit = [&](int value) {
        return std::clamp(
            static_cast<int>(std::lround(value * light + (camera.noise > 0 ? grain(random) : 0.0))), 0, 255);
      };
      line[x] = qRgb(lit(qRed(line[x])), lit(qGreen(line[x])), lit(qBlue(line[x])));
    }
  }
}

} // namespace

TakenPhoto takePhoto(const Board& board, const Camera& camera) {
  Box box = camera.part;
  if (box.empty()) box = extentOf(board);
  const Length margin = Length::fromMm(camera.marginMm);
  box.include({box.min.x - margin, box.min.y - margin});
  box.include({box.max.x + margin, box.max.y + margin});
  Box drawn = box; // what a tilted camera sees besides
  const Length more = std::max(box.size().width, box.size().height) / 3;
  drawn.include({box.min.x - more, box.min.y - more});
  drawn.include({box.max.x + more, box.max.y + more});
  Plot plot(board, camera, drawn);
  const QImage flat = plot.draw();
  const double mirror = camera.side == Side::top ? 1.0 : -1.0;
  const double middleX = mirror * (box.min.x + box.max.x).mm() / 2,
               middleY = (box.min.y + box.max.y).mm() / 2;
  const QSize size(static_cast<int>(box.size().width.mm() * camera.pixelsPerMm),
                   static_cast<int>(box.size().height.mm() * camera.pixelsPerMm));
  const Pinhole pinhole(camera, middleX, middleY, size);
  TakenPhoto out;
  out.image = QImage(size, QImage::Format_RGB32);
  for (int y = 0; y < size.height(); ++y) {
    auto* line = reinterpret_cast<QRgb*>(out.image.scanLine(y));
    for (int x = 0; x < size.width(); ++x)
      line[x] = at(flat, plot.toFlat(pinhole.placeAt({x + 0.5, y + 0.5})));
  }
  blur(out.image, camera.blur);
  lightAndNoise(out.image, camera);
  out.pixelOf = [pinhole, mirror](Point p) { return pinhole.see(mirror * p.x.mm(), p.y.mm()); };
  QBuffer buffer(&out.jpeg);
  buffer.open(QIODevice::WriteOnly);
  out.image.save(&buffer, "JPEG", camera.jpegQuality);
  return out;
}

} // namespace netmend::testing
