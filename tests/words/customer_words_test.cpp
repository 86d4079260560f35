#include <catch2/catch.hpp>

#include "netmend/words/customer.h"

using namespace netmend;

namespace {

std::string text(const std::vector<Said>& sentences) {
  std::string out;
  for (const Said& one : sentences)
    out += (out.empty() ? "" : " ") + wordsOf(one);
  return out;
}

FoundFault open(PlaceName::Sort sort, const std::string& label = {}) {
  FoundFault fault;
  fault.place.sort = sort;
  fault.place.label = label;
  fault.places = 1;
  return fault;
}

FoundFault openTrack(PlaceName::Layer layer, const std::string& from, const std::string& to) {
  FoundFault fault = open(PlaceName::Sort::track);
  fault.place.layer = layer;
  fault.place.from.pin = from;
  fault.place.to = {TrackEnd::Sort::via, {}, {to, {}, 12, {}}};
  return fault;
}

RepairAction wireFrom(const std::string& from, const std::string& to) {
  RepairAction action;
  action.jumper = JumperRecord{};
  action.jumper->from.name.label = from;
  action.jumper->to.name.label = to;
  action.jumper->net = "KEY_COL3";
  action.jumper->way = {Point{}, Point{Length(30'000'000), Length(0)},
                        Point{Length(30'000'000), Length(3'400'000)}};
  return action;
}

JobReading reading(std::uint64_t id, ReadingPurpose purpose, VerdictKind kind) {
  JobReading out;
  out.id = JobReadingId(id);
  out.purpose = purpose;
  out.reading.point.label = "J4." + std::to_string(id);
  out.judged = Judged{};
  out.judged->verdict.kind = kind;
  return out;
}

} // namespace

TEST_CASE("what was found is one plain sentence for each kind of place", "[words]") {
  using Sort = PlaceName::Sort;
  using Layer = PlaceName::Layer;
  const auto found = [](const FoundFault& fault) { return wordsOf(foundSaid(fault)); };
  CHECK(found(openTrack(Layer::inner, "J4.9", "U1.12")) ==
        "A track inside the board was open between J4.9 and U1.12.");
  CHECK(found(openTrack(Layer::top, "J4.9", "U1.12")) ==
        "A track on the board was open between J4.9 and U1.12.");
  CHECK(found(openTrack(Layer::inner, "J4.9", "J4.9")) == "A track inside the board was open near J4.9.");
  CHECK(found(openTrack(Layer::bottom, "", "U1.12")) == "A track on the board was open near U1.12.");
  CHECK(found(openTrack(Layer::inner, "", "")) == "A track inside the board was open.");
  CHECK(found(openTrack(Layer::bottom, "", "")) == "A track on the board was open.");
  FoundFault via = open(Sort::via);
  CHECK(found(via) == "A plated hole between the layers was open.");
  via.place.beside.pin = "J4.9";
  CHECK(found(via) == "A plated hole between the layers was open near J4.9.");
  CHECK(found(open(Sort::joint, "J4.9")) == "The solder joint of J4.9 was open.");
  CHECK(found(open(Sort::joint)) == "A solder joint was open.");
  CHECK(found(open(Sort::part, "R28")) == "The part R28 was open.");
  CHECK(found(open(Sort::part)) == "A connection on the board was open.");
  FoundFault way = open(Sort::unknownWay);
  way.place.before = {"J4.9"};
  way.place.beyond = {"U1.12"};
  CHECK(found(way) == "The connection between J4.9 and U1.12 was open.");
  way.place.beyond.push_back("U2.1");
  CHECK(found(way) == "A connection on the board was open.");
  FoundFault dead = open(Sort::deadPin, "U1.12");
  dead.kind = FaultKind::deadPin;
  CHECK(found(dead) == "Pin U1.12 was dead inside its part.");
  dead.kind = FaultKind::shortToGround;
  CHECK(found(dead) == "A line on the board was shorted to ground.");
  for (const FaultKind nothing : {FaultKind::sound, FaultKind::noneOfThese}) {
    dead.kind = nothing;
    CHECK(found(dead).empty());
  }
}

TEST_CASE("where several places read the same, the sentence is of the line between the wire's ends",
          "[words]") {
  RepairAction action = wireFrom("J4.9", "C28.1");
  action.because = openTrack(PlaceName::Layer::inner, "J4.9", "U1.12");
  CHECK(wordsOf(foundSaid(action)) == "A track inside the board was open between J4.9 and U1.12.");
  action.because->places = 2;
  CHECK(wordsOf(foundSaid(action)) ==
        "The line KEY_COL3 was open between J4.9 and C28.1, most likely in a track inside the board.");
  action.because->place.sort = PlaceName::Sort::unknownWay;
  CHECK(wordsOf(foundSaid(action)) == "The line KEY_COL3 was open between J4.9 and C28.1.");
  action.jumper->to.name.label.clear();
  action.jumper->to.name.beside.pin = "C28.1"; // a via beside it
  CHECK(wordsOf(foundSaid(action)) == "The line KEY_COL3 was open between J4.9 and C28.1.");
}

