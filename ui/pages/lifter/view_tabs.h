// The tabs of the Lifter page's views: as the style draws them, but closer together, so that all stand in a small window.
#pragma once

#include <QtWidgets/QProxyStyle>
#include <QtWidgets/QTabBar>

namespace steelyard {

class CloseTabsStyle final : public QProxyStyle {
public:
    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override
    {
        constexpr int space = 4;  // both sides of a tab's word together
        return metric == PM_TabBarTabHSpace ? space : QProxyStyle::pixelMetric(metric, option, widget);
    }
};

class ViewTabs final : public QTabBar {
public:
    explicit ViewTabs(QWidget* parent) : QTabBar(parent)
    {
        auto* style = new CloseTabsStyle;
        style->setParent(this);  // setStyle() takes nothing over
        setStyle(style);
    }
};

}  // namespace steelyard
