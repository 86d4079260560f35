#include <algorithm>
#include <cmath>

#include "customer_table.h"
#include "map_picture.h"
#include "netmend/casework/function_check.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/customer.h"
#include "sections.h"
#include "style.h"
#include "text.h"

namespace netmend {

namespace {

/// What the page spends on its parts; where it is too much, they give way in the order of `tighter`.
struct Spent {
  std::size_t oddRows = 8;
  std::size_t charges = 8;
  double picture = 250; ///< pixels; 0: none
  int lines = 4;        ///< of one text
};

/// Takes `step` off while more than `least` is left.
template <class Number> bool reduced(Number& spent, Number least, Number step) {
  if (spent <= least) return false;
  spent -= step;
  return true;
}

/// Nothing: it cannot be tighter.
std::optional<Spent> tighter(Spent spent) {
  constexpr std::size_t one = 1;
  if (reduced(spent.oddRows, 4 * one, one) || reduced(spent.picture, 170.0, 20.0) ||
      reduced(spent.charges, 3 * one, one) || reduced(spent.lines, 2, 1) ||
      reduced(spent.oddRows, 2 * one, one) || reduced(spent.picture, 90.0, 20.0) ||
      reduced(spent.picture, 0.0, spent.picture))
    return spent;
  return {};
}

QString sentences(const std::vector<Said>& all) {
  QStringList out;
  for (const Said& one : all)
    out << printed(one);
  return out.join(QLatin1Char(' '));
}

QString readyDate(const Job& job) {
  Time last{};
  for (const JobReading& reading : job.readings)
    if (reading.purpose == ReadingPurpose::proof) last = std::max(last, reading.reading.time);
  return dateText(last);
}

/// Pieces below each other, and whether anything was left out of them.
struct Block {
  Pieces pieces;
  bool cut = false;
};

Block letterhead(const Sheet& sheet) {
  const double width = sheet.style.customerBody.width();
  QFont bold = faceFont(px * face::textLetters), small = faceFont(px * face::smallLetters);
  const QString shop = cleaned(sheet.options.workshop);
  const QString name = shop.section(QChar(QChar::LineSeparator), 0, 0).simplified();
  QString address = shop.section(QChar(QChar::LineSeparator), 1);
  address.replace(QChar(QChar::LineSeparator), QStringLiteral(", "));
  const Shortened left = shortened(name, bold, width * 0.56, 1, true);
  const Shortened under = shortened(address, small, width * 0.4, 3);
  QString dates;
  if (const QString booked = dateText(sheet.job().created); !booked.isEmpty())
    dates = shown(said(pattern("core", "booked in {}"), booked.toStdString()));
  if (const QString ready = readyDate(sheet.job()); !ready.isEmpty())
    dates += (dates.isEmpty() ? QString() : QStringLiteral(", ")) +
             shown(said(pattern("core", "ready {}"), ready.toStdString()));
  const TextBlock number(
      {{QFontMetricsF(bold).elidedText(shown(pattern("core", "Job ")) + jobNumber(sheet.job()),
                                       Qt::ElideRight, width * 0.4),
        true, false}},
      bold, width * 0.42, Qt::AlignRight);
  const TextBlock when({{dates, false, false}}, small, width * 0.58, Qt::AlignRight);
  Piece piece;
  piece.height = left.block.lineHeight() + under.block.height();
  piece.paint = [=](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().ink);
    left.block.paint(painter, at, 0, 1);
    number.paint(painter, at + QPointF(width * 0.58, 0), 0, 1);
    painter.setPen(sheetColors().quietInk);
    const QPointF second(0, left.block.lineHeight());
    under.block.paint(painter, at + second, 0, under.block.lines());
    when.paint(painter, at + second + QPointF(width * 0.42, 0), 0, 1);
  };
  return {{piece}, left.cut || under.cut};
}

Block title(const Sheet& sheet) {
  const Job& job = sheet.job();
  const double width = sheet.style.customerBody.width();
  const QString named = cleaned(job.device).simplified();
  const std::string device = (named.isEmpty() ? shown(pattern("core", "Your device")) : named).toStdString();
  const Shortened head =
      shortened(printed(isRepaired(job) ? said(pattern("core", "{}, repaired"), device)
                                        : said(pattern("core", "{}, not repaired"), device)),
                faceFont(px * face::largeLetters), width, 2, true);
  QStringList facts;
  if (!job.serial.empty()) facts << shown(pattern("core", "Serial ")) + cleaned(job.serial).simplified();
  if (!job.customer.empty()) facts << cleaned(job.customer).simplified();
  if (!job.customerReference.empty())
    facts << shown(pattern("core", "your reference ")) + cleaned(job.customerReference).simplified();
  const Shortened under =
      shortened(facts.join(QStringLiteral(" · ")), faceFont(px * face::textLetters), width, 2);
  Piece piece;
  piece.spaceAbove = 24 * px;
  piece.height = head.block.height() + under.block.height();
  piece.paint = [=](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().ink);
    head.block.paint(painter, at, 0, head.block.lines());
    painter.setPen(sheetColors().quietInk);
    under.block.paint(painter, at + QPointF(0, head.block.height()), 0, under.block.lines());
  };
  return {{piece}, head.cut || under.cut};
}

