#include "netmend/jobbook/record.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

#include "support/drawn_board.h"

using namespace netmend;
namespace fs = std::filesystem;

namespace {

using test::mm;

/// J1 with three pins in a row, one net.
struct Row {
  test::DrawnBoard drawn;
  std::vector<PinId> pins;

  Row() {
    drawn.board.info.layerOrder = {drawn.layer("top"), drawn.layer("bottom")};
    const NetId net = drawn.net("KEY");
    const PartId part = drawn.part("J1", Side::top, {});
    for (int i = 0; i < 3; ++i) {
      pins.push_back(drawn.pin(part, std::to_string(i + 1), net));
      drawn.pad(pins.back(), mm(2.0 * i, 0), PadReach::top, 0.5);
    }
  }
};

FaultPlace deadPin(PinId pin, std::optional<Point> at, std::vector<Point> way) {
  FaultPlace out;
  out.kind = FaultKind::deadPin;
  out.pin = pin;
  out.at = at;
  out.way = std::move(way);
  return out;
}

/// An isolation made by hand: a class without a place, and one with two dead pins; two readings.
Isolation isolationOf(const Row& row) {
  Isolation out;
  out.classes.resize(3);
  out.classes[0].kind = FaultKind::sound;
  out.classes[1].kind = FaultKind::noneOfThese;
  out.classes[2].kind = FaultKind::deadPin;
  out.classes[2].places = {deadPin(row.pins[1], mm(2, 0), {mm(2, 0), mm(2, 1)}),
                           deadPin(row.pins[2], mm(4, 0), {mm(4, 0)})};
  for (const PinId pin : row.pins) {
    ProbePlace place;
    place.object = pin;
    place.pin = pin;
    place.at = mm(0, 0);
    out.places.push_back(place);
  }
  Observation alone, between;
  alone.place = 2;
  alone.reading.mode = ReadingMode::diode;
  alone.reading.value = 0.471;
  alone.reading.condition.temperature = Celsius(31.5);
  between.place = 0;
  between.other = 1;
  between.reading.mode = ReadingMode::ohms;
  out.observations = {alone, between};
  out.shareError = 0.0625;
  return out;
}

struct Made {
  Row row;
  Isolation isolation = isolationOf(row);
  Lookup lookup{row.drawn.board};
  PlaceNames places{lookup};
  LineNames names{places, Line{}, isolation};
};

Foretold foretold() {
  return {Foretold::What::volts, {0.25, Volts(0.453), Volts(0.0085)}, Ohms(3), Ohms(4)};
}

JobReading readingOf(const std::string& label, std::optional<double> value, VerdictKind kind,
                     ReadingPurpose purpose = ReadingPurpose::fault) {
  Reading reading;
  reading.point.label = label;
  reading.value = value;
  Verdict verdict;
  verdict.kind = kind;
  return toJobReading(reading, purpose, &verdict);
}

std::vector<std::optional<double>> valuesInForce(const std::vector<JobReading>& readings) {
  std::vector<std::optional<double>> out;
  for (const JobReading* entry : inForce(readings))
    out.push_back(entry->reading.value);
  return out;
}

using Values = std::vector<std::optional<double>>;

} // namespace

TEST_CASE("what a reading said of a suspect is kept with where it was taken and what was foretold") {
  const Made made;
  const JobEvidence alone = toJobEvidence(made.isolation, made.names, {0, -5.1, foretold()});
  CHECK(alone.at.sort == PlaceName::Sort::pin);
  CHECK(alone.at.label == "J1.3");
  CHECK_FALSE(alone.other);
  CHECK(alone.mode == ReadingMode::diode);
  CHECK(alone.value == 0.471);
  CHECK(alone.temperature == Celsius(31.5));
  CHECK(alone.foretold == foretold());
  CHECK(alone.bits == -5.1);
  const JobEvidence between = toJobEvidence(made.isolation, made.names, {1, 2.5, {}});
  CHECK(between.at.label == "J1.1");
  REQUIRE(between.other);
  CHECK(between.other->label == "J1.2");
  CHECK(between.mode == ReadingMode::ohms);
  CHECK_FALSE(between.value);
  CHECK_FALSE(between.temperature);
}

