#include "simulation/shares.h"

#include <fstream>
#include <optional>

#include <nlohmann/json.hpp>

namespace netmend::simulation {

namespace {

/// As the file writes it; empty: not named there.
std::string written(PartKind kind) {
  switch (kind) {
  case PartKind::chip:
    return "chip";
  case PartKind::transistor:
    return "transistor";
  case PartKind::diode:
    return "diode";
  case PartKind::led:
    return "led";
  case PartKind::filter:
    return "filter";
  case PartKind::crystal:
    return "crystal";
  case PartKind::capacitor:
    return "capacitor";
  case PartKind::connector:
    return "connector";
  case PartKind::switchOrKey:
    return "switch_or_key";
  case PartKind::testPoint:
    return "test_point";
  case PartKind::battery:
    return "battery";
  default:
    return "otherwise";
  }
}

} // namespace

TerminationShare FaultShares::of(const std::optional<PartKind>& kind) const {
  const auto found = behind.find(kind ? written(*kind) : "unknown");
  return found == behind.end() ? TerminationShare{} : found->second;
}

FaultShares faultShares(const std::filesystem::path& file) {
  std::ifstream in(file);
  const auto json = nlohmann::json::parse(in);
  FaultShares out;
  out.sound = json.at("shares").at("sound").at("share");
  out.slipped = json.at("shares").at("slippedProbe").at("share");
  const auto weight = [&](const char* name, const char* per) {
    return json.at("weights").at(name).at(per).get<double>();
  };
  out.solderJoint = weight("solderJoint", "perPlace");
  out.connectorJoint = weight("connectorJoint", "perPlace");
  out.trackPerMm = weight("track", "perMm");
  out.via = weight("via", "perPlace");
  out.part = weight("part", "perPlace");
  out.deadPin = weight("deadPin", "perPlace");
  out.shortToGround = weight("shortToGround", "perLine");
  out.railOhms = json.at("pullUp").at("railOhms");
  out.railFactor = json.at("pullUp").at("railFactor");
  out.readingSpread = json.at("spread").at("reading_V");
  for (const auto& entry : json.at("terminations"))
    out.behind[entry.at("part")] = {entry.at("junction"), entry.at("resistive")};
  return out;
}

} // namespace netmend::simulation
