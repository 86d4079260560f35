#include "prove_page.h"

#include <algorithm>

#include <QLabel>
#include <QPushButton>

#include "bench/session/proof_open.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pictures.h"
#include "bench/widgets/reading_field.h"
#include "connector_lie.h"
#include "function_checks.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/netgraph/handle.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"
#include "netmend/words/verdict.h"
#include "proof_table.h"

namespace netmend {

namespace {

/// "C28.1, the wire, J4.10 and 4 more".
QString shortList(const QStringList& names) {
  constexpr qsizetype most = 3;
  const QString first = names.mid(0, most).join(QStringLiteral(", "));
  return names.size() <= most
             ? first
             : ProvePage::tr("%1 and %n more", nullptr, static_cast<int>(names.size() - most)).arg(first);
}

/// What of the points stands against "proved": first what reads odd, then what is left to read.
QString pointsOpen(const std::vector<ProofPoint>& points, const std::vector<std::size_t>& skipped,
                   const PlaceNames* places) {
  QStringList odd, left;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ProofPoint& point = points[i];
    const bool leftOut = std::find(skipped.begin(), skipped.end(), i) != skipped.end();
    const QString name =
        point.why == ProofWhy::endToEnd ? ProvePage::tr("the wire") : besidePicture(nameOf(point, places));
    if (point.now && point.now->odd())
      odd << ProvePage::tr("%1 reads %2: %3").arg(name, valueOf(point.now), shown(nameOf(*point.now)));
    else if (!point.now && leftOut && point.why != ProofWhy::neighbour)
      left << ProvePage::tr("%1 (left out)").arg(name);
    else if (!point.now && !leftOut)
      left << name;
  }
  QStringList out;
  if (!odd.isEmpty()) out << shortList(odd);
  if (!left.isEmpty())
    out << ProvePage::tr("%n left: %1", nullptr, static_cast<int>(left.size())).arg(shortList(left));
  return out.join(QStringLiteral("; "));
}

int workOpen(const Job& job) {
  std::ptrdiff_t out = 0;
  for (const RepairAction& action : job.actions)
    out += std::count_if(action.steps.begin(), action.steps.end(), isOpenWork);
  return static_cast<int>(out);
}

} // namespace

void ProvePage::showState() {
  const Job* job = desk_.job.job();
  const bool nothing = job == nullptr || job->actions.empty();
  functionsLeft_->clear();
  if (nothing || actionToProve(*job) == nullptr) {
    state_->set(BandLook::plain, nothing ? tr("Nothing to prove yet") : tr("Goes back unrepaired"),
                nothing ? tr("choose a repair at the station before") : tr("nothing to prove"));
    return;
  }
  const QStringList open = openForProof(points_, *job, skippedPoints(), desk_.job.places());
  const bool proved = open.isEmpty();
  if (proved) {
    state_->set(BandLook::job, tr("PROVED"), tr("every point reads as it must, and the functions work"));
  } else {
    QStringList words;
    if (const QString points = pointsOpen(points_, skippedPoints(), desk_.job.places()); !points.isEmpty())
      words << points;
    if (const int work = workOpen(*job); work > 0) words << tr("%n work step(s) not ticked", nullptr, work);
    state_->set(BandLook::open, tr("NOT PROVED"), words.join(QStringLiteral("; ")));
    functionsLeft_->setText(
        functions_->count() == 0 ? tr("no function tried")
        : functions_->left() == 0
            ? QString()
            : tr("%1 of %n function(s) left", nullptr, functions_->count()).arg(functions_->left()));
  }
  state_->setToolTip(open.join(QLatin1Char('\n')));
}

void ProvePage::showDue() {
  const ProofPoint* point = due();
  // With all points measured its keys still lead back and to the functions.
  field_->setEnabled(!points_.empty());
  for (QPushButton* key : {overLimit_, skip_}) // of the point that is due
    key->setVisible(point != nullptr);
  if (point == nullptr) {
    point_->setText(points_.empty() ? tr("No point") : tr("All measured"));
    caption_->setText(tr("Next point"));
    lead_->setText(points_.empty() ? QString() : tr("F: the functions. B: measure again."));
    must_->clear();
    figure_->setCaption(tr("Reading"));
    fitPoint();
    return;
  }
  // A via or a track has no pin to name.
  const BoardUnderWork* board = desk_.job.board();
  const PlaceNames* places = desk_.job.places();
  const auto spoken = [places](const ProbePoint& at) {
    return at.pin ? spokenPoint(at) : besidePicture(nameOf(at, places));
  };
  QString text = spoken(point->point);
  QString caption = point->now ? tr("Once more") : tr("Next point");
  if (point->why == ProofWhy::endToEnd)
    text = tr("%1 to %2").arg(text, spoken(point->other));
  else if (board != nullptr)
    if (const Pin* pin = board->board->pins.find(point->point.pin); pin != nullptr && pin->net.known())
      if (const Net* net = board->board->nets.find(pin->net.value); net != nullptr && !net->name.empty())
        caption += QStringLiteral(" · ") + QString::fromStdString(net->name);
  caption_->setText(caption);
  point_->setText(text);
  fitPoint();
  const QString other = QString::fromStdString(point->other.label);
  switch (point->mode) {
  case ReadingMode::diode:
    lead_->setText(tr("Black lead here, red on %1").arg(other));
    break;
  case ReadingMode::diodeReverse:
    lead_->setText(tr("Red lead here, black on %1").arg(other));
    break;
  default:
    lead_->setText(point->why == ProofWhy::endToEnd
                       ? tr("One lead on each end")
                       : tr("%1: one lead here, the other on %2").arg(shown(nameOf(point->mode)), other));
  }
  figure_->setCaption(tr("Reading, %1").arg(shown(nameOf(point->mode))));
  const QString expected = shown(whatIsExpected(*point));
  must_->setText(expected.isEmpty() ? tr("Nothing to compare with") : tr("Must be %1").arg(expected));
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
  lastRow_->setVisible(shown != nullptr);
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

Overlay ProvePage::overlay() const {
  Overlay out;
  const BoardUnderWork* board = desk_.job.board();
  const Job* job = desk_.job.job();
  if (board == nullptr || job == nullptr) return out;
  for (const RepairAction& action : job->actions)
    if (action.jumper) {
      out.lines.push_back({action.jumper->way, LineStyle::laid});
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
