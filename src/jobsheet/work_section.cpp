#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/job.h"
#include "netmend/words/jumper.h"
#include "netmend/words/step.h"
#include "netmend/words/verdict.h"
#include "sections.h"
#include "signs.h"
#include "style.h"
#include "table.h"

namespace netmend {

namespace {

QString capitalised(const Said& word) {
  QString out = shown(word);
  if (!out.isEmpty()) out[0] = out[0].toUpper();
  return out;
}

Pieces jumperFacts(const Sheet& sheet, const JumperRecord& jumper) {
  Length length;
  for (std::size_t i = 1; i < jumper.way.size(); ++i)
    length += distance(jumper.way[i - 1], jumper.way[i]);
  const auto side = [](Side s) { return shown(nameOf(s)); };
  const auto landing = [&](const LandingPlace& place) {
    return printed(nameOf(place)) + QStringLiteral(", ") + side(place.side);
  };
  const SheetStyle& style = sheet.style;
  Pieces pieces = paragraph({{shown(pattern("core", "From ")), true, false},
                             {landing(jumper.from), false, false},
                             {shown(pattern("core", " to ")), true, false},
                             {landing(jumper.to), false, false}},
                            style.normal, style.body.width(), 2 * SheetStyle::point);
  std::vector<Run> runs;
  const auto add = [&](const QString& label, const QString& text) {
    if (text.isEmpty()) return;
    runs.push_back(
        {(runs.empty() ? QString() : QStringLiteral("   ")) + label + QStringLiteral(" "), true, false});
    runs.push_back({text, false, false});
  };
  add(shown(pattern("core", "Net")), cleaned(jumper.net));
  add(shown(pattern("core", "Wire")), printed(dataPattern(jumper.wire)));
  if (jumper.way.size() > 1)
    add(shown(pattern("core", "Way")),
        shown(pattern("core", "%1 mm on the %2")).arg(length.mm(), 0, 'f', 1).arg(side(jumper.side)));
  append(pieces, paragraph(runs, style.normal, style.body.width(), 2 * SheetStyle::point));
  return pieces;
}

TableRow stepRow(const Sheet& sheet, const RepairAction& action, std::size_t index) {
  const WorkStep& step = action.steps[index];
  Cell box = cell(QString::number(index + 1));
  box.sign = tickBox(step.check, step.done);
  std::vector<Run> runs;
  if (step.check) runs.push_back({shown(pattern("core", "Check: ")), true, false});
  runs.push_back({printed(stepSaid(step, action)), false, false});
  if (const Said detail = detailSaid(step, action); !detail.empty())
    runs.push_back({QStringLiteral(" ") + printed(detail), false, false});
  if (const Said expected = expectedSaid(step, action); !expected.empty()) {
    QString text = QChar(QChar::LineSeparator) + shown(pattern("core", "Expected: ")) + printed(expected);
    if (const Said otherwise = otherwiseSaid(step, action); !otherwise.empty())
      text += QStringLiteral(". ") + printed(otherwise);
    runs.push_back({text, false, true});
  }
  if (const Said note = noteSaid(step); sheet.workshopCopy() && !note.empty())
    runs.push_back(
        {QChar(QChar::LineSeparator) + shown(pattern("core", "Note: ")) + printed(note), false, false});
  return {{box, {runs, {}}}, step.check, true, false};
}

/// The readings that show that the repair holds.
Pieces proofLine(const Sheet& sheet, const RepairAction& action) {
  QStringList parts;
  for (const JobReadingId id : action.proof)
    for (const JobReading& reading : sheet.job().readings)
      if (reading.id == id)
        parts.append(QStringLiteral("%1 %2%3").arg(
            pointText(sheet, reading.reading.point),
            QString::fromStdString(readingText(reading.reading.value, reading.reading.mode)),
            reading.judged ? QStringLiteral(" (%1)").arg(shown(nameOf(reading.kind()))) : QString()));
  if (parts.isEmpty()) return {};
  return paragraph(
      {{shown(pattern("core", "Proof: ")), true, false}, {parts.join(QStringLiteral("; ")), false, false}},
      sheet.style.normal, sheet.style.body.width(), 3 * SheetStyle::point);
}

void keepTogether(Pieces& pieces) {
  for (Piece& piece : pieces)
    piece.keepWithNext = true;
}

} // namespace

Pieces cautions(const Sheet& sheet) {
  std::vector<TableRow> rows;
  for (const std::string& caution : sheet.content.cautions) {
    Cell text = cell(printed(dataPattern(caution)));
    text.sign = warningSign();
    rows.push_back({{text}, false, false, false});
  }
  if (rows.empty()) return {};
  TableStyle table = tableStyle(sheet.style, sheet.style.normal);
  table.padding = 1.2 * SheetStyle::point;
  Pieces pieces;
  pieces.push_back(headingPiece(sheet.style, shown(pattern("core", "Cautions"))));
  append(pieces, tablePieces({{{}, 1.0, Qt::AlignLeft}}, rows, table));
  return pieces;
}

Pieces work(const Sheet& sheet) {
  Pieces pieces;
  std::size_t number = 0;
  for (const RepairAction& action : sheet.job().actions) {
    ++number;
    QString title = shown(pattern("core", "Work %1: %2")).arg(number).arg(capitalised(nameOf(action.kind)));
    if (!action.target.empty()) title += QStringLiteral(", ") + cleaned(action.target).simplified().left(160);
    Pieces intro;
    intro.push_back(headingPiece(sheet.style, title));
    if (const Said why = reasonSaid(action); !why.empty())
      append(intro, paragraph({{shown(pattern("core", "Why: ")), true, false}, {printed(why), false, false}},
                              sheet.style.normal, sheet.style.body.width(), 0));
    if (action.jumper) append(intro, jumperFacts(sheet, *action.jumper));
    // What is to be done starts on the page of its heading, unless the reason is an essay.
    if (intro.size() < 12 && !action.steps.empty()) keepTogether(intro);
    append(pieces, std::move(intro));
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < action.steps.size(); ++i)
      rows.push_back(stepRow(sheet, action, i));
    append(pieces, tablePieces({{{}, 0.075, Qt::AlignLeft}, {{}, 0.925, Qt::AlignLeft}}, rows,
                               tableStyle(sheet.style, sheet.style.normal)));
    append(pieces, proofLine(sheet, action));
  }
  return pieces;
}

