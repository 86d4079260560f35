#include "step_words.h"

#include <limits>

#include <QCoreApplication>

#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/reading.h"
#include "steps_view.h"

namespace netmend {

QString mustFigure(const WorkStep& step) {
  if (!step.measure) return {};
  const StepMeasure& wanted = *step.measure;
  QString text;
  if (wanted.interval) {
    const auto value = [&](double each) { return QString::fromStdString(readingText(each, wanted.mode)); };
    const QString low = value(wanted.interval->lowest), high = value(wanted.interval->highest);
    const QString unit = high.section(QLatin1Char(' '), 1);
    if (wanted.interval->highest == std::numeric_limits<double>::max())
      text = StepsView::tr("over %1").arg(low);
    else if (wanted.interval->lowest <= 0)
      text = StepsView::tr("under %1").arg(high);
    else if (low.section(QLatin1Char(' '), 1) == unit)
      text = low.section(QLatin1Char(' '), 0, 0) + QStringLiteral("–") + high;
    else
      text = low + QStringLiteral(" – ") + high;
  }
  if (!wanted.overLimit) return text;
  return text.isEmpty() ? QStringLiteral("OL") : StepsView::tr("OL or %1").arg(text);
}

QString leadsOf(const WorkStep& step) {
  if (!step.measure) return {};
  const StepMeasure& wanted = *step.measure;
  const QString mode = shown(nameOf(wanted.mode));
  const auto named = [](const ProbePoint& point) {
    return point.label == StepMeasure::batteryContacts ? StepsView::tr("battery contacts")
                                                       : QString::fromStdString(point.label);
  };
  const QString here = named(wanted.point), other = named(wanted.other);
  if (wanted.mode == ReadingMode::diode)
    return StepsView::tr("%1: black lead on %2, red lead on %3").arg(mode, here, other);
  return StepsView::tr("%1: from %2 to %3").arg(mode, here, other);
}

} // namespace netmend
