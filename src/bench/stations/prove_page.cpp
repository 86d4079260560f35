#include "prove_page.h"

#include <algorithm>

#include <QCoreApplication>
#include <QLabel>
#include <QPointer>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/session/proof_open.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/pictures.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "connector_lie.h"
#include "function_checks.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/netgraph/handle.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"
#include "netmend/words/verdict.h"
#include "proof_table.h"
#include "scrolled.h"

namespace netmend {

ProvePage::ProvePage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), state_(makeLabel(Letters::metre, QStringLiteral("proofState"), this)),
      point_(makeLabel(Letters::point, QStringLiteral("proofPoint"), this)),
      lead_(makeLabel(Letters::metre, QStringLiteral("proofLead"), this)),
      before_(makeLabel(Letters::metre, QStringLiteral("proofBefore"), this)), mark_(new VerdictMark(this)),
      verdict_(makeLabel(Letters::metre, QStringLiteral("proofVerdict"), this)),
      explanation_(makeLabel(Letters::reading, QStringLiteral("proofExplanation"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::free, QStringLiteral("proofReading"), this)),
      table_(new ProofTable(this)), functions_(new FunctionChecks(desk.job, this)) {
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(state_);
  layout->addWidget(point_);
  auto* columns = new QHBoxLayout;
  auto* left = new QVBoxLayout;
  // What is only read at the desk scrolls where letters are large.
  auto* words = new QWidget(this);
  words->setLayout(now());
  left->addWidget(scrolled(words, this), 1);
  columns->addLayout(left, 2);
  auto* right = new QVBoxLayout;
  table_->onPoint = [this](std::size_t point) {
    goTo(point);
    field_->setFocus();
  };
  right->addWidget(table_, 3);
  right->addWidget(functions_, 2);
  columns->addLayout(right, 3);
  layout->addLayout(columns, 1);
  layout->addLayout(entry());
  connect(&desk_.job, &BenchJob::jobChanged, this, &ProvePage::refresh);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &ProvePage::refresh);
  connect(&desk_.job, &BenchJob::actionsChanged, this, &ProvePage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &ProvePage::refresh);
  connect(&desk_.job, &BenchJob::goodWalksChanged, this, &ProvePage::refresh);
  refresh();
}

QLayout* ProvePage::now() {
  auto* column = new QVBoxLayout;
  column->setContentsMargins({});
  for (QLabel* label : {lead_, before_})
    column->addWidget(label);
  column->addStretch(1);
  auto* result = new QHBoxLayout;
  result->addWidget(mark_);
  auto* said = new QVBoxLayout;
  said->addWidget(verdict_);
  said->addWidget(explanation_);
  result->addLayout(said, 1);
  result->addWidget(makeWhyButton());
  column->addLayout(result);
  return column;
}

QLayout* ProvePage::entry() {
  auto* row = new WrapLayout;
  field_->setAccessibleName(tr("Reading now"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers) { return command(key); };
  connect(field_, &QLineEdit::returnPressed, this, &ProvePage::typed);
  row->addWidget(field_);
  row->addWidget(field_->keyButton(tr("OL"), Qt::Key_O));
  row->addWidget(field_->keyButton(tr("Skip"), Qt::Key_S));
  row->addWidget(field_->keyButton(tr("Back"), Qt::Key_B));
  row->addWidget(field_->keyButton(tr("Undo"), Qt::Key_U));
  comesAndGoes_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  row->addWidget(comesAndGoes_);
  row->addWidget(field_->keyButton(tr("Function"), Qt::Key_F));
  return row;
}

void ProvePage::arrive() {
  if (field_->isEnabled())
    field_->setFocus();
  else
    functions_->focusEntry();
}

std::optional<std::size_t> ProvePage::duePoint() const {
  const ProofPoint* point = due();
  return point != nullptr ? std::optional(static_cast<std::size_t>(point - points_.data())) : std::nullopt;
}

const ProofPoint* ProvePage::due() const {
  if (!due_) return nullptr;
  for (const ProofPoint& point : points_)
    if (placeOf(point) == *due_) return &point;
  return nullptr;
}

std::vector<std::size_t> ProvePage::skippedPoints() const {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < points_.size(); ++i)
    if (std::find(skipped_.begin(), skipped_.end(), placeOf(points_[i])) != skipped_.end()) out.push_back(i);
  return out;
}

