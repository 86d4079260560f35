#include "proposal_card.h"

#include <QLabel>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "board_clip.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/jumper.h"
#include "proposal_words.h"

namespace netmend {

namespace {

constexpr int leastCard = 168;        ///< of its height, pixels at 100 %
constexpr int numberBlock = 80;       ///< of its width
constexpr double leastForBoth = 1120; ///< of its width, for both landings close up
const Length closeUp = Length::fromMm(2.2);

/// Figures in columns that have the same places in all cards of one width.
class FiguresRow : public QWidget {
public:
  FiguresRow(std::vector<ProposalFigure> figures, QWidget* parent)
      : QWidget(parent), figures_(std::move(figures)) {
    setScaledHeight(*this, 62);
    setObjectName(QStringLiteral("cardFigures"));
    QStringList words;
    for (const ProposalFigure& each : figures_)
      words << QStringList{each.value, each.unit, each.caption}.join(QLatin1Char(' ')).simplified();
    setAccessibleName(words.join(QStringLiteral("; ")));
  }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    const FaceColors& colors = faceColors(faceTheme());
    const int column = width() / static_cast<int>(figures_.size());
    for (std::size_t i = 0; i < figures_.size(); ++i) {
      const ProposalFigure& figure = figures_[i];
      const int left = static_cast<int>(i) * column;
      const int room = column - scaled(face::grid);
      // Length and worth decide: bold.
      painter.setFont(lettersFont(i < 2 ? Letters::large : Letters::metre, i < 2));
      painter.setPen(colors.ink);
      const QRect line(left, 0, room, scaled(40));
      painter.drawText(line, Qt::AlignLeft | Qt::AlignBottom, figure.value);
      const int value = painter.fontMetrics().horizontalAdvance(figure.value) + scaled(6);
      painter.setFont(lettersFont(Letters::reading));
      painter.drawText(line.adjusted(value, 0, scaled(8), -scaled(3)), Qt::AlignLeft | Qt::AlignBottom,
                       figure.unit);
      painter.setFont(lettersFont(Letters::small));
      painter.setPen(colors.quiet);
      painter.drawText(QRect(left, scaled(42), room, scaled(20)), Qt::AlignLeft | Qt::AlignVCenter,
                       painter.fontMetrics().elidedText(figure.caption, Qt::ElideRight, room));
    }
  }

private:
  std::vector<ProposalFigure> figures_;
};

/// A caution has a thick outline: told without its colour.
class Chip : public QWidget {
public:
  Chip(ProposalChip chip, QWidget* parent) : QWidget(parent), chip_(std::move(chip)) {
    setObjectName(chip_.caution ? QStringLiteral("caution") : QStringLiteral("need"));
    setAccessibleName(chip_.text);
    setToolTip(chip_.text);
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
  }
  [[nodiscard]] QSize sizeHint() const override {
    const QFontMetrics metrics(lettersFont(Letters::small));
    return {std::min(metrics.horizontalAdvance(chip_.text) + scaled(20), scaled(400)), scaled(28)};
  }
  [[nodiscard]] QSize minimumSizeHint() const override { return {scaled(60), scaled(28)}; }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const FaceColors& colors = faceColors(faceTheme());
    const double line = (chip_.caution ? colors.edge : colors.hair) * faceScale();
    painter.setPen(QPen(chip_.caution ? colors.odd : colors.outline, line));
    painter.drawRoundedRect(QRectF(rect()).adjusted(line / 2, line / 2, -line / 2, -line / 2),
                            face::round * faceScale(), face::round * faceScale());
    painter.setFont(lettersFont(Letters::small));
    painter.setPen(colors.ink);
    painter.drawText(rect(), Qt::AlignCenter,
                     painter.fontMetrics().elidedText(chip_.text, Qt::ElideRight, width() - scaled(12)));
  }

private:
  ProposalChip chip_;
};

Box roundAbout(Point at) {
  return {{at.x - closeUp, at.y - closeUp}, {at.x + closeUp, at.y + closeUp}};
}

} // namespace

ProposalCard::ProposalCard(const Content& content, QWidget* parent)
    : QFrame(parent), proposal_(content.proposal), number_(content.number), block_(new QWidget(this)),
      way_(new BoardClip(this)), from_(new BoardClip(this)), to_(new BoardClip(this)),
      reasons_(makeLabel(Letters::reading, QStringLiteral("cardReasons"), this)),
      remarks_(makeLabel(Letters::reading, QStringLiteral("cardRemarks"), this)) {
  setFocusPolicy(Qt::TabFocus);
  setObjectName(QStringLiteral("proposalCard"));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(block_);
  row->addWidget(way_, 4);
  row->addWidget(facts(content), 5);
  row->addWidget(from_);
  row->addWidget(to_);
  addClips(content);
  reasons_->setText(reasons(content.places));
  remarks_->setText(remarks(content.places));
  setWhy(false);
  setAccessibleName(tr("Proposal %1: %2").arg(number_).arg(endsOf(proposal_, content.places)));
  setAccessibleDescription(remarks_->text());
  share();
}

