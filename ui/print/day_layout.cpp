#include "ui/print/day_layout.h"

#include "ui/format/people.h"
#include "ui/print/column_flow.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct DayText {
    Q_DECLARE_TR_FUNCTIONS(DayText)
};

constexpr double kRowGap = 0.5;
constexpr double kTurnGap = 3.5;
constexpr double kAir = 2;  // between cells

QString kitWords(const NeededKit& kit)
{
    const QString mass = sheetLoad(kit.mass);
    switch (kit.kind) {
    case KitKind::Bar:
        return DayText::tr("%n bar(s) of %1", nullptr, kit.needed).arg(mass);
    case KitKind::Disc:
        return DayText::tr("%n pair(s) of %1 discs", nullptr, kit.needed).arg(mass);
    case KitKind::Dumbbells:
        return DayText::tr("%n pair(s) of %1 dumbbells", nullptr, kit.needed).arg(mass);
    }
    return {};
}

PaperPiece turnHead(int number, double width)
{
    PaperPiece piece;
    const QString words = DayText::tr("Turn %1").arg(number);
    piece.height = writeWrapped(piece.items, {0, 0, width, 0}, 0, words, kLargePoints, true, 1);
    piece.items.lines.push_back({{0, piece.height, width, piece.height}, 0.35});
    piece.height += kRowGap;
    return piece;
}

PaperPiece useRow(const GymTurnUse& use, double width)
{
    constexpr std::array kShares{0.275, 0.29, 0.135};
    PaperPiece piece;
    piece.height = lineHeightMm(kLargePoints);
    const SheetExercise& exercise = *use.exercise;
    // "each hand" stands at the dumbbells.
    const bool hands = exercise.loading == Loading::PerHand && exercise.target.load;
    const QString load = hands ? sheetLoad(exercise.target.load->load) : loadWords(exercise);
    const std::array words{format::person(use.athlete), nameOf(exercise), load};
    double x = 0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const double cell = kShares[i] * width;
        writeLine(piece.items, {x, 0, cell - kAir, piece.height}, words[i], kLargePoints, i == 2);
        x += cell;
    }
    const QString loading = exercise.target.load ? loadingWords(*exercise.target.load) : QString();
    writeLine(piece.items, {x, 0, width - x, piece.height}, loading, kSmallestPoints);
    piece.height += kRowGap;
    return piece;
}

PaperPiece kitPiece(const GymTurn& turn, double width)
{
    PaperPiece piece;
    QStringList all;
    QStringList missing;
    for (const NeededKit& kit : turn.kit) {
        all += kitWords(kit);
        if (kit.isShort()) missing += DayText::tr("%1, the gym has %2").arg(kitWords(kit), QString::number(kit.there));
    }
    if (all.isEmpty()) return piece;
    const QString sum = DayText::tr("At once: %1").arg(all.join(QStringLiteral(" · ")));
    piece.height = writeWrapped(piece.items, {0, 0, width, 0}, 0, sum, kSmallestPoints, false);
    if (missing.isEmpty()) return piece;
    constexpr double kFrame = 0.5;
    constexpr double kPad = 1.2;
    const double top = piece.height + kPad;
    const QString words = DayText::tr("Not enough: %1").arg(missing.join(QStringLiteral(" · ")));
    SheetPage lines;
    const double end = writeWrapped(lines, {kPad, 0, width - 2 * kPad, 0}, top, words, kSmallestPoints, true);
    piece.items.boxes.push_back({{0, top - kFrame, width, end - top + 2 * kFrame}, kFrame, 0, false});
    piece.items.place(lines, {});
    piece.height = end + kPad;
    return piece;
}

void placeTurn(ColumnFlow& flow, const GymTurn& turn, int number)
{
    const PaperPiece head = turnHead(number, flow.width());
    const PaperPiece kit = kitPiece(turn, flow.width());
    const double row = lineHeightMm(kLargePoints) + kRowGap;
    const double height = head.height + kit.height + row * static_cast<double>(turn.uses.size());
    if (height > flow.room() && !flow.atTop()) flow.nextColumn();
    flow.place(head);
    for (const GymTurnUse& use : turn.uses) {
        if (row > flow.room()) {
            flow.nextColumn();
            flow.place(head);
        }
        flow.place(useRow(use, flow.width()));
    }
    if (kit.height > flow.room()) flow.nextColumn();
    flow.place(kit, kTurnGap);
}

PageHead headOfDay(const GymGroup& group, int number, int count)
{
    QStringList under{group.group, DayText::tr("%n lifter(s)", nullptr, group.athletes)};
    under.removeAll(QString());
    return {
        group.gym.isEmpty() ? DayText::tr("No gym set") : group.gym,
        sheetDate(group.date),
        under.join(QStringLiteral(" · ")),
        DayText::tr("page %1/%2").arg(QString::number(number), QString::number(count)),
        {},
        DayText::tr(
            "If all begin together and keep to their order. Working loads only; warm-ups and stacks are left out.")};
}

}  // namespace

std::vector<SheetPage> layOutDay(std::span<const SessionSheet> sheets, std::span<const Row<Gym>> gyms, PaperSize paper)
{
    std::vector<SheetPage> all;
    for (const GymGroup& group : gymGroups(sheets, gyms)) {
        ColumnFlow flow(paperMillimetres(paper), 1, pageHeadHeight(headOfDay(group, 1, 1)));
        for (std::size_t turn = 0; turn < group.turns.size(); ++turn)
            placeTurn(flow, group.turns[turn], static_cast<int>(turn) + 1);
        const auto count = static_cast<int>(flow.pages().size());
        for (int number = 1; number <= count; ++number)
            writePageHead(flow.pages()[static_cast<std::size_t>(number - 1)], paperMillimetres(paper),
                          headOfDay(group, number, count));
        for (SheetPage& page : flow.pages()) all.push_back(std::move(page));
    }
    return all;
}

}  // namespace steelyard
