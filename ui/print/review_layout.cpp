#include "ui/print/review_layout.h"

#include "ui/print/review_pieces.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ReviewLayoutText {
    Q_DECLARE_TR_FUNCTIONS(ReviewLayoutText)
};

constexpr double kHeadHeight = 7;
constexpr double kFootHeight = 6;

class ReviewPages {
public:
    explicit ReviewPages(PaperSize paper)
    {
        m_layout.paper = paperMillimetres(paper);
        newPage();
    }

    void place(const ReviewSheetEntry& entry)
    {
        const auto pieces = reviewPieces(entry, width());
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            if (m_y + heightKeptTogether(pieces, i) > bottom() && !isFresh()) {
                newPage();
                if (i > 0) add(continuedHeading(entry, width()));
            }
            add(pieces[i]);
        }
    }

    [[nodiscard]] SheetLayout finish(QDate asOf)
    {
        const auto count = static_cast<int>(m_layout.pages.size());
        for (int number = 1; number <= count; ++number)
            writeEdges(m_layout.pages[static_cast<std::size_t>(number - 1)], asOf, number, count);
        return std::move(m_layout);
    }

private:
    [[nodiscard]] double width() const { return m_layout.paper.width() - 2 * kSideMargin; }
    [[nodiscard]] double bottom() const { return m_layout.paper.height() - kBottomMargin - kFootHeight; }
    [[nodiscard]] static double top() { return kClipMargin + kHeadHeight; }
    [[nodiscard]] bool isFresh() const { return m_y == top(); }

    // Of a piece and those that it must not be parted from.
    static double heightKeptTogether(const std::vector<ReviewPiece>& pieces, std::size_t first)
    {
        double height = pieces[first].height;
        for (std::size_t i = first; pieces[i].keepsWithNext && i + 1 < pieces.size(); ++i)
            height += pieces[i + 1].height;
        return height;
    }

    void newPage()
    {
        m_layout.pages.emplace_back();
        m_y = top();
    }

    void add(const ReviewPiece& piece)
    {
        m_layout.pages.back().place(piece.items, {kSideMargin, m_y});
        m_y += piece.height;
    }

    void writeEdges(SheetPage& page, QDate asOf, int number, int count) const
    {
        const double high = lineHeightMm(kReviewPoints);
        const auto edge = [&](double y, const QString& text, double points, bool bold, TextSide side, double share) {
            const double wide = width() * share;
            const double x = side == TextSide::Left ? kSideMargin : kSideMargin + width() - wide;
            page.texts.push_back(
                {{x, y, wide, high}, shortenText(text, wide, points, bold), points, bold, side, false});
        };
        edge(kClipMargin, ReviewLayoutText::tr("Weekly review, worst first"), kReviewPoints, true, TextSide::Left, 0.5);
        edge(kClipMargin, sheetDate(asOf), kReviewPoints, false, TextSide::Right, 0.48);
        const double foot = m_layout.paper.height() - kBottomMargin - high;
        edge(foot,
             ReviewLayoutText::tr("Contains health information. For those who coach these lifters; keep it safe, "
                                  "destroy it afterwards."),
             kReviewTablePoints, false, TextSide::Left, 0.84);
        edge(foot, ReviewLayoutText::tr("page %1/%2").arg(number).arg(count), kReviewTablePoints, false,
             TextSide::Right, 0.15);
    }

    SheetLayout m_layout;
    double m_y = 0;
};

}  // namespace

SheetLayout layOutReview(const ReviewSheet& sheet, PaperSize paper)
{
    ReviewPages pages(paper);
    for (const ReviewSheetEntry& entry : sheet.entries) pages.place(entry);
    return pages.finish(sheet.asOf);
}

}  // namespace steelyard
