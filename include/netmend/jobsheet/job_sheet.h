#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <QByteArray>

#include "netmend/base/error.h"
#include "netmend/casework/board_under_work.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/jobbook/job.h"

namespace netmend {

enum class PaperSize { a4, letter };
enum class SheetCopy {
  workshop, ///< everything
  customer  ///< without internal notes, step notes, explanations and who read what
};

struct SheetOptions {
  PaperSize paper = PaperSize::a4;
  SheetCopy copy = SheetCopy::workshop;
  std::string workshop; ///< the shop's name and address, one line each; may be empty
};

struct SheetContent {
  Job job;
  BoardUnderWork board;              ///< the revision used; none: no map
  std::vector<NetId> line;           ///< nets lit in the map
  std::vector<PinStrip> strips;      ///< none, and no map possible: made from the job's readings
  std::vector<std::string> cautions; ///< printed before the work steps
};

/// The job sheet as PDF: device and symptom, findings before and after, the board with break, landings and
/// way, cautions, work steps with the checks between them, photos, charges, signature. Needs a
/// QGuiApplication (the platform "offscreen" will do); any thread may ask. Fails when a photo is no whole
/// picture, when the charges leave the range of `Decimal`, or when the sheet would take more than 500 pages.
[[nodiscard]] Result<QByteArray> jobSheet(const SheetContent& content, const SheetOptions& options = {});
/// The same into a file, written atomically. Errors name it.
[[nodiscard]] Result<void> writeJobSheet(const std::filesystem::path& path, const SheetContent& content,
                                         const SheetOptions& options = {});

} // namespace netmend
