#include "netmend/jobbook/record.h"

#include <algorithm>

#include "netmend/base/file.h"

namespace netmend {

FoundFault toFoundFault(const FaultClass& faultClass, const LineNames& names) {
  LineNames::ClassName name = names.nameOf(faultClass);
  return {faultClass.kind, std::move(name.place), name.places};
}

JobEvidence toJobEvidence(const Isolation& isolation, const LineNames& names, const Evidence& evidence) {
  const Observation& observation = isolation.observations[evidence.observation];
  JobEvidence out;
  out.at = names.probe(observation.place);
  if (observation.other) out.other = names.probe(*observation.other);
  out.mode = observation.reading.mode;
  out.value = observation.reading.value;
  out.temperature = observation.reading.condition.temperature;
  out.foretold = evidence.foretold;
  out.bits = evidence.bits;
  return out;
}

JobSuspect toJobSuspect(const Isolation& isolation, const LineNames& names, const Suspect& suspect) {
  constexpr std::size_t mostKept = 6;
  JobSuspect out;
  out.fault = toFoundFault(isolation.classes[suspect.faultClass], names);
  out.probability = suspect.probability;
  out.prior = suspect.prior;
  out.samplingError = isolation.shareError;
  const std::size_t kept = std::min(mostKept, suspect.evidence.size());
  for (std::size_t i = 0; i < kept; ++i)
    out.evidence.push_back(toJobEvidence(isolation, names, suspect.evidence[i]));
  out.more = suspect.evidence.size() - kept;
  // The sheet shows one stretch for a suspect: that of its likeliest place.
  if (!suspect.places.empty()) {
    out.at = suspect.places.front().at;
    out.way = suspect.places.front().way;
  }
  return out;
}

std::vector<JobSuspect> toJobSuspects(const Isolation& isolation, const LineNames& names,
                                      const Suspects& suspects) {
  std::vector<JobSuspect> out;
  for (std::size_t i = 0; i < suspects.ranked.size(); ++i)
    if (i < suspects.setSize ||
        isolation.classes[suspects.ranked[i].faultClass].kind == FaultKind::noneOfThese)
      out.push_back(toJobSuspect(isolation, names, suspects.ranked[i]));
  return out;
}

JobReading toJobReading(const Reading& reading, ReadingPurpose purpose, const Verdict* verdict) {
  JobReading out;
  out.purpose = purpose;
  out.reading = reading;
  if (verdict == nullptr) return out;
  out.judged = Judged{*verdict};
  return out;
}

bool isEvidence(const JobReading& reading) {
  return reading.purpose != ReadingPurpose::proof && reading.reading.condition.handling != repairUnderWay;
}

std::vector<const JobReading*> inForce(const std::vector<JobReading>& readings) {
  const auto sameKind = [](const JobReading& a, const JobReading& b) {
    return (a.purpose == ReadingPurpose::proof) == (b.purpose == ReadingPurpose::proof) &&
           sameMeasurement(a.reading, b.reading);
  };
  std::vector<const JobReading*> out;
  for (const JobReading& reading : readings) {
    const auto before = std::find_if(out.begin(), out.end(),
                                     [&](const JobReading* other) { return sameKind(*other, reading); });
    const bool stays =
        before != out.end() && reading.comesAndGoes && isFlag((*before)->kind()) && !isFlag(reading.kind());
    if (stays) continue;
    if (before != out.end()) out.erase(before);
    out.push_back(&reading);
  }
  return out;
}

namespace {

/// Read OL, and OL again with nothing else since: each time it may have been a slip, so each of them tells.
bool isRepeated(const JobReading& overLimit, const std::vector<JobReading>& readings) {
  if (overLimit.reading.value || overLimit.comesAndGoes) return false;
  const auto after = std::find_if(readings.begin(), readings.end(),
                                  [&](const JobReading& each) { return each.id == overLimit.id; });
  const auto same = [&](const JobReading& each) {
    return each.id != overLimit.id && isEvidence(each) && sameMeasurement(each.reading, overLimit.reading);
  };
  return std::all_of(after, readings.end(),
                     [&](const JobReading& each) { return !same(each) || !each.reading.value; });
}

} // namespace

std::vector<Reading> evidenceOf(const Job& job) {
  const auto counting = inForce(job.readings);
  std::vector<Reading> out;
  for (const JobReading& entry : job.readings) {
    if (!isEvidence(entry)) continue;
    if (std::find(counting.begin(), counting.end(), &entry) != counting.end() ||
        isRepeated(entry, job.readings))
      out.push_back(entry.reading);
  }
  return out;
}

std::vector<WorkStep> toWorkSteps(const std::vector<Step>& steps) {
  std::vector<WorkStep> out;
  out.reserve(steps.size());
  for (const Step& step : steps) {
    WorkStep& kept = out.emplace_back();
    kept.text = step.text;
    kept.check = step.check;
    kept.expected = step.expected;
    kept.otherwise = step.otherwise;
    kept.detail = step.detail;
    kept.measure = step.measure;
  }
  return out;
}

LandingPlace toLandingPlace(const Landing& landing, const PlaceNames& names) {
  LandingPlace out;
  out.kind = landing.kind;
  out.name = names.of(landing.object, landing.at, landing.layer);
  out.at = landing.at;
  out.side = landing.side;
  out.point = probePointOf(landing);
  return out;
}

RepairAction toJumperAction(const JumperProposal& proposal, const PlaceNames& names,
                            const std::vector<Step>& steps, const WorkPrediction& prediction,
                            const std::string& net, const std::optional<FoundFault>& because) {
  RepairAction out;
  out.kind = RepairKind::jumper;
  out.target = net;
  out.because = because;
  out.steps = toWorkSteps(steps);
  JumperRecord jumper;
  jumper.from = toLandingPlace(proposal.from, names);
  jumper.to = toLandingPlace(proposal.to, names);
  jumper.way = proposal.way;
  jumper.side = proposal.side;
  jumper.wire = proposal.wire.wire.name;
  jumper.net = net;
  jumper.figures = wireFigures(proposal, prediction);
  out.jumper = std::move(jumper);
  return out;
}

Result<Photo> readPhoto(const std::filesystem::path& file) {
  auto bytes = readFile(file, 100u << 20);
  if (!bytes) return failure(bytes.error());
  Photo out;
  if (bytes->starts_with("\x89PNG\r\n\x1a\n"))
    out.mediaType = "image/png";
  else if (bytes->starts_with("\xff\xd8\xff"))
    out.mediaType = "image/jpeg";
  else
    return failure({pattern("core", "is no picture that a job can keep"),
                    file.string(),
                    "",
                    {},
                    pattern("core", "PNG or JPEG")});
  out.bytes = std::move(*bytes);
  return out;
}

} // namespace netmend
