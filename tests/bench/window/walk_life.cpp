// A bench window in a process of its own in which a connector is walked as fast as it goes, by keys and by a
// linked meter, until the process is killed: walk_life STORE SEED. What the screen has shown is told on
// standard output.
#include <array>
#include <initializer_list>
#include <iostream>
#include <random>
#include <unistd.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QLabel>
#include <QTest>

#include "bench/window/bench_window.h"
#include "meter/simulated_meter.h"
#include "walk_life.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// One write a line: it arrives whole or not at all.
void say(std::initializer_list<std::string_view> words) {
  std::string line;
  for (const std::string_view word : words) {
    if (!line.empty()) line += '\t';
    line += word;
  }
  line += '\n';
  if (::write(STDOUT_FILENO, line.data(), line.size()) != static_cast<ssize_t>(line.size())) ::_exit(5);
}

[[noreturn]] void giveUp(const std::string& why) {
  say({life::failed, why});
  ::_exit(4);
}

/// Sees a widget being painted.
class PaintWitness : public QObject {
public:
  explicit PaintWitness(QWidget& widget) { widget.installEventFilter(this); }
  int paints = 0;

protected:
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::Paint) ++paints;
    return false;
  }
};

template <class Done> bool wait(Done done, int milliseconds = 60'000) {
  QElapsedTimer timer;
  timer.start();
  while (!done()) {
    if (timer.elapsed() > milliseconds) return false;
    QApplication::processEvents(QEventLoop::AllEvents, 5);
  }
  // Whatever painting has begun is on the screen.
  QApplication::processEvents();
  return true;
}

class Technician {
public:
  Technician(BenchWindow& window, unsigned seed)
      : window_(window), desk_(window.desk()), random_(seed), verdict_(label("verdict")),
        due_(label("duePoint")), verdictWitness_(verdict_), dueWitness_(due_) {
    QObject::connect(&desk_.walk, &BenchWalk::taken, [this] { ++taken_; });
  }

  void open() {
    if (!wait([this] { return !desk_.job.openingBoard(); })) giveUp("the board does not open");
    if (desk_.job.board() == nullptr) {
      type("J4, 60 pins");
      press(Qt::Key_Return);
      if (desk_.job.board() == nullptr) giveUp("the connector was not taken");
    }
    // A walk goes on where it was left, with the keyboard where the next reading belongs.
    if (desk_.walk.walk(false).readings.empty()) window_.go(Station::walk);
    if (window_.station() != Station::walk) giveUp("another station than before");
    if (!desk_.walk.conditionKnown()) press(Qt::Key_Return);
    const Job* job = desk_.job.job();
    say({life::opened, job != nullptr ? job->number : "-",
         std::to_string(desk_.walk.walk(false).readings.size()),
         std::to_string(desk_.walk.walk(true).readings.size())});
    window_.linkMeter(QString::fromStdString(meter_.address()));
    if (!wait([this] { return window_.meter()->status().state == LinkState::ready; }))
      giveUp("no meter: " + window_.message().toStdString());
  }

  void act() {
    if (!desk_.walk.due()) {
      if (good() && dice(2) == 0) return keep();
      for (int i = 0; i < 10; ++i)
        press(Qt::Key_B);
      return;
    }
    switch (dice(40)) {
    case 0:
      return press(Qt::Key_G);
    case 1:
      return keep();
    case 2:
    case 3:
      return press(Qt::Key_S);
    case 4:
    case 5:
      return press(Qt::Key_B);
    case 6:
    case 7:
    case 8:
      return undo();
    case 9:
    case 10:
      return take([] { press(Qt::Key_O); });
    case 11:
      return touch(false);
    case 12:
    case 13:
    case 14:
    case 15:
    case 16:
      return touch(true);
    default:
      return take([this] {
        type(std::to_string(100 + dice(1900)));
        press(Qt::Key_Return);
      });
    }
  }

private:
  QLabel& label(const char* name) const {
    auto* found = window_.findChild<QLabel*>(QLatin1String(name));
    if (found == nullptr) giveUp(std::string("no label ") + name);
    return *found;
  }
  unsigned dice(unsigned sides) { return static_cast<unsigned>(random_()) % sides; }
  /// For whoever looks into why it went wrong.
  [[nodiscard]] std::string state() const {
    const QWidget* focus = QApplication::focusWidget();
    return QStringLiteral("message \"%1\", keyboard at %2 %3, due \"%4\", verdict \"%5\", meter \"%6\"")
        .arg(window_.message(),
             focus != nullptr ? QLatin1String(focus->metaObject()->className()) : QLatin1String("none"),
             focus != nullptr ? focus->objectName() : QString(), due_.text(), verdict_.text(),
             label("live").text())
        .toStdString();
  }
  [[nodiscard]] bool good() const { return desk_.walk.good(); }
  [[nodiscard]] std::string_view which() const { return good() ? "G" : "B"; }

