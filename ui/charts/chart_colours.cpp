#include "ui/charts/chart_colours.h"

#include "ui/shell/theme.h"

namespace steelyard {
namespace {

QColor withAlpha(QColor colour, int alpha)
{
    colour.setAlpha(alpha);
    return colour;
}

// Between two colours; 0 gives the first.
QColor between(const QColor& a, const QColor& b, double share)
{
    const auto mix = [&](int x, int y) { return static_cast<int>(x + (y - x) * share); };
    return {mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())};
}

}  // namespace

ChartColours chartColours(const QPalette& palette)
{
    const ThemeColours& theme = themeColours(palette);
    const QColor ground = palette.color(QPalette::Base);
    return {ground,
            theme.text,
            theme.quiet,
            between(ground, theme.hairline, theme.dark ? 0.75 : 0.6),
            theme.data[0],
            between(theme.quiet, ground, 0.35),
            withAlpha(theme.data[0], theme.dark ? 46 : 34),
            theme.data[1],
            withAlpha(theme.text, 13),
            theme.data[3],
            withAlpha(theme.text, theme.dark ? 20 : 15),
            {theme.data[2], theme.data[4], theme.data[7]},
            theme.data[2]};
}

}  // namespace steelyard
