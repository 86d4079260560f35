#include "sheet_copy.h"

#include <algorithm>

#include <QPageSize>
#include <QPainter>
#include <QPrinter>
#include <QTemporaryDir>
#include <poppler-qt6.h>

#include "netmend/base/file.h"
#include "netmend/repair/jumper_case.h"

namespace netmend {

namespace {

constexpr double pointsPerInch = 72.0;
constexpr double printedDotsPerInch = 300.0; ///< finer than the sheet's thinnest line; 600 is 35 MB a page

Result<std::unique_ptr<Poppler::Document>> openPdf(const QByteArray& pdf) {
  auto document = Poppler::Document::loadFromData(pdf);
  if (!document || document->isLocked()) return failure({"the written sheet could not be read again"});
  document->setRenderHint(Poppler::Document::Antialiasing);
  document->setRenderHint(Poppler::Document::TextAntialiasing);
  return document;
}

} // namespace

Result<SheetPages> makeSheet(const SheetOrder& order, const std::stop_token& stop) {
  const QTemporaryDir folder;
  if (!folder.isValid()) return failure({"no temporary folder: " + folder.errorString().toStdString()});
  const std::filesystem::path file(folder.filePath(QStringLiteral("sheet.pdf")).toStdU16String());
  SheetContent content;
  content.job = order.job;
  content.cautions = order.cautions;
  if (order.board) {
    content.board = order.board.get();
    content.line = linesOf(order.job.actions, *order.lookup, *order.graph);
  }
  if (auto written = writeJobSheet(file, content, order.options); !written) return failure(written.error());
  const auto bytes = readFile(file);
  if (!bytes) return failure(bytes.error());
  SheetPages out;
  out.pdf = QByteArray(bytes->data(), static_cast<qsizetype>(bytes->size()));
  const auto document = openPdf(out.pdf);
  if (!document) return failure(document.error());
  for (int i = 0; i < (*document)->numPages() && !stop.stop_requested(); ++i) {
    const auto page = (*document)->page(i);
    if (!page) return failure({"page " + std::to_string(i + 1) + " could not be drawn"});
    const double resolution = order.pageWidth * pointsPerInch / page->pageSizeF().width();
    out.pages.push_back(page->renderToImage(resolution, resolution));
  }
  return out;
}

Result<void> printSheet(const QByteArray& pdf, QPrinter& printer) {
  const auto document = openPdf(pdf);
  if (!document) return failure(document.error());
  const int pages = (*document)->numPages();
  const int first = std::max(1, printer.fromPage());
  const int last = printer.toPage() > 0 ? std::min(pages, printer.toPage()) : pages;
  const double resolution = std::min<double>(printer.resolution(), printedDotsPerInch);
  printer.setFullPage(true);
  QPainter painter;
  for (int i = first; i <= last; ++i) {
    const auto page = (*document)->page(i - 1);
    if (!page) return failure({"page " + std::to_string(i) + " could not be drawn"});
    const bool begun = i == first ? painter.begin(&printer) : printer.newPage();
    if (!begun) return failure({"the printer takes no page", printer.printerName().toStdString()});
    const QImage image = page->renderToImage(resolution, resolution);
    // On paper of another size the page is made to fit rather than cut off.
    const QRectF paper = printer.paperRect(QPrinter::DevicePixel);
    const QSizeF fitted = QSizeF(image.size()).scaled(paper.size(), Qt::KeepAspectRatio);
    painter.drawImage(QRectF(QPointF(0, 0), fitted), image);
  }
  if (painter.isActive() && !painter.end()) return failure({"the printer did not take the last page"});
  return {};
}

} // namespace netmend