TEST_CASE("a suspect is kept with its likeliest place and its six most telling readings") {
  const Made made;
  Suspect suspect;
  suspect.faultClass = 2;
  suspect.probability = 0.87;
  suspect.prior = 0.125;
  suspect.places = made.isolation.classes[2].places;
  for (int i = 0; i < 7; ++i)
    suspect.evidence.push_back({static_cast<std::size_t>(i % 2), 7.0 - i, foretold()});
  const JobSuspect kept = toJobSuspect(made.isolation, made.names, suspect);
  CHECK(kept.fault.kind == FaultKind::deadPin);
  CHECK(kept.fault.place.label == "J1.2");
  CHECK(kept.fault.places == 2);
  CHECK(kept.probability == 0.87);
  CHECK(kept.prior == 0.125);
  CHECK(kept.samplingError == 0.0625);
  CHECK(kept.at == mm(2, 0));
  CHECK(kept.way == std::vector{mm(2, 0), mm(2, 1)});
  REQUIRE(kept.evidence.size() == 6);
  CHECK(kept.more == 1);
  for (std::size_t i = 0; i < 6; ++i)
    CHECK(kept.evidence[i].bits == 7.0 - static_cast<double>(i));
  suspect.evidence.pop_back();
  CHECK(toJobSuspect(made.isolation, made.names, suspect).evidence.size() == 6);
  CHECK(toJobSuspect(made.isolation, made.names, suspect).more == 0);

  Suspect placeless;
  placeless.faultClass = 1;
  const JobSuspect none = toJobSuspect(made.isolation, made.names, placeless);
  CHECK(none.fault.kind == FaultKind::noneOfThese);
  CHECK(none.fault.places == 0);
  CHECK_FALSE(none.at);
  CHECK(none.way.empty());
}

TEST_CASE("kept are the suspects of the reported set, and none of these wherever it stands") {
  const Made made;
  Suspects suspects;
  for (const std::size_t faultClass : {2U, 0U, 0U, 1U, 2U}) {
    suspects.ranked.emplace_back().faultClass = faultClass;
    suspects.ranked.back().probability = static_cast<double>(suspects.ranked.size());
  }
  const auto kept = [&](std::size_t setSize) {
    suspects.setSize = setSize;
    std::vector<double> out;
    for (const JobSuspect& suspect : toJobSuspects(made.isolation, made.names, suspects))
      out.push_back(suspect.probability);
    return out;
  };
  CHECK(kept(2) == std::vector<double>{1, 2, 4});
  CHECK(kept(0) == std::vector<double>{4});
  CHECK(kept(5) == std::vector<double>{1, 2, 3, 4, 5});
}

TEST_CASE("a reading is kept with its purpose and verdict, or without one") {
  Reading reading;
  reading.value = 0.5;
  reading.point.label = "J1.1";
  const JobReading plain = toJobReading(reading, ReadingPurpose::check, nullptr);
  CHECK(plain.purpose == ReadingPurpose::check);
  CHECK(plain.reading == reading);
  CHECK_FALSE(plain.judged);
  Verdict verdict;
  verdict.kind = VerdictKind::low;
  verdict.odds = 7;
  const JobReading judged = toJobReading(reading, ReadingPurpose::proof, &verdict);
  REQUIRE(judged.judged);
  CHECK(judged.judged->verdict == verdict);
  CHECK(judged.purpose == ReadingPurpose::proof);
}

TEST_CASE("evidence is neither a proof nor taken between the steps of a repair") {
  JobReading reading = readingOf("J1.1", 0.5, VerdictKind::inRange);
  CHECK(isEvidence(reading));
  reading.purpose = ReadingPurpose::check;
  CHECK(isEvidence(reading));
  reading.reading.condition.handling = std::string(repairUnderWay);
  CHECK_FALSE(isEvidence(reading));
  reading.reading.condition.handling.clear();
  reading.purpose = ReadingPurpose::proof;
  CHECK_FALSE(isEvidence(reading));
  Job job;
  job.readings = {reading, readingOf("J1.2", 0.7, VerdictKind::inRange)};
  REQUIRE(evidenceOf(job).size() == 1);
  CHECK(evidenceOf(job)[0].value == 0.7);
}

