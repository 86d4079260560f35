#include "qt_paper.h"

#include <algorithm>

#include <QPageSize>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <poppler-qt6.h>

namespace netmend {

namespace {

constexpr double pointsPerInch = 72.0;
constexpr double printedDotsPerInch = 300.0; ///< finer than the sheet's thinnest line; 600 is 35 MB a page

Result<std::unique_ptr<Poppler::Document>> openPdf(const QByteArray& pdf) {
  auto document = Poppler::Document::loadFromData(pdf);
  if (!document || document->isLocked())
    return failure({pattern("core", "the written sheet could not be read again")});
  document->setRenderHint(Poppler::Document::Antialiasing);
  document->setRenderHint(Poppler::Document::TextAntialiasing);
  return document;
}

} // namespace

Result<std::vector<QImage>> QtPaper::draw(const QByteArray& pdf, int width, const std::stop_token& stop) {
  const auto document = openPdf(pdf);
  if (!document) return failure(document.error());
  std::vector<QImage> out;
  for (int i = 0; i < (*document)->numPages() && !stop.stop_requested(); ++i) {
    const auto page = (*document)->page(i);
    if (!page) return failure({said(pattern("core", "page {} could not be drawn"), i + 1)});
    const double resolution = width * pointsPerInch / page->pageSizeF().width();
    out.push_back(page->renderToImage(resolution, resolution));
  }
  return out;
}

Result<void> QtPaper::print(const QByteArray& pdf, QPrinter& printer) {
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
    if (!page) return failure({said(pattern("core", "page {} could not be drawn"), i)});
    const bool begun = i == first ? painter.begin(&printer) : printer.newPage();
    if (!begun)
      return failure({pattern("core", "the printer takes no page"), printer.printerName().toStdString()});
    const QImage image = page->renderToImage(resolution, resolution);
    // On paper of another size the page is made to fit rather than cut off.
    const QRectF paper = printer.paperRect(QPrinter::DevicePixel);
    const QSizeF fitted = QSizeF(image.size()).scaled(paper.size(), Qt::KeepAspectRatio);
    painter.drawImage(QRectF(QPointF(0, 0), fitted), image);
  }
  if (painter.isActive() && !painter.end())
    return failure({pattern("core", "the printer did not take the last page")});
  return {};
}

void QtPaper::choosePrinter(QWidget* parent, const QString& title, const QPageSize& size,
                            std::function<void(std::shared_ptr<QPrinter>)> chosen) {
  const auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
  printer->setPageSize(size);
  printer->setDocName(title);
  auto* dialog = new QPrintDialog(printer.get(), parent);
  QObject::connect(dialog, &QDialog::finished, parent,
                   [printer, dialog, chosen = std::move(chosen)](int result) {
                     if (result == QDialog::Accepted) chosen(printer);
                     dialog->deleteLater();
                   });
  dialog->setModal(false);
  dialog->show();
}

} // namespace netmend
