#include "ui/models/attention_words.h"

#include "core/flags/attention.h"
#include "core/flags/registry.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct AttentionText {
    Q_DECLARE_TR_FUNCTIONS(AttentionText)
};

constexpr std::size_t kMostWorstFlags = 3;
constexpr std::array kConcernOrder{Concern::Pain, Concern::Falling, Concern::Unreadable, Concern::NotMoving,
                                   Concern::Housekeeping};

QString openByConcern(const AthleteReview& review)
{
    QStringList parts;
    for (const Concern concern : kConcernOrder) {
        const auto isOf = [concern](const Flag& flag) { return concernOf(flag) == concern; };
        const auto count = std::ranges::count_if(review.flags, isOf);
        if (count > 0) parts << QStringLiteral("%1 %2").arg(QLocale().toString(count), concernWord(concern));
    }
    return parts.empty() ? AttentionText::tr("Nothing open") : AttentionText::tr("Open: %1").arg(parts.join(u", "));
}

QString lookedAtWords(const AthleteReview& review, QDate asOf)
{
    if (!review.lookedOn) return AttentionText::tr("Not looked at yet");
    const QString when = format::ago(*review.lookedOn, asOf);
    return review.finished ? AttentionText::tr("Looked at %1, finished for this round").arg(when)
                           : AttentionText::tr("Looked at %1").arg(when);
}

}  // namespace

QString concernWord(Concern concern)
{
    switch (concern) {
    case Concern::Pain:
        return AttentionText::tr("pain");
    case Concern::Falling:
        return AttentionText::tr("falling");
    case Concern::Unreadable:
        return AttentionText::tr("can't be read");
    case Concern::NotMoving:
        return AttentionText::tr("not moving");
    case Concern::Housekeeping:
        return AttentionText::tr("housekeeping");
    }
    return {};
}

QString attentionWords(const AthleteReview& review, QDate asOf)
{
    QStringList lines{openByConcern(review)};
    for (std::size_t i = 0; i < std::min(kMostWorstFlags, review.flags.size()); ++i) {
        const Flag& flag = review.flags[i];
        lines << AttentionText::tr("%1 %2: %3", "shape, how soon, flag")
                     .arg(format::severityShape(flag.severity), format::severityWord(flag.severity),
                          ruleTitle(flag.rule));
    }
    if (review.flags.size() > kMostWorstFlags)
        lines << AttentionText::tr("and %n more", nullptr, static_cast<int>(review.flags.size() - kMostWorstFlags));
    lines << lookedAtWords(review, asOf);
    QStringList order;
    for (const Concern concern : kConcernOrder) order << concernWord(concern);
    lines << AttentionText::tr("Order: %1; among equals, who was looked at longest ago")
                 .arg(order.join(AttentionText::tr(", then ")));
    return lines.join(u'\n');
}

}  // namespace steelyard
