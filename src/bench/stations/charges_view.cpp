#include "charges_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/money.h"

#include "proof_table.h"

namespace netmend {

namespace {

constexpr int chargeRow = 36; // pixels at 100 %

QString decimal(Decimal value, int places) {
  return QString::fromStdString(toText(value, places));
}

} // namespace

ChargesView::ChargesView(BenchJob& job, QWidget* parent)
    : QWidget(parent), job_(job), keys_(new WrapLayout), list_(new QTreeWidget(this)),
      what_(new QLineEdit(this)), quantity_(new QLineEdit(this)), price_(new QLineEdit(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins({});
  layout->addLayout(keys_);
  list_->setObjectName(QStringLiteral("charges"));
  list_->setAccessibleName(tr("Charges; Delete takes one out"));
  list_->setToolTip(tr("Delete takes the marked charge out; Undo brings it back."));
  list_->setRootIsDecorated(false);
  layOnCard(*list_);
  setLetters(*list_->header(), Letters::small);
  // As tall as its rows where there is room: the card is scrolled before it is empty.
  list_->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
  list_->setColumnCount(4);
  list_->header()->setStretchLastSection(false);
  list_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  list_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
  list_->header()->setSectionsClickable(false);
  for (int column = 1; column < 4; ++column)
    list_->headerItem()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
  list_->installEventFilter(this);
  layout->addWidget(list_, 1);
  auto* row = new QHBoxLayout;
  struct Field {
    QLineEdit* line;
    QString name;
    QString hint;
    int stretch;
  };
  for (const Field& field : {Field{what_, tr("Charge for what"), tr("what for"), 4},
                             Field{quantity_, tr("Quantity"), QStringLiteral("1"), 1},
                             Field{price_, tr("Price of one"), QStringLiteral("0.00"), 1}}) {
    field.line->setAccessibleName(field.name);
    field.line->setPlaceholderText(field.hint);
    if (field.line != what_) field.line->setAlignment(Qt::AlignRight);
    keepRoomForHint(*field.line, Growth::free);
    setScaledHeight(*field.line, face::control);
    connect(field.line, &QLineEdit::returnPressed, this, &ChargesView::add);
    row->addWidget(field.line, field.stretch);
  }
  what_->setObjectName(QStringLiteral("chargeWhat"));
  what_->installEventFilter(this);
  quantity_->setObjectName(QStringLiteral("chargeQuantity"));
  price_->setObjectName(QStringLiteral("chargePrice"));
  QPushButton* button = makePrompt(tr("Add"), QKeySequence(Qt::Key_Enter), this);
  button->setAccessibleName(tr("Add this charge"));
  connect(button, &QPushButton::clicked, this, &ChargesView::add);
  row->addWidget(button);
  layout->addLayout(row);
  auto defaults = loadChargePresets(job_.folders().data / "charges.json");
  if (!defaults) // the page is not listened to before it is made
    QMetaObject::invokeMethod(
        this, [this, error = defaults.error()] { Q_EMIT told(shown(error), true); }, Qt::QueuedConnection);
  else
    defaults_ = std::move(*defaults);
  for (ChargePreset& preset : defaults_) // on the bill, and from then on the shop's own words
    preset.what = shown(dataPattern(preset.what)).toStdString();
  connect(&job_, &BenchJob::papersChanged, this, &ChargesView::refresh);
  connect(&job_, &BenchJob::jobChanged, this, &ChargesView::refresh);
  refresh();
}

void ChargesView::readPresets() {
  constexpr std::size_t most = 4; // keys
  presets_ = presetsFrom(usualCharges(bookFile(job_.folders()), most), defaults_, most);
  while (QLayoutItem* item = keys_->takeAt(0)) {
    item->widget()->deleteLater();
    item->widget()->hide();
    delete item;
  }
  for (std::size_t i = 0; i < presets_.size(); ++i) {
    const ChargePreset& preset = presets_[i];
    QString text = QFontMetrics(lettersFont(Letters::reading))
                       .elidedText(QString::fromStdString(preset.what), Qt::ElideRight, scaled(190));
    text.replace(QLatin1Char('&'), QStringLiteral("&&"));
    text += QStringLiteral("  ") + decimal(preset.price, 2);
    const auto key = QKeyCombination(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(i)));
    QPushButton* button = makePrompt(text, QKeySequence(key), this);
    button->setObjectName(QStringLiteral("chargePreset%1").arg(i + 1));
    button->setToolTip(QString::fromStdString(preset.what));
    connect(button, &QPushButton::clicked, this, [this, i] { addPreset(i); });
    keys_->addWidget(button);
    button->show();
  }
}

void ChargesView::addPreset(std::size_t which) {
  if (job_.job() == nullptr || which >= presets_.size()) return;
  const ChargePreset& preset = presets_[which];
  job_.addCharge({ChargeId{}, preset.what, preset.quantity, preset.price});
}

bool ChargesView::command(int key) {
  if (key == Qt::Key_Tab && onTab) {
    onTab();
    return true;
  }
  const auto which = static_cast<std::size_t>(key - Qt::Key_1);
  if (key < Qt::Key_1 || which >= presets_.size()) return false;
  addPreset(which);
  return true;
}

void ChargesView::focusEntry() {
  what_->setFocus();
}

void ChargesView::refresh() {
  const Job* job = job_.job();
  setEnabled(job != nullptr);
  const QTreeWidgetItem* current = list_->currentItem();
  const int row = current != nullptr ? list_->indexOfTopLevelItem(const_cast<QTreeWidgetItem*>(current)) : -1;
  list_->clear();
  list_->setHeaderLabels({tr("Charges"), tr("Quantity"), tr("Price"),
                          job != nullptr ? QString::fromStdString(job->currency) : QString()});
  if (job == nullptr) return;
  for (const Charge& charge : job->charges) {
    const auto amount = product(charge.quantity, charge.price);
    auto* item = new QTreeWidgetItem(list_, {QString::fromStdString(charge.what), decimal(charge.quantity, 0),
                                             decimal(charge.price, 2),
                                             amount ? decimal(*amount, 2) : tr("too large")});
    for (int column = 1; column < 4; ++column)
      item->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    item->setSizeHint(0, QSize(0, scaled(chargeRow)));
    item->setData(0, Qt::UserRole, QVariant::fromValue<qulonglong>(charge.id.value));
  }
  if (row >= 0 && list_->topLevelItemCount() > 0)
    list_->setCurrentItem(list_->topLevelItem(std::min(row, list_->topLevelItemCount() - 1)));
}

QString ChargesView::total() const {
  const Job* job = job_.job();
  if (job == nullptr) return {};
  Decimal all;
  for (const Charge& charge : job->charges) {
    const auto amount = product(charge.quantity, charge.price);
    const auto next = amount ? sum(all, *amount) : amount;
    if (!next) return shown(next.error());
    all = *next;
  }
  return decimal(all, 2);
}

void ChargesView::add() {
  // Enter in one field goes on to the next that is still needed.
  if (what_->text().trimmed().isEmpty()) {
    what_->setFocus();
    return;
  }
  if (price_->text().trimmed().isEmpty()) {
    (focusWidget() == what_ ? quantity_ : price_)->setFocus();
    return;
  }
  const QString count = quantity_->text().trimmed();
  const auto quantity =
      count.isEmpty() ? Result<Decimal>(Charge{}.quantity) : parseDecimal(count.toStdString());
  const auto price = parseDecimal(price_->text().trimmed().toStdString());
  for (const auto& [value, field] : {std::pair{&quantity, quantity_}, std::pair{&price, price_}}) {
    if (*value) continue;
    field->setFocus();
    field->selectAll();
    Q_EMIT told(shown(value->error()), true);
    return;
  }
  if (!product(*quantity, *price)) {
    Q_EMIT told(tr("The amount is too large"), true);
    return;
  }
  if (!job_.addCharge({ChargeId{}, what_->text().trimmed().toStdString(), *quantity, *price})) return;
  for (QLineEdit* field : {what_, quantity_, price_})
    field->clear();
  what_->setFocus();
}

void ChargesView::remove() {
  const QTreeWidgetItem* item = list_->currentItem();
  if (item == nullptr) return;
  job_.removeCharge(ChargeId(item->data(0, Qt::UserRole).toULongLong()));
}

bool ChargesView::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
    remove();
    return true;
  }
  if (watched == what_ && event->type() == QEvent::KeyPress && what_->text().isEmpty()) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if ((key->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier && command(key->key())) return true;
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
