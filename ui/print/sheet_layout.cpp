#include "ui/print/sheet_layout.h"

#include "ui/print/exercise_block.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct LayoutText {
    Q_DECLARE_TR_FUNCTIONS(LayoutText)
};

constexpr double kGap = 1.3;   // above and below the line between exercises
constexpr int kMostRows = 20;  // of one block; more sets go on in a further one
constexpr double kFooter = 5.2;

struct SizedBlock {
    int exercise = 0;
    ExerciseBlock block;
};

class PageWriter {
public:
    PageWriter(const SessionSheet& sheet, PaperSize paper) : m_sheet(sheet)
    {
        m_layout.paper = paperMillimetres(paper);
        newPage();
        writeCautions();
    }

    void place(const SizedBlock& sized)
    {
        // A first page that its cautions fill is left with them alone.
        if (m_y + sized.block.height > bottom()) newPage();
        SheetPage& into = m_layout.pages.back();
        if (!into.exercises.empty())
            into.lines.push_back({{kSideMargin, m_y - kGap, kSideMargin + width(), m_y - kGap}, 0.35});
        into.place(sized.block.items, {kSideMargin, m_y});
        into.exercises.push_back({sized.exercise, {kSideMargin, m_y, width(), sized.block.height}});
        m_y += sized.block.height + 2 * kGap;
    }

    [[nodiscard]] SheetLayout finish()
    {
        const auto count = static_cast<int>(m_layout.pages.size());
        for (int number = 1; number <= count; ++number)
            writeHeader(m_layout.pages[static_cast<std::size_t>(number - 1)], number, count);
        return std::move(m_layout);
    }

private:
    [[nodiscard]] double width() const { return m_layout.paper.width() - 2 * kSideMargin; }
    [[nodiscard]] double bottom() const { return m_layout.paper.height() - kBottomMargin - kFooter; }
    [[nodiscard]] static double headerHeight()
    {
        return lineHeightMm(kLargePoints) + lineHeightMm(kSmallestPoints) + 1.2;
    }

    void newPage()
    {
        m_layout.pages.emplace_back();
        m_y = kClipMargin + headerHeight();
    }

    void text(SheetPage& page, QRectF cell, const QString& words, double points, bool bold, TextSide side)
    {
        page.texts.push_back({cell, shortenText(words, cell.width(), points, bold), points, bold, side, false});
    }

    void writeHeader(SheetPage& page, int number, int count)
    {
        const double large = lineHeightMm(kLargePoints);
        const double small = lineHeightMm(kSmallestPoints);
        const QString date = sheetDate(m_sheet.date);
        const double dateWidth = textWidthMm(date, kLargePoints, false) + 0.5;
        const double right = kSideMargin + width();
        text(page, {kSideMargin, kClipMargin, width() - dateWidth - 4, large}, m_sheet.athlete, kLargePoints, true,
             TextSide::Left);
        text(page, {right - dateWidth, kClipMargin, dateWidth, large}, date, kLargePoints, false, TextSide::Right);
        const QString pages = LayoutText::tr("page %1/%2 · sheet %3")
                                  .arg(QString::number(number), QString::number(count), m_sheet.sheetId);
        const double pagesWidth = textWidthMm(pages, kSmallestPoints, false) + 0.5;
        const double y = kClipMargin + large;
        text(page, {kSideMargin, y, width() - pagesWidth - 4, small}, headOf(m_sheet), kSmallestPoints, false,
             TextSide::Left);
        text(page, {right - pagesWidth, y, pagesWidth, small}, pages, kSmallestPoints, false, TextSide::Right);
        page.lines.push_back({{kSideMargin, y + small + 0.4, right, y + small + 0.4}, 0.5});
        text(page, {kSideMargin, bottom() + kFooter - small, width(), small},
             LayoutText::tr(
                 "off = off standard, blank = not watched · marks: bottom, top, swing, dropped, lean, assisted"),
             kSmallestPoints, false, TextSide::Left);
    }

    void writeCautions()
    {
        QStringList words;
        for (const SheetCaution& caution : m_sheet.cautions) words += cautionWords(caution);
        for (const CoachNote& note : m_sheet.coachNotes) words += coachNoteWords(note);
        if (words.isEmpty()) return;
        SheetPage& page = m_layout.pages.back();
        const double small = lineHeightMm(kSmallestPoints);
        const double top = m_y;
        double y = top + 0.5;
        std::vector<TextItem> lines;
        for (const QString& one : words)
            for (const QString& line : wrapText(one, width() - 4, kSmallestPoints, false)) {
                lines.push_back(
                    {{kSideMargin + 2, y, width() - 4, small}, line, kSmallestPoints, false, TextSide::Left, false});
                y += small;
            }
        page.boxes.push_back({{kSideMargin, top, width(), y + 0.5 - top}, kHairline, 0.06, false});
        page.texts.insert(page.texts.end(), lines.begin(), lines.end());
        m_y = y + 2;
    }

    const SessionSheet& m_sheet;
    SheetLayout m_layout;
    double m_y = 0;
};

SheetLayout layOutAt(const SessionSheet& sheet, PaperSize paper, Density density)
{
    PageWriter writer(sheet, paper);
    const double width = paperMillimetres(paper).width() - 2 * kSideMargin;
    for (std::size_t i = 0; i < sheet.exercises.size(); ++i) {
        const SheetExercise& exercise = sheet.exercises[i];
        for (int done = 0; done < exercise.sets; done += kMostRows) {
            const int rows = std::min(kMostRows, exercise.sets - done);
            writer.place({static_cast<int>(i),
                          layOutExercise({exercise, width, density, exercise.firstSet + done, rows, done > 0})});
        }
    }
    return writer.finish();
}

}  // namespace

void SheetPage::place(const SheetPage& items, QPointF at)
{
    for (TextItem text : items.texts) {
        text.cell.translate(at);
        texts.push_back(std::move(text));
    }
    for (BoxItem box : items.boxes) {
        box.rect.translate(at);
        boxes.push_back(box);
    }
    for (LineItem line : items.lines) {
        line.line.translate(at);
        lines.push_back(line);
    }
}

QSizeF paperMillimetres(PaperSize paper)
{
    return paper == PaperSize::A4 ? QSizeF(210, 297) : QSizeF(215.9, 279.4);
}

std::optional<PaperSize> paperSizeFrom(QStringView name)
{
    if (name.compare(u"A4", Qt::CaseInsensitive) == 0) return PaperSize::A4;
    if (name.compare(u"Letter", Qt::CaseInsensitive) == 0) return PaperSize::Letter;
    return std::nullopt;
}

SheetLayout layOutSheet(const SessionSheet& sheet, PaperSize paper)
{
    SheetLayout full = layOutAt(sheet, paper, Density::Full);
    if (full.pages.size() == 1) return full;
    SheetLayout tight = layOutAt(sheet, paper, Density::Tight);
    return tight.pages.size() < full.pages.size() ? tight : full;
}

std::vector<SheetPage> layOutSheets(std::span<const SessionSheet> sheets, PaperSize paper)
{
    std::vector<SheetPage> pages;
    for (const SessionSheet& sheet : sheets)
        std::ranges::move(layOutSheet(sheet, paper).pages, std::back_inserter(pages));
    return pages;
}

}  // namespace steelyard