  static void press(Qt::Key key) {
    QWidget* focus = QApplication::focusWidget();
    if (focus == nullptr) giveUp("nothing has the keyboard");
    QTest::keyClick(focus, key);
  }
  static void type(const std::string& text) {
    QWidget* focus = QApplication::focusWidget();
    if (focus == nullptr) giveUp("nothing has the keyboard");
    QTest::keyClicks(focus, QString::fromStdString(text));
  }

  /// Does something that takes a reading, and tells it once it stands on the screen.
  template <class Act> void take(Act act) {
    const int before = taken_;
    const int paints = verdictWitness_.paints;
    act();
    if (!wait([&] { return taken_ > before && verdictWitness_.paints > paints; }))
      giveUp(std::string(taken_ > before ? "taken and not shown: " : "not taken: ") + state());
    const QStringList shown = verdict_.text().split(QStringLiteral("   "));
    if (taken_ != before + 1 || shown.size() != 3) giveUp("shown: " + verdict_.text().toStdString());
    say({life::taken, which(), shown[0].toStdString(), shown[1].toStdString()});
  }

  /// With the linked meter: by key as soon as there is a value, or without as soon as it is settled.
  void touch(bool byKey) {
    // Lifted long enough to be another touch, as the meter has measured it; a key asks for no such thing.
    if (!byKey) {
      bool lifted = false;
      meter_.play({{std::nullopt, std::chrono::milliseconds(250), {}}}, [&] { lifted = true; });
      if (!wait([&] { return lifted; })) giveUp("the meter is not asked: " + state());
    }
    meter_.touch(0.1 + 0.001 * dice(1900));
    take([&] {
      if (!byKey) return;
      const int before = taken_;
      wait([&] { return taken_ > before; }, 60);
      if (taken_ == before) press(Qt::Key_Space);
      // What the key took may have been OL: before that is painted, the touch must not be taken as well.
      meter_.lift();
    });
    meter_.lift();
  }

  void undo() {
    const std::size_t bad = desk_.walk.walk(false).readings.size();
    const std::size_t good = desk_.walk.walk(true).readings.size();
    const int paints = dueWitness_.paints;
    say({life::undoing});
    press(Qt::Key_U);
    // What was done last may have been done at the other board: it is shown then.
    const std::size_t badNow = desk_.walk.walk(false).readings.size();
    const std::size_t goodNow = desk_.walk.walk(true).readings.size();
    if (badNow == bad && goodNow == good) return say({life::asBefore});
    if (!wait([&] { return dueWitness_.paints > paints; })) giveUp("undone and not shown");
    say({goodNow > good ? life::unkept : life::undone, badNow < bad ? "B" : "G"});
  }

  void keep() {
    if (!good() || desk_.walk.walk(true).readings.empty()) return;
    say({life::keeping});
    press(Qt::Key_K);
    QApplication::processEvents();
    if (!desk_.walk.walk(true).readings.empty()) giveUp("not kept: " + window_.message().toStdString());
    say({life::kept});
  }

  BenchWindow& window_;
  Desk desk_;
  std::mt19937 random_;
  SimulatedMeter meter_;
  QLabel& verdict_;
  QLabel& due_;
  PaintWitness verdictWitness_;
  PaintWitness dueWitness_;
  int taken_ = 0;
};

} // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("netmend-test"));
  QApplication::setApplicationName(QStringLiteral("walk-life"));
  auto job = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data", argv[1]});
  if (!job) giveUp(job.error().text());
  BenchWindow window(std::move(*job));
  window.resize(1280, 800);
  window.restore();
  window.show();
  QApplication::setActiveWindow(&window);
  static_cast<void>(window.page(Station::walk)); // pages are made when they are first wanted
  Technician technician(window, static_cast<unsigned>(std::stoul(argv[2])));
  technician.open();
  while (true)
    technician.act();
}
