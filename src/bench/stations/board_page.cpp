#include "board_page.h"

#include <algorithm>
#include <utility>

#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStackedLayout>
#include <QStackedWidget>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "draw_view.h"
#include "netmend/drawing/shown.h"
#include "part_rows.h"

namespace netmend {

namespace {

constexpr int mostRecent = 12;

} // namespace

BoardPage::BoardPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), filter_(new QLineEdit(this)),
      notes_(makeButton(tr("Notes"), QKeySequence(Qt::ALT | Qt::Key_N), this)), keys_(new QWidget(this)),
      name_(makeLabel(Letters::large, QStringLiteral("boardName"), this)),
      known_(makeLabel(Letters::reading, QStringLiteral("boardKnown"), this)),
      opening_(makeLabel(Letters::reading, QStringLiteral("boardOpening"), this)),
      progress_(new QProgressBar(this)),
      cancel_(makeButton(tr("Stop reading"), QKeySequence(Qt::Key_Escape), this)), parts_(new PartRows(this)),
      recent_(new QListWidget(this)), offered_(new QListWidget(this)), notices_(new QListWidget(this)) {
  stack_ = new QStackedLayout(this);
  auto* overview = new QWidget(this);
  makeOverview(*overview);
  makeKeys();
  stack_->addWidget(overview);
  connect(&desk_.job, &BenchJob::boardChanged, this, &BoardPage::showBoard);
  connect(&desk_.job, &BenchJob::fileOpened, this, &BoardPage::remember);
  connect(&desk_.job, &BenchJob::boardsOffered, this, &BoardPage::offer);
  connect(&desk_.job, &BenchJob::openingChanged, this, &BoardPage::showOpening);
  listRecent();
  showBoard();
  showOpening({}, 1.0);
}

DrawView& BoardPage::drawView() {
  // Made when it is first wanted: the window starts without it.
  if (draw_ == nullptr) {
    draw_ = new DrawView(desk_, this);
    draw_->setTheme(theme_);
    draw_->setMetered(metered_);
    stack_->addWidget(draw_);
    connect(draw_, &DrawView::told, this, &BoardPage::told);
    connect(draw_, &DrawView::mapStale, this, &BoardPage::mapStale);
    connect(draw_, &DrawView::mapWanted, this, [this] {
      if (drawing_) Q_EMIT mapWanted();
    });
    connect(draw_, &DrawView::straightenedOnMap, this, &BoardPage::allWanted);
    connect(draw_, &DrawView::leaveWanted, this, [this] { setDrawing(false); });
  }
  return *draw_;
}

void BoardPage::setDrawing(bool drawing) {
  if (drawing && !desk_.drawing.begin()) return;
  if (!drawing && drawing_) desk_.drawing.workUp();
  drawing_ = drawing;
  if (drawing) (void)drawView();
  stack_->setCurrentIndex(drawing ? 1 : 0);
  Q_EMIT mapHandChanged();
  arrive();
}

void BoardPage::setMetered(bool metered) {
  metered_ = metered;
  if (draw_ != nullptr) draw_->setMetered(metered);
}

ReadingMode BoardPage::wantedMode() const {
  return drawing_ ? draw_->wantedMode() : StationPage::wantedMode();
}

std::shared_ptr<const CopperMap::Hand> BoardPage::mapHand() const {
  return drawing_ ? draw_->hand() : nullptr;
}

QWidget* BoardPage::overMap() {
  return drawing_ ? &draw_->line() : nullptr;
}

void BoardPage::setTheme(PictureTheme theme) {
  StationPage::setTheme(theme);
  if (draw_ != nullptr) draw_->setTheme(theme);
}

void BoardPage::accept(const ReadingEvent& event) {
  if (drawing_) draw_->take(event);
}

QWidget* BoardPage::question() {
  question_ = new QWidget(this);
  auto* row = new WrapLayout(question_);
  row->setContentsMargins({});
  asked_ = makeLabel(Letters::metre, QStringLiteral("otherBoard"), question_);
  row->addWidget(asked_);
  stay_ = makeButton(tr("Stay with this board"), QKeySequence(Qt::Key_X), question_);
  QPushButton* open = makeButton(tr("Open it and close the job"), QKeySequence(Qt::Key_A), question_);
  row->addWidget(stay_);
  row->addWidget(open);
  connect(stay_, &QPushButton::clicked, this, [this] { desk_.job.answerOtherBoard(false); });
  connect(open, &QPushButton::clicked, this, [this] { desk_.job.answerOtherBoard(true); });
  connect(&desk_.job, &BenchJob::otherBoardAsked, this, [this](const QString& name) {
    question_->setVisible(!name.isEmpty());
    if (name.isEmpty()) return arrive();
    asked_->setText(tr("%1 is another board. Job %2 has readings of the one that is open.")
                        .arg(name, QString::fromStdString(desk_.job.job()->number)));
    stay_->setFocus();
  });
  connect(&desk_.job, &BenchJob::jobOpened, this, [this] { question_->hide(); });
  question_->hide();
  return question_;
}

