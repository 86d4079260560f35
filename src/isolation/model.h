#pragma once

#include <optional>
#include <unordered_set>
#include <vector>

#include "line_cells.h"
#include "line_fragment.h"
#include "line_integral.h"
#include "netmend/isolation/isolation.h"
#include "operating_point.h"

namespace netmend {

struct IsolationModel {
  LineCells cells;
  std::vector<LinePin> pins; ///< ordered by cell
  std::vector<std::size_t> cellOfPlace;
  std::vector<FaultEffect> effects; ///< by class
  LineNetworks networks;
  std::vector<ReadingProduct> good;    ///< what good boards say, parallel to each network's `good`
  std::vector<double> logGood;         ///< by class: how likely that is; the same but for rounding
  std::vector<CommonError> errors;     ///< of the meter in diode mode
  std::vector<CommonError> fineErrors; ///< the same in smaller steps
  double repeatSigma = 0.0;            ///< V, of one diode reading: hand and display
  FaultPriors priors;
  ProbeEfforts efforts;
  MeterProfile meter;
  std::optional<LineBench> bench; ///< empty: the meter has no diode mode
  std::optional<LineBench> ohms;
  Condition condition;
  std::unordered_set<std::uint64_t> groundPins;
  std::vector<KnownGood> knownGood;

  [[nodiscard]] Volts displayLimit() const { return bench ? bench->source.displayLimit : Volts(2.0); }
  /// Which of the class's circuits a lead at this cell meets.
  [[nodiscard]] std::size_t circuitAt(std::size_t faultClass, std::size_t cell) const {
    const std::size_t below = effects[faultClass].isBelow(cell) ? 1 : 0;
    return networks.ofClass[faultClass].circuitAt[below * cells.supers + cells.super[cell]];
  }
};

} // namespace netmend
