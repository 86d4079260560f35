#include "netmend/casework/edit_script.h"

#include <algorithm>
#include <cmath>

#include "netmend/base/json_text.h"
#include "netmend/board/journal.h"
#include "netmend/board/words.h"
#include "netmend/sketch/sketch.h"

namespace netmend {

namespace {

using nlohmann::json;

constexpr std::uint64_t scriptVersion = 1;
constexpr Length reach{150'000}; ///< that a place in a script may be off a pad

/// One step after the other, on a board that grows with them.
class Script {
public:
  Script(Board& board, const std::string& file, const ChipSizes& sizes, const ZoneRules& zones)
      : board_(board), file_(file), zones_(zones), sketch_(sizes, zones) {}

  Result<ScriptDone> run(const json& document) {
    if (!document.is_object() || document.value("format", json()) != "netmend-edits")
      return wrong("", pattern("core", "is no script of edits"), {}, asItIs(R"("format": "netmend-edits")"));
    if (document.value("version", json()) != scriptVersion)
      return wrong("/version", pattern("core", "is no version"), document.value("version", json()),
                   std::to_string(scriptVersion));
    const auto steps = document.find("steps");
    if (document.size() != 3 || steps == document.end() || !steps->is_array())
      return wrong("", pattern("core", "is no script of edits"), {}, asItIs("format, version, steps"));
    for (std::size_t i = 0; i < steps->size(); ++i) {
      here_ = "/steps/" + std::to_string(i);
      const Lookup lookup(board_);
      auto edit = step((*steps)[i], lookup);
      if (!edit) return failure(placed(edit.error()));
      if (edit->changes.empty()) continue;
      if (auto done = apply(board_, *edit); !done) return failure(placed(done.error()));
      done_.edits.push_back(std::move(*edit));
    }
    done_.steps = steps->size();
    return std::move(done_);
  }

private:
  [[nodiscard]] tl::unexpected<Error> wrong(const std::string& pointer, const Said& message,
                                            const json& found, Said expected) const {
    return failure(
        {message, file_, pointer, found.is_null() ? Said() : Said(shortText(found)), std::move(expected)});
  }
  [[nodiscard]] Error placed(Error error) const {
    error.file = file_;
    error.place =
        FilePlace(error.place.pointer.starts_with(here_) ? error.place.pointer : here_ + error.place.pointer);
    return error;
  }
  [[nodiscard]] static tl::unexpected<Error> bad(const std::string& member, const Said& message,
                                                 const json& found, Said expected) {
    return failure({message, "", member.empty() ? "" : "/" + member,
                    found.is_null() ? Said() : Said(shortText(found)), std::move(expected)});
  }

  /// Refuses members that nobody asked for: a slip would go unnoticed.
  [[nodiscard]] static Result<void> onlyMembers(const json& step,
                                                std::initializer_list<std::string_view> names) {
    for (const auto& [name, value] : step.items())
      if (std::find(names.begin(), names.end(), name) == names.end())
        return bad(jsonPointerStep(name).substr(1), pattern("core", "is no field of this"), {}, {});
    return {};
  }

  [[nodiscard]] Result<Edit> step(const json& step, const Lookup& lookup) {
    if (!step.is_object()) return bad("", pattern("core", "is not an object"), step, asItIs("{...}"));
    if (step.contains("changes")) return editFromText(step.dump());
    if (step.contains("line")) return draw(step, lookup);
    if (step.contains("join")) return join(step, lookup);
    if (step.contains("separate")) return onPin(step, lookup, "separate", separatePin);
    if (step.contains("track")) return track(step, lookup);
    if (step.contains("via")) return via(step, lookup);
    if (step.contains("role")) return role(step, lookup);
    if (step.contains("zone")) return zone(step, lookup);
    if (step.contains("remove")) return remove(step, lookup);
    return bad("", pattern("core", "is no step of drawing"), step,
               asItIs("changes, line, join, separate, track, via, role, zone, remove"));
  }

  [[nodiscard]] static Result<Point> placeIn(const json& value, const std::string& member) {
    constexpr double most = 10'000.0;
    const bool pair = value.is_array() && value.size() == 2 && value[0].is_number() && value[1].is_number();
    if (!pair || std::abs(value[0].get<double>()) > most || std::abs(value[1].get<double>()) > most)
      return bad(member, pattern("core", "is no place"), value, pattern("core", "x and y in millimetres"));
    return Point{Length::fromMm(value[0].get<double>()), Length::fromMm(value[1].get<double>())};
  }
  [[nodiscard]] static Result<PinId> pinIn(const Lookup& lookup, const json& value,
                                           const std::string& member) {
    const auto pins =
        value.is_string() ? lookup.pinsLabelled(value.get<std::string>()) : std::vector<PinId>();
    if (pins.size() != 1)
      return bad(member, pattern("core", "names no pin, or more than one"), value,
                 pattern("core", "for example J4.11"));
    return pins.front();
  }
  [[nodiscard]] static Result<Side> sideIn(const json& step) {
    const auto side = step.find("side");
    if (side == step.end()) return Side::top;
    const auto found =
        side->is_string() ? fromWord(boardWords<Side>, side->get<std::string>()) : std::nullopt;
    if (!found) return bad("side", pattern("core", "unknown side"), *side, pattern("core", "top or bottom"));
    return *found;
  }
  [[nodiscard]] static Result<Length> lengthIn(const json& step, const char* name, Length otherwise) {
    const auto value = step.find(name);
    if (value == step.end()) return otherwise;
    if (!value->is_number() || value->get<double>() <= 0.0 || value->get<double>() > 1000.0)
      return bad(name, pattern("core", "is no length"), *value, pattern("core", "millimetres"));
    return Length::fromMm(value->get<double>());
  }

  [[nodiscard]] static Result<bool> flagIn(const json& step, const char* name) {
    const auto value = step.find(name);
    if (value == step.end()) return false;
    if (!value->is_boolean())
      return bad(name, pattern("core", "is neither true nor false"), *value, asItIs("true, false"));
    return value->get<bool>();
  }

  /// As it is typed and clicked at the bench; what is proposed is taken.
  [[nodiscard]] Result<Edit> draw(const json& step, const Lookup& lookup) {
    if (auto sound = onlyMembers(step, {"line", "clicks", "side", "other_way"}); !sound)
      return failure(sound.error());
    const auto side = sideIn(step);
    if (!side) return failure(side.error());
    const auto& line = step.at("line");
    if (!line.is_string())
      return bad("line", pattern("core", "is not a text"), line, pattern("core", "a text"));
    sketch_.letGo();
    if (auto typed = sketch_.type(lookup, line.get<std::string>()); !typed) return failure(typed.error());
    if (std::holds_alternative<std::monostate>(sketch_.line().wanted))
      return bad("line", pattern("core", "not understood"), line, asItIs("J4 40 2 rows"));
    const auto clicks = step.value("clicks", json::array());
    if (!clicks.is_array()) return bad("clicks", pattern("core", "is not a list"), clicks, asItIs("[...]"));
    const auto otherWay = flagIn(step, "other_way");
    if (!otherWay) return failure(otherWay.error());
    return clicked(clicks, *side, *otherWay, lookup.board());
  }

  [[nodiscard]] Result<Edit> clicked(const json& clicks, Side side, bool otherWay, Board board) {
    // What lies there does not matter: the script says what is drawn. Only copies have copper.
    if (!std::holds_alternative<CopyWanted>(sketch_.line().wanted)) {
      board.tracks = {};
      board.vias = {};
    }
    Edit all;
    const auto add = [&](Result<SketchAnswer> answer) -> Result<void> {
      if (!answer) return failure(answer.error());
      if (auto done = apply(board, answer->edit); !done) return failure(done.error());
      for (AnyChange& change : answer->edit.changes)
        all.changes.push_back(std::move(change));
      return {};
    };
    for (std::size_t i = 0; i < clicks.size(); ++i) {
      const std::string member = "clicks/" + std::to_string(i);
      const auto at = placeIn(clicks[i], member);
      if (!at) return failure(at.error());
      if (std::holds_alternative<std::monostate>(sketch_.line().wanted))
        return bad(member, pattern("core", "one click too many for what the line says"), clicks[i], {});
      const Lookup now(board);
      if (auto done = add(sketch_.click(now, {*at, side, {}, {}, Length(1'000)})); !done)
        return failure(done.error());
    }
    const Lookup now(board);
    if (otherWay)
      if (auto turned = sketch_.key(now, SketchKey::otherWay, {}); !turned) return failure(turned.error());
    if (sketch_.proposes())
      if (auto done = add(sketch_.key(now, SketchKey::take, {})); !done) return failure(done.error());
    if (all.changes.empty() || !sketch_.clicks().empty())
      return bad("clicks", pattern("core", "too few clicks for what the line says"), clicks, {});
    sketch_.letGo();
    return all;
  }

  [[nodiscard]] Result<Edit> join(const json& step, const Lookup& lookup) const {
    if (auto sound = onlyMembers(step, {"join", "net", "measured"}); !sound) return failure(sound.error());
    const auto& list = step.at("join");
    if (!list.is_array() || list.empty())
      return bad("join", pattern("core", "is not a list"), list, asItIs("[...]"));
    std::vector<PinId> pins;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto pin = pinIn(lookup, list[i], "join/" + std::to_string(i));
      if (!pin) return failure(pin.error());
      pins.push_back(*pin);
    }
    const auto beeped = flagIn(step, "measured");
    if (!beeped) return failure(beeped.error());
    Joined joined = joinAll(lookup, pins, {}, *beeped ? Origin::measured : Origin::user);
    if (!step.contains("net")) return std::move(joined.edit);
    if (!step["net"].is_string())
      return bad("net", pattern("core", "is not a text"), step["net"], pattern("core", "a text"));
    Board after = lookup.board();
    if (auto done = apply(after, joined.edit); !done) return failure(done.error());
    const Lookup now(after);
    Joined named = nameNet(now, joined.net, step["net"].get<std::string>());
    for (AnyChange& change : named.edit.changes)
      joined.edit.changes.push_back(std::move(change));
    return std::move(joined.edit);
  }

  template <class Act>
  [[nodiscard]] static Result<Edit> onPin(const json& step, const Lookup& lookup, const char* name, Act act) {
    if (auto sound = onlyMembers(step, {name}); !sound) return failure(sound.error());
    const auto pin = pinIn(lookup, step.at(name), name);
    if (!pin) return failure(pin.error());
    return act(lookup, *pin);
  }

  /// Places, and pins by their names, whose net it is of; pins at its ends are joined by it.
  [[nodiscard]] Result<Edit> track(const json& step, const Lookup& lookup) const {
    if (auto sound = onlyMembers(step, {"track", "width_mm", "side", "inside"}); !sound)
      return failure(sound.error());
    const auto& list = step.at("track");
    if (!list.is_array() || list.size() < 2)
      return bad("track", pattern("core", "is no way"), list, pattern("core", "two places or more"));
    Ring way;
    std::vector<PinId> pins;
    for (std::size_t i = 0; i < list.size(); ++i) {
      const std::string member = "track/" + std::to_string(i);
      if (list[i].is_string()) {
        const auto pin = pinIn(lookup, list[i], member);
        if (!pin) return failure(pin.error());
        const auto at = positionOf(lookup, *pin);
        if (!at.known()) return bad(member, pattern("core", "has no place on the board"), list[i], {});
        pins.push_back(*pin);
        way.push_back(at.value);
      } else {
        const auto at = placeIn(list[i], member);
        if (!at) return failure(at.error());
        way.push_back(*at);
      }
    }
    const auto side = sideIn(step);
    const auto width = lengthIn(step, "width_mm", Length(200'000));
    if (!side) return failure(side.error());
    if (!width) return failure(width.error());
    const auto inside = flagIn(step, "inside");
    if (!inside) return failure(inside.error());
    const Board& board = lookup.board();
    const CopperAt ends[] = {copperAt(board, way.front(), *side, reach),
                             copperAt(board, way.back(), *side, reach)};
    Joined joined = joinAll(lookup, pins, {netOf(board, ends[0]), netOf(board, ends[1])}, Origin::user);
    for (const CopperAt& end : ends)
      if (joined.net && !netOf(board, end))
        joined.edit = giveNet(board, end, joined.net, std::move(joined.edit));
    if (*inside) return putUnknownRun(board, way.front(), way.back(), joined.net, std::move(joined.edit));
    return putTrack(board, {way, *width, *side, joined.net}, std::move(joined.edit));
  }

  [[nodiscard]] static Result<Edit> via(const json& step, const Lookup& lookup) {
    if (auto sound = onlyMembers(step, {"via", "diameter_mm"}); !sound) return failure(sound.error());
    const auto at = placeIn(step.at("via"), "via");
    const auto diameter = lengthIn(step, "diameter_mm", usualVia);
    if (!at) return failure(at.error());
    if (!diameter) return failure(diameter.error());
    return putVia(lookup.board(), *at, *diameter, netAt(lookup.board(), *at));
  }

  /// Of the copper there on either side: of a track sooner than of the area around it.
  [[nodiscard]] static NetId netAt(const Board& board, Point at) {
    NetId out;
    for (const bool line : {true, false})
      for (const Side side : {Side::top, Side::bottom}) {
        const CopperAt copper = copperAt(board, at, side, reach);
        if (!out && (copper.isLine() || !line)) out = netOf(board, copper);
      }
    return out;
  }

  [[nodiscard]] static Result<Edit> role(const json& step, const Lookup& lookup) {
    if (auto sound = onlyMembers(step, {"role", "net"}); !sound) return failure(sound.error());
    const auto name = step.value("net", json());
    const auto nets = name.is_string() ? lookup.netsNamed(name.get<std::string>()) : std::vector<NetId>();
    if (nets.size() != 1) return bad("net", pattern("core", "no such net on this board"), name, {});
    const auto& text = step.at("role");
    const auto role =
        text.is_string() ? fromWord(boardWords<NetRole>, text.get<std::string>()) : std::nullopt;
    if (!role)
      return bad("role", pattern("core", "unknown word"), text,
                 asItIs("signal, ground, supply, fast_pair, radio"));
    return setRole(lookup.board(), nets.front(), *role);
  }

  [[nodiscard]] Result<Edit> zone(const json& step, const Lookup& lookup) const {
    if (auto sound = onlyMembers(step, {"zone"}); !sound) return failure(sound.error());
    const auto part = partIn(lookup.board(), step.at("zone"), "zone");
    if (!part) return failure(part.error());
    const Part& of = *lookup.board().parts.find(*part);
    const PartZoneRule* rule = of.kind.known() ? zones_.of(of.kind.value) : nullptr;
    return zoneFromPart(lookup, *part, rule != nullptr ? rule->zone : ZoneKind::tallPart);
  }

  [[nodiscard]] static Result<Edit> remove(const json& step, const Lookup& lookup) {
    if (auto sound = onlyMembers(step, {"remove"}); !sound) return failure(sound.error());
    const auto part = partIn(lookup.board(), step.at("remove"), "remove");
    if (!part) return failure(part.error());
    return removePart(lookup, *part);
  }

  [[nodiscard]] static Result<PartId> partIn(const Board& board, const json& value,
                                             const std::string& member) {
    PartId found;
    std::size_t count = 0;
    for (const Part& part : board.parts)
      if (value == part.reference) {
        found = part.id;
        ++count;
      }
    if (count != 1)
      return bad(member, pattern("core", "names no part, or more than one"), value,
                 pattern("core", "a reference, R28"));
    return found;
  }

  Board& board_;
  const std::string& file_;
  const ZoneRules& zones_;
  Sketch sketch_;
  std::string here_;
  ScriptDone done_;
};

} // namespace

Result<ScriptDone> applyScript(Board& board, std::string_view text, const std::string& file,
                               const ChipSizes& sizes, const ZoneRules& zones) {
  auto document = parseJson(text);
  if (!document) {
    document.error().file = file;
    return failure(std::move(document.error()));
  }
  Board after = board;
  auto done = Script(after, file, sizes, zones).run(*document);
  if (done) board = std::move(after);
  return done;
}

} // namespace netmend
