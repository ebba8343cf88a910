#include "ui/print/group_layout.h"

#include "ui/format/people.h"
#include "ui/print/column_flow.h"
#include "ui/print/exercise_block.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_trial_words.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct GroupText {
    Q_DECLARE_TR_FUNCTIONS(GroupText)
};

constexpr int kGroupColumns = 2;
constexpr double kBlockGap = 2.4;
constexpr double kLifterGap = 3;
constexpr int kMostGroupLines = 3;

std::vector<BoxColumn> groupColumns(MassUnit unit)
{
    constexpr std::array kWidths{6.0, 15.0, 14.0, 18.0, 14.0};
    auto columns = setColumns(unit);
    for (std::size_t i = 0; i < columns.size(); ++i) columns[i].width = kWidths[i];
    columns.back().width = kWidths.back();
    return columns;
}

PaperPiece lifterHead(const SessionSheet& sheet, double width, bool continued)
{
    PaperPiece piece;
    const double code = writeCode(piece.items, {width, 0}, sheet.sheetId);
    const double room = width - code;
    const double large = lineHeightMm(kLargePoints);
    const double small = lineHeightMm(kSmallestPoints);
    const QString who = format::person(sheet.athlete);
    const QString name = continued ? GroupText::tr("%1, continued").arg(who) : who;
    writeLine(piece.items, {0, 0, room, large}, name, kLargePoints, true);
    QStringList under{sheet.sheetId, sheet.title, weekWords(sheet)};
    under.removeAll(QString());
    writeLine(piece.items, {0, large, room, small}, under.join(QStringLiteral(" · ")), kSmallestPoints);
    constexpr double kHeadHeight = 12.7;  // the square and its quiet zone
    piece.height = kHeadHeight;
    if (continued) return piece;
    QStringList words;
    for (const SheetCaution& caution : sheet.cautions) words += cautionWords(caution);
    for (const CoachNote& note : sheet.coachNotes) words += coachNoteWords(note);
    if (!words.isEmpty()) piece.height = writeShaded(piece.items, {0, piece.height, width, 0}, words);
    return piece;
}

PaperPiece groupBlock(const SheetExercise& exercise, double width, Density density, bool labels)
{
    PaperPiece piece;
    const QRectF column(0, 0, width, 0);
    double y = writeWrapped(piece.items, column, 0, nameOf(exercise), kLargePoints, true, 1);
    y = writeWrapped(piece.items, column, y, detailOf(exercise), kSmallestPoints, false, 2);
    y = density == Density::Full ? writeTarget(piece.items, column, y, exercise)
                                 : writePlainTarget(piece.items, column, y, exercise);
    const auto write = [&](const QString& words, bool bold, int most) {
        y = writeWrapped(piece.items, column, y, words, kSmallestPoints, bold, most);
    };
    write(setUpWords(exercise), false, kMostGroupLines);
    if (exercise.target.load) write(cantMakeWords(*exercise.target.load), true, kMostGroupLines);
    write(trialWords(exercise), true, kMostGroupLines);
    write(trialAskWordsShort(exercise), false, kMostGroupLines);
    write(coachNotesWords(exercise), true, kMostGroupLines);
    write(noteWords(exercise), true, kMostGroupLines);
    write(toBeatWords(exercise), false, 2);
    if (density == Density::Full) write(warmUpWords(exercise), false, 2);
    if (density != Density::Close)
        write(cueWordsShort(exercise), false, density == Density::Full ? kMostGroupLines : 1);
    constexpr double kBoxGap = 1.5;
    const auto columns = groupColumns(exercise.unit);
    const double after = widthOf(columns) + kBoxGap;
    const double top = y + (labels ? lineHeightMm(kSmallestPoints) : 0);
    if (labels && exercise.asksDiscomfort)
        writeLine(piece.items, {after, y, width - after, top - y}, GroupText::tr("joint 0–10"), kSmallestPoints, false,
                  TextSide::Centre);
    piece.height = writeSetBoxes(piece.items, {0, y}, columns, exercise.firstSet, exercise.sets, labels);
    if (exercise.asksDiscomfort)
        piece.items.boxes.push_back({{after, top, width - after, piece.height - top}, kHairline, 0, true});
    return piece;
}

