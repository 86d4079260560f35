// Drawing a board: how far off a straightened photo is, how long a frame takes, and what it takes a hand.
#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>
#include <random>

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>

#include "bench/map/copper_map.h"
#include "demo_boards.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/lookup.h"
#include "netmend/board/shape.h"
#include "netmend/board/summary.h"
#include "netmend/board/underlay.h"
#include "netmend/drawing/board_photo.h"
#include "netmend/photo/straighten.h"
#include "netmend/sketch/put_parts.h"
#include "netmend/sketch/sketch.h"
#include "report.h"
#include "support/board_photo.h"
#include "window_scenes.h"

using namespace netmend;
using namespace netmend::benchmarks;
using testing::Camera;
using testing::TakenPhoto;
using testing::takePhoto;

namespace {

constexpr unsigned seed = 20261130;
constexpr double photoScale = 20.0;

/// A hand that clicks in a photo is off by up to half a pixel.
PhotoPair clickedPair(const TakenPhoto& photo, Point place, std::mt19937& random) {
  std::uniform_real_distribution<double> off(-0.5, 0.5);
  const QPointF at = photo.pixelOf(place);
  return {{Pixels(at.x() + off(random)), Pixels(at.y() + off(random))}, place};
}

Underlay underlayOf(const TakenPhoto& photo, Side side) {
  Underlay out;
  out.width = Pixels(photo.image.width());
  out.height = Pixels(photo.image.height());
  out.side = side;
  return out;
}

/// The places that somebody would click: of a box the corners, then points along its edges.
std::vector<Point> placesOn(const Box& box, std::size_t count) {
  const Point middle{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
  const std::vector<Point> all{box.min,
                               {box.max.x, box.min.y},
                               box.max,
                               {box.min.x, box.max.y},
                               {middle.x, box.min.y},
                               {middle.x, box.max.y},
                               {box.min.x, middle.y},
                               {box.max.x, middle.y}};
  return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count)};
}

constexpr double windowMm = 0.2; ///< round a pad, in which it is looked for

Box boxOf(const Pad& pad) {
  Box box;
  for (const Point p : outlineOf(*padShape(pad)))
    box.include(p);
  return box;
}

/// Where a pad's finish is seen in the straightened picture: the middle of what is yellower than mask and
/// silk round its place. Nothing where it is not seen; outside of the window at its edge.
std::optional<Point> seenPad(const ShownPhoto& shown, const Pad& pad) {
  constexpr double scale = 50.0; // pixels a millimetre of the straightened picture
  const Box box = boxOf(pad);
  const int width = static_cast<int>((box.size().width.mm() + 2 * windowMm) * scale);
  const int height = static_cast<int>((box.size().height.mm() + 2 * windowMm) * scale);
  QImage image(width, height, QImage::Format_RGB32);
  image.fill(Qt::white);
  const double left = box.min.x.mm() - windowMm;
  const double top = box.max.y.mm() + windowMm;
  // From the picture's pixels to millimetres on the board.
  paintPhoto(image, QTransform(1 / scale, 0, 0, -1 / scale, left, top), shown);
  double sum = 0.0, x = 0.0, y = 0.0;
  for (int j = 0; j < height; ++j)
    for (int i = 0; i < width; ++i) {
      const QRgb p = image.pixel(i, j);
      const double weight = std::clamp((qRed(p) - qBlue(p) - 2) / 16.0, 0.0, 1.0);
      sum += weight;
      x += weight * (i + 0.5);
      y += weight * (j + 0.5);
    }
  if (sum < 0.15 * box.size().width.mm() * box.size().height.mm() * scale * scale) return std::nullopt;
  return Point{Length::fromMm(left + x / sum / scale), Length::fromMm(top - y / sum / scale)};
}

