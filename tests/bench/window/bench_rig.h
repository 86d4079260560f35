#pragma once

#include <array>
#include <fcntl.h>
#include <filesystem>
#include <functional>
#include <memory>
#include <sstream>
#include <unistd.h>

#include <sys/resource.h>

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QLabel>
#include <QTemporaryDir>
#include <QTest>
#include <QWidget>

#include "bench/window/bench_window.h"
#include "drawing/gui.h"

namespace netmend::testing {

/// Nanoseconds that this thread has computed, and that it has waited for a processor: Linux's schedstat
/// (Documentation/scheduler/sched-stats.rst).
struct ThreadTime {
  qint64 computed = 0;
  qint64 queued = 0;
  static ThreadTime now() {
    static const int file = ::open("/proc/thread-self/schedstat", O_RDONLY | O_CLOEXEC);
    std::array<char, 128> text{};
    ThreadTime out;
    if (::pread(file, text.data(), text.size() - 1, 0) > 0)
      std::istringstream(text.data()) >> out.computed >> out.queued;
    return out;
  }
};

/// Events that took longer than the window may ever stand still. What counts is this program's own work: a
/// disk that others keep busy may take longer to say that a reading is safe, though not for ever.
struct SlowEvents {
  /// ms of work. The goal is 50, which the benchmark of the window judges on a quiet machine: one that shares
  /// its processors counts some of others' time as ours.
  static constexpr qint64 most = 200;
  static constexpr qint64 mostWithDisk = 500; ///< ms, with waiting for what was asked for
  qint64 worst = 0;
  QString what;
  qint64 worstWithDisk = 0;
  QString whatWithDisk;

  void count(const ThreadTime& before, qint64 nanoseconds, const QString& event) {
    const ThreadTime after = ThreadTime::now();
    const auto keep = [&](qint64 taken, qint64& longest, QString& which) {
      if (taken / 1'000'000 <= longest) return;
      longest = taken / 1'000'000;
      which = event;
    };
    keep(after.computed - before.computed, worst, what);
    keep(nanoseconds - (after.queued - before.queued), worstWithDisk, whatWithDisk);
  }
};

/// The application of these tests: it times every event handler.
class TimedApplication : public QApplication {
public:
  using QApplication::QApplication;
  bool notify(QObject* receiver, QEvent* event) override {
    // What the outermost handler took counts: those within are part of it.
    if (depth_ > 0) return QApplication::notify(receiver, event);
    const auto type = event->type();
    mouseEvents += type == QEvent::MouseButtonPress || type == QEvent::MouseButtonDblClick;
    const QString name =
        receiver->objectName() + QLatin1Char(' ') + QLatin1String(receiver->metaObject()->className());
    QElapsedTimer timer;
    timer.start();
    const ThreadTime before = ThreadTime::now();
    ++depth_;
    const bool done = QApplication::notify(receiver, event);
    --depth_;
    slow.count(before, timer.nsecsElapsed(),
               QStringLiteral("%1, event %2").arg(name).arg(static_cast<int>(type)));
    return done;
  }
  SlowEvents slow;
  int mouseEvents = 0; ///< presses

private:
  int depth_ = 0;
};

/// A bench window over a store of its own, shown offscreen.
struct BenchRig {
  /// Not after the application, which is called after it.
  QTemporaryDir folder{QDir::tempPath() + QStringLiteral("/netmend-rig-XXXXXX")};
  std::unique_ptr<BenchWindow> window;
  int keys = 0;

  BenchRig() {
    needApplication<TimedApplication>();
    QApplication::setOrganizationName(QStringLiteral("netmend-test"));
    QApplication::setApplicationName(folder.path().section(QLatin1Char('/'), -1));
    open();
  }
  void open() {
    auto job = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data",
                               std::filesystem::path(folder.path().toStdU16String())});
    if (!job) throw std::runtime_error(job.error().text());
    window = std::make_unique<BenchWindow>(std::move(*job));
    bool pictured = false;
    QObject::connect(window.get(), &BenchWindow::firstPicture, window.get(), [&] { pictured = true; });
    window->resize(1280, 800);
    window->show();
    QApplication::setActiveWindow(window.get());
    // What waits for the first picture has been done then as well.
    if (!wait([&] { return pictured; })) throw std::runtime_error("the window is not painted");
    QObject::disconnect(window.get(), &BenchWindow::firstPicture, window.get(), nullptr);
    wait([] { return false; }, 50);
  }

  /// Runs the event loop until `done` or the time is up; whether it was done.
  static bool wait(const std::function<bool()>& done, int milliseconds = 60'000) {
    QElapsedTimer timer;
    timer.start();
    while (!done()) {
      if (timer.elapsed() > milliseconds) return false;
      QApplication::processEvents(QEventLoop::AllEvents, 10);
    }
    return true;
  }

  /// Keys go to whatever has the keyboard, as they do at the bench.
  void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
    ++keys;
    QTest::keyClick(target(), key, modifiers);
  }
  void type(const QString& text) {
    for (const QChar c : text) {
      ++keys;
      QTest::keyClick(target(), c.toLatin1());
    }
  }
  [[nodiscard]] QWidget* target() const {
    QWidget* focus = QApplication::focusWidget();
    return focus != nullptr ? focus : window.get();
  }
  [[nodiscard]] QString text(const char* label) const {
    const auto labels = window->findChildren<QLabel*>(QLatin1String(label));
    for (const QLabel* found : labels)
      if (found->isVisible()) return found->text();
    return {};
  }
  void fastEvents() const {
    const SlowEvents& slow = static_cast<TimedApplication*>(qApp)->slow;
    INFO("slowest handler: " << slow.worst << " ms, " << slow.what.toStdString());
    CHECK(slow.worst <= SlowEvents::most);
    INFO("longest with the disk: " << slow.worstWithDisk << " ms, " << slow.whatWithDisk.toStdString());
    CHECK(slow.worstWithDisk <= SlowEvents::mostWithDisk);
  }
};

} // namespace netmend::testing
