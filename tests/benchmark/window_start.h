#pragma once

#include "report.h"
#include "window_store.h"

namespace netmend::benchmarks {

/// From a process's start to its window's first picture: netmend-bench with the demo's job reopened at each
/// station, against a program with nothing but a QMainWindow.
void measureStart(const DemoStore& store, Report& report);

} // namespace netmend::benchmarks
