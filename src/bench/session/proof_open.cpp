#include "proof_open.h"

#include <algorithm>

#include <QCoreApplication>

#include "netmend/casework/function_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/verdict.h"
#include "netmend/words/place.h"
#include "netmend/words/verdict.h"
#include "window_text.h"

namespace netmend {

ProofBasis proofBasis(const BenchJob& job) {
  const BoardUnderWork* board = job.board();
  return {*job.job(), board != nullptr ? board->lookup.get() : nullptr, job.expected(), job.data()};
}

QStringList openForProof(const std::vector<ProofPoint>& points, const Job& job,
                         const std::vector<std::size_t>& skipped, const PlaceNames* places) {
  QStringList out;
  if (actionToProve(job) == nullptr) return {tr("nothing has been repaired yet")};
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ProofPoint& point = points[i];
    const bool left = std::find(skipped.begin(), skipped.end(), i) != skipped.end();
    const QString name = besidePicture(nameOf(point, places));
    if (point.now && point.now->odd())
      out << tr("%1 reads %2: %3")
                 .arg(name, QString::fromStdString(readingText(point.now->reading.value, point.mode)),
                      shown(nameOf(*point.now)));
    else if (!point.now && !(left && point.why == ProofWhy::neighbour))
      out << (left ? tr("%1 was left out") : tr("%1 has not been read again")).arg(name);
  }
  std::size_t functions = 0;
  int work = 0;
  for (const RepairAction& action : job.actions)
    for (const WorkStep& step : action.steps) {
      if (isFunctionCheck(step)) ++functions;
      if (step.done) continue;
      if (isFunctionCheck(step))
        out << tr("not seen to work: %1").arg(QString::fromStdString(step.text));
      else
        ++work;
    }
  if (work > 0) out << QCoreApplication::translate("netmend", "%n work step(s) not ticked", nullptr, work);
  if (functions == 0) out << tr("no function has been tried");
  return out;
}

} // namespace netmend
