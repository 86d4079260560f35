#pragma once

#include <QImage>

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

/// The whole customer's copy: always one page. Long texts end with an ellipsis, of many rows the last one
/// counts the others, the picture gets smaller, photos come only where they fit; the workshop's copy has it
/// all. The pieces must outlive the page.
struct CustomerPage {
  Pieces pieces;
  PlacedPage page;
};
[[nodiscard]] Result<CustomerPage> customerPage(const Sheet& sheet);

/// As the camera was held, on white where it is see-through, and no finer than paper can show. A photo that
/// is no whole picture is told by `name`.
[[nodiscard]] Result<QImage> printedPhoto(const Photo& photo, const QString& name, QSizeF box);

/// `2026-11-25`, in UTC; empty for no time at all.
[[nodiscard]] QString dateText(Time time);
[[nodiscard]] QString jobNumber(const Job& job);
/// Where a lead was.
[[nodiscard]] QString pointText(const Sheet& sheet, const ProbePoint& point);

} // namespace netmend
