#include "sheet_copy.h"

#include "bench/late/late.h"
#include "bench/late/paper.h"
#include "netmend/casework/jumper_case.h"

namespace netmend {

Result<SheetPages> makeSheet(const SheetOrder& order, const std::stop_token& stop) {
  SheetContent content;
  content.job = order.job;
  content.cautions = order.cautions;
  content.board = order.board;
  if (order.board.board) content.line = linesOf(order.job.actions, order.board);
  auto pdf = jobSheet(content, order.options);
  if (!pdf) return failure(pdf.error());
  SheetPages out;
  out.pdf = std::move(*pdf);
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
