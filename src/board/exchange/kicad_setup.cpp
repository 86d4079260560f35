#include <algorithm>
#include <charconv>
#include <optional>

#include <fmt/format.h>

#include "kicad_reader.h"

namespace netmend::kicad {

namespace {

std::optional<long> integer(std::string_view text) {
  long value = 0;
  const auto [end, ec] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (ec != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

constexpr long bottomOrder = 1000;

/// Order from the top of a copper layer, by its fixed name, or before version 9 by its number, since up
/// to version 5 the name in the table was the user's. Nothing for other layers.
std::optional<long> copperOrder(long version, long number, std::string_view name, std::string_view type) {
  if (name == "F.Cu") return 0;
  if (name == "B.Cu") return bottomOrder;
  if (name.size() > 5 && name.starts_with("In") && name.ends_with(".Cu"))
    return integer(name.substr(2, name.size() - 5));
  constexpr long renumbered = 20240000; // version 9 numbers layers anew and names them as above
  if (version >= renumbered || number < 0 || number > 31) return std::nullopt;
  if (type == "user") return std::nullopt;
  return number == 31 ? bottomOrder : number;
}

struct StackLine {
  LayerId copper; ///< none: a dielectric or something outside
  Length thickness;
  bool hasThickness = false;
  bool dielectric = false;
};

StackLine readStackLine(KicadReader& r) {
  StackLine line;
  const std::string_view name = r.in.word();
  if (const auto found = r.copperLayers.find(name); found != r.copperLayers.end())
    line.copper = found->second;
  line.dielectric = name.starts_with("dielectric");
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue; // `addsublayer`: its thickness follows and adds up
    if (item.text == "thickness") {
      line.thickness += r.in.length();
      line.hasThickness = true;
      r.in.leave();
    } else {
      r.in.leave();
    }
  }
  return line;
}

void readStackup(KicadReader& r) {
  std::vector<StackLine> lines;
  while (const Item item = r.in.next()) {
    if (item.isList("layer"))
      lines.push_back(readStackLine(r));
    else if (item.kind == Item::Kind::list)
      r.in.leave();
  }
  LayerId above;
  for (const StackLine& line : lines) {
    if (line.copper) {
      above = line.copper;
      if (!line.hasThickness) continue;
      Layer layer = *r.board().layers.find(above);
      layer.copperThickness = fromFile(line.thickness);
      r.board().layers.put(std::move(layer));
    } else if (line.dielectric && above && line.hasThickness) {
      Layer layer = *r.board().layers.find(above);
      layer.dielectricBelow = fromFile(layer.dielectricBelow.valueOr(Length(0)) + line.thickness);
      r.board().layers.put(std::move(layer));
    }
  }
}

MaskOpening openingFromTenting(bool topTented, bool bottomTented) {
  if (topTented) return bottomTented ? MaskOpening::none : MaskOpening::bottom;
  return bottomTented ? MaskOpening::top : MaskOpening::both;
}

} // namespace

void readLayers(KicadReader& r) {
  struct Found {
    long order;
    std::string_view name;
    std::string_view shown;
  };
  std::vector<Found> found;
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    const auto number = integer(item.text);
    const std::string_view name = r.in.word();
    const std::string_view type = r.in.word();
    const Item shown = r.in.next();
    if (shown.kind == Item::Kind::list) r.in.leave();
    if (shown) r.in.leave();
    if (r.in.failed()) return;
    if (!number) continue;
    const auto order = copperOrder(r.version, *number, name, type);
    if (!order) continue;
    found.push_back({*order, name, shown.kind == Item::Kind::atom && shown.quoted ? shown.text : name});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Found& a, const Found& b) { return a.order < b.order; });
  for (const Found& f : found) {
    if (r.copperLayers.contains(f.name)) {
      r.in.fail("a layer is declared twice", std::string(f.name));
      return;
    }
    Layer layer;
    layer.id = r.board().newId<LayerId>();
    layer.name = unescaped(f.shown);
    layer.origin = Origin::file;
    r.copperLayers.emplace(f.name, layer.id);
    r.board().info.layerOrder.push_back(layer.id);
    r.board().layers.put(std::move(layer));
  }
}

