#include "netmend/meter/meter_address.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include <fmt/format.h>

#include "line_framer.h"

namespace netmend {

namespace {

constexpr std::uint16_t scpiPort = 5025;

tl::unexpected<Error> wrongAddress(Said message, std::string_view found, Said expected) {
  return failure({std::move(message), "", "", fmt::format("\"{}\"", printable(found)), std::move(expected)});
}

std::optional<int> wholeNumber(std::string_view text, int least, int most) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc() || end != text.data() + text.size() || number < least || number > most)
    return std::nullopt;
  return number;
}

bool isPatternId(std::string_view text) {
  if (text.empty() || text.front() < 'a' || text.front() > 'z') return false;
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

Result<MeterAddress> parseTcp(std::string_view text) {
  TcpAddress address;
  std::string_view port;
  if (text.starts_with('[')) {
    const auto close = text.find(']');
    if (close == std::string_view::npos)
      return wrongAddress(pattern("core", "a bracket is not closed"), text, asItIs("[::1]:5025"));
    address.host = text.substr(1, close - 1);
    text.remove_prefix(close + 1);
    if (!text.empty() && text.front() != ':')
      return wrongAddress(pattern("core", "unknown text behind a host"), text, asItIs(":PORT"));
    port = text;
  } else {
    const auto colon = text.find(':');
    address.host = text.substr(0, colon);
    if (colon != std::string_view::npos) port = text.substr(colon);
  }
  if (address.host.empty() || address.host.find_first_of(" \t/@") != std::string::npos)
    return wrongAddress(pattern("core", "not the name or address of a host"), address.host,
                        pattern("core", "tcp:HOST or tcp:HOST:PORT"));
  if (port.empty()) return address;
  const auto number = wholeNumber(port.substr(1), 1, 65535);
  if (!number)
    return wrongAddress(pattern("core", "not a port"), port.substr(1), pattern("core", "1 to 65535"));
  address.port = static_cast<std::uint16_t>(*number);
  return address;
}

Result<MeterAddress> parseSerial(std::string_view text) {
  SerialAddress address;
  if (const auto at = text.rfind('@'); at != std::string_view::npos) {
    const auto baud = wholeNumber(text.substr(at + 1), 50, 4'000'000);
    if (!baud)
      return wrongAddress(pattern("core", "not a baud rate"), text.substr(at + 1),
                          pattern("core", "50 to 4000000"));
    address.baud = *baud;
    text = text.substr(0, at);
  }
  // Names of devices may hold colons themselves; what follows them there begins with a digit.
  if (const auto colon = text.rfind(':'); colon != std::string_view::npos) {
    const auto behind = text.substr(colon + 1);
    if (isPatternId(behind)) {
      address.pattern = behind;
      text = text.substr(0, colon);
    } else if (behind.empty() || behind.front() < '0' || behind.front() > '9') {
      return wrongAddress(pattern("core", "not the id of a line pattern"), behind,
                          pattern("core", "small letters, digits and dashes"));
    }
  }
  if (!text.starts_with('/') || text.size() < 2)
    return wrongAddress(pattern("core", "not a serial port"), text,
                        pattern("core", "serial:/dev/NAME, :PATTERN and @BAUD behind if need be"));
  address.device = text;
  return address;
}

} // namespace

Result<MeterAddress> parseMeterAddress(std::string_view text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x20 && byte != 0x7F;
  });
  if (!plain || text.size() > 1024)
    return wrongAddress(pattern("core", "not the address of a meter"), text,
                        pattern("core", "one short line"));
  if (text.starts_with("tcp:")) return parseTcp(text.substr(4));
  if (text.starts_with("serial:")) return parseSerial(text.substr(7));
  return wrongAddress(pattern("core", "not the address of a meter"), text,
                      pattern("core", "tcp:HOST:PORT, serial:/dev/NAME or serial:/dev/NAME:PATTERN"));
}

std::string addressText(const MeterAddress& address) {
  if (const auto* tcp = std::get_if<TcpAddress>(&address)) {
    const bool colons = tcp->host.find(':') != std::string::npos;
    return fmt::format("tcp:{}{}", colons ? "[" + tcp->host + "]" : tcp->host,
                       tcp->port == scpiPort ? "" : fmt::format(":{}", tcp->port));
  }
  const auto& serial = std::get<SerialAddress>(address);
  return fmt::format("serial:{}{}{}", serial.device, serial.pattern.empty() ? "" : ":" + serial.pattern,
                     serial.baud == 0 ? "" : fmt::format("@{}", serial.baud));
}

} // namespace netmend
