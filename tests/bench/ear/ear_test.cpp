#include <catch2/catch.hpp>

#include <QDialog>
#include <QPointer>
#include <QPushButton>
#include <QRegularExpression>
#include <QTextBrowser>

#include "bench/language/language.h"
#include "bench/window/bench_rig.h"
#include "bench/window/pedals.h"
#include "bench/window/sounds.h"
#include "meter/simulated_meter.h"

using namespace netmend;
using namespace netmend::testing;
using namespace std::chrono_literals;

namespace {

/// Writes down what would be heard. Values, which the other tests check, are `#`.
class Listener : public Speaker {
public:
  void openTones() override {}
  void openSpeech() override {}
  void close() override {}
  void play(Tone tone) override {
    log << (tone == Tone::inRange ? QStringLiteral("high")
            : tone == Tone::odd   ? QStringLiteral("low low")
                                  : QStringLiteral("three"));
  }
  void say(const QString& text) override {
    said << text;
    log << QString(text).replace(QRegularExpression(QStringLiteral("[0-9]+[.,][0-9]+")), QStringLiteral("#"));
  }
  QStringList log;
  QStringList said; ///< words as they are
};

/// A bench whose person sees nothing from the moment on at which the leads are in their hands.
struct Bench {
  Listener listener; ///< outlives the window
  BenchRig rig;
  SimulatedMeter meter;

  explicit Bench(const QString& connector) {
    rig.type(connector);
    rig.press(Qt::Key_Return);
    rig.press(Qt::Key_Return); // nothing is plugged in
    rig.window->sounds().use(listener);
    rig.press(Qt::Key_D, Qt::ControlModifier);
    rig.press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
    rig.window->linkMeter(QString::fromStdString(meter.address()));
    REQUIRE(rig.wait([&] { return rig.window->meter()->status().state == LinkState::ready; }));
  }
  /// What was heard of it, once it is at least so much.
  QStringList heard(const std::function<void()>& done, qsizetype sounds) {
    rig.wait([] { return false; }, 1); // what was said before is over
    listener.log.clear();
    done();
    CHECK(rig.wait([&] { return listener.log.size() >= sounds; }));
    return listener.log;
  }
  QStringList heardOfTouches(const std::vector<std::optional<double>>& values, qsizetype sounds) {
    std::vector<SimulatedTouch> touches;
    for (const auto& value : values)
      touches.push_back({value, 750ms, 250ms});
    bool played = false;
    const QStringList out = heard([&] { meter.play(touches, [&] { played = true; }); }, sounds);
    REQUIRE(rig.wait([&] { return played; }));
    return out;
  }
};

QDialog& askPedals(BenchRig& rig) {
  rig.press(Qt::Key_F9);
  auto* prompt = rig.window->findChild<QDialog*>(QStringLiteral("pedals"));
  REQUIRE(prompt != nullptr);
  REQUIRE(rig.wait([&] { return prompt->isVisible(); }));
  QApplication::setActiveWindow(prompt);
  return *prompt;
}

void choose(const QDialog& prompt, FootAct act) {
  QTest::mouseClick(prompt.findChild<QPushButton*>(QStringLiteral("pedal%1").arg(static_cast<int>(act) + 1)),
                    Qt::LeftButton);
}

QString shownAt(const QDialog& prompt, FootAct act) {
  return prompt.findChild<QPushButton*>(QStringLiteral("pedal%1").arg(static_cast<int>(act) + 1))->text();
}

void putAway(BenchRig& rig, QDialog& prompt) {
  QPointer<QDialog> gone(&prompt);
  prompt.close();
  REQUIRE(rig.wait([&] { return gone == nullptr; }));
  QApplication::setActiveWindow(rig.window.get());
  rig.window->page(rig.window->station()).arrive();
}

/// Take: F13, skip: F14, back: a mouse button.
void assignPedals(BenchRig& rig) {
  QDialog& prompt = askPedals(rig);
  choose(prompt, FootAct::take);
  QTest::keyClick(&prompt, Qt::Key_F13);
  choose(prompt, FootAct::skip);
  QTest::keyClick(&prompt, Qt::Key_F14);
  choose(prompt, FootAct::back);
  QTest::mouseClick(&prompt, Qt::ExtraButton3);
  putAway(rig, prompt);
}

struct Speaking {
  explicit Speaking(const char* code) {
    needApplication<TimedApplication>();
    speak(QString::fromLatin1(code));
  }
  ~Speaking() {
    speak(QStringLiteral("en"));
    QLocale::setDefault(QLocale::c());
  }
  Speaking(const Speaking&) = delete;
  Speaking& operator=(const Speaking&) = delete;
};

/// A good board and the job's one, of which pin 2 is shorted and pin 3 open, by ear and foot alone.
void walkByEar(const QStringList& expected) {
  Bench bench(QStringLiteral("J1, 4 pins"));
  BenchRig& rig = bench.rig;
  assignPedals(rig);
  const Desk desk = rig.window->desk();
  const auto foot = [&](Qt::Key key) { return [&rig, key] { rig.press(key); }; };
  QStringList log = bench.heard(foot(Qt::Key_G), 1);
  log += bench.heardOfTouches({0.420, 0.470, 0.520, 0.570}, 8);
  log += bench.heard(foot(Qt::Key_F13), 1); // keeps it
  CHECK(desk.job.goodWalks().size() == 1);
  REQUIRE(rig.wait([&] { return !desk.job.weighing(); }));
  log += bench.heardOfTouches({0.420, 0.003}, 4);
  log += bench.heard(foot(Qt::Key_F13), 2); // the meter shows OL, touching it or not
  log += bench.heard(foot(Qt::Key_F14), 1);
  log += bench.heard([&] { QTest::mouseClick(rig.target(), Qt::ExtraButton3); }, 1);
  log += bench.heardOfTouches({0.570}, 2);
  log += bench.heard(foot(Qt::Key_F13), 2); // nothing is due
  INFO(log.join(QLatin1Char('\n')).toStdString());
  CHECK(log == expected);
  CHECK(desk.job.job()->readings.size() == 4);
  CHECK(desk.walk.oddOnes().size() == 2);
}

} // namespace

