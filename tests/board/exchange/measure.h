#pragma once

#include <set>
#include <string>

#include "netmend/base/said.h"
#include "netmend/board/board.h"

namespace netmend {

inline double squareMillimetres(const Ring& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    sum += (a.x.mm() - ring[0].x.mm()) * (b.y.mm() - ring[0].y.mm()) -
           (b.x.mm() - ring[0].x.mm()) * (a.y.mm() - ring[0].y.mm());
  }
  return sum / 2;
}

inline Box boxOf(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  return box;
}

inline std::size_t netsWithPad(const Board& board) {
  std::set<NetId> nets;
  for (const Pad& pad : board.pads) {
    const Pin* pin = board.pins.find(pad.pin);
    if (pin->net.known() && pin->net.value) nets.insert(pin->net.value);
  }
  return nets.size();
}

inline const Part* partNamed(const Board& board, const std::string& reference) {
  for (const Part& part : board.parts)
    if (part.reference == reference) return &part;
  return nullptr;
}

inline std::vector<Pin> pinsOf(const Board& board, PartId part) {
  std::vector<Pin> pins;
  for (const Pin& pin : board.pins)
    if (pin.part == part) pins.push_back(pin);
  return pins;
}

inline std::vector<Pad> padsOf(const Board& board, PinId pin) {
  std::vector<Pad> pads;
  for (const Pad& pad : board.pads)
    if (pad.pin == pin) pads.push_back(pad);
  return pads;
}

inline std::string netName(const Board& board, Fact<NetId> net) {
  if (!net.known()) return "?";
  return net.value ? board.nets.find(net.value)->name : "-";
}

/// Whether a notice holds this text.
inline bool hasNotice(const std::vector<netmend::Said>& notices, const std::string& text) {
  for (const netmend::Said& notice : notices)
    if (netmend::wordsOf(notice).find(text) != std::string::npos) return true;
  return false;
}

} // namespace netmend
