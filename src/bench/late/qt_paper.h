#pragma once

#include <QObject>

#include "paper.h"

namespace netmend {

/// By way of Poppler and Qt's printers.
class QtPaper : public QObject, public Paper {
  Q_OBJECT
  Q_PLUGIN_METADATA(IID "org.netmend.Paper/1")
  Q_INTERFACES(netmend::Paper)

public:
  [[nodiscard]] Result<std::vector<QImage>> draw(const QByteArray& pdf, int width,
                                                 const std::stop_token& stop) override;
  [[nodiscard]] Result<void> print(const QByteArray& pdf, QPrinter& printer) override;
  void choosePrinter(QWidget* parent, const QString& title, const QPageSize& size,
                     std::function<void(std::shared_ptr<QPrinter>)> chosen) override;
};

} // namespace netmend
