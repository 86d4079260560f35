#include "sounds.h"

#include "bench/late/late.h"
#include "bench/late/speaker.h"

namespace netmend {

Sounds::~Sounds() {
  if (speaker_ != nullptr) speaker_->close();
}

Result<void> Sounds::load() {
  if (speaker_ != nullptr) return {};
  const auto speaker = late<Speaker>();
  if (!speaker) return failure(speaker.error());
  speaker_ = *speaker;
  return {};
}

Result<void> Sounds::setTones(bool on) {
  if (on) {
    if (auto loaded = load(); !loaded) return loaded;
    speaker_->openTones();
  }
  tones_ = on;
  return {};
}

Result<void> Sounds::setSpeech(bool on) {
  if (on) {
    if (auto loaded = load(); !loaded) return loaded;
    speaker_->openSpeech();
  }
  speech_ = on;
  return {};
}

void Sounds::taken(bool odd, const QString& spoken) {
  if (tones_) speaker_->play(odd);
  if (speech_) speaker_->say(spoken);
}

} // namespace netmend
