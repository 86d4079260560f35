#pragma once

#include <memory>

#include <spdlog/logger.h>

namespace netmend {

/// A logger that writes to standard error. The caller owns it and hands it on: there is no global one.
[[nodiscard]] std::shared_ptr<spdlog::logger> makeLogger(bool verbose);

} // namespace netmend
