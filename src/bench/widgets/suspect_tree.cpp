#include "suspect_tree.h"

#include <algorithm>
#include <iterator>
#include <map>

#include <QCoreApplication>

#include "branch_words.h"
#include "line_pieces.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/place.h"

namespace netmend {

namespace {

constexpr double splitSuspicion = 0.01; ///< joint and track are shown apart where both have this much
constexpr double leastLettered = 0.005;
constexpr std::size_t leastFolded = 3; ///< pins; fewer take no more room than their fold

/// Chooses what of a line's pieces is shown, and folds the rest.
class TreeMaker {
public:
  TreeMaker(const LinePieces& pieces, const TreeWishes& wishes) : pieces_(pieces), wishes_(wishes) {
    std::size_t pins = 0;
    for (const CopperPiece& piece : pieces_.pieces)
      pins += piece.pins.size();
    folding_ = pins > wishes.foldAbove;
  }

  LineTree make() {
    if (pieces_.pieces.empty()) return {};
    add(Step{pieces_.source, 0, {}, false, false});
    while (!waiting_.empty()) {
      const Step step = std::move(waiting_.back());
      waiting_.pop_back();
      add(step);
    }
    tree_.elsewhere = pieces_.elsewhere;
    return std::move(tree_);
  }

private:
  /// A piece to be shown below a node that is shown already.
  struct Step {
    std::size_t piece = 0;
    std::size_t parent = 0;
    TreeBranch branch;
    bool unfolded = false;  ///< nothing from here on is folded
    bool noPassing = false; ///< forks are shown even where all but one of their branches are quiet
  };

  [[nodiscard]] std::vector<std::size_t> shownChildren(std::size_t piece) const {
    std::vector<std::size_t> out;
    for (const std::size_t child : pieces_.pieces[piece].children)
      if (pieces_.pieces[child].worthShowing()) out.push_back(child);
    return out;
  }

  void lengthen(TreeBranch& branch, const CopperPiece& piece) const {
    if (piece.above) {
      branch.pieces.push_back({piece.above->index, piece.above->kind, piece.aboveSuspicion});
      branch.suspicion += piece.aboveSuspicion;
    } else {
      branch.unknownWay = true; // not even a hub leads here
    }
  }

  /// Joint and track are mended in different ways.
  [[nodiscard]] bool splits(const TreeBranch& branch, const CopperPiece& next) const {
    if (branch.pieces.empty() || !next.above || next.aboveSuspicion < splitSuspicion) return false;
    const bool joint = branch.pieces.back().kind == EdgeKind::solderJoint;
    return joint != (next.above->kind == EdgeKind::solderJoint) && branch.suspicion >= splitSuspicion;
  }

  [[nodiscard]] bool plain(const Step& step, const std::vector<std::size_t>& children) const {
    const CopperPiece& piece = pieces_.pieces[step.piece];
    return step.piece != pieces_.source && piece.pins.empty() && !piece.hub && children.size() == 1 &&
           !piece.reading && !piece.probe && piece.suspicion < splitSuspicion &&
           !splits(step.branch, pieces_.pieces[children.front()]);
  }

  /// A fork on the way to something loud of which all other branches are quiet: not shown either.
  [[nodiscard]] std::optional<std::size_t> passed(const Step& step,
                                                  const std::vector<std::size_t>& children) const {
    const CopperPiece& piece = pieces_.pieces[step.piece];
    if (!folding_ || step.unfolded || step.noPassing || step.piece == pieces_.source || !piece.pins.empty() ||
        piece.hub || piece.reading || piece.probe || piece.suspicion >= splitSuspicion ||
        step.branch.suspicion >= splitSuspicion)
      return std::nullopt;
    std::optional<std::size_t> onward;
    for (const std::size_t child : children) {
      if (!pieces_.pieces[child].loud) continue;
      if (onward || pieces_.pieces[child].aboveSuspicion >= splitSuspicion) return std::nullopt;
      onward = child;
    }
    return onward;
  }

  /// Goes on along the line to what is shown next; gives the quiet branches that it went past.
  std::vector<std::size_t> goOn(Step& step) const {
    std::vector<std::size_t> past;
    for (;;) {
      const auto children = shownChildren(step.piece);
      std::size_t next = 0;
      if (plain(step, children)) {
        next = children.front();
      } else if (const auto onward = passed(step, children)) {
        next = *onward;
        std::copy_if(children.begin(), children.end(), std::back_inserter(past),
                     [next](std::size_t child) { return child != next; });
      } else {
        return past;
      }
      step.piece = next;
      lengthen(step.branch, pieces_.pieces[next]);
    }
  }

  void add(Step step) {
    Step slow = step;
    const auto past = goOn(step);
    if (!past.empty() && !addFold(step.parent, past)) {
      slow.noPassing = true;
      static_cast<void>(goOn(slow));
      // Opened by somebody: all of this way is wanted. Else it was too short to be worth a fold.
      slow.noPassing = wishes_.unfolded.contains(foldKey(past));
      step = std::move(slow);
    }
    const auto children = shownChildren(step.piece);
    const std::size_t node = addNode(step);
    const bool unfolded = step.unfolded;
    std::vector<std::size_t> quiet;
    std::vector<Step> next;
    for (const std::size_t child : children) {
      if (folding_ && !unfolded && !pieces_.pieces[child].loud) {
        quiet.push_back(child);
        continue;
      }
      Step below{child, node, {}, unfolded, step.noPassing};
      lengthen(below.branch, pieces_.pieces[child]);
      next.push_back(std::move(below));
    }
    fold(node, quiet, next);
    // The last one waiting is shown first.
    waiting_.insert(waiting_.end(), std::make_move_iterator(next.rbegin()),
                    std::make_move_iterator(next.rend()));
  }

