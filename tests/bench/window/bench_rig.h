#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include <QApplication>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QTemporaryDir>
#include <QTest>
#include <QWidget>

#include "drawing/gui.h"
#include "netmend/bench/window/bench_window.h"

namespace netmend::testing {

/// Events that took longer than the window may ever stand still.
struct SlowEvents {
  static constexpr qint64 most = 50; ///< ms
  qint64 worst = 0;
  QString what;
};

/// The application of these tests: it times every event handler.
class TimedApplication : public QApplication {
public:
  using QApplication::QApplication;
  bool notify(QObject* receiver, QEvent* event) override {
    QElapsedTimer timer;
    timer.start();
    const auto type = event->type();
    const QString name =
        receiver->objectName() + QLatin1Char(' ') + QLatin1String(receiver->metaObject()->className());
    ++depth_;
    const bool done = QApplication::notify(receiver, event);
    --depth_;
    // What the outermost handler took counts: those within are part of it.
    if (depth_ == 0 && timer.elapsed() > slow.worst) {
      slow.worst = timer.elapsed();
      slow.what = QStringLiteral("%1, event %2").arg(name).arg(static_cast<int>(type));
    }
    return done;
  }
  SlowEvents slow;

private:
  int depth_ = 0;
};

/// A bench window over a store of its own, shown offscreen.
struct BenchRig {
  QTemporaryDir folder;
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
    window->resize(1280, 800);
    window->show();
    QApplication::setActiveWindow(window.get());
    wait([] { return false; }, 50);
  }

  /// Runs the event loop until `done` or the time is up; whether it was done.
  static bool wait(const std::function<bool()>& done, int milliseconds = 10'000) {
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
  }
};

} // namespace netmend::testing
