#include "station.h"

#include <algorithm>

#include <QPushButton>

#include "bench/session/proof_open.h"
#include "bench/session/window_text.h"
#include "bench/widgets/letters.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/place.h"
#include "netmend/words/step.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

/// What is open of all that was odd, the wires and the functions; whether a neighbour may be left out is said
/// at its page.
QStringList openProof(const Desk& desk) {
  const Job& job = *desk.job.job();
  if (!job.actions.empty() && actionToProve(job) == nullptr) return {}; // given up
  const auto points = proofPoints(proofBasis(desk.job));
  std::vector<std::size_t> neighbours;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].why == ProofWhy::neighbour) neighbours.push_back(i);
  return openForProof(points, job, neighbours, desk.job.places());
}

bool walked(const Desk& desk) {
  const Walk& walk = desk.walk.walk(false);
  if (walk.readings.empty()) return false;
  return std::all_of(walk.points.begin(), walk.points.end(), [&](const ProbePoint& point) {
    const auto here = [&](const Reading& reading) { return reading.point == point; };
    return std::any_of(walk.readings.begin(), walk.readings.end(), here) ||
           std::find(walk.skipped.begin(), walk.skipped.end(), point) != walk.skipped.end();
  });
}

NextThing nextAtBench(const Desk& desk) {
  if (desk.walk.good() && !desk.walk.walk(true).readings.empty()) {
    if (!desk.walk.due()) return {Station::walk, tr("Good board walked: keep it"), QStringLiteral("K")};
    return {Station::walk,
            tr("Walk the good board: %1 is next").arg(QString::fromStdString(desk.walk.due()->label))};
  }
  if (!walked(desk)) {
    const auto due = desk.walk.due();
    return {Station::walk,
            due ? tr("Walk: touch %1").arg(QString::fromStdString(due->label)) : tr("Choose what to walk")};
  }
  if (desk.walk.oddOnes().empty() && desk.fault.fault() == nullptr)
    return desk.job.goodWalks().empty()
               ? NextThing{Station::walk, tr("Walk a good board, so that there is something to compare with"),
                           QStringLiteral("G")}
               : NextThing{Station::walk, tr("No odd pin here: walk another connector")};
  return {Station::find, {}};
}

} // namespace

QString stationName(Station station) {
  switch (station) {
  case Station::bookIn:
    return tr("Book in");
  case Station::board:
    return tr("Board");
  case Station::walk:
    return tr("Walk");
  case Station::find:
    return tr("Find");
  case Station::bridge:
    return tr("Bridge");
  case Station::prove:
    return tr("Prove");
  case Station::handOver:
    return tr("Hand over");
  }
  return {};
}

bool stationDone(Station station, const Desk& desk) {
  const Job* job = desk.job.job();
  switch (station) {
  case Station::bookIn:
    return job != nullptr && !job->device.empty() && !job->symptom.empty();
  case Station::board:
    return desk.job.board() != nullptr;
  case Station::walk:
    return walked(desk);
  case Station::find:
    // Who has chosen a repair needs no further probe.
    return (job != nullptr && !job->actions.empty()) ||
           (desk.fault.fault() != nullptr && desk.fault.nextProbe() == nullptr);
  case Station::bridge:
    return job != nullptr && !job->actions.empty() &&
           std::all_of(job->actions.begin(), job->actions.end(), isWorkDone);
  case Station::prove:
    return job != nullptr && openProof(desk).isEmpty();
  case Station::handOver:
    return job != nullptr && job->state >= JobState::handedOver;
  }
  return false;
}

std::optional<Point> placeOnBoard(const Lookup& lookup, const ProbePoint& point) {
  if (const auto at = positionOf(lookup, point.pin); at.known()) return at.value;
  const auto place = placeOfHandle(lookup.board(), point.label);
  return place ? std::optional(place->at) : std::nullopt;
}

