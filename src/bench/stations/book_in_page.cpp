#include "book_in_page.h"

#include <algorithm>
#include <cmath>

#include <QComboBox>
#include <QDateTime>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "job_cards.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/job.h"
#include "scrolled.h"

namespace netmend {

namespace {

constexpr int typingPause = 150;  ///< ms without a key until what was typed goes into the book
constexpr int leastLines = 3;     ///< of a long field; it grows with what is typed …
constexpr int mostLines = 8;      ///< … up to here
constexpr int leastForBoth = 900; ///< pixels at 100 %, for form and jobs side by side

/// As high as what is written in it.
class GrowingText : public QPlainTextEdit {
public:
  explicit GrowingText(QWidget* parent) : QPlainTextEdit(parent) {
    setTabChangesFocus(true);
    setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    document()->setDocumentMargin(fieldPadding() + frameWidth());
    connect(this, &QPlainTextEdit::textChanged, this, [this] { updateGeometry(); });
  }
  [[nodiscard]] QSize sizeHint() const override {
    // A plain text's document counts its height in lines.
    const int lines = static_cast<int>(std::lround(document()->size().height()));
    const int margin = static_cast<int>(2 * document()->documentMargin()) + 2 * frameWidth();
    return {scaled(200), fontMetrics().lineSpacing() * std::clamp(lines, leastLines, mostLines) + margin};
  }
  [[nodiscard]] QSize minimumSizeHint() const override { return {scaled(80), sizeHint().height()}; }

protected:
  void changeEvent(QEvent* event) override {
    QPlainTextEdit::changeEvent(event);
    if (event->type() == QEvent::FontChange) document()->setDocumentMargin(fieldPadding() + frameWidth());
  }
};

/// At which of the seven stations a job in this state is; 7: it is through.
int stationOf(JobState state) {
  switch (state) {
  case JobState::bookedIn:
    return 0;
  case JobState::probing:
    return 2;
  case JobState::suspectFound:
    return 3;
  case JobState::repairing:
    return 4;
  case JobState::proving:
    return 5;
  case JobState::handedOver:
  case JobState::returnedUnrepaired:
    return 7;
  }
  return 0;
}

} // namespace

QString BookInPage::Field::typed() const {
  return line != nullptr ? line->text() : text->toPlainText();
}

BookInPage::BookInPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), number_(makeLabel(Letters::point, QStringLiteral("jobNumber"), this)),
      saving_(new QTimer(this)), search_(new QLineEdit(this)), state_(new QComboBox(this)),
      jobs_(new JobCards(this)), caption_(makeLabel(Letters::reading, QStringLiteral("jobCaption"), this)),
      keys_(new QWidget(this)) {
  auto* layout = new QHBoxLayout(this);
  form_ = form();
  list_ = list();
  layout->addWidget(form_, 29);
  layout->addWidget(list_, 20);
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins({});
  fresh_ = makePrompt(tr("New job"), QKeySequence(newJobKey), keys_);
  connect(fresh_, &QPushButton::clicked, this, &BookInPage::newJob);
  row->addWidget(fresh_);
  saving_->setSingleShot(true);
  saving_->setInterval(typingPause);
  connect(saving_, &QTimer::timeout, this, &BookInPage::save);
  connect(&desk_.job, &BenchJob::jobChanged, this, &BookInPage::showJob);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &BookInPage::listJobs);
  showJob();
}

QWidget* BookInPage::head() {
  auto* box = new QWidget;
  auto* row = new QHBoxLayout(box);
  auto* words = new QVBoxLayout;
  words->setSpacing(0);
  setQuiet(*caption_);
  words->addWidget(caption_);
  number_->setWordWrap(false);
  words->addWidget(number_);
  row->addLayout(words, 1);
  QLabel* kept = makeLabel(Letters::reading, QStringLiteral("keptAsTyped"), box);
  kept->setText(tr("Kept as you type"));
  kept->setWordWrap(false);
  setQuiet(*kept);
  row->addWidget(kept, 0, Qt::AlignBottom);
  return box;
}

