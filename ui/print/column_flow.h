// Pieces one below the other in the columns of a page, then in those of the next.
//
//   ColumnFlow flow(paperMillimetres(paper), 2, pageHeadHeight(head));
//   if (piece.height > flow.room()) flow.nextColumn();
//   flow.place(piece, gap);
//   for (SheetPage& page : flow.pages()) writePageHead(page, …);
//
// A piece that is higher than the room goes where it is told: whoever places it asks first. Millimetres.
#pragma once

#include "ui/print/sheet_layout.h"

namespace steelyard {

struct PaperPiece {
    SheetPage items;  // from (0, 0)
    double height = 0;
};

class ColumnFlow {
public:
    ColumnFlow(QSizeF paper, int columns, double head);

    [[nodiscard]] double width() const;  // of a column
    [[nodiscard]] double room() const;
    [[nodiscard]] bool atTop() const { return m_y <= m_top; }
    void place(const PaperPiece& piece, double gap = 0);
    void skip(double height) { m_y += height; }
    void nextColumn();
    void nextPage();  // none when this one is empty
    [[nodiscard]] std::vector<SheetPage>& pages() { return m_pages; }

private:
    [[nodiscard]] double left() const;

    QSizeF m_paper;
    int m_columns;
    double m_top;
    double m_y;
    int m_column = 0;
    std::vector<SheetPage> m_pages;
};

}  // namespace steelyard
