#include "board_page.h"

#include <algorithm>
#include <utility>

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QStackedLayout>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "draw_view.h"
#include "netmend/drawing/shown.h"

namespace netmend {

namespace {

constexpr int mostRecent = 12;

QString recentKey() {
  return QStringLiteral("recentBoards");
}

} // namespace

QWidget* BoardPage::labelled(const QString& text, QListWidget& list) {
  auto* box = new QWidget(this);
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins({});
  auto* label = new QLabel(text, box);
  label->setBuddy(&list);
  layout->addWidget(label);
  layout->addWidget(&list, 1);
  setLetters(list, Letters::metre);
  list.setWordWrap(true);
  return box;
}

BoardPage::BoardPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), typed_(new QLineEdit(this)),
      name_(makeLabel(Letters::metre, QStringLiteral("boardName"), this)),
      known_(makeLabel(Letters::reading, QStringLiteral("boardKnown"), this)),
      opening_(makeLabel(Letters::reading, QStringLiteral("boardOpening"), this)),
      progress_(new QProgressBar(this)),
      cancel_(makeButton(tr("Stop reading"), QKeySequence(Qt::Key_Escape), this)),
      parts_(new QListWidget(this)), recent_(new QListWidget(this)), offered_(new QListWidget(this)),
      notices_(new QListWidget(this)) {
  stack_ = new QStackedLayout(this);
  auto* overview = new QWidget(this);
  makeOverview(*overview);
  stack_->addWidget(overview);
  connect(&desk_.job, &BenchJob::boardChanged, this, &BoardPage::showBoard);
  connect(&desk_.job, &BenchJob::fileOpened, this, &BoardPage::remember);
  connect(&desk_.job, &BenchJob::boardsOffered, this, &BoardPage::offer);
  connect(&desk_.job, &BenchJob::openingChanged, this, &BoardPage::showOpening);
  showBoard();
  showOpening({}, 1.0);
  listRecent();
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

void BoardPage::makeOverview(QWidget& overview) {
  auto* layout = new QVBoxLayout(&overview);
  layout->setContentsMargins({});
  layout->addWidget(name_);
  layout->addWidget(known_);
  auto* work = new QHBoxLayout;
  work->addWidget(opening_);
  work->addWidget(progress_, 1);
  work->addWidget(cancel_);
  layout->addLayout(work);
  layout->addWidget(question());
  progress_->setRange(0, 100);
  connect(cancel_, &QPushButton::clicked, this, [this] { desk_.job.cancelOpening(); });

  auto* ways = new QHBoxLayout;
  QPushButton* draw = makePrompt(tr("Draw it"), QKeySequence(drawKey), this);
  draw->setObjectName(QStringLiteral("drawIt"));
  connect(draw, &QPushButton::clicked, this, [this] { setDrawing(true); });
  ways->addWidget(draw);
  QPushButton* file = makeButton(tr("Open a board file"), QKeySequence::Open, this);
  connect(file, &QPushButton::clicked, this, &BoardPage::chooseFile);
  ways->addWidget(file);
  typed_->setPlaceholderText(tr("or type a connector:  J4, 40 pins, two rows"));
  typed_->setAccessibleName(tr("Connector in one line"));
  setLetters(*typed_, Letters::metre);
  connect(typed_, &QLineEdit::returnPressed, this, &BoardPage::typedConnector);
  ways->addWidget(typed_, 1);
  layout->addLayout(ways);

  auto* lists = new QHBoxLayout;
  lists->addWidget(labelled(tr("&Walk which part"), *parts_), 1);
  lists->addWidget(labelled(tr("&Recent boards"), *recent_), 1);
  lists->addWidget(labelled(tr("&Boards in the archive"), *offered_), 1);
  offered_->setObjectName(QStringLiteral("offeredBoards"));
  offered_->parentWidget()->hide();
  layout->addLayout(lists, 2);
  connect(parts_, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
    desk_.walk.setPart(PartId(item->data(Qt::UserRole).toULongLong()));
    Q_EMIT goTo(Station::walk);
  });
  connect(recent_, &QListWidget::itemActivated, this,
          [this](const QListWidgetItem* item) { open(item->data(Qt::UserRole).toString()); });
  connect(offered_, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
    desk_.job.openBoardFile(std::filesystem::path(archive_.toStdU16String()), item->text().toStdString());
  });
  auto* noticesLabel = new QLabel(tr("What the file left open"), this);
  noticesLabel->setObjectName(QStringLiteral("noticesLabel"));
  noticesLabel->setBuddy(notices_);
  layout->addWidget(noticesLabel);
  notices_->setWordWrap(true);
  notices_->setAccessibleName(tr("What the file left open"));
  layout->addWidget(notices_, 1);
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
  auto* row = new QHBoxLayout(question_);
  row->setContentsMargins({});
  asked_ = makeLabel(Letters::metre, QStringLiteral("otherBoard"), question_);
  row->addWidget(asked_, 1);
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

