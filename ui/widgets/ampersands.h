// A name in a button, a tab or a menu, where a single & would mark a key and go.
//
//   button->setText(keepingAmpersands(name));       // "Smith & Jones"
#pragma once

#include <QtCore/QString>

namespace steelyard {

[[nodiscard]] inline QString keepingAmpersands(QString text)
{
    return text.replace(QLatin1Char('&'), QStringLiteral("&&"));
}

}  // namespace steelyard