TEST_CASE("an OL that was read again is evidence each time, until something else is read") {
  Job job;
  const auto values = [&] {
    Values out;
    for (const Reading& reading : evidenceOf(job))
      out.push_back(reading.value);
    return out;
  };
  const auto take = [&](JobReading reading) {
    reading.id = JobReadingId(job.readings.size() + 1);
    job.readings.push_back(std::move(reading));
  };
  const JobReading over = readingOf("J1.1", std::nullopt, VerdictKind::open);
  take(over);
  take(readingOf("J1.2", 0.7, VerdictKind::inRange));
  take(over);
  CHECK(values() == Values{std::nullopt, 0.7, std::nullopt});
  // A proof is another measurement; another value makes slips of them.
  take(readingOf("J1.1", 0.5, VerdictKind::inRange, ReadingPurpose::proof));
  CHECK(values() == Values{std::nullopt, 0.7, std::nullopt});
  take(readingOf("J1.1", 0.5, VerdictKind::inRange));
  CHECK(values() == Values{0.7, 0.5});
  take(over);
  CHECK(values() == Values{0.7, std::nullopt});
  // Of what comes and goes the last odd one stands for all.
  for (JobReading& reading : job.readings)
    reading.comesAndGoes = reading.reading.point.label == "J1.1";
  CHECK(values() == Values{0.7, std::nullopt});
}

TEST_CASE("of each measurement the last reading counts, apart from its proof") {
  const JobReading first = readingOf("J1.1", 0.1, VerdictKind::inRange);
  const JobReading other = readingOf("J1.2", 0.2, VerdictKind::inRange);
  const JobReading again = readingOf("J1.1", 0.3, VerdictKind::inRange);
  const JobReading proof = readingOf("J1.1", 0.4, VerdictKind::inRange, ReadingPurpose::proof);
  const JobReading check = readingOf("J1.1", 0.5, VerdictKind::inRange, ReadingPurpose::check);
  CHECK(valuesInForce({first, other, again}) == Values{0.2, 0.3});
  CHECK(valuesInForce({first, proof}) == Values{0.1, 0.4});
  CHECK(valuesInForce({first, check}) == Values{0.5}); // a check reads the same measurement
  CHECK(valuesInForce({proof, again, proof}) == Values{0.3, 0.4});
}

TEST_CASE("of what comes and goes the last odd reading counts") {
  const auto changing = [](JobReading reading) {
    reading.comesAndGoes = true;
    return reading;
  };
  const JobReading odd = changing(readingOf("J1.1", std::nullopt, VerdictKind::open));
  const JobReading fine = changing(readingOf("J1.1", 0.5, VerdictKind::inRange));
  const JobReading lower = changing(readingOf("J1.1", 0.2, VerdictKind::low));
  CHECK(valuesInForce({odd, fine}) == Values{std::nullopt});
  CHECK(valuesInForce({fine, odd}) == Values{std::nullopt});
  CHECK(valuesInForce({odd, lower}) == Values{0.2});
  CHECK(valuesInForce({fine, fine}).size() == 1);
  const JobReading settled = readingOf("J1.1", 0.6, VerdictKind::inRange); // and does not come and go
  CHECK(valuesInForce({odd, settled}) == Values{0.6});
}

