#pragma once

#include <catch2/catch.hpp>

#include <QApplication>
#include <QElapsedTimer>
#include <QSettings>
#include <QTest>

#include <functional>

#include "bench/demo_cli.h"
#include "bench/stations/station.h"
#include "drawing/gui.h"
#include "netmend/casework/good_walks.h"

namespace netmend::testing {

/// Waits for it with the event loop running.
inline bool waitFor(const std::function<bool()>& what, int seconds = 60) {
  QElapsedTimer timer;
  timer.start();
  while (!what()) {
    if (timer.elapsed() > seconds * 1000) return false;
    QTest::qWait(5);
  }
  return true;
}

/// The demo's device on the bench: eight good walks in the book, the bad board walked and probed as demo/run
/// does it, and the line bridged or not.
class DemoDesk {
public:
  enum class Until { walked, probed };

  explicit DemoDesk(Until until = Until::probed) {
    needApplication<QApplication>();
    QCoreApplication::setOrganizationName(QStringLiteral("netmend-test"));
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope,
                       QString::fromStdString(folder.file("settings")));
    auto opened = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data", folder.path});
    REQUIRE(opened);
    job = std::move(*opened);
    walk = std::make_unique<BenchWalk>(*job);
    fault = std::make_unique<BenchFault>(*job, *walk);
    drawing = std::make_unique<BenchDrawing>(*job);
    QObject::connect(job.get(), &BenchJob::failed, [this](const QString& text) { failures << text; });
    keepGoodWalks();
    number = bookIn(until);
    open(number);
  }

  [[nodiscard]] std::string book() const { return folder.file("jobs.netmend-book"); }
  [[nodiscard]] Desk desk() const { return {*job, *walk, *fault, *drawing}; }

  /// Another job just like it.
  std::string bookIn(Until until) const {
    const std::string made =
        cli({"job", "new", "--book", book(), "--customer", "North pier, harbour office", "--device",
             "Tide logger", "--serial", "TL-0417", "--board", deviceFile("tide-logger.netmend-board.json"),
             "--symptom", "Third column of the keypad is dead", "--notes", "Wants it back for Friday's tide"})
            .at("job");
    cli({"job", "add", "--book", book(), "--job", made, "--walk", deviceFile("faulty.netmend-walk.json")});
    if (until == Until::probed)
      for (const char* reading : {"C28.1 0.649", "pad of J4.9 OL"})
        cli({"job", "add", "--book", book(), "--job", made, "--purpose", "check", "--reading", reading});
    return made;
  }

  void open(const std::string& which) {
    const auto found = job->book().jobNumbered(which);
    REQUIRE(found);
    REQUIRE(job->openJob(found->id));
    // What good boards read is worked out beside the event loop, and all else follows from it.
    REQUIRE(waitFor([this] { return job->board() != nullptr && job->expected().size() > 0; }));
    for (const PartId part : walk->partsToWalk())
      if (job->board()->board->parts.find(part)->reference == "J4") walk->setPart(part);
    settle();
  }
  void settle() {
    REQUIRE(waitFor([this] { return !job->weighing() && !fault->working(); }));
    QApplication::processEvents();
  }

  const TemporaryFolder folder;
  std::string number;
  std::unique_ptr<BenchJob> job;
  std::unique_ptr<BenchWalk> walk;
  std::unique_ptr<BenchFault> fault;
  std::unique_ptr<BenchDrawing> drawing;
  QStringList failures;

private:
  void keepGoodWalks() const {
    auto opened = JobBook::open(book(), BookUse::make);
    REQUIRE(opened);
    for (int i = 1; i <= 8; ++i) {
      const auto walks =
          loadGoodWalks({deviceFile("good-" + std::to_string(i) + ".netmend-walk.json")}, nullptr);
      REQUIRE(walks);
      REQUIRE(opened->addKnownGoodWalk(walks->front()));
    }
  }
};

/// A page on the screen with the keyboard in it; what it tells is kept.
template <class Page> class ShownPage {
public:
  explicit ShownPage(const DemoDesk& demo) : page(demo.desk()) {
    QObject::connect(&page, &StationPage::told, [this](const QString& text, bool isError) {
      told = text;
      error = isError;
    });
    page.resize(1240, 620);
    page.show();
    page.activateWindow();
    REQUIRE(waitFor([this] { return page.isActiveWindow(); }));
    page.arrive();
  }
  template <class Widget> Widget* find(const char* name) const {
    auto* found = page.template findChild<Widget*>(QString::fromLatin1(name));
    INFO(name);
    REQUIRE(found != nullptr);
    return found;
  }
  /// Where the keyboard is, as it is for a person.
  static void key(int code, Qt::KeyboardModifiers modifiers = {}) {
    REQUIRE(QApplication::focusWidget() != nullptr);
    QTest::keyClick(QApplication::focusWidget(), static_cast<Qt::Key>(code), modifiers);
  }
  static void type(const char* text, bool enter = true) {
    REQUIRE(QApplication::focusWidget() != nullptr);
    QTest::keyClicks(QApplication::focusWidget(), QString::fromUtf8(text));
    if (enter) key(Qt::Key_Return);
  }
  /// For a person to look at: only where NETMEND_PICTURES names a folder.
  void picture(const char* name) {
    if (!qEnvironmentVariableIsSet("NETMEND_PICTURES")) return;
    QApplication::processEvents();
    const QString path =
        qEnvironmentVariable("NETMEND_PICTURES") + QLatin1Char('/') + QString::fromLatin1(name);
    page.grab().save(path + QStringLiteral(".png"));
    const QPalette light = QApplication::palette();
    QPalette dark(QColor(0x2A, 0x2D, 0x30));
    dark.setColor(QPalette::Base, QColor(0x1C, 0x1E, 0x20));
    dark.setColor(QPalette::Highlight, QColor(0x56, 0xB4, 0xE9));
    dark.setColor(QPalette::HighlightedText, Qt::black);
    QApplication::setPalette(dark);
    page.setTheme(PictureTheme::dark);
    QApplication::processEvents();
    page.grab().save(path + QStringLiteral("-dark.png"));
    page.setTheme(PictureTheme::light);
    QApplication::setPalette(light);
  }

  Page page;
  QString told;
  bool error = false;
};

} // namespace netmend::testing
