#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "netmend/base/geometry.h"

/// What single words of the typed line say.
namespace netmend {

/// Parts that are put or copied at once.
inline constexpr std::size_t mostOfARow = 500;

[[nodiscard]] std::string lowerCase(std::string_view text);
[[nodiscard]] std::string capitals(std::string_view text);
/// Parted by blanks and semicolons; a comma ends a piece.
[[nodiscard]] std::vector<std::string> piecesOf(std::string_view text);
/// In digits, or as a small word of either language.
[[nodiscard]] std::optional<std::size_t> wholeNumber(std::string_view text);
/// Millimetres with a point or comma, above zero; `mm` may stand behind.
[[nodiscard]] std::optional<Length> lengthIn(std::string text);
/// `0.3x1.6`
[[nodiscard]] std::optional<Size> sizeIn(const std::string& text);
/// `9x9`
[[nodiscard]] std::optional<std::pair<std::size_t, std::size_t>> gridIn(const std::string& text);
/// `x8`, whatever the number.
[[nodiscard]] bool isTimes(const std::string& word);
/// `8` or `x8`; a code like `0201` is none.
[[nodiscard]] std::optional<std::size_t> countIn(const std::string& word);

} // namespace netmend