TEST_CASE("a whole walk by ear and footswitch alone") {
  walkByEar({"Good board, pin 1.",
             "high",
             "pin 1, # volts, nothing to compare. Next: pin 2.",
             "high",
             "pin 2, # volts, nothing to compare. Next: pin 3.",
             "high",
             "pin 3, # volts, nothing to compare. Next: pin 4.",
             "high",
             "pin 4, # volts, nothing to compare. Good board walked. Take keeps it.",
             "Job's board, pin 1.",
             "high",
             "pin 1, # volts, in range. Next: pin 2.",
             "low low",
             "pin 2, # volts, short. Next: pin 3.",
             "low low",
             "pin 3, over limit, open. Next: pin 4.",
             "Walked, 2 odd.",
             "Next: pin 4.",
             "high",
             "pin 4, # volts, in range. Walked, 2 odd.",
             "three",
             "no point is due: name one before the value"});
}

TEST_CASE("a whole walk by ear and footswitch alone, in German") {
  const Speaking german("de");
  QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
  walkByEar({QStringLiteral("Gute Platine, Pin 1."),
             "high",
             QStringLiteral("Pin 1, # Volt, kein Vergleich. Weiter: Pin 2."),
             "high",
             QStringLiteral("Pin 2, # Volt, kein Vergleich. Weiter: Pin 3."),
             "high",
             QStringLiteral("Pin 3, # Volt, kein Vergleich. Weiter: Pin 4."),
             "high",
             QStringLiteral("Pin 4, # Volt, kein Vergleich. Gute Platine gemessen. Übernehmen behält sie."),
             QStringLiteral("Platine des Auftrags, Pin 1."),
             "high",
             QStringLiteral("Pin 1, # Volt, im Bereich. Weiter: Pin 2."),
             "low low",
             QStringLiteral("Pin 2, # Volt, Kurzschluss. Weiter: Pin 3."),
             "low low",
             QStringLiteral("Pin 3, über dem Messbereich, offen. Weiter: Pin 4."),
             QStringLiteral("Gemessen, 2 auffällig."),
             QStringLiteral("Weiter: Pin 4."),
             "high",
             QStringLiteral("Pin 4, # Volt, im Bereich. Gemessen, 2 auffällig."),
             "three",
             QStringLiteral("kein Punkt ist dran: einen vor dem Wert nennen")});
}

TEST_CASE("a lost link is heard, and that it is back") {
  Bench bench(QStringLiteral("J1, 4 pins"));
  const QStringList lost = bench.heard([&] { bench.meter.dropLink(300ms); }, 3);
  CHECK(lost.front() == QStringLiteral("three"));
  REQUIRE(bench.rig.wait([&] { return bench.listener.log.contains(QStringLiteral("meter ready")); }));
}

TEST_CASE("a key says what was read and what is due, also without speech after each") {
  Bench bench(QStringLiteral("J1, 4 pins"));
  bench.rig.press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(bench.heard([&] { bench.rig.press(Qt::Key_H); }, 1) == QStringList{"Job's board, pin 1."});
  bench.rig.type(QStringLiteral("452"));
  CHECK(bench.heard([&] { bench.rig.press(Qt::Key_Return); }, 1) == QStringList{"high"});
  bench.heard([&] { bench.rig.press(Qt::Key_H); }, 1);
  CHECK(bench.listener.said.back() ==
        QStringLiteral("pin 1, 0.452 volts, nothing to compare. Job's board, pin 2."));
}

