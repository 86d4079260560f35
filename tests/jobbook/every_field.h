#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <unistd.h>

#include "netmend/jobbook/job_book.h"

/// A job with a value of its own in every field, and what compares two jobs field by field.
namespace netmend::test {

namespace fs = std::filesystem;

struct OneBook {
  fs::path folder = fs::temp_directory_path() / ("netmend-every-field-" + std::to_string(::getpid()));
  fs::path path = folder / "jobs.netmend-book";
  OneBook() { fs::create_directories(folder); }
  OneBook(const OneBook&) = delete;
  OneBook& operator=(const OneBook&) = delete;
  ~OneBook() { fs::remove_all(folder); }
  [[nodiscard]] JobBook open() const { return JobBook::open(path, BookUse::make).value(); }
};

inline Point at(std::int64_t x, std::int64_t y) {
  return {Length(x), Length(y)};
}

inline Beside beside(const std::string& pin, int tenths) {
  return {pin, Heading::below, tenths, at(tenths, -tenths)};
}

/// Of each sort of place what it keeps.
inline std::vector<PlaceName> everyPlace() {
  using enum PlaceName::Sort;
  std::vector<PlaceName> out;
  for (const auto sort : {somewhere, pin, pad, via, spot, joint, deadPin, track, part, unknownWay}) {
    PlaceName& name = out.emplace_back();
    const auto number = static_cast<int>(sort) + 1;
    name.sort = sort;
    name.label = "label " + std::to_string(number);
    name.handle = "handle " + std::to_string(number);
    name.layer = static_cast<PlaceName::Layer>(number % 3);
    if (sort == via || sort == spot)
      name.beside = {"J" + std::to_string(number), static_cast<Heading>(number % 4), number, at(number, 7)};
    if (sort == track) {
      name.from = {TrackEnd::Sort::area, "U1.1", beside("U1.2", 11)};
      name.to = {TrackEnd::Sort::end, "U1.3", beside("U1.4", 12)};
      name.stretch = PlaceName::Stretch::last;
      name.fromTenths = 13;
      name.toTenths = 14;
    }
    if (sort == unknownWay) {
      name.beyond = {"A.1", "A.2"};
      name.before = {"B.1"};
    }
  }
  return out;
}

inline Reading reading(int number) {
  Reading out;
  const std::string text = std::to_string(number);
  out.point = {PinId(static_cast<std::uint64_t>(100 + number)), "point " + text};
  out.other = {PinId(static_cast<std::uint64_t>(200 + number)), "other " + text};
  out.mode = static_cast<ReadingMode>(number % 8);
  out.value = 0.1 * number;
  out.settling = static_cast<Settling>(number % 3);
  out.time = Time(std::chrono::milliseconds(1'700'000'000'000 + number));
  out.meter = "meter " + text;
  out.by = "by " + text;
  out.condition = {{"plugged " + text, "battery"},
                   number % 2 == 0,
                   {"lifted " + text},
                   Celsius(20.0 + number),
                   "handling " + text};
  out.injected = Amperes(0.001 * number);
  return out;
}

inline JobReading jobReading(int number) {
  JobReading out;
  out.purpose = static_cast<ReadingPurpose>(number % 3);
  out.reading = reading(number);
  out.remark = "remark " + std::to_string(number);
  out.comesAndGoes = number % 2 == 1;
  Judged& judged = out.judged.emplace();
  Verdict& v = judged.verdict;
  v.kind = static_cast<VerdictKind>(number % 7);
  v.nothing = static_cast<NothingBecause>(number % 3);
  v.odds = 1.5 + number;
  v.rarity = 0.01 * number;
  v.offInSpreads = -2.5 - number;
  v.falseAlarmRate = 0.001 * number;
  Expected& e = v.expected.emplace();
  e.mode = static_cast<ReadingMode>((number + 1) % 8);
  e.from = static_cast<ExpectedFrom>(number % 3);
  e.kind = static_cast<PinKind>(number % 6);
  e.overLimitShare = 0.03 * number;
  e.humps = {{0.1 * number, 0.2, 0.3, 0.4, 0.5}, {0.6, 0.7, 0.8, 0.9, 1.0}};
  e.shown = {{0.11, 0.12}, {0.13, 0.14}};
  e.boards = static_cast<std::size_t>(10 + number);
  e.boardsOverLimit = static_cast<std::size_t>(number);
  e.seen = ValueInterval{0.15, 0.16};
  judged.limits = ValueInterval{0.17, 0.18};
  judged.by = static_cast<ExpectedBy>(number % 4);
  judged.asAt = "as at " + std::to_string(number);
  judged.fromOldBook = number % 2 == 0;
  return out;
}

inline JobSuspect suspect(int number, const PlaceName& place) {
  JobSuspect out;
  out.fault = {static_cast<FaultKind>(number % 5), place, static_cast<std::size_t>(number)};
  out.probability = 0.01 * number;
  out.prior = 0.02 * number;
  out.samplingError = 0.003 * number;
  out.more = static_cast<std::size_t>(number + 3);
  out.at = at(number, -number);
  out.way = {at(1, number), at(number, 2)};
  JobEvidence evidence;
  evidence.at = place;
  evidence.other = everyPlace()[3];
  evidence.mode = ReadingMode::milliohms;
  evidence.value = 0.4 + number;
  evidence.temperature = Celsius(30.0 + number);
  evidence.foretold = {
      static_cast<Foretold::What>(number % 5), {0.1, Volts(0.2), Volts(0.3)}, Ohms(0.4), Ohms(0.5)};
  evidence.bits = 0.5 - number;
  JobEvidence bare;
  bare.at = everyPlace()[1];
  bare.foretold.what = Foretold::What::anything;
  out.evidence = {evidence, bare};
  return out;
}

inline LandingPlace landing(int number) {
  LandingPlace out;
  out.kind = static_cast<LandingKind>(number % 6);
  out.name = everyPlace()[static_cast<std::size_t>(number % 10)];
  out.at = at(10 + number, 20 + number);
  out.side = number % 2 == 0 ? Side::top : Side::bottom;
  out.point = {PinId(static_cast<std::uint64_t>(30 + number)), "landing " + std::to_string(number)};
  return out;
}

inline WorkStep step(int number) {
  const std::string text = std::to_string(number);
  WorkStep out;
  out.text = "text " + text;
  out.check = number % 2 == 0;
  out.expected = "expected " + text;
  out.done = number % 3 == 0;
  out.note = "note " + text;
  out.function = number % 5 == 0;
  out.otherwise = "otherwise " + text;
  out.detail = "detail " + text;
  out.measure = StepMeasure{static_cast<ReadingMode>(number % 8),
                            {PinId(7), "measure " + text},
                            {PinId(8), "other " + text},
                            ValueInterval{0.1 * number, 0.2 * number},
                            number % 2 == 1};
  out.read = CheckRead{0.3 * number, static_cast<StepOutcome>(number % 3)};
  return out;
}

inline RepairAction action(int number) {
  const std::string text = std::to_string(number);
  RepairAction out;
  out.kind = static_cast<RepairKind>(number % 10);
  out.target = "target " + text;
  out.reason = "reason " + text;
  out.because = FoundFault{FaultKind::deadPin, everyPlace()[6], 4};
  out.places = {{PinId(41), "one of " + text}, {PinId{}, "two of " + text}};
  for (int i = 0; i < 6; ++i)
    out.steps.push_back(step(number + i));
  JumperRecord& jumper = out.jumper.emplace();
  jumper.from = landing(number);
  jumper.to = landing(number + 1);
  jumper.way = {at(1, 2), at(3, 4), at(5, 6)};
  jumper.side = number % 2 == 0 ? Side::bottom : Side::top;
  jumper.wire = "wire " + text;
  jumper.net = "net " + text;
  jumper.figures = WireFigures{Length(11),
                               Length(12),
                               "stripping " + text,
                               13,
                               Amperes(0.14),
                               Volts(0.15),
                               Ohms(0.16),
                               {ExpectedReading{true, Volts(0.17), Volts(0.18)},
                                ExpectedReading{false, Volts(0.19), Volts(0.2)},
                                ExpectedReading{true, Volts(0.21), Volts(0.22)}}};
  return out;
}

inline Job everyField() {
  Job job;
  job.number = "X-17";
  job.created = Time(std::chrono::milliseconds(1'600'000'000'001));
  job.customer = "customer";
  job.customerReference = "reference";
  job.device = "device";
  job.serial = "serial";
  job.symptom = "symptom";
  job.history = "history";
  job.condition = "condition";
  job.boardUuid = "uuid";
  job.boardName = "board";
  job.boardRevision = "revision";
  job.boardFile = "file";
  job.boardDigest = "digest";
  job.state = JobState::returnedUnrepaired;
  job.currency = "CHF";
  job.internalNotes = "notes";
  for (int i = 1; i <= 8; ++i)
    job.readings.push_back(jobReading(i));
  job.readings.emplace_back(); // and one with nothing in it
  int number = 0;
  for (const PlaceName& place : everyPlace())
    job.suspects.push_back(suspect(++number, place));
  job.suspects.emplace_back();
  JobSuspect& old = job.suspects.emplace_back();
  old.what = "open: via";
  old.explanation = "as it was said";
  for (int i = 1; i <= 7; ++i)
    job.actions.push_back(action(i));
  job.actions.emplace_back();
  job.photos = {{PhotoId(), "before", "image/png", std::string("\x89PNG\0\r\n", 7)},
                {PhotoId(), "after", "image/jpeg", std::string("\xff\xd8\xff")}};
  job.charges = {{ChargeId(), "work", Decimal{15'000}, Decimal{484'000}},
                 {ChargeId(), "wire", Decimal{1}, Decimal{-2}}};
  return job;
}

inline void compare(const Job& is, const Job& was) {
  CHECK(is.customer == was.customer);
  CHECK(is.customerReference == was.customerReference);
  CHECK(is.device == was.device);
  CHECK(is.serial == was.serial);
  CHECK(is.symptom == was.symptom);
  CHECK(is.history == was.history);
  CHECK(is.condition == was.condition);
  CHECK(is.boardUuid == was.boardUuid);
  CHECK(is.boardName == was.boardName);
  CHECK(is.boardRevision == was.boardRevision);
  CHECK(is.boardFile == was.boardFile);
  CHECK(is.boardDigest == was.boardDigest);
  CHECK(is.state == was.state);
  CHECK(is.currency == was.currency);
  CHECK(is.internalNotes == was.internalNotes);
}

inline void compare(const JobReading& is, const JobReading& was) {
  CHECK(is.purpose == was.purpose);
  CHECK(is.reading == was.reading);
  CHECK(is.judged == was.judged);
  CHECK(is.remark == was.remark);
  CHECK(is.comesAndGoes == was.comesAndGoes);
}

inline void compare(const LandingPlace& is, const LandingPlace& was) {
  CHECK(is.kind == was.kind);
  CHECK(is.name == was.name);
  CHECK(is.at == was.at);
  CHECK(is.side == was.side);
  CHECK(is.point == was.point);
  CHECK(is.label == was.label);
}

inline void compare(const WorkStep& is, const WorkStep& was) {
  CHECK(is.text == was.text);
  CHECK(is.check == was.check);
  CHECK(is.expected == was.expected);
  CHECK(is.done == was.done);
  CHECK(is.note == was.note);
  CHECK(is.measure == was.measure);
  CHECK(is.read == was.read);
  CHECK(is.function == was.function);
  CHECK(is.otherwise == was.otherwise);
  CHECK(is.detail == was.detail);
}

inline void compare(const RepairAction& is, const RepairAction& was) {
  CHECK(is.kind == was.kind);
  CHECK(is.target == was.target);
  CHECK(is.reason == was.reason);
  CHECK(is.because == was.because);
  REQUIRE(is.places.size() == was.places.size());
  for (std::size_t i = 0; i < is.places.size(); ++i) {
    CHECK(is.places[i].pin == was.places[i].pin);
    CHECK(is.places[i].label == was.places[i].label);
  }
  REQUIRE(is.steps.size() == was.steps.size());
  for (std::size_t i = 0; i < is.steps.size(); ++i)
    compare(is.steps[i], was.steps[i]);
  CHECK(is.proof == was.proof);
  REQUIRE(is.jumper.has_value() == was.jumper.has_value());
  if (!is.jumper) return;
  compare(is.jumper->from, was.jumper->from);
  compare(is.jumper->to, was.jumper->to);
  CHECK(is.jumper->way == was.jumper->way);
  CHECK(is.jumper->side == was.jumper->side);
  CHECK(is.jumper->wire == was.jumper->wire);
  CHECK(is.jumper->net == was.jumper->net);
  CHECK(is.jumper->figures == was.jumper->figures);
}

template <class T> void compareAll(const std::vector<T>& is, const std::vector<T>& was) {
  REQUIRE(is.size() == was.size());
  for (std::size_t i = 0; i < is.size(); ++i) {
    INFO("number " << i);
    compare(is[i], was[i]);
  }
}

inline void comparePhotosAndCharges(const Job& is, const Job& was) {
  REQUIRE(is.photos.size() == was.photos.size());
  for (std::size_t i = 0; i < is.photos.size(); ++i) {
    CHECK(is.photos[i].caption == was.photos[i].caption);
    CHECK(is.photos[i].mediaType == was.photos[i].mediaType);
    CHECK(is.photos[i].bytes == was.photos[i].bytes);
  }
  REQUIRE(is.charges.size() == was.charges.size());
  for (std::size_t i = 0; i < is.charges.size(); ++i) {
    CHECK(is.charges[i].what == was.charges[i].what);
    CHECK(is.charges[i].quantity == was.charges[i].quantity);
    CHECK(is.charges[i].price == was.charges[i].price);
  }
}

} // namespace netmend::test
