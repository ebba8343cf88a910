#include "ui/print/column_flow.h"

#include "ui/print/page_head.h"

namespace steelyard {
namespace {

constexpr double kBetweenColumns = 6;

}  // namespace

ColumnFlow::ColumnFlow(QSizeF paper, int columns, double head)
    : m_paper(paper), m_columns(columns), m_top(kClipMargin + head), m_y(m_top), m_pages(1)
{}

double ColumnFlow::width() const
{
    return (m_paper.width() - 2 * kSideMargin - (m_columns - 1) * kBetweenColumns) / m_columns;
}

double ColumnFlow::room() const
{
    return m_paper.height() - kBottomMargin - kFooter - m_y;
}

double ColumnFlow::left() const
{
    return kSideMargin + m_column * (width() + kBetweenColumns);
}

void ColumnFlow::place(const PaperPiece& piece, double gap)
{
    m_pages.back().place(piece.items, {left(), m_y});
    skip(piece.height + gap);
}

void ColumnFlow::nextColumn()
{
    if (m_column + 1 == m_columns) {
        m_pages.emplace_back();
        m_column = 0;
    } else {
        ++m_column;
    }
    m_y = m_top;
}

void ColumnFlow::nextPage()
{
    if (m_column == 0 && atTop()) return;
    m_column = m_columns - 1;
    nextColumn();
}

}  // namespace steelyard
