#pragma once

#include "foreseen.h"
#include "model.h"

namespace netmend {

/// What a meter would show of what a lead meets: the hand's spread added.
[[nodiscard]] Prediction predictionOf(const IsolationModel& model, const Foreseen& foreseen);

} // namespace netmend
