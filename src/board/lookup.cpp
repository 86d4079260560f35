#include "netmend/board/lookup.h"

namespace netmend {

namespace {

template <class T, class Member>
const std::vector<Member>& listOf(const Table<T>& table, const std::vector<std::vector<Member>>& lists,
                                  decltype(T::id) id) {
  static const std::vector<Member> none;
  const std::size_t index = table.indexOf(id);
  return index < lists.size() ? lists[index] : none;
}

template <class T, class Member>
void enter(const Table<T>& table, std::vector<std::vector<Member>>& lists, decltype(T::id) owner,
           Member member) {
  const std::size_t index = table.indexOf(owner);
  if (index < lists.size()) lists[index].push_back(member);
}

template <class IdType>
std::vector<IdType> named(const std::unordered_map<std::string_view, std::vector<IdType>>& index,
                          std::string_view name) {
  const auto it = index.find(name);
  return it == index.end() ? std::vector<IdType>{} : it->second;
}

} // namespace

Lookup::Lookup(const Board& board)
    : board_(&board), padsByPin_(board.pins.size()), pinsByPart_(board.parts.size()),
      pinsByNet_(board.nets.size()) {
  for (const Pad& pad : board.pads)
    enter(board.pins, padsByPin_, pad.pin, pad.id);
  for (const Pin& pin : board.pins) {
    if (pin.part)
      enter(board.parts, pinsByPart_, pin.part, pin.id);
    else
      freePinsByName_[pin.name].push_back(pin.id);
    if (pin.net.known() && pin.net.value) enter(board.nets, pinsByNet_, pin.net.value, pin.id);
  }
  for (const Net& net : board.nets)
    netsByName_[net.name].push_back(net.id);
  for (const Part& part : board.parts)
    partsByReference_[part.reference].push_back(part.id);
}

const std::vector<PadId>& Lookup::padsOf(PinId pin) const {
  return listOf(board_->pins, padsByPin_, pin);
}

const std::vector<PinId>& Lookup::pinsOf(PartId part) const {
  return listOf(board_->parts, pinsByPart_, part);
}

const std::vector<PinId>& Lookup::pinsOf(NetId net) const {
  return listOf(board_->nets, pinsByNet_, net);
}

std::vector<NetId> Lookup::netsNamed(std::string_view name) const {
  return named(netsByName_, name);
}

std::vector<PinId> Lookup::pinsLabelled(std::string_view label) const {
  std::vector<PinId> out = named(freePinsByName_, label);
  for (std::size_t dot = label.find('.'); dot != std::string_view::npos; dot = label.find('.', dot + 1)) {
    for (const PartId part : named(partsByReference_, label.substr(0, dot))) {
      for (const PinId pin : pinsOf(part)) {
        if (board_->pins.find(pin)->name == label.substr(dot + 1)) out.push_back(pin);
      }
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::string pinLabel(const Board& board, PinId pin) {
  const Pin* found = board.pins.find(pin);
  if (!found) return {};
  const Part* part = found->part ? board.parts.find(found->part) : nullptr;
  return part ? part->reference + "." + found->name : found->name;
}

Fact<Point> positionOf(const Lookup& lookup, PinId pin) {
  for (const PadId id : lookup.padsOf(pin)) {
    const Pad* pad = lookup.board().pads.find(id);
    if (pad && pad->position.known()) return pad->position;
  }
  return {};
}

} // namespace netmend
