#include "qt_speaker.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QAudioFormat>
#include <QMediaDevices>

namespace netmend {

namespace {

constexpr int sampleRate = 44100;

QAudioFormat format() {
  QAudioFormat out;
  out.setSampleRate(sampleRate);
  out.setChannelCount(1);
  out.setSampleFormat(QAudioFormat::Int16);
  return out;
}

/// Fades in and out, so that it does not click.
void addTone(QByteArray& samples, double hertz, double seconds) {
  const int count = static_cast<int>(seconds * sampleRate);
  constexpr double fade = 0.008 * sampleRate;
  constexpr double loudness = 9000.0;
  for (int i = 0; i < count; ++i) {
    const double edge = std::min({1.0, i / fade, (count - i) / fade});
    const double value = hertz > 0 ? std::sin(2.0 * std::numbers::pi * hertz * i / sampleRate) : 0.0;
    const auto sample = static_cast<qint16>(loudness * edge * value);
    samples.append(static_cast<char>(sample & 0xFF));
    samples.append(static_cast<char>((sample >> 8) & 0xFF));
  }
}

QByteArray samplesOf(Tone tone) {
  QByteArray out;
  switch (tone) {
  case Tone::inRange:
    addTone(out, 1320, 0.06);
    break;
  case Tone::odd:
    addTone(out, 330, 0.12);
    addTone(out, 0, 0.06);
    addTone(out, 262, 0.18);
    break;
  case Tone::refused:
    for (const double hertz : {523.0, 784.0, 523.0}) {
      addTone(out, hertz, 0.07);
      addTone(out, 0, 0.03);
    }
    break;
  }
  return out;
}

} // namespace

void QtSpeaker::openTones() {
  if (sink_) return;
  const QAudioDevice device = QMediaDevices::defaultAudioOutput();
  if (device.isNull() || !device.isFormatSupported(format())) return;
  sink_ = std::make_unique<QAudioSink>(device, format());
}

void QtSpeaker::openSpeech() {
  if (!voice_ && !QTextToSpeech::availableEngines().isEmpty()) voice_ = std::make_unique<QTextToSpeech>();
}

void QtSpeaker::close() {
  voice_.reset();
  sink_.reset();
  buffer_.reset();
}

void QtSpeaker::play(Tone tone) {
  if (!sink_) return;
  sink_->stop();
  buffer_ = std::make_unique<QBuffer>();
  buffer_->setData(samplesOf(tone));
  buffer_->open(QIODevice::ReadOnly);
  sink_->start(buffer_.get());
}

void QtSpeaker::say(const QString& text) {
  if (!voice_ || voice_->state() == QTextToSpeech::Error) return;
  voice_->stop();
  voice_->say(text);
}

} // namespace netmend
