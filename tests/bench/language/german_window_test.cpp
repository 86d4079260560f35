#include <catch2/catch.hpp>

#include <set>

#include <QAbstractButton>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTabWidget>
#include <QTreeWidget>

#include "bench/language/language.h"
#include "bench/stations/demo_desk.h"
#include "bench/window/bench_window.h"
#include "bench/window/room.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// What a person can see or hear of a widget; nothing of what is hidden.
QStringList textsOf(const QWidget& shown) {
  QStringList out;
  for (const QWidget* widget : shown.findChildren<QWidget*>()) {
    if (!widget->isVisible()) continue;
    out << widget->accessibleName() << widget->accessibleDescription() << widget->toolTip();
    if (const auto* label = qobject_cast<const QLabel*>(widget)) out << label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(widget)) out << button->text();
    if (const auto* field = qobject_cast<const QLineEdit*>(widget)) out << field->placeholderText();
    if (const auto* text = qobject_cast<const QPlainTextEdit*>(widget); text != nullptr && text->isReadOnly())
      out << text->toPlainText();
    if (const auto* box = qobject_cast<const QComboBox*>(widget))
      for (int i = 0; i < box->count(); ++i)
        out << box->itemText(i);
    if (const auto* tabs = qobject_cast<const QTabWidget*>(widget))
      for (int i = 0; i < tabs->count(); ++i)
        out << tabs->tabText(i);
    if (const auto* list = qobject_cast<const QListWidget*>(widget))
      for (int i = 0; i < list->count(); ++i)
        out << list->item(i)->text();
    if (const auto* tree = qobject_cast<const QTreeWidget*>(widget))
      for (int column = 0; column < tree->columnCount(); ++column) {
        out << tree->headerItem()->text(column);
        for (int row = 0; row < tree->topLevelItemCount(); ++row)
          out << tree->topLevelItem(row)->text(column) << tree->topLevelItem(row)->toolTip(column);
      }
  }
  out.removeAll(QString());
  return out;
}

/// Words that English sentences of the window are full of, and German ones and the demo's device are not.
QStringList englishIn(QString text) {
  for (const char* typed : {"North pier, harbour office", "Third column of the keypad is dead",
                            "Wants it back for Friday's tide", "Tide logger", "tide logger main board",
                            "step-down", "J4, 40 Pins, zwei Reihen", "top: gezeigt", "bottom: gezeigt"})
    text.remove(QString::fromLatin1(typed));
  const QRegularExpression words(
      QStringLiteral(
          "\\b(the|and|of|with|from|to|is|are|it|no|not|or|for|at|this|that|read|reads|expected|"
          "break|joint|wire|step|steps|check|undo|skip|back|line|board|boards|probe|lead|pin|pins|pad|"
          "track|nothing|before|after|measure|open|short|low|high|range|good|top|bottom|job|find|"
          "walk|bridge|prove|page|pages|part|parts|net|nets|next|place|unknown|way)\\b"),
      QRegularExpression::CaseInsensitiveOption);
  QStringList out;
  for (auto found = words.globalMatch(text); found.hasNext();)
    out << found.next().captured();
  return out;
}

/// The demo's device with its job begun, in a German window.
struct GermanBench {
  DemoDesk demo;
  std::unique_ptr<BenchWindow> window;
  int pictures = 0;

  GermanBench() {
    static const bool spoken = [] {
      speak(QStringLiteral("de"));
      return true;
    }();
    REQUIRE(spoken);
    demo.fault.reset();
    demo.walk.reset();
    demo.job.reset();
    auto job = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data", demo.folder.path});
    REQUIRE(job);
    window = std::make_unique<BenchWindow>(std::move(*job));
    window->resize(1280, 800);
    window->show();
    BenchJob& opened = window->desk().job;
    const auto number = opened.book().jobNumbered(demo.number);
    REQUIRE(number);
    REQUIRE(opened.openJob(number->id));
    REQUIRE(waitFor([&] { return opened.board() != nullptr && opened.expected().size() > 0; }));
    const Desk desk = window->desk();
    for (const PartId part : desk.walk.partsToWalk())
      if (opened.board()->board->parts.find(part)->reference == "J4") desk.walk.setPart(part);
    settle();
  }
  void settle() {
    REQUIRE(waitFor([this] {
      const Desk desk = window->desk();
      return !desk.job.weighing() && !desk.fault.working();
    }));
    QTest::qWait(20);
  }
  QStringList at(Station station) {
    window->go(station);
    settle();
    if (station == Station::handOver) QTest::qWait(1500); // the sheet's preview comes by itself
    picture(++pictures);
    return textsOf(*window);
  }
  /// For a person to look at: only where NETMEND_PICTURES names a folder.
  void picture(int number) {
    if (!qEnvironmentVariableIsSet("NETMEND_PICTURES")) return;
    QTest::qWait(300);
    window->grab().save(
        QStringLiteral("%1/german-%2.png").arg(qEnvironmentVariable("NETMEND_PICTURES")).arg(number));
  }
};

} // namespace

TEST_CASE("a window started in German shows German, and no English, at every station", "[language]") {
  GermanBench bench;
  const Desk desk = bench.window->desk();
  const std::array<const char*, 7> samples{"Symptom",         "Anschlüsse", "auffällig",
                                           "Frei zugänglich", "Draht",      "NICHT NACHGEWIESEN",
                                           "Kundenexemplar"};
  const auto look = [&](Station station) {
    const QStringList texts = bench.at(station);
    CHECK(texts.size() > 10);
    const QString all = texts.join(QLatin1Char('\n'));
    INFO(all.toStdString());
    CHECK(all.contains(QString::fromUtf8(samples[static_cast<std::size_t>(station)])));
    for (const QString& text : texts) {
      const QStringList english = englishIn(text);
      INFO(text.toStdString() << " | " << english.join(QLatin1Char(' ')).toStdString());
      CHECK(english.isEmpty());
    }
  };
  look(Station::bookIn);
  look(Station::board);
  look(Station::walk);
  look(Station::find);
  look(Station::bridge);
  REQUIRE(desk.fault.accept(0));
  look(Station::bridge);
  look(Station::prove);
  look(Station::handOver);
}

TEST_CASE("what a German window writes into the job is facts, and no German", "[language]") {
  GermanBench bench;
  const Desk desk = bench.window->desk();
  REQUIRE(desk.fault.accept(0));
  const Job& job = *desk.job.job();
  REQUIRE_FALSE(job.actions.empty());
  const RepairAction& action = job.actions.back();
  REQUIRE(action.because);
  CHECK(action.reason.empty());
  std::set<std::string> templates;
  for (const StepTemplate& step : desk.job.data().work.kinds.at(WorkKind::jumper))
    templates.insert(step.text);
  for (const WorkStep& step : action.steps)
    CHECK(templates.contains(step.text));
  for (const JobReading& entry : job.readings)
    CHECK(entry.remark.empty());
  REQUIRE_FALSE(job.suspects.empty());
  CHECK(job.suspects.front().what.empty());
  CHECK(job.suspects.front().fault == *action.because);
}

TEST_CASE("in German, too, every station fits 1280 by 800 pixels with letters at 200 %") {
  needApplication<TimedApplication>();
  speak(QStringLiteral("de"));
  const BenchRig rig;
  checkRoom(rig);
}
