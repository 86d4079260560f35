#pragma once

#include <QString>

#include "netmend/jobbook/job.h"

/// What the due step says large. No widgets here.
namespace netmend {

/// What it must read, as a figure: "0.631–0.659 V", "OL", "under 0.3 Ω"; empty: nothing to compare with.
[[nodiscard]] QString mustFigure(const WorkStep& step);
/// Where the leads go: "diode mode, black lead on C28.1, red lead on GND"; empty: it measures nothing.
[[nodiscard]] QString leadsOf(const WorkStep& step);

} // namespace netmend