void addFact(Block& part, const Sheet& sheet, const QString& label, const QString& text, int lines, bool bold,
             double above) {
  if (text.isEmpty()) return;
  const QFont font = faceFont(px * face::textLetters);
  constexpr double labels = 184 * px;
  const Shortened told = shortened(text, font, sheet.style.customerBody.width() - labels, lines, bold);
  const Shortened name = shortened(label, font, labels - 12 * px, told.block.lines());
  Piece piece;
  piece.spaceAbove = above;
  piece.height = told.block.height();
  piece.paint = [=](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().quietInk);
    name.block.paint(painter, at, 0, name.block.lines());
    painter.setPen(sheetColors().ink);
    told.block.paint(painter, at + QPointF(labels, 0), 0, told.block.lines());
  };
  part.cut |= told.cut;
  part.pieces.push_back(std::move(piece));
}

Block story(const Sheet& sheet, int lines) {
  const Job& job = sheet.job();
  Block out;
  const QString symptom = cleaned(job.symptom);
  addFact(out, sheet, shown(pattern("core", "What you told us")),
          symptom.isEmpty() ? shown(pattern("core", "not stated")) : symptom, lines, false, 20 * px);
  addFact(out, sheet, shown(pattern("core", "What we found")), sentences(whatWeFound(job)), lines, true,
          8 * px);
  addFact(out, sheet, shown(pattern("core", "What we did")), sentences(whatWeDid(job)), lines, false, 8 * px);
  return out;
}

Block functions(const Sheet& sheet) {
  QStringList work, open;
  for (const RepairAction& action : sheet.job().actions)
    for (const WorkStep& step : action.steps)
      if (isFunctionCheck(step)) (step.done ? work : open) << cleaned(step.text).simplified();
  QStringList parts;
  if (!work.isEmpty())
    parts << shown(pattern("core", "Tried, and it works: ")) + work.join(QStringLiteral(", ")) +
                 QLatin1Char('.');
  if (!open.isEmpty())
    parts << shown(pattern("core", "Not seen to work: ")) + open.join(QStringLiteral(", ")) +
                 QLatin1Char('.');
  if (parts.isEmpty()) return {};
  const Shortened text = shortened(parts.join(QLatin1Char(' ')), faceFont(px * face::smallLetters),
                                   sheet.style.customerBody.width(), 2);
  Piece piece;
  piece.spaceAbove = 8 * px;
  piece.height = text.block.height();
  piece.paint = [text](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().quietInk);
    text.block.paint(painter, at, 0, text.block.lines());
  };
  return {{piece}, text.cut};
}

Block picture(const Sheet& sheet, const SheetMap& map, const std::shared_ptr<const BoardScene>& scene,
              double height) {
  Piece piece;
  piece.spaceAbove = 12 * px;
  piece.height = height;
  SheetStyle style = sheet.style;
  style.picture = pictureType(px * face::smallLetters);
  piece.paint = [=, width = style.customerBody.width()](QPainter& painter, QPointF at) {
    paintRepairMap(painter, map, *scene, QRectF(at, QSizeF(width, height)), style);
  };
  return {{piece}, false};
}

Piece smallLine(const Sheet& sheet, const QString& text) {
  const Shortened line =
      shortened(text, faceFont(px * face::smallLetters), sheet.style.customerBody.width(), 1);
  Piece piece;
  piece.height = line.block.height();
  piece.paint = [line](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().quietInk);
    line.block.paint(painter, at, 0, 1);
  };
  return piece;
}

Piece signatureLines(const Sheet& sheet) {
  const double width = sheet.style.customerBody.width();
  const double gap = 48 * px;
  Piece piece;
  piece.height = 24 * px;
  piece.paint = [=, half = (width - gap) / 2](QPainter& painter, QPointF at) {
    painter.setFont(faceFont(px * face::smallLetters));
    const QString names[] = {shown(pattern("core", "Repaired by, date")),
                             shown(pattern("core", "Received by, date"))};
    for (int i = 0; i < 2; ++i) {
      const double left = at.x() + i * (half + gap);
      painter.setPen(QPen(sheetColors().ink, px));
      painter.drawLine(QPointF(left, at.y()), QPointF(left + half, at.y()));
      painter.setPen(sheetColors().quietInk);
      painter.drawText(QRectF(left, at.y() + 4 * px, half, 20 * px), Qt::AlignLeft, names[i]);
    }
  };
  return piece;
}

double heightOf(const Pieces& pieces) {
  double out = 0;
  for (const Piece& piece : pieces)
    out += piece.spaceAbove + piece.height;
  return out;
}

void add(Block& all, Block more) {
  all.cut |= more.cut;
  append(all.pieces, std::move(more.pieces));
}

