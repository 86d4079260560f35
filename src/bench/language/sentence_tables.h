#pragma once

#include <span>

namespace netmend {

/// The parts of `coreSentences`, as `Phrase::english` has them, marked for lupdate.
[[nodiscard]] std::span<const char* const> wordsSentences();
[[nodiscard]] std::span<const char* const> findSentences();
[[nodiscard]] std::span<const char* const> repairSentences();
[[nodiscard]] std::span<const char* const> dataSentences();
[[nodiscard]] std::span<const char* const> sheetSentences();
[[nodiscard]] std::span<const char* const> errorsSentences();
[[nodiscard]] std::span<const char* const> filesSentences();
[[nodiscard]] std::span<const char* const> tablesSentences();

} // namespace netmend
