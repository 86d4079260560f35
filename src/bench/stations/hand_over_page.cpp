#include "hand_over_page.h"

#include <algorithm>
#include <utility>

#include <QComboBox>
#include <QDragEnterEvent>
#include <QLabel>
#include <QLocale>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSettings>
#include <QTimer>
#include <QVBoxLayout>

#include "bench/session/proof_open.h"
#include "bench/widgets/letters.h"
#include "charges_view.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "photos_view.h"
#include "scrolled.h"
#include "sheet_preview.h"

namespace netmend {

namespace {

// Pixels at 100 %, from which there is room for something.
constexpr int paneFrom = 900;
constexpr int photosFrom = 520;
constexpr int foldFrom = 900;
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
    : StationPage(desk, parent), total_(makeLabel(Letters::point, QStringLiteral("total"), this)),
      currency_(makeLabel(Letters::large, QStringLiteral("currency"), this)),
      proved_(makeLabel(Letters::metre, QStringLiteral("provedState"), this)),
      proof_(makeLabel(Letters::reading, QStringLiteral("provedBy"), this)),
      readiness_(makeLabel(Letters::small, QStringLiteral("sheetReady"), this)),
      charges_(new ChargesView(desk.job, this)), photos_(new PhotosView(desk.job, this)),
      letterhead_(makeLabel(Letters::reading, QStringLiteral("letterhead"), this)),
      notes_(textField(tr("Internal notes"), QStringLiteral("internalNotes"), this)),
      workshop_(textField(tr("Workshop's name and address"), QStringLiteral("workshop"), this)),
      customer_(makePrompt(tr("Customer's copy"), QKeySequence(), this)),
      workshopCopy_(makePrompt(tr("Workshop copy"), QKeySequence(Qt::Key_Tab), this)),
      paper_(new QComboBox(this)), preview_(new SheetPreview(this)), keys_(new QWidget(this)),
      writing_(new QTimer(this)), typing_(new QTimer(this)), sheets_(this), printing_(this) {
  setAcceptDrops(true);
  auto* layout = new QHBoxLayout(this);
  layout->addWidget(scrolled(card(), this), 15);
  pane_ = paper();
  layout->addWidget(pane_, 16);
  makeKeys();
  layOut();

  writing_->setSingleShot(true);
  writing_->setInterval(pauseOfSheet);
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

QWidget* HandOverPage::card() {
  auto* box = makeCard(this);
  card_ = box;
  auto* column = new QVBoxLayout(box);
  column->addLayout(head());
  column->addWidget(makeRule(Qt::Horizontal, box));
  column->addWidget(charges_, 1);
  column->addWidget(makeRule(Qt::Horizontal, box));
  column->addWidget(photos_);
  column->addWidget(makeRule(Qt::Horizontal, box));
  column->addLayout(letterhead());
  fold_ = notes();
  fold_->hide();
  column->addWidget(fold_, 1);
  return box;
}

QLayout* HandOverPage::head() {
  auto* row = new QHBoxLayout;
  auto* sum = new QVBoxLayout;
  sum->setSpacing(0);
  sum->addWidget(makeCaption(tr("To pay"), this));
  auto* figure = new QHBoxLayout;
  total_->setWordWrap(false);
  currency_->setWordWrap(false);
  figure->addWidget(total_, 0, Qt::AlignBottom);
  figure->addWidget(currency_, 0, Qt::AlignBottom);
  figure->addStretch(1);
  sum->addLayout(figure);
  row->addLayout(sum, 1);
  auto* proof = new QVBoxLayout;
  proof->setSpacing(0);
  proof->addStretch(1);
  for (QLabel* label : {proved_, proof_}) {
    label->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    proof->addWidget(label);
  }
  setLetters(*proved_, Letters::metre, true);
  setQuiet(*proof_);
  row->addLayout(proof, 1);
  return row;
}

QLayout* HandOverPage::letterhead() {
  auto* row = new QHBoxLayout;
  row->addWidget(makeCaption(tr("Letterhead"), this), 0, Qt::AlignTop);
  row->addWidget(letterhead_, 1);
  change_ = makeButton(tr("Change"), QKeySequence(Qt::CTRL | Qt::Key_L), this);
  change_->setAccessibleName(tr("Change notes and letterhead"));
  change_->setObjectName(QStringLiteral("changeLetterhead"));
  change_->setCheckable(true);
  connect(change_, &QPushButton::toggled, this, [this](bool open) {
    fold_->setVisible(open);
    charges_->setVisible(!open || height() > scaled(foldFrom));
    if (open)
      workshop_->setFocus();
    else
      arrive();
  });
  row->addWidget(change_, 0, Qt::AlignTop);
  return row;
}

void HandOverPage::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins({});
  save_ = makeButton(tr("Save PDF"), QKeySequence::Save, keys_);
  connect(save_, &QPushButton::clicked, this, &HandOverPage::chooseFile);
  row->addWidget(save_);
  done_ = makeButton(tr("Handed over"), QKeySequence(Qt::CTRL | Qt::Key_H), keys_);
  done_->setObjectName(QStringLiteral("handedOver"));
  connect(done_, &QPushButton::clicked, this, &HandOverPage::handOver);
  row->addWidget(done_);
  QPushButton* print = makeButton(tr("Print"), QKeySequence::Print, keys_);
  connect(print, &QPushButton::clicked, this, &HandOverPage::choosePrinter);
  setMain(*print);
  row->addWidget(print);
}

void HandOverPage::layOut() {
  const int margin = scaled(face::margin), gap = scaled(2 * face::grid);
  layout()->setContentsMargins(margin, gap, margin, gap);
  layout()->setSpacing(gap);
  card_->layout()->setContentsMargins(margin, gap, margin, gap);
  card_->layout()->setSpacing(scaled(face::grid));
  currency_->setContentsMargins(scaled(face::grid), 0, 0, scaled(6)); // onto the figure's line
  // With large letters the bill needs all the room; the copies print without being looked at.
  const bool narrow = width() < scaled(paneFrom);
  pane_->setVisible(!narrow);
  save_->setText(narrow ? tr("PDF") : tr("Save PDF"));
  done_->setText(narrow ? tr("Done") : tr("Handed over"));
  save_->setShortcut(QKeySequence::Save); // another text takes the shortcut away
  done_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_H));
  photos_->setVisible(height() >= scaled(photosFrom));
}

