#pragma once

#include "flow.h"
#include "netmend/base/error.h"
#include "netmend/jobsheet/job_sheet.h"
#include "style.h"

/// The sections of the sheet, in their order. Each adds its pieces, or nothing where there is nothing to say.
namespace netmend {

struct Sheet {
  const SheetContent& content;
  const SheetOptions& options;
  SheetStyle style;

  [[nodiscard]] const Job& job() const { return content.job; }
  [[nodiscard]] bool workshopCopy() const { return options.copy == SheetCopy::workshop; }
};

[[nodiscard]] Pieces titleAndFacts(const Sheet& sheet);
[[nodiscard]] Pieces findings(const Sheet& sheet);
[[nodiscard]] Pieces pictures(const Sheet& sheet);
/// Two to a row, each with its number and caption. Fails when one is no whole picture, naming it.
[[nodiscard]] Result<Pieces> photos(const Sheet& sheet);
[[nodiscard]] Pieces cautions(const Sheet& sheet);
[[nodiscard]] Pieces work(const Sheet& sheet);
[[nodiscard]] Result<Pieces> charges(const Sheet& sheet);
[[nodiscard]] Pieces internalNotes(const Sheet& sheet);
[[nodiscard]] Pieces signatures(const Sheet& sheet);

/// `2026-11-25`, in UTC; empty for no time at all.
[[nodiscard]] QString dateText(Time time);
[[nodiscard]] QString jobNumber(const Job& job);
/// Where a lead was.
[[nodiscard]] QString pointText(const Sheet& sheet, const ProbePoint& point);

} // namespace netmend
