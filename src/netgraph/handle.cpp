#include "netmend/netgraph/handle.h"

#include <charconv>

#include <fmt/format.h>

namespace netmend {

namespace {

std::string onLayer(const Board& board, int layer) {
  if (layer < 0) return {};
  if (layer == 0) return " top";
  if (static_cast<std::size_t>(layer) + 1 == board.info.layerOrder.size()) return " bottom";
  return fmt::format(" layer {}", layer);
}

/// Takes a number off the front.
template <class Number> std::optional<Number> takeNumber(std::string_view& text) {
  Number value{};
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{}) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
  return value;
}

/// What `onLayer` wrote.
std::optional<int> layerIn(const Board& board, std::string_view text) {
  const int last = static_cast<int>(board.info.layerOrder.size()) - 1;
  for (int layer = -1; layer <= last; ++layer)
    if (text == onLayer(board, layer)) return layer;
  return std::nullopt;
}

} // namespace

std::string viaHandle(const Board& board, ViaId via, int layer) {
  return fmt::format("via {}{}", via.value, onLayer(board, layer));
}

std::string pointHandle(const Board& board, Point at, int layer) {
  return fmt::format("{:.2f},{:.2f}{}", at.x.mm(), at.y.mm(), onLayer(board, layer));
}

std::optional<HandledPlace> placeOfHandle(const Board& board, std::string_view handle) {
  HandledPlace out;
  constexpr std::string_view via = "via ";
  if (handle.starts_with(via)) {
    handle.remove_prefix(via.size());
    const auto id = takeNumber<std::uint64_t>(handle);
    const Via* found = id ? board.vias.find(ViaId(*id)) : nullptr;
    if (found == nullptr) return std::nullopt;
    out.object = found->id;
    out.at = found->position;
  } else {
    const auto x = takeNumber<double>(handle);
    if (!x || !handle.starts_with(',')) return std::nullopt;
    handle.remove_prefix(1);
    const auto y = takeNumber<double>(handle);
    if (!y) return std::nullopt;
    out.at = {Length::fromMm(*x), Length::fromMm(*y)};
  }
  const auto layer = layerIn(board, handle);
  if (!layer) return std::nullopt;
  out.layer = *layer;
  return out;
}

} // namespace netmend
