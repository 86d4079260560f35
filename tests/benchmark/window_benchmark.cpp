#include <algorithm>
#include <cmath>
#include <ctime>
#include <filesystem>
#include <iostream>

#include <QApplication>
#include <QElapsedTimer>
#include <QGraphicsView>
#include <QTemporaryDir>
#include <QThread>
#include <QWheelEvent>

#include "bench/map/copper_map.h"
#include "demo_boards.h"
#include "netmend/board/exchange/import.h"
#include "report.h"
#include "window_entry.h"
#include "window_scenes.h"
#include "window_start.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr QSize screen(1920, 1080);
constexpr double frameTime = 1000.0 / 60.0;
constexpr double longestHandler = 50.0;

/// One step of a gesture: how far the picture is dragged, or how many notches the wheel turns.
struct Step {
  QPointF pan;
  double notches = 0;
};

/// In to where single parts are seen, about, out again with panning in between, and quickly all the way in
/// and out.
std::vector<Step> gestures() {
  std::vector<Step> steps;
  const auto repeat = [&](int count, Step step) {
    steps.insert(steps.end(), static_cast<std::size_t>(count), step);
  };
  for (int i = 0; i < 8; ++i) {
    repeat(1, {{}, 1});
    repeat(12, {{-23, 11}, 0});
    repeat(6, {{31, -7}, 0});
  }
  for (int i = 0; i < 8; ++i) {
    repeat(1, {{}, -1});
    repeat(8, {{17, 13}, 0});
  }
  repeat(12, {{}, 1});
  repeat(12, {{}, -1});
  return steps;
}

/// Milliseconds of processor time that this thread has had.
double threadTime() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
}

double worstOf(const std::vector<double>& values) {
  return *std::max_element(values.begin(), values.end());
}

struct Frames {
  std::vector<double> ms;          ///< by the clock
  std::vector<double> processorMs; ///< of these, spent by this thread: what other programs do to it left out
};

/// Plays the gestures at 60 steps a second. A frame is all that the event loop's thread does for it: the
/// input's handler, the painting, and what came in since the frame before.
template <class Input, class Paint> Frames play(Input&& input, Paint&& paint) {
  Frames frames;
  for (const Step& step : gestures()) {
    QElapsedTimer clock;
    clock.start();
    const double before = threadTime();
    const double ms = millisecondsOf([&] {
      QCoreApplication::processEvents();
      input(step);
      paint();
    });
    frames.ms.push_back(ms);
    frames.processorMs.push_back(threadTime() - before);
    const auto rest = frameTime - static_cast<double>(clock.nsecsElapsed()) * 1e-6;
    if (rest > 0) QThread::usleep(static_cast<unsigned long>(rest * 1000));
  }
  return frames;
}

void turnWheel(QWidget& widget, double notches) {
  const QPointF at = QRectF(widget.rect()).center();
  QWheelEvent event(at, widget.mapToGlobal(at), {}, QPoint(0, static_cast<int>(notches * 120)), Qt::NoButton,
                    Qt::NoModifier, Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&widget, &event);
}

struct MapFigures {
  Frames frames;
  double load = 0;    ///< ms that setting the board keeps the event loop
  double ready = 0;   ///< ms until the board can be seen
  double settled = 0; ///< ms until the picture is exact after the last gesture
};

MapFigures playMap(const std::shared_ptr<const Board>& board, bool through) {
  CopperMap map;
  map.resize(screen);
  map.QWidget::show();
  QCoreApplication::processEvents();
  MapFigures figures;
  map.seeThrough(through);
  QElapsedTimer clock;
  clock.start();
  bool ready = false;
  map.onBoardReady = [&] { ready = true; };
  figures.load = millisecondsOf([&] { map.setBoard(board); });
  while (!ready) {
    figures.load = std::max(figures.load, millisecondsOf([] { QCoreApplication::processEvents(); }));
    QThread::msleep(1);
  }
  figures.ready = static_cast<double>(clock.nsecsElapsed()) * 1e-6;
  map.settle();
  figures.frames = play(
      [&](const Step& step) {
        if (step.notches != 0) {
          turnWheel(map, step.notches);
        } else {
          BoardView view = map.view();
          view.pan(step.pan);
          map.setView(view);
        }
      },
      [&] { map.repaint(); });
  clock.restart();
  map.settle();
  figures.settled = static_cast<double>(clock.nsecsElapsed()) * 1e-6;
  return figures;
}