/// Pads of one side, with their hole in the middle if they have one, next to which there is nothing of the
/// same colour.
std::vector<const Pad*> lonePads(const Board& board, Side side, const Box& within) {
  const auto reaches = [&](const Pad& pad) {
    const auto reach = pad.reach.valueOr(PadReach::allLayers);
    return padShape(pad) && reach != (side == Side::top ? PadReach::bottom : PadReach::top);
  };
  std::vector<std::pair<const Pad*, Box>> here;
  for (const Pad& pad : board.pads)
    if (reaches(pad)) here.emplace_back(&pad, boxOf(pad));
  const Length gap = Length::fromMm(2 * windowMm);
  std::vector<const Pad*> out;
  for (const auto& [pad, box] : here) {
    const bool plain =
        pad->drillOffset == Point{} && pad->shape.valueOr(PadShape::polygon) != PadShape::polygon &&
        std::min(box.size().width, box.size().height) > Length(250'000) && box.min.x > within.min.x &&
        box.max.x < within.max.x && box.min.y > within.min.y && box.max.y < within.max.y;
    if (!plain) continue;
    const auto near = [&](const std::pair<const Pad*, Box>& other) {
      return other.first != pad && other.second.min.x < box.max.x + gap &&
             other.second.max.x > box.min.x - gap && other.second.min.y < box.max.y + gap &&
             other.second.max.y > box.min.y - gap;
    };
    if (std::none_of(here.begin(), here.end(), near)) out.push_back(pad);
  }
  return out;
}

struct Worst {
  double mm = 0.0;
  std::size_t pads = 0;
  std::size_t unseen = 0;
  void add(const ShownPhoto& shown, const std::vector<const Pad*>& all) {
    for (const Pad* pad : all) {
      const Box box = boxOf(*pad);
      const Point middle{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
      if (const auto seen = seenPad(shown, *pad)) {
        mm = std::max(mm, distance(*seen, middle).mm());
        ++pads;
      } else {
        ++unseen;
      }
    }
  }
};

struct PhotoFigures {
  Worst plain;   ///< four points, no lens
  Worst barrel;  ///< six points, a lens of half a per cent
  Worst closeUp; ///< laid on the first by four common points
};

Result<ShownPhoto> straightened(const TakenPhoto& photo, Side side, const std::vector<PhotoPair>& pairs) {
  Underlay underlay = underlayOf(photo, side);
  const auto straight = straighten(underlay, pairs, *richestModel(pairs.size()));
  if (!straight) return failure(straight.error());
  underlay.lie = fromUser(straight->lie);
  return ShownPhoto{underlay, std::make_shared<const BoardPhoto>(QImage::fromData(photo.jpeg))};
}

void measureBoard(const Board& board, unsigned boardSeed, PhotoFigures& figures) {
  std::mt19937 random(boardSeed);
  std::uniform_real_distribution<double> tilt(-7.0, 7.0);
  const Box box = extentOf(board);
  Camera camera;
  camera.pixelsPerMm = photoScale;
  camera.parts = false;
  camera.tiltX = tilt(random);
  camera.tiltY = tilt(random);
  camera.turn = tilt(random);
  camera.marginMm = 6.0;
  camera.distanceMm = std::max(200.0, 3.0 * std::max(box.size().width, box.size().height).mm());
  camera.seed = boardSeed;
  const auto pads = lonePads(board, Side::top, box);
  const auto pairsAt = [&](const TakenPhoto& photo, std::size_t count) {
    std::vector<PhotoPair> pairs;
    for (const Point place : placesOn(box, count))
      pairs.push_back(clickedPair(photo, place, random));
    return pairs;
  };
  const TakenPhoto whole = takePhoto(board, camera);
  const auto plain = straightened(whole, Side::top, pairsAt(whole, 4));
  if (plain) figures.plain.add(*plain, pads);
  camera.barrel = 0.005;
  const TakenPhoto bent = takePhoto(board, camera);
  if (const auto lens = straightened(bent, Side::top, pairsAt(bent, 6))) figures.barrel.add(*lens, pads);
  if (!plain || pads.empty()) return;
  // A close-up of 16 by 12 mm round some pad, laid where the overview shows four pads' corners of it.
  const Point middle = pads[pads.size() / 2]->position.value;
  Camera near = camera;
  near.barrel = 0.0;
  near.pixelsPerMm = 60.0;
  near.marginMm = 0.5;
  near.distanceMm = 100.0;
  near.tiltX = tilt(random);
  near.tiltY = tilt(random);
  near.turn = 17.0;
  near.part.include({middle.x - Length::fromMm(8), middle.y - Length::fromMm(6)});
  near.part.include({middle.x + Length::fromMm(8), middle.y + Length::fromMm(6)});
  const TakenPhoto close = takePhoto(board, near);
  std::vector<PhotoPair> pairs;
  for (const Point corner : placesOn(near.part, 4)) {
    const Point inside{(corner.x + middle.x) / 2, (corner.y + middle.y) / 2};
    PhotoPair pair = clickedPair(close, inside, random);
    // On the board it is where the overview says it is.
    const PhotoPair there = clickedPair(whole, inside, random);
    if (const auto place = PhotoMapping(plain->underlay).toBoard(there.photo)) {
      pair.board = *place;
      pairs.push_back(pair);
    }
  }
  if (const auto laid = straightened(close, Side::top, pairs))
    figures.closeUp.add(*laid, lonePads(board, Side::top, near.part));
}

void measurePhotos(Report& report, const std::vector<std::string>& files) {
  PhotoFigures figures;
  unsigned boards = 0;
  for (const std::string& file : files) {
    const auto imported = importBoard(file);
    if (!imported) continue;
    const Size size = extentOf(imported->board).size();
    // What a camera takes at 20 px/mm without being put together of several photos.
    const bool fits = size.width > Length::fromMm(25) && size.height > Length::fromMm(20) &&
                      size.width < Length::fromMm(170) && size.height < Length::fromMm(200);
    if (!fits || lonePads(imported->board, Side::top, extentOf(imported->board)).size() < 5) continue;
    measureBoard(imported->board, seed + boards, figures);
    if (++boards == 6) break;
  }
  report.add("boards", boards);
  if (boards < 4) report.skip("straight_mm", "fewer than four boards that a camera takes at once");
  report.add("straight_pads", static_cast<double>(figures.plain.pads));
  report.add("straight_unseen",
             static_cast<double>(figures.plain.unseen + figures.barrel.unseen + figures.closeUp.unseen),
             "pads that were not found in the picture", 0.02 * static_cast<double>(figures.plain.pads));
  report.add("straight_mm", figures.plain.mm, "mm, worst pad after four points", 0.1);
  report.add("straight_lens_mm", figures.barrel.mm, "mm, worst pad after six points, barrel 0.5 %", 0.15);
  report.add("closeup_pads", static_cast<double>(figures.closeUp.pads));
  report.add("closeup_mm", figures.closeUp.mm, "mm, worst pad of a close-up laid by four points", 0.2);
}

double medianFrame(CopperMap& map, const std::function<void(int)>& step) {
  std::vector<double> frames;
  for (int i = 0; i < 120; ++i)
    frames.push_back(millisecondsOf([&] {
      QCoreApplication::processEvents();
      step(i);
      map.repaint();
    }));
  return medianOf(frames);
}

void measurePhotoFrame(Report& report) {
  auto board = std::make_shared<Board>();
  QImage image(8000, 6000, QImage::Format_RGB32);
  for (int y = 0; y < image.height(); ++y) {
    auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
    for (int x = 0; x < image.width(); ++x)
      line[x] = qRgb((x * 7) & 255, (y * 5) & 255, (x ^ y) & 255);
  }
  Underlay underlay;
  underlay.id = board->newId<UnderlayId>();
  underlay.file = "x";
  underlay.width = Pixels(8000);
  underlay.height = Pixels(6000);
  underlay.lie = guessed(uprightLie(underlay, {}, 60.0));
  board->underlays.put(underlay);
  CopperMap map;
  map.resize(1920, 1080);
  map.QWidget::show();
  map.setBoard(board);
  map.setPhotos({{underlay, std::make_shared<const BoardPhoto>(image)}});
  map.settle();
  for (int i = 0; i < 6; ++i) {
    BoardView view = map.view();
    view.zoom(1, QRectF(map.rect()).center());
    map.setView(view);
  }
  map.settle();
  report.add("photo_frame_ms",
             medianFrame(map,
                         [&](int i) {
                           BoardView view = map.view();
                           view.pan({i < 60 ? -23.0 : 19.0, i % 20 < 10 ? 11.0 : -7.0});
                           map.setView(view);
                         }),
             "ms, a photo of 48 megapixels panned at 1920 by 1080", 16.0);
}

void measureMoveFrame(Report& report) {
  const auto board = std::make_shared<const Board>(largeBoard(20'000, 20'000));
  const Lookup lookup(*board);
  CopperMap map;
  map.resize(1920, 1080);
  map.QWidget::show();
  map.setBoard(board);
  map.settle();
  const Part& part = board->parts[board->parts.size() / 2];
  Point to{};
  const auto hand = std::make_shared<CopperMap::Hand>();
  SketchClick under;
  hand->press = [](const MapPointer&) { return true; };
  hand->stroke = [&](const MapPointer& at, bool) {
    to = at.at;
    under = sketchClickAt(lookup, at.at, at.side, at.reach);
    map.update();
  };
  hand->paint = [&](QPainter& painter, const BoardView& view) {
    painter.setPen(QPen(Qt::blue, 3));
    QPolygonF body;
    for (const Point p : part.body.valueOr({}))
      body << view.toPicture(p + to - part.position.valueOr({}));
    painter.drawPolygon(body);
  };
  map.setHand(hand);
  const auto send = [&](QEvent::Type type, QPointF at, Qt::MouseButton button) {
    QMouseEvent event(type, at, map.mapToGlobal(at), button, Qt::LeftButton, {});
    QCoreApplication::sendEvent(&map, &event);
  };
  send(QEvent::MouseButtonPress, {900, 500}, Qt::LeftButton);
  report.add("move_frame_ms",
             medianFrame(map,
                         [&](int i) {
                           send(QEvent::MouseMove, {900.0 + 3 * i, 500.0 + 2 * (i % 30)}, Qt::NoButton);
                         }),
             "ms, a part moved on a board of 20,000 pads", 16.0);
  // What letting go costs: the edit itself.
  report.add("move_edit_ms",
             leastMillisecondsOf(3,
                                 [&] {
                                   Board copy = *board;
                                   keep(apply(copy, movePart(lookup, part.id, {Length(1'000'000), {}})));
                                 }),
             "ms, the edit with a copy of the board");
}

/// The surroundings of the demo's connector, drawn by real events: the test of the window, counted.
void measureHand(Report& report) {
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("counts.json"));
  QProcess hand;
  auto environment = QProcessEnvironment::systemEnvironment();
  environment.insert(QStringLiteral("NETMEND_SKETCH_JSON"), file);
  hand.setProcessEnvironment(environment);
  hand.setProcessChannelMode(QProcess::MergedChannels);
  hand.start(QStringLiteral(SKETCH_HAND), {QStringLiteral("a connector's surroundings are drawn*")});
  const bool ended = hand.waitForFinished(300'000);
  std::ifstream in(file.toStdString());
  const auto counts = nlohmann::json::parse(in, nullptr, false);
  if (!ended || counts.is_discarded()) {
    report.skip("actions_per_pin", hand.readAll().toStdString());
    return;
  }
  report.add("actions_per_pin", counts["actions_per_pin"], "clicks and keys for pins, nets and tracks", 2.4);
  report.add("actions_per_passive", counts["actions_per_passive"], "clicks and keys", 3.0);
  report.add("klm_seconds", counts["klm_seconds"], "s, keystroke-level model, without names", 240.0);
}

} // namespace

int main(int argc, char** argv) {
  const auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  const auto boards = arguments->files.empty() ? demoBoards() : arguments->files;
  if (boards.empty()) return noBoard();
  Report report(*arguments);
  report.add("seed", seed);
  measurePhotos(report, boards);
  measurePhotoFrame(report);
  measureMoveFrame(report);
  measureHand(report);
  return report.finish();
}
