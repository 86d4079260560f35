#include "book_in_page.h"

#include <QComboBox>
#include <QDateTime>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/job.h"

namespace netmend {

namespace {

constexpr int typingPause = 150; ///< ms without a key until what was typed goes into the book

} // namespace

QString BookInPage::Field::typed() const {
  return line != nullptr ? line->text() : text->toPlainText();
}

BookInPage::BookInPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), number_(makeLabel(Letters::metre, QStringLiteral("jobNumber"), this)),
      saving_(new QTimer(this)), search_(new QLineEdit(this)), state_(new QComboBox(this)),
      jobs_(new QListWidget(this)) {
  auto* layout = new QHBoxLayout(this);
  layout->addWidget(form(), 3);
  layout->addWidget(list(), 2);
  saving_->setSingleShot(true);
  saving_->setInterval(typingPause);
  connect(saving_, &QTimer::timeout, this, &BookInPage::save);
  connect(&desk_.job, &BenchJob::jobChanged, this, &BookInPage::showJob);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &BookInPage::listJobs);
  showJob();
}

QWidget* BookInPage::form() {
  auto* box = new QWidget(this);
  auto* layout = new QVBoxLayout(box);
  auto* head = new QHBoxLayout;
  head->addWidget(number_, 1);
  QPushButton* fresh = makePrompt(tr("New job"), QKeySequence(newJobKey), box);
  connect(fresh, &QPushButton::clicked, this, &BookInPage::newJob);
  head->addWidget(fresh);
  layout->addLayout(head);
  auto* fields = new QFormLayout;
  fields->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  addField(fields, tr("&Device"), &Job::device, 1);
  addField(fields, tr("Serial"), &Job::serial, 1);
  addField(fields, tr("&Symptom"), &Job::symptom, 2);
  addField(fields, tr("&History"), &Job::history, 3);
  addField(fields, tr("As &received"), &Job::condition, 2);
  addField(fields, tr("&Customer"), &Job::customer, 1);
  addField(fields, tr("Their reference"), &Job::customerReference, 1);
  addField(fields, tr("&Internal notes"), &Job::internalNotes, 2);
  layout->addLayout(fields, 1);
  return box;
}

void BookInPage::addField(QFormLayout* layout, const QString& label, std::string Job::*member, int lines) {
  Field field{member};
  QWidget* widget = nullptr;
  const auto typed = [this] {
    if (!showing_) saving_->start();
  };
  if (lines == 1) {
    field.line = new QLineEdit(this);
    connect(field.line, &QLineEdit::textEdited, this, typed);
    connect(field.line, &QLineEdit::editingFinished, this, &BookInPage::save);
    widget = field.line;
  } else {
    field.text = new QPlainTextEdit(this);
    field.text->setTabChangesFocus(true);
    field.text->setMinimumHeight(field.text->fontMetrics().lineSpacing() * (lines + 1));
    connect(field.text, &QPlainTextEdit::textChanged, this, typed);
    widget = field.text;
  }
  widget->setAccessibleName(QString(label).remove(QLatin1Char('&')));
  auto* caption = new QLabel(label, this);
  caption->setBuddy(widget);
  layout->addRow(caption, widget);
  fields_.push_back(field);
}

QWidget* BookInPage::list() {
  auto* box = new QWidget(this);
  auto* layout = new QVBoxLayout(box);
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
  head->addWidget(search_, 1);
  head->addWidget(state_);
  layout->addLayout(head);
  layout->addWidget(jobs_, 1);
  jobs_->setAccessibleName(tr("Jobs"));
  jobs_->setWordWrap(true);
  jobs_->setUniformItemSizes(false);
  jobs_->setAlternatingRowColors(true);
  connect(search_, &QLineEdit::textChanged, this, &BookInPage::listJobs);
  connect(search_, &QLineEdit::returnPressed, this, [this] {
    if (jobs_->currentRow() < 0) jobs_->setCurrentRow(0);
    openChosen();
  });
  connect(state_, &QComboBox::currentIndexChanged, this, &BookInPage::listJobs);
  connect(jobs_, &QListWidget::itemActivated, this, &BookInPage::openChosen);
  return box;
}

void BookInPage::arrive() {
  if (fields_.front().line->text().isEmpty()) fields_.front().line->setFocus();
}

void BookInPage::search() {
  search_->setFocus();
  search_->selectAll();
}

void BookInPage::newJob() {
  save();
  // The next board is another one until somebody says otherwise; its description often is the same.
  if (desk_.job.bookIn()) fields_.front().line->setFocus();
}

void BookInPage::showJob() {
  const Job* job = desk_.job.job();
  showing_ = true;
  number_->setText(job != nullptr ? tr("Job %1").arg(QString::fromStdString(job->number))
                                  : tr("New job: write what came in"));
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
  jobs_->clear();
  if (!found) {
    Q_EMIT told(shown(found.error()), true);
    return;
  }
  const int wanted = state_->currentData().toInt();
  for (const JobSummary& job : *found) {
    if (wanted >= 0 && static_cast<int>(job.state) != wanted) continue;
    const QDateTime when = QDateTime::fromMSecsSinceEpoch(job.created.time_since_epoch().count());
    const QString device = job.device.empty() ? tr("no device yet") : QString::fromStdString(job.device);
    const QString state = shown(nameOf(job.state));
    QString text = tr("%1   %2\n%3 · %4 · %5")
                       .arg(QString::fromStdString(job.number), device, state,
                            QLocale().toString(when.date(), QLocale::ShortFormat),
                            tr("%n reading(s)", nullptr, static_cast<int>(job.readings)));
    if (!job.symptom.empty()) text += QLatin1Char('\n') + QString::fromStdString(job.symptom);
    auto* item = new QListWidgetItem(text, jobs_);
    item->setData(Qt::UserRole, QVariant::fromValue<qulonglong>(job.id.value));
    if (desk_.job.job() != nullptr && desk_.job.job()->id == job.id) jobs_->setCurrentItem(item);
  }
}

void BookInPage::openChosen() {
  const QListWidgetItem* item = jobs_->currentItem();
  if (item == nullptr) return;
  const JobId id(item->data(Qt::UserRole).toULongLong());
  if (desk_.job.job() != nullptr && desk_.job.job()->id == id) return;
  save();
  desk_.job.openJob(id);
}

} // namespace netmend