Result<Block> compose(const Sheet& sheet, const Spent& spent, const std::optional<SheetMap>& map,
                      const std::shared_ptr<const BoardScene>& scene) {
  Block all = letterhead(sheet);
  add(all, title(sheet));
  add(all, story(sheet, spent.lines));
  if (map && spent.picture > 0) add(all, picture(sheet, *map, scene, spent.picture * px));
  FieldRow odd = oddPoints(sheet, spent.oddRows);
  if (!odd.pieces.empty()) odd.pieces.front().spaceAbove = 16 * px;
  add(all, {std::move(odd.pieces), odd.cut});
  add(all, functions(sheet));
  auto money = costs(sheet, spent.charges);
  if (!money) return failure(money.error());
  if (!money->pieces.empty()) money->pieces.front().spaceAbove = 12 * px;
  add(all, {std::move(money->pieces), money->cut});
  return all;
}

/// The first photo and the last, beside each other: before and after.
Result<Pieces> beforeAndAfter(const Sheet& sheet, double room) {
  const std::vector<Photo>& all = sheet.job().photos;
  constexpr double least = 110 * px, most = 200 * px, above = 12 * px, caption = 24 * px;
  const double height = std::min(most, room - above - caption);
  if (all.empty() || height < least) return Pieces{};
  const double gap = 16 * px, half = (sheet.style.customerBody.width() - gap) / 2;
  struct Shown {
    QImage image;
    QSizeF size;
    QString caption;
  };
  std::vector<Shown> two;
  for (std::size_t i :
       all.size() == 1 ? std::vector<std::size_t>{0} : std::vector<std::size_t>{0, all.size() - 1}) {
    const QString text = cleaned(all[i].caption).simplified();
    const QString name = shown(pattern("core", "photo %1")).arg(i + 1);
    const auto image =
        printedPhoto(all[i], text.isEmpty() ? name : name + QStringLiteral(", ") + text, {half, height});
    if (!image) return failure(image.error());
    two.push_back({*image, QSizeF(image->size()).scaled({half, height}, Qt::KeepAspectRatio),
                   QFontMetricsF(faceFont(px * face::smallLetters)).elidedText(text, Qt::ElideRight, half)});
  }
  double tallest = 0;
  for (const Shown& one : two)
    tallest = std::max(tallest, one.size.height());
  Piece piece;
  piece.spaceAbove = above;
  piece.height = tallest + caption;
  piece.paint = [=, two = std::move(two)](QPainter& painter, QPointF at) {
    for (const Shown& one : two) {
      painter.drawImage(QRectF(at, one.size), one.image);
      painter.setFont(faceFont(px * face::smallLetters));
      painter.setPen(sheetColors().quietInk);
      painter.drawText(QRectF(at.x(), at.y() + tallest + 2 * px, half, caption), Qt::AlignLeft, one.caption);
      at.rx() += half + gap;
    }
  };
  return Pieces{piece};
}

} // namespace

Result<CustomerPage> customerPage(const Sheet& sheet) {
  const QRectF& body = sheet.style.customerBody;
  std::shared_ptr<const BoardScene> scene;
  std::optional<SheetMap> map;
  if (sheet.content.board.board != nullptr) {
    scene = std::make_shared<const BoardScene>(*sheet.content.board.board);
    map = repairMap(sheet, *scene);
  }
  const Piece signs = signatureLines(sheet);
  const double toSign = 56 * px; // for the hand, and the line that says what was shortened
  const double room = body.height() - signs.height - toSign;
  Spent spent;
  auto all = compose(sheet, spent, map, scene);
  while (all && heightOf(all->pieces) > room) {
    const auto next = tighter(spent);
    if (!next) break;
    spent = *next;
    all = compose(sheet, spent, map, scene);
  }
  if (!all) return failure(all.error());
  // Where the picture had to give way there is no room for photos either.
  const bool shrunk = spent.picture < Spent().picture;
  auto photos = shrunk ? Result<Pieces>(Pieces()) : beforeAndAfter(sheet, room - heightOf(all->pieces));
  if (!photos) return failure(photos.error());
  all->cut |= photos->empty() ? !sheet.job().photos.empty() : sheet.job().photos.size() > 2;
  append(all->pieces, std::move(*photos));

  CustomerPage out;
  std::vector<double> tops;
  double top = body.top();
  for (const Piece& piece : all->pieces) {
    top += tops.empty() ? 0 : piece.spaceAbove;
    tops.push_back(top);
    top += piece.height;
  }
  out.pieces = std::move(all->pieces);
  if (all->cut) {
    out.pieces.push_back(smallLine(
        sheet, shown(pattern("core", "Shortened to one page; the workshop's copy has all of it."))));
    tops.push_back(body.bottom() - signs.height - toSign + 2 * px);
  }
  out.pieces.push_back(signs);
  tops.push_back(body.bottom() - signs.height);
  for (std::size_t i = 0; i < out.pieces.size(); ++i)
    out.page.push_back({&out.pieces[i], tops[i]});
  return out;
}

} // namespace netmend
