#include "ui/pages/week/roster_picture_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct PictureText {
    Q_DECLARE_TR_FUNCTIONS(PictureText)
};

QString capacityWords(const LineReview& line, MassUnit unit)
{
    if (!line.reading.capacity) return {};
    const CapacityEstimate& capacity = *line.reading.capacity;
    return PictureText::tr(", %1 (%2 to %3)", "capacity and where it lies")
        .arg(format::mass(capacity.kg, unit), format::number(format::massIn(capacity.low90Kg, unit), 1),
             format::number(format::massIn(capacity.high90Kg, unit), 1));
}

}  // namespace

std::vector<const LineReview*> mainLinesOf(const AthleteReview& review)
{
    std::vector<const LineReview*> lines;
    for (const Id<LiftLine> id : review.summary.mainLines) {
        const auto at = std::ranges::find(review.lines, id, &LineReview::id);
        if (at != review.lines.end()) lines.push_back(&*at);
    }
    return lines;
}

QString lineWords(const LineReview& line)
{
    QStringList parts{line.exercise, line.variant, line.grip};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

QString shortLineName(const std::vector<const LineReview*>& lines, std::size_t index)
{
    const LineReview& line = *lines[index];
    const auto alike = [&](auto part) {
        return std::ranges::count_if(lines, [&](const LineReview* other) {
            return other->exercise == line.exercise && part(*other) == part(line);
        });
    };
    if (alike([](const LineReview& each) { return each.exercise; }) == 1) return line.exercise;
    QStringList parts{line.variant, line.grip};
    if (alike([](const LineReview& each) { return each.variant; }) > 1) std::swap(parts[0], parts[1]);
    parts << line.exercise;
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

AimFit aimFit(const WeeklyMuscleSets& sets)
{
    if (!sets.aim) return AimFit::NoAim;
    if (sets.perWeek < sets.aim->weeklySetsLow) return AimFit::Under;
    return sets.perWeek > sets.aim->weeklySetsHigh ? AimFit::Over : AimFit::Within;
}

std::vector<const WeeklyMuscleSets*> setsByUrgency(const AthleteReview& review)
{
    std::vector<const WeeklyMuscleSets*> order;
    order.reserve(review.summary.muscles.size());
    for (const WeeklyMuscleSets& sets : review.summary.muscles) order.push_back(&sets);
    std::ranges::stable_partition(order, [](const WeeklyMuscleSets* sets) {
        const AimFit fit = aimFit(*sets);
        return fit == AimFit::Under || fit == AimFit::Over;
    });
    return order;
}

QStringList verdictLines(const AthleteReview& review)
{
    QStringList lines;
    for (const LineReview* line : mainLinesOf(review)) {
        const Verdict verdict = line->reading.verdict;
        lines << QStringLiteral("%1 %2: %3")
                         .arg(format::verdictShape(verdict), lineWords(*line), format::verdictWord(verdict))
                     + capacityWords(*line, review.unit);
    }
    return lines;
}

QStringList setLines(const AthleteReview& review)
{
    QStringList lines;
    for (const WeeklyMuscleSets* sets : setsByUrgency(review)) {
        QString text = QStringLiteral("%1 %2").arg(sets->name, format::number(sets->perWeek, 1));
        if (sets->aim)
            text += PictureText::tr(" (%1–%2)", "the band that is aimed at")
                        .arg(sets->aim->weeklySetsLow)
                        .arg(sets->aim->weeklySetsHigh);
        if (aimFit(*sets) == AimFit::Under) text += PictureText::tr(", too few");
        if (aimFit(*sets) == AimFit::Over) text += PictureText::tr(", too many");
        lines << text;
    }
    return lines;
}

QStringList discomfortLines(const AthleteReview& review)
{
    if (!review.summary.discomfortRated) return {PictureText::tr("not rated")};
    if (review.summary.joints.empty()) return {PictureText::tr("rated, none felt")};
    QStringList lines;
    for (const JointDiscomfort& joint : review.summary.joints)
        lines << PictureText::tr("%1 %2 of 10, %3", "joint, rating, day")
                     .arg(format::jointWord(joint.joint), QString::number(joint.rating), format::dayMonth(joint.date));
    return lines;
}

QStringList sessionLines(const AthleteReview& review)
{
    QStringList lines;
    for (const AttendedWeek& week : review.summary.weeks) {
        const QString day = format::dayMonth(week.lastDay);
        const QString came = QString::number(week.came);
        lines << (week.expected ? PictureText::tr("week to %1: %2 of %3", "day, sessions, expected ones")
                                      .arg(day, came, format::shortNumber(std::round(*week.expected * 10) / 10))
                                : PictureText::tr("week to %1: %2").arg(day, came));
    }
    return lines;
}

}  // namespace steelyard
