#pragma once

#include "netmend/base/quantity.h"

namespace netmend {

enum class FaultKind { sound, open, deadPin, shortToGround, noneOfThese };

/// What a meter should read at a place.
struct Prediction {
  double overLimit = 0.0; ///< probability of OL
  Volts mean;             ///< of the rest
  Volts spread;
  friend bool operator==(const Prediction&, const Prediction&) = default;
};

/// What a suspect said of a reading before any was taken.
struct Foretold {
  enum class What {
    anything,  ///< it is none of these
    overLimit, ///< the places are parted
    volts,     ///< `prediction`
    ohms,      ///< along sound copper
    notSaid    ///< no figure for this kind of reading
  };
  What what = What::notSaid;
  Prediction prediction{};
  Ohms ohms{};
  Ohms ohmsSpread{};
  friend bool operator==(const Foretold&, const Foretold&) = default;
};

} // namespace netmend
