#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "station.h"

/// What the Find station says. No widgets here.
namespace netmend {

/// Where the leads go: "diode mode, black lead here, red lead on GND".
[[nodiscard]] QString leadWords(const FaultCase& fault, const ProbeProposal& probe, const QString& otherLead);
/// How well it can be reached: "free to touch".
[[nodiscard]] QString accessWords(const FaultCase& fault, const ProbeProposal& probe);
/// What it takes to get there: "free to touch, about 15 s".
[[nodiscard]] QString effortWords(const FaultCase& fault, const ProbeProposal& probe);
/// Why this one: what it is expected to read and to tell, and why going on is worth it.
[[nodiscard]] QString reasonWords(const FaultCase& fault, const ProbeProposal& probe);

/// What a meter may read there in diode mode, and which of the first suspects foretell it.
struct ProbeAnswer {
  std::optional<double> near;      ///< volts; none: OL
  std::vector<std::size_t> leaves; ///< indices into `Suspects::ranked`
};
/// Values first, the likeliest of them first, then OL; none where the mode has no foretold figures.
[[nodiscard]] std::vector<ProbeAnswer> answersAt(const FaultCase& fault, const ProbeProposal& probe,
                                                 std::size_t most);

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
