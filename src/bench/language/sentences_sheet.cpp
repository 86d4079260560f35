// The job sheet and the pictures.
#include "sentence_tables.h"

#include <array>

#include <QtGlobal>

namespace netmend {

namespace {

constexpr auto sheetTable = std::to_array<const char*>({
    QT_TRANSLATE_NOOP("core", "Job sheet "),
    QT_TRANSLATE_NOOP("core", "Workshop copy"),
    QT_TRANSLATE_NOOP("core", "Customer's copy"),
    QT_TRANSLATE_NOOP("core", "not stated"),
    QT_TRANSLATE_NOOP("core", "without number"),
    QT_TRANSLATE_NOOP("core", "Device and symptom"),
    QT_TRANSLATE_NOOP("core", "Device"),
    QT_TRANSLATE_NOOP("core", "Serial number"),
    QT_TRANSLATE_NOOP("core", "Customer"),
    QT_TRANSLATE_NOOP("core", "Reference"),
    QT_TRANSLATE_NOOP("core", "Booked in"),
    QT_TRANSLATE_NOOP("core", "State"),
    QT_TRANSLATE_NOOP("core", " revision "),
    QT_TRANSLATE_NOOP("core", "Board"),
    QT_TRANSLATE_NOOP("core", "Symptom"),
    QT_TRANSLATE_NOOP("core", "History"),
    QT_TRANSLATE_NOOP("core", "As received"),
    QT_TRANSLATE_NOOP("core", " (content %1)"),
    QT_TRANSLATE_NOOP("core", "Board file"),
    QT_TRANSLATE_NOOP("core", "Job "),
    QT_TRANSLATE_NOOP("core", "%1 of %2"),
    QT_TRANSLATE_NOOP("core", "Points"),
    QT_TRANSLATE_NOOP("core", "plugged: "),
    QT_TRANSLATE_NOOP("core", "powered"),
    QT_TRANSLATE_NOOP("core", "lifted: "),
    QT_TRANSLATE_NOOP("core", " to "),
    QT_TRANSLATE_NOOP("core", ", %1 A injected"),
    QT_TRANSLATE_NOOP("core", ", rising"),
    QT_TRANSLATE_NOOP("core", "not judged"),
    QT_TRANSLATE_NOOP("core", "Point"),
    QT_TRANSLATE_NOOP("core", "Measured"),
    QT_TRANSLATE_NOOP("core", "Expected"),
    QT_TRANSLATE_NOOP("core", "As found"),
    QT_TRANSLATE_NOOP("core", "Verdict"),
    QT_TRANSLATE_NOOP("core", "After"),
    QT_TRANSLATE_NOOP("core", "Checks during the work"),
    QT_TRANSLATE_NOOP("core", "Read"),
    QT_TRANSLATE_NOOP("core", "Chance"),
    QT_TRANSLATE_NOOP("core", "Suspect"),
    QT_TRANSLATE_NOOP("core", "by "),
    QT_TRANSLATE_NOOP("core", "meter "),
    QT_TRANSLATE_NOOP("core", "on "),
    QT_TRANSLATE_NOOP("core", "Readings: "),
    QT_TRANSLATE_NOOP("core", "Findings before and after"),
    QT_TRANSLATE_NOOP("core", "Nothing has been read yet."),
    QT_TRANSLATE_NOOP("core", "bar: expected; left mark: as found, right mark: after repair"),
    QT_TRANSLATE_NOOP("core", "bar: expected"),
    QT_TRANSLATE_NOOP("core", "Picture"),
    QT_TRANSLATE_NOOP("core", "line, on this side"),
    QT_TRANSLATE_NOOP("core", "line, on another layer"),
    QT_TRANSLATE_NOOP("core", "line, way not known"),
    QT_TRANSLATE_NOOP("core", "suspected stretch"),
    QT_TRANSLATE_NOOP("core", "jumper wire"),
    QT_TRANSLATE_NOOP("core", "seen from the top"),
    QT_TRANSLATE_NOOP("core", "seen from the bottom"),
    QT_TRANSLATE_NOOP("core", "jumper %1"),
    QT_TRANSLATE_NOOP("core", "Photos"),
    QT_TRANSLATE_NOOP("core", "photo %1"),
    QT_TRANSLATE_NOOP("core", "From "),
    QT_TRANSLATE_NOOP("core", "Net"),
    QT_TRANSLATE_NOOP("core", "Wire"),
    QT_TRANSLATE_NOOP("core", "Way"),
    QT_TRANSLATE_NOOP("core", "%1 mm on the %2"),
    QT_TRANSLATE_NOOP("core", "Check: "),
    QT_TRANSLATE_NOOP("core", "Expected: "),
    QT_TRANSLATE_NOOP("core", "Note: "),
    QT_TRANSLATE_NOOP("core", "Proof: "),
    QT_TRANSLATE_NOOP("core", "Cautions"),
    QT_TRANSLATE_NOOP("core", "Work %1: %2"),
    QT_TRANSLATE_NOOP("core", "Why: "),
    QT_TRANSLATE_NOOP("core", "Internal notes (not on the customer's copy)"),
    QT_TRANSLATE_NOOP("core", "Date, technician's signature"),
    QT_TRANSLATE_NOOP("core", "Date, customer's signature: device received"),
    QT_TRANSLATE_NOOP("core", "What"),
    QT_TRANSLATE_NOOP("core", "Quantity"),
    QT_TRANSLATE_NOOP("core", "Price"),
    QT_TRANSLATE_NOOP("core", "Amount "),
    QT_TRANSLATE_NOOP("core", "Total"),
    QT_TRANSLATE_NOOP("core", "Charges"),
    QT_TRANSLATE_NOOP("core", "No places are known on this board: %1 parts, %2 pins, %3 nets"),
    QT_TRANSLATE_NOOP("core", " (continued)"),
    QT_TRANSLATE_NOOP("core", "{} (continued)"),
});

} // namespace

std::span<const char* const> sheetSentences() {
  return sheetTable;
}

} // namespace netmend
