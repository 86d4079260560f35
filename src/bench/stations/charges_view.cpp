#include "charges_view.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/money.h"

namespace netmend {

namespace {

QString decimal(Decimal value, int places) {
  return QString::fromStdString(toText(value, places));
}

} // namespace

ChargesView::ChargesView(BenchJob& job, QWidget* parent)
    : QWidget(parent), job_(job), list_(new QTreeWidget(this)), what_(new QLineEdit(this)),
      quantity_(new QLineEdit(this)), price_(new QLineEdit(this)) {
  auto* layout = new QVBoxLayout(this);
  auto* row = new QHBoxLayout;
  struct Field {
    QLineEdit* line;
    QString name;
    QString hint;
    int stretch;
  };
  for (const Field& field : {Field{what_, tr("Charge for what"), tr("what for"), 4},
                             Field{quantity_, tr("Quantity"), tr("quantity: 1"), 1},
                             Field{price_, tr("Price of one"), tr("price: 48.00"), 1}}) {
    field.line->setAccessibleName(field.name);
    field.line->setPlaceholderText(field.hint);
    keepRoomForHint(*field.line, Growth::free);
    connect(field.line, &QLineEdit::returnPressed, this, &ChargesView::add);
    row->addWidget(field.line, field.stretch);
  }
  what_->setObjectName(QStringLiteral("chargeWhat"));
  quantity_->setObjectName(QStringLiteral("chargeQuantity"));
  price_->setObjectName(QStringLiteral("chargePrice"));
  QPushButton* button = makePrompt(tr("Add"), QKeySequence(Qt::Key_Enter), this);
  button->setAccessibleName(tr("Add this charge"));
  connect(button, &QPushButton::clicked, this, &ChargesView::add);
  row->addWidget(button);
  layout->addLayout(row);
  list_->setObjectName(QStringLiteral("charges"));
  list_->setAccessibleName(tr("Charges; Delete takes one out"));
  list_->setRootIsDecorated(false);
  list_->setColumnCount(4);
  list_->setHeaderLabels({tr("What"), tr("Quantity"), tr("Price"), tr("Amount")});
  list_->header()->setStretchLastSection(false);
  list_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  list_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
  list_->installEventFilter(this);
  layout->addWidget(list_, 1);
  auto* hint = new QLabel(tr("Delete takes the marked charge out; Undo brings it back."), this);
  hint->setWordWrap(true);
  layout->addWidget(hint);
  connect(&job_, &BenchJob::papersChanged, this, &ChargesView::refresh);
  connect(&job_, &BenchJob::jobChanged, this, &ChargesView::refresh);
  refresh();
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
  if (job == nullptr) return;
  for (const Charge& charge : job->charges) {
    const auto amount = product(charge.quantity, charge.price);
    auto* item = new QTreeWidgetItem(list_, {QString::fromStdString(charge.what), decimal(charge.quantity, 0),
                                             decimal(charge.price, 2),
                                             amount ? decimal(*amount, 2) : tr("too large")});
    for (int column = 1; column < 4; ++column)
      item->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
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
  return decimal(all, 2) + QLatin1Char(' ') + QString::fromStdString(job->currency);
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
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
