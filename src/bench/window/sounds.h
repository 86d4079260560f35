#pragma once

#include <QString>

#include "netmend/base/error.h"

namespace netmend {

class Speaker;

/// What is heard of a reading: a short high note in range, two low ones for anything odd; spoken as well if
/// wanted. Nothing is loaded before either is. Silent where there is no sound device or no speech engine.
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
  /// After a reading was taken.
  void taken(bool odd, const QString& spoken);

private:
  Result<void> load();
  bool tones_ = false;
  bool speech_ = false;
  Speaker* speaker_ = nullptr; ///< null: not wanted yet
};

} // namespace netmend
