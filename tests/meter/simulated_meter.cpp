#include "simulated_meter.h"

#include <algorithm>
#include <stdexcept>

#include <QHostAddress>
#include <QTcpServer>
#include <QTcpSocket>
#include <QTimer>
#include <fmt/format.h>

#include "meter/own_thread.h"
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
    away.setSingleShot(true);
    bench.measured = [this] { playOn(); };
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

  /// The step of the script that is under way: a pin that is touched, or the lift after it.
  struct Step {
    std::optional<double> value;
    std::chrono::milliseconds time;
    std::size_t values;
  };

  void play(const std::vector<SimulatedTouch>& touches) {
    script.clear();
    for (const auto& touch : touches) {
      script.push_back({touch.value, touch.touch, 6});
      script.push_back({std::nullopt, touch.lift, 2});
    }
    beginStep();
  }

  void beginStep() {
    measured = 0;
    if (script.empty()) {
      if (const auto done = std::exchange(played, {})) done();
    } else if (script.front().value) {
      bench.touch(*script.front().value);
    } else {
      bench.lift();
    }
  }

  /// A value was measured.
  void playOn() {
    if (script.empty()) return;
    const auto now = std::chrono::steady_clock::now();
    if (measured++ == 0) stepBegan = now;
    if (measured < script.front().values || now - stepBegan < script.front().time) return;
    script.pop_front();
    beginStep();
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
  std::deque<Step> script;
  std::size_t measured = 0; ///< values of the step under way
  std::chrono::steady_clock::time_point stepBegan;
  std::function<void()> played;
  bool deaf = false;
  int accepted = 0;
};

SimulatedMeter::SimulatedMeter(const Options& options, std::uint16_t port)
    : thread_(std::make_unique<OwnThread>()) {
  thread_->call([&] { inside_ = std::make_unique<Inside>(options, port); });
}

SimulatedMeter::~SimulatedMeter() {
  thread_->call([this] { inside_.reset(); });
}

std::uint16_t SimulatedMeter::port() const {
  return inside_->port; // never changes
}

std::string SimulatedMeter::address() const {
  return fmt::format("tcp:127.0.0.1:{}", inside_->port);
}

Result<std::string> SimulatedMeter::openTerminal() {
  Result<std::string> name;
  thread_->call([&] { name = inside_->openTerminal({}); });
  return name;
}

Result<std::string>
SimulatedMeter::openLineTerminal(std::function<std::string(MeterFunction, std::optional<double>)> line,
                                 std::string lineEnd) {
  Inside::Terminal terminal;
  terminal.line = std::move(line);
  terminal.lineEnd = std::move(lineEnd);
  Result<std::string> name;
  thread_->call([&] {
    inside_->sending.start(inside_->options.reading);
    name = inside_->openTerminal(std::move(terminal));
  });
  return name;
}

void SimulatedMeter::touch(double value) {
  thread_->call([&] { inside_->bench.touch(value); });
}

void SimulatedMeter::lift() {
  thread_->call([&] { inside_->bench.lift(); });
}

void SimulatedMeter::touchCharging(double start, double perSecond) {
  thread_->call([&] { inside_->bench.touch(start, perSecond); });
}

void SimulatedMeter::play(const std::vector<SimulatedTouch>& touches, std::function<void()> done) {
  thread_->call([&] {
    inside_->played = [thread = thread_.get(), done = std::move(done)] {
      if (done) thread->hand(done);
    };
    inside_->play(touches);
  });
}

void SimulatedMeter::setFunction(MeterFunction function) {
  thread_->call([&] { inside_->bench.function = function; });
}

MeterFunction SimulatedMeter::function() const {
  MeterFunction out{};
  thread_->call([&] { out = inside_->bench.function; });
  return out;
}

void SimulatedMeter::refuseFunction(MeterFunction function) {
  thread_->call([&] { inside_->scpi.refused = function; });
}

void SimulatedMeter::dropLink(std::chrono::milliseconds away) {
  thread_->call([&] { inside_->drop(away); });
}

void SimulatedMeter::sendRubbish(std::string_view bytes) {
  thread_->call([&] {
    for (const auto& socket : inside_->sockets)
      socket.talk->say(bytes);
    for (const auto& terminal : inside_->terminals)
      terminal.talk->say(bytes);
  });
}

void SimulatedMeter::sendNaNOnce() {
  thread_->call([&] { inside_->scpi.notANumberNext = true; });
}

void SimulatedMeter::setDeaf(bool deaf) {
  thread_->call([&] { inside_->deaf = deaf; });
}

void SimulatedMeter::answerLate(std::chrono::milliseconds by) {
  thread_->call([&] { inside_->scpi.late = by; });
}

int SimulatedMeter::readsAnswered() const {
  int out{};
  thread_->call([&] { out = inside_->scpi.reads; });
  return out;
}

int SimulatedMeter::linksAccepted() const {
  int out{};
  thread_->call([&] { out = inside_->accepted; });
  return out;
}

} // namespace netmend
