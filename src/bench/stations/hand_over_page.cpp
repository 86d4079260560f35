#include "hand_over_page.h"

#include <algorithm>
#include <utility>

#include <QCheckBox>
#include <QComboBox>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QLabel>
#include <QLocale>
#include <QMimeData>
#include <QPageSize>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSettings>
#include <QTabWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "bench/late/late.h"
#include "bench/late/paper.h"
#include "bench/session/proof_open.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "charges_view.h"
#include "netmend/base/file.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/job.h"
#include "photos_view.h"
#include "scrolled.h"
#include "sheet_copy.h"
#include "sheet_preview.h"

namespace netmend {

namespace {

constexpr int chargesTab = 0;
constexpr int photosTab = 1;
constexpr int sheetPause = 300; ///< ms without a change until the sheet is written anew
constexpr int notesPause = 150; ///< ms without a key until what was typed is kept
constexpr int redrawFrom = 24;  ///< pixels by which the preview's width changes before it is drawn anew

QString workshopKey() {
  return QStringLiteral("sheet/workshop");
}
QString paperKey() {
  return QStringLiteral("sheet/paper");
}

QPlainTextEdit* textField(const QString& name, const QString& object, QWidget* parent) {
  auto* field = new QPlainTextEdit(parent);
  field->setTabChangesFocus(true);
  field->setAccessibleName(name);
  field->setObjectName(object);
  return field;
}

} // namespace

HandOverPage::HandOverPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent),
      summary_(makeLabel(Letters::reading, QStringLiteral("handOverSummary"), this)),
      total_(makeLabel(Letters::point, QStringLiteral("total"), this)),
      readiness_(makeLabel(Letters::metre, QStringLiteral("sheetReady"), this)), tabs_(new QTabWidget(this)),
      charges_(new ChargesView(desk.job, this)), photos_(new PhotosView(desk.job, this)),
      notes_(textField(tr("Internal notes"), QStringLiteral("internalNotes"), this)),
      workshop_(textField(tr("Workshop's name and address"), QStringLiteral("workshop"), this)),
      customer_(new QCheckBox(tr("Customer's cop&y"), this)), paper_(new QComboBox(this)),
      preview_(new SheetPreview(this)), writing_(new QTimer(this)), typing_(new QTimer(this)), sheets_(this),
      printing_(this) {
  setAcceptDrops(true);
  auto* layout = new QHBoxLayout(this);
  auto* left = new QVBoxLayout;
  left->addLayout(head());
  tabs_->setObjectName(QStringLiteral("tabs"));
  // Each scrolls by itself where letters are large: so the room for one is not worked out for all of them.
  tabs_->addTab(scrolled(charges_, this), tr("&Charges"));
  tabs_->addTab(scrolled(photos_, this), tr("P&hotos"));
  tabs_->addTab(scrolled(notes(), this), tr("&Notes and letterhead"));
  left->addWidget(tabs_, 1);
  layout->addLayout(left, 4);
  auto* right = new QVBoxLayout;
  right->addLayout(paper());
  right->addWidget(preview_, 1);
  layout->addLayout(right, 5);

  writing_->setSingleShot(true);
  writing_->setInterval(sheetPause);
  connect(writing_, &QTimer::timeout, this, &HandOverPage::writeSheet);
  typing_->setSingleShot(true);
  typing_->setInterval(notesPause);
  connect(typing_, &QTimer::timeout, this, &HandOverPage::keepNotes);
  connect(notes_, &QPlainTextEdit::textChanged, this, [this] {
    if (showing_) return;
    notesTyped_ = true;
    typing_->start();
  });
  connect(workshop_, &QPlainTextEdit::textChanged, typing_, qOverload<>(&QTimer::start));
  connect(charges_, &ChargesView::told, this, &StationPage::told);
  connect(photos_, &PhotosView::told, this, &StationPage::told);
  for (const auto changed : {&BenchJob::jobChanged, &BenchJob::readingsChanged, &BenchJob::actionsChanged,
                             &BenchJob::papersChanged})
    connect(&desk_.job, changed, this, &HandOverPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &HandOverPage::outOfDate);
  workshop_->setPlainText(QSettings().value(workshopKey()).toString());
  refresh();
}

