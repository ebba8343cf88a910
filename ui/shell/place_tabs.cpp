#include "ui/shell/place_tabs.h"

#include "ui/shell/theme.h"

#include <QtGui/QPainter>
#include <QtWidgets/QAbstractButton>
#include <QtWidgets/QHBoxLayout>

namespace steelyard {
namespace {

class PlaceTab final : public QAbstractButton {
public:
    explicit PlaceTab(QWidget* parent) : QAbstractButton(parent)
    {
        setCheckable(true);
        setAutoExclusive(true);
        setFocusPolicy(Qt::TabFocus);
    }
    [[nodiscard]] QSize sizeHint() const override
    {
        return {QFontMetrics(boldFont()).horizontalAdvance(text()) + 28, fontMetrics().height() * 2};
    }

protected:
    void paintEvent(QPaintEvent* event) override
    {
        Q_UNUSED(event)
        QPainter painter(this);
        const ThemeColours& colours = themeColours(palette());
        painter.setFont(isChecked() ? boldFont() : font());
        painter.setPen(isChecked() || underMouse() ? colours.text : colours.quiet);
        painter.drawText(rect(), Qt::AlignCenter, text());
        if (isChecked()) painter.fillRect(14, height() - 3, width() - 28, 3, colours.accent);
        if (hasFocus()) {
            painter.setPen(QPen(colours.accent, 1, Qt::DotLine));
            painter.drawRect(rect().adjusted(6, 3, -7, -5));
        }
    }

private:
    [[nodiscard]] QFont boldFont() const
    {
        QFont bold = font();
        bold.setBold(true);
        return bold;
    }
};

}  // namespace

PlaceTabs::PlaceTabs(QWidget* parent) : QWidget(parent), m_row(new QHBoxLayout(this))
{
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(0);
    m_row->addStretch(1);
}

void PlaceTabs::addPlace(const QString& title, const QString& shortcut)
{
    auto* tab = new PlaceTab(this);
    tab->setText(title);
    tab->setToolTip(shortcut);
    const int index = static_cast<int>(m_places.size());
    connect(tab, &QAbstractButton::clicked, this, [this, index] { Q_EMIT placeChosen(index); });
    m_places.push_back(tab);
    m_row->insertWidget(index, tab);
}

void PlaceTabs::setCurrent(int index)
{
    m_places.at(static_cast<std::size_t>(index))->setChecked(true);
}

}  // namespace steelyard
