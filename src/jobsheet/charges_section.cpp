#include "netmend/drawing/shown.h"
#include "sections.h"
#include "table.h"

namespace netmend {

namespace {

QString amount(Decimal value, int places) {
  return QString::fromStdString(toText(value, places));
}

} // namespace

Result<Pieces> charges(const Sheet& sheet) {
  const Job& job = sheet.job();
  if (job.charges.empty()) return Pieces{};
  const QString currency = cleaned(job.currency).simplified();
  const std::vector<Column> columns{{shown(pattern("core", "What")), 0.52},
                                    {shown(pattern("core", "Quantity")), 0.14, Qt::AlignRight},
                                    {shown(pattern("core", "Price")), 0.16, Qt::AlignRight},
                                    {shown(pattern("core", "Amount ")) + currency, 0.18, Qt::AlignRight}};
  std::vector<TableRow> rows;
  Decimal total;
  for (const Charge& charge : job.charges) {
    const auto line = product(charge.quantity, charge.price);
    if (!line) return failure(line.error());
    const auto next = sum(total, *line);
    if (!next) return failure(next.error());
    total = *next;
    rows.push_back({{cell(cleaned(charge.what)), cell(amount(charge.quantity, 0)),
                     cell(amount(charge.price, 2)), cell(amount(*line, 2))},
                    false,
                    true,
                    false});
  }
  // The total is not left alone on a page.
  rows.back().keepWithNext = true;
  rows.push_back(
      {{cell(shown(pattern("core", "Total")), true), cell({}), cell({}), cell(amount(total, 2), true)},
       true,
       false,
       false});
  Pieces pieces;
  pieces.push_back(headingPiece(sheet.style, shown(pattern("core", "Charges"))));
  append(pieces, tablePieces(columns, rows, tableStyle(sheet.style, sheet.style.normal)));
  return pieces;
}

} // namespace netmend
