#include <algorithm>
#include <chrono>

#include "netmend/drawing/shown.h"
#include "netmend/words/job.h"
#include "sections.h"
#include "style.h"
#include "table.h"

namespace netmend {

namespace {

Piece titlePiece(const Sheet& sheet) {
  const SheetStyle& style = sheet.style;
  const double width = style.body.width();
  const TextBlock title({{shown(pattern("core", "Job sheet ")) + jobNumber(sheet.job()), false, false}},
                        style.title, width * 0.6);
  const QString copy = sheet.workshopCopy() ? shown(pattern("core", "Workshop copy"))
                                            : shown(pattern("core", "Customer's copy"));
  const TextBlock under({{copy, false, false}}, style.normal, width * 0.6);
  const TextBlock shop({{cleaned(sheet.options.workshop), false, false}}, style.small, width * 0.36,
                       Qt::AlignRight);
  Piece piece;
  // A shop's address takes as many lines as it needs, up to a third of a page.
  const int shopLines = std::min(shop.lines(), static_cast<int>(style.body.height() / 3 / shop.lineHeight()));
  const int titleLines =
      std::min(title.lines(), static_cast<int>(style.body.height() / 3 / title.lineHeight()));
  const double left = title.lineHeight() * titleLines + under.height();
  piece.height = std::max(left, shop.lineHeight() * shopLines) + 4 * SheetStyle::point;
  piece.keepWithNext = true;
  piece.paint = [=](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().ink);
    title.paint(painter, at, 0, titleLines);
    shop.paint(painter, at + QPointF(width * 0.64, 0), 0, shopLines);
    painter.setPen(sheetColors().quietInk);
    under.paint(painter, at + QPointF(0, title.lineHeight() * titleLines), 0, under.lines());
  };
  return piece;
}

struct FactLine {
  QString label;
  QString value;
};

/// Short facts two to a line, long ones over the whole width.
Pieces factTable(const SheetStyle& style, const std::vector<FactLine>& facts, std::size_t perRow) {
  std::vector<Column> columns;
  for (std::size_t i = 0; i < perRow; ++i) {
    columns.push_back({{}, 0.17, Qt::AlignLeft});
    columns.push_back({{}, perRow == 1 ? 0.83 : 0.33, Qt::AlignLeft});
  }
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < facts.size(); i += perRow) {
    TableRow row;
    row.ruled = false;
    for (std::size_t j = i; j < i + perRow; ++j) {
      const bool there = j < facts.size();
      row.cells.push_back(cell(there ? facts[j].label : QString(), true));
      row.cells.push_back(cell(there ? facts[j].value : QString()));
    }
    rows.push_back(std::move(row));
  }
  TableStyle table = tableStyle(style, style.normal);
  table.padding = 1.3 * SheetStyle::point;
  return tablePieces(columns, rows, table);
}

QString orNotStated(const std::string& text) {
  const QString out = cleaned(text);
  return out.isEmpty() ? shown(pattern("core", "not stated")) : out;
}

} // namespace

QString dateText(Time time) {
  if (time == Time{}) return {};
  const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(time));
  return QStringLiteral("%1-%2-%3")
      .arg(static_cast<int>(day.year()), 4, 10, QLatin1Char('0'))
      .arg(static_cast<unsigned>(day.month()), 2, 10, QLatin1Char('0'))
      .arg(static_cast<unsigned>(day.day()), 2, 10, QLatin1Char('0'));
}

QString jobNumber(const Job& job) {
  const QString number = cleaned(job.number).simplified();
  return number.isEmpty() ? shown(pattern("core", "without number")) : number;
}

Pieces titleAndFacts(const Sheet& sheet) {
  const Job& job = sheet.job();
  Pieces pieces;
  pieces.push_back(titlePiece(sheet));
  pieces.push_back(headingPiece(sheet.style, shown(pattern("core", "Device and symptom"))));
  std::vector<FactLine> facts{{shown(pattern("core", "Device")), orNotStated(job.device)}};
  const auto add = [&](const QString& label, const QString& value) {
    if (!value.isEmpty()) facts.push_back({label, value});
  };
  add(shown(pattern("core", "Serial number")), cleaned(job.serial));
  add(shown(pattern("core", "Customer")), cleaned(job.customer));
  add(shown(pattern("core", "Reference")), cleaned(job.customerReference));
  add(shown(pattern("core", "Booked in")), dateText(job.created));
  add(shown(pattern("core", "State")), shown(nameOf(job.state)));
  QString board = cleaned(job.boardName);
  if (!job.boardRevision.empty()) board += shown(pattern("core", " revision ")) + cleaned(job.boardRevision);
  add(shown(pattern("core", "Board")), board.trimmed());
  append(pieces, factTable(sheet.style, facts, 2));

  facts = {{shown(pattern("core", "Symptom")), orNotStated(job.symptom)}};
  add(shown(pattern("core", "History")), cleaned(job.history));
  add(shown(pattern("core", "As received")), cleaned(job.condition));
  if (sheet.workshopCopy()) {
    // The folders of this machine are nobody's business; the content says which file it is.
    QString file = cleaned(job.boardFile.substr(job.boardFile.find_last_of("/\\") + 1));
    if (!file.isEmpty() && !job.boardDigest.empty())
      file += shown(pattern("core", " (content %1)")).arg(cleaned(job.boardDigest).left(16));
    add(shown(pattern("core", "Board file")), file);
  }
  append(pieces, factTable(sheet.style, facts, 1));
  return pieces;
}

} // namespace netmend
