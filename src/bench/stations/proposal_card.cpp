#include "proposal_card.h"

#include <QGridLayout>
#include <QLabel>
#include <QMouseEvent>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/jumper.h"

namespace netmend {

namespace {

constexpr int chosenFrame = 4; ///< pixels; told by words as well
constexpr int plainFrame = 1;

/// With a point, as meters show it and as all sentences have it.
QString millimetres(Length length, int places) {
  return QString::number(length.mm(), 'f', places);
}

} // namespace

ProposalCard::ProposalCard(std::size_t number, const JumperProposal& proposal, const PlaceNames& places,
                           QWidget* parent)
    : QFrame(parent), proposal_(proposal), number_(number),
      head_(makeLabel(Letters::metre, QStringLiteral("cardHead"), this)),
      reasons_(makeLabel(Letters::reading, QStringLiteral("cardReasons"), this)) {
  setFocusPolicy(Qt::TabFocus);
  setFrameShape(QFrame::Box);
  setAutoFillBackground(true);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(head_);
  auto* ends = makeLabel(Letters::reading, QStringLiteral("cardPlaces"), this);
  setLetters(*ends, Letters::reading, true);
  ends->setText(
      tr("%1 to %2")
          .arg(besidePicture(nameOf(proposal.from, places)), besidePicture(nameOf(proposal.to, places))));
  layout->addWidget(ends);
  auto* facts = makeLabel(Letters::reading, QStringLiteral("cardFacts"), this);
  const QString clearance =
      proposal.leastClearance.known()
          ? tr("least clearance %1 mm, to %2")
                .arg(millimetres(proposal.leastClearance.value, 2), shown(nameOf(proposal.clearanceTo)))
          : tr("nothing to keep clear of near it");
  facts->setText(tr("%1 mm on the %2; %3\n%4")
                     .arg(millimetres(proposal.length, 1),
                          proposal.side == Side::top ? tr("top side") : tr("bottom side"),
                          shown(dataPattern(proposal.wire.wire.name)), clearance));
  layout->addWidget(facts);
  auto* rest = makeLabel(Letters::reading, QStringLiteral("cardRemarks"), this);
  rest->setText(remarks(places));
  layout->addWidget(rest);
  reasons_->setText(reasons(places));
  reasons_->setVisible(false);
  layout->addWidget(reasons_);
  layout->addStretch(1);
  setAccessibleName(tr("Proposal %1: %2").arg(number).arg(ends->text()));
  setAccessibleDescription(facts->text() + QLatin1Char('\n') + rest->text());
  setChosen(false);
}

/// What makes up its points, and why it is as it is.
QString ProposalCard::reasons(const PlaceNames& places) const {
  QStringList lines{tr("%1 points").arg(QString::number(proposal_.total.value, 'f', 1))};
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
}

void ProposalCard::setChosen(bool chosen) {
  setLineWidth(chosen ? chosenFrame : plainFrame);
  setBackgroundRole(chosen ? QPalette::Base : QPalette::Window);
  head_->setText(chosen ? tr("Proposal %1, chosen").arg(number_) : tr("Proposal %1").arg(number_));
}

void ProposalCard::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && onChosen) onChosen();
}

void ProposalCard::focusInEvent(QFocusEvent* event) {
  QFrame::focusInEvent(event);
  if (onChosen) onChosen();
}

} // namespace netmend
