// How the page of the board is laid out, and what of its parts is shown.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QProgressBar>
#include <QPushButton>
#include <QSettings>
#include <QShortcut>
#include <QStackedLayout>
#include <QStackedWidget>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "board_page.h"
#include "draw_view.h"
#include "netmend/drawing/face.h"
#include "part_rows.h"

namespace netmend {

namespace {

constexpr int leastForAsides = 520; ///< pixels at 100 %, of height
constexpr int mostCards = 3;        ///< boards one had, in sight without scrolling

/// All of it is a place to drop a file on: a dashed edge says so.
class DropZone : public QWidget {
public:
  using QWidget::QWidget;

protected:
  void paintEvent(QPaintEvent*) override {
    const FaceColors& colors = faceColors(faceTheme());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double width = 2 * faceScale();
    painter.setPen(QPen(colors.outline, width, Qt::DashLine));
    painter.setBrush(colors.card);
    const double half = width / 2;
    painter.drawRoundedRect(QRectF(rect()).adjusted(half, half, -half, -half), scaled(face::round),
                            scaled(face::round));
  }
};

/// A board one had: its file's name, the folder, and the key.
class RecentPainter : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
    const auto* list = qobject_cast<const QListWidget*>(option.widget);
    const int room = list != nullptr ? list->viewport()->width() : scaled(900);
    return {std::max(scaled(180), room / mostCards - scaled(2)), scaled(68)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FaceColors& colors = faceColors(faceTheme());
    const int gap = scaled(face::grid);
    QRect card = option.rect.adjusted(0, 0, -gap, 0);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool hasKeys = option.state.testFlag(QStyle::State_HasFocus);
    painter->setPen(QPen(hasKeys ? colors.accent : colors.outline, hasKeys ? colors.edge : colors.hair));
    painter->setBrush(colors.card);
    painter->drawRoundedRect(QRectF(card).adjusted(1, 1, -1, -1), face::round, face::round);
    card.adjust(gap * 3 / 2, gap, -gap * 3 / 2, -gap);
    painter->setPen(colors.ink);
    if (index.row() < mostCards) {
      const QString key = QKeySequence(static_cast<int>(Qt::ALT) | (Qt::Key_1 + index.row()))
                              .toString(QKeySequence::NativeText);
      const QSize size = keyCapSize(key);
      paintKeyCap(*painter,
                  {QPoint(card.right() - size.width() + 1, card.center().y() - size.height() / 2), size}, key,
                  colors.field);
      card.setRight(card.right() - size.width() - gap);
    }
    const QFileInfo info(index.data(Qt::UserRole).toString());
    const auto line = [&](Letters letters, bool bold, const QString& text, int where) {
      const QFont font = lettersFont(letters, bold);
      painter->setFont(font);
      painter->drawText(card, where, QFontMetrics(font).elidedText(text, Qt::ElideMiddle, card.width()));
    };
    line(Letters::reading, true, info.fileName(), Qt::AlignTop);
    painter->setPen(colors.quiet);
    line(Letters::small, false,
         index.data(Qt::UserRole + 1).toBool() ? info.absolutePath()
                                               : index.data(Qt::UserRole + 2).toString(),
         Qt::AlignBottom);
    painter->restore();
  }
};

QLabel* centred(Letters letters, const QString& text, QWidget* parent) {
  QLabel* label = makeLabel(letters, {}, parent);
  label->setText(text);
  label->setAlignment(Qt::AlignCenter);
  return label;
}

} // namespace

void BoardPage::makeOverview(QWidget& overview) {
  auto* layout = new QVBoxLayout(&overview);
  layout->addWidget(opening());
  layout->addWidget(question());
  auto* offered = new QWidget(&overview);
  auto* names = new QVBoxLayout(offered);
  names->setContentsMargins({});
  auto* label = new QLabel(tr("&Boards in the archive"), offered);
  label->setBuddy(offered_);
  names->addWidget(label);
  names->addWidget(offered_);
  setLetters(*offered_, Letters::metre);
  offered_->setObjectName(QStringLiteral("offeredBoards"));
  offered->hide();
  layout->addWidget(offered, 1);
  connect(offered_, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
    desk_.job.openBoardFile(std::filesystem::path(archive_.toStdU16String()), item->text().toStdString());
  });
  views_ = new QStackedWidget(&overview);
  views_->addWidget(dropZone());
  views_->addWidget(beside());
  // What there is no room for goes (`space`): nothing here makes the window larger.
  for (int i = 0; i < views_->count(); ++i)
    views_->widget(i)->setMinimumSize(1, 1);
  layout->addWidget(views_, 3);
}

