#include "netmend/drawing/board_photo.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "netmend/board/underlay.h"

namespace netmend {

namespace {

constexpr int smallestLevel = 64; ///< pixels across
constexpr int darkest = 56;       ///< what black is shown as …
constexpr int lightest = 206;     ///< … and white

using Tones = std::array<int, 256>;

Tones tonesOf(const Underlay& underlay) {
  Tones out{};
  const double light = std::clamp(underlay.lightened.value, -1.0, 1.0);
  for (int i = 0; i < 256; ++i) {
    const double tone = light < 0.0 ? i * (1.0 + light) : i + (255 - i) * light;
    out[static_cast<std::size_t>(i)] =
        darkest + static_cast<int>(std::lround(tone * (lightest - darkest) / 255.0));
  }
  return out;
}

/// Between the four pixels round a place, which is within the image.
QRgb between(const QImage& image, double x, double y) {
  const double left = std::clamp(x - 0.5, 0.0, image.width() - 1.0);
  const double top = std::clamp(y - 0.5, 0.0, image.height() - 1.0);
  const int x0 = static_cast<int>(left);
  const int y0 = static_cast<int>(top);
  const int x1 = std::min(x0 + 1, image.width() - 1);
  const int y1 = std::min(y0 + 1, image.height() - 1);
  const int fx = static_cast<int>((left - x0) * 256.0);
  const int fy = static_cast<int>((top - y0) * 256.0);
  const auto* a = reinterpret_cast<const QRgb*>(image.constScanLine(y0));
  const auto* b = reinterpret_cast<const QRgb*>(image.constScanLine(y1));
  const auto mix = [&](int (*part)(QRgb)) {
    const int upper = part(a[x0]) * (256 - fx) + part(a[x1]) * fx;
    const int lower = part(b[x0]) * (256 - fx) + part(b[x1]) * fx;
    return (upper * (256 - fy) + lower * fy) >> 16;
  };
  return qRgb(mix(qRed), mix(qGreen), mix(qBlue));
}

QRgb over(QRgb ground, QRgb pixel, const Tones& tones, int opacity) {
  const auto blend = [&](int below, int above) {
    return below + ((tones[static_cast<std::size_t>(above)] - below) * opacity) / 256;
  };
  return qRgb(blend(qRed(ground), qRed(pixel)), blend(qGreen(ground), qGreen(pixel)),
              blend(qBlue(ground), qBlue(pixel)));
}

} // namespace

BoardPhoto::BoardPhoto(const QImage& image) : levels_{image.convertToFormat(QImage::Format_RGB32)} {
  while (std::min(levels_.back().width(), levels_.back().height()) >= 2 * smallestLevel) {
    const QImage& last = levels_.back();
    levels_.push_back(last.scaled(last.size() / 2, Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
  }
}

const QImage& BoardPhoto::levelFor(double pixelsPerPhotoPixel) const {
  std::size_t level = 0;
  while (level + 1 < levels_.size() && pixelsPerPhotoPixel <= 0.5) {
    pixelsPerPhotoPixel *= 2.0;
    ++level;
  }
  return levels_[level];
}

void paintPhoto(QImage& onto, const QTransform& toBoard, const ShownPhoto& shown) {
  if (!shown.underlay.lie.known() || !shown.photo) return;
  const int opacity =
      static_cast<int>(std::lround(256.0 * (1.0 - std::clamp(shown.underlay.faded.value, 0.0, 1.0))));
  if (opacity == 0) return;
  const PhotoMapping mapping(shown.underlay);
  const double mmPerPixel = std::hypot(toBoard.m11(), toBoard.m12());
  const double photoPixels = mapping.pixelsPerMm() * mmPerPixel; // that one pixel of the picture covers
  if (!(photoPixels > 0.0)) return;
  const QImage& level = shown.photo->levelFor(1.0 / photoPixels);
  const double scaleX = level.width() / shown.underlay.width.value;
  const double scaleY = level.height() / shown.underlay.height.value;
  const Tones tones = tonesOf(shown.underlay);
  for (int y = 0; y < onto.height(); ++y) {
    auto* line = reinterpret_cast<QRgb*>(onto.scanLine(y));
    for (int x = 0; x < onto.width(); ++x) {
      const double px = x + 0.5;
      const double py = y + 0.5;
      const auto at = mapping.toPhoto(toBoard.m11() * px + toBoard.m21() * py + toBoard.dx(),
                                      toBoard.m12() * px + toBoard.m22() * py + toBoard.dy());
      if (!at) continue;
      const double u = at->x.value * scaleX;
      const double v = at->y.value * scaleY;
      if (u < 0.0 || v < 0.0 || u >= level.width() || v >= level.height()) continue;
      line[x] = over(line[x], between(level, u, v), tones, opacity);
    }
  }
}

} // namespace netmend
