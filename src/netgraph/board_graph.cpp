#include "netmend/netgraph/board_graph.h"

#include "contacts.h"
#include "copper_items.h"
#include "flat_graph.h"
#include "joints.h"

namespace netmend {

BoardGraph buildBoardGraph(const Board& board, const Progress& progress) {
  const auto items = copper::copperItems(board);
  const auto contacts = copper::contactsOf(items, progress);
  if (progress.stopped()) return {};
  const auto joints = copper::jointsOf(board, items, contacts);
  if (progress.stopped()) return {};
  return copper::partition(board, copper::flatGraphOf(board, items, contacts, joints));
}

} // namespace netmend
