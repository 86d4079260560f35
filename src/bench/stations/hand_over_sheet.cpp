// The document of the station: written, shown, saved and printed.
#include "hand_over_page.h"

#include <utility>

#include <QComboBox>
#include <QFileDialog>
#include <QLabel>
#include <QPageSize>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>

#include "bench/late/late.h"
#include "bench/late/paper.h"
#include "netmend/base/file.h"
#include "netmend/drawing/shown.h"
#include "sheet_copy.h"
#include "sheet_preview.h"

namespace netmend {

void HandOverPage::writeSheet() {
  writing_->setInterval(pauseOfSheet);
  const Job* job = desk_.job.job();
  if (job == nullptr) return;
  SheetOrder order;
  order.job = *job;
  order.cautions = desk_.job.data().work.cautions;
  if (const BoardUnderWork* board = desk_.job.board()) order.board = *board;
  order.options.paper =
      paper_->currentData().toString() == QStringLiteral("letter") ? PaperSize::letter : PaperSize::a4;
  order.options.copy = customers() ? SheetCopy::customer : SheetCopy::workshop;
  order.options.workshop = workshop_->toPlainText().toStdString();
  order.pageWidth = preview_->wantedWidth();
  drawnFor_ = order.pageWidth;
  sheets_.run<Result<SheetPages>>(
      [order = std::move(order)](const std::stop_token& stop) { return makeSheet(order, stop); },
      [this](Result<SheetPages> made) {
        if (!made) {
          then_.clear();
          readiness_->setText(tr("No sheet: %1").arg(shown(made.error())));
          Q_EMIT told(shown(made.error()), true);
          return;
        }
        if (made->undrawn) Q_EMIT told(shown(*made->undrawn), true);
        sheet_ = made->pdf;
        const auto pages = static_cast<int>(made->pages.size());
        preview_->setPages(std::move(made->pages));
        ready_ = true;
        readiness_->clear();
        customer_->setText(tr("Customer's copy"));
        workshopCopy_->setText(customers() ? tr("Workshop copy")
                                           : tr("Workshop copy, %n page(s)", nullptr, pages));
        const auto then = std::exchange(then_, {});
        for (const auto& each : then)
          each();
      });
}

void HandOverPage::whenReady(std::function<void()> then) {
  keepNotes();
  if (ready_) {
    then();
    return;
  }
  if (desk_.job.job() == nullptr) {
    Q_EMIT told(tr("No job is open"), true);
    return;
  }
  then_.push_back([this, id = desk_.job.job()->id, then = std::move(then)] {
    if (stillOpen(id)) then();
  });
  writing_->start(0);
}

bool HandOverPage::stillOpen(JobId id) {
  const bool same = desk_.job.job() != nullptr && desk_.job.job()->id == id;
  if (!same) Q_EMIT told(tr("Another job is open by now: nothing was saved or printed"), true);
  return same;
}

void HandOverPage::saveTo(const std::filesystem::path& file) {
  whenReady([this, file] {
    const auto written =
        writeFileAtomically(file, {sheet_.constData(), static_cast<std::size_t>(sheet_.size())});
    Q_EMIT told(written ? tr("Saved: %1").arg(QString::fromStdString(file.string())) : shown(written.error()),
                !written);
  });
}

void HandOverPage::printTo(std::shared_ptr<QPrinter> printer) {
  whenReady([this, printer = std::move(printer)] {
    if (printing_.busy()) {
      Q_EMIT told(tr("The sheet before is still being printed"), true);
      return;
    }
    printing_.run<Result<void>>(
        [pdf = sheet_, printer](const std::stop_token&) -> Result<void> {
          const auto paper = late<Paper>();
          if (!paper) return failure(paper.error());
          return (*paper)->print(pdf, *printer);
        },
        [this](const Result<void>& printed) {
          Q_EMIT told(printed ? tr("Printed") : shown(printed.error()), !printed);
        });
    Q_EMIT told(tr("The sheet is being printed"), false);
  });
}

void HandOverPage::chooseFile() {
  const Job* job = desk_.job.job();
  if (job == nullptr) return;
  auto* dialog = new QFileDialog(this, tr("Save the job sheet"));
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setAcceptMode(QFileDialog::AcceptSave);
  dialog->setDefaultSuffix(QStringLiteral("pdf"));
  dialog->setNameFilter(tr("PDF (*.pdf)"));
  const QString number = QString::fromStdString(job->number);
  dialog->selectFile((customers() ? tr("job-%1-customer.pdf") : tr("job-%1.pdf")).arg(number));
  connect(dialog, &QFileDialog::fileSelected, this, [this, id = job->id](const QString& file) {
    if (stillOpen(id)) saveTo(std::filesystem::path(file.toStdU16String()));
  });
  dialog->setModal(false);
  dialog->show();
}

void HandOverPage::choosePrinter() {
  if (desk_.job.job() == nullptr) return;
  const auto paper = late<Paper>();
  if (!paper) {
    Q_EMIT told(shown(paper.error()), true);
    return;
  }
  const bool letter = paper_->currentData().toString() == QStringLiteral("letter");
  (*paper)->choosePrinter(this, tr("Job sheet %1").arg(QString::fromStdString(desk_.job.job()->number)),
                          QPageSize(letter ? QPageSize::Letter : QPageSize::A4),
                          [this, id = desk_.job.job()->id](const std::shared_ptr<QPrinter>& printer) {
                            if (stillOpen(id)) printTo(printer);
                          });
}

} // namespace netmend
