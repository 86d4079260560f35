// That the hand finds what it looks for: slow handlers, dialogs that block, and what is lost.
#include <catch2/catch.hpp>

#include <chrono>
#include <ctime>
#include <fstream>
#include <functional>
#include <thread>

#include <QDialog>
#include <QTemporaryDir>
#include <QTest>

#include "ledger.h"
#include "play.h"

using namespace netmend;
using namespace netmend::testing;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

const fs::path device = fs::path(NETMEND_SOURCE_DIR) / "demo" / "device";
const QEvent::Type asked = static_cast<QEvent::Type>(QEvent::User + 17);

/// So much of this thread's own processor time, however busy the machine is.
void compute(std::chrono::nanoseconds time) {
  const auto now = [] {
    timespec at{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &at);
    return std::chrono::seconds(at.tv_sec) + std::chrono::nanoseconds(at.tv_nsec);
  };
  const auto from = now();
  while (now() - from < time) {
  }
}

/// Does this at an event of its own.
class Handling : public QObject {
public:
  Handling(QObject* parent, std::function<void()> act) : QObject(parent), act_(std::move(act)) {
    setObjectName(QStringLiteral("handling"));
  }
  bool event(QEvent* event) override {
    if (event->type() == asked || event->type() == QEvent::Timer) act_();
    return QObject::event(event);
  }

private:
  std::function<void()> act_;
};

/// The first key press that is delivered to anybody takes so long.
class SlowKey : public QObject {
public:
  SlowKey(QObject* parent, std::function<void()> act) : QObject(parent), act_(std::move(act)) {
    qApp->installEventFilter(this);
  }
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::KeyPress && act_) std::exchange(act_, nullptr)();
    return QObject::eventFilter(watched, event);
  }

private:
  std::function<void()> act_;
};

std::vector<Handler> overBy(const std::function<void()>& act, const HandlerLimits& limits) {
  EventWatch& watch = eventWatch();
  watch.startAnew(limits);
  watch.doing("a test");
  Handling handling(nullptr, act);
  QEvent event(asked);
  QCoreApplication::sendEvent(&handling, &event);
  return watch.over();
}

Played playOverHook(const std::function<void(BenchWindow&)>& opened, const HandlerLimits& limits) {
  return letPlay({.seed = 5,
                  .events = 25,
                  .boards = {device / "tide-logger.netmend-board.json"},
                  .limits = limits,
                  .opened = opened});
}

/// A window over a store of its own, with the ledger beside it.
struct LedgerRig {
  LedgerRig() {
    static_cast<void>(eventWatch());
    open();
  }
  void open() {
    auto job = BenchJob::open({fs::path(NETMEND_SOURCE_DIR) / "data", store});
    REQUIRE(job);
    window = std::make_unique<BenchWindow>(std::move(*job));
    ledger.follow(*window);
  }
  /// A typed connector with these readings at its first pins.
  void walk(const std::vector<std::string>& values) {
    BenchJob& job = window->desk().job;
    if (job.job() == nullptr) REQUIRE(job.bookIn());
    if (job.board() == nullptr) REQUIRE(job.useConnector("J1 8"));
    for (const std::string& value : values)
      REQUIRE(window->desk().walk.type(value));
    ledger.delivered();
  }
  [[nodiscard]] JobBook other(BookUse use) const {
    auto book = JobBook::open(store / "jobs.netmend-book", use);
    REQUIRE(book);
    return std::move(*book);
  }
  [[nodiscard]] JobId job() const { return window->desk().job.job()->id; }

  QTemporaryDir folder;
  fs::path store = folder.path().toStdString();
  Ledger ledger;
  std::unique_ptr<BenchWindow> window;
};

} // namespace

