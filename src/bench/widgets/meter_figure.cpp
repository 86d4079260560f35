#include "meter_figure.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "face_style.h"
#include "letters.h"
#include "reading_field.h"

namespace netmend {

/// Eight blocks: a bar whose end is counted, not guessed.
class SettleBar : public QWidget {
public:
  explicit SettleBar(QWidget* parent) : QWidget(parent) { setScaledHeight(*this, 20); }
  [[nodiscard]] QSize sizeHint() const override { return {scaled(blocks * 21), scaled(20)}; }
  void setShare(double share) {
    const int full = static_cast<int>(share * blocks + 1e-9);
    if (full == full_) return;
    full_ = full;
    update();
  }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    const FaceColors& colors = faceColors(faceTheme());
    const int step = std::min(width() / blocks, scaled(21));
    const int side = step - scaled(3);
    for (int i = 0; i < blocks; ++i) {
      const QRect block(i * step, 0, side, std::min(height() - 1, scaled(18)));
      painter.fillRect(block, i < full_ ? colors.accent : colors.card);
      painter.setPen(QPen(i < full_ ? colors.accent : colors.outline, scaled(1)));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(block.adjusted(0, 0, -1, -1));
    }
  }

private:
  static constexpr int blocks = 8;
  int full_ = 0;
};

MeterFigure::MeterFigure(ReadingField* field, QWidget* parent)
    : QWidget(parent), field_(field), caption_(makeCaption({}, this)),
      state_(makeLabel(Letters::reading, QStringLiteral("live"), this)), bar_(new SettleBar(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  setLetters(*caption_, Letters::reading);
  layout->addWidget(caption_);
  auto* row = new QHBoxLayout;
  row->setSpacing(scaled(16));
  row->addWidget(field_, 3);
  auto* beside = new QVBoxLayout;
  beside->setSpacing(scaled(4));
  beside->addStretch(1);
  setLetters(*state_, Letters::metre, true);
  state_->setWordWrap(false);
  beside->addWidget(state_);
  beside->addWidget(bar_);
  beside->addStretch(1);
  row->addLayout(beside, 2);
  layout->addLayout(row);
  setLive({});
}

void MeterFigure::setCaption(const QString& text) {
  caption_->setText(text);
}

void MeterFigure::setCaptioned(bool captioned) {
  caption_->setVisible(captioned);
}

void MeterFigure::setLive(const std::optional<LiveFigure>& live) {
  linked_ = live.has_value();
  field_->setLive(live ? std::optional(live->value) : std::nullopt);
  state_->setText(live ? live->state : QString());
  state_->setVisible(live.has_value());
  bar_->setVisible(live.has_value());
  bar_->setShare(live ? (live->taken ? 1.0 : live->settled) : 0.0);
  if (onValue) onValue(live ? live->number : std::nullopt);
}

} // namespace netmend
