#include "sounds.h"

#include "bench/late/late.h"

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

void Sounds::play(Tone tone) {
  if (tones_) speaker_->play(tone);
}

void Sounds::say(const QString& text) {
  if (speech_) speaker_->say(text);
}

Result<void> Sounds::sayOnce(const QString& text) {
  if (auto loaded = load(); !loaded) return loaded;
  if (!speech_) speaker_->openSpeech();
  speaker_->say(text);
  return {};
}

} // namespace netmend
