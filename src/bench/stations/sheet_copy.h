#pragma once

#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include <QByteArray>
#include <QImage>

#include "netmend/jobsheet/job_sheet.h"

namespace netmend {

/// What a sheet is made from: values and things that never change, so that a thread may have it.
struct SheetOrder {
  Job job;
  BoardUnderWork board; ///< none: no map
  std::vector<std::string> cautions;
  SheetOptions options;
  int pageWidth = 800; ///< of the pictures, in pixels
};

/// A sheet: the document itself and pictures of its pages.
struct SheetPages {
  QByteArray pdf;
  std::vector<QImage> pages;
  std::optional<Error> undrawn; ///< why there are no pictures; the document holds all the same
};

/// Makes the sheet as the command line does and draws its pages from it. Stops between pages.
[[nodiscard]] Result<SheetPages> makeSheet(const SheetOrder& order, const std::stop_token& stop);

} // namespace netmend
