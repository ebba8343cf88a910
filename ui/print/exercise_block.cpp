#include "ui/print/exercise_block.h"

#include "ui/print/load_drawing.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_trial_words.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <deque>

namespace steelyard {
namespace {

struct BlockText {
    Q_DECLARE_TR_FUNCTIONS(BlockText)
};

constexpr double kDrawingWidth = 29;  // five discs and the bar's end
constexpr double kDrawingHeight = 11.5;
constexpr double kDrawingGap = 1.5;
constexpr double kColumnGap = 3;  // between words and boxes
constexpr double kRatingGap = 2;
constexpr double kNotesGap = 0.6;
constexpr double kCloseNotesGap = 0.2;
constexpr double kNumberGrey = 0.06;
constexpr double kLabelAir = 0.8;  // between labels
constexpr int kMostLines = 6;      // of one paragraph

// What is said of an exercise in small type, the most needed first.
struct Paragraph {
    QString words;
    bool bold = false;
};

std::deque<Paragraph> paragraphsOf(const BlockInput& input)
{
    const SheetExercise& exercise = input.exercise;
    if (input.continued) return {};
    const bool close = input.density == Density::Close;
    std::deque<Paragraph> all{{close ? setUpWordsShort(exercise) : setUpWords(exercise), false}};
    if (exercise.target.load) all.push_back({cantMakeWords(*exercise.target.load), true});
    // What was decided comes before what is always so.
    all.push_back({close ? trialWordsShort(exercise) : trialWords(exercise), true});
    all.push_back({close ? trialAskWordsShort(exercise) : trialAskWords(exercise), false});
    all.push_back({coachNotesWords(exercise), true});
    all.push_back({noteWords(exercise), true});
    all.push_back({close ? toBeatWordsShort(exercise) : toBeatWords(exercise), false});
    all.push_back({close ? warmUpWordsShort(exercise) : warmUpWords(exercise), false});
    all.push_back({close ? cueWordsShort(exercise) : cueWords(exercise), false});
    if (input.density == Density::Full)
        all.push_back(
            {QStringList{whyWords(exercise), afterwardsWords(exercise)}.join(QLatin1Char(' ')).trimmed(), false});
    std::erase_if(all, [](const Paragraph& paragraph) { return paragraph.words.isEmpty(); });
    return all;
}

std::vector<std::vector<BoxColumn>> ratingBoxes(bool discomfort)
{
    constexpr double kFirst = 17;
    constexpr double kSecond = 15;
    constexpr double kThird = 14;
    const std::vector<BoxColumn> felt{
        {BlockText::tr("tension"), kFirst}, {BlockText::tr("burn"), kSecond}, {BlockText::tr("pump"), kThird}};
    if (!discomfort) return {felt, {{BlockText::tr("gave out"), kFirst + kSecond + kThird}}};
    return {felt,
            {{BlockText::tr("gave out"), kFirst}, {BlockText::tr("joint"), kSecond}, {BlockText::tr("0–10"), kThird}}};
}

double ratingWidth()
{
    return widthOf(ratingBoxes(true).front());
}

void writeLabel(SheetPage& page, QPointF at, const BoxColumn& column)
{
    const QString label = shortenText(column.label, column.width - kLabelAir, kSmallestPoints, false);
    writeLine(page, {at.x(), at.y(), column.width, lineHeightMm(kSmallestPoints)}, label, kSmallestPoints, false,
              TextSide::Centre);
}

double writeRatings(SheetPage& page, QPointF at, bool discomfort)
{
    const double label = lineHeightMm(kSmallestPoints);
    double y = at.y();
    for (const auto& row : ratingBoxes(discomfort)) {
        double x = at.x();
        for (const BoxColumn& box : row) {
            writeLabel(page, {x, y}, box);
            page.boxes.push_back({{x, y + label, box.width, kWriteInHeight}, kHairline, 0, true});
            x += box.width;
        }
        y += label + kWriteInHeight;
    }
    return y;
}

// Takes as many parts as one line holds; those that are left go to the notes, because a grip that is cut off is another lift.
QString takeLine(QStringList& parts, double width)
{
    const QString between = QStringLiteral(" · ");
    QString line;
    while (!parts.isEmpty()) {
        const QString longer = line.isEmpty() ? parts.front() : line + between + parts.front();
        if (!line.isEmpty() && textWidthMm(longer, kSmallestPoints, false) > width) break;
        line = longer;
        parts.removeFirst();
    }
    return line;
}

double writeHead(SheetPage& page, const BlockInput& input, const QRectF& column, std::deque<Paragraph>& rest)
{
    const SheetExercise& exercise = input.exercise;
    const int most = input.density == Density::Full ? 2 : 1;
    QStringList details = detailParts(exercise);
    const QString detail = input.density == Density::Full ? detailOf(exercise) : takeLine(details, column.width());
    if (input.density != Density::Full && !details.isEmpty() && !input.continued)
        rest.push_front({details.join(QStringLiteral(" · ")), false});
    const QString name = input.continued ? BlockText::tr("%1, continued").arg(nameOf(exercise)) : nameOf(exercise);
    double y = writeWrapped(page, column, 0, name, kLargePoints, true, most);
    y = writeWrapped(page, column, y, detail, kSmallestPoints, false, most + 1);
    return writeTarget(page, column, y, exercise);
}

// Whole paragraphs beside the boxes, in their order, until one doesn't fit.
double writeBeside(SheetPage& page, std::deque<Paragraph>& rest, const QRectF& column, double y, double bottom)
{
    constexpr double kRounding = 0.01;
    while (!rest.empty()) {
        const Paragraph& next = rest.front();
        const auto lines = wrapText(next.words, column.width(), kSmallestPoints, next.bold).size();
        if (y + static_cast<double>(lines) * lineHeightMm(kSmallestPoints) > bottom + kRounding) break;
        y = writeWrapped(page, column, y, next.words, kSmallestPoints, next.bold);
        rest.pop_front();
    }
    return y;
}

// Paragraphs of one weight in a row become one.
std::deque<Paragraph> joined(const std::deque<Paragraph>& paragraphs)
{
    std::deque<Paragraph> all;
    for (const Paragraph& next : paragraphs)
        if (!all.empty() && all.back().bold == next.bold)
            all.back().words += QStringLiteral(" · ") + next.words;
        else
            all.push_back(next);
    return all;
}

void writeNotes(ExerciseBlock& block, const BlockInput& input, std::deque<Paragraph> rest)
{
    if (rest.empty()) return;
    const bool close = input.density == Density::Close;
    if (close) rest = joined(rest);
    const double line = lineHeightMm(kSmallestPoints);
    const double top = block.height + (close ? kCloseNotesGap : kNotesGap);
    double y = top;
    int left = close ? input.mostNoteLines : static_cast<int>(rest.size()) * kMostLines;
    const QString asked = trialAskWordsShort(input.exercise);
    for (const Paragraph& next : rest) {
        if (left <= 0) break;
        const double before = y;
        // Which arm, and what is asked of it, stands whatever else must go.
        if (!asked.isEmpty() && next.words.startsWith(asked))
            block.neededLines = 1 + static_cast<int>(std::lround((y - top) / line));
        y = writeWrapped(block.items, {0, 0, input.width, 0}, y, next.words, kSmallestPoints, next.bold,
                         std::min(left, kMostLines));
        left -= static_cast<int>(std::lround((y - before) / line));
    }
    block.noteLines = static_cast<int>(std::lround((y - top) / line));
    block.height = y;
}

}  // namespace

std::vector<BoxColumn> setColumns(MassUnit unit)
{
    return {{BlockText::tr("set"), 7},
            {toText(unit), 17},
            {BlockText::tr("reps"), 14},
            {BlockText::tr("off, marks"), 22},
            {BlockText::tr("RIR"), 14}};
}

double widthOf(const std::vector<BoxColumn>& columns)
{
    double width = 0;
    for (const BoxColumn& column : columns) width += column.width;
    return width;
}

double writeSetBoxes(SheetPage& page, QPointF at, const std::vector<BoxColumn>& columns, int firstSet, int sets,
                     bool labels)
{
    double y = at.y();
    double x = at.x();
    if (labels) {
        for (const BoxColumn& column : columns) {
            writeLabel(page, {x, y}, column);
            x += column.width;
        }
        y += lineHeightMm(kSmallestPoints);
    }
    for (int row = 0; row < sets; ++row) {
        x = at.x();
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const QRectF box(x, y, columns[i].width, kWriteInHeight);
            page.boxes.push_back({box, kHairline, i == 0 ? kNumberGrey : 0.0, i != 0});
            if (i == 0) writeLine(page, box, QString::number(firstSet + row), kSmallestPoints, true, TextSide::Centre);
            x += columns[i].width;
        }
        y += kWriteInHeight;
    }
    return y;
}

