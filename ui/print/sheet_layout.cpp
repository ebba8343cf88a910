#include "ui/print/sheet_layout.h"

#include "ui/format/people.h"
#include "ui/print/exercise_block.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct LayoutText {
    Q_DECLARE_TR_FUNCTIONS(LayoutText)
};

constexpr int kMostRows = 20;  // of one block; more sets go on in a further one

// Above and below the line between exercises.
double gapOf(Density density)
{
    constexpr double kWide = 1.3;
    constexpr double kNarrow = 0.4;
    return density == Density::Close ? kNarrow : kWide;
}

QChar letterOfTurn(const SheetExercise& exercise)
{
    return exercise.turn.isEmpty() ? QChar() : exercise.turn.front();
}

PageHead headOfPage(const SessionSheet& sheet, int number, int count)
{
    return {format::person(sheet.athlete),
            sheetDate(sheet.date),
            headOf(sheet),
            LayoutText::tr("page %1/%2 · sheet %3").arg(QString::number(number), QString::number(count), sheet.sheetId),
            sheet.sheetId,
            setLegend()};
}

// A block that is laid out anew only when something about it has changed.
struct LayoutBlock {
    BlockInput input;
    std::optional<ExerciseBlock> laid = {};

    const ExerciseBlock& with(bool labels)
    {
        if (!laid || input.labels != labels) {
            input.labels = labels;
            laid = layOutExercise(input);
        }
        return *laid;
    }
};

// What stays together: an exercise, or those that are done in turns.
struct LayoutUnit {
    std::vector<LayoutBlock> blocks;
};

class PageWriter {
public:
    PageWriter(const SessionSheet& sheet, PaperSize paper, Density density)
        : m_sheet(sheet), m_density(density), m_head(pageHeadHeight(headOfPage(sheet, 1, 1)))
    {
        m_layout.paper = paperMillimetres(paper);
        newPage();
        writeCautions();
    }

    [[nodiscard]] double width() const { return m_layout.paper.width() - 2 * kSideMargin; }
    [[nodiscard]] double room() const { return bottom() - m_y; }  // left on this page

    void place(LayoutUnit& unit)
    {
        const double height = heightOf(unit);
        const double whole = bottom() - kClipMargin - m_head;
        // A first page that its cautions fill is left with them alone.
        if (height > room() && height <= whole) newPage();
        const double top = m_y;
        for (LayoutBlock& block : unit.blocks) placeBlock(block);
        const bool turns = unit.blocks.size() > 1 && !letterOfTurn(unit.blocks.front().input.exercise).isNull();
        if (turns) drawBracket(top);
    }

    [[nodiscard]] SheetLayout finish()
    {
        const auto count = static_cast<int>(m_layout.pages.size());
        for (int number = 1; number <= count; ++number)
            writePageHead(m_layout.pages[static_cast<std::size_t>(number - 1)], m_layout.paper,
                          headOfPage(m_sheet, number, count));
        return std::move(m_layout);
    }

    [[nodiscard]] double heightOf(LayoutUnit& unit) const
    {
        double height = 0;
        for (LayoutBlock& block : unit.blocks) {
            const bool labels = m_density != Density::Close || (isFresh() && height == 0);
            if (height > 0) height += 2 * gapOf(m_density);
            height += block.with(labels).height;
        }
        return height;
    }

private:
    [[nodiscard]] double bottom() const { return m_layout.paper.height() - kBottomMargin - kFooter; }
    [[nodiscard]] bool isFresh() const { return m_layout.pages.back().exercises.empty(); }

    void newPage()
    {
        m_layout.pages.emplace_back();
        m_y = kClipMargin + m_head;
    }

    void placeBlock(LayoutBlock& laid)
    {
        if (laid.with(m_density != Density::Close || isFresh()).height > room() && !isFresh()) newPage();
        const ExerciseBlock& block = laid.with(m_density != Density::Close || isFresh());
        const double gap = gapOf(m_density);
        SheetPage& into = m_layout.pages.back();
        if (!isFresh()) into.lines.push_back({{kSideMargin, m_y - gap, kSideMargin + width(), m_y - gap}, 0.35});
        into.place(block.items, {kSideMargin, m_y});
        const auto index = static_cast<int>(&laid.input.exercise - m_sheet.exercises.data());
        into.exercises.push_back({index, {kSideMargin, m_y, width(), block.height}});
        m_y += block.height + 2 * gap;
    }

