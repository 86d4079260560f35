#pragma once

#include <QString>

#include "bench/late/speaker.h"
#include "netmend/base/error.h"

namespace netmend {

/// What is heard: tones and speech, each if wanted. Nothing is loaded before either is. Silent where there is
/// no sound device or no speech engine.
class Sounds {
public:
  Sounds() = default;
  Sounds(const Sounds&) = delete;
  Sounds& operator=(const Sounds&) = delete;
  ~Sounds();
  [[nodiscard]] Result<void> setTones(bool on);
  [[nodiscard]] Result<void> setSpeech(bool on);
  [[nodiscard]] bool tones() const { return tones_; }
  [[nodiscard]] bool speech() const { return speech_; }
  void play(Tone tone);
  void say(const QString& text);
  /// Somebody asked for it: whether speech is on or not.
  [[nodiscard]] Result<void> sayOnce(const QString& text);
  /// Is heard by this one, which outlives it, instead of the sound device's.
  void use(Speaker& speaker) { speaker_ = &speaker; }

private:
  Result<void> load();
  bool tones_ = false;
  bool speech_ = false;
  Speaker* speaker_ = nullptr; ///< null: not wanted yet
};

} // namespace netmend
