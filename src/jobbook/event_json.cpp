#include "event_json.h"

#include <nlohmann/json.hpp>

#include "netmend/jobbook/job_words.h"
#include "reading_words.h"

namespace netmend {

namespace {

using nlohmann::json;
using Kind = JobEvent::Kind;

constexpr std::array<Word<Kind>, 7> kindWords{{{Kind::bookedIn, "booked in"},
                                               {Kind::state, "state"},
                                               {Kind::boardUsed, "board used"},
                                               {Kind::takenBack, "taken back"},
                                               {Kind::putBack, "put back"},
                                               {Kind::repairAdded, "repair added"},
                                               {Kind::suspects, "suspects"}}};

} // namespace

std::string eventText(const JobEvent& event) {
  json out{{"kind", wordFor(kindWords, event.kind)}};
  switch (event.kind) {
  case Kind::asWritten:
    return {};
  case Kind::bookedIn:
    break;
  case Kind::state:
    out["state"] = wordFor(jobStateWords, event.state);
    break;
  case Kind::boardUsed:
    out["digest"] = event.text;
    break;
  case Kind::takenBack:
  case Kind::putBack:
    out["entry"] = wordFor(entryWords, event.entry);
    out["id"] = event.number;
    break;
  case Kind::repairAdded:
    out["repair"] = wordFor(repairKindWords, event.repair);
    out["target"] = event.text;
    break;
  case Kind::suspects:
    out["count"] = event.number;
    break;
  }
  return out.dump();
}

JobEvent eventFrom(const std::string& text) {
  const json in = json::parse(text);
  JobEvent out;
  out.kind = stored(kindWords, in.at("kind"));
  switch (out.kind) {
  case Kind::asWritten:
  case Kind::bookedIn:
    break;
  case Kind::state:
    out.state = stored(jobStateWords, in.at("state"));
    break;
  case Kind::boardUsed:
    out.text = in.at("digest");
    break;
  case Kind::takenBack:
  case Kind::putBack:
    out.entry = stored(entryWords, in.at("entry"));
    out.number = in.at("id").get<std::uint64_t>();
    break;
  case Kind::repairAdded:
    out.repair = stored(repairKindWords, in.at("repair"));
    out.text = in.at("target");
    break;
  case Kind::suspects:
    out.number = in.at("count").get<std::uint64_t>();
    break;
  }
  return out;
}

} // namespace netmend