void ProvePage::readPoints() {
  points_.clear();
  const Job* job = desk_.job.job();
  if (job == nullptr) return;
  if (job->id != job_) {
    job_ = job->id;
    skipped_.clear();
    due_.reset();
    last_.reset();
  }
  points_ = proofPoints(proofBasis(desk_.job));
}

void ProvePage::refresh() {
  readPoints();
  if (due() == nullptr) goToOpen(0);
  showState();
  showDue();
  showLast();
  table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
  functions_->setEnabled(desk_.job.job() != nullptr && actionToProve(*desk_.job.job()) != nullptr);
  Q_EMIT overlayChanged();
}

void ProvePage::goToOpen(std::size_t from) {
  const auto skipped = skippedPoints();
  due_.reset();
  for (std::size_t n = 0; n < points_.size(); ++n) {
    const std::size_t i = (from + n) % points_.size();
    if (points_[i].now || std::find(skipped.begin(), skipped.end(), i) != skipped.end()) continue;
    due_ = placeOf(points_[i]);
    return;
  }
}

void ProvePage::goTo(std::size_t point) {
  if (point >= points_.size()) return;
  due_ = placeOf(points_[point]);
  last_.reset();
  showDue();
  showLast();
  table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
  Q_EMIT overlayChanged();
}

void ProvePage::showState() {
  const Job* job = desk_.job.job();
  if (job == nullptr || job->actions.empty()) {
    state_->setText(tr("Nothing to prove yet: choose a repair at the station before"));
    return;
  }
  if (actionToProve(*job) == nullptr) {
    state_->setText(tr("Goes back unrepaired: nothing to prove"));
    return;
  }
  const QStringList open = openForProof(points_, *job, skippedPoints(), desk_.job.places());
  if (open.isEmpty()) {
    state_->setText(tr("PROVED: every point reads as it must, and the functions work"));
    return;
  }
  constexpr qsizetype most = 3;
  QString text = tr("NOT PROVED: %1").arg(open.mid(0, most).join(QStringLiteral("; ")));
  if (open.size() > most) text += tr("; and %n more", nullptr, static_cast<int>(open.size() - most));
  state_->setText(text);
  state_->setToolTip(open.join(QLatin1Char('\n')));
}

void ProvePage::showDue() {
  const ProofPoint* point = due();
  // With all points measured its keys still lead back and to the functions.
  field_->setEnabled(!points_.empty());
  if (point == nullptr) {
    point_->setText(points_.empty() ? tr("No point") : tr("All points measured"));
    lead_->setText(points_.empty() ? QString() : tr("F: the functions. B: measure again."));
    before_->clear();
    return;
  }
  // A via or a track has no pin to name.
  const BoardUnderWork* board = desk_.job.board();
  const PlaceNames* places = desk_.job.places();
  const auto spoken = [places](const ProbePoint& at) {
    return at.pin ? spokenPoint(at) : besidePicture(nameOf(at, places));
  };
  QString text = spoken(point->point);
  if (point->why == ProofWhy::endToEnd)
    text = tr("%1 to %2").arg(text, spoken(point->other));
  else if (board != nullptr)
    if (const Pin* pin = board->board->pins.find(point->point.pin); pin != nullptr && pin->net.known())
      if (const Net* net = board->board->nets.find(pin->net.value); net != nullptr && !net->name.empty())
        text += QStringLiteral(" · ") + QString::fromStdString(net->name);
  point_->setText(text);
  const QString other = QString::fromStdString(point->other.label);
  switch (point->mode) {
  case ReadingMode::diode:
    lead_->setText(tr("black lead on the point, red lead on %1").arg(other));
    break;
  case ReadingMode::diodeReverse:
    lead_->setText(tr("red lead on the point, black lead on %1").arg(other));
    break;
  default:
    lead_->setText(tr("%1: one lead here, the other on %2").arg(shown(nameOf(point->mode)), other));
  }
  const QString expected = shown(whatIsExpected(*point));
  QStringList lines;
  lines << (point->before
                ? tr("before: %1, %2").arg(valueOf(point->before), shown(nameOf(point->before->kind())))
                : tr("before: not read"));
  lines << (expected.isEmpty() ? tr("must be: nothing to compare with") : tr("must be: %1").arg(expected));
  before_->setText(lines.join(QLatin1Char('\n')));
}

