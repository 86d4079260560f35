#include <algorithm>
#include <set>

#include "findings.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"
#include "netmend/words/customer.h"
#include "netmend/words/fault.h"
#include "netmend/words/job.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"
#include "netmend/words/verdict.h"
#include "sections.h"
#include "signs.h"
#include "style.h"
#include "table.h"

namespace netmend {

namespace {

QString joined(const std::vector<std::string>& names) {
  QStringList list;
  for (const std::string& name : names)
    list.append(cleaned(name));
  return list.join(QStringLiteral(", "));
}

QString conditionText(const Condition& condition) {
  QStringList parts;
  if (!condition.plugged.empty())
    parts.append(shown(pattern("core", "plugged: ")) + joined(condition.plugged));
  if (condition.powered) parts.append(shown(pattern("core", "powered")));
  if (!condition.lifted.empty()) parts.append(shown(pattern("core", "lifted: ")) + joined(condition.lifted));
  if (!condition.handling.empty()) parts.append(printed(handlingSaid(condition)));
  return parts.join(QStringLiteral("; "));
}

QString measuredText(const Sheet& sheet, const Reading& reading) {
  QString out = shown(nameOf(reading.mode));
  if (!reading.other.label.empty()) out += shown(pattern("core", " to ")) + pointText(sheet, reading.other);
  if (reading.injected)
    out += shown(pattern("core", ", %1 A injected")).arg(reading.injected->value, 0, 'g', 4);
  const QString condition = conditionText(reading.condition);
  if (!condition.isEmpty()) out += QStringLiteral("; ") + condition;
  return out;
}

QString valueText(const Reading& reading) {
  QString out = QString::fromStdString(readingText(reading.value, reading.mode));
  if (reading.settling == Settling::rising) out += shown(pattern("core", ", rising"));
  return out;
}

Cell valueCell(const JobReading* reading) {
  return reading == nullptr ? cell(QStringLiteral("–")) : cell(valueText(reading->reading), true);
}

Cell verdictCell(const JobReading* reading) {
  if (reading == nullptr) return cell({});
  if (!reading->judged) return cell(shown(pattern("core", "not judged")));
  Cell out = cell(shown(nameOf(*reading)), reading->odd());
  out.sign = markSign(markForVerdict(reading->kind()));
  return out;
}

QString expectedOf(const ReadingPair& pair) {
  for (const JobReading* reading : {pair.before, pair.after})
    if (reading != nullptr)
      if (const Said expected = whatIsExpected(*reading); !expected.empty()) return shown(expected);
  return QStringLiteral("–");
}

Pieces readingTable(const Sheet& sheet, const std::vector<ReadingPair>& pairs) {
  const std::vector<Column> columns{
      {shown(pattern("core", "Point")), 0.13},    {shown(pattern("core", "Measured")), 0.19},
      {shown(pattern("core", "Expected")), 0.17}, {shown(pattern("core", "As found")), 0.11},
      {shown(pattern("core", "Verdict")), 0.145}, {shown(pattern("core", "After")), 0.11},
      {shown(pattern("core", "Verdict")), 0.145}};
  std::vector<TableRow> rows;
  for (const ReadingPair& pair : pairs) {
    const Reading& reading = pair.any().reading;
    TableRow row;
    row.cells = {cell(pointText(sheet, reading.point)),
                 cell(measuredText(sheet, reading)),
                 cell(expectedOf(pair)),
                 valueCell(pair.before),
                 verdictCell(pair.before),
                 valueCell(pair.after),
                 verdictCell(pair.after)};
    QStringList why;
    if (sheet.workshopCopy())
      for (const JobReading* one : {pair.before, pair.after})
        if (one != nullptr && one->odd()) why.append(shown(verdictReasons(*one)));
    row.ruled = row.keepWithNext = false;
    if (why.isEmpty()) row.ruled = true;
    row.keepWithNext = !why.isEmpty();
    rows.push_back(std::move(row));
    if (!why.isEmpty())
      rows.push_back({{cell({}), {{{why.join(QStringLiteral(" ")), false, true}}, {}}}, false, true, false});
  }
  return tablePieces(columns, rows, tableStyle(sheet.style, sheet.style.small));
}

Pieces checkTable(const Sheet& sheet) {
  const std::vector<Column> columns{{shown(pattern("core", "Checks during the work")), 0.24},
                                    {shown(pattern("core", "Measured")), 0.30},
                                    {shown(pattern("core", "Expected")), 0.18},
                                    {shown(pattern("core", "Read")), 0.12},
                                    {shown(pattern("core", "Verdict")), 0.16}};
  std::vector<TableRow> rows;
  for (const JobReading& reading : sheet.job().readings) {
    if (reading.purpose != ReadingPurpose::check) continue;
    rows.push_back(
        {{cell(pointText(sheet, reading.reading.point)), cell(measuredText(sheet, reading.reading)),
          cell(expectedOf({nullptr, &reading})), valueCell(&reading), verdictCell(&reading)},
         false,
         true,
         false});
  }
  Pieces pieces = tablePieces(columns, rows, tableStyle(sheet.style, sheet.style.small));
  if (!pieces.empty()) pieces.front().spaceAbove = 5 * SheetStyle::point;
  return pieces;
}

constexpr double leastShown = 0.005; ///< chance of a suspect

Pieces suspectList(const Sheet& sheet) {
  std::vector<TableRow> rows;
  const std::vector<JobSuspect> suspects = suspectsOfRepair(sheet.job());
  for (const JobSuspect& suspect : suspects) {
    // What rounds to nothing is in the book, and not worth a line on paper.
    if (suspect.probability < leastShown && &suspect != &suspects.front()) continue;
    std::vector<Run> runs{{printed(nameOf(suspect)), true, false}};
    if (const Said why = explanationOf(suspect); sheet.workshopCopy() && !why.empty())
      runs.push_back({QChar(QChar::LineSeparator) + printed(why), false, false});
    const QString share = suspect.probability < leastShown
                              ? QStringLiteral("< 1 %")
                              : QStringLiteral("%1 %").arg(100.0 * suspect.probability, 0, 'f', 0);
    rows.push_back({{cell(share, true), {runs, {}}}, false, true, false});
  }
  Pieces pieces =
      tablePieces({{shown(pattern("core", "Chance")), 0.1}, {shown(pattern("core", "Suspect")), 0.9}}, rows,
                  tableStyle(sheet.style, sheet.style.small));
  if (!pieces.empty()) pieces.front().spaceAbove = 5 * SheetStyle::point;
  return pieces;
}

/// Who read with what and when.
Pieces sourceOfReadings(const Sheet& sheet) {
  std::set<QString> by;
  std::set<QString> meters;
  Time first = Time::max();
  Time last{};
  for (const JobReading& reading : sheet.job().readings) {
    if (!reading.reading.by.empty()) by.insert(cleaned(reading.reading.by));
    if (!reading.reading.meter.empty()) meters.insert(cleaned(reading.reading.meter));
    if (reading.reading.time == Time{}) continue;
    first = std::min(first, reading.reading.time);
    last = std::max(last, reading.reading.time);
  }
  const auto list = [](const std::set<QString>& names) {
    return QStringList(names.begin(), names.end()).join(QStringLiteral(", "));
  };
  QStringList parts;
  if (!by.empty()) parts.append(shown(pattern("core", "by ")) + list(by));
  if (!meters.empty()) parts.append(shown(pattern("core", "meter ")) + list(meters));
  if (last != Time{}) {
    const QString from = dateText(first);
    const QString to = dateText(last);
    parts.append(from == to ? shown(pattern("core", "on ")) + from
                            : from + shown(pattern("core", " to ")) + to);
  }
  if (parts.isEmpty()) return {};
  return paragraph({{shown(pattern("core", "Readings: ")) + parts.join(QStringLiteral("; ")), false, false}},
                   sheet.style.small, sheet.style.body.width(), 3 * SheetStyle::point);
}

} // namespace

Pieces findings(const Sheet& sheet) {
  Pieces pieces;
  pieces.push_back(headingPiece(sheet.style, shown(pattern("core", "Findings before and after"))));
  const std::vector<ReadingPair> pairs = pairReadings(sheet.job().readings);
  if (sheet.job().readings.empty() && sheet.job().suspects.empty()) {
    append(pieces, paragraph({{shown(pattern("core", "Nothing has been read yet.")), false, false}},
                             sheet.style.normal, sheet.style.body.width(), 0));
    return pieces;
  }
  append(pieces, readingTable(sheet, pairs));
  append(pieces, checkTable(sheet));
  append(pieces, suspectList(sheet));
  append(pieces, paragraph({{shown(rightAndLeftSaid()), false, false}}, sheet.style.small,
                           sheet.style.body.width(), 3 * SheetStyle::point));
  if (sheet.workshopCopy()) append(pieces, sourceOfReadings(sheet));
  return pieces;
}

QString pointText(const Sheet& sheet, const ProbePoint& point) {
  return printed(nameOf(point, sheet.content.board.places.get()));
}

} // namespace netmend
