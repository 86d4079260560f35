#include "netmend/bench/meter/simulated_meter.h"

#include <algorithm>
#include <stdexcept>

#include <QHostAddress>
#include <QTcpServer>
#include <QTcpSocket>
#include <QTimer>
#include <fmt/format.h>

#include "simulated_talk.h"

namespace netmend {

struct SimulatedMeter::Inside {
  struct Socket {
    std::unique_ptr<QTcpSocket> wire;
    std::unique_ptr<SimulatedTalk> talk;
  };
  struct Terminal {
    std::unique_ptr<SimulatedTerminal> wire;
    std::unique_ptr<SimulatedTalk> talk;
    /// Of a terminal on which lines are sent; none: SCPI is spoken.
    std::function<std::string(MeterFunction, std::optional<double>)> line;
    std::string lineEnd;
  };

  Inside(const Options& given, std::uint16_t wantedPort)
      : options(given), bench(given), scpi(bench, given.knowsConf), port(wantedPort) {
    QObject::connect(&server, &QTcpServer::newConnection, &server, [this] { accept(); });
    QObject::connect(&away, &QTimer::timeout, &away, [this] { comeBack(); });
    QObject::connect(&sending, &QTimer::timeout, &sending, [this] { sendLines(); });
    QObject::connect(&playing, &QTimer::timeout, &playing, [this] { playNext(); });
    for (QTimer* timer : {&away, &playing})
      timer->setSingleShot(true);
    listen();
  }

  void listen() {
    if (!server.listen(QHostAddress::LocalHost, port))
      throw std::runtime_error("the practice meter cannot listen: " + server.errorString().toStdString());
    port = server.serverPort();
  }

  void accept() {
    while (QTcpSocket* next = server.nextPendingConnection()) {
      next->setParent(nullptr);
      auto& socket = sockets.emplace_back();
      socket.wire.reset(next);
      next->setSocketOption(QAbstractSocket::LowDelayOption, 1);
      socket.talk = std::make_unique<SimulatedTalk>(scpi, options, [next](const std::string& bytes) {
        next->write(bytes.data(), static_cast<qint64>(bytes.size()));
        next->flush();
      });
      auto* talk = socket.talk.get();
      QObject::connect(next, &QTcpSocket::readyRead, next, [this, next, talk] {
        const QByteArray bytes = next->readAll();
        if (!deaf) talk->hear({bytes.constData(), static_cast<std::size_t>(bytes.size())});
      });
      ++accepted;
    }
    forgetClosed();
  }

  void forgetClosed() {
    std::erase_if(sockets, [](const Socket& socket) {
      return socket.wire->state() == QAbstractSocket::UnconnectedState;
    });
  }

  Result<std::string> openTerminal(Terminal terminal) {
    auto wire = SimulatedTerminal::make();
    if (!wire) return failure(wire.error());
    terminal.wire = std::move(*wire);
    auto* end = terminal.wire.get();
    terminal.talk = std::make_unique<SimulatedTalk>(scpi, options,
                                                    [end](const std::string& bytes) { end->write(bytes); });
    if (!terminal.line) {
      end->heard = [this, talk = terminal.talk.get()](std::string_view bytes) {
        if (!deaf) talk->hear(bytes);
      };
    }
    terminals.push_back(std::move(terminal));
    return end->name();
  }

  void sendLines() {
    if (deaf) return;
    const auto value = bench.value();
    for (const auto& terminal : terminals)
      if (terminal.line) terminal.talk->say(terminal.line(bench.function, value) + terminal.lineEnd);
  }

  void drop(std::chrono::milliseconds time) {
    for (auto& socket : sockets) {
      // Its own signal may have called us.
      socket.talk.reset();
      socket.wire->disconnect();
      socket.wire->abort();
      socket.wire.release()->deleteLater();
    }
    sockets.clear();
    for (const auto& terminal : terminals)
      terminal.wire->close();
    if (time > std::chrono::milliseconds::zero()) server.close();
    away.start(time);
  }

  void comeBack() {
    if (!server.isListening()) listen();
    for (const auto& terminal : terminals)
      if (const auto opened = terminal.wire->open(); !opened) throw std::runtime_error(opened.error().text());
  }

  void playNext() {
    if (touching) {
      bench.lift();
      touching = false;
      playing.start(script.front().lift);
      script.pop_front();
      return;
    }
    if (script.empty()) {
      if (const auto done = std::exchange(played, {})) done();
      return;
    }
    const auto& next = script.front();
    if (next.value)
      bench.touch(*next.value);
    else
      bench.lift();
    touching = true;
    playing.start(next.touch);
  }

  Options options;
  SimulatedBench bench;
  SimulatedScpi scpi;
  std::uint16_t port;
  QTcpServer server;
  std::vector<Socket> sockets;
  std::vector<Terminal> terminals;
  QTimer away;
  QTimer sending;
  QTimer playing;
  std::deque<SimulatedTouch> script;
  std::function<void()> played;
  bool touching = false;
  bool deaf = false;
  int accepted = 0;
};

SimulatedMeter::SimulatedMeter(const Options& options, std::uint16_t port)
    : inside_(std::make_unique<Inside>(options, port)) {}

SimulatedMeter::~SimulatedMeter() = default;

std::uint16_t SimulatedMeter::port() const {
  return inside_->port;
}

std::string SimulatedMeter::address() const {
  return fmt::format("tcp:127.0.0.1:{}", inside_->port);
}

Result<std::string> SimulatedMeter::openTerminal() {
  return inside_->openTerminal({});
}

Result<std::string>
SimulatedMeter::openLineTerminal(std::function<std::string(MeterFunction, std::optional<double>)> line,
                                 std::string lineEnd) {
  Inside::Terminal terminal;
  terminal.line = std::move(line);
  terminal.lineEnd = std::move(lineEnd);
  inside_->sending.start(inside_->options.reading);
  return inside_->openTerminal(std::move(terminal));
}

void SimulatedMeter::touch(double value) {
  inside_->bench.touch(value);
}

void SimulatedMeter::lift() {
  inside_->bench.lift();
}

void SimulatedMeter::touchCharging(double start, double perSecond) {
  inside_->bench.touch(start, perSecond);
}

void SimulatedMeter::play(std::vector<SimulatedTouch> touches, std::function<void()> done) {
  inside_->script.assign(touches.begin(), touches.end());
  inside_->played = std::move(done);
  inside_->touching = false;
  inside_->playNext();
}

void SimulatedMeter::setFunction(MeterFunction function) {
  inside_->bench.function = function;
}

MeterFunction SimulatedMeter::function() const {
  return inside_->bench.function;
}

void SimulatedMeter::refuseFunction(MeterFunction function) {
  inside_->scpi.refused = function;
}

void SimulatedMeter::dropLink(std::chrono::milliseconds away) {
  inside_->drop(away);
}

void SimulatedMeter::sendRubbish(std::string_view bytes) {
  for (const auto& socket : inside_->sockets)
    socket.talk->say(bytes);
  for (const auto& terminal : inside_->terminals)
    terminal.talk->say(bytes);
}

void SimulatedMeter::sendNaNOnce() {
  inside_->scpi.notANumberNext = true;
}

void SimulatedMeter::setDeaf(bool deaf) {
  inside_->deaf = deaf;
}

int SimulatedMeter::readsAnswered() const {
  return inside_->scpi.reads;
}

int SimulatedMeter::linksAccepted() const {
  return inside_->accepted;
}

} // namespace netmend