void ProvePage::showLast() {
  const ProofPoint* shown = nullptr;
  for (const ProofPoint& point : points_)
    if (last_ && placeOf(point) == *last_ && point.now) shown = &point;
  mark_->setShape(shown != nullptr ? std::optional(markForVerdict(shown->now->kind())) : std::nullopt);
  // Only of what was read last can be said which of the two it was.
  const bool isLast = shown != nullptr && shown->now->id == desk_.job.job()->readings.back().id;
  // No slip unless somebody says so: the work may have been done once more since.
  const QString otherwise = isLast ? otherwiseWords(tr("Read again: %1. I: it comes and goes")) : QString();
  comesAndGoes_->setVisible(!otherwise.isEmpty());
  if (shown == nullptr) {
    verdict_->clear();
    explanation_->clear();
    return;
  }
  verdict_->setText(QStringLiteral("%1   %2   %3")
                        .arg(besidePicture(nameOf(*shown, desk_.job.places())), valueOf(shown->now),
                             netmend::shown(nameOf(*shown->now))));
  QStringList lines{otherwise,
                    netmend::shown(why_ ? verdictReasons(*shown->now) : besideValueSaid(*shown->now))};
  lines.removeAll(QString());
  explanation_->setText(lines.join(QLatin1Char('\n')));
}

void ProvePage::showWhy() {
  showLast();
}

void ProvePage::typed() {
  const QString text = field_->text().trimmed();
  const ProofPoint* point = due();
  if (text.isEmpty() || point == nullptr) return;
  const auto value = parseReadingValue(text.toStdString(), point->mode);
  if (!value) {
    field_->selectAll();
    Q_EMIT told(shown(value.error()), true);
    return;
  }
  field_->clear();
  reading(value->value);
}

void ProvePage::reading(std::optional<double> value) {
  const ProofPoint* found = due();
  const Job* job = desk_.job.job();
  if (found == nullptr || job == nullptr) {
    Q_EMIT told(tr("No point is due"), true);
    return;
  }
  const ProofPoint point = *found;
  const auto at = static_cast<std::size_t>(found - points_.data());
  const JobReading entry =
      judgedProof(point, readingNow(desk_.walk.walk(false), point.point, value), proofBasis(desk_.job));
  const auto replaced = point.now ? point.now->id : JobReadingId{};
  const bool kept =
      desk_.job.addReadingFor(point.action, tr("proof of %1").arg(shown(nameOf(point, desk_.job.places()))),
                              entry, [replaced](RepairAction& action, JobReadingId id) {
                                // What was read before the joint was done again proves nothing.
                                std::erase(action.proof, replaced);
                                action.proof.push_back(id);
                              });
  if (!kept) return;
  desk_.job.reached(JobState::proving);
  std::erase(skipped_, placeOf(point));
  last_ = placeOf(point);
  goToOpen(at + 1);
  refresh();
}

