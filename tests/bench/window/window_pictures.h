#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <vector>

#include <QDir>
#include <QImage>

#include "bench/stations/board_clip.h"
#include "bench/stations/hand_over_page.h"
#include "bench_rig.h"
#include "seen.h"

namespace netmend::testing {

/// As somebody without the cones for green sees it: the matrix for deuteranopia of G. M. Machado, M. M.
/// Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
/// IEEE Transactions on Visualization and Computer Graphics 15 (6), 2009, severity 1.0; applied to linear
/// light.
inline QImage withoutGreenCones(QImage image) {
  constexpr std::array<std::array<double, 3>, 3> machado{
      {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
  const auto linear = [](int byte) {
    const double v = byte / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
  };
  const auto byteOf = [](double light) {
    const double v = std::clamp(light, 0.0, 1.0);
    return static_cast<int>(
        std::lround(255.0 * (v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1.0 / 2.4) - 0.055)));
  };
  image.convertTo(QImage::Format_RGB32);
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) {
      const QRgb seen = image.pixel(x, y);
      const std::array<double, 3> light{linear(qRed(seen)), linear(qGreen(seen)), linear(qBlue(seen))};
      std::array<int, 3> out{};
      for (std::size_t i = 0; i < 3; ++i)
        out[i] = byteOf(machado[i][0] * light[0] + machado[i][1] * light[1] + machado[i][2] * light[2]);
      image.setPixel(x, y, qRgb(out[0], out[1], out[2]));
    }
  return image;
}

/// With a palette of the colours it has most of: a window has few, and its file becomes a third.
inline QImage withPalette(const QImage& image) {
  std::map<QRgb, int> uses;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x)
      ++uses[image.pixel(x, y)];
  std::vector<std::pair<int, QRgb>> most;
  for (const auto& [color, count] : uses)
    most.emplace_back(count, color);
  std::sort(most.rbegin(), most.rend());
  QList<QRgb> palette;
  for (const auto& [count, color] : most)
    if (palette.size() < 256) palette << color;
  return image.convertToFormat(QImage::Format_Indexed8, palette, Qt::ThresholdDither);
}

/// The whole window in every size and light that it is made for: looked at, and kept as files in the folder
/// that NETMEND_PICTURES names, if it names one.
class WindowPictures {
public:
  explicit WindowPictures(BenchRig& rig) : rig_(rig), folder_(qEnvironmentVariable("NETMEND_PICTURES")) {}
  [[nodiscard]] bool wanted() const { return !folder_.isEmpty(); }

  void take(const QString& name) {
    const QImage light = look(name, {1280, 800});
    if (wanted()) keep(withoutGreenCones(light), name + QStringLiteral("-deuteranopia"));
    look(name + QStringLiteral("-1920"), {1920, 1080});
    if (wanted()) look(name + QStringLiteral("-2560"), {2560, 1440});
    rig_.window->setTheme(PictureTheme::dark);
    look(name + QStringLiteral("-dark"), {1280, 800});
    rig_.window->setTheme(PictureTheme::highContrast);
    look(name + QStringLiteral("-contrast"), {1280, 800});
    rig_.window->setTheme(PictureTheme::light);
    rig_.window->setScale(200);
    look(name + QStringLiteral("-200-percent"), {1280, 800});
    rig_.window->setScale(100);
    rig_.window->resize(1280, 800);
    BenchRig::wait([] { return false; }, 20);
  }

  /// One of them, for a story.
  void takeOne(const QString& name) {
    if (wanted()) keep(grabbed({1280, 800}), name);
  }

private:
  QImage look(const QString& name, QSize size) {
    const QImage image = grabbed(size);
    CHECK(rig_.window->size() == size);
    const Seen seen(*rig_.window);
    for (const std::string& fault : seen.faults())
      FAIL_CHECK(name.toStdString() << ": " << fault);
    if (wanted()) keep(image, name);
    return image;
  }
  QImage grabbed(QSize size) {
    rig_.window->resize(size);
    BenchRig::wait([] { return false; }, wanted() ? 250 : 30);
    laidOut();
    const auto* sheet = dynamic_cast<HandOverPage*>(&rig_.window->page(Station::handOver));
    if (rig_.window->station() == Station::handOver)
      REQUIRE(BenchRig::wait([&] { return sheet != nullptr && sheet->ready(); }));
    rig_.window->map().settle();
    for (const QWidget* child : rig_.window->findChildren<QWidget*>())
      if (const auto* clip = dynamic_cast<const BoardClip*>(child); clip != nullptr && clip->isVisible())
        REQUIRE(BenchRig::wait([&] { return clip->painted(); }));
    QApplication::processEvents();
    return rig_.window->grab().toImage();
  }
  /// One layout asks for the next: waits until none moves anything any more, however slow the machine is.
  void laidOut() const {
    QList<QRect> before;
    int same = 0;
    REQUIRE(BenchRig::wait([&] {
      QList<QRect> now;
      for (const QWidget* widget : rig_.window->findChildren<QWidget*>())
        if (widget->isVisible()) now << widget->geometry();
      same = now == before ? same + 1 : 0;
      before = now;
      return same > 2;
    }));
  }
  void keep(const QImage& image, const QString& name) const {
    REQUIRE(QDir().mkpath(folder_));
    REQUIRE(withPalette(image).save(QDir(folder_).filePath(name + QStringLiteral(".png"))));
  }

  BenchRig& rig_;
  QString folder_;
};

} // namespace netmend::testing
