#pragma once

#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <zip.h>

namespace netmend::test {

struct ZipEntry {
  std::string name;
  std::string content;
  bool encrypted = false;
};

/// A ZIP archive in memory.
inline std::string zipped(const std::vector<ZipEntry>& entries) {
  zip_source_t* source = zip_source_buffer_create(nullptr, 0, 0, nullptr);
  zip_source_keep(source);
  zip_t* archive = zip_open_from_source(source, ZIP_TRUNCATE, nullptr);
  REQUIRE(archive != nullptr);
  for (const ZipEntry& entry : entries) {
    const auto added = zip_file_add(archive, entry.name.c_str(),
                                    zip_source_buffer(archive, entry.content.data(), entry.content.size(), 0),
                                    ZIP_FL_ENC_UTF_8);
    REQUIRE(added >= 0);
    if (entry.encrypted)
      REQUIRE(zip_file_set_encryption(archive, static_cast<zip_uint64_t>(added), ZIP_EM_AES_256, "secret") ==
              0);
  }
  REQUIRE(zip_close(archive) == 0);
  zip_stat_t size;
  REQUIRE(zip_source_stat(source, &size) == 0);
  std::string out(size.size, '\0');
  REQUIRE(zip_source_open(source) == 0);
  REQUIRE(zip_source_read(source, out.data(), out.size()) == static_cast<zip_int64_t>(out.size()));
  zip_source_close(source);
  zip_source_free(source);
  return out;
}

} // namespace netmend::test
