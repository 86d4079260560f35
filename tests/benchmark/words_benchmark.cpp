// The job sheet of a long job on the largest board, all its sentences made and printed, against Qt's own rich
// text printing as many table rows. And how many lines the sources have lost since sentences were data
// (negative: they have gained). A FILE names another board.
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <unistd.h>

#include <QGuiApplication>
#include <QPdfWriter>
#include <QTextDocument>
#include <fmt/format.h>

#include "demo_boards.h"
#include "netmend/board/exchange/import.h"
#include "netmend/jobsheet/job_sheet.h"
#include "report.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr int readings = 200;
constexpr int runs = 5;
constexpr double mostMilliseconds = 1500.0;
constexpr const char* lastWithSentencesAsData = "edc6186";

/// Readings at the board's own pins: a walk with every ninth one open, the rest after the repair.
Job longJob(const Board& board) {
  Job job;
  job.number = "2026-0001";
  job.device = "Logger";
  job.symptom = "Nothing on the display";
  job.state = JobState::repairing;
  int i = 0;
  for (const Pin& pin : board.pins) {
    if (i == readings) break;
    JobReading entry;
    entry.id = JobReadingId(static_cast<std::uint64_t>(i + 1));
    entry.purpose = i < readings * 3 / 4 ? ReadingPurpose::fault : ReadingPurpose::proof;
    entry.reading.point = {pin.id, pinLabel(board, pin.id)};
    entry.reading.other.label = "GND";
    if (i % 9 != 0) entry.reading.value = 0.4 + 1e-3 * i;
    Judged judged;
    judged.verdict.kind = i % 9 == 0 ? VerdictKind::open : VerdictKind::inRange;
    judged.verdict.nothing = NothingBecause::judged;
    judged.verdict.rarity = 1e-4;
    judged.verdict.odds = 900.0;
    Expected& expected = judged.verdict.expected.emplace();
    expected.humps = {{0.99, 0.453, 0.004, 7.0, 8.0}};
    expected.shown = {{0.441, 0.465}};
    expected.boards = 8;
    expected.seen = ValueInterval{0.447, 0.459};
    entry.judged = judged;
    job.readings.push_back(std::move(entry));
    ++i;
  }
  return job;
}

/// As many rows of seven cells, by Qt's rich text.
void printPlain(const std::filesystem::path& file, const Job& job) {
  QString html = QStringLiteral("<table>");
  for (const JobReading& entry : job.readings)
    html += QStringLiteral("<tr><td>%1</td><td>diode to GND</td><td>0.441 V to 0.465 V</td><td>%2 V</td>"
                           "<td>in range</td><td>-</td><td></td></tr>")
                .arg(QString::fromStdString(entry.reading.point.label))
                .arg(entry.reading.value.value_or(0.0), 0, 'f', 3);
  QPdfWriter writer(QString::fromStdString(file.string()));
  QTextDocument document;
  document.setHtml(html + QStringLiteral("</table>"));
  document.print(&writer);
}

/// Lines removed less lines added in the sources; nothing without git or without that commit.
std::optional<long> linesGone() {
  const std::string command = fmt::format("git -C '{}' diff --numstat {} HEAD -- src include 2>/dev/null",
                                          NETMEND_BENCHMARK_DIR "/../..", lastWithSentencesAsData);
  FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return std::nullopt;
  long gone = 0, files = 0, added = 0, removed = 0;
  char rest[4096];
  while (std::fscanf(pipe, "%ld %ld %4095[^\n]", &added, &removed, rest) == 3) {
    gone += removed - added;
    ++files;
  }
  ::pclose(pipe);
  return files > 0 ? std::optional(gone) : std::nullopt;
}

} // namespace

int main(int argc, char** argv) {
  const auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  const QGuiApplication application(argc, argv);
  const auto file = arguments->files.empty() ? largestDemoBoard() : std::optional(arguments->files.front());
  if (!file) return noBoard();
  const auto imported = importBoard(std::filesystem::path(*file));
  if (!imported) {
    std::cerr << imported.error().text() << '\n';
    return 3;
  }
  Report report(*arguments);
  report.note(fmt::format("{}, {} readings", std::filesystem::path(*file).filename().string(), readings));
  SheetContent content;
  content.job = longJob(imported->board);
  content.board = underWork(imported->board);
  const auto folder = std::filesystem::temp_directory_path();
  const auto sheet = folder / fmt::format("netmend-words-{}.pdf", ::getpid());
  const double ours = leastMillisecondsOf(runs, [&] {
    if (const auto written = writeJobSheet(sheet, content); !written) {
      std::cerr << written.error().text() << '\n';
      std::exit(3);
    }
  });
  const double plain = leastMillisecondsOf(runs, [&] { printPlain(sheet, content.job); });
  std::filesystem::remove(sheet);
  report.add("sheet_ms", ours, "ms", mostMilliseconds);
  report.add("plain_text_ms", plain, "ms");
  report.add("ratio", ours / plain);
  if (const auto gone = linesGone())
    report.add("lines_gone", static_cast<double>(*gone));
  else
    report.skip("lines_gone", "no git, or not the whole history");
  return report.finish();
}
