#include <array>

#include "demand.h"
#include "netmend/isolation/fault_priors.h"
#include "netmend/jumper/landing.h"
#include "netmend/jumper/wire.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/jumper/zone_rules.h"
#include "netmend/probing/meter.h"
#include "netmend/probing/pin_kind.h"
#include "netmend/probing/verdict.h"

using namespace netmend;
using namespace netmend::fuzz;

namespace {

template <auto load> void tryOn(const std::string& file) {
  if (const auto data = load(file); !data) demandFile(data.error(), file);
}

constexpr std::array readers{tryOn<loadMeters>,      tryOn<loadPinKinds>,      tryOn<loadVerdictRules>,
                             tryOn<readFaultPriors>, tryOn<readProbeEfforts>,  tryOn<loadWireTable>,
                             tryOn<loadWorkSteps>,   tryOn<loadLandingPrices>, tryOn<loadZoneRules>};

} // namespace

/// The first byte says which of the files that a user may edit the rest is meant to be.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  readers.at(data[0] % readers.size())(fileOf(textOf(data + 1, size - 1), "fuzzed.json"));
  return 0;
}
