#include "meter_link.h"

#include <algorithm>

#include <QSerialPort>
#include <QTcpSocket>
#include <fmt/format.h>

namespace netmend {

namespace {

/// Errors after which the port is of no use; others, as of a line that an adapter lacks, do no harm.
bool breaksLink(QSerialPort::SerialPortError error) {
  switch (error) {
  case QSerialPort::DeviceNotFoundError:
  case QSerialPort::PermissionError:
  case QSerialPort::OpenError:
  case QSerialPort::WriteError:
  case QSerialPort::ReadError:
  case QSerialPort::ResourceError:
  case QSerialPort::NotOpenError:
    return true;
  default:
    return false;
  }
}

/// A device that may be in the middle of telling us something.
void letGo(std::unique_ptr<QIODevice> device) {
  if (!device) return;
  device->disconnect();
  if (auto* socket = qobject_cast<QTcpSocket*>(device.get())) socket->abort();
  if (device->isOpen()) device->close();
  device.release()->deleteLater();
}

} // namespace

MeterLink::MeterLink(MeterAddress address, const SerialSettings& serial, const MeterTimes& times,
                     Handlers handlers)
    : address_(std::move(address)), serial_(serial), times_(times), handlers_(std::move(handlers)),
      pause_(times.retryFirst) {
  retry_.setSingleShot(true);
  connecting_.setSingleShot(true);
  QObject::connect(&retry_, &QTimer::timeout, &retry_, [this] { open(); });
  QObject::connect(&connecting_, &QTimer::timeout, &connecting_,
                   [this] { giveUp(netmend::pattern("core", "nobody answers there")); });
}

MeterLink::~MeterLink() {
  drop();
}

void MeterLink::open() {
  drop();
  if (const auto* tcp = std::get_if<TcpAddress>(&address_))
    openSocket(*tcp);
  else
    openPort(std::get<SerialAddress>(address_));
}

void MeterLink::openSocket(const TcpAddress& address) {
  auto owned = std::make_unique<QTcpSocket>();
  QTcpSocket* socket = owned.get();
  device_ = std::move(owned);
  QObject::connect(socket, &QTcpSocket::connected, socket, [this] { hasOpened(); });
  QObject::connect(socket, &QTcpSocket::readyRead, socket, [this] { readAll(); });
  QObject::connect(socket, &QTcpSocket::errorOccurred, socket,
                   [this, socket] { giveUp(socket->errorString().toStdString()); });
  QObject::connect(socket, &QTcpSocket::disconnected, socket,
                   [this] { giveUp(netmend::pattern("core", "it was closed")); });
  connecting_.start(times_.connect);
  socket->setSocketOption(QAbstractSocket::LowDelayOption, 1);
  socket->connectToHost(QString::fromStdString(address.host), address.port);
}

void MeterLink::openPort(const SerialAddress& address) {
  auto owned = std::make_unique<QSerialPort>(QString::fromStdString(address.device));
  QSerialPort* port = owned.get();
  device_ = std::move(owned);
  port->setBaudRate(serial_.baud);
  port->setDataBits(serial_.dataBits == 7 ? QSerialPort::Data7 : QSerialPort::Data8);
  port->setStopBits(serial_.stopBits == 2 ? QSerialPort::TwoStop : QSerialPort::OneStop);
  port->setParity(serial_.parity == Parity::even  ? QSerialPort::EvenParity
                  : serial_.parity == Parity::odd ? QSerialPort::OddParity
                                                  : QSerialPort::NoParity);
  port->setReadBufferSize(1 << 16);
  if (!port->open(QIODevice::ReadWrite)) {
    giveUp(port->errorString().toStdString());
    return;
  }
  QObject::connect(port, &QSerialPort::readyRead, port, [this] { readAll(); });
  QObject::connect(port, &QSerialPort::errorOccurred, port, [this, port](QSerialPort::SerialPortError error) {
    if (breaksLink(error)) giveUp(port->errorString().toStdString());
  });
  if (serial_.raisesDtr) port->setDataTerminalReady(true);
  if (device_.get() == port) hasOpened();
}

void MeterLink::hasOpened() {
  connecting_.stop();
  open_ = true;
  handlers_.opened();
}

void MeterLink::readAll() {
  const QByteArray bytes = device_->readAll();
  handlers_.bytes(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

void MeterLink::send(std::string_view bytes) {
  if (!device_ || !open_) return;
  device_->write(bytes.data(), static_cast<qint64>(bytes.size()));
  // On the wire now, and not when the event loop comes round to it.
  if (auto* socket = qobject_cast<QTcpSocket*>(device_.get()))
    socket->flush();
  else if (auto* port = qobject_cast<QSerialPort*>(device_.get()))
    port->flush();
}

void MeterLink::giveUp(const Said& why) {
  const bool was = open_;
  drop();
  retry_.start(pause_);
  const auto seconds = fmt::format("{:.2g}", std::chrono::duration<double>(pause_).count());
  handlers_.lost(said(was ? netmend::pattern("core", "lost the link to {}: {}; next try in {} s")
                          : netmend::pattern("core", "no link to {}: {}; next try in {} s"),
                      name(), why, seconds));
  pause_ = std::min(2 * pause_, times_.retryMost);
}

void MeterLink::drop() {
  open_ = false;
  retry_.stop();
  connecting_.stop();
  letGo(std::move(device_));
}

void MeterLink::close() {
  drop();
}

} // namespace netmend
