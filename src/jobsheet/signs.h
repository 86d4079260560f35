#pragma once

#include "netmend/drawing/overlay.h"
#include "table.h"

namespace netmend {

[[nodiscard]] Sign markSign(MarkShape shape);
/// To be ticked by hand, or ticked already: a square for work, a round one for a check.
[[nodiscard]] Sign tickBox(bool check, bool done);
[[nodiscard]] Sign warningSign();

} // namespace netmend