QWidget* BookInPage::form() {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins({});
  layout->setSpacing(0);
  layout->addWidget(head());
  layout->addWidget(makeRule(Qt::Horizontal, box));
  auto* fields = new QWidget(box);
  auto* grid = new QGridLayout(fields);
  grid->setColumnStretch(1, 5);
  grid->setColumnStretch(3, 4);
  addField(grid, tr("&Device"), &Job::device, {0, 0});
  addField(grid, tr("Serial"), &Job::serial, {0, 2});
  addField(grid, tr("&Customer"), &Job::customer, {1, 0});
  addField(grid, tr("Their reference"), &Job::customerReference, {1, 2});
  addField(grid, tr("&Symptom"), &Job::symptom, {2, 0, 3, leastLines});
  addField(grid, tr("&History"), &Job::history, {3, 0, 3, leastLines});
  addField(grid, tr("As &received"), &Job::condition, {4, 0, 3, leastLines});
  layout->addWidget(fields);
  layout->addWidget(makeRule(Qt::Horizontal, box));
  auto* inside = new QWidget(box);
  auto* notes = new QGridLayout(inside);
  notes->setColumnStretch(1, 1);
  addField(notes, tr("&Internal notes"), &Job::internalNotes, {0, 0});
  notes->addWidget(makeCaption(tr("never on the customer's copy"), inside), 1, 1);
  layout->addWidget(inside);
  layout->addStretch(1);
  QFrame* card = makeCard(this);
  auto* around = new QVBoxLayout(card);
  around->setContentsMargins(1, 1, 1, 1);
  around->addWidget(scrolled(box, card));
  return card;
}

void BookInPage::addField(QGridLayout* layout, const QString& label, std::string Job::*member,
                          FieldPlace place) {
  Field field{member};
  QWidget* widget = nullptr;
  const auto typed = [this] {
    if (!showing_) saving_->start();
  };
  if (place.lines == 1) {
    field.line = new QLineEdit(this);
    connect(field.line, &QLineEdit::textEdited, this, typed);
    connect(field.line, &QLineEdit::editingFinished, this, [this, line = field.line] {
      line->home(false); // what was typed is read from its beginning
      save();
    });
    setScaledHeight(*field.line, face::control);
    widget = field.line;
  } else {
    field.text = new GrowingText(this);
    field.text->setBackgroundRole(QPalette::Base); // else it would take the card's
    connect(field.text, &QPlainTextEdit::textChanged, this, typed);
    widget = field.text;
  }
  widget->setAccessibleName(QString(label).remove(QLatin1Char('&')));
  auto* caption = new QLabel(label, this);
  setQuiet(*caption);
  caption->setBuddy(widget);
  caption->setAlignment(place.lines == 1 ? Qt::AlignVCenter | Qt::AlignLeft : Qt::AlignTop | Qt::AlignLeft);
  layout->addWidget(caption, place.row, place.column);
  layout->addWidget(widget, place.row, place.column + 1, 1, place.span);
  fields_.push_back(field);
}

QWidget* BookInPage::list() {
  auto* box = new QWidget(this);
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins({});
  auto* head = new QHBoxLayout;
  search_->setPlaceholderText(tr("Search all jobs  Ctrl+F"));
  search_->setAccessibleName(tr("Search all jobs"));
  // Its picture, and all that Qt looks through to read one, are not wanted before there is something to
  // clear.
  connect(search_, &QLineEdit::textChanged, search_, [this] { search_->setClearButtonEnabled(true); });
  state_->setAccessibleName(tr("Only jobs in this state"));
  state_->addItem(tr("any state"), -1);
  for (const auto& word : jobStateWords)
    state_->addItem(shown(nameOf(word.value)), static_cast<int>(word.value));
  state_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  state_->setMinimumContentsLength(8);
  setScaledHeight(*search_, face::control);
  setScaledHeight(*state_, face::control);
  head->addWidget(search_, 3);
  head->addWidget(state_, 2);
  layout->addLayout(head);
  layout->addWidget(jobs_, 1);
  jobs_->setAccessibleName(tr("Jobs"));
  connect(search_, &QLineEdit::textChanged, this, &BookInPage::listJobs);
  connect(search_, &QLineEdit::returnPressed, this, [this] {
    if (jobs_->currentRow() < 0) jobs_->setCurrentRow(0);
    openChosen();
  });
  connect(state_, &QComboBox::currentIndexChanged, this, &BookInPage::listJobs);
  connect(jobs_, &QListWidget::itemActivated, this, &BookInPage::openChosen);
  return box;
}

void BookInPage::space() {
  const int gap = scaled(2 * face::grid);
  const int margin = scaled(face::margin);
  layout()->setContentsMargins(margin, gap, margin, gap);
  layout()->setSpacing(gap);
  for (QWidget* part : form_->findChildren<QWidget*>())
    if (auto* inner = part->layout(); inner != nullptr && part->parentWidget() != nullptr) {
      if (qobject_cast<QGridLayout*>(inner) != nullptr || qobject_cast<QHBoxLayout*>(inner) != nullptr) {
        inner->setContentsMargins(margin, gap, margin, gap);
        inner->setSpacing(scaled(12));
      }
    }
  list_->layout()->setSpacing(scaled(12));
  const bool narrow = width() < scaled(leastForBoth);
  // A list of nothing takes no room.
  const bool any = jobs_->count() > 0 || !search_->text().isEmpty() || state_->currentIndex() > 0;
  fresh_->setVisible(!narrow); // the key works all the same
  list_->setVisible(any && (!narrow || listFirst_));
  form_->setVisible(!narrow || !listFirst_ || !any);
}

void BookInPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  space();
}

void BookInPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape || !listFirst_) return StationPage::keyPressEvent(event);
  listFirst_ = false;
  space();
  arrive();
}

void BookInPage::arrive() {
  if (fields_.front().line->text().isEmpty()) fields_.front().line->setFocus();
}

void BookInPage::search() {
  listFirst_ = true;
  space();
  search_->setFocus();
  search_->selectAll();
}

void BookInPage::newJob() {
  save();
  listFirst_ = false;
  space();
  // The next board is another one until somebody says otherwise; its description often is the same.
  if (desk_.job.bookIn()) fields_.front().line->setFocus();
}

void BookInPage::showJob() {
  const Job* job = desk_.job.job();
  showing_ = true;
  caption_->setText(job != nullptr ? tr("Job") : tr("New job"));
  number_->setText(job != nullptr ? QString::fromStdString(job->number) : tr("Write what came in"));
  setLetters(*number_, job != nullptr ? Letters::point : Letters::large, true);
  for (const Field& field : fields_) {
    const QString text = job != nullptr ? QString::fromStdString(job->*field.member) : QString();
    if (field.typed() == text) continue;
    if (field.line != nullptr)
      field.line->setText(text);
    else
      field.text->setPlainText(text);
  }
  showing_ = false;
  listJobs();
}

void BookInPage::save() {
  saving_->stop();
  const Job* job = desk_.job.job();
  bool changed = false;
  for (const Field& field : fields_)
    changed = changed || field.typed().toStdString() != (job != nullptr ? job->*field.member : std::string());
  if (!changed) return;
  std::vector<std::string> typed;
  for (const Field& field : fields_)
    typed.push_back(field.typed().toStdString());
  desk_.job.keep([&](Job& kept) {
    for (std::size_t i = 0; i < fields_.size(); ++i)
      kept.*fields_[i].member = typed[i];
  });
}

void BookInPage::showEvent(QShowEvent* event) {
  StationPage::showEvent(event);
  if (listStale_) listJobs();
}

void BookInPage::listJobs() {
  // Every reading changes it; nobody sees it at the other stations.
  listStale_ = !isVisible();
  if (listStale_) return;
  const auto found = desk_.job.book().jobs(search_->text().trimmed().toStdString());
  if (!found) {
    jobs_->setCards({});
    Q_EMIT told(shown(found.error()), true);
    return;
  }
  const int wanted = state_->currentData().toInt();
  std::vector<JobCard> cards;
  for (const JobSummary& job : *found) {
    if (wanted >= 0 && static_cast<int>(job.state) != wanted) continue;
    cards.push_back(cardOf(job));
    cards.back().open = desk_.job.job() != nullptr && desk_.job.job()->id == job.id;
  }
  jobs_->setCards(cards);
  space();
}

JobCard BookInPage::cardOf(const JobSummary& job) {
  const QDate day = QDateTime::fromMSecsSinceEpoch(job.created.time_since_epoch().count()).date();
  const qint64 ago = day.daysTo(QDate::currentDate());
  JobCard card;
  card.id = job.id;
  card.number = QString::fromStdString(job.number);
  card.device = job.device.empty() ? tr("no device yet") : QString::fromStdString(job.device);
  card.symptom = QString::fromStdString(job.symptom);
  const bool waits = job.state == JobState::probing && job.readings > 0 && !job.compared;
  card.state = waits ? tr("waits for a good board") : shown(nameOf(job.state));
  card.here = stationOf(job.state);
  const QString date = QLocale().toString(day, QLocale::ShortFormat);
  card.date = ago == 0 ? tr("today") : ago == 1 ? tr("yesterday") : date;
  card.text = tr("%1   %2\n%3 · %4 · %5")
                  .arg(card.number, card.device, card.state, date,
                       tr("%n reading(s)", nullptr, static_cast<int>(job.readings)));
  if (!card.symptom.isEmpty()) card.text += QLatin1Char('\n') + card.symptom;
  return card;
}

void BookInPage::openChosen() {
  const JobId id = jobs_->chosen();
  if (!id) return;
  listFirst_ = false;
  if (desk_.job.job() != nullptr && desk_.job.job()->id == id) return space();
  save();
  desk_.job.openJob(id);
  space();
}

} // namespace netmend
