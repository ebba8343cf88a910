// Sheets as they will be on paper, one page below the other, painted by the same code as the PDF.
//
//   preview->setPages(layOutSheets({sheet}, PaperSize::A4), PaperSize::A4);   preview->zoomBy(1);
//
// Keys: + and - zoom, 0 fits the width, Page Up and Page Down move.
#pragma once

#include "ui/print/sheet_layout.h"

#include <QtWidgets/QAbstractScrollArea>

namespace steelyard {

class SheetPreview final : public QAbstractScrollArea {
    Q_OBJECT

public:
    explicit SheetPreview(QWidget* parent = nullptr);

    void setPages(std::vector<SheetPage> pages, PaperSize paper);
    // What stands there while there is no sheet.
    void setHint(const QString& hint);
    void zoomBy(int steps);
    void fitWidth();
    [[nodiscard]] int pageCount() const { return static_cast<int>(m_pages.size()); }
    [[nodiscard]] double pixelsPerMm() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void arrange();
    [[nodiscard]] QSizeF pagePixels() const;

    std::vector<SheetPage> m_pages;
    QString m_hint;
    QSizeF m_paper;
    std::optional<double> m_zoom;  // pixels for a millimetre; absent: as wide as the view
};

}  // namespace steelyard
