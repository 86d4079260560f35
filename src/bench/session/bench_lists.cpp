// What the open job holds in numbers, each change of it a step of the undo stack.
#include <algorithm>
#include <utility>

#include "bench_job.h"

namespace netmend {

namespace {

Result<RepairActionId> addTo(JobBook& book, JobId job, const RepairAction& action) {
  return book.addAction(job, action);
}
Result<ChargeId> addTo(JobBook& book, JobId job, const Charge& charge) {
  return book.addCharge(job, charge);
}

template <class Item> const Item* findIn(const std::vector<Item>& items, decltype(Item::id) id) {
  const auto found =
      std::find_if(items.begin(), items.end(), [id](const Item& item) { return item.id == id; });
  return found == items.end() ? nullptr : &*found;
}

} // namespace

template <class Item> bool BenchJob::list(const QString& what, const Item& item, Listing listing) {
  if (!job_) return false;
  // Put back, it is the very same: what was done with it afterwards can be done again.
  const auto id = std::make_shared<decltype(item.id)>(listing.add ? decltype(item.id){} : item.id);
  const auto told = [this, changed = listing.changed](Result<void> done) {
    if (done && reload()) (this->*changed)();
    return done;
  };
  const auto put = [this, id, item = Item(item), told]() mutable -> Result<void> {
    item.id = *id;
    if (item.id) return told(book_.putBack(job_->id, item));
    const auto added = addTo(book_, job_->id, item);
    if (!added) return failure(added.error());
    *id = *added;
    return told({});
  };
  const auto take = [this, id, told] { return told(book_.takeBack(job_->id, *id)); };
  return listing.add ? done(what, put, take) : done(what, take, put);
}

bool BenchJob::addAction(const RepairAction& action) {
  return list(tr("repair action"), action, {true, &BenchJob::actionsChanged});
}

bool BenchJob::addCharge(const Charge& charge) {
  return list(tr("charge"), charge, {true, &BenchJob::papersChanged});
}

bool BenchJob::removeCharge(ChargeId id) {
  const Charge* charge = job_ ? findIn(job_->charges, id) : nullptr;
  return charge != nullptr && list(tr("removal of a charge"), *charge, {false, &BenchJob::papersChanged});
}

bool BenchJob::updateAction(const QString& what, const RepairAction& action) {
  const RepairAction* found = job_ ? findIn(job_->actions, action.id) : nullptr;
  if (found == nullptr) return false;
  const auto put = [this](const RepairAction& a) -> Result<void> {
    if (auto kept = book_.updateAction(job_->id, a); !kept) return kept;
    reload();
    Q_EMIT actionsChanged();
    return {};
  };
  return done(
      what, [put, action] { return put(action); }, [put, before = *found] { return put(before); });
}

bool BenchJob::addReadingFor(RepairActionId action, const QString& what, const JobReading& reading,
                             const ActionChange& change) {
  const RepairAction* found = job_ ? findIn(job_->actions, action) : nullptr;
  if (found == nullptr) return false;
  const auto id = std::make_shared<JobReadingId>();
  const auto told = [this] {
    reload();
    Q_EMIT readingsChanged();
    Q_EMIT actionsChanged();
  };
  const auto put = [this, id, reading = JobReading(reading), change, before = *found,
                    told]() mutable -> Result<void> {
    reading.id = *id;
    if (reading.id) {
      if (auto again = book_.putBack(job_->id, reading); !again) return again;
    } else {
      const auto added = book_.addReading(job_->id, reading);
      if (!added) return failure(added.error());
      *id = *added;
    }
    RepairAction after = before;
    change(after, *id);
    auto kept = book_.updateAction(job_->id, after);
    if (!kept) static_cast<void>(book_.takeBack(job_->id, *id)); // half of it would be worse than none
    told();
    return kept;
  };
  const auto take = [this, id, before = *found, told]() -> Result<void> {
    if (auto kept = book_.updateAction(job_->id, before); !kept) return kept;
    auto taken = book_.takeBack(job_->id, *id);
    told();
    return taken;
  };
  return done(what, put, take);
}

} // namespace netmend