void StationPage::take(const ReadingEvent& event) {
  const auto* value = std::get_if<ValueTaken>(&event);
  if (value != nullptr && value->mode && *value->mode != wantedMode())
    Q_EMIT told(tr("The meter is in another mode than this point wants: nothing taken"), true);
  else
    accept(event);
}

void StationPage::undo() {
  if (const auto undone = desk_.job.undo(); !undone) Q_EMIT told(shown(undone.error()), true);
}

QString StationPage::otherwiseWords(const QString& unlessSaid) const {
  const JobReading* before = desk_.job.readOtherwise();
  if (before == nullptr) return {};
  const QString said = shown(otherwiseSaid(*before));
  return desk_.job.job()->readings.back().comesAndGoes ? tr("It comes and goes: %1. I: a slip").arg(said)
                                                       : unlessSaid.arg(said);
}

void StationPage::sayComesAndGoes() {
  if (desk_.job.readOtherwise() == nullptr)
    Q_EMIT told(tr("The last reading was the first here, or agrees with the one before"), true);
  else
    desk_.job.sayComesAndGoes(!desk_.job.job()->readings.back().comesAndGoes);
}

NextThing nextThing(const Desk& desk) {
  if (desk.job.openingBoard()) return {Station::board, tr("The board is being read")};
  if (desk.job.board() == nullptr)
    return {Station::board, tr("Drop a board file, or type its connector: J4, 40 pins, two rows")};
  const Job* job = desk.job.job();
  const bool repaired = job != nullptr && !job->actions.empty();
  if (!repaired) {
    if (NextThing next = nextAtBench(desk); next.station != Station::find) return next;
    if (desk.fault.working() || desk.fault.fault() == nullptr)
      return {Station::find, tr("The readings are being weighed")};
    if (const ProbeProposal* probe = desk.fault.nextProbe())
      return {Station::find, (probe->again ? tr("Once more: %1") : tr("Probe %1"))
                                 .arg(besidePicture(nameOf(desk.fault.fault()->names.probe(probe->place))))};
    return {Station::bridge, tr("Choose how to repair it")};
  }
  if (!stationDone(Station::bridge, desk)) {
    for (const RepairAction& action : job->actions)
      for (const WorkStep& step : action.steps)
        if (isOpenWork(step)) return {Station::bridge, besidePicture(stepSaid(step, action))};
  }
  if (const QStringList open = openProof(desk); !open.isEmpty())
    return {Station::prove, tr("Prove it: %1").arg(open.front())};
  if (!stationDone(Station::bookIn, desk))
    return {Station::bookIn, tr("Write down device and symptom for the sheet")};
  if (!stationDone(Station::handOver, desk))
    return {Station::handOver, tr("Charges, print the sheet, then hand it over"),
            QKeySequence(Qt::CTRL | Qt::Key_H).toString(QKeySequence::NativeText)};
  return {Station::bookIn, tr("Handed over. Book in the next job"),
          QKeySequence(newJobKey).toString(QKeySequence::NativeText), true};
}

QString saidAt(Station here, const NextThing& next) {
  const bool works = next.keyEverywhere || next.station == here;
  return next.key.isEmpty() || !works ? next.text : QStringLiteral("%1 (%2)").arg(next.text, next.key);
}

void StationPage::setWhy(bool why) {
  why_ = why;
  if (whyButton_ != nullptr) whyButton_->setChecked(why);
  showWhy();
}

QPushButton* StationPage::makeWhyButton() {
  // The window has the key; the button says that there is one.
  whyButton_ = makePrompt(tr("Why"), QKeySequence(whyKey), this);
  whyButton_->setAccessibleName(tr("Why: reasons and figures"));
  whyButton_->setObjectName(QStringLiteral("why"));
  whyButton_->setCheckable(true);
  whyButton_->setChecked(why_);
  connect(whyButton_, &QPushButton::clicked, this, &StationPage::whyWanted);
  return whyButton_;
}

} // namespace netmend
