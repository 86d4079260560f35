#include "demand.h"
#include "netmend/probing/walk_file.h"

using namespace netmend;
using namespace netmend::fuzz;

/// What is read of a walk can be written, and that read again is the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string file = "fuzzed.walk";
  const auto walk = walkFromText(textOf(data, size), file);
  if (!walk) {
    demandFile(walk.error(), file);
    return 0;
  }
  const std::string text = walkToText(*walk);
  const auto again = walkFromText(text, file);
  demand(again.has_value(), "what was written can be read", again ? "" : again.error().text());
  demand(*again == *walk, "what was written and read is the same");
  demand(walkToText(*again) == text, "written once more it is the same to the letter");
  return 0;
}