void BoardPage::typedConnector() {
  const std::string text = typed_->text().trimmed().toStdString();
  if (text.empty() || !desk_.job.useConnector(text)) return;
  typed_->clear();
  // The last one typed is the one to be walked.
  const auto parts = desk_.walk.partsToWalk();
  if (!parts.empty()) desk_.walk.setPart(*std::max_element(parts.begin(), parts.end()));
  Q_EMIT goTo(Station::walk);
}

void BoardPage::arrive() {
  if (!question_->isHidden()) return stay_->setFocus();
  if (drawing_) return draw_->arrive();
  listParts();
  if (parts_->count() > 0)
    parts_->setFocus();
  else
    typed_->setFocus();
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
  QStringList recent = settings.value(recentKey()).toStringList();
  const QString full = QFileInfo(file).absoluteFilePath();
  recent.removeAll(full);
  recent.prepend(full);
  while (recent.size() > mostRecent)
    recent.removeLast();
  settings.setValue(recentKey(), recent);
  listRecent();
}

void BoardPage::listRecent() {
  recent_->clear();
  for (const QString& file : QSettings().value(recentKey()).toStringList()) {
    const QFileInfo info(file);
    auto* item = new QListWidgetItem(info.fileName() + QStringLiteral("    ") + info.absolutePath(), recent_);
    item->setData(Qt::UserRole, file);
    if (!info.exists()) item->setText(item->text() + tr("    (not there any more)"));
  }
  recent_->parentWidget()->setVisible(recent_->count() > 0);
}

void BoardPage::listParts() {
  parts_->clear();
  parts_->parentWidget()->setVisible(desk_.job.board() != nullptr);
  if (desk_.job.board() == nullptr) return;
  const BoardUnderWork& open = *desk_.job.board();
  for (const PartId id : desk_.walk.partsToWalk()) {
    const Part& part = *open.board->parts.find(id);
    const auto pins = static_cast<int>(open.lookup->pinsOf(id).size());
    QString text =
        QString::fromStdString(part.reference) + QStringLiteral("    ") + tr("%n pin(s)", nullptr, pins);
    if (part.value.known() && !part.value.value.empty())
      text += QStringLiteral("    ") + QString::fromStdString(part.value.value);
    auto* item = new QListWidgetItem(text, parts_);
    item->setData(Qt::UserRole, static_cast<qulonglong>(id.value));
    if (id == desk_.walk.part()) parts_->setCurrentItem(item);
  }
}

void BoardPage::showBoard() {
  if (drawing_ && !desk_.drawing.begun()) setDrawing(false);
  offered_->parentWidget()->hide();
  listParts();
  notices_->clear();
  const BoardUnderWork* board = desk_.job.board();
  const bool any = board != nullptr && !board->notices.empty();
  notices_->setVisible(any);
  findChild<QLabel*>(QStringLiteral("noticesLabel"))->setVisible(any);
  if (board == nullptr) {
    name_->setText(tr("No board yet"));
    known_->setText(tr(
        "Drop a file or a photo of the board on the window, or type the connector you want to walk. Nothing "
        "else needs to be known to begin."));
    return;
  }
  const BoardInfo& info = board->board->info;
  QString name = QString::fromStdString(info.name.valueOr(""));
  if (name.isEmpty() && !board->board->parts.empty())
    name = tr("Connector %1").arg(QString::fromStdString(board->board->parts[0].reference));
  if (info.revision.known()) name += tr(", revision %1").arg(QString::fromStdString(info.revision.value));
  name_->setText(name);
  QStringList known;
  known << tr("%n part(s)", nullptr, static_cast<int>(board->board->parts.size()))
        << tr("%n pin(s)", nullptr, static_cast<int>(board->board->pins.size()));
  if (!board->board->nets.empty())
    known << tr("%n net(s)", nullptr, static_cast<int>(board->board->nets.size()));
  if (!board->board->tracks.empty())
    known << tr("%n track(s)", nullptr, static_cast<int>(board->board->tracks.size()));
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
