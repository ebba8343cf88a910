#include "ui/print/exercise_block.h"

#include "ui/print/load_drawing.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct BlockText {
    Q_DECLARE_TR_FUNCTIONS(BlockText)
};

constexpr double kDrawingWidth = 34;
constexpr double kDrawingHeight = 11.5;
constexpr double kColumnGap = 4;
constexpr double kRowHeight = kWriteInHeight;

struct BoxColumn {
    QString label;
    double width;
};

std::vector<BoxColumn> setColumns(MassUnit unit)
{
    return {{BlockText::tr("set"), 8},  {toText(unit), 20},           {BlockText::tr("reps"), 15},
            {BlockText::tr("off"), 14}, {BlockText::tr("marks"), 22}, {BlockText::tr("RIR"), 15}};
}

std::vector<BoxColumn> ratingColumns()
{
    return {{BlockText::tr("tension"), 17},  {BlockText::tr("burn"), 14},  {BlockText::tr("pump"), 15},
            {BlockText::tr("gave out"), 18}, {BlockText::tr("joint"), 15}, {BlockText::tr("0–10"), 15}};
}

double widthOf(const std::vector<BoxColumn>& columns)
{
    double width = 0;
    for (const BoxColumn& column : columns) width += column.width;
    return width;
}

// Writes lines downwards in a column.
class ColumnWriter {
public:
    ColumnWriter(SheetPage& page, double width) : m_page(page), m_width(width) {}

    void write(const QString& text, double points, bool bold, int most, double width = 0)
    {
        if (text.isEmpty()) return;
        const double room = width > 0 ? width : m_width;
        for (const QString& line : wrapText(text, room, points, bold, most)) {
            m_page.texts.push_back({{0, m_y, room, lineHeightMm(points)}, line, points, bold, TextSide::Left, false});
            m_y += lineHeightMm(points);
        }
    }
    [[nodiscard]] double y() const { return m_y; }
    void moveTo(double y) { m_y = std::max(m_y, y); }
    void skip(double mm) { m_y += mm; }

private:
    SheetPage& m_page;
    double m_width;
    double m_y = 0;
};

void writeTarget(SheetPage& page, ColumnWriter& column, const SheetExercise& exercise, double width)
{
    const bool drawn = exercise.target.load && hasDrawing(*exercise.target.load);
    const double room = drawn ? width - kDrawingWidth - 2 : width;
    const double top = column.y() + 0.5;
    column.skip(0.5);
    column.write(loadWords(exercise), kLargePoints, true, 2, room);
    const QString reps = repsWords(exercise);
    const double repsWidth = textWidthMm(reps, kLargePoints, true);
    const QString reserve = reserveWords(exercise);
    const double reserveWidth = textWidthMm(reserve, kSmallestPoints, false);
    const double baseline = column.y();
    column.write(reps, kLargePoints, true, 3, room);
    if (!reserve.isEmpty() && repsWidth + 3 + reserveWidth <= room)
        page.texts.push_back({{repsWidth + 3, baseline + 1.1, room - repsWidth - 3, lineHeightMm(kSmallestPoints)},
                              reserve,
                              kSmallestPoints,
                              false,
                              TextSide::Left,
                              false});
    else
        column.write(reserve, kSmallestPoints, false, 1, room);
    if (!drawn) return;
    drawLoad(page, {width - kDrawingWidth, top, kDrawingWidth, kDrawingHeight}, *exercise.target.load);
    column.moveTo(top + kDrawingHeight + 0.5);
}

double writeLeft(SheetPage& page, const BlockInput& input, double width)
{
    const SheetExercise& exercise = input.exercise;
    const bool full = input.density == Density::Full;
    ColumnWriter column(page, width);
    const QString name = input.continued ? BlockText::tr("%1, continued").arg(exercise.exercise) : exercise.exercise;
    column.write(name, kLargePoints, true, full ? 3 : 2);
    column.write(detailOf(exercise), kSmallestPoints, false, full ? 3 : 2);
    writeTarget(page, column, exercise, width);
    if (input.continued) return column.y();
    if (exercise.target.load) {
        column.write(setUpWords(*exercise.target.load), kSmallestPoints, true, 3);
        column.write(cantMakeWords(*exercise.target.load), kSmallestPoints, false, 3);
    }
    column.write(toBeatWords(exercise), kSmallestPoints, false, 4);
    column.write(warmUpWords(exercise), kSmallestPoints, false, 4);
    return column.y();
}

// Over the whole width, where long sentences take the fewest lines.
double writeNotes(SheetPage& page, const BlockInput& input, double top)
{
    ColumnWriter column(page, input.width);
    column.moveTo(top);
    if (input.continued) return top;
    // What was decided comes before what is always so, and stays on a tight page.
    column.write(coachNotesWords(input.exercise), kSmallestPoints, true, 6);
    column.write(cueWords(input.exercise), kSmallestPoints, false, 6);
    if (input.density == Density::Tight) return column.y();
    column.write(
        QStringList{whyWords(input.exercise), afterwardsWords(input.exercise)}.join(QLatin1Char(' ')).trimmed(),
        kSmallestPoints, false, 6);
    return column.y();
}

void writeLabels(SheetPage& page, const std::vector<BoxColumn>& columns, double left, double y)
{
    constexpr double kAir = 0.8;  // between labels, mm
    for (const BoxColumn& column : columns) {
        page.texts.push_back({{left, y, column.width, lineHeightMm(kSmallestPoints)},
                              shortenText(column.label, column.width - kAir, kSmallestPoints, false),
                              kSmallestPoints,
                              false,
                              TextSide::Centre,
                              false});
        left += column.width;
    }
}

double writeRight(SheetPage& page, const BlockInput& input, double left)
{
    const auto columns = setColumns(input.exercise.unit);
    const double label = lineHeightMm(kSmallestPoints);
    double y = 0;
    writeLabels(page, columns, left, y);
    y += label;
    for (int row = 0; row < input.sets; ++row) {
        double x = left;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const QRectF box(x, y, columns[i].width, kRowHeight);
            page.boxes.push_back({box, kHairline, i == 0 ? 0.06 : 0.0, i != 0});
            if (i == 0)
                page.texts.push_back(
                    {box, QString::number(input.firstSet + row), kSmallestPoints, true, TextSide::Centre, false});
            x += columns[i].width;
        }
        y += kRowHeight;
    }
    const auto ratings = ratingColumns();
    writeLabels(page, ratings, left, y);
    y += label;
    for (const BoxColumn& column : ratings) {
        page.boxes.push_back({{left, y, column.width, kRowHeight}, kHairline, 0, true});
        left += column.width;
    }
    return y + kRowHeight;
}

}  // namespace

ExerciseBlock layOutExercise(const BlockInput& input)
{
    ExerciseBlock block;
    const double rightWidth = widthOf(setColumns(input.exercise.unit));
    const double leftHeight = writeLeft(block.items, input, input.width - rightWidth - kColumnGap);
    const double rightHeight = writeRight(block.items, input, input.width - rightWidth);
    block.height = writeNotes(block.items, input, std::max(leftHeight, rightHeight) + 0.6);
    return block;
}

}  // namespace steelyard
