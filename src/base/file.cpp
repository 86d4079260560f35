#include "netmend/base/file.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

namespace netmend {

namespace fs = std::filesystem;

namespace {

tl::unexpected<Error> systemFailure(const fs::path& path, const char* what) {
  return failure({std::string(what) + ": " + std::strerror(errno), path.string()});
}

/// Closes the descriptor on every way out.
struct Descriptor {
  int fd;
  explicit Descriptor(int value) : fd(value) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd >= 0) ::close(fd);
  }
};

bool writeAll(int fd, std::string_view content) {
  while (!content.empty()) {
    const ssize_t n = ::write(fd, content.data(), content.size());
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    content.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

} // namespace

Result<std::string> readFile(const fs::path& path, std::uintmax_t limit) {
  std::error_code ec;
  const auto status = fs::status(path, ec);
  if (ec || !fs::exists(status)) return failure({pattern("core", "no such file"), path.string()});
  if (!fs::is_regular_file(status)) return failure({pattern("core", "is not a regular file"), path.string()});
  const auto size = fs::file_size(path, ec);
  if (ec) return failure({said(pattern("core", "cannot be read: {}"), ec.message()), path.string()});
  if (size > limit) {
    return failure({pattern("core", "file is too large"), path.string(), "",
                    said(pattern("core", "{} bytes"), size),
                    said(pattern("core", "at most {} bytes"), limit)});
  }
  std::ifstream in(path, std::ios::binary);
  if (!in) return systemFailure(path, "cannot be opened");
  std::string content(size, '\0');
  in.read(content.data(), static_cast<std::streamsize>(size));
  content.resize(static_cast<std::size_t>(in.gcount()));
  if (in.bad()) return systemFailure(path, "cannot be read");
  return content;
}

Result<void> writeFileAtomically(const fs::path& path, std::string_view content) {
  std::string temporary = path.string() + ".XXXXXX";
  {
    const Descriptor file(::mkstemp(temporary.data()));
    if (file.fd < 0) return systemFailure(path, "cannot be written");
    if (::fchmod(file.fd, 0644) != 0 || !writeAll(file.fd, content) || ::fsync(file.fd) != 0) {
      auto error = systemFailure(path, "cannot be written");
      ::unlink(temporary.c_str());
      return error;
    }
  }
  if (::rename(temporary.c_str(), path.c_str()) != 0) {
    auto error = systemFailure(path, "cannot be replaced");
    ::unlink(temporary.c_str());
    return error;
  }
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  const Descriptor dir(::open(folder.c_str(), O_RDONLY | O_DIRECTORY));
  if (dir.fd >= 0) ::fsync(dir.fd);
  return {};
}

} // namespace netmend