QLayout* HandOverPage::head() {
  auto* head = new QVBoxLayout;
  auto* row = new WrapLayout;
  total_->setWordWrap(false);
  row->addWidget(total_);
  QPushButton* done = makeButton(tr("Handed over"), QKeySequence(Qt::CTRL | Qt::Key_H), this);
  done->setObjectName(QStringLiteral("handedOver"));
  connect(done, &QPushButton::clicked, this, &HandOverPage::handOver);
  row->addWidget(done);
  head->addLayout(row);
  head->addWidget(summary_);
  return head;
}

QWidget* HandOverPage::notes() {
  auto* box = new QWidget(this);
  auto* layout = new QVBoxLayout(box);
  struct Field {
    QString label;
    QPlainTextEdit* text;
  };
  for (const Field& field :
       {Field{tr("Internal notes: never on the customer's copy"), notes_},
        Field{tr("Workshop's name and address, for the head of every sheet"), workshop_}}) {
    auto* label = new QLabel(field.label, box);
    label->setWordWrap(true);
    label->setBuddy(field.text);
    layout->addWidget(label);
    layout->addWidget(field.text, 1);
  }
  return box;
}

QLayout* HandOverPage::paper() {
  auto* column = new QVBoxLayout;
  column->addWidget(readiness_);
  auto* row = new WrapLayout;
  QPushButton* print = makeButton(tr("Print"), QKeySequence::Print, this);
  connect(print, &QPushButton::clicked, this, &HandOverPage::choosePrinter);
  row->addWidget(print);
  QPushButton* save = makeButton(tr("Save as PDF"), QKeySequence::Save, this);
  connect(save, &QPushButton::clicked, this, &HandOverPage::chooseFile);
  row->addWidget(save);
  customer_->setObjectName(QStringLiteral("customerCopy"));
  connect(customer_, &QCheckBox::toggled, this, &HandOverPage::outOfDate);
  row->addWidget(customer_);
  paper_->setAccessibleName(tr("Paper"));
  paper_->setObjectName(QStringLiteral("paper"));
  paper_->addItem(tr("A4"), QStringLiteral("a4"));
  paper_->addItem(tr("Letter"), QStringLiteral("letter"));
  const QString usual = QLocale().measurementSystem() == QLocale::ImperialUSSystem ? QStringLiteral("letter")
                                                                                   : QStringLiteral("a4");
  paper_->setCurrentIndex(std::max(0, paper_->findData(QSettings().value(paperKey(), usual))));
  connect(paper_, &QComboBox::currentIndexChanged, this, [this] {
    QSettings().setValue(paperKey(), paper_->currentData());
    outOfDate();
  });
  row->addWidget(paper_);
  column->addLayout(row);
  return column;
}

void HandOverPage::arrive() {
  tabs_->setCurrentIndex(chargesTab);
  charges_->focusEntry();
}

QString HandOverPage::stateOfJob() const {
  return shown(nameOf(desk_.job.job()->state));
}

void HandOverPage::refresh() {
  const Job* job = desk_.job.job();
  showing_ = true;
  const QString notes = job != nullptr ? QString::fromStdString(job->internalNotes) : QString();
  if (notes_->toPlainText() != notes && !notesTyped_) notes_->setPlainText(notes);
  notes_->setEnabled(job != nullptr);
  showing_ = false;
  if (job == nullptr) {
    total_->setText(tr("No job is open"));
    summary_->clear();
  } else {
    total_->setText(tr("Total %1").arg(charges_->total()));
    const auto orOpen = [](const std::string& text) {
      return text.empty() ? tr("not stated") : QString::fromStdString(text);
    };
    summary_->setText(tr("Job %1, %2\n%3 for %4\n%5")
                          .arg(QString::fromStdString(job->number), stateOfJob(), orOpen(job->device),
                               orOpen(job->customer), orOpen(job->symptom)));
  }
  outOfDate();
}

