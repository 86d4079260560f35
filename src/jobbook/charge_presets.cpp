#include "netmend/jobbook/charge_presets.h"

#include <algorithm>

#include "book_file.h"
#include "netmend/base/json_reader.h"

namespace netmend {

namespace {

Decimal decimalOf(const JsonReader::Node& node) {
  const std::string text = node.text();
  const auto value = parseDecimal(text);
  if (!value) node.wrong(pattern("core", "is no amount"), text, pattern("core", "as in \"48.00\""));
  return value.value_or(Decimal{});
}

} // namespace

Result<std::vector<ChargePreset>> loadChargePresets(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-charges");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "comment", "charges"});
  std::vector<ChargePreset> out;
  for (const auto& node : root.at("charges").items()) {
    node.onlyKeys({"what", "quantity", "price"});
    ChargePreset preset;
    preset.what = node.at("what").text();
    if (node.has("quantity")) preset.quantity = decimalOf(node.at("quantity"));
    preset.price = decimalOf(node.at("price"));
    out.push_back(std::move(preset));
  }
  return reader->result(std::move(out));
}

std::vector<ChargePreset> usualCharges(const std::filesystem::path& book, std::size_t most) {
  std::vector<ChargePreset> out;
  try {
    soci::session sql;
    connect(sql, book);
    // Of a group SQLite takes the other columns from the row with the maximum (sqlite.org/lang_select.html,
    // "bare columns in an aggregate query").
    std::string what;
    long long quantity = 0, price = 0, last = 0;
    soci::statement rows = (sql.prepare << "select what, quantity, price, max(id) from "
                                           "(select * from charge order by id desc limit 200) "
                                           "group by what order by count(*) desc, max(id) desc limit " +
                                               std::to_string(most),
                            soci::into(what), soci::into(quantity), soci::into(price), soci::into(last));
    rows.execute();
    while (rows.fetch())
      out.push_back({what, Decimal{quantity}, Decimal{price}});
  } catch (const soci::soci_error&) {
    out.clear(); // the book itself says what is wrong with it
  }
  return out;
}

std::vector<ChargePreset> presetsFrom(std::vector<ChargePreset> usual,
                                      const std::vector<ChargePreset>& defaults, std::size_t most) {
  for (const ChargePreset& preset : defaults)
    if (std::none_of(usual.begin(), usual.end(),
                     [&](const ChargePreset& own) { return own.what == preset.what; }))
      usual.push_back(preset);
  if (usual.size() > most) usual.resize(most);
  return usual;
}

} // namespace netmend