void ProvePage::skip() {
  const ProofPoint* point = due();
  if (point == nullptr) return;
  const Place place = placeOf(*point);
  const auto at = static_cast<std::size_t>(point - points_.data());
  // The page is gone before the history is.
  const auto on = [page = QPointer(this)](const std::function<void()>& change) {
    return [page, change]() -> Result<void> {
      if (page) {
        change();
        page->refresh();
      }
      return {};
    };
  };
  static_cast<void>(desk_.job.perform(tr("skipped point"), on([this, place, at] {
                                        skipped_.push_back(place);
                                        last_.reset();
                                        goToOpen(at + 1);
                                      }),
                                      on([this, place] {
                                        std::erase(skipped_, place);
                                        last_.reset();
                                        due_ = place;
                                      })));
}

bool ProvePage::command(int key) {
  switch (key) {
  case Qt::Key_O:
    reading(std::nullopt);
    return true;
  case Qt::Key_S:
    skip();
    return true;
  case Qt::Key_B: {
    const ProofPoint* point = due();
    const std::size_t at =
        point != nullptr ? static_cast<std::size_t>(point - points_.data()) : points_.size();
    if (at > 0) goTo(at - 1);
    return true;
  }
  case Qt::Key_U:
    undo();
    return true;
  case Qt::Key_I:
    sayComesAndGoes();
    return true;
  case Qt::Key_F:
    functions_->focusEntry();
    return true;
  default:
    return false;
  }
}

void ProvePage::undo() {
  // What is open again is the next to measure.
  last_.reset();
  due_.reset();
  StationPage::undo();
  refresh();
}

void ProvePage::accept(const ReadingEvent& event) {
  field_->clear();
  if (const auto* value = std::get_if<ValueTaken>(&event)) {
    if (value->again && last_) due_ = last_;
    reading(value->value);
  } else if (std::holds_alternative<PointSkipped>(event))
    skip();
  else if (std::holds_alternative<StepBack>(event))
    command(Qt::Key_B);
  else if (std::holds_alternative<UndoLast>(event))
    undo();
}

ReadingMode ProvePage::wantedMode() const {
  const ProofPoint* point = due();
  return point != nullptr ? point->mode : desk_.walk.mode();
}

void ProvePage::pinChosen(PinId pin) {
  for (std::size_t i = 0; i < points_.size(); ++i)
    if (points_[i].point.pin == pin && points_[i].why != ProofWhy::endToEnd) {
      goTo(i);
      return;
    }
}

void ProvePage::setTheme(PictureTheme theme) {
  StationPage::setTheme(theme);
  mark_->setTheme(theme);
  table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
}

namespace {

/// Where a lead goes; nothing: nobody knows.
std::optional<Point> placeOnBoard(const Lookup& lookup, const ProbePoint& point) {
  if (const auto at = positionOf(lookup, point.pin); at.known()) return at.value;
  const auto place = placeOfHandle(lookup.board(), point.label);
  return place ? std::optional(place->at) : std::nullopt;
}

} // namespace

Overlay ProvePage::overlay() const {
  Overlay out;
  const BoardUnderWork* board = desk_.job.board();
  const Job* job = desk_.job.job();
  if (board == nullptr || job == nullptr) return out;
  for (const RepairAction& action : job->actions)
    if (action.jumper) {
      out.lines.push_back({action.jumper->way, LineStyle::wire});
      const auto nets = board->lookup->netsNamed(action.jumper->net);
      out.litNets.insert(out.litNets.end(), nets.begin(), nets.end());
    }
  for (const ProofPoint& point : points_) {
    const auto at = placeOnBoard(*board->lookup, point.point);
    const bool isDue = due_ && placeOf(point) == *due_;
    if (!at || (point.why == ProofWhy::endToEnd && !isDue)) continue;
    if (isDue)
      out.marks.push_back({*at, MarkShape::probe, nameOf(point.point, board->places.get())});
    else if (point.now)
      out.marks.push_back({*at, markForVerdict(point.now->kind()), nameOf(point.point, board->places.get())});
  }
  return out;
}

} // namespace netmend