QSize HandOverPage::minimumSizeHint() const {
  return {scaled(480), scaled(240)};
}

bool HandOverPage::customers() const {
  return customer_->isChecked();
}

void HandOverPage::showCopy(bool customers) {
  customer_->setChecked(customers);
  workshopCopy_->setChecked(!customers);
  outOfDate();
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

QWidget* HandOverPage::paper() {
  auto* pane = new QWidget(this);
  auto* column = new QVBoxLayout(pane);
  column->setContentsMargins({});
  auto* row = new QHBoxLayout;
  customer_->setObjectName(QStringLiteral("customerCopy"));
  workshopCopy_->setObjectName(QStringLiteral("workshopCopy"));
  customer_->setChecked(true);
  for (QPushButton* copy : {customer_, workshopCopy_}) {
    copy->setCheckable(true);
    connect(copy, &QPushButton::clicked, this, [this, copy] { showCopy(copy == customer_); });
    row->addWidget(copy);
  }
  customer_->setChecked(true);
  charges_->onTab = [this] { showCopy(!customers()); };
  setQuiet(*readiness_);
  readiness_->setWordWrap(false);
  readiness_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  readiness_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  row->addWidget(readiness_, 1);
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
  column->addWidget(preview_, 1);
  return pane;
}

void HandOverPage::arrive() {
  charges_->readPresets();
  charges_->focusEntry();
}

void HandOverPage::showProof() {
  const Job* job = desk_.job.job();
  proof_->clear();
  proved_->clear();
  if (job == nullptr) return;
  const RepairAction* action = actionToProve(*job);
  if (action == nullptr) {
    proved_->setText(tr("NOT REPAIRED"));
    return;
  }
  const auto points = proofPoints(proofBasis(desk_.job));
  const QStringList open = openForProof(points, *job, {}, desk_.job.places());
  proved_->setText(open.isEmpty() ? QStringLiteral("✓ ") + tr("PROVED") : tr("NOT PROVED"));
  std::ptrdiff_t functions = 0;
  for (const RepairAction& each : job->actions)
    functions += std::count_if(each.steps.begin(), each.steps.end(),
                               [](const WorkStep& step) { return isFunctionCheck(step); });
  proof_->setText(open.isEmpty()
                      ? tr("%n point(s)", nullptr, static_cast<int>(points.size())) + QStringLiteral(", ") +
                            tr("%n function(s)", nullptr, static_cast<int>(functions))
                      : tr("%n thing(s) open", nullptr, static_cast<int>(open.size())));
  proof_->setToolTip(open.join(QLatin1Char('\n')));
}

void HandOverPage::refresh() {
  const Job* job = desk_.job.job();
  showing_ = true;
  const QString notes = job != nullptr ? QString::fromStdString(job->internalNotes) : QString();
  if (notes_->toPlainText() != notes && !notesTyped_) notes_->setPlainText(notes);
  notes_->setEnabled(job != nullptr);
  showing_ = false;
  total_->setText(job != nullptr ? charges_->total() : tr("No job"));
  currency_->setText(job != nullptr ? QString::fromStdString(job->currency) : QString());
  showProof();
  const QString shop = workshop_->toPlainText().trimmed();
  letterhead_->setText(shop.isEmpty() ? tr("none yet") : shop.section(QLatin1Char('\n'), 0, 1));
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

bool HandOverPage::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) layOut();
  return StationPage::event(event);
}

void HandOverPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  layOut();
  if (std::abs(preview_->wantedWidth() - drawnFor_) >= redrawFrom && drawnFor_ > 0) outOfDate();
}

void HandOverPage::keepNotes() {
  typing_->stop();
  if (QSettings settings; settings.value(workshopKey()).toString() != workshop_->toPlainText()) {
    settings.setValue(workshopKey(), workshop_->toPlainText());
    refresh();
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
  photos_->addFiles(files);
  event->acceptProposedAction();
}

} // namespace netmend
