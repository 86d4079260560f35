#include "rows.h"

#include <nlohmann/json.hpp>

#include "judged_json.h"
#include "netmend/probing/words.h"
#include "reading_words.h"

namespace netmend {

namespace {

/// A nullable number on its way into or out of a statement.
struct Nullable {
  double value = 0.0;
  soci::indicator state = soci::i_null;

  Nullable() = default;
  explicit Nullable(std::optional<double> v) : value(v.value_or(0.0)), state(v ? soci::i_ok : soci::i_null) {}
  [[nodiscard]] std::optional<double> get() const {
    return state == soci::i_ok ? std::optional(value) : std::nullopt;
  }
};

template <class Unit> std::optional<double> plain(const std::optional<Quantity<Unit>>& quantity) {
  return quantity ? std::optional(quantity->value) : std::nullopt;
}

template <class Q> std::optional<Q> quantity(std::optional<double> value) {
  return value ? std::optional(Q(*value)) : std::nullopt;
}

std::string listText(const std::vector<std::string>& list) {
  return nlohmann::json(list).dump();
}

std::vector<std::string> listFrom(const std::string& text) {
  return nlohmann::json::parse(text).get<std::vector<std::string>>();
}

} // namespace

JobReadingId insertReading(soci::session& sql, JobId job, const JobReading& entry, JobReadingId as) {
  RowId id(as.value);
  const Reading& r = entry.reading;
  const auto jobKey = static_cast<long long>(job.value);
  const std::string purpose(wordFor(readingPurposeWords, entry.purpose));
  const auto pin = static_cast<long long>(r.point.pin.value);
  const auto otherPin = static_cast<long long>(r.other.pin.value);
  const std::string mode(word(r.mode));
  Nullable value(r.value);
  const std::string settling(word(r.settling));
  const long long time = r.time.time_since_epoch().count();
  const std::string plugged = listText(r.condition.plugged);
  const std::string lifted = listText(r.condition.lifted);
  const int powered = r.condition.powered ? 1 : 0;
  Nullable temperature(plain(r.condition.temperature));
  Nullable injected(plain(r.injected));
  const std::string judged = judgedText(entry.judged);
  const int comesAndGoes = entry.comesAndGoes ? 1 : 0;
  sql << "insert into reading (id, job, purpose, pin, label, other_pin, other_label, mode, value, settling, "
         "time, meter, "
         "taken_by, plugged, powered, lifted, temperature, handling, injected, judged, remark, "
         "comes_and_goes) values "
         "(:id, :job, :purpose, :pin, :label, :other_pin, :other_label, :mode, :value, :settling, :time, "
         ":meter, "
         ":taken_by, :plugged, :powered, :lifted, :temperature, :handling, :injected, :judged, :remark, "
         ":comes_and_goes)",
      soci::use(id.value, id.state), soci::use(jobKey), soci::use(purpose), soci::use(pin),
      soci::use(r.point.label), soci::use(otherPin), soci::use(r.other.label), soci::use(mode),
      soci::use(value.value, value.state), soci::use(settling), soci::use(time), soci::use(r.meter),
      soci::use(r.by), soci::use(plugged), soci::use(powered), soci::use(lifted),
      soci::use(temperature.value, temperature.state), soci::use(r.condition.handling),
      soci::use(injected.value, injected.state), soci::use(judged), soci::use(entry.remark),
      soci::use(comesAndGoes);
  return JobReadingId(static_cast<std::uint64_t>(lastInsertId(sql)));
}

std::vector<JobReading> readingsOf(soci::session& sql, JobId job) {
  const auto jobKey = static_cast<long long>(job.value);
  long long id = 0, pin = 0, otherPin = 0, time = 0;
  int powered = 0, comesAndGoes = 0;
  std::string purpose, label, otherLabel, mode, settling, meter, by, plugged, lifted, handling, judged,
      remark;
  Nullable value, temperature, injected;
  soci::statement rows =
      (sql.prepare
           << "select id, purpose, pin, label, other_pin, other_label, mode, value, settling, time, meter, "
              "taken_by, plugged, powered, lifted, temperature, handling, injected, judged, remark, "
              "comes_and_goes "
              "from reading where job = :job order by id",
       soci::use(jobKey), soci::into(id), soci::into(purpose), soci::into(pin), soci::into(label),
       soci::into(otherPin), soci::into(otherLabel), soci::into(mode), soci::into(value.value, value.state),
       soci::into(settling), soci::into(time), soci::into(meter), soci::into(by), soci::into(plugged),
       soci::into(powered), soci::into(lifted), soci::into(temperature.value, temperature.state),
       soci::into(handling), soci::into(injected.value, injected.state), soci::into(judged),
       soci::into(remark), soci::into(comesAndGoes));
  rows.execute();
  std::vector<JobReading> out;
  while (rows.fetch()) {
    JobReading entry;
    entry.id = JobReadingId(static_cast<std::uint64_t>(id));
    entry.purpose = stored(readingPurposeWords, purpose);
    entry.judged = judgedFrom(judged);
    entry.remark = remark;
    entry.comesAndGoes = comesAndGoes != 0;
    Reading& r = entry.reading;
    r.point = {PinId(static_cast<std::uint64_t>(pin)), label};
    r.other = {PinId(static_cast<std::uint64_t>(otherPin)), otherLabel};
    r.mode = stored(readingModeFrom(mode), mode);
    r.value = value.get();
    r.settling = stored(settlingFrom(settling), settling);
    r.time = Time(std::chrono::milliseconds(time));
    r.meter = meter;
    r.by = by;
    r.condition = {listFrom(plugged), powered != 0, listFrom(lifted), quantity<Celsius>(temperature.get()),
                   handling};
    r.injected = quantity<Amperes>(injected.get());
    out.push_back(std::move(entry));
  }
  return out;
}

} // namespace netmend
