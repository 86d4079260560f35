#include "place_json.h"

#include "point_text.h"
#include "reading_words.h"

namespace netmend {

using nlohmann::json;

namespace {

constexpr std::array<Word<PlaceName::Sort>, 10> sortWords{{{PlaceName::Sort::somewhere, "somewhere"},
                                                           {PlaceName::Sort::pin, "pin"},
                                                           {PlaceName::Sort::pad, "pad"},
                                                           {PlaceName::Sort::via, "via"},
                                                           {PlaceName::Sort::spot, "spot"},
                                                           {PlaceName::Sort::joint, "joint"},
                                                           {PlaceName::Sort::deadPin, "dead pin"},
                                                           {PlaceName::Sort::track, "track"},
                                                           {PlaceName::Sort::part, "part"},
                                                           {PlaceName::Sort::unknownWay, "unknown way"}}};
constexpr std::array<Word<PlaceName::Stretch>, 4> stretchWords{{{PlaceName::Stretch::whole, "whole"},
                                                                {PlaceName::Stretch::first, "first"},
                                                                {PlaceName::Stretch::last, "last"},
                                                                {PlaceName::Stretch::between, "between"}}};
constexpr std::array<Word<PlaceName::Layer>, 3> layerWords{{{PlaceName::Layer::top, "top"},
                                                            {PlaceName::Layer::inner, "inner"},
                                                            {PlaceName::Layer::bottom, "bottom"}}};
constexpr std::array<Word<TrackEnd::Sort>, 6> endWords{{{TrackEnd::Sort::pin, "pin"},
                                                        {TrackEnd::Sort::via, "via"},
                                                        {TrackEnd::Sort::area, "area"},
                                                        {TrackEnd::Sort::fork, "fork"},
                                                        {TrackEnd::Sort::end, "end"},
                                                        {TrackEnd::Sort::unseen, "unseen"}}};
constexpr std::array<Word<std::optional<Heading>>, 5> headingWords{{{std::nullopt, "at"},
                                                                    {Heading::right, "right"},
                                                                    {Heading::left, "left"},
                                                                    {Heading::above, "above"},
                                                                    {Heading::below, "below"}}};

json jsonOf(const Beside& beside) {
  return {{"pin", beside.pin},
          {"direction", wordFor(headingWords, beside.heading)},
          {"tenths_mm", beside.tenths},
          {"at", pointJson(beside.at)}};
}
Beside besideOf(const json& in) {
  return {in.at("pin"), stored(headingWords, in.at("direction")), in.at("tenths_mm").get<int>(),
          pointFrom(in.at("at"))};
}

json jsonOf(const TrackEnd& end) {
  return {{"sort", wordFor(endWords, end.sort)}, {"pin", end.pin}, {"beside", jsonOf(end.beside)}};
}
TrackEnd endOf(const json& in) {
  return {stored(endWords, in.at("sort")), in.at("pin"), besideOf(in.at("beside"))};
}

} // namespace

json placeJson(const PlaceName& name) {
  json out{{"sort", wordFor(sortWords, name.sort)}, {"label", name.label}, {"handle", name.handle}};
  if (name.layer != PlaceName::Layer::top) out["layer"] = wordFor(layerWords, name.layer);
  if (name.sort == PlaceName::Sort::via || name.sort == PlaceName::Sort::spot)
    out["beside"] = jsonOf(name.beside);
  if (name.sort == PlaceName::Sort::track) {
    out["from"] = jsonOf(name.from);
    out["to"] = jsonOf(name.to);
    out["stretch"] = wordFor(stretchWords, name.stretch);
    out["tenths_mm"] = {name.fromTenths, name.toTenths};
  }
  if (name.sort == PlaceName::Sort::unknownWay) {
    out["beyond"] = name.beyond;
    out["before"] = name.before;
  }
  return out;
}

PlaceName placeFrom(const json& in) {
  PlaceName out;
  out.sort = stored(sortWords, in.at("sort"));
  out.label = in.at("label");
  out.handle = in.at("handle");
  if (in.contains("layer")) out.layer = stored(layerWords, in.at("layer"));
  if (in.contains("beside")) out.beside = besideOf(in.at("beside"));
  if (in.contains("from")) {
    out.from = endOf(in.at("from"));
    out.to = endOf(in.at("to"));
    out.stretch = stored(stretchWords, in.at("stretch"));
    out.fromTenths = in.at("tenths_mm").at(0).get<int>();
    out.toTenths = in.at("tenths_mm").at(1).get<int>();
  }
  if (in.contains("beyond")) {
    out.beyond = in.at("beyond").get<std::vector<std::string>>();
    out.before = in.at("before").get<std::vector<std::string>>();
  }
  return out;
}

} // namespace netmend
