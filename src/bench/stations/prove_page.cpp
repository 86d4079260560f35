#include "prove_page.h"

#include <algorithm>

#include <QLabel>
#include <QPointer>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/session/proof_open.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pictures.h"
#include "bench/widgets/reading_field.h"
#include "function_checks.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/place.h"
#include "odd_pins.h"
#include "proof_table.h"

namespace netmend {

ProvePage::ProvePage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), state_(new Band(QStringLiteral("proofState"), this)),
      functionsLeft_(makeLabel(Letters::reading, QStringLiteral("functionsLeft"), this)),
      strip_(new OddStrip(this)), caption_(makeCaption(tr("Next point"), this)),
      point_(makeLabel(Letters::point, QStringLiteral("proofPoint"), this)),
      lead_(makeLabel(Letters::reading, QStringLiteral("proofLead"), this)),
      must_(makeLabel(Letters::reading, QStringLiteral("proofMust"), this)), mark_(new VerdictMark(this)),
      verdict_(makeLabel(Letters::metre, QStringLiteral("proofVerdict"), this)),
      explanation_(makeLabel(Letters::reading, QStringLiteral("proofExplanation"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::free, QStringLiteral("proofReading"), this)),
      figure_(new MeterFigure(field_, this)), keys_(new QWidget(this)), table_(new ProofTable(this)),
      functions_(new FunctionChecks(desk.job, this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setSpacing(0);
  functionsLeft_->setWordWrap(false);
  state_->add(functionsLeft_);
  body_ = new QVBoxLayout;
  body_->addWidget(strip_);
  body_->addWidget(dueCard(), 1);
  layout->addLayout(body_, 1);
  strip_->onChosen = [this](std::size_t which) {
    pinChosen(strip_->pins().at(which).pin);
    field_->setFocus();
  };
  table_->onPoint = [this](std::size_t point) {
    goTo(point);
    field_->setFocus();
  };
  functions_->onLeave = [this] { arrive(); };
  connect(functions_, &FunctionChecks::changed, this, &ProvePage::showState);
  makeKeys();
  for (const auto changed : {&BenchJob::jobChanged, &BenchJob::readingsChanged, &BenchJob::actionsChanged,
                             &BenchJob::boardChanged, &BenchJob::goodWalksChanged})
    connect(&desk_.job, changed, this, &ProvePage::refresh);
  layOut();
  refresh();
}

QWidget* ProvePage::dueCard() {
  card_ = makeCard(this);
  auto* column = new QVBoxLayout(card_);
  column->setObjectName(QStringLiteral("card"));
  auto* top = new QHBoxLayout;
  auto* point = new QVBoxLayout;
  point->setSpacing(0);
  setQuiet(*lead_);
  point->addWidget(caption_);
  point->addWidget(point_);
  point->addWidget(lead_);
  point->addStretch(1);
  top->addLayout(point, 1);
  top->addWidget(makeRule(Qt::Vertical, this));
  auto* reading = new QVBoxLayout;
  reading->setSpacing(0);
  field_->setAccessibleName(tr("Reading now"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers) { return command(key); };
  connect(field_, &QLineEdit::returnPressed, this, &ProvePage::typed);
  reading->addWidget(figure_);
  reading->addWidget(must_);
  reading->addStretch(1);
  top->addLayout(reading, 1);
  column->addLayout(top);
  lastRow_ = new QWidget(this);
  lastRow_->setLayout(lastRead());
  column->addWidget(lastRow_);
  column->addWidget(table_, 1);
  column->addWidget(functions_);
  return card_;
}

QLayout* ProvePage::lastRead() {
  auto* result = new QHBoxLayout;
  result->setContentsMargins({});
  result->addWidget(mark_);
  auto* said = new QVBoxLayout;
  said->setSpacing(0);
  said->addWidget(verdict_);
  said->addWidget(explanation_);
  result->addLayout(said, 1);
  result->addWidget(makeWhyButton());
  return result;
}

void ProvePage::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins({});
  comesAndGoes_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  row->addWidget(comesAndGoes_);
  overLimit_ = field_->keyButton(tr("OL"), Qt::Key_O);
  row->addWidget(overLimit_);
  skip_ = field_->keyButton(tr("Skip"), Qt::Key_S);
  row->addWidget(skip_);
  row->addWidget(field_->keyButton(tr("Back"), Qt::Key_B));
  row->addWidget(field_->keyButton(tr("Undo"), Qt::Key_U));
}

void ProvePage::layOut() {
  const int margin = scaled(face::margin), gap = scaled(2 * face::grid);
  layout()->setContentsMargins({});
  body_->setContentsMargins(margin, gap / 2, gap, gap);
  body_->setSpacing(gap / 2);
  auto* column = static_cast<QVBoxLayout*>(card_->layout());
  column->setContentsMargins(margin, gap, margin, gap);
  column->setSpacing(scaled(face::grid));
  mark_->setFixedSize(scaled(32), scaled(32));
  // Below, details and functions go first, then captions: what is due and what is read never do.
  const bool tight = height() < scaled(420), tighter = height() < scaled(330);
  functions_->setVisible(!tight);
  table_->setVisible(!tighter && !points_.empty());
  strip_->setVisible(!tight && !strip_->pins().empty());
  for (QWidget* detail : std::initializer_list<QWidget*>{caption_, lead_})
    detail->setVisible(!tighter);
  fitPoint();
}

QSize ProvePage::minimumSizeHint() const {
  return {scaled(480), scaled(240)};
}

void ProvePage::fitPoint() {
  // A long name in the largest letters would push everything else out.
  fitLetters(*point_, scaled(72), {Letters::point, Letters::large, Letters::metre}, true);
}

bool ProvePage::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) {
    layOut();
    table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
  }
  return StationPage::event(event);
}

void ProvePage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  layOut();
}

QWidget* ProvePage::messageAnchor() {
  return field_;
}

FootMode ProvePage::footMode() const {
  const Job* job = desk_.job.job();
  const RepairAction* action = job != nullptr ? actionToProve(*job) : nullptr;
  if (action == nullptr) return {};
  const std::string& what = action->jumper ? action->jumper->net : action->target;
  return {BandLook::job, what.empty() ? QString() : tr("PROVE %1").arg(QString::fromStdString(what))};
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
  fillOddStrip(*strip_, desk_);
  layOut();
  table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
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
  showState(); // the band's inks
  table_->setPoints(points_, skippedPoints(), duePoint(), theme_, desk_.job.places());
}

} // namespace netmend