TEST_CASE("a handler is over its limit by its thread's processor time, not by time in which it waits") {
  const HandlerLimits limits{100ms, 60s};
  CHECK(overBy([] { compute(70ms); }, limits).empty());
  CHECK(overBy([] { std::this_thread::sleep_for(150ms); }, limits).empty());
  const auto over = overBy([] { compute(110ms); }, limits);
  REQUIRE(over.size() == 1);
  CHECK(over.front().work >= 110ms);
  CHECK(over.front().receiver == "QObject handling");
  CHECK(over.front().kind == asked);
  CHECK(over.front().during == "a test");
}

TEST_CASE("a handler is over its other limit by the clock, however little it computes") {
  const HandlerLimits limits{60s, 1s};
  CHECK(overBy([] { std::this_thread::sleep_for(50ms); }, limits).empty());
  const auto over = overBy([] { std::this_thread::sleep_for(1010ms); }, limits);
  REQUIRE(over.size() == 1);
  CHECK(over.front().clock >= 1010ms);
  CHECK(over.front().work < 500ms);
}

TEST_CASE("what is delivered within a handler counts as part of that") {
  const auto over = overBy(
      [] {
        Handling inner(nullptr, [] { compute(60ms); });
        for (int i = 0; i < 2; ++i) {
          QEvent event(asked);
          QCoreApplication::sendEvent(&inner, &event);
        }
      },
      {100ms, 60s});
  REQUIRE(over.size() == 1);
  CHECK(over.front().work >= 120ms);
}

TEST_CASE("what another thread delivers to its own objects is not the window's") {
  EventWatch& watch = eventWatch();
  watch.startAnew({20ms, 60s});
  std::thread([] {
    Handling handling(nullptr, [] { compute(60ms); });
    QEvent event(asked);
    QCoreApplication::sendEvent(&handling, &event);
  }).join();
  CHECK(watch.over().empty());
  CHECK(watch.deliveries() == 0);
}

TEST_CASE("a dialog that blocks is found, and left by Escape") {
  EventWatch& watch = eventWatch();
  watch.startAnew();
  Handling handling(nullptr, [] {
    QDialog dialog;
    dialog.exec();
  });
  QEvent event(asked);
  QCoreApplication::sendEvent(&handling, &event);
  REQUIRE_FALSE(watch.waiting().empty());
  CHECK(watch.waiting().front().kind == asked);
  watch.startAnew();
  // One that is only shown is none.
  Handling shows(nullptr, [] {
    auto* dialog = new QDialog;
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
  });
  QCoreApplication::sendEvent(&shows, &event);
  QTest::qWait(250); // twice as long as the lookout looks again
  CHECK(watch.waiting().empty());
  QApplication::closeAllWindows();
}

TEST_CASE("the hand finds a timer's handler that computes for a second, and names it") {
  const Played played = playOverHook(
      [](BenchWindow& window) {
        auto* busy = new Handling(&window, [done = false]() mutable {
          if (!std::exchange(done, true)) compute(1s);
        });
        busy->startTimer(5);
      },
      {});
  REQUIRE_FALSE(played.over.empty());
  // Once for each of the two windows: the second one sees whether it opens anew.
  for (const Handler& over : played.over) {
    CHECK(over.work >= 1s);
    CHECK(over.kind == QEvent::Timer);
    CHECK(over.receiver == "QObject handling of netmend::BenchWindow");
  }
  CHECK(played.lost.empty());
}

TEST_CASE("the hand finds a key that is blocked for a second, and says at which key it was") {
  const Played played =
      playOverHook([](BenchWindow& window) { new SlowKey(&window, [] { compute(1s); }); }, {});
  REQUIRE(played.over.size() == 1);
  CHECK(played.over.front().work >= 1s);
  CHECK(played.over.front().kind == QEvent::KeyPress);
  CHECK_THAT(played.over.front().during, Catch::Contains("key "));
}

TEST_CASE("the hand finds a key that waits longer than the clock allows, though nothing is computed") {
  const auto waits = [](std::chrono::milliseconds time) {
    return playOverHook(
        [time](BenchWindow& window) { new SlowKey(&window, [time] { std::this_thread::sleep_for(time); }); },
        {60s, 1500ms});
  };
  CHECK(waits(100ms).over.empty());
  const Played played = waits(1600ms);
  REQUIRE(played.over.size() == 1);
  CHECK(played.over.front().clock >= 1600ms);
  CHECK(played.over.front().work < 1s);
}

