#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QCoreApplication>
#include <QTreeWidget>

#include "netmend/casework/proof.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// All points of a proof: what they read before, what they must read, what they read now.
class ProofTable : public QTreeWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::ProofTable)

public:
  explicit ProofTable(QWidget* parent = nullptr);
  void setPoints(const std::vector<ProofPoint>& points, const std::vector<std::size_t>& skipped,
                 std::optional<std::size_t> due, PictureTheme theme, const PlaceNames* places);
  std::function<void(std::size_t)> onPoint; ///< chosen by Enter or a double click

protected:
  void changeEvent(QEvent* event) override;
  void drawRow(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

private:
  enum Column {
    nameColumn,
    beforeColumn,
    beforeMarkColumn,
    mustColumn,
    nowColumn,
    verdictColumn,
    columnsInAll
  };
  void fitRows(); ///< to names that take more than a line
};

/// Without a ground and a frame of its own.
void layOnCard(QAbstractItemView& list);

/// A reading as people read it; a dash where there is none.
[[nodiscard]] QString valueOf(const std::optional<JobReading>& entry);

} // namespace netmend
