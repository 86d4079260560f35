#include "netmend/base/digest.h"

#include <array>
#include <stdexcept>

#include <fmt/format.h>
#include <openssl/evp.h>

namespace netmend {

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, 32> digest{};
  unsigned size = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) != 1 ||
      size != digest.size())
    throw std::runtime_error("SHA-256 is not to be had");
  std::string out;
  for (const unsigned char byte : digest)
    out += fmt::format("{:02x}", byte);
  return out;
}

} // namespace netmend
