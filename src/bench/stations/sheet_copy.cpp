#include "sheet_copy.h"

#include <QTemporaryDir>

#include "bench/late/late.h"
#include "bench/late/paper.h"
#include "netmend/base/file.h"
#include "netmend/casework/jumper_case.h"

namespace netmend {

Result<SheetPages> makeSheet(const SheetOrder& order, const std::stop_token& stop) {
  const QTemporaryDir folder;
  if (!folder.isValid())
    return failure({said(pattern("core", "no temporary folder: {}"), folder.errorString().toStdString())});
  const std::filesystem::path file(folder.filePath(QStringLiteral("sheet.pdf")).toStdU16String());
  SheetContent content;
  content.job = order.job;
  content.cautions = order.cautions;
  if (order.board) {
    content.board = order.board.get();
    content.line = linesOf(order.job.actions, *order.lookup, *order.graph);
  }
  if (auto written = writeJobSheet(file, content, order.options); !written) return failure(written.error());
  const auto bytes = readFile(file);
  if (!bytes) return failure(bytes.error());
  SheetPages out;
  out.pdf = QByteArray(bytes->data(), static_cast<qsizetype>(bytes->size()));
  const auto paper = late<Paper>();
  if (!paper) {
    out.undrawn = paper.error();
    return out;
  }
  auto pages = (*paper)->draw(out.pdf, order.pageWidth, stop);
  if (!pages) return failure(pages.error());
  out.pages = std::move(*pages);
  return out;
}

} // namespace netmend
