#include "jumper_json.h"

#include "place_json.h"
#include "point_text.h"
#include "reading_words.h"

namespace netmend {

namespace {

using nlohmann::json;

constexpr std::array<Word<LandingKind>, 6> landingWords{{{LandingKind::testPad, "test pad"},
                                                         {LandingKind::partTerminal, "part terminal"},
                                                         {LandingKind::via, "via"},
                                                         {LandingKind::tentedVia, "tented via"},
                                                         {LandingKind::outerTrack, "outer track"},
                                                         {LandingKind::connectorPin, "connector pin"}}};

json jsonOf(const LandingPlace& place) {
  json out{{"at", pointJson(place.at)},
           {"side", wordFor(storedSideWords, place.side)},
           {"pin", place.point.pin.value},
           {"point", place.point.label}};
  if (!place.label.empty()) {
    out["label"] = place.label;
  } else {
    out["kind"] = wordFor(landingWords, place.kind);
    out["name"] = placeJson(place.name);
  }
  return out;
}

LandingPlace landingFrom(const json& in) {
  LandingPlace out;
  out.at = pointFrom(in.at("at"));
  out.side = stored(storedSideWords, in.at("side"));
  out.point = {PinId(in.at("pin").get<std::uint64_t>()), in.at("point")};
  out.label = in.value("label", "");
  if (!out.label.empty()) return out;
  out.kind = stored(landingWords, in.at("kind"));
  out.name = placeFrom(in.at("name"));
  return out;
}

json jsonOf(const std::optional<ExpectedReading>& expected) {
  if (!expected) return nullptr;
  return {expected->overLimit, expected->value.value, expected->giveOrTake.value};
}
std::optional<ExpectedReading> expectedFrom(const json& in) {
  if (in.is_null()) return std::nullopt;
  return ExpectedReading{in.at(0).get<bool>(), Volts(in.at(1).get<double>()), Volts(in.at(2).get<double>())};
}

json jsonOf(const WireFigures& figures) {
  return {{"length", figures.length.nm},
          {"cut_length", figures.cutLength.nm},
          {"stripping", figures.stripping},
          {"tacks", figures.tacks},
          {"current", figures.current.value},
          {"drop", figures.drop.value},
          {"resistance", figures.resistance.value},
          {"expected",
           {jsonOf(figures.prediction.atFrom), jsonOf(figures.prediction.atTo),
            jsonOf(figures.prediction.bridged)}}};
}
WireFigures figuresFrom(const json& in) {
  const json& expected = in.at("expected");
  return {Length(in.at("length").get<std::int64_t>()),
          Length(in.at("cut_length").get<std::int64_t>()),
          in.at("stripping"),
          in.at("tacks").get<std::size_t>(),
          Amperes(in.at("current").get<double>()),
          Volts(in.at("drop").get<double>()),
          Ohms(in.at("resistance").get<double>()),
          {expectedFrom(expected.at(0)), expectedFrom(expected.at(1)), expectedFrom(expected.at(2))}};
}

} // namespace

std::string jumperText(const JumperRecord& jumper) {
  json out{{"from", jsonOf(jumper.from)}, {"to", jsonOf(jumper.to)},
           {"way", wayJson(jumper.way)},  {"side", wordFor(storedSideWords, jumper.side)},
           {"wire", jumper.wire},         {"net", jumper.net}};
  if (jumper.figures) out["figures"] = jsonOf(*jumper.figures);
  return out.dump();
}

JumperRecord jumperFrom(const std::string& text) {
  const json in = json::parse(text);
  JumperRecord out;
  out.from = landingFrom(in.at("from"));
  out.to = landingFrom(in.at("to"));
  out.way = wayFrom(in.at("way"));
  out.side = stored(storedSideWords, in.at("side"));
  out.wire = in.at("wire");
  out.net = in.at("net");
  if (in.contains("figures")) out.figures = figuresFrom(in.at("figures"));
  return out;
}

} // namespace netmend