void BoardPage::typedConnector(QLineEdit& field) {
  const std::string text = field.text().trimmed().toStdString();
  if (text.empty() || !desk_.job.useConnector(text)) return;
  field.clear();
  // The last one typed is the one to be walked.
  const auto parts = desk_.walk.partsToWalk();
  if (!parts.empty()) desk_.walk.setPart(*std::max_element(parts.begin(), parts.end()));
  Q_EMIT goTo(Station::walk);
}

void BoardPage::arrive() {
  if (!question_->isHidden()) return stay_->setFocus();
  if (drawing_) return draw_->arrive();
  listParts();
  if (parts_->count() > 0 && parts_->isVisibleTo(this))
    parts_->setFocus();
  else
    (desk_.job.board() == nullptr ? typed_ : another_)->setFocus();
}

void BoardPage::chooseFile() {
  auto* dialog = new QFileDialog(this, tr("Open a board file"));
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setFileMode(QFileDialog::ExistingFile);
  connect(dialog, &QFileDialog::fileSelected, this, &BoardPage::open);
  dialog->open();
}

void BoardPage::offer(const QString& archive, const QStringList& names) {
  archive_ = archive;
  offered_->clear();
  offered_->addItems(names);
  offered_->setCurrentRow(0);
  offered_->parentWidget()->show();
  offered_->setFocus();
}

void BoardPage::open(const QString& file) {
  offered_->parentWidget()->hide();
  wanted_ = file;
  desk_.job.openBoardFile(std::filesystem::path(file.toStdU16String()));
}

void BoardPage::remember(const QString& file) {
  if (file != std::exchange(wanted_, {})) return; // a job's board, which nobody looked for
  QSettings settings;
  QStringList recent = settings.value(QString::fromLatin1(recentKey)).toStringList();
  const QString full = QFileInfo(file).absoluteFilePath();
  recent.removeAll(full);
  recent.prepend(full);
  while (recent.size() > mostRecent)
    recent.removeLast();
  settings.setValue(QString::fromLatin1(recentKey), recent);
  listRecent();
}

void BoardPage::showBoard() {
  if (drawing_ && !desk_.drawing.begun()) setDrawing(false);
  offered_->parentWidget()->hide();
  listParts();
  notices_->clear();
  const BoardUnderWork* board = desk_.job.board();
  views_->setCurrentIndex(board == nullptr ? 0 : 1);
  if (board == nullptr) return;
  const auto open = static_cast<int>(board->notices.size());
  notes_->setVisible(open > 0);
  notes_->setText(tr("Notes, %1").arg(open));
  showNotes(false);
  const BoardInfo& info = board->board->info;
  QString name = QString::fromStdString(info.name.valueOr(""));
  if (name.isEmpty() && !board->board->parts.empty())
    name = tr("Connector %1").arg(QString::fromStdString(board->board->parts[0].reference));
  name_->setText(name);
  QStringList known;
  if (info.revision.known()) known << tr("revision %1").arg(QString::fromStdString(info.revision.value));
  known << tr("%n part(s)", nullptr, static_cast<int>(board->board->parts.size()));
  if (!board->board->nets.empty())
    known << tr("%n net(s)", nullptr, static_cast<int>(board->board->nets.size()));
  known << tr("%n good board(s) walked", nullptr, static_cast<int>(desk_.job.goodWalks().size()));
  QString text = known.join(QStringLiteral(" · "));
  if (board->board->nets.empty())
    text += QLatin1Char('\n') + tr("No nets are known: walk and compare work; finding the place needs them.");
  else if (board->board->tracks.empty())
    text += QLatin1Char('\n') + tr("No copper is known: finding works between pins, not along the track.");
  known_->setText(text);
  for (const auto& notice : board->notices)
    notices_->addItem(shown(notice));
}

void BoardPage::showOpening(const QString& what, double share) {
  const bool busy = !what.isEmpty();
  for (QWidget* widget : std::initializer_list<QWidget*>{opening_, progress_, cancel_})
    widget->setVisible(busy);
  opening_->setText(what);
  progress_->setValue(static_cast<int>(share * 100));
}

} // namespace netmend
