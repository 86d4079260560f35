#pragma once

#include <memory>

#include <QAudioSink>
#include <QBuffer>
#include <QObject>
#include <QTextToSpeech>

#include "speaker.h"

namespace netmend {

/// By way of Qt Multimedia and Qt TextToSpeech.
class QtSpeaker : public QObject, public Speaker {
  Q_OBJECT
  Q_PLUGIN_METADATA(IID "org.netmend.Speaker/2")
  Q_INTERFACES(netmend::Speaker)

public:
  void openTones() override;
  void openSpeech() override;
  void close() override;
  void play(Tone tone) override;
  void say(const QString& text) override;

private:
  std::unique_ptr<QBuffer> buffer_;
  std::unique_ptr<QAudioSink> sink_; ///< reads the buffer, so it goes first
  std::unique_ptr<QTextToSpeech> voice_;
};

} // namespace netmend
