#include "simulated_talk.h"

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <pty.h>
#include <termios.h>
#include <unistd.h>

namespace netmend {

SimulatedTalk::SimulatedTalk(SimulatedScpi& scpi, const SimulatedMeterOptions& options,
                             std::function<void(const std::string&)> write)
    : scpi_(&scpi), options_(options), write_(std::move(write)), dice_(options.seed) {
  measuring_.setSingleShot(true);
  measuring_.setTimerType(Qt::PreciseTimer);
  fragments_.setTimerType(Qt::PreciseTimer);
  QObject::connect(&measuring_, &QTimer::timeout, &measuring_, [this] {
    say(scpi_->answer(commands_.front()) + "\n");
    commands_.pop_front();
    answerNext();
  });
  QObject::connect(&fragments_, &QTimer::timeout, &fragments_, [this] { sayFragment(); });
}

void SimulatedTalk::hear(std::string_view bytes) {
  for (auto& line : framer_.add(bytes))
    if (line) commands_.push_back(std::move(*line));
  if (!measuring_.isActive()) answerNext();
}

void SimulatedTalk::answerNext() {
  while (!commands_.empty()) {
    if (commands_.front() == "READ?") {
      measuring_.start(options_.reading);
      return;
    }
    if (commands_.front().ends_with('?') && scpi_->late > std::chrono::milliseconds::zero()) {
      measuring_.start(std::exchange(scpi_->late, {}));
      return;
    }
    const auto answer = scpi_->answer(commands_.front());
    commands_.pop_front();
    if (!answer.empty()) say(answer + "\n");
  }
}

void SimulatedTalk::say(std::string_view bytes) {
  if (!options_.fragments) {
    write_(std::string(bytes));
    return;
  }
  unsaid_ += bytes;
  if (!fragments_.isActive()) fragments_.start(1);
}

void SimulatedTalk::sayFragment() {
  const auto size = std::uniform_int_distribution<std::size_t>(1, 5)(dice_);
  const std::string part = unsaid_.substr(0, size);
  unsaid_.erase(0, part.size());
  if (unsaid_.empty()) fragments_.stop();
  write_(part);
}

Result<std::unique_ptr<SimulatedTerminal>> SimulatedTerminal::make() {
  std::string folder = (std::filesystem::temp_directory_path() / "netmend-meter-XXXXXX").string();
  if (::mkdtemp(folder.data()) == nullptr)
    return failure({pattern("core", "no temporary folder can be made"), folder});
  std::unique_ptr<SimulatedTerminal> terminal(new SimulatedTerminal);
  terminal->folder_ = folder;
  if (const auto opened = terminal->open(); !opened) return failure(opened.error());
  return terminal;
}

SimulatedTerminal::~SimulatedTerminal() {
  close();
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

Result<void> SimulatedTerminal::open() {
  close();
  std::array<char, 256> name{};
  termios raw{};
  ::cfmakeraw(&raw);
  if (::openpty(&meterEnd_, &otherEnd_, name.data(), &raw, nullptr) != 0)
    return failure({said(pattern("core", "no pseudo-terminal: {}"), std::strerror(errno))});
  ::fcntl(meterEnd_, F_SETFL, O_NONBLOCK);
  std::error_code error;
  std::filesystem::remove(this->name(), error);
  std::filesystem::create_symlink(name.data(), this->name(), error);
  if (error)
    return failure({said(pattern("core", "no name can be given to the pseudo-terminal: {}"), error.message()),
                    this->name()});
  notifier_ = std::make_unique<QSocketNotifier>(meterEnd_, QSocketNotifier::Read);
  QObject::connect(notifier_.get(), &QSocketNotifier::activated, notifier_.get(), [this] { readAll(); });
  return {};
}

void SimulatedTerminal::close() {
  notifier_.reset();
  for (int* end : {&meterEnd_, &otherEnd_}) {
    if (*end >= 0) ::close(*end);
    *end = -1;
  }
}

void SimulatedTerminal::write(const std::string& bytes) const {
  // What does not fit is lost, as on a wire without handshake.
  if (meterEnd_ >= 0 && ::write(meterEnd_, bytes.data(), bytes.size()) < 0) return;
}

void SimulatedTerminal::readAll() const {
  std::array<char, 4096> bytes{};
  const auto n = ::read(meterEnd_, bytes.data(), bytes.size());
  if (n > 0 && heard) heard(std::string_view(bytes.data(), static_cast<std::size_t>(n)));
}

} // namespace netmend
