#pragma once

#include <QString>

#include "station.h"

/// What the Find station says. No widgets here.
namespace netmend {

/// Where the leads go: "diode mode, black lead here, red lead on GND".
[[nodiscard]] QString leadWords(const FaultCase& fault, const ProbeProposal& probe, const QString& otherLead);
/// What it takes to get there: "free to touch, about 15 s".
[[nodiscard]] QString effortWords(const FaultCase& fault, const ProbeProposal& probe);
/// Why this one: what it is expected to read and to tell, and why going on is worth it.
[[nodiscard]] QString reasonWords(const FaultCase& fault, const ProbeProposal& probe);

/// What to do when probing should stop, and at which station.
struct FindAdvice {
  QString head;
  QString text;
  Station station = Station::bridge;
};
[[nodiscard]] FindAdvice adviceFor(const FaultCase& fault);

/// Why it is suspected: before and after, its places, readings for, against and without a word on it.
[[nodiscard]] QString suspectWords(const FaultCase& fault, const Suspect& suspect);
/// What is not known of this line and what knowing it would buy; readings that were not used.
[[nodiscard]] QString unknownWords(const FaultCase& fault, const PlaceNames* places);

} // namespace netmend
