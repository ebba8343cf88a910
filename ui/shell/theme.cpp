#include "ui/shell/theme.h"

#include <QtGui/QPainter>
#include <QtWidgets/QApplication>
#include <QtWidgets/QProxyStyle>
#include <QtWidgets/QStyleOption>

namespace steelyard {
namespace {

QColor rgb(unsigned value)
{
    return QColor::fromRgb(value);
}

ThemeColours lightColours()
{
    return {.dark = false,
            .ground = rgb(0xf6f5f1),
            .text = rgb(0x1d1f1e),
            .quiet = rgb(0x5c605d),
            .hairline = rgb(0xd3d1c8),
            .accent = rgb(0x14606b),
            .warm = rgb(0x805400),
            .alarm = rgb(0xa33b00),
            .good = rgb(0x00664b),
            .data = {rgb(0x0072b2), rgb(0xd55e00), rgb(0x00906a), rgb(0xb8628f), rgb(0xa97400), rgb(0x2e8fc4),
                     rgb(0x857c00), rgb(0x1d1f1e)}};
}

ThemeColours darkColours()
{
    return {.dark = true,
            .ground = rgb(0x222425),
            .text = rgb(0xe6e6e2),
            .quiet = rgb(0xa6aaa7),
            .hairline = rgb(0x3e4243),
            .accent = rgb(0x74c4cf),
            .warm = rgb(0xe5b451),
            .alarm = rgb(0xf2936a),
            .good = rgb(0x62c9aa),
            .data = {rgb(0x56b4e9), rgb(0xe69f00), rgb(0x2dbe94), rgb(0xe39bc2), rgb(0xf0e442), rgb(0xe0824a),
                     rgb(0x8fb0ff), rgb(0xe6e6e2)}};
}

}  // namespace

const ThemeColours& themeColours(bool dark)
{
    static const ThemeColours light = lightColours();
    static const ThemeColours night = darkColours();
    return dark ? night : light;
}

const ThemeColours& themeColours(const QPalette& palette)
{
    return themeColours(isDark(palette));
}

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness();
}

QPalette themePalette(bool dark)
{
    const ThemeColours& c = themeColours(dark);
    QPalette palette;
    palette.setColor(QPalette::Window, c.ground);
    palette.setColor(QPalette::WindowText, c.text);
    palette.setColor(QPalette::Base, dark ? rgb(0x1a1c1d) : rgb(0xfffefb));
    palette.setColor(QPalette::AlternateBase, dark ? rgb(0x202223) : rgb(0xf8f7f2));
    palette.setColor(QPalette::Text, c.text);
    palette.setColor(QPalette::PlaceholderText, c.quiet);
    palette.setColor(QPalette::Button, dark ? rgb(0x2e3132) : rgb(0xeceae3));
    palette.setColor(QPalette::ButtonText, c.text);
    palette.setColor(QPalette::BrightText, rgb(0xffffff));
    palette.setColor(QPalette::Highlight, dark ? rgb(0x1f5f69) : rgb(0x14606b));
    palette.setColor(QPalette::HighlightedText, rgb(0xffffff));
    palette.setColor(QPalette::Link, c.accent);
    palette.setColor(QPalette::LinkVisited, c.accent);
    palette.setColor(QPalette::ToolTipBase, dark ? rgb(0x2e3132) : rgb(0xfffefb));
    palette.setColor(QPalette::ToolTipText, c.text);
    palette.setColor(QPalette::Light, dark ? rgb(0x3a3d3e) : rgb(0xffffff));
    palette.setColor(QPalette::Midlight, dark ? rgb(0x333637) : rgb(0xf1efe9));
    palette.setColor(QPalette::Mid, c.hairline);
    palette.setColor(QPalette::Dark, dark ? rgb(0x161819) : rgb(0xb6b4ab));
    palette.setColor(QPalette::Shadow, dark ? rgb(0x0c0d0e) : rgb(0x8a887f));
    const QColor faded = dark ? rgb(0x7c807e) : rgb(0x85877f);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, faded);
    palette.setColor(QPalette::Disabled, QPalette::Highlight, c.hairline);
    palette.setColor(QPalette::Disabled, QPalette::HighlightedText, c.text);
    return palette;
}

namespace {

// Fusion derives a box's edge from the ground it stands on, which leaves none to be seen on a dark one.
class BoxEdgeStyle final : public QProxyStyle {
public:
    BoxEdgeStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override
    {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        if (element != PE_IndicatorCheckBox && element != PE_IndicatorItemViewItemCheck) return;
        const ThemeColours& colours = themeColours(option->palette);
        if (!colours.dark) return;
        painter->save();
        painter->setPen(colours.quiet);
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(option->rect.adjusted(0, 0, -1, -1));
        painter->restore();
    }
};

}  // namespace

void applyTheme(QApplication& app, ThemeChoice choice)
{
    // Qt 6.4 tells the system's wish only through the palette it starts with.
    const bool dark = choice == ThemeChoice::System ? isDark(QPalette(app.palette())) : choice == ThemeChoice::Dark;
    app.setStyle(new BoxEdgeStyle);
    app.setPalette(themePalette(dark));
}

}  // namespace steelyard