  std::size_t addNode(const Step& step) {
    const CopperPiece& piece = pieces_.pieces[step.piece];
    TreeNode node;
    node.key = step.piece * 2;
    node.parent = step.parent;
    node.branch = step.branch;
    node.branch.text = branchWords(node.branch, pieces_);
    node.branch.part = partOn(node.branch, pieces_);
    node.branch.unknownWay = node.branch.unknownWay ||
                             std::any_of(node.branch.pieces.begin(), node.branch.pieces.end(),
                                         [](const TreePiece& p) { return p.kind == EdgeKind::unknownWay; });
    node.at = piece.at;
    node.suspicion = piece.suspicion;
    node.probe = piece.probe;
    if (piece.hub) node.kind = TreeNodeKind::unknownWay;
    if (piece.reading || piece.probe) {
      node.kind = TreeNodeKind::copper;
      node.label = besidePicture(nameOf(piece.placeName));
    }
    if (piece.reading) {
      node.mark = piece.reading->shape;
      node.value = piece.reading->value;
    }
    const std::size_t index = put(std::move(node));
    if (piece.pins.size() == 1)
      describe(tree_.nodes[index], piece.pins.front());
    else
      for (const CopperPiece::OnePin& pin : piece.pins) {
        TreeNode more;
        more.key = pieces_.pieces.size() * 2 + pin.node;
        more.parent = index;
        describe(more, pin);
        more.at = pin.at;
        put(std::move(more));
      }
    return index;
  }

  static void describe(TreeNode& node, const CopperPiece::OnePin& pin) {
    node.kind = TreeNodeKind::pin;
    node.label = QString::fromStdString(pin.label);
    node.pin = pin.pin;
    node.suspicion += pin.suspicion;
    node.probe = node.probe || pin.probe;
    if (pin.at) node.at = pin.at;
    if (pin.reading) {
      node.mark = pin.reading->shape;
      node.value = pin.reading->value;
    }
  }

  std::size_t put(TreeNode node) {
    const std::size_t index = tree_.nodes.size();
    if (index > 0) tree_.nodes[node.parent].children.push_back(index);
    tree_.nodes.push_back(std::move(node));
    return index;
  }

  [[nodiscard]] static std::size_t foldKey(const std::vector<std::size_t>& quiet) {
    return quiet.front() * 2 + 1;
  }

  /// One node for all pins of these branches; false: too few, or somebody wants to see them.
  bool addFold(std::size_t parent, const std::vector<std::size_t>& quiet) {
    TreeNode node;
    for (const std::size_t child : quiet)
      pieces_.below(child, [&](const CopperPiece& piece) {
        node.suspicion += piece.suspicion + piece.aboveSuspicion;
        for (const CopperPiece::OnePin& pin : piece.pins) {
          node.inside.push_back(pin.pin);
          node.suspicion += pin.suspicion;
        }
      });
    node.key = foldKey(quiet);
    if (node.inside.size() < leastFolded || wishes_.unfolded.contains(node.key)) return false;
    node.kind = TreeNodeKind::folded;
    const int pins = static_cast<int>(node.inside.size());
    node.label = QCoreApplication::translate("netmend::LineTree", "%n more pin(s)", nullptr, pins);
    node.parent = parent;
    put(std::move(node));
    return true;
  }

  void fold(std::size_t parent, const std::vector<std::size_t>& quiet, std::vector<Step>& next) {
    if (quiet.empty() || addFold(parent, quiet)) return;
    for (const std::size_t child : quiet) {
      Step below{child, parent, {}, true, true};
      lengthen(below.branch, pieces_.pieces[child]);
      next.push_back(std::move(below));
    }
  }

  const LinePieces& pieces_;
  const TreeWishes& wishes_;
  bool folding_ = false;
  LineTree tree_;
  std::vector<Step> waiting_;
};

} // namespace

const TreeNode* LineTree::find(std::size_t key) const {
  const auto found =
      std::find_if(nodes.begin(), nodes.end(), [key](const TreeNode& node) { return node.key == key; });
  return found == nodes.end() ? nullptr : &*found;
}

namespace {

/// Writes each suspect's letter on every branch and pin that it may be at.
void addLetters(LineTree& tree, const FaultCase& fault, const std::vector<std::string>& letters) {
  std::map<std::size_t, QString> ofEdge;
  std::map<PinId, QString> ofPin;
  for (std::size_t i = 0; i < letters.size() && i < fault.suspects.ranked.size(); ++i) {
    const QString letter = QString::fromStdString(letters[i]);
    if (letter.isEmpty() || fault.suspects.ranked[i].probability < leastLettered) continue;
    for (const FaultPlace& place : fault.suspects.ranked[i].places) {
      if (place.edge) ofEdge[*place.edge] += letter;
      if (place.kind == FaultKind::deadPin) ofPin[place.pin] += letter;
    }
  }
  const auto add = [](QString& text, const QString& more) {
    for (const QChar letter : more)
      if (!text.contains(letter)) text += letter;
  };
  for (TreeNode& node : tree.nodes) {
    for (const TreePiece& piece : node.branch.pieces)
      if (const auto found = ofEdge.find(piece.edge); found != ofEdge.end())
        add(node.branch.letters, found->second);
    if (const auto found = ofPin.find(node.pin); node.pin && found != ofPin.end())
      add(node.letters, found->second);
  }
}

} // namespace

LineTree lineTree(const Board& board, const FaultCase& fault, const TreeWishes& wishes) {
  const LinePieces pieces = linePieces(board, fault, wishes);
  LineTree tree = TreeMaker(pieces, wishes).make();
  tree.again = wishes.again;
  addLetters(tree, fault, wishes.letters);
  return tree;
}

} // namespace netmend
