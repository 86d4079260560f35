#pragma once

#include "report.h"
#include "window_store.h"

namespace netmend::benchmarks {

/// From Enter, or from the linked meter's value, to durable in the job book and drawn on the screen: on the
/// demo's board with its eight good walks, and on a connector of 200 pins with as many.
void measureEntry(const DemoStore& store, Report& report);

} // namespace netmend::benchmarks