class GroupWriter {
public:
    // Without a density each lifter has the richest that takes no further column.
    GroupWriter(std::span<const SessionSheet> sheets, PaperSize paper, std::optional<Density> density)
        : m_sheets(sheets),
          m_paper(paperMillimetres(paper)),
          m_flow(m_paper, kGroupColumns, pageHeadHeight(headOfGroup(1, 1)))
    {
        for (const SessionSheet& sheet : sheets) {
            m_density = density.value_or(richestFor(sheet));
            place(sheet);
        }
    }

    [[nodiscard]] std::vector<SheetPage> finish()
    {
        auto& pages = m_flow.pages();
        const auto count = static_cast<int>(pages.size());
        for (int number = 1; number <= count; ++number)
            writePageHead(pages[static_cast<std::size_t>(number - 1)], m_paper, headOfGroup(number, count));
        return std::move(pages);
    }

private:
    [[nodiscard]] PageHead headOfGroup(int number, int count) const
    {
        const SessionSheet& first = m_sheets.front();
        return {first.group.isEmpty() ? GroupText::tr("Several lifters") : first.group,
                sheetDate(first.date),
                first.gym,
                GroupText::tr("page %1/%2").arg(QString::number(number), QString::number(count)),
                {},
                setLegend()};
    }

    [[nodiscard]] double heightOf(const SessionSheet& sheet) const
    {
        double height = lifterHead(sheet, m_flow.width(), false).height;
        for (const SheetExercise& exercise : sheet.exercises)
            height += block(exercise, &exercise == &sheet.exercises[0]).height + kBlockGap;
        return height;
    }

    [[nodiscard]] Density richestFor(const SessionSheet& sheet)
    {
        const double column = ColumnFlow(m_paper, kGroupColumns, pageHeadHeight(headOfGroup(1, 1))).room();
        const auto columns = [&](Density density) {
            m_density = density;
            return std::ceil(heightOf(sheet) / column);
        };
        const double fewest = columns(Density::Close);
        for (const Density density : {Density::Full, Density::Tight})
            if (columns(density) <= fewest) return density;
        return Density::Close;
    }

    [[nodiscard]] PaperPiece block(const SheetExercise& exercise, bool first) const
    {
        return groupBlock(exercise, m_flow.width(), m_density, first || m_density == Density::Full);
    }

    void place(const SessionSheet& sheet)
    {
        const bool full = m_inColumn == kMostOnAPage / kGroupColumns;
        if (!m_flow.atTop() && (full || heightOf(sheet) > m_flow.room())) nextColumn();
        ++m_inColumn;
        m_flow.place(lifterHead(sheet, m_flow.width(), false));
        bool first = true;
        for (const SheetExercise& exercise : sheet.exercises) {
            PaperPiece piece = block(exercise, first);
            if (piece.height > m_flow.room() && !first) {
                nextColumn();
                ++m_inColumn;
                m_flow.place(lifterHead(sheet, m_flow.width(), true));
                piece = block(exercise, true);
            }
            m_flow.place(piece, kBlockGap);
            first = false;
        }
        m_flow.skip(kLifterGap);
    }

    void nextColumn()
    {
        m_flow.nextColumn();
        m_inColumn = 0;
    }

    std::span<const SessionSheet> m_sheets;
    QSizeF m_paper;
    Density m_density = Density::Close;
    ColumnFlow m_flow;
    int m_inColumn = 0;  // lifters
};

}  // namespace

std::vector<SheetPage> layOutGroup(std::span<const SessionSheet> sheets, PaperSize paper)
{
    if (sheets.empty()) return {};
    std::vector<SheetPage> best;
    for (const std::optional<Density> density : {std::optional<Density>(), std::optional(Density::Close)}) {
        auto pages = GroupWriter(sheets, paper, density).finish();
        if (best.empty() || pages.size() < best.size()) best = std::move(pages);
        if (best.size() == 1) break;
    }
    return best;
}

}  // namespace steelyard
