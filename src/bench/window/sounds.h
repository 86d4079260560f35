#pragma once

#include <memory>

#include <QObject>
#include <QString>

class QAudioSink;
class QBuffer;
class QTextToSpeech;

namespace netmend {

/// What is heard of a reading: a short high note in range, two low ones for anything odd; spoken as well if
/// wanted. Silent where there is no sound device or no speech engine.
class Sounds : public QObject {
  Q_OBJECT

public:
  explicit Sounds(QObject* parent = nullptr);
  ~Sounds() override;

  void setTones(bool on);
  void setSpeech(bool on);
  [[nodiscard]] bool tones() const { return tones_; }
  [[nodiscard]] bool speech() const { return speech_; }
  /// After a reading was taken.
  void taken(bool odd, const QString& spoken);

private:
  void play(const QByteArray& samples);
  bool tones_ = false;
  bool speech_ = false;
  std::unique_ptr<QAudioSink> sink_;
  std::unique_ptr<QBuffer> buffer_;
  std::unique_ptr<QTextToSpeech> voice_;
};

} // namespace netmend
