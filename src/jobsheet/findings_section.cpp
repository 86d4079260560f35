#include <algorithm>
#include <set>

#include "findings.h"
#include "netmend/drawing/palette.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "sections.h"
#include "signs.h"
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
  if (!condition.plugged.empty()) parts.append(QStringLiteral("plugged: ") + joined(condition.plugged));
  if (condition.powered) parts.append(QStringLiteral("powered"));
  if (!condition.lifted.empty()) parts.append(QStringLiteral("lifted: ") + joined(condition.lifted));
  if (!condition.handling.empty()) parts.append(cleaned(condition.handling));
  return parts.join(QStringLiteral("; "));
}

QString measuredText(const Reading& reading) {
  const std::string_view mode = word(reading.mode);
  QString out = QString::fromUtf8(mode.data(), static_cast<qsizetype>(mode.size()));
  if (!reading.other.label.empty()) out += QStringLiteral(" to ") + cleaned(reading.other.label);
  if (reading.injected) out += QStringLiteral(", %1 A injected").arg(reading.injected->value, 0, 'g', 4);
  const QString condition = conditionText(reading.condition);
  if (!condition.isEmpty()) out += QStringLiteral("; ") + condition;
  return out;
}

QString valueText(const Reading& reading) {
  QString out = QString::fromStdString(readingText(reading.value, reading.mode));
  if (reading.settling == Settling::rising) out += QStringLiteral(", rising");
  return out;
}

Cell valueCell(const JobReading* reading) {
  return reading == nullptr ? cell(QStringLiteral("–")) : cell(valueText(reading->reading), true);
}

Cell verdictCell(const JobReading* reading) {
  if (reading == nullptr) return cell({});
  if (reading->verdict.empty()) return cell(QStringLiteral("not judged"));
  Cell out = cell(cleaned(reading->verdict), isFinding(reading->verdict));
  out.sign = markSign(markForVerdict(reading->verdict));
  return out;
}

QString expectedOf(const ReadingPair& pair) {
  for (const JobReading* reading : {pair.before, pair.after})
    if (reading != nullptr && !reading->expected.empty()) return cleaned(reading->expected);
  return QStringLiteral("–");
}

Pieces readingTable(const Sheet& sheet, const std::vector<ReadingPair>& pairs) {
  const std::vector<Column> columns{{QStringLiteral("Point"), 0.13},    {QStringLiteral("Measured"), 0.19},
                                    {QStringLiteral("Expected"), 0.17}, {QStringLiteral("As found"), 0.11},
                                    {QStringLiteral("Verdict"), 0.145}, {QStringLiteral("After"), 0.11},
                                    {QStringLiteral("Verdict"), 0.145}};
  std::vector<TableRow> rows;
  for (const ReadingPair& pair : pairs) {
    const Reading& reading = pair.any().reading;
    TableRow row;
    row.cells = {cell(cleaned(reading.point.label)),
                 cell(measuredText(reading)),
                 cell(expectedOf(pair)),
                 valueCell(pair.before),
                 verdictCell(pair.before),
                 valueCell(pair.after),
                 verdictCell(pair.after)};
    QStringList why;
    if (sheet.workshopCopy())
      for (const JobReading* one : {pair.before, pair.after})
        if (one != nullptr && isFinding(one->verdict) && !one->explanation.empty())
          why.append(cleaned(one->explanation));
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
  const std::vector<Column> columns{{QStringLiteral("Checks during the work"), 0.24},
                                    {QStringLiteral("Measured"), 0.30},
                                    {QStringLiteral("Expected"), 0.18},
                                    {QStringLiteral("Read"), 0.12},
                                    {QStringLiteral("Verdict"), 0.16}};
  std::vector<TableRow> rows;
  for (const JobReading& reading : sheet.job().readings) {
    if (reading.purpose != ReadingPurpose::check) continue;
    rows.push_back({{cell(cleaned(reading.reading.point.label)), cell(measuredText(reading.reading)),
                     cell(reading.expected.empty() ? QStringLiteral("–") : cleaned(reading.expected)),
                     valueCell(&reading), verdictCell(&reading)},
                    false,
                    true,
                    false});
  }
  Pieces pieces = tablePieces(columns, rows, tableStyle(sheet.style, sheet.style.small));
  if (!pieces.empty()) pieces.front().spaceAbove = 5 * SheetStyle::point;
  return pieces;
}

Pieces suspectList(const Sheet& sheet) {
  std::vector<TableRow> rows;
  for (const JobSuspect& suspect : sheet.job().suspects) {
    std::vector<Run> runs{{cleaned(suspect.what), true, false}};
    if (sheet.workshopCopy() && !suspect.explanation.empty())
      runs.push_back({QChar(QChar::LineSeparator) + cleaned(suspect.explanation), false, false});
    const QString share = suspect.probability < 0.005
                              ? QStringLiteral("< 1 %")
                              : QStringLiteral("%1 %").arg(100.0 * suspect.probability, 0, 'f', 0);
    rows.push_back({{cell(share, true), {runs, {}}}, false, true, false});
  }
  Pieces pieces = tablePieces({{QStringLiteral("Chance"), 0.1}, {QStringLiteral("Suspect"), 0.9}}, rows,
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
  if (!by.empty()) parts.append(QStringLiteral("by ") + list(by));
  if (!meters.empty()) parts.append(QStringLiteral("meter ") + list(meters));
  if (last != Time{}) {
    const QString from = dateText(first);
    const QString to = dateText(last);
    parts.append(from == to ? QStringLiteral("on ") + from : from + QStringLiteral(" to ") + to);
  }
  if (parts.isEmpty()) return {};
  return paragraph({{QStringLiteral("Readings: ") + parts.join(QStringLiteral("; ")), false, false}},
                   sheet.style.small, sheet.style.body.width(), 3 * SheetStyle::point);
}

} // namespace

Pieces findings(const Sheet& sheet) {
  Pieces pieces;
  pieces.push_back(headingPiece(sheet.style, QStringLiteral("Findings before and after")));
  const std::vector<ReadingPair> pairs = pairReadings(sheet.job().readings);
  if (sheet.job().readings.empty() && sheet.job().suspects.empty()) {
    append(pieces, paragraph({{QStringLiteral("Nothing has been read yet."), false, false}},
                             sheet.style.normal, sheet.style.body.width(), 0));
    return pieces;
  }
  append(pieces, readingTable(sheet, pairs));
  append(pieces, checkTable(sheet));
  append(pieces, suspectList(sheet));
  if (sheet.workshopCopy()) append(pieces, sourceOfReadings(sheet));
  return pieces;
}

} // namespace netmend
