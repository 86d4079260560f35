#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

#include <QIODevice>
#include <QObject>
#include <QTimer>

#include "netmend/meter/line_pattern.h"
#include "netmend/meter/linked_meter_source.h"
#include "netmend/meter/meter_address.h"

namespace netmend {

/// The clock of samples.
[[nodiscard]] inline std::chrono::milliseconds meterNow() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
      std::chrono::steady_clock::now().time_since_epoch());
}

/// How a serial port is set.
struct SerialSettings {
  int baud = 9600;
  int dataBits = 8;
  int stopBits = 1;
  Parity parity = Parity::none;
  bool raisesDtr = true;
};

/// The wire to a meter: opens it, and again whenever it is lost, with growing pauses. Never waits.
class MeterLink {
public:
  struct Handlers {
    std::function<void()> opened;
    std::function<void(std::string_view)> bytes;
    std::function<void(const Said&)> lost; ///< what happened; once a loss or failed try
  };

  MeterLink(MeterAddress address, const SerialSettings& serial, const MeterTimes& times, Handlers handlers);
  ~MeterLink();
  MeterLink(const MeterLink&) = delete;
  MeterLink& operator=(const MeterLink&) = delete;

  void open();
  void close();
  void send(std::string_view bytes);
  /// Whoever is at the other end is of no use: treated as a loss.
  void giveUp(const Said& why);
  /// The right one is at the other end: after a loss the first pause is short again.
  void proven() { pause_ = times_.retryFirst; }
  [[nodiscard]] bool isOpen() const { return open_; }
  [[nodiscard]] std::string name() const { return addressText(address_); }

private:
  void openSocket(const TcpAddress& address);
  void openPort(const SerialAddress& address);
  void hasOpened();
  void readAll();
  void drop();

  MeterAddress address_;
  SerialSettings serial_;
  MeterTimes times_;
  Handlers handlers_;
  std::unique_ptr<QIODevice> device_;
  std::chrono::milliseconds pause_;
  bool open_ = false;
  QTimer retry_;
  QTimer connecting_;
};

} // namespace netmend
