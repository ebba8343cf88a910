#include "ui/pages/floor/sheet_preview.h"

#include "ui/print/sheet_painter.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QScrollBar>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kPageGap = 14;
constexpr double kZoomStep = 1.2;
constexpr double kLeastZoom = 0.8;
constexpr double kMostZoom = 16;
constexpr int kHintLetters = 60;
constexpr double kWidestFit = 5;  // more than a page at arm's length helps nobody, and shows less of it

}  // namespace

SheetPreview::SheetPreview(QWidget* parent) : QAbstractScrollArea(parent), m_paper(paperMillimetres(PaperSize::A4))
{
    setAccessibleName(tr("Preview of the sheets"));
    setFrameShape(QFrame::NoFrame);
    setMinimumSize(260, 260);
    setFocusPolicy(Qt::StrongFocus);
}

void SheetPreview::setPages(std::vector<SheetPage> pages, PaperSize paper)
{
    m_pages = std::move(pages);
    m_paper = paperMillimetres(paper);
    arrange();
    verticalScrollBar()->setValue(0);
}

void SheetPreview::setHint(const QString& hint)
{
    m_hint = hint;
    setAccessibleDescription(hint);
    viewport()->update();
}

double SheetPreview::pixelsPerMm() const
{
    return m_zoom.value_or(std::clamp((viewport()->width() - 2 * kPageGap) / m_paper.width(), kLeastZoom, kWidestFit));
}

QSizeF SheetPreview::pagePixels() const
{
    return m_paper * pixelsPerMm();
}

void SheetPreview::zoomBy(int steps)
{
    m_zoom = std::clamp(pixelsPerMm() * std::pow(kZoomStep, steps), kLeastZoom, kMostZoom);
    arrange();
}

void SheetPreview::fitWidth()
{
    m_zoom.reset();
    arrange();
}

void SheetPreview::arrange()
{
    const QSizeF page = pagePixels();
    const double height = kPageGap + pageCount() * (page.height() + kPageGap);
    const double width = page.width() + 2 * kPageGap;
    verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(height) - viewport()->height()));
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(0, std::max(0, static_cast<int>(width) - viewport()->width()));
    horizontalScrollBar()->setPageStep(viewport()->width());
    viewport()->update();
}

void SheetPreview::paintEvent(QPaintEvent*)
{
    QPainter painter(viewport());
    if (m_pages.empty()) {
        painter.fillRect(viewport()->rect(), palette().color(QPalette::Window));
        const int width = std::min(viewport()->width() - 40, fontMetrics().averageCharWidth() * kHintLetters);
        const QRect area((viewport()->width() - width) / 2, 0, width, viewport()->height());
        painter.drawText(area, Qt::AlignCenter | Qt::TextWordWrap, m_hint);
        return;
    }
    painter.fillRect(viewport()->rect(), palette().color(QPalette::Mid));
    const QSizeF size = pagePixels();
    const double left = std::max(kPageGap, (viewport()->width() - size.width()) / 2) - horizontalScrollBar()->value();
    double top = kPageGap - verticalScrollBar()->value();
    for (const SheetPage& page : m_pages) {
        const QRectF area(QPointF(left, top), size);
        top += size.height() + kPageGap;
        if (!area.intersects(viewport()->rect())) continue;
        painter.fillRect(area, Qt::white);
        painter.save();
        painter.translate(area.topLeft());
        paintSheetPage(painter, page, pixelsPerMm());
        painter.restore();
    }
}

void SheetPreview::resizeEvent(QResizeEvent*)
{
    arrange();
}

void SheetPreview::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Plus:
        zoomBy(1);
        return;
    case Qt::Key_Minus:
        zoomBy(-1);
        return;
    case Qt::Key_0:
        fitWidth();
        return;
    case Qt::Key_PageDown:
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderPageStepAdd);
        return;
    case Qt::Key_PageUp:
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderPageStepSub);
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

}  // namespace steelyard
