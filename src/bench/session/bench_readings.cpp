// The readings of the open job, each a step of the history.
#include <algorithm>
#include <memory>

#include "bench_job.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/place.h"

namespace netmend {

namespace {

QString nameInHistory(const JobReading& reading, const PlaceNames* places) {
  return BenchJob::tr("reading at %1").arg(shown(nameOf(reading.reading.point, places)));
}

} // namespace

BenchJob::ReadingActs BenchJob::actsOf(const JobReading& reading) {
  const auto kept = std::make_shared<JobReading>(reading);
  const auto put = [this, kept]() -> Result<void> {
    if (!job_) return failure({pattern("core", "no job is open")});
    if (kept->id) {
      Q_EMIT goingBackTo(kept->reading.point, kept->purpose);
      if (auto again = book_.putBack(job_->id, *kept); !again) return again;
    } else {
      const auto added = book_.addReading(job_->id, *kept);
      if (!added) return failure(added.error());
      kept->id = *added;
    }
    auto& all = job_->readings;
    const auto after = std::find_if(all.begin(), all.end(),
                                    [&](const JobReading& other) { return kept->id.value < other.id.value; });
    all.insert(after, *kept);
    Q_EMIT readingsChanged();
    return {};
  };
  const auto take = [this, kept]() -> Result<void> {
    if (!job_) return failure({pattern("core", "no job is open")});
    auto& all = job_->readings;
    const auto same = [&](const JobReading& r) { return r.id == kept->id; };
    const auto found = std::find_if(all.begin(), all.end(), same);
    if (found == all.end()) return failure({pattern("core", "the reading is gone already")});
    *kept = *found; // with what has been said of it since
    Q_EMIT goingBackTo(kept->reading.point, kept->purpose);
    if (auto taken = book_.takeBack(job_->id, kept->id); !taken) return taken;
    std::erase_if(all, same);
    Q_EMIT readingsChanged();
    return {};
  };
  return {put, take};
}

Result<JobReadingId> BenchJob::addReading(const JobReading& reading) {
  if (!job_) return failure({pattern("core", "no job is open")});
  const ReadingActs acts = actsOf(reading);
  if (auto added = perform(nameInHistory(reading, places()), acts.put, acts.take); !added)
    return failure(added.error());
  return job_->readings.back().id;
}

void BenchJob::rememberReadings() {
  if (!job_ || job_->state >= JobState::handedOver) return;
  for (const JobReading& reading : job_->readings) {
    if (!isEvidence(reading)) continue; // a repair's readings go with what they changed in it
    const ReadingActs acts = actsOf(reading);
    remember(nameInHistory(reading, places()), acts.put, acts.take);
  }
}

Result<void> BenchJob::sayOf(const std::vector<JobReading>& readings) {
  if (auto kept = book_.rejudge(job_->id, readings); !kept) return kept;
  for (const JobReading& said : readings)
    for (JobReading& reading : job_->readings)
      if (reading.id == said.id) reading = said;
  Q_EMIT readingsChanged();
  return {};
}

bool BenchJob::rejudge(const std::vector<JobReading>& readings) {
  if (!job_) return false;
  const auto said = sayOf(readings);
  if (!said) fail(said.error());
  return said.has_value();
}

Result<void> BenchJob::putMoved(const std::vector<JobReading>& readings) {
  if (!job_) return failure({pattern("core", "no job is open")});
  if (!readings.empty()) Q_EMIT goingBackTo(readings.front().reading.point, readings.front().purpose);
  if (auto kept = book_.moveReadings(job_->id, readings); !kept) return kept;
  for (const JobReading& moved : readings)
    for (JobReading& reading : job_->readings)
      if (reading.id == moved.id) reading = moved;
  Q_EMIT readingsChanged();
  return {};
}

Result<void> BenchJob::moveReadings(const QString& what, const std::vector<JobReadingId>& readings,
                                    const std::vector<ProbePoint>& to, const std::function<void()>& moved,
                                    const std::function<void()>& movedBack) {
  if (!job_) return failure({pattern("core", "no job is open")});
  std::vector<JobReading> before;
  std::vector<JobReading> after;
  for (std::size_t i = 0; i < readings.size(); ++i)
    for (const JobReading& reading : job_->readings) {
      if (reading.id != readings[i]) continue;
      before.push_back(reading);
      Reading there = reading.reading;
      there.point = to[i];
      JobReading now = judged(there, reading.purpose, judgeBasis(), {});
      now.id = reading.id;
      now.remark = reading.remark;
      now.comesAndGoes = reading.comesAndGoes;
      after.push_back(std::move(now));
    }
  const auto putting = [this](const std::vector<JobReading>& all, const std::function<void()>& then) {
    return [this, all, then]() -> Result<void> {
      if (auto put = putMoved(all); !put) return put;
      then();
      return {};
    };
  };
  return perform(what, putting(after, moved), putting(before, movedBack));
}

const JobReading* BenchJob::readOtherwise() const {
  if (!job_ || job_->readings.empty()) return nullptr;
  return readOtherwiseBefore(job_->readings, job_->readings.back(), data_);
}

bool BenchJob::sayComesAndGoes(bool so) {
  if (!job_ || job_->readings.empty()) return false;
  const JobReading last = job_->readings.back();
  const auto saying = [this, last](bool yes) {
    return [this, last, yes]() -> Result<void> {
      if (!job_) return failure({pattern("core", "no job is open")});
      std::vector<JobReading> said;
      for (const JobReading& reading : job_->readings)
        if ((reading.purpose == ReadingPurpose::proof) == (last.purpose == ReadingPurpose::proof) &&
            isEvidence(reading) == isEvidence(last) && sameMeasurement(reading.reading, last.reading)) {
          said.push_back(reading);
          said.back().comesAndGoes = yes;
        }
      return sayOf(said);
    };
  };
  return done(tr("%1 comes and goes").arg(shown(nameOf(last.reading.point, places()))), saying(so),
              saying(!so));
}

} // namespace netmend