QWidget* BoardPage::opening() {
  auto* box = new QWidget(this);
  auto* work = new QVBoxLayout(box);
  work->setContentsMargins({});
  work->addWidget(opening_);
  auto* row = new QHBoxLayout;
  row->addWidget(progress_, 1);
  row->addWidget(cancel_);
  work->addLayout(row);
  progress_->setRange(0, 100);
  connect(cancel_, &QPushButton::clicked, this, [this] { desk_.job.cancelOpening(); });
  return box;
}

QLineEdit* BoardPage::connectorField(const QString& hint) {
  auto* field = new QLineEdit(this);
  field->setPlaceholderText(hint);
  field->setAccessibleName(tr("Connector in one line"));
  connect(field, &QLineEdit::returnPressed, this, [this, field] { typedConnector(*field); });
  return field;
}

QWidget* BoardPage::dropZone() {
  auto* page = new QWidget(this);
  auto* layout = new QVBoxLayout(page);
  layout->setContentsMargins({});
  drop_ = new DropZone(page);
  auto* inside = new QVBoxLayout(drop_);
  inside->addStretch(3);
  QLabel* title = centred(Letters::large, tr("Drop the board file here"), drop_);
  setLetters(*title, Letters::large, true);
  inside->addWidget(title);
  QLabel* kinds = centred(Letters::metre, tr("a CAD board, a netlist, a photo, or several at once"), drop_);
  setQuiet(*kinds);
  asides_ = {kinds};
  inside->addWidget(kinds);
  QPushButton* file = makeButton(tr("Open a board file"), QKeySequence::Open, drop_);
  setMain(*file);
  connect(file, &QPushButton::clicked, this, &BoardPage::chooseFile);
  inside->addWidget(file, 0, Qt::AlignHCenter);
  inside->addStretch(2);
  QLabel* or_ = centred(Letters::reading, tr("no file? type what you see"), drop_);
  setQuiet(*or_);
  asides_.push_back(or_);
  inside->addWidget(or_);
  typed_ = connectorField(tr("J4, 40 pins, two rows"));
  setLetters(*typed_, Letters::metre);
  setScaledHeight(*typed_, 52);
  inside->addWidget(typed_, 0, Qt::AlignHCenter);
  QLabel* enough = centred(
      Letters::reading, tr("That is enough for the whole job. What is not known is named as you go."), drop_);
  setQuiet(*enough);
  asides_.push_back(enough);
  inside->addWidget(enough);
  inside->addStretch(3);
  layout->addWidget(drop_, 1);
  recentBox_ = new QWidget(page);
  auto* row = new QHBoxLayout(recentBox_);
  row->setContentsMargins({});
  auto* label = new QLabel(tr("Boards\nyou had"), recentBox_);
  label->setBuddy(recent_);
  setQuiet(*label);
  row->addWidget(label);
  recent_->setItemDelegate(new RecentPainter(recent_));
  recent_->setFlow(QListView::LeftToRight);
  recent_->setFrameShape(QFrame::NoFrame);
  recent_->viewport()->setAutoFillBackground(false);
  recent_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  recent_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  recent_->setResizeMode(QListView::Adjust);
  recent_->setAccessibleName(tr("Recent boards"));
  setScaledHeight(*recent_, 70);
  row->addWidget(recent_, 1);
  layout->addWidget(recentBox_);
  connect(recent_, &QListWidget::itemActivated, this,
          [this](const QListWidgetItem* item) { open(item->data(Qt::UserRole).toString()); });
  for (int i = 0; i < mostCards; ++i) {
    auto* key = new QShortcut(QKeySequence(static_cast<int>(Qt::ALT) | (Qt::Key_1 + i)), drop_);
    connect(key, &QShortcut::activated, this, [this, i] {
      if (const QListWidgetItem* item = recent_->item(i)) open(item->data(Qt::UserRole).toString());
    });
  }
  return page;
}

