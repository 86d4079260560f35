#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include "kicad_reader.h"

namespace netmend::kicad {

namespace {

std::optional<long> integer(std::string_view text) {
  long value = 0;
  const auto [end, ec] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (ec != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

/// One line of the table of layers.
struct TableLine {
  std::string_view name;  ///< what the file's items say
  std::string_view shown; ///< the user's, from version 6 on
};

/// Place from the top by a layer's fixed name; nothing for the user's names, and for layers without copper.
std::optional<long> fixedOrder(std::string_view name) {
  constexpr long bottom = 1000;
  if (name == "F.Cu") return 0;
  if (name == "B.Cu") return bottom;
  if (name.starts_with("In") && name.ends_with(".Cu")) return integer(name.substr(2, name.size() - 5));
  return std::nullopt;
}

bool isCopper(std::string_view name, std::string_view type) {
  return fixedOrder(name) || type == "signal" || type == "power" || type == "mixed" || type == "jumper";
}

/// The table lists copper from the top to the bottom, whatever the numbers: version 3 counts downwards to 0,
/// 4 to 8 upwards to 31, and 9 has the bottom as 2. Up to version 5 the names are the user's. Where all names
/// are the fixed ones, these say the order.
void sortFromTop(std::vector<TableLine>& copper) {
  const bool allFixed =
      std::all_of(copper.begin(), copper.end(), [](const TableLine& line) { return fixedOrder(line.name); });
  if (!allFixed) return;
  std::stable_sort(copper.begin(), copper.end(), [](const TableLine& a, const TableLine& b) {
    return *fixedOrder(a.name) < *fixedOrder(b.name);
  });
}

/// Items may say the fixed name of a layer that the table has under the user's.
void addFixedNames(KicadReader& r, const std::vector<TableLine>& copper) {
  static constexpr std::array<std::string_view, 30> inner{
      "In1.Cu",  "In2.Cu",  "In3.Cu",  "In4.Cu",  "In5.Cu",  "In6.Cu",  "In7.Cu",  "In8.Cu",
      "In9.Cu",  "In10.Cu", "In11.Cu", "In12.Cu", "In13.Cu", "In14.Cu", "In15.Cu", "In16.Cu",
      "In17.Cu", "In18.Cu", "In19.Cu", "In20.Cu", "In21.Cu", "In22.Cu", "In23.Cu", "In24.Cu",
      "In25.Cu", "In26.Cu", "In27.Cu", "In28.Cu", "In29.Cu", "In30.Cu"};
  const auto& order = r.board().info.layerOrder;
  if (order.size() < 2 || order.size() != copper.size()) return; // a second table
  r.copperLayers.emplace("F.Cu", order.front());
  r.copperLayers.emplace("B.Cu", order.back());
  for (std::size_t i = 1; i + 1 < order.size() && i <= inner.size(); ++i)
    if (!fixedOrder(copper[i].name)) r.copperLayers.emplace(inner[i - 1], order[i]);
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
  std::vector<TableLine> copper;
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
    if (!isCopper(name, type)) {
      r.otherLayers.insert(name);
      continue;
    }
    copper.push_back({name, shown.kind == Item::Kind::atom && shown.quoted ? shown.text : name});
  }
  sortFromTop(copper);
  for (const TableLine& line : copper) {
    if (r.copperLayers.contains(line.name)) {
      r.in.fail(pattern("core", "a layer is declared twice"), std::string(line.name));
      return;
    }
    Layer layer;
    layer.id = r.board().newId<LayerId>();
    layer.name = unescaped(line.shown);
    layer.origin = Origin::file;
    r.copperLayers.emplace(line.name, layer.id);
    r.board().info.layerOrder.push_back(layer.id);
    r.board().layers.put(std::move(layer));
  }
  addFixedNames(r, copper);
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
    r.in.fail(pattern("core", "a net has no number"));
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
    r.in.fail(pattern("core", "a net number is declared twice"), std::to_string(*number));
    return;
  }
  r.netsByName.emplace(name, net.id);
  r.board().nets.put(std::move(net));
}

Fact<NetId> itemNet(KicadReader& r, const Item& item) {
  if (item.kind != Item::Kind::atom) {
    r.in.fail(pattern("core", "a net is missing"), {}, pattern("core", "a net's number or name"));
    return {};
  }
  const auto number = item.quoted ? std::nullopt : integer(item.text);
  if (number) {
    const auto found = r.netsByNumber.find(*number);
    if (found != r.netsByNumber.end()) return fromFile(found->second);
    if (*number == 0) return fromFile(NetId{});
    r.in.fail(pattern("core", "an unknown net"), std::string(item.text),
              pattern("core", "the number of a net declared before"));
    return {};
  }
  std::string name = unescaped(item.text);
  if (name.empty()) return fromFile(NetId{});
  const auto found = r.netsByName.find(name);
  if (found != r.netsByName.end()) return fromFile(found->second);
  if (!r.netsByNumber.empty()) {
    r.in.fail(pattern("core", "an unknown net"), std::move(name),
              pattern("core", "the name of a net declared before"));
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

Fact<LayerId> copperLayer(const KicadReader& r, std::string_view name) {
  const auto found = r.copperLayers.find(name);
  return found == r.copperLayers.end() ? Fact<LayerId>{} : fromFile(found->second);
}

} // namespace netmend::kicad
