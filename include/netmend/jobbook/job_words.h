#pragma once

#include <array>

#include "netmend/base/words.h"
#include "netmend/jobbook/job.h"

/// The words that job book, command line and sheet use.
namespace netmend {

inline constexpr std::array<Word<JobState>, 7> jobStateWords{{
    {JobState::bookedIn, "booked in"},
    {JobState::probing, "probing"},
    {JobState::suspectFound, "suspect found"},
    {JobState::repairing, "repairing"},
    {JobState::proving, "proving"},
    {JobState::handedOver, "handed over"},
    {JobState::returnedUnrepaired, "returned unrepaired"},
}};

inline constexpr std::array<Word<ReadingPurpose>, 3> readingPurposeWords{{
    {ReadingPurpose::fault, "fault"},
    {ReadingPurpose::check, "check"},
    {ReadingPurpose::proof, "proof"},
}};

inline constexpr std::array<Word<RepairKind>, 10> repairKindWords{{
    {RepairKind::jumper, "jumper"},
    {RepairKind::wire, "wire"},
    {RepairKind::resolder, "resolder"},
    {RepairKind::removeBridge, "remove bridge"},
    {RepairKind::removePart, "remove part"},
    {RepairKind::replacePart, "replace part"},
    {RepairKind::clean, "clean"},
    {RepairKind::cutTrack, "cut track"},
    {RepairKind::other, "other"},
    {RepairKind::notEconomic, "not economic"},
}};

inline constexpr std::array<Word<FaultKind>, 5> faultKindWords{{
    {FaultKind::sound, "sound"},
    {FaultKind::open, "open"},
    {FaultKind::deadPin, "dead pin"},
    {FaultKind::shortToGround, "short to ground"},
    {FaultKind::noneOfThese, "none of these"},
}};

} // namespace netmend
