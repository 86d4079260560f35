#include "netmend/base/log.h"

#include <spdlog/sinks/stdout_sinks.h>

namespace netmend {

std::shared_ptr<spdlog::logger> makeLogger(bool verbose) {
  auto logger =
      std::make_shared<spdlog::logger>("netmend", std::make_shared<spdlog::sinks::stderr_sink_mt>());
  logger->set_pattern("%l: %v");
  logger->set_level(verbose ? spdlog::level::debug : spdlog::level::warn);
  return logger;
}

} // namespace netmend
