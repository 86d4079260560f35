#include "find_words.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "bench/widgets/tree_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"

namespace netmend {

namespace {

constexpr double toldApart = 0.03;   ///< volts; nearer values are one answer
constexpr double tellingBits = 0.05; ///< less does not move a per cent

QString tr(const char* text, int count = -1) {
  return QCoreApplication::translate("netmend", text, nullptr, count);
}

QString accessOf(const ProbePlace& place) {
  if (place.scrape) return tr("lay the track open first");
  if (!place.access.known()) return tr("nobody has said how well it can be reached");
  switch (place.access.value) {
  case Access::open:
    return tr("free to touch");
  case Access::underMask:
    return tr("scrape the mask off first");
  case Access::underLid:
    return tr("lift the lid first");
  case Access::underPart:
    return tr("under a part");
  }
  return {};
}

QString share(double probability) {
  const QString text = suspicionText(probability);
  return text.isEmpty() ? tr("below half a per cent") : text;
}

QStringList evidenceOf(const FaultCase& fault, const Suspect& suspect, double sign) {
  QStringList out;
  for (const Evidence& evidence : suspect.evidence)
    if (evidence.bits * sign >= tellingBits)
      out << QStringLiteral("   ") +
                 besidePicture(evidenceSaid(toJobEvidence(fault.isolation, fault.names, evidence)));
  return out;
}

} // namespace

QString leadWords(const FaultCase& fault, const ProbeProposal& probe, const QString& otherLead) {
  const QString mode = shown(nameOf(probe.mode));
  if (probe.other)
    return tr("%1, other lead on %2").arg(mode, besidePicture(nameOf(fault.names.probe(*probe.other))));
  // The mode stands at the meter's place.
  if (probe.mode == ReadingMode::diode) return tr("Black lead here, red on %1").arg(otherLead);
  if (probe.mode == ReadingMode::diodeReverse)
    return tr("%1: red lead here, black lead on %2").arg(mode, otherLead);
  return tr("%1: one lead here, the other on %2").arg(mode, otherLead);
}

QString accessWords(const FaultCase& fault, const ProbeProposal& probe) {
  QString text = accessOf(fault.isolation.places[probe.place]);
  if (probe.other) {
    const QString other = accessOf(fault.isolation.places[*probe.other]);
    if (other != text) text += tr("; the other place: %1").arg(other);
  }
  return text;
}

QString effortWords(const FaultCase& fault, const ProbeProposal& probe) {
  const QString text = accessWords(fault, probe);
  const double seconds = probe.effort.value;
  return seconds < 100.0 ? tr("%1, about %2 s").arg(text).arg(std::lround(seconds))
                         : tr("%1, about %2 min").arg(text).arg(seconds / 60.0, 0, 'f', 1);
}

QString reasonWords(const FaultCase& fault, const ProbeProposal& probe) {
  return besidePicture(probeReasons(fault.names, fault.next, probe)) + QStringLiteral(".\n") +
         besidePicture(adviceReasons(fault.isolation, fault.names, fault.next)) + QStringLiteral(".");
}

std::vector<ProbeAnswer> answersAt(const FaultCase& fault, const ProbeProposal& probe, std::size_t most) {
  std::vector<ProbeAnswer> values;
  ProbeAnswer over;
  if (probe.other || probe.mode != ReadingMode::diode) return values;
  for (std::size_t i = 0; i < fault.suspects.ranked.size() && i < most; ++i) {
    const std::size_t which = fault.suspects.ranked[i].faultClass;
    if (fault.isolation.classes[which].kind == FaultKind::noneOfThese) continue; // it foretells anything
    const Prediction told = predictDiode(fault.isolation, probe.place, which);
    if (told.overLimit > 0.5) {
      over.leaves.push_back(i);
      continue;
    }
    const double value = told.mean.value;
    const auto same = std::find_if(values.begin(), values.end(), [&](const ProbeAnswer& answer) {
      return std::abs(*answer.near - value) <= toldApart;
    });
    if (same == values.end())
      values.push_back({value, {i}});
    else
      same->leaves.push_back(i);
  }
  if (!over.leaves.empty()) values.push_back(over);
  return values;
}

FindAdvice adviceFor(const FaultCase& fault) {
  if (fault.suspects.ranked.empty()) return {tr("No suspect"), {}, Station::walk};
  const Suspect& first = fault.suspects.ranked.front();
  const FaultClass& leading = fault.isolation.classes[first.faultClass];
  const QString held = share(first.probability);
  switch (leading.kind) {
  case FaultKind::sound:
    return {tr("This line is sound, %1").arg(held),
            tr("Look at the next odd pin, or at what this line drives. Enter goes back to the walk."),
            Station::walk};
  case FaultKind::noneOfThese:
    return {
        tr("None of these, %1").arg(held),
        tr("No single break, dead pin or short explains the readings. Take the odd ones again, look at the "
           "board under the microscope. Enter goes back to the walk."),
        Station::walk};
  case FaultKind::shortToGround:
    return {tr("Short to ground, %1").arg(held),
            tr("Something on the line hangs on ground: look for solder, a cracked capacitor, warmth under "
               "current. Enter goes to the repair."),
            Station::bridge};
  case FaultKind::deadPin:
    return {tr("Dead pin, %1").arg(held),
            tr("The part behind the pin has to be replaced or done without. Enter goes to the repair."),
            Station::bridge};
  case FaultKind::open:
    break;
  }
  const bool joint = !first.places.empty() && first.places.front().edgeKind == EdgeKind::solderJoint;
  return {tr("Break found, %1").arg(held),
          joint ? tr("Resolder the joint and probe again, or bridge it. Enter goes to the repair.")
                : tr("Bridge it. Enter goes to the ways to do so."),
          Station::bridge};
}

QString suspectWords(const FaultCase& fault, const Suspect& suspect) {
  QStringList lines;
  lines << besidePicture(nameOf(fault.isolation.classes[suspect.faultClass], fault.names));
  const double prior = fault.isolation.classes[suspect.faultClass].prior;
  lines << tr("Before any reading %1, now %2.").arg(share(prior), share(suspect.probability));
  if (suspect.places.size() > 1) {
    lines << tr("One of these places; no reading tells them apart:");
    for (const FaultPlace& place : suspect.places)
      lines << QStringLiteral("   %1  %2")
                   .arg(share(place.share), besidePicture(nameOf(fault.names.fault(place))));
  }
  const QStringList pro = evidenceOf(fault, suspect, 1.0);
  const QStringList contra = evidenceOf(fault, suspect, -1.0);
  if (!pro.isEmpty()) lines << tr("Readings for it:") << pro;
  if (!contra.isEmpty()) lines << tr("Readings against it:") << contra;
  if (suspect.evidence.empty())
    lines << tr("No reading on this line yet.");
  else if (const auto silent = static_cast<qsizetype>(suspect.evidence.size()) - pro.size() - contra.size();
           silent > 0)
    lines << tr("Readings that say nothing for or against it: %1.").arg(silent);
  return lines.join(QLatin1Char('\n'));
}

QString unknownWords(const FaultCase& fault, const PlaceNames* places) {
  QStringList lines;
  for (const LineNotice& notice : fault.isolation.notices)
    lines << tr("Not known: %1.").arg(shown(noticeSaid(notice)));
  for (const SetAside& aside : fault.isolation.setAside)
    lines << tr("Not used: the reading at %1, %2.")
                 .arg(besidePicture(nameOf(aside.reading.point, places)), shown(setAsideSaid(aside)));
  return lines.join(QLatin1Char('\n'));
}

} // namespace netmend
