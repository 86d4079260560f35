#pragma once

#include <cstdint>
#include <unordered_set>
#include <utility>
#include <vector>

#include "line_cells.h"
#include "netmend/isolation/isolation.h"
#include "operating_point.h"

namespace netmend {

/// What a fault does to the line: cells in `below` (intervals [first, second)) lose touch with the rest, or
/// one pin loses its termination, or everything is tied to ground.
struct FaultEffect {
  FaultKind kind = FaultKind::sound;
  std::vector<std::pair<std::size_t, std::size_t>> below;
  std::size_t deadPin = noCell; ///< index into LinePins

  [[nodiscard]] bool isBelow(std::size_t cell) const {
    for (const auto& [first, last] : below)
      if (cell >= first && cell < last) return true;
    return false;
  }
};

/// A pin of the line with what stands behind it.
struct LinePin {
  PinId pin;
  std::size_t cell = 0;
  std::string label;
  PinTermination termination;
};

/// Copper that hangs together with whatever is behind its pins; node 0 is where the lead is held. Most
/// classes of a line share their fragments with others.
struct Fragment {
  struct Series {
    std::size_t a;
    std::size_t b;
    Ohms resistance;
  };
  bool shorted = false;                       ///< to ground
  std::vector<std::vector<std::size_t>> pins; ///< by node: those with something behind them
  std::vector<Series> series;
};

/// Everything behind all pins, drawn `samples` times, each draw agreeing with what good boards read.
struct TerminationSamples {
  std::size_t samples = 0;
  /// By pin, by sample; empty for a pin that never holds one.
  std::vector<std::vector<double>> area;    ///< of junctions, in units of the sample's; 0: none
  std::vector<std::vector<double>> siemens; ///< load to ground
  std::vector<Junction> junction;           ///< of area 1
  std::vector<JunctionAt> bench;            ///< the same at the bench temperature
  std::vector<Ohms> shortOhms;              ///< what a short to ground has
  std::vector<double> weight;               ///< sums to 1
};

struct IsolationModel {
  LineCells cells;
  std::vector<LinePin> pins; ///< ordered by cell
  std::vector<std::size_t> cellOfPlace;
  std::vector<FaultEffect> effects; ///< by class
  TerminationSamples samples;
  std::vector<std::size_t> fragmentOf; ///< [(class·2 + below)·supers + super]
  std::vector<Fragment> fragments;     ///< each once
  std::vector<float> volts;            ///< diode mode: fragment × sample
  std::vector<double>
      sigmaByMillivolt; ///< of a diode reading; the meter's data cost too much to ask each time
  FaultPriors priors;
  ProbeEfforts efforts;
  MeterProfile meter;
  std::optional<MeterSource> diode;
  std::optional<MeterSource> ohms;
  Condition condition;
  std::unordered_set<std::uint64_t> groundPins;

  std::vector<KnownGood> knownGood;
  IsolationOptions options;

  /// The class's effect decides which fragment the cell is in.
  [[nodiscard]] std::size_t fragmentAt(std::size_t faultClass, std::size_t cell) const {
    const std::size_t below = effects[faultClass].isBelow(cell) ? 1 : 0;
    return fragmentOf[(faultClass * 2 + below) * cells.supers + cells.super[cell]];
  }
  /// By sample.
  [[nodiscard]] const float* voltsAt(std::size_t faultClass, std::size_t cell) const {
    return &volts[fragmentAt(faultClass, cell) * samples.samples];
  }
};

/// The bench temperature at which expected values are kept (netmend/probing/comparison.h).
inline constexpr Celsius benchTemperature{25.0};

} // namespace netmend
