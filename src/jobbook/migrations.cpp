#include "migrations.h"

#include <array>
#include <string>
#include <string_view>

#include "transaction.h"

namespace netmend {

namespace {

/// Version n of the book is what the first n migrations make. Steps are never changed, only added.
/// Ids grow and are never used again (autoincrement), since readings and sheets refer to them.
constexpr std::array<std::string_view, 3> migrations{
    R"sql(
create table job (
  id integer primary key autoincrement,
  number text not null unique,
  created integer not null,
  customer text not null, customer_reference text not null,
  device text not null, serial text not null,
  symptom text not null, history text not null, condition text not null,
  board_uuid text not null, board_name text not null, board_revision text not null,
  board_file text not null, board_digest text not null,
  state text not null, currency text not null, internal_notes text not null
) strict;
create table reading (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  purpose text not null,
  pin integer not null, label text not null, other_pin integer not null, other_label text not null,
  mode text not null, value real, settling text not null, time integer not null,
  meter text not null, taken_by text not null,
  plugged text not null, powered integer not null, lifted text not null, temperature real, handling text not null,
  injected real,
  verdict text not null, expected text not null, explanation text not null
) strict;
create index reading_of_job on reading(job);
create table suspect (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  what text not null, probability real not null, explanation text not null,
  x integer, y integer, way text not null
) strict;
create index suspect_of_job on suspect(job);
create table repair_action (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  kind text not null, target text not null, reason text not null, jumper text
) strict;
create index repair_action_of_job on repair_action(job);
create table work_step (
  action integer not null references repair_action(id) on delete cascade,
  position integer not null,
  text text not null, is_check integer not null, expected text not null, done integer not null, note text not null,
  primary key (action, position)
) strict;
create table proof (
  action integer not null references repair_action(id) on delete cascade,
  reading integer not null references reading(id) on delete cascade,
  primary key (action, reading)
) strict;
create table photo (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  caption text not null, media_type text not null, bytes blob not null
) strict;
create table charge (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  what text not null, quantity integer not null, price integer not null
) strict;
create table event (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  time integer not null, what text not null
) strict;
create index event_of_job on event(job);
)sql",
    R"sql(
create table known_good_walk (
  id integer primary key autoincrement,
  board_uuid text not null,
  added integer not null,
  content text not null
) strict;
create index known_good_walk_of_board on known_good_walk(board_uuid);
)sql",
    // One row. Job 0 is none.
    R"sql(
create table left_open (
  one integer primary key check (one = 1),
  job integer not null, board_file text not null, station integer
) strict;
insert into left_open (one, job, board_file, station) values (1, 0, '', null);
)sql"};

/// SOCI hands one statement at a time to SQLite. No step holds a semicolon inside a statement.
void execute(soci::session& sql, std::string_view script) {
  while (true) {
    const auto end = script.find(';');
    if (end == std::string_view::npos) return;
    sql << std::string(script.substr(0, end));
    script.remove_prefix(end + 1);
  }
}

int versionOf(soci::session& sql) {
  int version = 0;
  sql << "pragma user_version", soci::into(version);
  return version;
}

tl::unexpected<Error> otherVersion(int version, const char* message, const char* wanted,
                                   const std::filesystem::path& path) {
  return failure({message, path.string(), "", said(pattern("core", "version {}"), version),
                  wanted + std::to_string(migrations.size())});
}

tl::unexpected<Error> fromTheFuture(int version, const std::filesystem::path& path) {
  return otherVersion(version, "job book was written by a newer Netmend", "at most version ", path);
}

} // namespace

Result<void> checkVersion(soci::session& sql, const std::filesystem::path& path) {
  const int version = versionOf(sql);
  if (version > static_cast<int>(migrations.size())) return fromTheFuture(version, path);
  if (version < static_cast<int>(migrations.size()))
    return otherVersion(version,
                        "job book is of an older version, and cannot be brought up to date where it can only "
                        "be read; make a copy of it",
                        "version ", path);
  return {};
}

Result<void> migrate(soci::session& sql, const std::filesystem::path& path) {
  // Under the write lock, so that two programs that open a new book do not both make it.
  WriteTransaction transaction(sql);
  const int version = versionOf(sql);
  if (version > static_cast<int>(migrations.size())) return fromTheFuture(version, path);
  if (version == static_cast<int>(migrations.size())) return {};
  for (std::size_t i = static_cast<std::size_t>(version); i < migrations.size(); ++i)
    execute(sql, migrations[i]);
  sql << "pragma user_version = " + std::to_string(migrations.size());
  transaction.commit();
  return {};
}

} // namespace netmend
