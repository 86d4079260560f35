#include "migrations.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <soci/sqlite3/soci-sqlite3.h>
#include <unistd.h>

#include "judged_json.h"
#include "measure_json.h"
#include "netmend/probing/words.h"
#include "old_words.h"
#include "reading_words.h"

#include "transaction.h"

namespace netmend {

namespace {

/// Version n of the book is what the first n migrations make. Steps are never changed, only added.
/// Ids grow and are never used again (autoincrement), since readings and sheets refer to them.
struct Migration {
  std::string_view tables;
  void (*values)(soci::session&) = nullptr; ///< then, what words became values
  std::string_view leavings{};              ///< then, what nobody needs any more
};

/// What a reading was judged to be, from words into values.
void judgedFromWords(soci::session& sql) {
  struct Row {
    long long id = 0;
    std::string mode, verdict, expected;
  };
  std::vector<Row> rows;
  Row row;
  soci::statement all = (sql.prepare << "select id, mode, verdict, expected from reading", soci::into(row.id),
                         soci::into(row.mode), soci::into(row.verdict), soci::into(row.expected));
  all.execute();
  while (all.fetch())
    rows.push_back(row);
  for (const Row& old : rows) {
    const auto mode = readingModeFrom(old.mode);
    const std::string judged =
        judgedText(oldbook::judgedOf(old.verdict, old.expected, stored(mode, old.mode)));
    sql << "update reading set judged = :judged where id = :id", soci::use(judged), soci::use(old.id);
  }
}

/// What the checks of work steps want measured, from their words; and where the ends of jumpers are read.
void measuresFromWords(soci::session& sql) {
  struct Row {
    long long action = 0, position = 0;
    std::string text, expected, target, jumper;
    soci::indicator hasJumper = soci::i_null;
  };
  std::vector<Row> rows;
  Row row;
  soci::statement all =
      (sql.prepare << "select s.action, s.position, s.text, s.expected, a.target, a.jumper from work_step s "
                      "join repair_action a on a.id = s.action where s.is_check = 1",
       soci::into(row.action), soci::into(row.position), soci::into(row.text), soci::into(row.expected),
       soci::into(row.target), soci::into(row.jumper, row.hasJumper));
  all.execute();
  while (all.fetch())
    rows.push_back(row);
  for (const Row& old : rows) {
    const bool function = old.expected == oldbook::functionWorks;
    const auto ends = old.hasJumper == soci::i_ok ? oldbook::endsOf(old.jumper) : std::nullopt;
    const std::string measure =
        function ? "" : measureText(oldbook::measureOf({old.text, old.expected, old.target, ends}));
    const int isFunction = function ? 1 : 0;
    sql << "update work_step set measure = :measure, is_function = :function where action = :action and "
           "position = :position",
        soci::use(measure), soci::use(isFunction), soci::use(old.action), soci::use(old.position);
  }
  std::vector<std::pair<long long, std::string>> jumpers;
  long long id = 0;
  std::string jumper;
  soci::statement with = (sql.prepare << "select id, jumper from repair_action where jumper is not null",
                          soci::into(id), soci::into(jumper));
  with.execute();
  while (with.fetch())
    jumpers.emplace_back(id, oldbook::jumperWithPoints(jumper));
  for (const auto& [action, text] : jumpers)
    sql << "update repair_action set jumper = :jumper where id = :id", soci::use(text), soci::use(action);
}

constexpr std::array<Migration, 9> migrations{{{R"sql(
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
)sql"},
                                               {R"sql(
create table known_good_walk (
  id integer primary key autoincrement,
  board_uuid text not null,
  added integer not null,
  content text not null
) strict;
create index known_good_walk_of_board on known_good_walk(board_uuid);
)sql"},
                                               // One row. Job 0 is none.
                                               {R"sql(
create table left_open (
  one integer primary key check (one = 1),
  job integer not null, board_file text not null, station integer
) strict;
insert into left_open (one, job, board_file, station) values (1, 0, '', null);
)sql"},
                                               {R"sql(
alter table reading add column judged text not null default '';
alter table reading rename column explanation to remark;
)sql",
                                                judgedFromWords,
                                                R"sql(
alter table reading drop column verdict;
alter table reading drop column expected;
)sql"},
                                               {R"sql(
alter table work_step add column measure text not null default '';
alter table work_step add column is_function integer not null default 0;
)sql",
                                                measuresFromWords},
                                               {R"sql(
alter table suspect add column found text not null default '';
alter table repair_action add column because text not null default '';
alter table work_step add column read text not null default '';
alter table work_step add column otherwise text not null default '';
alter table work_step add column detail text not null default '';
)sql"},
                                               {R"sql(
alter table reading add column comes_and_goes integer not null default 0;
)sql"},
                                               {R"sql(
alter table event add column fact text not null default '';
)sql"},
                                               {R"sql(
alter table repair_action add column places text not null default '';
)sql"}}};

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

/// As it was, beside the book: `book.jobs.version-3`. One that is there already is older and stays.
void keepCopy(soci::session& sql, const std::filesystem::path& path, int version) {
  std::filesystem::path copy = path;
  copy += ".version-" + std::to_string(version);
  if (std::filesystem::exists(copy)) return;
  std::filesystem::path unfinished = copy;
  unfinished += "." + std::to_string(::getpid());
  std::filesystem::remove(unfinished);
  const std::string target = unfinished.string();
  sql << "vacuum into :target", soci::use(target);
  std::filesystem::rename(unfinished, copy);
}

void takeStep(soci::session& sql, const Migration& step) {
  execute(sql, step.tables);
  if (step.values != nullptr) step.values(sql);
  execute(sql, step.leavings);
}

} // namespace

Result<void> refuseNewer(soci::session& sql, const std::filesystem::path& path) {
  const int version = versionOf(sql);
  if (version <= static_cast<int>(migrations.size())) return {};
  return failure({pattern("core", "job book was written by a newer Netmend"), path.string(), "",
                  said(pattern("core", "version {}"), version),
                  said(pattern("core", "at most version {}"), migrations.size())});
}

Result<void> migrate(soci::session& sql) {
  // Under the write lock, so that two programs that open a new book do not both make it.
  WriteTransaction transaction(sql);
  const int version = versionOf(sql);
  if (version >= static_cast<int>(migrations.size())) return {};
  for (std::size_t i = static_cast<std::size_t>(version); i < migrations.size(); ++i)
    takeStep(sql, migrations[i]);
  sql << "pragma user_version = " + std::to_string(migrations.size());
  transaction.commit();
  return {};
}

Result<void> migrate(soci::session& sql, const std::filesystem::path& path) {
  if (auto known = refuseNewer(sql, path); !known) return known;
  if (const int found = versionOf(sql); found > 0 && isOlder(sql)) keepCopy(sql, path, found);
  return migrate(sql);
}

bool isOlder(soci::session& sql) {
  return versionOf(sql) < static_cast<int>(migrations.size());
}

std::unique_ptr<soci::session> inMemory(soci::session& sql) {
  auto memory = std::make_unique<soci::session>(soci::sqlite3, "dbname=:memory:");
  const auto handle = [](soci::session& of) {
    return static_cast<soci::sqlite3_session_backend*>(of.get_backend())
        ->conn_; // NOLINT(*-static-cast-downcast)
  };
  auto* backup = sqlite_api::sqlite3_backup_init(handle(*memory), "main", handle(sql), "main");
  const int done = backup == nullptr ? SQLITE_ERROR : sqlite_api::sqlite3_backup_step(backup, -1);
  if (backup != nullptr) sqlite_api::sqlite3_backup_finish(backup);
  if (done != SQLITE_DONE) throw soci::soci_error("the book cannot be read to its end");
  return memory;
}

} // namespace netmend
