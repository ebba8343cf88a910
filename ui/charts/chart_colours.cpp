#include "ui/charts/chart_colours.h"

namespace steelyard {
namespace {

QColor withAlpha(QRgb rgb, int alpha)
{
    QColor colour = QColor::fromRgb(rgb);
    colour.setAlpha(alpha);
    return colour;
}

}  // namespace

ChartColours chartColours(const QPalette& palette)
{
    const QColor ground = palette.color(QPalette::Base);
    const QColor ink = palette.color(QPalette::Text);
    if (ground.lightness() < 128)
        return {ground,   ink, QColor(0xb4b9be), QColor(0x3c4146),          QColor(0x56b4e9),
                QColor(0x7f888f), withAlpha(0x56b4e9, 46), QColor(0xf0a030), withAlpha(0xffffff, 14), QColor(0xcc79a7)};
    return {ground,   ink, QColor(0x5a6066), QColor(0xe2e4e6),         QColor(0x0072b2),
            QColor(0x9aa2a9), withAlpha(0x0072b2, 34), QColor(0xc65300), withAlpha(0x000000, 12), QColor(0xa0487b)};
}

}  // namespace steelyard
