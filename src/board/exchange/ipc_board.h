#pragma once

#include "netmend/board/exchange/import.h"

namespace netmend {

[[nodiscard]] bool looksLikeTestData(std::string_view content);

/// Electrical test data after IPC-D-356 and IPC-D-356A; see docs/formats/ipc-d-356a.md.
[[nodiscard]] Result<Imported> readTestData(const ImportSource& source);

} // namespace netmend
