#include "place_json.h"

#include "json_words.h"
#include "netmend/netgraph/handle.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "netmend/words/short.h"

namespace netmend {

namespace {

using nlohmann::json;

/// `{"kind": "via", "id": 17}`; null: none.
json objectJson(const CopperObject& object) {
  struct Visitor {
    json operator()(std::monostate) const { return nullptr; }
    json operator()(PinId id) const { return with("pin", id.value); }
    json operator()(PadId id) const { return with("pad", id.value); }
    json operator()(TrackId id) const { return with("track", id.value); }
    json operator()(ViaId id) const { return with("via", id.value); }
    json operator()(AreaId id) const { return with("area", id.value); }
    json operator()(PartId id) const { return with("part", id.value); }
    static json with(const char* kind, std::uint64_t id) { return {{"kind", kind}, {"id", id}}; }
  };
  return std::visit(Visitor{}, object);
}

json placeJson(const Said& name, const std::string& handle, const CopperObject& object, int layer,
               const std::optional<Point>& at) {
  json out{{"name", wordsOf(name)}, {"handle", handle}, {"object", objectJson(object)}};
  out["layer"] = layer < 0 ? json(nullptr) : json(layer);
  if (at) out["at_mm"] = pointJsonMm(*at);
  return out;
}

std::string handleOf(const Board& board, const FaultPlace& place) {
  if (place.pin) return pinLabel(board, place.pin);
  if (const auto* via = std::get_if<ViaId>(&place.object)) return viaHandle(board, *via, -1);
  return place.at ? pointHandle(board, *place.at, place.layer) : std::string();
}

} // namespace

json placeJson(const FaultCase& fault, std::size_t probePlace) {
  const ProbePlace& place = fault.isolation.places[probePlace];
  return placeJson(nameOf(fault.names.probe(probePlace)), place.label, place.object, place.layer, place.at);
}

json placeJson(const Board& board, const FaultCase& fault, const FaultPlace& place) {
  return placeJson(nameOf(fault.names.fault(place)), handleOf(board, place), place.object, place.layer,
                   place.at);
}

json placeJson(const ProbePlace& point, const PlaceNames& places) {
  return placeJson(nameOf(point, places), point.label, point.object, point.layer, point.at);
}

json placeJson(const ShortPlace& place, const PlaceNames& places) {
  const Board& board = places.board();
  CopperObject object = place.object;
  if (place.pin) object = place.pin;
  if (place.part) object = place.part;
  const std::string handle = place.pin  ? pinLabel(board, place.pin)
                             : place.at ? pointHandle(board, *place.at, place.layer)
                                        : std::string();
  return placeJson(nameOf(place, places), handle, object, place.layer, place.at);
}

json placeJson(const Landing& landing, const PlaceNames& places) {
  return placeJson(nameOf(landing, places), landing.point, landing.copper, landing.layer, landing.at);
}

} // namespace netmend
