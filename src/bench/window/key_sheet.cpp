// All keys on one sheet: those of the window as they are set, and those that each station reads by itself.
#include <vector>

#include <QAction>
#include <QDialog>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "bench/session/window_text.h"
#include "bench_window.h"
#include "pedals.h"

namespace netmend {

namespace {

struct KeyRow {
  QString keys;
  QString what;
};

QString keyName(const QKeySequence& key) {
  return key.toString(QKeySequence::NativeText);
}

QString section(const QString& title, const std::vector<KeyRow>& rows) {
  QString out = QStringLiteral("<h3>%1</h3><table cellpadding='2'>").arg(title.toHtmlEscaped());
  for (const KeyRow& row : rows)
    out += QStringLiteral("<tr><td><b>%1</b>&nbsp;&nbsp;</td><td>%2</td></tr>")
               .arg(row.keys.toHtmlEscaped(), row.what.toHtmlEscaped());
  return out + QStringLiteral("</table>");
}

QString everywhere(const QList<QAction*>& actions) {
  std::vector<KeyRow> rows;
  for (const QAction* action : actions)
    rows.push_back({action->shortcut().toString(QKeySequence::NativeText), action->text()});
  rows.push_back({keyName(Qt::CTRL | Qt::Key_Return), tr("to the next thing to do")});
  return section(tr("Everywhere"), rows);
}

QString whereBooking() {
  return section(stationName(Station::bookIn),
                 {{keyName(QKeySequence::Find), tr("search all jobs")},
                  {keyName(Qt::Key_Enter), tr("open the job that is marked")}}) +
         section(stationName(Station::board), {{keyName(QKeySequence::Open), tr("open a board file")},
                                               {tr("words, Enter"), tr("a connector: J4, 40 pins, two rows")},
                                               {keyName(Qt::Key_Enter), tr("walk the part that is marked")},
                                               {keyName(drawKey), tr("draw the board")},
                                               {keyName(Qt::ALT | Qt::Key_N), tr("what its file left open")},
                                               {QStringLiteral("Alt+1 … 3"), tr("a board you had")},
                                               {keyName(Qt::Key_Escape), tr("stop reading a board")}}) +
         section(
             tr("Drawing the board"),
             {{keyName(Qt::Key_Enter), tr("the line: what is drawn next, or the name of the net in hand")},
              {tr("click"),
               tr("a pin takes its net in hand, or joins it; beside pins a track is drawn to there")},
              {tr("press on a pin, draw, let go"), tr("a track along the copper")},
              {QStringLiteral("A, X"), tr("take what is proposed, or not")},
              {keyName(Qt::Key_Space), tr("the net is done")},
              {QStringLiteral("C, O"), tr("copper between the last two pins; another way")},
              {QStringLiteral("V, I"), tr("a via at the pointer; from here inside the board")},
              {QStringLiteral("N"), tr("and so on, as the last two nets")},
              {QStringLiteral("S"), tr("silent: the next pin to touch")},
              {QStringLiteral("Z, G"), tr("a zone of the part in hand; part or pad is gone")},
              {keyName(Qt::Key_Delete), tr("take off what is in hand")},
              {QStringLiteral("U"), tr("take the last thing back")},
              {QStringLiteral("H"), tr("held: the photo alone")},
              {QStringLiteral("P"), tr("lay the photo by more places")},
              {tr("Shift, Ctrl, Alt and the wheel"), tr("track's width; photo fainter; photo lighter")},
              {keyName(QKeySequence::Paste), tr("a photo, or a list of pins and nets")}});
}

QString whereProbing() {
  const QString reading = tr("digits, Enter");
  return section(stationName(Station::walk),
                 {{reading, tr("a reading: 452, 452m, .452 and 0,452 are the same")},
                  {QStringLiteral("O"), tr("OL")},
                  {QStringLiteral("S"), tr("skip the point")},
                  {QStringLiteral("B"), tr("back to the point before")},
                  {QStringLiteral("U"), tr("take the last thing back")},
                  {QStringLiteral("G"), tr("good board or job's board")},
                  {QStringLiteral("K"), tr("keep the good walk")},
                  {QStringLiteral("I"), tr("the last reading was no slip: it comes and goes")},
                  {QStringLiteral("X"), tr("move readings that stand one pin beside where they were taken")},
                  {QStringLiteral("H"), tr("hear what was read and what is due")},
                  {QStringLiteral("A"), tr("to the first odd pin, to read it again")},
                  {QStringLiteral("J"), tr("another connector or part")},
                  {QStringLiteral("C"), tr("condition, meter, who measures; how the picture lies")},
                  {keyName(Qt::Key_Space), tr("take the linked meter's value")},
                  {QStringLiteral("R, M"), tr("turn, mirror the connector's picture")}}) +
         section(stationName(Station::find),
                 {{reading, tr("a reading at the next probe")},
                  {QStringLiteral("O"), tr("OL")},
                  {QStringLiteral("N"), tr("can't reach it")},
                  {keyName(Qt::SHIFT | Qt::Key_N), tr("reach all again")},
                  {QStringLiteral("U"), tr("take the last thing back")},
                  {QStringLiteral("I"), tr("the last reading was no slip: it comes and goes")},
                  {keyName(Qt::Key_Tab), tr("a reading elsewhere")},
                  {tr("arrows, Home"), tr("along the line's tree")},
                  {keyName(QKeySequence::ZoomIn) + QStringLiteral(", ") + keyName(QKeySequence::ZoomOut),
                   tr("the tree larger, smaller")},
                  {keyName(Qt::Key_PageUp) + QStringLiteral(", ") + keyName(Qt::Key_PageDown),
                   tr("through the suspects")},
                  {QStringLiteral("V"), tr("all suspects, or the first four")},
                  {keyName(Qt::ALT | Qt::Key_1) + QStringLiteral(" …"), tr("the line of that odd pin")},
                  {keyName(Qt::Key_Enter), tr("open what is folded; go on when probing has come to its end")},
                  {keyName(Qt::CTRL | Qt::Key_L), tr("another line")}});
}

std::vector<KeyRow> byFoot(const Pedals& pedals) {
  std::vector<KeyRow> rows{{tr("footswitch"), tr("sends any of these keys, or what F9 gives a meaning")}};
  for (const FootAct act : footActs)
    rows.push_back({pedals.of(act).any() ? nameOf(pedals.of(act)) : tr("none yet"), nameOf(act)});
  rows.push_back({tr("back, forward"), tr("mouse buttons: back to the point before, skip")});
  rows.push_back({tr("middle"), tr("mouse button: take the linked meter's value")});
  return rows;
}

QString whereRepairing(const Pedals& pedals) {
  const QString reading = tr("digits, Enter");
  return section(stationName(Station::bridge),
                 {{QStringLiteral("1, 2, 3"), tr("show a proposal")},
                  {QStringLiteral("A"), tr("accept it")},
                  {QStringLiteral("H"), tr("a repair by hand")},
                  {QStringLiteral("W"), tr("back to the work steps")},
                  {keyName(Qt::Key_Space), tr("tick the step off")},
                  {reading, tr("what a check reads; other words are a note")},
                  {QStringLiteral("O"), tr("OL")},
                  {keyName(Qt::SHIFT | Qt::Key_O), tr("overrule a check that read wrong, with a reason")},
                  {QStringLiteral("B"), tr("step before")},
                  {QStringLiteral("N"), tr("another repair")},
                  {QStringLiteral("U"), tr("take the last thing back")}}) +
         section(stationName(Station::prove),
                 {{reading, tr("a reading, next to what it was before")},
                  {QStringLiteral("O, S, B, U"), tr("as at the walk")},
                  {QStringLiteral("I"), tr("the last reading was no slip: it comes and goes")},
                  {QStringLiteral("F"), tr("functions to try")},
                  {keyName(Qt::Key_Space), tr("tick what works")},
                  {keyName(Qt::Key_Delete), tr("take a function out")}}) +
         section(stationName(Station::handOver),
                 {{QStringLiteral("1, 2, 3, 4"), tr("a usual charge, while nothing is typed")},
                  {keyName(Qt::Key_Tab), tr("the other copy, while nothing is typed")},
                  {keyName(Qt::CTRL | Qt::Key_L), tr("change notes and letterhead")},
                  {keyName(QKeySequence::Print), tr("print the sheet")},
                  {keyName(QKeySequence::Save), tr("save it as PDF")},
                  {keyName(Qt::CTRL | Qt::Key_H), tr("handed over")},
                  {keyName(Qt::CTRL | Qt::Key_I), tr("add photos")},
                  {keyName(Qt::Key_Delete), tr("take a charge or photo out")}}) +
         section(tr("Footswitch and mouse"), byFoot(pedals));
}

QString atMap() {
  return section(tr("Map"), {{tr("arrows"), tr("move")},
                             {QStringLiteral("+ −"), tr("zoom")},
                             {QStringLiteral("F"), tr("all of it")},
                             {QStringLiteral("T"), tr("other side")},
                             {QStringLiteral("X"), tr("see through")},
                             {QStringLiteral("R, L"), tr("a quarter turn right, left")},
                             {QStringLiteral(", ."), tr("turn a little")},
                             {QStringLiteral("0"), tr("whole board, upright")},
                             {QStringLiteral("M"), tr("measure")},
                             {keyName(Qt::Key_Enter), tr("take what is in the middle")}});
}

} // namespace

void BenchWindow::showKeys() {
  if (auto* open = findChild<QDialog*>(QStringLiteral("keySheet"))) {
    open->activateWindow();
    return;
  }
  auto* sheet = new QDialog(this);
  sheet->setObjectName(QStringLiteral("keySheet"));
  sheet->setAttribute(Qt::WA_DeleteOnClose);
  sheet->setWindowTitle(tr("All keys"));
  sheet->setModal(false);
  auto* layout = new QVBoxLayout(sheet);
  auto* text = new QTextBrowser(sheet);
  text->setObjectName(QStringLiteral("keys"));
  text->setAccessibleName(sheet->windowTitle());
  const QString column = QStringLiteral("<td width='33%'>%1</td>");
  text->setHtml(QStringLiteral("<table width='100%'><tr>") +
                column.arg(everywhere(actions()) + whereBooking()) + column.arg(whereProbing() + atMap()) +
                column.arg(whereRepairing(*pedals_)) + QStringLiteral("</tr></table>"));
  layout->addWidget(text);
  sheet->resize(size() * 9 / 10);
  sheet->show();
}

} // namespace netmend
