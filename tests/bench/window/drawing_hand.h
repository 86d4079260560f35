#pragma once

#include <QDropEvent>
#include <QMimeData>
#include <QUrl>

#include <map>
#include <set>

#include "bench_rig.h"
#include "netmend/board/underlay.h"
#include "support/board_photo.h"

namespace netmend::testing {

/// What drawing took, by what was being drawn. Letters of names and of the line are not counted as actions; a
/// stroke is two: pressing and letting go.
struct DrawingCount {
  int clicks = 0;
  int keys = 0;
  int letters = 0; ///< of the line, but for names
  int homings = 0; ///< of the hand, from mouse to keys and back
  int points = 0;  ///< of the mouse at something
  int objects = 0; ///< that were thought of
  [[nodiscard]] int actions() const { return clicks + keys; }
  /// Keystroke-level model (Card, Moran, Newell, CACM 23 (7), 1980; figures from memory): pointing 1.1 s, a
  /// button 0.2, homing 0.4, a key 0.28 (average typist), one mental preparation 1.35 an object.
  [[nodiscard]] double seconds() const {
    return 1.1 * points + 0.2 * clicks + 0.4 * homings + 0.28 * (keys + letters) + 1.35 * objects;
  }
  DrawingCount& operator+=(const DrawingCount& other) {
    clicks += other.clicks;
    keys += other.keys;
    letters += other.letters;
    homings += other.homings;
    points += other.points;
    objects += other.objects;
    return *this;
  }
};

/// A person who draws a board over its photo, by real events at the window. Where things are is known from
/// the board that the photo was taken of; it is clicked where the photo shows it.
class DrawingHand {
public:
  enum class What { photo, parts, passives, nets, zones };

  DrawingHand(BenchRig& rig, const Board& real, TakenPhoto photo)
      : rig_(rig), real_(real), photo_(std::move(photo)) {}

  std::map<What, DrawingCount> counts;
  void at(What what) { what_ = what; }
  void object() { ++counts[what_].objects; }

  void drop(const QString& file) {
    auto* mime = new QMimeData;
    mime->setUrls({QUrl::fromLocalFile(file)});
    QDragEnterEvent enter(QPoint(400, 400), Qt::CopyAction, mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(rig_.window.get(), &enter);
    REQUIRE(enter.isAccepted());
    QDropEvent drop(QPointF(400, 400), Qt::CopyAction, mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(rig_.window.get(), &drop);
    delete mime;
  }

  /// Where the map shows what the photo shows there.
  [[nodiscard]] QPoint screen(Point p) const {
    const QPointF pixel = photo_.pixelOf(p);
    const Board& board = *rig_.window->desk().drawing.board();
    REQUIRE(board.underlays.size() > 0);
    const auto place = PhotoMapping(board.underlays[0]).toBoard({Pixels(pixel.x()), Pixels(pixel.y())});
    REQUIRE(place);
    return rig_.window->map().view().toPicture(*place).toPoint();
  }
  void click(Point p) {
    point();
    ++counts[what_].clicks;
    QTest::mouseClick(&rig_.window->map(), Qt::LeftButton, {}, screen(p));
  }
  /// Pressed, drawn along, let go.
  void stroke(const std::vector<Point>& way) {
    point();
    counts[what_].clicks += 2;
    counts[what_].points += static_cast<int>(way.size()) - 1;
    CopperMap& map = rig_.window->map();
    QTest::mousePress(&map, Qt::LeftButton, {}, screen(way.front()));
    for (std::size_t i = 1; i < way.size(); ++i) {
      const QPointF a = screen(way[i - 1]);
      const QPointF b = screen(way[i]);
      for (int step = 1; step <= 5; ++step)
        move(map, a + (b - a) * step / 5.0);
    }
    QTest::mouseRelease(&map, Qt::LeftButton, {}, screen(way.back()));
  }
  void key(Qt::Key key) {
    home(true);
    ++counts[what_].keys;
    QTest::keyClick(rig_.target(), key);
  }
  /// Opens the line, types, and Enter.
  void line(const QString& text, bool name = false) {
    key(Qt::Key_Return);
    if (!name) counts[what_].letters += static_cast<int>(text.size());
    for (const QChar c : text)
      QTest::keyClick(rig_.target(), c.toLatin1());
    key(Qt::Key_Return);
  }
  /// As near as the wheel takes it: not an action, but the hand points for it.
  void lookAt(const Box& box) {
    CopperMap& map = rig_.window->map();
    for (int i = 0; i < 60; ++i) {
      const Box shown = map.view().shown();
      const Point middle{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
      const bool near = shown.size().width < box.size().width + box.size().width / 4 ||
                        shown.size().height < box.size().height + box.size().height / 4;
      if (near) break;
      QWheelEvent wheel(map.view().toPicture(middle), {}, {}, {0, 120}, Qt::NoButton, Qt::NoModifier,
                        Qt::NoScrollPhase, false);
      QApplication::sendEvent(&map, &wheel);
    }
    // Drawn into the middle.
    const QPointF to = QRectF(map.rect()).center();
    const Point middle{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
    const QPointF by = to - map.view().toPicture(middle);
    const QPointF from = bare(map);
    QTest::mousePress(&map, Qt::MiddleButton, {}, from.toPoint());
    for (int step = 1; step <= 4; ++step)
      move(map, from + by * step / 4.0, Qt::MiddleButton);
    QTest::mouseRelease(&map, Qt::MiddleButton, {}, (from + by).toPoint());
    point();
  }

private:
  static QPointF bare(const CopperMap& map) { return {map.width() * 0.5, map.height() * 0.5}; }
  static void move(QWidget& widget, QPointF at, Qt::MouseButton button = Qt::LeftButton) {
    QMouseEvent event(QEvent::MouseMove, at, widget.mapToGlobal(at), Qt::NoButton, button, {});
    QApplication::sendEvent(&widget, &event);
  }
  void home(bool keys) {
    if (std::exchange(onKeys_, keys) != keys) ++counts[what_].homings;
  }
  void point() {
    home(false);
    ++counts[what_].points;
  }

  BenchRig& rig_;
  const Board& real_;
  TakenPhoto photo_;
  What what_ = What::photo;
  bool onKeys_ = false;
};

} // namespace netmend::testing
