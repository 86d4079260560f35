#include <algorithm>

#include <QCompleter>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "connector_lie.h"
#include "find_page.h"
#include "find_words.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"
#include "odd_pins.h"
#include "others_row.h"

/// What the Find station shows of the desk; what is done there is in find_page.cpp.
namespace netmend {

namespace {

constexpr double leastFit = 0.6; ///< of the letters' size, before more of the tree is folded

/// Where in the tree a suspect's place is.
std::optional<TreeSelection> placeInTree(const LineTree& tree, const FaultPlace& place) {
  for (const TreeNode& node : tree.nodes) {
    if (place.edge)
      for (const TreePiece& piece : node.branch.pieces)
        if (piece.edge == *place.edge) return TreeSelection{node.key, true};
    if (place.kind == FaultKind::deadPin && node.pin == place.pin) return TreeSelection{node.key, false};
    if (place.kind == FaultKind::open && !place.edge && node.kind == TreeNodeKind::unknownWay)
      return TreeSelection{node.key, false};
  }
  return std::nullopt;
}

/// How much of a suspect is at what is selected.
double shareAt(const TreeNode& node, bool branch, const Suspect& suspect) {
  double sum = 0.0;
  for (const FaultPlace& place : suspect.places) {
    const bool dead = place.kind == FaultKind::deadPin;
    const bool here = branch ? std::any_of(node.branch.pieces.begin(), node.branch.pieces.end(),
                                           [&](const TreePiece& piece) { return place.edge == piece.edge; })
                             : (dead && node.pin == place.pin) ||
                                   (!dead && !place.edge && node.kind == TreeNodeKind::unknownWay);
    if (here) sum += place.share;
  }
  return sum * suspect.probability;
}

} // namespace

void FindPage::refresh() {
  if (desk_.fault.net() != net_ || desk_.fault.pin() != pin_) {
    net_ = desk_.fault.net();
    pin_ = desk_.fault.pin();
    unfolded_.clear();
    listAll_ = false;
  }
  const bool fresh = desk_.fault.fault() != shown_;
  shown_ = desk_.fault.fault();
  if (fresh && shown_) letters_.give(*shown_);
  nameLine();
  showProbe();
  if (fresh) {
    showTree();
    showSuspects();
    listPlaces();
  }
  Q_EMIT overlayChanged();
}

void FindPage::pictureTurned() {
  const auto chosen = suspects_->chosen();
  showProbe();
  showTree();
  showSuspects();
  listPlaces();
  if (!shown_ || !chosen || *chosen >= shown_->suspects.ranked.size()) return;
  const QSignalBlocker quiet(suspects_); // what is selected in the tree stays
  suspects_->choose(*chosen);
  explain(*chosen);
}

/// The strip says which line it is; one without an odd pin is named beside it.
void FindPage::nameLine() {
  fillOddStrip(*strip_, desk_);
  const std::string line = desk_.fault.lineName();
  name_->setText(line.empty() ? tr("No line yet") : tr("Line %1").arg(QString::fromStdString(line)));
  name_->setVisible(!line.empty() && !strip_->chosen());
}

FootMode FindPage::footMode() const {
  const std::string line = desk_.fault.lineName();
  return {BandLook::job, line.empty() ? QString() : tr("FIND %1").arg(QString::fromStdString(line))};
}

QString FindPage::emptyWords() const {
  if (desk_.job.board() == nullptr) return tr("No board yet: open one, or type its connector, at Board");
  if (!desk_.fault.net() && !desk_.fault.pin())
    return desk_.walk.walk(false).readings.empty()
               ? tr("No odd pin yet: walk the connector first, or type a net or pin (Ctrl+L)")
               : tr("No pin of the walk is odd: walk another connector, or type a net or pin (Ctrl+L)");
  return desk_.fault.solving() ? tr("The readings are being weighed")
                               : tr("Nothing can be said about this line: name another (Ctrl+L)");
}

/// What this place read last in this way; empty: nothing yet.
QString FindPage::readBefore(const ProbeProposal& next) const {
  const ProbePlace& place = shown_->isolation.places[next.place];
  for (auto each = shown_->readings.rbegin(); each != shown_->readings.rend(); ++each)
    if (each->mode == next.mode && samePoint(each->point, ProbePoint{place.pin, place.label}))
      return QString::fromStdString(readingText(each->value, each->mode));
  return {};
}

void FindPage::showDue(const ProbeProposal& next) {
  const ProbePlace& place = shown_->isolation.places[next.place];
  const QString before = next.again ? readBefore(next) : QString();
  setLetters(*due_, Letters::reading, next.again);
  due_->setText(desk_.fault.solving() ? tr("Wait, the reading is being weighed")
                : next.again          ? tr("Once more, it may have missed")
                                      : tr("Next probe"));
  place_->setText(place.pin ? spokenPoint({place.pin, place.label})
                            : besidePicture(nameOf(shown_->names.probe(next.place))));
  lead_->setText(leadWords(*shown_, next, QString::fromStdString(desk_.walk.walk(false).other.label)));
  QString access = accessWords(*shown_, next);
  if (!access.isEmpty()) access[0] = access[0].toUpper();
  const QString line = next.again && !before.isEmpty() ? tr("Read %1 before.").arg(before)
                                                       : shown(probeLine(shown_->next, next));
  reason_->setText(QStringLiteral("%1 %2.").arg(line, access));
}

/// What each answer would leave. Asked again, the one that was read holds, and another makes it a slip.
void FindPage::showAnswers() {
  std::vector<AnswerRow> rows;
  const ProbeProposal* next = shown_ && !desk_.fault.solving() ? desk_.fault.nextProbe() : nullptr;
  if (next != nullptr) {
    const auto letters = letters_.ofRanked(*shown_);
    const QString before = next->again ? readBefore(*next) : QString();
    for (const ProbeAnswer& answer : answersAt(*shown_, *next, letteredSuspects)) {
      AnswerRow row;
      const QString value = answer.near ? QString::number(*answer.near, 'f', 3) : QStringLiteral("OL");
      const bool repeats = !before.isEmpty() && (before == QStringLiteral("OL")) == !answer.near;
      row.reads = repeats ? tr("%1 again").arg(before) : answer.near ? tr("near %1").arg(value) : value;
      row.then = tr("leaves");
      for (const std::size_t i : answer.leaves)
        if (!letters[i].empty()) row.letters.push_back(QString::fromStdString(letters[i]));
      if (!before.isEmpty() && !repeats) row.after = tr("a slip; I: comes and goes");
      rows.push_back(std::move(row));
    }
    // Who reads something after all has to know what becomes of the OL.
    if (before == QStringLiteral("OL") && rows.size() == 1 && next->expected.overLimit < 1.0)
      rows.push_back({tr("near %1").arg(QString::number(next->expected.mean.value, 'f', 3)),
                      {},
                      {},
                      tr("a slip; I: comes and goes")});
  }
  answers_->setRows(std::move(rows));
}

void FindPage::showProbe() {
  const ProbeProposal* next = desk_.fault.nextProbe();
  const bool due = shown_ && next != nullptr;
  for (QPushButton* button : {overLimit_, cannotReach_})
    button->setVisible(due);
  for (QPushButton* button : {overLimit_, cannotReach_})
    button->setEnabled(!desk_.fault.solving());
  reachAll_->setVisible(!desk_.fault.unreachable().empty());
  for (QLabel* label : {place_, lead_, reason_, again_, unknown_})
    label->clear();
  const auto& meters = desk_.job.data().probing.meters;
  const auto meter = std::find_if(meters.begin(), meters.end(),
                                  [&](const MeterProfile& each) { return each.id == desk_.walk.meter(); });
  const QString mode = shown(nameOf(wantedMode()));
  figure_->setCaption(meter == meters.end() || meter->name.empty()
                          ? mode
                          : shown(dataPattern(meter->name)) + QStringLiteral(", ") + mode);
  if (!shown_) {
    setLetters(*due_, Letters::reading);
    due_->setText(tr("Next probe"));
    lead_->setText(emptyWords());
  } else if (due) {
    showDue(*next);
  } else {
    const FindAdvice advice = adviceFor(*shown_);
    setLetters(*due_, Letters::reading);
    due_->setText(tr("Stop probing"));
    place_->setText(advice.head);
    lead_->setText(advice.text);
  }
  const QString otherwise = otherwiseWords();
  comesAndGoes_->setVisible(!otherwise.isEmpty());
  if (shown_) {
    QStringList again;
    if (!otherwise.isEmpty()) again << otherwise;
    if (!due || !next->again)
      for (const Said& text : readingsToTakeAgain(shown_->isolation, shown_->names, shown_->suspects))
        again << tr("Take again: %1.").arg(besidePicture(text));
    again_->setText(again.join(QLatin1Char('\n')));
    unknown_->setText(unknownWords(*shown_, desk_.job.places()));
  }
  for (QLabel* label : {place_, lead_, reason_, again_, unknown_})
    label->setVisible(!label->text().isEmpty());
  showAnswers();
  share();
}

void FindPage::showSuspects() {
  suspects_->setFault(shown_.get(), shown_ ? letters_.ofRanked(*shown_) : std::vector<std::string>(),
                      listAll_);
  others_->setRow(suspects_->rest());
  all_->setVisible(listAll_ || !suspects_->rest().words.isEmpty());
  explanation_->clear();
  share();
  if (!shown_) return;
  const QSignalBlocker quiet(suspects_); // a new order selects nothing in the tree
  suspects_->choose(0);
  if (!shown_->suspects.ranked.empty()) explain(0);
}

/// Why this probe, and why this one is suspected.
void FindPage::explain(std::size_t suspect) {
  QStringList parts;
  if (const ProbeProposal* next = desk_.fault.nextProbe())
    parts << effortWords(*shown_, *next) + QStringLiteral(".\n") + reasonWords(*shown_, *next);
  else
    parts << besidePicture(adviceReasons(shown_->isolation, shown_->names, shown_->next)) +
                 QStringLiteral(".");
  parts << suspectWords(*shown_, shown_->suspects.ranked[suspect]);
  explanation_->setPlainText(parts.join(QStringLiteral("\n\n")));
}

void FindPage::showWhy() {
  explanation_->setVisible(why_);
  showProbe();
}

PinId FindPage::sourcePin() const {
  if (desk_.fault.pin()) return desk_.fault.pin();
  if (!shown_) return {};
  const CopperGraph& graph = shown_->line.graph;
  const auto terminals = shown_->line.terminals();
  for (const ProbePoint& point : desk_.walk.walk(false).points)
    for (const NodeIndex node : terminals)
      if (const auto* pin = std::get_if<PinId>(&graph[node].object); pin != nullptr && *pin == point.pin)
        return *pin;
  return {};
}

std::vector<PlaceReading> FindPage::placeReadings() const {
  std::vector<PlaceReading> out;
  const Job* job = desk_.job.job();
  if (job == nullptr) return out;
  for (const JobReading* entry : inForce(job->readings)) {
    // A reading between two points of the board is about neither of them alone.
    if (entry->purpose == ReadingPurpose::proof || entry->reading.other.pin) continue;
    const Reading& reading = entry->reading;
    out.push_back({reading.point.pin, reading.point.label, markForVerdict(entry->kind()),
                   QString::fromStdString(readingText(reading.value, reading.mode))});
  }
  return out;
}

void FindPage::showTree() {
  const BoardUnderWork* board = desk_.job.board();
  if (!shown_ || board == nullptr) {
    tree_->setTree({});
  } else {
    TreeWishes wishes;
    wishes.source = sourcePin();
    wishes.readings = placeReadings();
    if (const ProbeProposal* next = desk_.fault.nextProbe()) {
      wishes.probe = next->place;
      wishes.probeOther = next->other;
      wishes.again = next->again;
    }
    wishes.letters = letters_.ofRanked(*shown_);
    wishes.unfolded = unfolded_;
    tree_->setTree(lineTree(*board->board, *shown_, wishes));
    if (tree_->fit() < leastFit) {
      // Read from a distance or not at all: what is quiet is folded, on short lines too.
      wishes.foldAbove = 0;
      tree_->setTree(lineTree(*board->board, *shown_, wishes));
    }
  }
  saySelected();
  share();
}

void FindPage::saySelected() {
  selected_->setText(tree_->selectedText());
  selected_->setVisible(tree_->selection().has_value());
}

void FindPage::suspectChosen() {
  const auto index = suspects_->chosen();
  if (selecting_ || !shown_ || !index || *index >= shown_->suspects.ranked.size()) return;
  const Suspect& suspect = shown_->suspects.ranked[*index];
  explain(*index);
  selectPlace(suspect);
}

/// The likeliest of its places that the tree shows.
void FindPage::selectPlace(const Suspect& suspect) {
  std::optional<TreeSelection> found;
  for (const FaultPlace& place : suspect.places) {
    found = placeInTree(tree_->tree(), place);
    if (found) break;
  }
  tree_->select(found);
  saySelected();
  Q_EMIT overlayChanged();
}

void FindPage::treeSelected() {
  saySelected();
  const TreeNode* node = tree_->selectedNode();
  if (shown_ && node != nullptr) {
    const bool branch = tree_->selection()->branch;
    std::optional<std::size_t> best;
    double most = 0.0;
    for (std::size_t i = 0; i < shown_->suspects.ranked.size(); ++i)
      if (const double share = shareAt(*node, branch, shown_->suspects.ranked[i]); share > most) {
        most = share;
        best = i;
      }
    if (best) {
      selecting_ = true;
      suspects_->choose(*best);
      selecting_ = false;
      explain(*best);
    }
  }
  Q_EMIT overlayChanged();
}

void FindPage::pinChosen(PinId pin) {
  const auto find = [&](auto&& fits) {
    const auto& nodes = tree_->tree().nodes;
    const auto found = std::find_if(nodes.begin(), nodes.end(), fits);
    return found == nodes.end() ? nullptr : &*found;
  };
  const auto itself = [&](const TreeNode& node) { return node.pin == pin; };
  if (const TreeNode* fold = find([&](const TreeNode& node) {
        return std::find(node.inside.begin(), node.inside.end(), pin) != node.inside.end();
      })) {
    unfolded_.insert(fold->key);
    showTree();
  }
  if (const TreeNode* node = find(itself)) {
    tree_->select(TreeSelection{node->key, false});
    treeSelected();
    return;
  }
  const BoardUnderWork* board = desk_.job.board();
  if (board == nullptr) return;
  const QString label = QString::fromStdString(pinLabel(*board->board, pin));
  line_->setText(label);
  Q_EMIT told(tr("%1 is not on this line: Ctrl+L, Enter looks at its own").arg(label), false);
}

Overlay FindPage::overlay() const {
  if (!shown_) return {};
  Overlay overlay = suspectsOverlay(*shown_, letters_.ofRanked(*shown_));
  if (const ProbeProposal* next = desk_.fault.nextProbe(); next != nullptr && next->again)
    if (const auto& at = shown_->isolation.places[next->place].at)
      overlay.marks.push_back({*at, MarkShape::ring}); // a second one: it is asked for again
  addSelection(overlay);
  return overlay;
}

void FindPage::addSelection(Overlay& overlay) const {
  const TreeNode* node = tree_->selectedNode();
  if (node == nullptr) return;
  if (!tree_->selection()->branch) {
    if (node->at) overlay.marks.push_back({*node->at, MarkShape::hollow, node->label.toStdString()});
    return;
  }
  Box box;
  const CopperGraph& graph = shown_->line.graph;
  for (const auto e : boost::make_iterator_range(edges(graph))) {
    const CopperEdge& edge = graph[e];
    if (std::none_of(node->branch.pieces.begin(), node->branch.pieces.end(),
                     [&](const TreePiece& piece) { return piece.edge == edge.index; }))
      continue;
    for (const auto& end : {edge.from, edge.to, graph[source(e, graph)].at, graph[target(e, graph)].at})
      if (end) box.include(*end);
  }
  if (box.empty()) return;
  const Length more = Length::fromMm(0.8);
  const Point low{box.min.x - more, box.min.y - more};
  const Point high{box.max.x + more, box.max.y + more};
  const QString label = branchText(node->branch).isEmpty() ? node->branch.text : branchText(node->branch);
  overlay.lines.push_back(
      {{low, {high.x, low.y}, high, {low.x, high.y}}, LineStyle::outline, label.toStdString()});
}

} // namespace netmend
