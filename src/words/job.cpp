#include "netmend/words/job.h"

#include "netmend/jobbook/record.h"

namespace netmend {

Said nameOf(JobState state) {
  switch (state) {
  case JobState::bookedIn:
    return pattern("core", "booked in");
  case JobState::probing:
    return pattern("core", "probing");
  case JobState::suspectFound:
    return pattern("core", "suspect found");
  case JobState::repairing:
    return pattern("core", "repairing");
  case JobState::proving:
    return pattern("core", "proving");
  case JobState::handedOver:
    return pattern("core", "handed over");
  case JobState::returnedUnrepaired:
    break;
  }
  return pattern("core", "returned unrepaired");
}

Said nameOf(RepairKind kind) {
  switch (kind) {
  case RepairKind::jumper:
    return pattern("core", "jumper");
  case RepairKind::resolder:
    return pattern("core", "resolder");
  case RepairKind::removePart:
    return pattern("core", "remove part");
  case RepairKind::replacePart:
    return pattern("core", "replace part");
  case RepairKind::clean:
    return pattern("core", "clean");
  case RepairKind::cutTrack:
    return pattern("core", "cut track");
  case RepairKind::notEconomic:
    break;
  }
  return pattern("core", "not economic");
}

Said handlingSaid(const Condition& condition) {
  if (condition.handling == repairUnderWay) return pattern("core", "repair under way");
  return asItIs(condition.handling);
}

} // namespace netmend
