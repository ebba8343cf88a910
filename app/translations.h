// Loads the translation of the system's language; English plurals when there is none, because even English needs them.
#pragma once

#include <QtCore/QCoreApplication>
#include <QtCore/QLocale>
#include <QtCore/QTranslator>

namespace steelyard {

inline void installTranslations(QCoreApplication& application)
{
    auto* translator = new QTranslator(&application);
    if (translator->load(QLocale(), QStringLiteral("steelyard"), QStringLiteral("_"),
                         QStringLiteral(":/steelyard/i18n"))
        || translator->load(QStringLiteral(":/steelyard/i18n/steelyard_en.qm")))
        QCoreApplication::installTranslator(translator);
}

}  // namespace steelyard
