#include "netmend/jobsheet/job_sheet.h"

#include <QBuffer>
#include <QPageSize>
#include <QPdfWriter>

#include "netmend/base/file.h"
#include "netmend/drawing/shown.h"
#include "sections.h"
#include "style.h"
#include "text.h"

namespace netmend {

namespace {

constexpr std::size_t mostPages = 500;
constexpr std::size_t mostCharacters = 2'500'000; ///< no more fit on that many pages

constexpr std::size_t charactersOfVerdict = 250; ///< with its reasons

std::size_t charactersOf(const Job& job) {
  std::size_t sum = job.customer.size() + job.customerReference.size() + job.device.size() +
                    job.serial.size() + job.symptom.size() + job.history.size() + job.condition.size() +
                    job.number.size() + job.boardName.size() + job.boardRevision.size() +
                    job.boardFile.size() + job.boardDigest.size() + job.currency.size() +
                    job.internalNotes.size();
  for (const JobReading& reading : job.readings)
    sum += 40 + reading.reading.point.label.size() + reading.reading.other.label.size() +
           charactersOfVerdict + reading.remark.size() + reading.reading.by.size() +
           reading.reading.meter.size();
  for (const JobSuspect& suspect : job.suspects)
    sum += 40 + suspect.what.size() + suspect.explanation.size() +
           charactersOfVerdict * (1 + suspect.evidence.size());
  for (const RepairAction& action : job.actions) {
    sum += 80 + charactersOfVerdict + action.target.size() + action.reason.size();
    if (action.jumper)
      sum += 2 * charactersOfVerdict + action.jumper->wire.size() + action.jumper->net.size();
    for (const WorkStep& step : action.steps)
      sum += 40 + step.text.size() + step.expected.size() + step.note.size();
  }
  for (const Photo& photo : job.photos)
    sum += 40 + photo.caption.size();
  for (const Charge& charge : job.charges)
    sum += 40 + charge.what.size();
  return sum;
}

std::size_t charactersOf(const SheetContent& content, const SheetOptions& options) {
  std::size_t sum = charactersOf(content.job) + options.workshop.size();
  for (const std::string& caution : content.cautions)
    sum += 40 + caution.size();
  for (const PinStrip& strip : content.strips)
    for (const StripPin& pin : strip.pins)
      sum += 40 + pin.label.size() + pin.net.size();
  return sum;
}

Result<Pieces> compose(const Sheet& sheet) {
  Pieces pieces = titleAndFacts(sheet);
  append(pieces, findings(sheet));
  append(pieces, pictures(sheet));
  append(pieces, cautions(sheet));
  append(pieces, work(sheet));
  auto printed = photos(sheet);
  if (!printed) return failure(printed.error());
  append(pieces, std::move(*printed));
  auto money = charges(sheet);
  if (!money) return failure(money.error());
  append(pieces, std::move(*money));
  append(pieces, internalNotes(sheet));
  // A page with signatures alone says nothing of what was signed.
  pieces.back().keepWithNext = true;
  append(pieces, signatures(sheet));
  return pieces;
}

/// Job number, device and page number: a page that got loose finds its job.
void paintFrame(QPainter& painter, const Sheet& sheet, std::size_t page, std::size_t pages) {
  const SheetStyle& style = sheet.style;
  const QFontMetricsF metrics(style.small);
  const double width = style.body.width();
  const double line = metrics.height();
  painter.setFont(style.small);
  painter.setPen(sheetColors().quietInk);
  const QString number = metrics.elidedText(shown(pattern("core", "Job ")) + jobNumber(sheet.job()),
                                            Qt::ElideRight, width * 0.5);
  const double foot = style.body.bottom() + 6 * SheetStyle::millimetre;
  const QRectF footBox(style.body.left(), foot, width, line);
  painter.drawText(footBox, Qt::AlignLeft, number);
  painter.drawText(footBox, Qt::AlignRight, shown(pattern("core", "%1 of %2")).arg(page + 1).arg(pages));
  painter.setPen(QPen(sheetColors().grid, 0.5 * SheetStyle::point));
  painter.drawLine(footBox.topLeft() - QPointF(0, 2 * SheetStyle::point),
                   footBox.topRight() - QPointF(0, 2 * SheetStyle::point));
  if (page == 0) return;
  const QRectF headBox(style.body.left(), style.firstBody.top(), width, line);
  painter.setPen(sheetColors().quietInk);
  const QString device = cleaned(sheet.job().device).simplified();
  painter.drawText(headBox, Qt::AlignLeft, metrics.elidedText(device, Qt::ElideRight, width * 0.7));
  painter.drawText(headBox, Qt::AlignRight,
                   sheet.workshopCopy() ? shown(pattern("core", "Workshop copy"))
                                        : shown(pattern("core", "Customer's copy")));
}

Result<QByteArray> print(const Sheet& sheet, const std::vector<PlacedPage>& pages) {
  const double left = sheet.workshopCopy() ? sheet.style.body.left() : sheet.style.customerBody.left();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setTitle(shown(pattern("core", "Job sheet ")) + jobNumber(sheet.job()));
  writer.setCreator(QStringLiteral("Netmend"));
  writer.setResolution(SheetStyle::unitsPerInch);
  writer.setPageSize(QPageSize(sheet.options.paper == PaperSize::a4 ? QPageSize::A4 : QPageSize::Letter));
  writer.setPageMargins(QMarginsF(0, 0, 0, 0));
  QPainter painter;
  if (!painter.begin(&writer)) return failure({pattern("core", "the PDF could not be started")});
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0) writer.newPage();
    if (sheet.workshopCopy()) paintFrame(painter, sheet, i, pages.size());
    for (const PlacedPiece& placed : pages[i]) {
      painter.save();
      placed.piece->paint(painter, QPointF(left, placed.top));
      painter.restore();
    }
  }
  painter.end();
  return bytes;
}

} // namespace

Result<QByteArray> jobSheet(const SheetContent& content, const SheetOptions& options) {
  if (charactersOf(content, options) > mostCharacters)
    return failure({pattern("core", "the job holds too much text for a sheet"),
                    "",
                    "",
                    {},
                    pattern("core", "at most 500 pages")});
  const Sheet sheet{content, options, sheetStyle(options.paper)};
  if (!sheet.workshopCopy()) {
    const auto page = customerPage(sheet);
    if (!page) return failure(page.error());
    return print(sheet, {page->page});
  }
  const auto pieces = compose(sheet);
  if (!pieces) return failure(pieces.error());
  const std::vector<PlacedPage> pages = paginate(*pieces, sheet.style.firstBody, sheet.style.body);
  if (pages.size() > mostPages)
    return failure({pattern("core", "the sheet would be too long"), "", "",
                    said(pattern("core", "{} pages"), pages.size()), pattern("core", "at most 500")});
  return print(sheet, pages);
}

Result<void> writeJobSheet(const std::filesystem::path& path, const SheetContent& content,
                           const SheetOptions& options) {
  auto bytes = jobSheet(content, options);
  if (!bytes) {
    bytes.error().file = path.string();
    return failure(std::move(bytes.error()));
  }
  return writeFileAtomically(path, {bytes->constData(), static_cast<std::size_t>(bytes->size())});
}

} // namespace netmend
