#include "kicad_reader.h"

namespace netmend::kicad {

namespace {

/// What a text says that decides whether there is copper of it.
struct TextLook {
  std::string_view layer;
  bool hidden = false;
};

void readLook(KicadReader& r, TextLook& look) {
  while (const Item item = r.in.next()) {
    if (item.isAtom("hide")) look.hidden = true;
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "layer") {
      look.layer = r.in.onlyWord();
    } else if (item.text == "hide") {
      look.hidden = r.in.onlyWord() != "no";
    } else if (item.text == "effects") {
      readLook(r, look);
    } else {
      r.in.leave();
    }
  }
}

} // namespace

void readStrokeless(KicadReader& r, const Pattern& kind, std::size_t place) {
  TextLook look;
  readLook(r, look);
  if (!look.hidden && r.copperLayers.contains(look.layer)) r.count(kind, place);
}

} // namespace netmend::kicad
