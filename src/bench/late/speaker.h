#pragma once

#include <QString>
#include <QtPlugin>

namespace netmend {

/// A short high note in range, two low ones for anything odd, three short ones, the middle one higher, for
/// what was not taken.
enum class Tone { inRange, odd, refused };

/// Tones and speech; silent where there is no sound device or no speech engine. Get it by `late<Speaker>()`.
class Speaker {
public:
  static constexpr const char* plugin = "netmend_speaker";
  virtual ~Speaker() = default;

  /// Opens the device, so that the first tone does not come late; without it nothing is heard.
  virtual void openTones() = 0;
  virtual void openSpeech() = 0;
  /// Gives the devices back; to be called before the application ends, since the plugin ends after it.
  virtual void close() = 0;
  virtual void play(Tone tone) = 0;
  virtual void say(const QString& text) = 0;
};

} // namespace netmend

Q_DECLARE_INTERFACE(netmend::Speaker, "org.netmend.Speaker/2")