QWidget* BoardPage::beside() {
  auto* page = new QWidget(this);
  auto* layout = new QVBoxLayout(page);
  layout->setContentsMargins({});
  setLetters(*name_, Letters::large, true);
  layout->addWidget(name_);
  setQuiet(*known_);
  layout->addWidget(known_);
  filter_->setPlaceholderText(tr("Part, pin, net or value") + QStringLiteral("   ") +
                              QKeySequence(QKeySequence::Find).toString(QKeySequence::NativeText));
  filter_->setAccessibleName(tr("Search the parts"));
  filter_->installEventFilter(this);
  connect(filter_, &QLineEdit::textChanged, parts_, &PartRows::filter);
  connect(filter_, &QLineEdit::returnPressed, this, [this] { parts_->setFocus(); });
  layout->addWidget(filter_);
  parts_->setAccessibleName(tr("Walk which part"));
  connect(parts_, &QListWidget::itemActivated, this, &BoardPage::walkChosen);
  connect(parts_, &QListWidget::currentItemChanged, this, [this] {
    const QString name = parts_->chosenName();
    walk_->setVisible(!name.isEmpty());
    walk_->setText(tr("Walk %1").arg(name));
    Q_EMIT overlayChanged();
  });
  layout->addWidget(parts_, 1);
  notices_->setWordWrap(true);
  notices_->setAccessibleName(tr("What the file left open"));
  layout->addWidget(notices_, 1);
  another_ = connectorField(tr("or type:  J4, 40 pins, two rows"));
  layout->addWidget(another_);
  auto* ways = new WrapLayout;
  notes_->setCheckable(true);
  notes_->setAccessibleName(tr("What the file left open"));
  connect(notes_, &QPushButton::toggled, this, &BoardPage::showNotes);
  ways->addWidget(notes_);
  QPushButton* other = makeButton(tr("Other board"), QKeySequence::Open, page);
  other->setAccessibleName(tr("Open a board file"));
  connect(other, &QPushButton::clicked, this, &BoardPage::chooseFile);
  ways->addWidget(other);
  layout->addLayout(ways);
  return page;
}

void BoardPage::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins({});
  QPushButton* draw = makePrompt(tr("Draw it"), QKeySequence(drawKey), keys_);
  draw->setObjectName(QStringLiteral("drawIt"));
  connect(draw, &QPushButton::clicked, this, [this] { setDrawing(true); });
  row->addWidget(draw);
  walk_ = makePrompt(tr("Walk"), QKeySequence(Qt::Key_Return), keys_);
  setMain(*walk_);
  // The way on, as everywhere.
  walk_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
  connect(walk_, &QPushButton::clicked, this, &BoardPage::walkChosen);
  row->addWidget(walk_);
}

void BoardPage::space() {
  const int gap = scaled(2 * face::grid);
  const int margin = scaled(face::margin);
  const bool hasBoard = desk_.job.board() != nullptr;
  // Beside the map the splitter's handle is the distance.
  stack_->widget(0)->layout()->setContentsMargins(hasBoard ? gap / 2 : margin, gap, margin, gap);
  stack_->widget(0)->layout()->setSpacing(gap);
  for (QWidget* view : {views_->widget(0), views_->widget(1)})
    view->layout()->setSpacing(view == views_->widget(0) ? gap : gap / 2);
  drop_->layout()->setSpacing(gap);
  recentBox_->layout()->setSpacing(gap);
  keys_->layout()->setSpacing(scaled(face::grid));
  const bool tall = height() >= scaled(leastForAsides);
  for (QLabel* aside : asides_)
    aside->setVisible(tall);
  recentBox_->setVisible(recent_->count() > 0 && tall);
  typed_->setFixedWidth(std::clamp(width() - 2 * margin - 2 * gap, scaled(200), scaled(600)));
}

void BoardPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  space();
}

bool BoardPage::eventFilter(QObject* watched, QEvent* event) {
  if (watched == filter_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Escape) filter_->clear();
    if (key == Qt::Key_Escape || key == Qt::Key_Down) {
      parts_->setFocus();
      return true;
    }
  }
  return StationPage::eventFilter(watched, event);
}

bool BoardPage::filter() {
  if (drawing_ || !filter_->isVisible()) return false;
  filter_->setFocus();
  filter_->selectAll();
  return true;
}

bool BoardPage::goesOnItself() const {
  return !drawing_ && desk_.job.board() != nullptr && parts_->count() > 0;
}

void BoardPage::showNotes(bool show) {
  const QSignalBlocker quiet(notes_);
  notes_->setChecked(show);
  notices_->setVisible(show);
  parts_->setVisible(!show);
  filter_->setVisible(!show);
  if (show) notices_->setFocus();
}