QWidget* ProposalCard::facts(const Content& content) {
  auto* box = new QWidget(this);
  auto* column = new QVBoxLayout(box);
  column->setContentsMargins(scaled(20), scaled(8), scaled(12), scaled(8));
  column->setSpacing(scaled(6));
  auto* ends = makeLabel(Letters::metre, QStringLiteral("cardPlaces"), box);
  setLetters(*ends, Letters::metre, true);
  ends->setText(endsOf(proposal_, content.places));
  column->addWidget(ends);
  column->addWidget(
      new FiguresRow(figuresOf(proposal_, mendedShare(content.fault, proposal_), content.work), box));
  auto* chips = new WrapLayout;
  for (const ProposalChip& chip : chipsOf(proposal_, content.places))
    chips->addWidget(new Chip(chip, box));
  column->addLayout(chips);
  for (QLabel* label : {remarks_, reasons_}) {
    label->setParent(box);
    column->addWidget(label);
  }
  column->addStretch(1);
  return box;
}

void ProposalCard::addClips(const Content& content) {
  Overlay overlay = jumperOverlay(content.fault, proposal_, content.places);
  for (OverlayMark& mark : overlay.marks)
    mark.label = {};
  for (OverlayLine& line : overlay.lines)
    line.label = {};
  overlay.pinLabels = false;
  way_->showPlace(content.seen, proposal_.side, overlay);
  overlay.scaleBar = false;
  overlay.partLabels = false;
  from_->showPlace(roundAbout(proposal_.from.at), proposal_.side, overlay,
                   placeOf(proposal_.from, content.places));
  to_->showPlace(roundAbout(proposal_.to.at), proposal_.side, overlay, placeOf(proposal_.to, content.places));
}

/// What makes up its points, and why it is as it is.
QString ProposalCard::reasons(const PlaceNames& places) const {
  QStringList lines{tr("%1 mm on the %2; %3")
                        .arg(QString::number(proposal_.length.mm(), 'f', 1),
                             proposal_.side == Side::top ? tr("top side") : tr("bottom side"),
                             shown(dataPattern(proposal_.wire.wire.name))),
                    tr("%1 points").arg(QString::number(proposal_.total.value, 'f', 1))};
  for (const ScoreTerm& term : proposal_.terms)
    lines << tr("%1  %2: %3")
                 .arg(QString::number(term.price.value, 'f', 1),
                      besidePicture(nameOf(term, proposal_, places)), shown(figuresOf(term)));
  lines << tr("Current: %1").arg(shown(currentSaid(proposal_.wire)));
  lines << besidePicture(whyNotStraight(proposal_.detour));
  return lines.join(QLatin1Char('\n'));
}

QString ProposalCard::remarks(const PlaceNames& places) const {
  QStringList lines{besidePicture(differenceSaid(proposal_, places))};
  for (const Said& note : notesOn(proposal_, places))
    lines << tr("Note: %1").arg(besidePicture(note));
  for (const Said& warning : wireWarnings(proposal_.wire))
    lines << tr("Warning: %1").arg(shown(warning));
  return lines.join(QLatin1Char('\n'));
}

void ProposalCard::setWhy(bool why) {
  reasons_->setVisible(why);
  remarks_->setVisible(why);
}

void ProposalCard::setScene(const std::shared_ptr<const BoardScene>& scene) {
  for (BoardClip* clip : {way_, from_, to_})
    clip->setScene(scene);
}

void ProposalCard::setChosen(bool chosen) {
  chosen_ = chosen;
  update();
}

void ProposalCard::share() {
  setMinimumHeight(scaled(leastCard));
  const int edge = scaled(faceColors(faceTheme()).edge + 1);
  layout()->setContentsMargins(edge, edge, edge, edge);
  block_->setFixedWidth(scaled(numberBlock));
  const bool roomy = width() >= scaled(leastForBoth);
  for (BoardClip* clip : {from_, to_}) {
    clip->setVisible(roomy);
    clip->setFixedWidth(scaled(width() >= scaled(1400) ? 186 : 140));
  }
  way_->setVisible(width() >= scaled(700));
}

void ProposalCard::resizeEvent(QResizeEvent* event) {
  QFrame::resizeEvent(event);
  share();
}

void ProposalCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const FaceColors& colors = faceColors(faceTheme());
  const double line = (chosen_ ? colors.edge + 1 : colors.hair) * faceScale();
  painter.setPen(QPen(chosen_ ? colors.accent : hasFocus() ? colors.ink : colors.line, line));
  painter.setBrush(colors.card);
  painter.drawRoundedRect(QRectF(rect()).adjusted(line / 2, line / 2, -line / 2, -line / 2),
                          face::round * faceScale(), face::round * faceScale());
  const QRect block = block_->geometry();
  if (chosen_) painter.fillRect(block.adjusted(0, 0, 0, 0), colors.accent);
  painter.setPen(chosen_ ? colors.onAccent : colors.ink);
  painter.setFont(lettersFont(Letters::point, true));
  const int middle = block.center().y();
  painter.drawText(QRect(block.left(), middle - scaled(56), block.width(), scaled(64)), Qt::AlignCenter,
                   QString::number(number_));
  if (chosen_) {
    painter.setFont(lettersFont(Letters::small));
    painter.drawText(QRect(block.left(), middle + scaled(12), block.width(), scaled(24)), Qt::AlignCenter,
                     tr("chosen"));
    return;
  }
  const QString key = QString::number(number_);
  const QSize cap = keyCapSize(key);
  paintKeyCap(painter, QRect(QPoint(block.center().x() - cap.width() / 2, middle + scaled(14)), cap), key,
              colors.field);
}

void ProposalCard::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && onChosen) onChosen();
}

void ProposalCard::focusInEvent(QFocusEvent* event) {
  QFrame::focusInEvent(event);
  if (onChosen) onChosen();
}

} // namespace netmend
