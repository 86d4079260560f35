#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"

/// Board files inside a ZIP archive, as customers send them. Archives are read in memory: nothing is unpacked
/// to disk, and names inside are labels, never paths.
namespace netmend {

/// What is taken out of an archive at most: what one board file may hold, and a few of these.
struct ZipLimits {
  std::uint64_t entries = 10'000;
  std::uint64_t fileBytes = 128u << 20;
  std::uint64_t allBytes = 512u << 20;
};

/// A file in an archive that is a board by its content.
struct ZippedBoard {
  std::string name;        ///< with its folders; control characters become `?`
  std::string_view format; ///< name of the `BoardFormat`
  std::uint64_t bytes = 0;
};

struct ZipListing {
  std::vector<ZippedBoard> boards; ///< in the archive's order
  std::vector<Said> notices;       ///< what was left out and why, one line a kind
};

[[nodiscard]] bool looksLikeZip(std::string_view content);

/// The boards in an archive. Files are looked for by their extension and known by their content. What cannot
/// be read (encrypted, damaged, larger than it says or than the limits) is left out with a notice; an Error
/// when the archive is damaged, has more entries than the limit, or no board at all.
[[nodiscard]] Result<ZipListing> boardsInZip(std::string_view content, const std::string& file,
                                             const ZipLimits& limits = {});

struct ZippedFile {
  std::string name;
  std::string content;
};
/// The board of that name, or the only one when `name` is empty. A name without folders is enough where it
/// stands once. The Error for several boards lists them in `expected`.
[[nodiscard]] Result<ZippedFile> boardFileInZip(std::string_view content, const std::string& file,
                                                const std::string& name, const ZipLimits& limits = {});

} // namespace netmend
