#include "suspect_letters.h"

namespace netmend {

/// A class is known by its likeliest place; nobody's readings change that.
SuspectLetters::Key SuspectLetters::keyOf(const FaultClass& faultClass) {
  if (faultClass.places.empty()) return {faultClass.kind, 0, PinId()};
  const FaultPlace& first = faultClass.places.front();
  return {first.kind, first.edge ? *first.edge + 1 : 0, first.pin};
}

void SuspectLetters::give(const FaultCase& fault, std::size_t most) {
  if (nets_ != fault.line.nets || pin_ != fault.basis.pin) {
    letters_.clear();
    nets_ = fault.line.nets;
    pin_ = fault.basis.pin;
  }
  for (std::size_t i = 0; i < fault.suspects.ranked.size() && i < most; ++i) {
    if (letters_.size() >= 26) return;
    const Key key = keyOf(fault.isolation.classes[fault.suspects.ranked[i].faultClass]);
    letters_.try_emplace(key, static_cast<char>('A' + static_cast<int>(letters_.size())));
  }
}

std::vector<std::string> SuspectLetters::ofRanked(const FaultCase& fault) const {
  std::vector<std::string> out;
  for (const Suspect& suspect : fault.suspects.ranked) {
    const auto found = letters_.find(keyOf(fault.isolation.classes[suspect.faultClass]));
    out.push_back(found == letters_.end() ? std::string() : std::string(1, found->second));
  }
  return out;
}

} // namespace netmend