    // In the side margin, where nothing is written: these are done in turns.
    void drawBracket(double top)
    {
        constexpr double kOut = 2.2;
        constexpr double kHook = 1.2;
        constexpr double kThick = 0.7;
        SheetPage& page = m_layout.pages.back();
        const double x = kSideMargin - kOut;
        const double from = std::min(top, page.exercises.back().area.top());
        const double to = page.exercises.back().area.bottom();
        page.lines.push_back({{x, from, x, to}, kThick});
        page.lines.push_back({{x, from, x + kHook, from}, kThick});
        page.lines.push_back({{x, to, x + kHook, to}, kThick});
    }

    void writeCautions()
    {
        QStringList words;
        for (const SheetCaution& caution : m_sheet.cautions) words += cautionWords(caution);
        for (const CoachNote& note : m_sheet.coachNotes) words += coachNoteWords(note);
        if (!words.isEmpty()) m_y = writeShaded(m_layout.pages.back(), {kSideMargin, m_y, width(), 0}, words);
    }

    const SessionSheet& m_sheet;
    Density m_density;
    double m_head;
    SheetLayout m_layout;
    double m_y = 0;
};

std::vector<LayoutUnit> unitsOf(const SessionSheet& sheet, double width, Density density)
{
    std::vector<LayoutUnit> units;
    for (std::size_t i = 0; i < sheet.exercises.size(); ++i) {
        const SheetExercise& exercise = sheet.exercises[i];
        const QChar letter = letterOfTurn(exercise);
        const bool another = i == 0 || letter.isNull() || letter != letterOfTurn(sheet.exercises[i - 1]);
        for (int done = 0; done < exercise.sets; done += kMostRows) {
            if (done > 0 || another) units.emplace_back();
            const int rows = std::min(kMostRows, exercise.sets - done);
            units.back().blocks.push_back({exercise, width, density, exercise.firstSet + done, rows, done > 0, true});
        }
    }
    return units;
}

// Where a page falls short of a few lines, they are taken from the longest notes.
void cutNotes(const PageWriter& writer, std::vector<LayoutUnit>& units)
{
    double height = 0;
    std::vector<std::pair<LayoutBlock*, int>> lines;  // those that may go beyond the needed ones
    for (LayoutUnit& unit : units)
        for (LayoutBlock& block : unit.blocks) {
            const ExerciseBlock& laid = block.with(lines.empty());
            height += laid.height + (lines.empty() ? 0 : 2 * gapOf(Density::Close));
            lines.emplace_back(&block, laid.noteLines - laid.neededLines);
        }
    auto wanted = static_cast<int>(std::ceil((height - writer.room()) / lineHeightMm(kSmallestPoints)));
    int spare = 0;
    for (const auto& [block, count] : lines) spare += std::max(0, count);
    if (wanted <= 0 || wanted > spare) return;
    for (; wanted > 0; --wanted) {
        const auto longest = std::ranges::max_element(lines, {}, &std::pair<LayoutBlock*, int>::second);
        --longest->second;
        LayoutBlock& block = *longest->first;
        block.input.mostNoteLines = block.laid->neededLines + longest->second;
    }
    for (const auto& [block, count] : lines) block->laid.reset();
}

SheetLayout layOutAt(const SessionSheet& sheet, PaperSize paper, Density density)
{
    PageWriter writer(sheet, paper, density);
    auto units = unitsOf(sheet, writer.width(), density);
    if (density == Density::Close) cutNotes(writer, units);
    for (LayoutUnit& unit : units) writer.place(unit);
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
    for (CodeItem code : items.codes) {
        code.rect.translate(at);
        codes.push_back(std::move(code));
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
    SheetLayout best = layOutAt(sheet, paper, Density::Full);
    for (const Density density : {Density::Tight, Density::Close}) {
        if (best.pages.size() == 1) break;
        SheetLayout closer = layOutAt(sheet, paper, density);
        if (closer.pages.size() < best.pages.size()) best = std::move(closer);
    }
    return best;
}

std::vector<SheetPage> layOutSheets(std::span<const SessionSheet> sheets, PaperSize paper)
{
    std::vector<SheetPage> pages;
    for (const SessionSheet& sheet : sheets)
        std::ranges::move(layOutSheet(sheet, paper).pages, std::back_inserter(pages));
    return pages;
}

}  // namespace steelyard
