#include "ui/print/week_layout.h"

#include "ui/format/people.h"
#include "ui/print/column_flow.h"
#include "ui/print/exercise_block.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct WeekText {
    Q_DECLARE_TR_FUNCTIONS(WeekText)
};

constexpr double kExerciseGap = 1.4;
constexpr double kDayGap = 5;

PaperPiece dayHead(const SessionSheet& sheet, double width)
{
    PaperPiece piece;
    const QRectF column(0, 0, width, 0);
    piece.height = writeWrapped(piece.items, column, 0, sheetWeekday(sheet.date), kLargePoints, true, 1);
    QStringList under{sheet.title, weekWords(sheet)};
    if (sheet.source != SheetSource::PlannedDay && sheet.takenFrom)
        under += WeekText::tr("not planned, as on %1").arg(sheetShortDate(*sheet.takenFrom));
    under.removeAll(QString());
    piece.height =
        writeWrapped(piece.items, column, piece.height, under.join(QStringLiteral(" · ")), kSmallestPoints, false, 1);
    constexpr double kRule = 0.5;
    piece.items.lines.push_back({{0, piece.height + kRule, width, piece.height + kRule}, 0.35});
    piece.height += 2 * kRule;
    return piece;
}

PaperPiece dayLine(const SheetExercise& exercise, double width)
{
    PaperPiece piece;
    const QRectF column(0, 0, width, 0);
    double y = writeWrapped(piece.items, column, 0, nameOf(exercise), kLargePoints, false, 1);
    y = writePlainTarget(piece.items, column, y, exercise);
    QStringList under{reserveWords(exercise), detailOf(exercise)};
    under.removeAll(QString());
    piece.height = writeWrapped(piece.items, column, y, under.join(QStringLiteral(" · ")), kSmallestPoints, false, 2);
    return piece;
}

std::vector<PaperPiece> piecesOf(const SessionSheet& sheet, double width)
{
    std::vector<PaperPiece> pieces;
    pieces.reserve(sheet.exercises.size());
    for (const SheetExercise& exercise : sheet.exercises) pieces.push_back(dayLine(exercise, width));
    return pieces;
}

void placeDay(ColumnFlow& flow, const SessionSheet& sheet)
{
    const PaperPiece head = dayHead(sheet, flow.width());
    const auto pieces = piecesOf(sheet, flow.width());
    double height = head.height;
    for (const PaperPiece& piece : pieces) height += piece.height + kExerciseGap;
    if (height > flow.room() && !flow.atTop()) flow.nextColumn();
    flow.place(head, kExerciseGap);
    for (const PaperPiece& piece : pieces) {
        if (piece.height > flow.room()) {
            flow.nextColumn();
            flow.place(head, kExerciseGap);
        }
        flow.place(piece, kExerciseGap);
    }
    flow.skip(kDayGap);
}

}  // namespace

QDate weekBegin(QDate day)
{
    return day.addDays(1 - day.dayOfWeek());
}

std::vector<SheetPage> layOutWeek(std::span<const SessionSheet> sheets, PaperSize paper)
{
    if (sheets.empty()) return {};
    constexpr int kWeekColumns = 2;
    const SessionSheet& first = sheets.front();
    const auto head = [&](int number, int count) {
        return PageHead{format::person(first.athlete),
                        WeekText::tr("week of %1").arg(sheetShortDate(weekBegin(first.date))),
                        first.gym,
                        WeekText::tr("page %1/%2").arg(QString::number(number), QString::number(count)),
                        {},
                        WeekText::tr("Targets as the record stands today; the day's sheet has the last word.")};
    };
    ColumnFlow flow(paperMillimetres(paper), kWeekColumns, pageHeadHeight(head(1, 1)));
    for (const SessionSheet& sheet : sheets) placeDay(flow, sheet);
    const auto count = static_cast<int>(flow.pages().size());
    for (int number = 1; number <= count; ++number)
        writePageHead(flow.pages()[static_cast<std::size_t>(number - 1)], paperMillimetres(paper), head(number, count));
    return std::move(flow.pages());
}

}  // namespace steelyard
