#include "branch_words.h"

#include <QStringList>

#include "bench/session/window_text.h"

namespace netmend {

QString branchWords(const TreeBranch& branch, const LinePieces& pieces) {
  int joints = 0, vias = 0, tracks = 0, unmeasured = 0, unknownWays = 0;
  double lengthMm = 0.0;
  for (const TreePiece& piece : branch.pieces) {
    const CopperEdge& edge = *pieces.edges[piece.edge];
    joints += piece.kind == EdgeKind::solderJoint;
    vias += piece.kind == EdgeKind::via;
    unknownWays += piece.kind == EdgeKind::unknownWay;
    if (piece.kind != EdgeKind::track) continue;
    ++tracks;
    if (edge.length.known())
      lengthMm += edge.length.value.mm();
    else
      ++unmeasured;
  }
  QStringList words;
  if (joints > 0) words << QCoreApplication::translate("netmend", "%n joint(s)", nullptr, joints);
  if (tracks > unmeasured) words << tr("track %1 mm").arg(lengthMm, 0, 'f', 1);
  if (unmeasured > 0) words << tr("track");
  if (vias > 0) words << QCoreApplication::translate("netmend", "%n via(s)", nullptr, vias);
  if (unknownWays > 0 || (branch.unknownWay && branch.pieces.empty())) words << tr("way not known");
  return words.join(QStringLiteral(" + "));
}

QString partOn(const TreeBranch& branch, const LinePieces& pieces) {
  for (const TreePiece& piece : branch.pieces) {
    if (piece.kind != EdgeKind::part) continue;
    const auto* id = std::get_if<PartId>(&pieces.edges[piece.edge]->object);
    const Part* part = id != nullptr ? pieces.board->parts.find(*id) : nullptr;
    if (part == nullptr) return tr("part");
    QString text = QString::fromStdString(part->reference);
    if (part->value.known() && !part->value.value.empty())
      text += QStringLiteral(" ") + QString::fromStdString(part->value.value);
    return text;
  }
  return {};
}

} // namespace netmend