void BoardPage::walkChosen() {
  const PartId part = parts_->chosen();
  if (!part) return;
  desk_.walk.setPart(part);
  Q_EMIT goTo(Station::walk);
}

void BoardPage::pinChosen(PinId id) {
  const BoardUnderWork* open = desk_.job.board();
  const Pin* pin = open != nullptr ? open->board->pins.find(id) : nullptr;
  if (pin != nullptr) parts_->choose(pin->part);
}

Overlay BoardPage::overlay() const {
  const BoardUnderWork* open = desk_.job.board();
  if (drawing_ || open == nullptr) return {};
  const Part* part = open->board->parts.find(parts_->chosen());
  if (part == nullptr) return {};
  Box box;
  for (const Point p : part->body.valueOr({}))
    box.include(p);
  for (const PinId pin : open->lookup->pinsOf(part->id))
    for (const PadId id : open->lookup->padsOf(pin))
      if (const Pad* pad = open->board->pads.find(id); pad != nullptr && pad->position.known()) {
        const Size size = pad->size.valueOr({});
        const Length half = std::max(size.width, size.height) / 2;
        box.include({pad->position.value.x - half, pad->position.value.y - half});
        box.include({pad->position.value.x + half, pad->position.value.y + half});
      }
  if (box.empty()) return {};
  std::string name = part->reference;
  if (!part->value.valueOr("").empty()) name += " " + part->value.value;
  Overlay overlay;
  overlay.lines.push_back({{box.min, {box.max.x, box.min.y}, box.max, {box.min.x, box.max.y}},
                           LineStyle::chosen,
                           asItIs(std::move(name))});
  return overlay;
}

void BoardPage::listRecent() {
  recent_->clear();
  for (const QString& file : QSettings().value(QString::fromLatin1(recentKey)).toStringList()) {
    const QFileInfo info(file);
    auto* item = new QListWidgetItem(info.fileName(), recent_);
    item->setToolTip(info.absoluteFilePath());
    item->setData(Qt::UserRole, file);
    item->setData(Qt::UserRole + 1, info.exists());
    item->setData(Qt::UserRole + 2, tr("not there any more"));
  }
  recentBox_->setVisible(recent_->count() > 0 && height() >= scaled(leastForAsides));
}

void BoardPage::listParts() {
  if (desk_.job.board() == nullptr) {
    parts_->setRows({}, {});
    return walk_->hide();
  }
  const BoardUnderWork& open = *desk_.job.board();
  std::map<PartId, int> walks;
  for (const Walk& walk : desk_.job.goodWalks()) {
    std::set<PartId> walked;
    for (const Reading& reading : walk.readings)
      if (const Pin* pin = open.board->pins.find(reading.point.pin)) walked.insert(pin->part);
    for (const PartId part : walked)
      ++walks[part];
  }
  std::vector<PartRow> rows;
  for (const PartId id : desk_.walk.partsToWalk()) {
    const Part& part = *open.board->parts.find(id);
    PartRow row;
    row.id = id;
    row.name = QString::fromStdString(part.reference);
    row.what = QString::fromStdString(part.value.valueOr(""));
    row.connector = part.kind.known() && part.kind.value == PartKind::connector;
    for (const PinId pinId : open.lookup->pinsOf(id)) {
      ++row.pins;
      const Pin* pin = open.board->pins.find(pinId);
      const Net* net = pin != nullptr && pin->net.known() ? open.board->nets.find(pin->net.value) : nullptr;
      row.also += QString::fromStdString(pinLabel(*open.board, pinId)).toLower() + QLatin1Char('\n');
      if (net != nullptr) row.also += QString::fromStdString(net->name).toLower() + QLatin1Char('\n');
    }
    row.text = row.name + QStringLiteral("    ") + tr("%n pin(s)", nullptr, row.pins);
    if (!row.what.isEmpty()) row.text += QStringLiteral("    ") + row.what;
    if (const int good = walks[id]; good > 0) row.walks = tr("%n good walk(s)", nullptr, good);
    rows.push_back(std::move(row));
  }
  parts_->setRows(rows, parts_->chosen() ? parts_->chosen() : desk_.walk.part());
  parts_->filter(filter_->text());
  walk_->setVisible(parts_->count() > 0);
  walk_->setText(tr("Walk %1").arg(parts_->chosenName()));
}

} // namespace netmend
