#include "book_file.h"
#include "rows.h"

#include <algorithm>

#include "found_json.h"
#include "point_text.h"

namespace netmend {

long long lastInsertId(soci::session& sql) {
  long long id = 0;
  sql << "select last_insert_rowid()", soci::into(id);
  return id;
}

void insertSuspect(soci::session& sql, JobId job, const JobSuspect& suspect) {
  const auto jobKey = static_cast<long long>(job.value);
  const Point at = suspect.at.value_or(Point{});
  soci::indicator placed = suspect.at ? soci::i_ok : soci::i_null;
  const long long x = at.x.nm;
  const long long y = at.y.nm;
  const std::string way = wayJson(suspect.way).dump();
  const std::string found = suspectText(suspect);
  sql << "insert into suspect (job, what, probability, explanation, x, y, way, found) values "
         "(:job, :what, :probability, :explanation, :x, :y, :way, :found)",
      soci::use(jobKey), soci::use(suspect.what), soci::use(suspect.probability),
      soci::use(suspect.explanation), soci::use(x, placed), soci::use(y, placed), soci::use(way),
      soci::use(found);
}

std::vector<JobSuspect> suspectsOf(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  JobSuspect row;
  long long x = 0, y = 0;
  soci::indicator hasX = soci::i_null, hasY = soci::i_null;
  std::string way, found;
  soci::statement rows =
      (sql.prepare << "select what, probability, explanation, x, y, way, found from suspect "
                      "where job = :job order by id",
       soci::use(jobKey), soci::into(row.what), soci::into(row.probability), soci::into(row.explanation),
       soci::into(x, hasX), soci::into(y, hasY), soci::into(way), soci::into(found));
  rows.execute();
  std::vector<JobSuspect> out;
  while (rows.fetch()) {
    JobSuspect suspect = row;
    if (hasX == soci::i_ok && hasY == soci::i_ok) suspect.at = Point{Length(x), Length(y)};
    suspect.way = wayFrom(nlohmann::json::parse(way));
    readSuspect(found, suspect);
    out.push_back(std::move(suspect));
  }
  return out;
}

PhotoId insertPhoto(soci::session& sql, JobId job, const Photo& photo, PhotoId as) {
  RowId row(as.value);
  const auto jobKey = static_cast<long long>(job.value);
  soci::blob bytes(sql);
  bytes.write(0, photo.bytes.data(), photo.bytes.size());
  sql << "insert into photo (id, job, caption, media_type, bytes) values (:id, :job, :caption, :media_type, "
         ":bytes)",
      soci::use(row.value, row.state), soci::use(jobKey), soci::use(photo.caption),
      soci::use(photo.mediaType), soci::use(bytes);
  return PhotoId(static_cast<std::uint64_t>(lastInsertId(sql)));
}

namespace {

/// Of a book that may be in use: a connection of its own, in whatever thread this is.
std::optional<std::string> bytesIn(const std::filesystem::path& book, PhotoId photo) try {
  soci::session sql;
  connect(sql, book);
  const auto id = static_cast<long long>(photo.value);
  soci::blob bytes(sql);
  sql << "select bytes from photo where id = :id", soci::use(id), soci::into(bytes);
  std::string content(bytes.get_len(), '\0');
  if (!content.empty()) bytes.read(0, content.data(), content.size());
  return content;
} catch (const soci::soci_error&) {
  return std::nullopt;
}

} // namespace

std::vector<Photo> photosOf(soci::session& sql, const std::filesystem::path& book, JobId job,
                            const std::vector<Photo>& known) {
  const auto jobKey = static_cast<long long>(job.value);
  long long id = 0;
  std::string caption, mediaType;
  soci::statement rows =
      (sql.prepare << "select id, caption, media_type from photo where job = :job order by id",
       soci::use(jobKey), soci::into(id), soci::into(caption), soci::into(mediaType));
  rows.execute();
  std::vector<Photo> out;
  while (rows.fetch())
    out.push_back({PhotoId(static_cast<std::uint64_t>(id)), caption, mediaType, {}});
  for (Photo& photo : out) {
    const auto same =
        std::find_if(known.begin(), known.end(), [&](const Photo& k) { return k.id == photo.id; });
    photo.bytes = same != known.end()
                      ? same->bytes
                      : PhotoBytes::later([book, id = photo.id] { return bytesIn(book, id); });
  }
  return out;
}

ChargeId insertCharge(soci::session& sql, JobId job, const Charge& charge, ChargeId as) {
  RowId row(as.value);
  const auto jobKey = static_cast<long long>(job.value);
  const long long quantity = charge.quantity.units;
  const long long price = charge.price.units;
  sql << "insert into charge (id, job, what, quantity, price) values (:id, :job, :what, :quantity, :price)",
      soci::use(row.value, row.state), soci::use(jobKey), soci::use(charge.what), soci::use(quantity),
      soci::use(price);
  return ChargeId(static_cast<std::uint64_t>(lastInsertId(sql)));
}

std::vector<Charge> chargesOf(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  long long id = 0, quantity = 0, price = 0;
  std::string what;
  soci::statement rows =
      (sql.prepare << "select id, what, quantity, price from charge where job = :job order by id",
       soci::use(jobKey), soci::into(id), soci::into(what), soci::into(quantity), soci::into(price));
  rows.execute();
  std::vector<Charge> out;
  while (rows.fetch())
    out.push_back({ChargeId(static_cast<std::uint64_t>(id)), what, Decimal{quantity}, Decimal{price}});
  return out;
}

} // namespace netmend
