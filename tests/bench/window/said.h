#pragma once

#include <QCoreApplication>
#include <QString>

namespace netmend::testing {

/// What a page says for this English text, in the language that the window speaks, without the mark of its
/// key.
inline QString said(const char* english) {
  for (const char* page :
       {"netmend::BookInPage", "netmend::BoardPage", "netmend::WalkPage", "netmend::FindPage",
        "netmend::BridgePage", "netmend::HandRepairCard", "netmend::StepsView", "netmend::ProvePage",
        "netmend::FunctionChecks", "netmend::HandOverPage", "netmend::ChargesView"})
    if (QString text = QCoreApplication::translate(page, english); text != QString::fromUtf8(english))
      return text.remove(QLatin1Char('&'));
  return QString::fromUtf8(english).remove(QLatin1Char('&'));
}

} // namespace netmend::testing