TEST_CASE("what was shown as taken is in the file, undo and redo included") {
  LedgerRig rig;
  rig.walk({"450", "OL", "470"});
  CHECK(rig.ledger.taken() == 3);
  rig.ledger.check(rig.store);
  REQUIRE(rig.window->desk().job.undo());
  rig.ledger.delivered();
  rig.ledger.check(rig.store);
  REQUIRE(rig.window->desk().job.redo());
  rig.ledger.delivered();
  rig.ledger.check(rig.store);
  CHECK(rig.ledger.takenBack() == 1);
  rig.window->desk().walk.setGood(true);
  rig.walk({"451", "452"});
  rig.ledger.check(rig.store);
  REQUIRE(rig.window->desk().walk.keepGood());
  rig.ledger.delivered();
  rig.ledger.check(rig.store);
  // Also in another window.
  rig.window.reset();
  rig.open();
  rig.window->restore();
  rig.ledger.delivered();
  rig.ledger.check(rig.store);
  CHECK(rig.ledger.faults() == std::vector<std::string>{});
}

TEST_CASE("a reading that goes from the book behind the window's back is found") {
  LedgerRig rig;
  rig.walk({"450", "460"});
  const JobReadingId last = rig.window->desk().job.job()->readings.back().id;
  REQUIRE(rig.other(BookUse::change).takeBack(rig.job(), last));
  rig.ledger.check(rig.store);
  REQUIRE(rig.ledger.faults().size() == 1);
  CHECK_THAT(rig.ledger.faults().front(), Catch::Contains("lost: ") && Catch::Contains("J1.2"));
}

TEST_CASE("a reading that goes from window and book without anybody taking it back is found") {
  LedgerRig rig;
  rig.walk({"450", "460"});
  BenchJob& job = rig.window->desk().job;
  REQUIRE(rig.other(BookUse::change).takeBack(rig.job(), job.job()->readings.back().id));
  REQUIRE(job.openJob(rig.job()));
  rig.ledger.delivered();
  REQUIRE(rig.ledger.faults().size() == 1);
  CHECK_THAT(rig.ledger.faults().front(), Catch::Contains("nobody took it back") && Catch::Contains("J1.2"));
}

TEST_CASE("what somebody writes into a job, a good walk or the list of jobs besides is found") {
  LedgerRig rig;
  rig.walk({"450"});
  rig.window->desk().walk.setGood(true);
  rig.walk({"451"});
  REQUIRE(rig.window->desk().walk.keepGood());
  rig.ledger.delivered();
  rig.ledger.check(rig.store);
  REQUIRE(rig.ledger.faults().empty());
  JobBook book = rig.other(BookUse::change);
  SECTION("the job") {
    auto job = book.job(rig.job());
    REQUIRE(job);
    job->symptom = "something else";
    REQUIRE(book.updateJob(*job));
  }
  SECTION("a good walk") {
    const auto walks = book.knownGoodWalks(rig.window->desk().job.board()->board->info.uuid);
    REQUIRE(walks);
    REQUIRE(book.takeBackKnownGoodWalk(walks->front()));
  }
  SECTION("another job") {
    REQUIRE(book.addJob({}));
  }
  rig.ledger.check(rig.store);
  CHECK(rig.ledger.faults().size() == 1);
}

TEST_CASE("a book with a broken page is not sound") {
  LedgerRig rig;
  rig.walk({"450", "460"});
  rig.window.reset();
  const fs::path path = rig.store / "jobs.netmend-book";
  CHECK(unsound(path).empty());
  const auto size = fs::file_size(path);
  std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
  // Pages of 4096 bytes (SQLite's file format, 1.2): all but the first, which is the schema's.
  file.seekp(4096);
  file << std::string(size - 4096, '\x55');
  file.close();
  CHECK_FALSE(unsound(path).empty());
}
