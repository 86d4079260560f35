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
  case RepairKind::wire:
    return pattern("core", "wire");
  case RepairKind::resolder:
    return pattern("core", "resolder");
  case RepairKind::removeBridge:
    return pattern("core", "remove solder bridge");
  case RepairKind::removePart:
    return pattern("core", "remove part");
  case RepairKind::replacePart:
    return pattern("core", "replace part");
  case RepairKind::clean:
    return pattern("core", "clean");
  case RepairKind::cutTrack:
    return pattern("core", "cut track");
  case RepairKind::other:
    return pattern("core", "other work");
  case RepairKind::notEconomic:
    break;
  }
  return pattern("core", "not economic");
}

namespace {

Said entrySaid(JobEvent::Entry entry, std::uint64_t id) {
  switch (entry) {
  case JobEvent::Entry::reading:
    return said(pattern("core", "reading {}"), id);
  case JobEvent::Entry::repairAction:
    return said(pattern("core", "repair {}"), id);
  case JobEvent::Entry::photo:
    return said(pattern("core", "photo {}"), id);
  case JobEvent::Entry::charge:
    break;
  }
  return said(pattern("core", "charge {}"), id);
}

} // namespace

Said eventSaid(const JobEvent& event) {
  switch (event.kind) {
  case JobEvent::Kind::asWritten:
    break;
  case JobEvent::Kind::bookedIn:
    return pattern("core", "booked in");
  case JobEvent::Kind::state:
    return nameOf(event.state);
  case JobEvent::Kind::boardUsed:
    return said(pattern("core", "board used: {}"), event.text);
  case JobEvent::Kind::takenBack:
    return said(pattern("core", "taken back: {}"), entrySaid(event.entry, event.number));
  case JobEvent::Kind::putBack:
    return said(pattern("core", "put back: {}"), entrySaid(event.entry, event.number));
  case JobEvent::Kind::repairAdded:
    if (event.text.empty()) return said(pattern("core", "repair added: {}"), nameOf(event.repair));
    return said(pattern("core", "repair added: {}, {}"), nameOf(event.repair), event.text);
  case JobEvent::Kind::suspects:
    if (event.number == 0) return pattern("core", "suspects withdrawn");
    return saidCount(counted("core", "{n} suspect found", "{n} suspects found"),
                     static_cast<std::int64_t>(event.number));
  }
  return asItIs(event.text);
}

Said handlingSaid(const Condition& condition) {
  if (condition.handling == repairUnderWay) return pattern("core", "repair under way");
  return asItIs(condition.handling);
}

} // namespace netmend