TEST_CASE("a repair named by hand tells its reason, or what its wire joins", "[words]") {
  RepairAction action = wireFrom("J4.9", "C28.1");
  CHECK(wordsOf(foundSaid(action)) == "The connection between J4.9 and C28.1 was open.");
  action.jumper.reset();
  action.reason = "Green crust at J4.";
  CHECK(wordsOf(foundSaid(action)) == "Green crust at J4.");
}

TEST_CASE("several repairs are told one after the other, and the same thing once", "[words]") {
  Job job;
  job.actions = {wireFrom("J4.9", "C28.1"), wireFrom("J4.9", "C28.1"), wireFrom("J4.10", "C29.1")};
  CHECK(text(whatWeFound(job)) == "The connection between J4.9 and C28.1 was open. "
                                  "The connection between J4.10 and C29.1 was open.");
  CHECK(text(whatWeDid(job)) == "Bridged J4.9 and C28.1 with 33 mm of wire. "
                                "Bridged J4.10 and C29.1 with 33 mm of wire.");
}

TEST_CASE("without a repair the likeliest suspect is told, or how many points are odd", "[words]") {
  Job job;
  CHECK(whatWeFound(job).empty());
  CHECK(text(whatWeDid(job)) == "Nothing was repaired.");
  job.readings = {reading(1, ReadingPurpose::fault, VerdictKind::open)};
  CHECK(text(whatWeFound(job)) == "1 point measures other than on good boards.");
  job.readings.push_back(reading(2, ReadingPurpose::fault, VerdictKind::low));
  job.readings.push_back(reading(3, ReadingPurpose::fault, VerdictKind::inRange));
  CHECK(text(whatWeFound(job)) == "2 points measure other than on good boards.");
  JobSuspect suspect;
  suspect.fault = open(PlaceName::Sort::joint, "J4.9");
  job.suspects = {suspect};
  CHECK(text(whatWeFound(job)) == "The solder joint of J4.9 was open.");
}

TEST_CASE("what was done names its kind and place", "[words]") {
  RepairAction action;
  const auto did = [&](RepairKind kind, const std::string& target) {
    action.kind = kind;
    action.target = target;
    return wordsOf(doneSaid(action));
  };
  CHECK(did(RepairKind::resolder, "J4.17") == "Resoldered J4.17.");
  CHECK(did(RepairKind::resolder, "") == "Resoldered the joint.");
  CHECK(did(RepairKind::clean, "J4") == "Cleaned J4.");
  CHECK(did(RepairKind::clean, "") == "Cleaned the board.");
  CHECK(did(RepairKind::replacePart, "C28") == "Replaced C28.");
  CHECK(did(RepairKind::replacePart, "") == "Replaced a part.");
  CHECK(did(RepairKind::removePart, "C28") == "Removed C28.");
  CHECK(did(RepairKind::removePart, "") == "Removed a part.");
  CHECK(did(RepairKind::cutTrack, "KEY") == "Cut the track KEY.");
  CHECK(did(RepairKind::cutTrack, "") == "Cut a track.");
  CHECK(did(RepairKind::jumper, "KEY") == "Bridged KEY with a wire.");
  CHECK(did(RepairKind::jumper, "") == "Bridged it with a wire.");
  CHECK(did(RepairKind::notEconomic, "") == "Not repaired: it would cost more than it is worth.");
  CHECK(wordsOf(doneSaid(wireFrom("", "C28.1"))) == "Bridged it with 33 mm of wire.");
}

TEST_CASE("repaired is what has a repair and no odd proof, and does not go back", "[words]") {
  Job job;
  CHECK_FALSE(isRepaired(job));
  job.actions = {wireFrom("J4.9", "C28.1")};
  CHECK(isRepaired(job));
  job.state = JobState::returnedUnrepaired;
  CHECK_FALSE(isRepaired(job));
  job.state = JobState::handedOver;
  job.readings = {reading(1, ReadingPurpose::fault, VerdictKind::open),
                  reading(2, ReadingPurpose::proof, VerdictKind::inRange)};
  CHECK(isRepaired(job));
  job.readings.push_back(reading(3, ReadingPurpose::proof, VerdictKind::low));
  CHECK_FALSE(isRepaired(job));
  job.readings.clear();
  job.actions.front().kind = RepairKind::notEconomic;
  CHECK_FALSE(isRepaired(job));
}

TEST_CASE("suspects count for the sheet where they are of a line that was repaired", "[words]") {
  Job job;
  JobSuspect suspect;
  suspect.fault = open(PlaceName::Sort::joint, "J4.9");
  JobSuspect second;
  second.fault = open(PlaceName::Sort::joint, "J4.10");
  job.suspects = {suspect, second};
  CHECK(suspectsOfRepair(job).size() == 2); // nothing repaired: what was found
  job.actions = {wireFrom("J4.9", "C28.1")};
  CHECK(suspectsOfRepair(job).size() == 2); // nobody knows for what
  job.actions.front().because = second.fault;
  job.actions.front().because->places = 7; // more readings since tell places apart
  CHECK(suspectsOfRepair(job).size() == 2);
  job.actions.front().because = open(PlaceName::Sort::joint, "J4.11");
  CHECK(suspectsOfRepair(job).empty());
}
