#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

#include "netmend/base/error.h"

namespace netmend {

/// A meter that speaks SCPI over a socket.
struct TcpAddress {
  std::string host;
  std::uint16_t port = 5025; ///< the port registered for SCPI over a plain socket
  friend bool operator==(const TcpAddress&, const TcpAddress&) = default;
};

/// A meter at a serial port.
struct SerialAddress {
  std::string device;
  std::string pattern; ///< id of the line pattern it sends by; empty: it speaks SCPI
  int baud = 0;        ///< 0: the pattern's, or 9600 for SCPI
  friend bool operator==(const SerialAddress&, const SerialAddress&) = default;
};

using MeterAddress = std::variant<TcpAddress, SerialAddress>;

/// Reads `tcp:HOST`, `tcp:HOST:PORT`, `tcp:[::1]:PORT`, `serial:/dev/NAME` (SCPI),
/// `serial:/dev/NAME:PATTERN`, each serial one with `@BAUD` behind if it is not the usual. A pattern's id
/// begins with a letter and holds small letters, digits and dashes. Errors say what was found and what is
/// expected.
[[nodiscard]] Result<MeterAddress> parseMeterAddress(std::string_view text);
/// The same text again.
[[nodiscard]] std::string addressText(const MeterAddress& address);

} // namespace netmend
