#pragma once

#include <cmath>

#include "netmend/board/board.h"

namespace netmend::test {

/// `copies` of a board side by side in a square, 5 mm apart, each with parts, nets and copper of its own;
/// the layers are shared. For measuring how time grows with size.
class BoardTiler {
public:
  explicit BoardTiler(const Board& board) : board_(board), stride_(board.lastId + 1) {}

  [[nodiscard]] Board tiled(std::size_t copies) {
    Board out;
    out.info = board_.info;
    out.info.outline = {};
    out.layers = board_.layers;
    out.lastId = stride_ * copies;
    const Box box = extent();
    const auto columns = static_cast<std::size_t>(std::ceil(std::sqrt(static_cast<double>(copies))));
    constexpr Length gap(5'000'000);
    for (std::size_t i = 0; i < copies; ++i) {
      tile_ = i;
      shift_ = {(box.size().width + gap) * static_cast<std::int64_t>(i % columns),
                (box.size().height + gap) * static_cast<std::int64_t>(i / columns)};
      addCopy(out);
    }
    return out;
  }

private:
  [[nodiscard]] Box extent() const {
    Box box;
    for (const Pad& pad : board_.pads)
      if (pad.position.known()) box.include(pad.position.value);
    for (const Track& track : board_.tracks) {
      box.include(track.start);
      box.include(track.end);
    }
    for (const Area& area : board_.areas)
      for (const Point p : area.polygon.outer)
        box.include(p);
    return box;
  }

  template <class IdType> void renew(IdType& id) const {
    if (id) id.value += stride_ * tile_;
  }
  template <class IdType> void renew(Fact<IdType>& id) const { renew(id.value); }
  void move(Point& p) const { p = p + shift_; }
  void move(Fact<Point>& p) const {
    if (p.known()) move(p.value);
  }
  void move(Ring& ring) const {
    for (Point& p : ring)
      move(p);
  }
  void move(Polygon& polygon) const {
    move(polygon.outer);
    for (Ring& hole : polygon.holes)
      move(hole);
  }

  /// What an object refers to, and where it stands, in this tile.
  void place(Net& net) const { net.name += "/" + std::to_string(tile_); }
  void place(Part& part) const {
    renew(part.lid);
    move(part.position);
    move(part.body.value);
    for (Through& through : part.through.value) {
      renew(through.from);
      renew(through.to);
    }
  }
  void place(Pin& pin) const {
    renew(pin.part);
    renew(pin.net);
  }
  void place(Pad& pad) const {
    renew(pad.pin);
    move(pad.position);
  }
  void place(Track& track) const {
    renew(track.net);
    move(track.start);
    move(track.mid);
    move(track.end);
  }
  void place(Via& via) const {
    renew(via.net);
    move(via.position);
  }
  void place(Area& area) const {
    renew(area.net);
    move(area.polygon);
  }

  template <class T> void copy(const Table<T>& from, Table<T>& to) const {
    for (T object : from) {
      renew(object.id);
      place(object);
      to.put(std::move(object));
    }
  }
  void addCopy(Board& out) const {
    copy(board_.nets, out.nets);
    copy(board_.parts, out.parts);
    copy(board_.pins, out.pins);
    copy(board_.pads, out.pads);
    copy(board_.tracks, out.tracks);
    copy(board_.vias, out.vias);
    copy(board_.areas, out.areas);
  }

  const Board& board_;
  std::uint64_t stride_;
  std::size_t tile_ = 0;
  Point shift_;
};

[[nodiscard]] inline Board tiled(const Board& board, std::size_t copies) {
  return BoardTiler(board).tiled(copies);
}

} // namespace netmend::test
