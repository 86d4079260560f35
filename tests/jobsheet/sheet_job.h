#pragma once

#include "netmend/jobsheet/job_sheet.h"

namespace netmend::testing {

inline JobReading jobReading(std::uint64_t id, const std::string& point, ReadingPurpose purpose,
                             std::optional<double> value, const std::string& verdict,
                             std::optional<ValueInterval> expected = ValueInterval{0.441, 0.465}) {
  JobReading out;
  out.id = JobReadingId(id);
  out.purpose = purpose;
  out.reading.point.label = point;
  out.reading.other.label = "GND";
  out.reading.value = value;
  out.reading.by = "Ada Prüfer";
  out.judged = Judged{};
  out.judged->verdict.kind = *verdictKindFrom(verdict);
  out.judged->limits = expected;
  return out;
}

/// An invented job with something in every field.
inline Job invented() {
  Job job;
  job.number = "2026-0042";
  job.created = Time{std::chrono::milliseconds{1767225600000}}; // 2026-01-01 00:00 UTC
  job.customer = "Wasserverband Süderbrücke";
  job.customerReference = "PO 4711";
  job.device = "Tide gauge logger";
  job.symptom = "Keys of one column do nothing";
  job.history = "Fell into the harbour basin";
  job.boardFile = "/secret/place/keys.json";
  job.internalNotes = "Ask for payment first";
  job.readings = {jobReading(1, "J4.3", ReadingPurpose::fault, std::nullopt, "open"),
                  jobReading(2, "J4.4", ReadingPurpose::fault, 0.452, "in range"),
                  jobReading(3, "J4.3", ReadingPurpose::check, 0.449, "in range"),
                  jobReading(4, "J4.3", ReadingPurpose::proof, 0.451, "in range")};
  JobSuspect suspect;
  suspect.what = "open in track KEY_COL3";
  suspect.explanation = "J4.3 reads OL";
  suspect.probability = 0.83;
  suspect.at = Point{Length::fromMm(50), Length::fromMm(20)};
  job.suspects = {suspect};
  RepairAction action;
  action.kind = RepairKind::jumper;
  action.target = "KEY_COL3";
  const Point from{Length::fromMm(12), Length::fromMm(20)};
  const Point to{Length::fromMm(90), Length::fromMm(20)};
  const auto landing = [](LandingKind kind, const char* pin, Point at) {
    LandingPlace place;
    place.kind = kind;
    place.name.sort = PlaceName::Sort::pin;
    place.name.label = pin;
    place.at = at;
    return place;
  };
  JumperRecord jumper;
  jumper.from = landing(LandingKind::connectorPin, "J4.3", from);
  jumper.to = landing(LandingKind::partTerminal, "C12.1", to);
  jumper.way = {from, {Length::fromMm(50), Length::fromMm(40)}, to};
  jumper.wire = "enamelled copper 0.10 mm";
  jumper.net = "KEY_COL3";
  action.jumper = std::move(jumper);
  action.steps.resize(2);
  action.steps[0].text = "Scrape the mask at the landing";
  action.steps[0].done = true;
  action.steps[0].note = "took two tries";
  action.steps[1].text = "Touch the bare copper";
  action.steps[1].check = true;
  action.steps[1].expected = "0.453 V: go on";
  action.proof = {JobReadingId(4)};
  job.actions = {action};
  job.charges = {{ChargeId(1), "Fault finding", Decimal{15000}, Decimal{423300}},
                 {ChargeId(2), "Wire and mask", Decimal{10000}, Decimal{1000}}};
  return job;
}

} // namespace netmend::testing