void HandOverPage::outOfDate() {
  ready_ = false;
  sheets_.cancel();
  if (desk_.job.job() == nullptr) {
    sheet_.clear();
    preview_->setPages({});
    readiness_->setText(tr("No sheet without a job"));
    return;
  }
  readiness_->setText(tr("The sheet is being written"));
  // A page that nobody looks at is written when somebody comes, or when it is to be saved.
  if (isVisible() || !then_.empty()) writing_->start();
}

void HandOverPage::showEvent(QShowEvent* event) {
  StationPage::showEvent(event);
  seen_ = false;
}

void HandOverPage::paintEvent(QPaintEvent* event) {
  StationPage::paintEvent(event);
  // First the page: the sheet is written with the same fonts, and its first picture would wait for them.
  if (std::exchange(seen_, true) || ready_ || desk_.job.job() == nullptr) return;
  writing_->start(0);
}

void HandOverPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  if (std::abs(preview_->wantedWidth() - drawnFor_) >= redrawFrom && drawnFor_ > 0) outOfDate();
}

void HandOverPage::writeSheet() {
  writing_->setInterval(sheetPause);
  const Job* job = desk_.job.job();
  if (job == nullptr) return;
  SheetOrder order;
  order.job = *job;
  order.cautions = desk_.job.data().work.cautions;
  if (const BoardUnderWork* board = desk_.job.board()) order.board = *board;
  order.options.paper =
      paper_->currentData().toString() == QStringLiteral("letter") ? PaperSize::letter : PaperSize::a4;
  order.options.copy = customer_->isChecked() ? SheetCopy::customer : SheetCopy::workshop;
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
        readiness_->setText(customer_->isChecked()
                                ? tr("Customer's copy, ready to print: %n page(s)", nullptr, pages)
                                : tr("Ready to print: %n page(s)", nullptr, pages));
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
  dialog->selectFile((customer_->isChecked() ? tr("job-%1-customer.pdf") : tr("job-%1.pdf")).arg(number));
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

void HandOverPage::keepNotes() {
  typing_->stop();
  if (QSettings settings; settings.value(workshopKey()).toString() != workshop_->toPlainText()) {
    settings.setValue(workshopKey(), workshop_->toPlainText());
    outOfDate();
  }
  if (!notesTyped_) return;
  notesTyped_ = false;
  const Job* job = desk_.job.job();
  const std::string text = notes_->toPlainText().toStdString();
  if (job != nullptr && job->internalNotes != text)
    desk_.job.keep([&](Job& kept) { kept.internalNotes = text; });
}

void HandOverPage::handOver() {
  const Job* job = desk_.job.job();
  if (job == nullptr) return;
  keepNotes();
  const bool repaired = actionToProve(*job) != nullptr;
  const auto points = proofPoints(proofBasis(desk_.job));
  const bool proved = repaired && openForProof(points, *job, {}, desk_.job.places()).isEmpty();
  if (!desk_.job.setState(repaired ? JobState::handedOver : JobState::returnedUnrepaired)) return;
  Q_EMIT told(!repaired ? tr("Returned unrepaired; Undo takes it back")
              : proved  ? tr("Handed over; Undo takes it back")
                        : tr("Handed over, though the repair is not proved in full; Undo takes it back"),
              false);
}

void HandOverPage::dragEnterEvent(QDragEnterEvent* event) {
  const auto urls = event->mimeData()->urls();
  const bool pictures = std::any_of(urls.begin(), urls.end(), [](const QUrl& url) {
    const QString file = url.toLocalFile().toLower();
    return file.endsWith(QStringLiteral(".png")) || file.endsWith(QStringLiteral(".jpg")) ||
           file.endsWith(QStringLiteral(".jpeg"));
  });
  // Anything else, as a board, is the window's.
  if (pictures)
    event->acceptProposedAction();
  else
    event->ignore();
}

void HandOverPage::dropEvent(QDropEvent* event) {
  QStringList files;
  for (const QUrl& url : event->mimeData()->urls())
    files << url.toLocalFile();
  tabs_->setCurrentIndex(photosTab);
  photos_->addFiles(files);
  event->acceptProposedAction();
}

} // namespace netmend
