#pragma once

#include <functional>
#include <optional>

#include <QAbstractScrollArea>
#include <QCoreApplication>

#include "netmend/drawing/picture_colors.h"
#include "suspect_tree.h"
#include "tree_layout.h"

class QPainter;

namespace netmend {

/// A node of a line tree, or the branch that leads to it.
struct TreeSelection {
  std::size_t key = 0; ///< `TreeNode::key`
  bool branch = false;
  friend bool operator==(const TreeSelection&, const TreeSelection&) = default;
};

/// A line from its source to its loads, with suspicion on its branches. Arrows go along it, Enter opens what
/// is folded, + and − zoom, 0 ends that; the wheel scrolls, with Ctrl it zooms.
class LineTreeView : public QAbstractScrollArea {
  Q_DECLARE_TR_FUNCTIONS(netmend::LineTreeView)

public:
  explicit LineTreeView(QWidget* parent = nullptr);
  /// Keeps the selection where the same copper is still shown.
  void setTree(LineTree tree);
  [[nodiscard]] const LineTree& tree() const { return tree_; }

  [[nodiscard]] std::optional<TreeSelection> selection() const { return selection_; }
  /// The selected node, or the one whose branch is selected; null: none.
  [[nodiscard]] const TreeNode* selectedNode() const;
  void select(std::optional<TreeSelection> selection);
  /// In words: what is selected, how it reads, how suspect it is.
  [[nodiscard]] QString selectedText() const;
  /// How much smaller than usual it had to become to fit its width.
  [[nodiscard]] double fit() const { return fit_; }
  /// Does what the key means here; false: nothing.
  bool key(int key);
  void zoom(double factor);

  std::function<void()> onSelected;              ///< by the user
  std::function<void(std::size_t key)> onUnfold; ///< a folded node's pins are wanted

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

private:
  void arrange();
  [[nodiscard]] QFont letters() const;
  [[nodiscard]] QPointF offset() const;
  [[nodiscard]] std::optional<TreeSelection> at(QPointF place) const;
  [[nodiscard]] std::optional<std::size_t> selectedIndex() const;
  void choose(std::size_t node, bool branch);
  void step(int columns, int rows);
  void showSelected();
  void unfoldSelected();

  LineTree tree_;
  TreeLayout layout_;
  std::optional<TreeSelection> selection_;
  double zoom_ = 1.0;
  double fit_ = 1.0; ///< by which letters are smaller, so that it fits its width
};

} // namespace netmend
