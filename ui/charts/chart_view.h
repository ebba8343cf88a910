// What every chart of the window has in common: a view of a scene that fills it, one place that is selected and one that the
// mouse is over, and the keys that step through places and lines. A chart says what its places are and where they stand.
//
//   class PanelsChart final : public ChartView { ... ChartSelection& selection() override { return *m_shared; } ... };
//
// Keys: Left/Right, Home/End: places; Up/Down or [ and ]: lines (lineStepped). A place is known by an index of the chart's own;
// -1 is none. The wheel is left to the page.
#pragma once

#include <QtWidgets/QGraphicsView>

namespace steelyard {

// Shared by a chart and what paints it.
struct ChartSelection {
    int selected = -1;
    int hovered = -1;

    [[nodiscard]] int shown() const { return hovered >= 0 ? hovered : selected; }
};

class ChartView : public QGraphicsView {
    Q_OBJECT

public:
    ChartView(const QString& name, QSize least, QWidget* parent);
    // The place nearest to a point of the widget; -1: none.
    [[nodiscard]] virtual int nearest(QPointF position) const = 0;
    [[nodiscard]] QSize sizeHint() const override { return {760, 420}; }

Q_SIGNALS:
    void pointedAt(int place);  // under the mouse, else the selected one
    void lineStepped(int by);   // +1 next, -1 previous

protected:
    virtual ChartSelection& selection() = 0;
    // How many places there are in their order, which of them is selected (-1: none), and to select another.
    [[nodiscard]] virtual int stepCount() const = 0;
    [[nodiscard]] virtual int selectedStep() const = 0;
    virtual void selectStep(int step) = 0;
    virtual void layOut() = 0;   // for the size of the viewport
    virtual void restyle() = 0;  // for palette, font and locale

    // False: the key isn't for stepping.
    bool stepByKey(const QKeyEvent& event);
    void hover(int place);
    // The place is selected now: tells whoever shows it.
    void noteSelected(int place);
    [[nodiscard]] QFont smallFont() const;

    void resizeEvent(QResizeEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
};

}  // namespace steelyard
