#pragma once

#include <soci/soci.h>

namespace netmend {

/// Takes the write lock at once (a transaction that only becomes a writer later can fail as stale),
/// and rolls back unless committed.
class WriteTransaction {
public:
  explicit WriteTransaction(soci::session& sql) : sql_(sql) { sql_ << "begin immediate"; }
  WriteTransaction(const WriteTransaction&) = delete;
  WriteTransaction& operator=(const WriteTransaction&) = delete;
  ~WriteTransaction() {
    if (open_) {
      try {
        sql_ << "rollback";
      } catch (const soci::soci_error&) {
        // SQLite has already rolled back on its own after a full disk or an i/o error.
        open_ = false;
      }
    }
  }
  void commit() {
    sql_ << "commit";
    open_ = false;
  }

private:
  soci::session& sql_;
  bool open_ = true;
};

} // namespace netmend