TEST_CASE("with no tones and no speech nothing is heard") {
  Bench bench(QStringLiteral("J1, 4 pins"));
  bench.rig.press(Qt::Key_D, Qt::ControlModifier);
  bench.rig.press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  bench.rig.wait([] { return false; }, 20);
  bench.listener.log.clear();
  bench.rig.type(QStringLiteral("452"));
  bench.rig.press(Qt::Key_Return);
  bench.rig.type(QStringLiteral("4x2"));
  bench.rig.press(Qt::Key_Return);
  bench.rig.wait([] { return false; }, 20);
  CHECK(bench.listener.log.isEmpty());
}

TEST_CASE("pedals are assigned by pressing them, kept, shown among the keys, and taken away") {
  BenchRig rig;
  assignPedals(rig);
  rig.window.reset();
  rig.open();
  QDialog& prompt = askPedals(rig);
  CHECK(shownAt(prompt, FootAct::take) == QStringLiteral("F13"));
  CHECK(shownAt(prompt, FootAct::skip) == QStringLiteral("F14"));
  const QString back = shownAt(prompt, FootAct::back);
  CHECK(back == QStringLiteral("mouse button 6"));
  // A digit types readings; the prompt says so, and all stays as it was.
  choose(prompt, FootAct::take);
  CHECK(shownAt(prompt, FootAct::take) == QStringLiteral("Press the pedal now"));
  QTest::keyClick(&prompt, Qt::Key_7);
  CHECK(shownAt(prompt, FootAct::take) == QStringLiteral("F13"));
  CHECK(prompt.findChild<QLabel*>(QStringLiteral("pedalSaid"))
            ->text()
            .contains(QStringLiteral("readings are typed")));
  choose(prompt, FootAct::take);
  QTest::keyClick(&prompt, Qt::Key_Escape);
  CHECK(shownAt(prompt, FootAct::take) == QStringLiteral("F13"));
  // What another act had it gives up; a key that is a shortcut elsewhere can be a pedal's.
  choose(prompt, FootAct::take);
  QTest::keyClick(&prompt, Qt::Key_F14);
  CHECK(shownAt(prompt, FootAct::take) == QStringLiteral("F14"));
  CHECK(shownAt(prompt, FootAct::skip) == QStringLiteral("none"));
  choose(prompt, FootAct::skip);
  QTest::keyClick(&prompt, Qt::Key_F2);
  CHECK(shownAt(prompt, FootAct::skip) == QStringLiteral("F2"));
  choose(prompt, FootAct::back);
  QTest::keyClick(&prompt, Qt::Key_Delete);
  CHECK(shownAt(prompt, FootAct::back) == QStringLiteral("none"));
  putAway(rig, prompt);
  rig.press(Qt::Key_F1);
  const auto* keys = rig.window->findChild<QTextBrowser*>(QStringLiteral("keys"));
  REQUIRE(keys != nullptr);
  CHECK(keys->toPlainText().contains(QRegularExpression(QStringLiteral("F14\\s+take the value"))));
  CHECK(keys->toPlainText().contains(QRegularExpression(QStringLiteral("F2\\s+skip the point"))));
}

TEST_CASE("a pedal's key counts where points are probed, takes what was typed, and is one touch when held") {
  BenchRig rig;
  {
    QDialog& prompt = askPedals(rig);
    choose(prompt, FootAct::take);
    QTest::keyClick(&prompt, Qt::Key_F13);
    choose(prompt, FootAct::skip);
    QTest::keyClick(&prompt, Qt::Key_F2);
    choose(prompt, FootAct::back);
    QTest::keyClick(&prompt, Qt::Key_P);
    putAway(rig, prompt);
  }
  rig.window->go(Station::board);
  rig.type(QStringLiteral("J1, 4 pins")); // P of "pins" is typed: nothing is probed here
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  const Desk desk = rig.window->desk();
  REQUIRE(rig.window->station() == Station::walk);
  rig.type(QStringLiteral("452"));
  rig.press(Qt::Key_F13);
  REQUIRE(desk.walk.walk(false).readings.size() == 1);
  CHECK(desk.walk.due()->label == "J1.2");
  rig.press(Qt::Key_F2);
  CHECK(desk.walk.due()->label == "J1.3");
  rig.press(Qt::Key_P);
  CHECK(desk.walk.due()->label == "J1.2");
  QKeyEvent held(QEvent::KeyPress, Qt::Key_F2, Qt::NoModifier, QString(), true);
  QApplication::sendEvent(rig.target(), &held);
  CHECK(desk.walk.due()->label == "J1.2");
}