void readGeneral(KicadReader& r) {
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "thickness")
      r.boardThickness = fromFile(r.in.onlyLength());
    else
      r.in.leave();
  }
}

void readSetup(KicadReader& r) {
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "stackup") {
      readStackup(r);
    } else if (item.text == "tenting") {
      bool top = false;
      bool bottom = false;
      while (const Item side = r.in.next()) {
        if (side.kind == Item::Kind::list) { // version 10: (front yes) (back no)
          const bool yes = r.in.onlyWord() == "yes";
          (side.text == "front" ? top : bottom) = yes;
        }
        if (side.isAtom("front")) top = true;
        if (side.isAtom("back")) bottom = true;
      }
      r.viaMask = fromFile(openingFromTenting(top, bottom));
    } else if (item.text == "pcbplotparams") {
      while (const Item option = r.in.next()) {
        if (option.kind != Item::Kind::list) continue;
        if (option.text == "viasonmask") {
          const std::string_view value = r.in.onlyWord();
          // An option of the last plot, not of the board: it only lets us guess.
          if (!r.viaMask.known())
            r.viaMask = guessed(value == "true" || value == "yes" ? MaskOpening::both : MaskOpening::none);
        } else {
          r.in.leave();
        }
      }
    } else {
      r.in.leave();
    }
  }
}

void readTitle(KicadReader& r) {
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "title" || item.text == "rev") {
      const std::string text = unescaped(r.in.onlyWord());
      if (text.empty()) continue;
      (item.text == "title" ? r.board().info.name : r.board().info.revision) = fromFile(text);
    } else {
      r.in.leave();
    }
  }
}

void readNetDeclaration(KicadReader& r) {
  const auto number = integer(r.in.word());
  const std::string name = unescaped(r.in.onlyWord());
  if (r.in.failed()) return;
  if (!number) {
    r.in.fail("a net has no number");
    return;
  }
  if (*number == 0 || name.empty()) { // the file's word for "no net"
    r.netsByNumber.emplace(*number, NetId{});
    return;
  }
  Net net;
  net.id = r.board().newId<NetId>();
  net.name = name;
  net.origin = Origin::file;
  if (!r.netsByNumber.emplace(*number, net.id).second) {
    r.in.fail("a net number is declared twice", std::to_string(*number));
    return;
  }
  r.netsByName.emplace(name, net.id);
  r.board().nets.put(std::move(net));
}

Fact<NetId> itemNet(KicadReader& r, const Item& item) {
  if (item.kind != Item::Kind::atom) {
    r.in.fail("a net is missing", {}, "a net's number or name");
    return {};
  }
  const auto number = item.quoted ? std::nullopt : integer(item.text);
  if (number) {
    const auto found = r.netsByNumber.find(*number);
    if (found != r.netsByNumber.end()) return fromFile(found->second);
    if (*number == 0) return fromFile(NetId{});
    r.in.fail("an unknown net", std::string(item.text), "the number of a net declared before");
    return {};
  }
  std::string name = unescaped(item.text);
  if (name.empty()) return fromFile(NetId{});
  const auto found = r.netsByName.find(name);
  if (found != r.netsByName.end()) return fromFile(found->second);
  if (!r.netsByNumber.empty()) {
    r.in.fail("an unknown net", std::move(name), "the name of a net declared before");
    return {};
  }
  // Version 10 declares no nets: they exist by being named.
  Net net;
  net.id = r.board().newId<NetId>();
  net.name = name;
  net.origin = Origin::file;
  const NetId id = net.id;
  r.board().nets.put(std::move(net));
  r.netsByName.emplace(std::move(name), id);
  return fromFile(id);
}

Fact<NetId> readItemNet(KicadReader& r) {
  const Item item = r.in.next();
  Fact<NetId> net = itemNet(r, item);
  if (item.kind == Item::Kind::list) r.in.leave();
  if (item) r.in.leave();
  return net;
}

Fact<LayerId> copperLayer(KicadReader& r, std::string_view name) {
  const auto found = r.copperLayers.find(name);
  if (found == r.copperLayers.end()) {
    r.in.fail("not a copper layer of this board", std::string(name.substr(0, 40)));
    return {};
  }
  return fromFile(found->second);
}

} // namespace netmend::kicad
