
#include "command.h"
#include "gui.h"
#include "job_case.h"
#include "netmend/base/data_folder.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/jobsheet/job_sheet.h"
#include "netmend/jumper/work_steps.h"

namespace netmend {

namespace {

struct SheetCommandOptions {
  std::string book;
  std::string job;
  std::string board;
  std::string out;
  std::string paper = "a4";
  bool customerCopy = false;
  std::string workshop;
};

Result<Answer> makeCommand(const SheetCommandOptions& options) {
  const auto open = openJob(options.book, options.job, BookUse::read);
  if (!open) return failure(open.error());
  const auto work = loadWorkSteps(dataFile("work_steps.json"));
  if (!work) return failure(work.error());
  Answer answer;
  SheetContent content;
  content.job = open->job;
  content.cautions = work->cautions;
  const std::string boardFile = !options.board.empty() ? options.board : open->job.boardFile;
  if (!boardFile.empty()) {
    auto loaded = openBoard(boardFile);
    if (!loaded && !options.board.empty()) return failure(loaded.error());
    if (!loaded) {
      answer.notices.push_back(said(pattern("core", "sheet without a map: {}"), loaded.error().said()));
    } else {
      content.board = std::move(*loaded);
      content.line = linesOf(open->job.actions, content.board);
    }
  }
  SheetOptions sheet;
  sheet.paper = options.paper == "letter" ? PaperSize::letter : PaperSize::a4;
  sheet.copy = options.customerCopy ? SheetCopy::customer : SheetCopy::workshop;
  sheet.workshop = options.workshop;
  const QtApplication application;
  if (auto written = writeJobSheet(options.out, content, sheet); !written) return failure(written.error());
  answer.text = "Job sheet: " + options.out + "\n";
  answer.json = {{"written", options.out}, {"job", open->job.number}};
  return answer;
}

} // namespace

void addSheetCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("sheet", "The printed document of a job");
  group.require_subcommand(1);
  const auto options = std::make_shared<SheetCommandOptions>();
  CLI::App& make = addCommand(line, group, "make", "Write the job sheet as PDF",
                              "netmend sheet make --book jobs.netmend-book --job 2026-0007 -o sheet.pdf",
                              [options] { return makeCommand(*options); });
  make.add_option("--book", options->book, "Job book")->required();
  make.add_option("--job", options->job, "Number of the job")->required();
  make.add_option("-o,--out", options->out, "PDF to write")->required();
  make.add_option("--board", options->board, "Board file (default: the one the job was booked in with)");
  make.add_option("--paper", options->paper, "a4 or letter")
      ->check(CLI::IsMember({"a4", "letter"}))
      ->capture_default_str();
  make.add_flag("--customer", options->customerCopy, "The customer's copy, without internal notes");
  make.add_option("--workshop", options->workshop, "Name and address of the shop for the head of the sheet");
}

} // namespace netmend