double writePlainTarget(SheetPage& page, const QRectF& column, double top, const SheetExercise& exercise)
{
    constexpr double kBetween = 5;
    const QString load = loadWords(exercise);
    const QString reps = repsWords(exercise);
    const double loadWidth = textWidthMm(load, kLargePoints, true);
    if (loadWidth + kBetween + textWidthMm(reps, kLargePoints, true) > column.width()) {
        const double y = writeWrapped(page, column, top, load, kLargePoints, true, 2);
        return writeWrapped(page, column, y, reps, kLargePoints, true, 3);
    }
    const double large = lineHeightMm(kLargePoints);
    writeLine(page, {column.left(), top, loadWidth + 0.1, large}, load, kLargePoints, true);
    const double x = column.left() + loadWidth + kBetween;
    writeLine(page, {x, top, column.right() - x, large}, reps, kLargePoints, true);
    return top + large;
}

double writeTarget(SheetPage& page, const QRectF& column, double top, const SheetExercise& exercise)
{
    if (!exercise.target.load || !hasDrawing(*exercise.target.load))
        return writePlainTarget(page, column, top, exercise);
    const QRectF words(column.left(), 0, column.width() - kDrawingWidth - kDrawingGap, 0);
    double y = writeWrapped(page, words, top, loadWords(exercise), kLargePoints, true, 2);
    y = writeWrapped(page, words, y, repsWords(exercise), kLargePoints, true, 3);
    constexpr double kAbove = 0.3;
    drawLoad(page, {column.right() - kDrawingWidth, top + kAbove, kDrawingWidth, kDrawingHeight},
             *exercise.target.load);
    return std::max(y, top + 2 * kAbove + kDrawingHeight);
}

ExerciseBlock layOutExercise(const BlockInput& input)
{
    ExerciseBlock block;
    const auto columns = setColumns(input.exercise.unit);
    const double ratings = input.width - ratingWidth();
    const double sets = ratings - kRatingGap - widthOf(columns);
    const double boxes =
        std::max(writeSetBoxes(block.items, {sets, 0}, columns, input.firstSet, input.sets, input.labels),
                 input.continued ? 0 : writeRatings(block.items, {ratings, 0}, input.exercise.asksDiscomfort));
    const QRectF column(0, 0, sets - kColumnGap, 0);
    auto rest = paragraphsOf(input);
    double left = writeHead(block.items, input, column, rest);
    left = writeBeside(block.items, rest, column, left, boxes);
    block.height = std::max(left, boxes);
    writeNotes(block, input, std::move(rest));
    return block;
}

}  // namespace steelyard
