#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/lookup.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// What sort of point it is as far as readings go. Points of one kind lend each other their spread.
enum class PinKind {
  unknown,
  signal,
  junction, ///< a signal of which it is certain that a chip's clamp sits on it
  supply,
  ground,
  unconnected
};
inline constexpr std::size_t pinKindCount = 6;
[[nodiscard]] std::string_view word(PinKind kind);
[[nodiscard]] std::optional<PinKind> pinKindFrom(std::string_view word);

/// From what the board knows: the net's role (also as guessed from its name), a known absence of a net, a
/// junction certain on the net.
[[nodiscard]] PinKind pinKind(const Lookup& lookup, PinId pin);

/// One hump of what good boards read: Student's t about a centre. Centre in the mode's unit, `scale` on the
/// comparison scale (comparison.h). `dof` may be infinite (normal).
struct ExpectedHump {
  double weight = 1.0; ///< share of good boards
  double centre = 0.0;
  double scale = 0.0;
  double dof = 0.0;
  double boards = 0.0; ///< how many boards stand behind it
  friend bool operator==(const ExpectedHump&, const ExpectedHump&) = default;
};

/// How a kind of point reads in one mode when nothing better is known.
struct PinKindDefault {
  ReadingMode mode = ReadingMode::diode;
  std::optional<double> overLimitShare; ///< with `humps`: the default; without: no default, only a spread
  std::vector<ExpectedHump> humps;
  double boardSpread = 0.0;    ///< typical standard deviation from board to board, on the comparison scale
  double boardSpreadDof = 0.0; ///< how firmly that is known, as degrees of freedom
  std::string source;
};

/// `data/pin_kinds.json`.
struct PinKindData {
  std::vector<std::vector<PinKindDefault>> byKind; ///< indexed by PinKind
  [[nodiscard]] const PinKindDefault* find(PinKind kind, ReadingMode mode) const;
};
[[nodiscard]] Result<PinKindData> loadPinKinds(const std::filesystem::path& path);

} // namespace netmend
