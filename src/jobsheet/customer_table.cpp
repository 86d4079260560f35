#include "customer_table.h"

#include <algorithm>

#include "findings.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/verdict.h"
#include "signs.h"
#include "style.h"

namespace netmend {

namespace {

QString decimalText(Decimal value, int places) {
  return QString::fromStdString(toText(value, places));
}

void join(FieldRow& rows, FieldRow more) {
  append(rows.pieces, std::move(more.pieces));
  rows.cut |= more.cut;
}

/// Where it is, and what it carries: "J4.9, KEY_COL3".
QString placeText(const Sheet& sheet, const ProbePoint& point) {
  QString out = pointText(sheet, point);
  if (sheet.content.board.board == nullptr) return out;
  const Board& board = *sheet.content.board.board;
  const Pin* pin = board.pins.find(point.pin);
  const Net* net = pin != nullptr && pin->net.known() ? board.nets.find(pin->net.value) : nullptr;
  if (net != nullptr && !net->name.empty()) out += QStringLiteral(", ") + cleaned(net->name).simplified();
  return out;
}

Field reading(const JobReading* read, double left, double right, bool bold) {
  Field out{QStringLiteral("–"), left, right, Qt::AlignRight, bold};
  if (read == nullptr) return out;
  out.text = QString::fromStdString(readingText(read->reading.value, read->reading.mode));
  if (read->judged) out.sign = markSign(markForVerdict(read->kind()));
  return out;
}

QString rangeOf(const ReadingPair& pair) {
  for (const JobReading* one : {pair.before, pair.after})
    if (one != nullptr)
      if (const Said expected = whatIsExpected(*one); !expected.empty()) return shown(expected);
  return QStringLiteral("–");
}

constexpr double goodLeft = 0.36, goodRight = 0.66, beforeRight = 0.79, afterRight = 0.96;

} // namespace

FieldRow fieldRow(const Sheet& sheet, const std::vector<Field>& fields, RowLook look) {
  const double width = sheet.style.customerBody.width();
  const double height = (look == RowLook::head ? 24 : look == RowLook::total ? 40 : 32) * px;
  const auto fontOf = [look](const Field& field) {
    QFont font = faceFont(px * (field.large             ? face::midLetters
                                : look == RowLook::head ? face::smallLetters
                                                        : face::textLetters));
    font.setBold(field.bold);
    return font;
  };
  FieldRow out;
  std::vector<Field> fitting = fields;
  for (Field& field : fitting) {
    const double room = (field.right - field.left) * width - 8 * px;
    QString text = QFontMetricsF(fontOf(field)).elidedText(field.text, Qt::ElideRight, room);
    out.cut |= text != field.text;
    field.text = std::move(text);
  }
  Piece piece;
  piece.height = height;
  piece.paint = [=](QPainter& painter, QPointF at) {
    for (const Field& field : fitting) {
      painter.setFont(fontOf(field));
      painter.setPen(look == RowLook::head ? sheetColors().quietInk : sheetColors().ink);
      const QRectF box(at.x() + field.left * width, at.y(), (field.right - field.left) * width, height);
      painter.drawText(box, static_cast<int>(field.alignment | Qt::AlignVCenter) | Qt::TextSingleLine,
                       field.text);
      if (!field.sign) continue;
      const double size = 20 * px;
      field.sign(painter, QRectF(box.right() + 6 * px, box.center().y() - size / 2, size, size));
    }
    if (look == RowLook::total) return;
    painter.setPen(QPen(faceColors(PictureTheme::light).line, px));
    painter.drawLine(at + QPointF(0, height), at + QPointF(width, height));
  };
  out.pieces.push_back(std::move(piece));
  return out;
}

FieldRow oddPoints(const Sheet& sheet, std::size_t rows) {
  std::vector<ReadingPair> odd = pairReadings(sheet.job().readings);
  std::erase_if(odd, [](const ReadingPair& pair) {
    return (pair.before == nullptr || !pair.before->odd()) && (pair.after == nullptr || !pair.after->odd());
  });
  FieldRow out;
  if (odd.empty()) return out;
  join(out, fieldRow(sheet,
                     {{shown(pattern("core", "Point")), 0, goodLeft},
                      {shown(pattern("core", "Good boards")), goodLeft, goodRight, Qt::AlignRight},
                      {shown(pattern("core", "Before")), goodRight, beforeRight, Qt::AlignRight},
                      {shown(pattern("core", "After")), beforeRight, afterRight, Qt::AlignRight}},
                     RowLook::head));
  // One row that counts a single other one is better spent on that.
  const std::size_t shownRows = odd.size() <= rows + 1 ? odd.size() : rows;
  for (std::size_t i = 0; i < shownRows; ++i)
    join(out, fieldRow(sheet,
                       {{placeText(sheet, odd[i].any().reading.point), 0, goodLeft},
                        {rangeOf(odd[i]), goodLeft, goodRight, Qt::AlignRight},
                        reading(odd[i].before, goodRight, beforeRight, false),
                        reading(odd[i].after, beforeRight + 0.03, afterRight, true)},
                       RowLook::plain));
  if (shownRows == odd.size()) return out;
  const auto rest = static_cast<std::int64_t>(odd.size() - shownRows);
  const auto mended =
      std::count_if(odd.begin() + static_cast<std::ptrdiff_t>(shownRows), odd.end(),
                    [](const ReadingPair& p) { return p.after != nullptr && !p.after->odd(); });
  join(out, fieldRow(sheet,
                     {{shown(saidCount(counted("core", "and {n} more point, of which as it must be now: {}",
                                               "and {n} more points, of which as they must be now: {}"),
                                       rest, mended))}},
                     RowLook::plain));
  out.cut = true;
  return out;
}

Result<FieldRow> costs(const Sheet& sheet, std::size_t rows) {
  const std::vector<Charge>& all = sheet.job().charges;
  FieldRow out;
  if (all.empty()) return out;
  constexpr double quantity = 0.71, price = 0.84;
  join(out, fieldRow(sheet,
                     {{shown(pattern("core", "Charges")), 0, 0.55},
                      {shown(pattern("core", "Quantity")), 0.55, quantity, Qt::AlignRight},
                      {shown(pattern("core", "Price")), quantity, price, Qt::AlignRight},
                      {cleaned(sheet.job().currency).simplified(), price, 1, Qt::AlignRight}},
                     RowLook::head));
  const std::size_t shownRows = all.size() <= rows + 1 ? all.size() : rows;
  Decimal total, rest;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto line = product(all[i].quantity, all[i].price);
    if (!line) return failure(line.error());
    const auto next = sum(total, *line);
    if (!next) return failure(next.error());
    total = *next;
    if (i >= shownRows) {
      const auto more = sum(rest, *line);
      if (!more) return failure(more.error());
      rest = *more;
      continue;
    }
    join(out, fieldRow(sheet,
                       {{cleaned(all[i].what).simplified(), 0, 0.55},
                        {decimalText(all[i].quantity, 0), 0.55, quantity, Qt::AlignRight},
                        {decimalText(all[i].price, 2), quantity, price, Qt::AlignRight},
                        {decimalText(*line, 2), price, 1, Qt::AlignRight}},
                       RowLook::plain));
  }
  if (shownRows < all.size()) {
    const auto more = static_cast<std::int64_t>(all.size() - shownRows);
    join(out,
         fieldRow(sheet,
                  {{shown(saidCount(counted("core", "{n} more charge", "{n} more charges"), more)), 0, 0.8},
                   {decimalText(rest, 2), 0.8, 1, Qt::AlignRight}},
                  RowLook::plain));
    out.cut = true;
  }
  join(out, fieldRow(sheet,
                     {{shown(pattern("core", "Total")), 0.5, price - 0.02, Qt::AlignRight, true},
                      {decimalText(total, 2), price - 0.02, 1, Qt::AlignRight, true, true}},
                     RowLook::total));
  return out;
}

} // namespace netmend
