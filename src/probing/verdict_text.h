#pragma once

#include <string>

#include "netmend/probing/verdict.h"

namespace netmend::probing {

/// Why the verdict is what it is: reading, what was expected and from what, how far off, how rare, the odds.
[[nodiscard]] std::string explain(const Reading& reading, const Verdict& verdict, double offInSpreads,
                                  double falseAlarmRate);

} // namespace netmend::probing
