#include "draft.h"

#include <algorithm>
#include <type_traits>

namespace netmend {

Draft::Draft(const Board& board, Edit begun) : board_(board), lastId_(board.lastId), edit_(std::move(begun)) {
  for (const AnyChange& change : edit_.changes)
    std::visit(
        [&]<class T>(const T& one) {
          if constexpr (std::is_same_v<T, InfoChange>)
            info_ = one.after;
          else
            lastId_ = std::max(lastId_, one.id.value);
        },
        change);
}

LayerId Draft::layerOf(Side side) {
  const auto& order = info_ ? info_->layerOrder : board_.info.layerOrder;
  if (!order.empty()) return side == Side::top ? order.front() : order.back();
  info_ = board_.info;
  for (const char* name : {"top", "bottom"}) {
    Layer layer;
    layer.id = newId<LayerId>();
    layer.name = name;
    layer.origin = Origin::user;
    info_->layerOrder.push_back(layer.id);
    put(std::move(layer));
  }
  if (!info_->copper.known()) info_->copper = fromUser(DrawnCopper::points);
  edit_.changes.emplace_back(InfoChange{*info_});
  return side == Side::top ? info_->layerOrder.front() : info_->layerOrder.back();
}

} // namespace netmend