TEST_CASE("steps are kept with all that they say") {
  Step step;
  step.text = "Touch {from}";
  step.check = true;
  step.expected = "{expected_from}";
  step.otherwise = "Stop.";
  step.detail = "Lightly.";
  step.measure = StepMeasure{};
  step.measure->mode = ReadingMode::ohms;
  const std::vector<WorkStep> kept = toWorkSteps({step, {}});
  REQUIRE(kept.size() == 2);
  CHECK(kept[0].text == "Touch {from}");
  CHECK(kept[0].check);
  CHECK(kept[0].expected == "{expected_from}");
  CHECK(kept[0].otherwise == "Stop.");
  CHECK(kept[0].detail == "Lightly.");
  CHECK(kept[0].measure == step.measure);
  CHECK_FALSE(kept[0].done);
  CHECK_FALSE(kept[1].check);
}

TEST_CASE("a chosen jumper is kept with its landings, way, wire and figures") {
  const Made made;
  JumperProposal proposal;
  proposal.from.kind = LandingKind::testPad;
  proposal.from.point = "J1.1";
  proposal.from.at = mm(0, 0);
  proposal.from.object = made.row.pins[0];
  proposal.to.kind = LandingKind::connectorPin;
  proposal.to.point = "J1.3";
  proposal.to.at = mm(4, 0);
  proposal.to.side = Side::bottom;
  proposal.to.object = made.row.pins[2];
  proposal.side = Side::bottom;
  proposal.way = {mm(0, 0), mm(2, 1), mm(4, 0)};
  proposal.length = Length::fromMm(5);
  proposal.wire.wire.name = "enamelled copper 0.10 mm";
  WorkPrediction prediction;
  prediction.atTo = ExpectedReading{true, {}, {}};
  const FoundFault because{FaultKind::open, {}, 2};
  const RepairAction action =
      toJumperAction(proposal, made.places, {Step{"Tin {from}", false, ""}}, prediction, "KEY", because);
  CHECK(action.kind == RepairKind::jumper);
  CHECK(action.target == "KEY");
  CHECK(action.because == because);
  REQUIRE(action.steps.size() == 1);
  CHECK(action.steps[0].text == "Tin {from}");
  REQUIRE(action.jumper);
  const JumperRecord& jumper = *action.jumper;
  CHECK(jumper.from.kind == LandingKind::testPad);
  CHECK(jumper.from.name.label == "J1.1");
  CHECK(jumper.from.at == mm(0, 0));
  CHECK(jumper.from.side == Side::top);
  CHECK(jumper.from.point == probePointOf(proposal.from));
  CHECK(jumper.to.kind == LandingKind::connectorPin);
  CHECK(jumper.to.name.label == "J1.3");
  CHECK(jumper.to.at == mm(4, 0));
  CHECK(jumper.to.side == Side::bottom);
  CHECK(jumper.to.point.label == "J1.3");
  CHECK(jumper.side == Side::bottom);
  CHECK(jumper.way == proposal.way);
  CHECK(jumper.wire == "enamelled copper 0.10 mm");
  CHECK(jumper.net == "KEY");
  REQUIRE(jumper.figures);
  CHECK(jumper.figures->length == Length::fromMm(5));
  CHECK(jumper.figures->prediction == prediction);
}

TEST_CASE("a photo is known by its first bytes, whatever it is called") {
  const fs::path file = fs::temp_directory_path() / ("netmend-photo-" + std::to_string(::getpid()));
  const auto read = [&](const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
    return readPhoto(file);
  };
  // PNG, section 5.2 (w3.org/TR/png-3); JPEG: SOI and the next marker (ISO/IEC 10918-1, B.1.1.3).
  const std::string png = "\x89PNG\r\n\x1a\n and more", jpeg = "\xff\xd8\xff\xe0 and more";
  CHECK(read(png)->mediaType == "image/png");
  CHECK(read(png)->bytes.text() == png);
  CHECK(read(jpeg)->mediaType == "image/jpeg");
  CHECK(read(jpeg)->bytes.text() == jpeg);
  for (const char* none : {"", "\x89PNG\r\n\x1a", "\xff\xd8", "GIF89a"}) {
    const auto refused = read(none);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().file == file.string());
  }
  CHECK(wordsOf(read("GIF89a").error().message) == "is no picture that a job can keep");
  fs::remove(file);
  CHECK_FALSE(readPhoto(file));
}
