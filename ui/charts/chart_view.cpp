#include "ui/charts/chart_view.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QMouseEvent>
#include <QtGui/QWheelEvent>

#include <algorithm>

namespace steelyard {

ChartView::ChartView(const QString& name, QSize least, QWidget* parent) : QGraphicsView(parent)
{
    auto* all = new QGraphicsScene(this);
    all->setItemIndexMethod(QGraphicsScene::NoIndex);
    setScene(all);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setRenderHint(QPainter::Antialiasing);
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    viewport()->setMouseTracking(true);
    setMinimumSize(least);
    setAccessibleName(name);
}

QFont ChartView::smallFont() const
{
    QFont small = font();
    small.setPointSizeF(std::max(7.5, font().pointSizeF() * 0.9));
    return small;
}

void ChartView::noteSelected(int place)
{
    viewport()->update();
    if (selection().hovered < 0) Q_EMIT pointedAt(place);
}

void ChartView::hover(int place)
{
    if (selection().hovered == place) return;
    selection().hovered = place;
    viewport()->update();
    Q_EMIT pointedAt(selection().shown());
}

bool ChartView::stepByKey(const QKeyEvent& event)
{
    const int last = stepCount() - 1;
    const int here = selectedStep();
    const auto stepTo = [&](int step) {
        if (last >= 0) selectStep(std::clamp(step, 0, last));
    };
    switch (event.key()) {
    case Qt::Key_Left:
        stepTo(here < 0 ? last : here - 1);
        return true;
    case Qt::Key_Right:
        stepTo(here < 0 ? last : here + 1);
        return true;
    case Qt::Key_Home:
        stepTo(0);
        return true;
    case Qt::Key_End:
        stepTo(last);
        return true;
    case Qt::Key_Up:
    case Qt::Key_BracketLeft:
        Q_EMIT lineStepped(-1);
        return true;
    case Qt::Key_Down:
    case Qt::Key_BracketRight:
        Q_EMIT lineStepped(1);
        return true;
    default:
        return false;
    }
}

void ChartView::keyPressEvent(QKeyEvent* event)
{
    if (!stepByKey(*event)) QGraphicsView::keyPressEvent(event);
}

void ChartView::mouseMoveEvent(QMouseEvent* event)
{
    hover(nearest(event->position()));
}

void ChartView::leaveEvent(QEvent* event)
{
    hover(-1);
    QGraphicsView::leaveEvent(event);
}

void ChartView::resizeEvent(QResizeEvent* event)
{
    QGraphicsView::resizeEvent(event);
    layOut();
}

void ChartView::changeEvent(QEvent* event)
{
    QGraphicsView::changeEvent(event);
    const auto type = event->type();
    if (type == QEvent::PaletteChange || type == QEvent::FontChange || type == QEvent::LocaleChange) restyle();
}

void ChartView::wheelEvent(QWheelEvent* event)
{
    event->ignore();  // the page scrolls, the chart doesn't
}

}  // namespace steelyard