Frames playScene(const Board& board) {
  QGraphicsScene scene;
  fillScene(scene, board);
  QGraphicsView view(&scene);
  view.setRenderHint(QPainter::Antialiasing);
  view.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  view.setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  view.setFrameShape(QFrame::NoFrame);
  view.resize(screen);
  view.show();
  view.fitInView(scene.sceneRect(), Qt::KeepAspectRatio);
  // Room to pan beyond the board, as the map has it.
  const QRectF all = scene.sceneRect();
  view.setSceneRect(all.adjusted(-all.width(), -all.height(), all.width(), all.height()));
  QCoreApplication::processEvents();
  QPointF middle = all.center();
  return play(
      [&](const Step& step) {
        if (step.notches != 0) {
          const double factor = std::pow(1.25, step.notches);
          view.scale(factor, factor);
        } else {
          middle -= step.pan / view.transform().m11();
        }
        view.centerOn(middle);
      },
      [&] { view.viewport()->repaint(); });
}

/// The figures of one board, added to the report under its name; those that are wanted are the greater of
/// all.
struct Worst {
  double median = 0;
  double worst = 0;
  double handler = 0;
  double ratio = 1e300;
};

void measure(const std::string& name, const std::shared_ptr<const Board>& board, Report& report,
             Worst& worst) {
  const MapFigures seen = playMap(board, false);
  const MapFigures through = playMap(board, true);
  const Frames peer = playScene(*board);
  const auto add = [&](const char* what, double value, const char* unit) {
    report.add(name + "_" + what, value, unit);
  };
  add("frame_ms_median", medianOf(seen.frames.ms), "ms");
  add("frame_ms_worst", worstOf(seen.frames.ms), "ms");
  add("through_frame_ms_median", medianOf(through.frames.ms), "ms, seen through");
  add("through_frame_ms_worst", worstOf(through.frames.ms), "ms, seen through");
  const double processor = std::max(medianOf(seen.frames.processorMs), medianOf(through.frames.processorMs));
  const double processorWorst =
      std::max(worstOf(seen.frames.processorMs), worstOf(through.frames.processorMs));
  add("frame_processor_ms_median", processor, "ms of processor time");
  add("frame_processor_ms_worst", processorWorst, "ms of processor time");
  add("scene_processor_ms_median", medianOf(peer.processorMs), "ms of processor time");
  add("scene_ms_median", medianOf(peer.ms), "ms, QGraphicsScene");
  add("scene_ms_worst", worstOf(peer.ms), "ms, QGraphicsScene");
  add("ready_ms", seen.ready, "ms until a board that was set is seen");
  add("settled_ms", std::max(seen.settled, through.settled), "ms until the last picture is exact");
  worst.median = std::max({worst.median, medianOf(seen.frames.ms), medianOf(through.frames.ms)});
  worst.worst = std::max({worst.worst, worstOf(seen.frames.ms), worstOf(through.frames.ms)});
  worst.handler = std::max({worst.handler, seen.load, through.load, worst.worst});
  worst.ratio = std::min(worst.ratio, medianOf(peer.ms) / medianOf(seen.frames.ms));
}

} // namespace

int main(int argc, char** argv) {
  auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  if (arguments->files.empty()) {
    const auto largest = largestDemoBoard();
    if (!largest) return noBoard();
    arguments->files.push_back(*largest);
  }
  // The software renderer, without a display, and nobody's settings.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir folder;
  qputenv("XDG_CONFIG_HOME", folder.filePath(QStringLiteral("own-settings")).toLocal8Bit());
  QApplication::setStyle(QStringLiteral("Fusion"));
  const QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("netmend-benchmark"));
  auto imported = importBoard(std::filesystem::path(arguments->files.front()));
  if (!imported) {
    std::cerr << imported.error().text() << '\n';
    return 3;
  }
  Report report(*arguments);
  report.object()["file"] = arguments->files.front();
  try {
    const DemoStore store = makeDemoStore(folder.path().toStdString());
    measureStart(store, report);
    measureEntry(store, report);
  } catch (const std::runtime_error& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  Worst worst;
  measure("file", std::make_shared<const Board>(std::move(imported->board)), report, worst);
  measure("large", std::make_shared<const Board>(largeBoard(20'000, 60'000)), report, worst);
  report.add("frame_ms_median", worst.median, "ms (the slower board, seen through or not)", 16.7);
  report.add("frame_ms_worst", worst.worst, "ms");
  report.add("handler_worst_ms", worst.handler, "ms, boards being set included", longestHandler);
  report.add("scene_vs_ours", worst.ratio, "of our median (the board with the smaller gain)");
  return report.finish();
}
