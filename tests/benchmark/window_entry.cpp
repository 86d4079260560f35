#include "window_entry.h"

#include <algorithm>
#include <ctime>
#include <functional>
#include <random>
#include <stdexcept>

#include <QApplication>
#include <QElapsedTimer>
#include <QKeyEvent>

#include "bench/window/bench_window.h"

namespace netmend::benchmarks {

namespace {

constexpr int entries = 120;
constexpr double mostMs = 20.0;

/// Counts the window's frames.
class FrameWitness : public QObject {
public:
  explicit FrameWitness(QWidget& window) { window.installEventFilter(this); }
  int frames = 0;

protected:
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::UpdateRequest) ++frames;
    return false;
  }
};

void waitUntil(const std::function<bool()>& done) {
  QElapsedTimer timer;
  timer.start();
  while (!done()) {
    if (timer.elapsed() > 60'000) throw std::runtime_error("the window does not get on");
    QApplication::processEvents(QEventLoop::AllEvents, 5);
  }
}

void press(int key, const QString& text = {}) {
  QWidget* focus = QApplication::focusWidget();
  if (focus == nullptr) throw std::runtime_error("nothing has the keyboard");
  QKeyEvent down(QEvent::KeyPress, key, Qt::NoModifier, text);
  QCoreApplication::sendEvent(focus, &down);
  QKeyEvent up(QEvent::KeyRelease, key, Qt::NoModifier, text);
  QCoreApplication::sendEvent(focus, &up);
}

double threadMilliseconds() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
}

struct Times {
  std::vector<double> durable;   ///< ms until it is in the book
  std::vector<double> drawn;     ///< and on the screen
  std::vector<double> processor; ///< of that, spent by this thread: waiting for disk and turn left out
};

/// The window at a walk: readings are typed and taken in turn, through the connector again and again.
Times enterMany(BenchWindow& window, std::mt19937& random) {
  Desk desk = window.desk();
  window.go(Station::walk);
  if (!desk.walk.conditionKnown()) press(Qt::Key_Return);
  FrameWitness witness(window);
  Times times;
  for (int i = 0; i < entries; ++i) {
    waitUntil([&] { return !desk.job.weighing() && !desk.fault.working(); });
    while (!desk.walk.due()) {
      const std::size_t points = desk.walk.points().size();
      for (std::size_t k = 0; k < points; ++k)
        press(Qt::Key_B);
    }
    const QString value = QString::number(300 + random() % 500);
    const bool typed = i % 2 == 0;
    if (typed)
      for (const QChar digit : value)
        press(digit.unicode(), QString(digit));
    // What was to be painted of that is painted before the clock starts.
    for (int k = 0; k < 10; ++k)
      QApplication::processEvents(QEventLoop::AllEvents, 5);
    const std::size_t before = desk.job.job() != nullptr ? desk.job.job()->readings.size() : 0;
    const int frames = witness.frames;
    ValueTaken taken;
    taken.value = value.toDouble() / 1000.0;
    const auto act = [&] {
      if (typed)
        press(Qt::Key_Return);
      else
        window.page(Station::walk).take(taken);
    };
    const double processorBefore = threadMilliseconds();
    double durable = 0;
    const double drawn = millisecondsOf([&] {
      durable = millisecondsOf(act);
      while (witness.frames == frames)
        QApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
    });
    if (desk.job.job() == nullptr || desk.job.job()->readings.size() != before + 1)
      throw std::runtime_error("a reading was not taken: " + window.message().toStdString());
    times.durable.push_back(durable);
    times.drawn.push_back(drawn);
    times.processor.push_back(threadMilliseconds() - processorBefore);
  }
  return times;
}

/// Eight boards that read a little different.
void keepGoodWalks(BenchJob& job, BenchWalk& walk, std::mt19937& random) {
  std::normal_distribution<double> spread(0.0, 0.004);
  Walk good;
  good.title = "J9";
  good.specimen = Specimen::good;
  good.boardUuid = job.board()->board->info.uuid;
  for (const PointState& state : walk.points())
    good.points.push_back(state.point);
  for (int i = 0; i < 8; ++i) {
    good.readings.clear();
    double value = 0.3;
    for (const ProbePoint& point : good.points) {
      Reading reading;
      reading.point = point;
      reading.value = (value += 0.002) + spread(random);
      good.readings.push_back(reading);
    }
    if (!job.keepGoodWalk(good)) throw std::runtime_error("a good walk is not kept");
  }
}

void add(const char* where, const Times& times, Report& report) {
  const auto line = [&](const char* what, double ms) {
    report.add(std::string("entry_") + where + what, ms, "ms");
  };
  line("_durable_ms_median", medianOf(times.durable));
  line("_processor_ms_median", medianOf(times.processor));
  line("_ms_median", medianOf(times.drawn));
  line("_ms_worst", *std::max_element(times.drawn.begin(), times.drawn.end()));
}

} // namespace

void measureEntry(const DemoStore& store, Report& report) {
  auto opened = BenchJob::open({std::filesystem::path(NETMEND_BENCHMARK_DIR) / "../../data", store.folder});
  if (!opened) throw std::runtime_error(opened.error().text());
  BenchWindow window(std::move(*opened));
  window.resize(1280, 800);
  window.show();
  QApplication::setActiveWindow(&window);
  const Desk desk = window.desk();
  std::mt19937 random(1);

  desk.job.openJob(store.job);
  waitUntil([&] { return desk.job.board() != nullptr && desk.job.expected().size() > 0; });
  const Times demo = enterMany(window, random);
  add("demo", demo, report);

  desk.job.closeJob();
  if (!desk.job.useConnector("J9, 200 pins, two rows")) throw std::runtime_error("no connector");
  keepGoodWalks(desk.job, desk.walk, random);
  waitUntil([&] { return desk.job.expected().size() > 0; });
  const Times large = enterMany(window, random);
  add("200_pins", large, report);

  const auto worstOf = [](const Times& times) {
    return *std::max_element(times.drawn.begin(), times.drawn.end());
  };
  report.add("entry_ms", std::max(medianOf(demo.drawn), medianOf(large.drawn)),
             "ms from Enter or value to durable and drawn (median of the slower connector)", mostMs);
  report.add("entry_ms_worst", std::max(worstOf(demo), worstOf(large)), "ms");
}

} // namespace netmend::benchmarks
