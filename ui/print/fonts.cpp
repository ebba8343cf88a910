#include "ui/print/fonts.h"

#include <QtGui/QFontDatabase>

namespace steelyard {

bool loadBundledFonts()
{
    bool all = true;
    for (const auto& file : {QStringLiteral(":/fonts/DejaVuSans.ttf"), QStringLiteral(":/fonts/DejaVuSans-Bold.ttf")})
        all = QFontDatabase::addApplicationFont(file) >= 0 && all;
    return all;
}

QString sheetFontFamily()
{
    return QStringLiteral("DejaVu Sans");
}

}  // namespace steelyard
