#include "netmend/jobbook/record.h"

#include "netmend/base/file.h"

namespace netmend {

std::vector<JobSuspect> toJobSuspects(const Isolation& isolation, const Suspects& suspects) {
  std::vector<JobSuspect> out;
  for (std::size_t i = 0; i < suspects.ranked.size(); ++i) {
    const Suspect& suspect = suspects.ranked[i];
    if (i >= suspects.setSize && isolation.classes[suspect.faultClass].kind != FaultKind::noneOfThese)
      continue;
    JobSuspect entry{suspect.text, suspect.probability, suspect.explanation, std::nullopt, {}};
    // The sheet shows one stretch for a suspect: that of its likeliest place.
    if (!suspect.places.empty()) {
      entry.at = suspect.places.front().at;
      entry.way = suspect.places.front().way;
    }
    out.push_back(std::move(entry));
  }
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

std::vector<WorkStep> toWorkSteps(const std::vector<Step>& steps) {
  std::vector<WorkStep> out;
  out.reserve(steps.size());
  for (const Step& step : steps)
    out.push_back({step.text, step.check, step.expected, false, "", step.measure, false});
  return out;
}

RepairAction toJumperAction(const JumperProposal& proposal, const std::vector<Step>& steps,
                            const std::string& net, const std::string& reason) {
  RepairAction out;
  out.kind = RepairKind::jumper;
  out.target = net;
  out.reason = reason;
  out.steps = toWorkSteps(steps);
  const auto place = [](const Landing& landing) {
    const PinId* pin = std::get_if<PinId>(&landing.object);
    return LandingPlace{
        landing.label, landing.at, landing.side, {pin != nullptr ? *pin : PinId{}, landing.point}};
  };
  out.jumper = JumperRecord{place(proposal.from), place(proposal.to),      proposal.way,
                            proposal.side,        proposal.wire.wire.name, net};
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
    return failure(
        {pattern("core", "is no picture that a job can keep"), file.string(), "", "", "PNG or JPEG"});
  out.bytes = std::move(*bytes);
  return out;
}

} // namespace netmend
