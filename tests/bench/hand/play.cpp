#include "play.h"

#include <cstdio>
#include <memory>
#include <stdexcept>

#include <QElapsedTimer>
#include <QSettings>
#include <QTemporaryDir>

#include "bench/language/language.h"
#include "drawing/gui.h"
#include "hand.h"
#include "kit.h"
#include "ledger.h"
#include "netmend/probing/walk_file.h"

namespace netmend::testing {

namespace {

namespace fs = std::filesystem;

const fs::path device = fs::path(NETMEND_SOURCE_DIR) / "demo" / "device";

/// What eight good boards of the demo's device read.
void keepGoodWalks(const fs::path& store) {
  auto book = JobBook::open(store / "jobs.netmend-book", BookUse::make);
  if (!book) throw std::runtime_error(book.error().text());
  for (int i = 1; i <= 8; ++i) {
    const auto walk = readWalkFile(device / ("good-" + std::to_string(i) + ".netmend-walk.json"));
    if (!walk) throw std::runtime_error(walk.error().text());
    if (const auto kept = book->addKnownGoodWalk(*walk); !kept) throw std::runtime_error(kept.error().text());
  }
}

/// A window, closed and opened again over the same store.
class Bench {
public:
  explicit Bench(const Play& play) : play_(play) {
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder_.path());
    QApplication::setOrganizationName(QStringLiteral("netmend-test"));
    QApplication::setApplicationName(QStringLiteral("hand"));
    speak(QStringLiteral("en"));
    QLocale::setDefault(QLocale::system());
    store = fs::path(folder_.path().toStdU16String()) / "store";
    fs::create_directories(store);
    keepGoodWalks(store);
    open();
  }
  ~Bench() { close(); }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  void open() {
    auto job = BenchJob::open({fs::path(NETMEND_SOURCE_DIR) / "data", store});
    if (!job) throw std::runtime_error(job.error().text());
    window = std::make_unique<BenchWindow>(std::move(*job));
    window->resize(1280, 800);
    ledger.follow(*window);
    window->restore();
    window->show();
    QApplication::setActiveWindow(window.get());
    for (int i = 0; i < 20; ++i)
      QApplication::processEvents(QEventLoop::AllEvents, 10);
    if (play_.opened) play_.opened(*window);
  }
  void close() {
    if (window) window->close();
    window.reset();
  }
  [[nodiscard]] QString folder() const { return folder_.path(); }

  fs::path store;
  Ledger ledger;
  std::unique_ptr<BenchWindow> window;

private:
  const Play& play_;
  QTemporaryDir folder_{QDir::tempPath() + QStringLiteral("/netmend-hand-XXXXXX")};
};

/// Of the platform without a display no more is asked.
void sayWhatMatters(QtMsgType, const QMessageLogContext&, const QString& text) {
  if (!text.startsWith(QStringLiteral("This plugin does not support")))
    std::fprintf(stderr, "%s\n", qPrintable(text));
}

/// Photos are written beside the event loop.
void letSettle() {
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < 300)
    QApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents, 20);
}

} // namespace

EventWatch& eventWatch() {
  needApplication<EventWatch>();
  return *static_cast<EventWatch*>(qApp);
}

Played letPlay(const Play& play) {
  EventWatch& watch = eventWatch();
  watch.startAnew(play.limits);
  qInstallMessageHandler(sayWhatMatters);
  Bench bench(play);
  watch.delivered = [&] { bench.ledger.delivered(watch.doing()); };
  HandKit kit;
  for (const fs::path& board : play.boards)
    kit.boards << QString::fromStdU16String(board.u16string());
  kit.other = filesToDrop(bench.folder(), kit.boards.front());
  Hand hand(watch, play.seed, std::move(kit));
  hand.at(*bench.window);
  const std::size_t kinds = play.boards.size() + 2; // one is typed, one is drawn
  const int eventsOfOne = std::max(1, play.events / static_cast<int>(kinds));
  std::size_t board = 0;
  int checked = 0;
  int reopened = 0;
  while (hand.events() < play.events) {
    if (hand.events() >= static_cast<int>(board) * eventsOfOne) hand.beginBoard(board++ % kinds);
    hand.act();
    if (hand.events() - checked >= play.checkEvery) {
      checked = hand.events();
      letSettle();
      bench.ledger.check(bench.store);
    }
    if (hand.events() - reopened >= play.reopenEvery) {
      reopened = hand.events();
      bench.close();
      bench.ledger.check(bench.store);
      bench.open();
      hand.at(*bench.window);
    }
  }
  letSettle();
  bench.ledger.check(bench.store);
  bench.close();
  bench.ledger.check(bench.store);
  // It opens anew with what it was left with.
  bench.open();
  bench.ledger.check(bench.store);
  bench.close();
  watch.delivered = nullptr;
  return {hand.events(),       watch.deliveries(),    bench.ledger.taken(),  bench.ledger.takenBack(),
          bench.ledger.come(), bench.ledger.checks(), watch.mostWork(),      watch.longest(),
          watch.over(),        watch.waiting(),       bench.ledger.faults(), hand.lately()};
}

} // namespace netmend::testing