Pieces internalNotes(const Sheet& sheet) {
  if (!sheet.workshopCopy() || sheet.job().internalNotes.empty()) return {};
  Pieces pieces;
  pieces.push_back(
      headingPiece(sheet.style, shown(pattern("core", "Internal notes (not on the customer's copy)"))));
  append(pieces, paragraph({{cleaned(sheet.job().internalNotes), false, false}}, sheet.style.normal,
                           sheet.style.body.width(), 0));
  return pieces;
}

Pieces signatures(const Sheet& sheet) {
  const SheetStyle& style = sheet.style;
  const double width = style.body.width();
  Piece piece;
  piece.height = 19 * SheetStyle::millimetre;
  piece.spaceAbove = 6 * SheetStyle::millimetre;
  piece.paint = [width, font = style.small, height = piece.height](QPainter& painter, QPointF at) {
    const double y = at.y() + 13 * SheetStyle::millimetre;
    const QString names[] = {shown(pattern("core", "Date, technician's signature")),
                             shown(pattern("core", "Date, customer's signature: device received"))};
    painter.setFont(font);
    for (int i = 0; i < 2; ++i) {
      const double left = at.x() + i * width * 0.53;
      painter.setPen(QPen(sheetColors().ink, 0.7 * SheetStyle::point));
      painter.drawLine(QPointF(left, y), QPointF(left + width * 0.47, y));
      painter.drawText(QRectF(left, y + 2 * SheetStyle::point, width * 0.47, at.y() + height - y),
                       Qt::AlignLeft, names[i]);
    }
  };
  return {piece};
}

} // namespace netmend
