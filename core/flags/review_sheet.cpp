#include "core/flags/review_sheet.h"

#include "core/flags/actions.h"
#include "core/flags/registry.h"

#include <algorithm>

namespace steelyard {
namespace {

ReviewSheetFlag onPaper(const Flag& flag, std::optional<Decision> answer)
{
    QStringList choices;
    for (const QString& word : flag.actions) choices << actionLabel(word);
    return {ruleTitle(flag.rule), flag.sentence, flag.severity, choices, std::move(answer)};
}

bool isTrainedLately(const LineReview& line, QDate asOf)
{
    return !line.reading.points.empty() && line.reading.points.back().date >= asOf.addDays(-7 * kRecentWeeks);
}

QString onPaper(const LineReview& line)
{
    QStringList parts{line.exercise, line.variant, line.grip};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

}  // namespace

ReviewSheet buildReviewSheet(std::vector<const AthleteReview*> reviews, QDate asOf)
{
    std::ranges::stable_sort(reviews,
                             [](const AthleteReview* a, const AthleteReview* b) { return comesBefore(*a, *b); });
    ReviewSheet sheet{asOf, {}};
    for (const AthleteReview* review : reviews) {
        ReviewSheetEntry entry{review->name, review->group, review->unit, review->lastSession, {}, {}};
        for (const Flag& flag : review->flags) entry.flags.push_back(onPaper(flag, {}));
        for (const AnsweredFlag& answered : review->answered)
            entry.flags.push_back(onPaper(answered.flag, answered.decision));
        for (const LineReview& line : review->lines)
            if (isTrainedLately(line, asOf))
                entry.lines.push_back({onPaper(line), line.reading.verdict, line.reading.rate, line.reading.capacity});
        sheet.entries.push_back(std::move(entry));
    }
    return sheet;
}

}  // namespace steelyard
