#include "found_json.h"

#include <nlohmann/json.hpp>

#include "netmend/probing/words.h"
#include "place_json.h"
#include "reading_words.h"

namespace netmend {

namespace {

using nlohmann::json;

constexpr std::array<Word<Foretold::What>, 5> foretoldWords{{{Foretold::What::anything, "anything"},
                                                             {Foretold::What::overLimit, "over limit"},
                                                             {Foretold::What::volts, "volts"},
                                                             {Foretold::What::ohms, "ohms"},
                                                             {Foretold::What::notSaid, "not said"}}};

json jsonOf(const FoundFault& fault) {
  return {{"kind", wordFor(faultKindWords, fault.kind)},
          {"place", placeJson(fault.place)},
          {"places", fault.places}};
}
FoundFault faultOf(const json& in) {
  return {stored(faultKindWords, in.at("kind")), placeFrom(in.at("place")),
          in.at("places").get<std::size_t>()};
}

json jsonOf(const Foretold& foretold) {
  return {{"what", wordFor(foretoldWords, foretold.what)},
          {"over_limit", foretold.prediction.overLimit},
          {"volts", {foretold.prediction.mean.value, foretold.prediction.spread.value}},
          {"ohms", {foretold.ohms.value, foretold.ohmsSpread.value}}};
}
Foretold foretoldOf(const json& in) {
  const json &volts = in.at("volts"), &ohms = in.at("ohms");
  return {
      stored(foretoldWords, in.at("what")),
      {in.at("over_limit").get<double>(), Volts(volts.at(0).get<double>()), Volts(volts.at(1).get<double>())},
      Ohms(ohms.at(0).get<double>()),
      Ohms(ohms.at(1).get<double>())};
}

json jsonOf(const JobEvidence& evidence) {
  json out{{"at", placeJson(evidence.at)},
           {"mode", word(evidence.mode)},
           {"foretold", jsonOf(evidence.foretold)},
           {"bits", evidence.bits}};
  if (evidence.other) out["other"] = placeJson(*evidence.other);
  if (evidence.value) out["value"] = *evidence.value;
  if (evidence.temperature) out["temperature"] = evidence.temperature->value;
  return out;
}
JobEvidence evidenceOf(const json& in) {
  JobEvidence out;
  out.at = placeFrom(in.at("at"));
  if (in.contains("other")) out.other = placeFrom(in.at("other"));
  out.mode = storedBy(readingModeFrom, in.at("mode"));
  if (in.contains("value")) out.value = in.at("value").get<double>();
  if (in.contains("temperature")) out.temperature = Celsius(in.at("temperature").get<double>());
  out.foretold = foretoldOf(in.at("foretold"));
  out.bits = in.at("bits").get<double>();
  return out;
}

} // namespace

std::string suspectText(const JobSuspect& suspect) {
  if (!suspect.what.empty()) return {}; // of an older book
  json evidence = json::array();
  for (const JobEvidence& one : suspect.evidence)
    evidence.push_back(jsonOf(one));
  return json{{"fault", jsonOf(suspect.fault)},
              {"prior", suspect.prior},
              {"evidence", evidence},
              {"more", suspect.more},
              {"sampling_error", suspect.samplingError}}
      .dump();
}

void readSuspect(const std::string& text, JobSuspect& suspect) {
  if (text.empty()) return;
  const json in = json::parse(text);
  suspect.fault = faultOf(in.at("fault"));
  suspect.prior = in.at("prior").get<double>();
  for (const json& one : in.at("evidence"))
    suspect.evidence.push_back(evidenceOf(one));
  suspect.more = in.at("more").get<std::size_t>();
  suspect.samplingError = in.at("sampling_error").get<double>();
}

std::string foundFaultText(const std::optional<FoundFault>& fault) {
  return fault ? jsonOf(*fault).dump() : std::string();
}

std::optional<FoundFault> foundFaultFrom(const std::string& text) {
  if (text.empty()) return std::nullopt;
  return faultOf(json::parse(text));
}

} // namespace netmend
