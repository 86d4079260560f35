#pragma once

#include <concepts>
#include <string_view>
#include <type_traits>

#include "netmend/board/board.h"

/// The kinds of objects of a board, each with its words and its table: for code that does the same to all.
namespace netmend {

template <class T> struct Kind;

template <> struct Kind<Layer> {
  using Type = Layer;
  static constexpr std::string_view name = "layer", list = "layers";
  static constexpr auto table = &Board::layers;
};
template <> struct Kind<Part> {
  using Type = Part;
  static constexpr std::string_view name = "part", list = "parts";
  static constexpr auto table = &Board::parts;
};
template <> struct Kind<Net> {
  using Type = Net;
  static constexpr std::string_view name = "net", list = "nets";
  static constexpr auto table = &Board::nets;
};
template <> struct Kind<Pin> {
  using Type = Pin;
  static constexpr std::string_view name = "pin", list = "pins";
  static constexpr auto table = &Board::pins;
};
template <> struct Kind<Pad> {
  using Type = Pad;
  static constexpr std::string_view name = "pad", list = "pads";
  static constexpr auto table = &Board::pads;
};
template <> struct Kind<Track> {
  using Type = Track;
  static constexpr std::string_view name = "track", list = "tracks";
  static constexpr auto table = &Board::tracks;
};
template <> struct Kind<Via> {
  using Type = Via;
  static constexpr std::string_view name = "via", list = "vias";
  static constexpr auto table = &Board::vias;
};
template <> struct Kind<Area> {
  using Type = Area;
  static constexpr std::string_view name = "area", list = "areas";
  static constexpr auto table = &Board::areas;
};
template <> struct Kind<Zone> {
  using Type = Zone;
  static constexpr std::string_view name = "zone", list = "zones";
  static constexpr auto table = &Board::zones;
};
template <> struct Kind<Underlay> {
  using Type = Underlay;
  static constexpr std::string_view name = "underlay", list = "underlays";
  static constexpr auto table = &Board::underlays;
};

/// The kinds in the order in which they refer to each other, as far as they do so in one direction.
template <class Visitor> void forEachKind(Visitor&& visit) {
  visit(Kind<Layer>{});
  visit(Kind<Part>{});
  visit(Kind<Net>{});
  visit(Kind<Pin>{});
  visit(Kind<Pad>{});
  visit(Kind<Track>{});
  visit(Kind<Via>{});
  visit(Kind<Area>{});
  visit(Kind<Zone>{});
  visit(Kind<Underlay>{});
}

/// The kind that an id belongs to.
template <class IdType> struct KindOfId;
template <> struct KindOfId<LayerId> : Kind<Layer> {};
template <> struct KindOfId<PartId> : Kind<Part> {};
template <> struct KindOfId<NetId> : Kind<Net> {};
template <> struct KindOfId<PinId> : Kind<Pin> {};
template <> struct KindOfId<PadId> : Kind<Pad> {};
template <> struct KindOfId<TrackId> : Kind<Track> {};
template <> struct KindOfId<ViaId> : Kind<Via> {};
template <> struct KindOfId<AreaId> : Kind<Area> {};
template <> struct KindOfId<ZoneId> : Kind<Zone> {};
template <> struct KindOfId<UnderlayId> : Kind<Underlay> {};

/// `T` or `const T`: lets one list of fields serve reading and writing.
template <class S, class T>
concept Either = std::same_as<std::remove_const_t<S>, T>;

template <class T>
concept AnyId = requires {
  typename KindOfId<T>::Type;
};

} // namespace netmend
