#pragma once

#include "kinds.h"

/// One list of fields per struct. The board file, the journal and the check of references all follow
/// these lists, so that a new field is added here and in docs/formats/netmend-board.schema.json only.
/// `must`: always written, has to be there; an id that may not be none.
/// `may`: left out when it has its default value.
/// `fact`: left out when unknown.
/// An object's `id` and `origin` are common to all kinds and stand in object_json.h.
namespace netmend {

template <class Visitor, Either<Polygon> S> void fields(Visitor& v, S& polygon) {
  v.must("outer", polygon.outer);
  v.may("holes", polygon.holes);
}

template <class Visitor, Either<Through> S> void fields(Visitor& v, S& through) {
  v.must("from", through.from);
  v.must("to", through.to);
  v.fact("resistance", through.resistance);
}

template <class Visitor, Either<BoardInfo> S> void fields(Visitor& v, S& info) {
  v.may("uuid", info.uuid);
  v.fact("name", info.name);
  v.fact("revision", info.revision);
  v.fact("outline", info.outline);
  v.may("layer_order", info.layerOrder);
  v.fact("copper", info.copper);
}

template <class Visitor, Either<Layer> S> void fields(Visitor& v, S& layer) {
  v.may("name", layer.name);
  v.fact("copper_thickness", layer.copperThickness);
  v.fact("dielectric_below", layer.dielectricBelow);
}

template <class Visitor, Either<Part> S> void fields(Visitor& v, S& part) {
  v.may("reference", part.reference);
  v.fact("kind", part.kind);
  v.fact("value", part.value);
  v.fact("package", part.package);
  v.fact("side", part.side);
  v.fact("position", part.position);
  v.fact("body", part.body);
  v.fact("height", part.height);
  v.fact("fitted", part.fitted);
  v.fact("lid", part.lid);
  v.fact("through", part.through);
}

template <class Visitor, Either<Net> S> void fields(Visitor& v, S& net) {
  v.may("name", net.name);
  v.fact("role", net.role);
  v.fact("rated_voltage", net.ratedVoltage);
  v.fact("rated_current", net.ratedCurrent);
}

template <class Visitor, Either<Pin> S> void fields(Visitor& v, S& pin) {
  v.may("part", pin.part);
  v.may("name", pin.name);
  v.fact("net", pin.net);
  v.fact("termination", pin.termination);
}

template <class Visitor, Either<Pad> S> void fields(Visitor& v, S& pad) {
  v.must("pin", pad.pin);
  v.fact("position", pad.position);
  v.fact("shape", pad.shape);
  v.fact("size", pad.size);
  v.may("corner_radius", pad.cornerRadius);
  v.may("polygon", pad.polygon);
  v.may("rotation", pad.rotation);
  v.fact("reach", pad.reach);
  v.fact("drill", pad.drill);
  v.may("drill_offset", pad.drillOffset);
  v.fact("plated", pad.plated);
  v.fact("mask_opening", pad.maskOpening);
  v.fact("access", pad.access);
  v.fact("gone", pad.gone);
}

template <class Visitor, Either<Track> S> void fields(Visitor& v, S& track) {
  v.may("way", track.way);
  v.must("start", track.start);
  v.must("end", track.end);
  v.may("mid", track.mid);
  v.fact("layer", track.layer);
  v.fact("width", track.width);
  v.fact("net", track.net);
}

template <class Visitor, Either<Via> S> void fields(Visitor& v, S& via) {
  v.must("position", via.position);
  v.fact("diameter", via.diameter);
  v.fact("drill", via.drill);
  v.fact("from", via.from);
  v.fact("to", via.to);
  v.fact("mask_opening", via.maskOpening);
  v.fact("net", via.net);
}

template <class Visitor, Either<Area> S> void fields(Visitor& v, S& area) {
  v.must("polygon", area.polygon);
  v.fact("layer", area.layer);
  v.fact("net", area.net);
}

template <class Visitor, Either<Zone> S> void fields(Visitor& v, S& zone) {
  v.must("kind", zone.kind);
  v.may("name", zone.name);
  v.must("polygon", zone.polygon);
  v.fact("side", zone.side);
  v.fact("margin", zone.margin);
  v.may("part", zone.part);
}

template <class Visitor, Either<PhotoPair> S> void fields(Visitor& v, S& pair) {
  v.must("photo", pair.photo);
  v.must("board", pair.board);
}

template <class Visitor, Either<Underlay> S> void fields(Visitor& v, S& underlay) {
  v.may("name", underlay.name);
  v.must("file", underlay.file);
  v.must("width", underlay.width);
  v.must("height", underlay.height);
  v.must("side", underlay.side);
  v.may("close_up", underlay.closeUp);
  v.fact("lie", underlay.lie);
  v.may("pairs", underlay.pairs);
  v.may("faded", underlay.faded);
  v.may("lightened", underlay.lightened);
}

} // namespace netmend
