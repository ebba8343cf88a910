#include "core/domain/athlete.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>

namespace steelyard {
namespace {

struct AthleteText {
    Q_DECLARE_TR_FUNCTIONS(AthleteText)
};

void checkLength(const std::optional<Length>& length, int lowMm, int highMm, const QString& field, Problems& problems)
{
    if (length && (toMillimetres(*length) < lowMm || toMillimetres(*length) > highMm))
        problems.push_back(
            {field, AthleteText::tr("This length is from %1 to %2 centimetres.").arg(lowMm / 10).arg(highMm / 10)});
}

}  // namespace

QString jointHistoryNeedsConsent()
{
    return AthleteText::tr("A joint history is kept only of a lifter who agreed to it. Record the consent first.");
}

std::vector<QString> tagsFrom(QStringView typed)
{
    std::vector<QString> tags;
    for (const QStringView part : typed.split(u',')) {
        const QString tag = cleanName(part);
        const auto isSame = [key = searchKey(tag)](const QString& other) { return searchKey(other) == key; };
        if (!tag.isEmpty() && std::ranges::none_of(tags, isSame)) tags.push_back(tag);
    }
    return tags;
}

QString tagText(const std::vector<QString>& tags)
{
    return QStringList(tags.begin(), tags.end()).join(QStringLiteral(", "));
}

Problems validateTags(const std::vector<QString>& tags)
{
    const QString field = QStringLiteral("tags");
    if (std::ranges::any_of(tags, [](const QString& tag) { return tag.size() > kMaxTagLength; }))
        return {{field, AthleteText::tr("A tag has at most %n characters; shorten it.", nullptr,
                                        static_cast<int>(kMaxTagLength))}};
    if (std::ssize(tags) > kMostTags)
        return {{field, AthleteText::tr("A lifter has at most %n tags; leave some out.", nullptr,
                                        static_cast<int>(kMostTags))}};
    if (tagsFrom(tagText(tags)) != tags)
        return {{field, AthleteText::tr("Tags are words without a comma, each once.")}};
    return {};
}

Problems validate(const Athlete& athlete, QDate today)
{
    Problems problems;
    if (athlete.name.isEmpty())
        problems.push_back({QStringLiteral("name"), AthleteText::tr("A name is needed.")});
    else if (athlete.name.size() > kMaxNameLength)
        problems.push_back(
            {QStringLiteral("name"), AthleteText::tr("The name is longer than %n characters; shorten it.", nullptr,
                                                     static_cast<int>(kMaxNameLength))});
    if (athlete.born && (*athlete.born > today || athlete.born->daysTo(today) > 120 * 366))
        problems.push_back(
            {QStringLiteral("born"), AthleteText::tr("The date of birth lies outside the last 120 years.")});
    checkLength(athlete.height, 500, 2600, QStringLiteral("height"), problems);
    checkLength(athlete.shoulderBreadth, 150, 700, QStringLiteral("shoulder_breadth"), problems);
    checkLength(athlete.upperArm, 100, 600, QStringLiteral("upper_arm"), problems);
    checkLength(athlete.forearm, 100, 600, QStringLiteral("forearm"), problems);
    if (athlete.daysPerWeek && (*athlete.daysPerWeek < 1 || *athlete.daysPerWeek > 7))
        problems.push_back({QStringLiteral("days_per_week"), AthleteText::tr("Training days a week are from 1 to 7.")});
    if (athlete.minutesPerDay && (*athlete.minutesPerDay < 5 || *athlete.minutesPerDay > 480))
        problems.push_back({QStringLiteral("minutes_per_day"), AthleteText::tr("Minutes a day are from 5 to 480.")});
    for (Problem& problem : validateTags(athlete.tags)) problems.push_back(std::move(problem));
    for (Problem& problem : validate(athlete.consents, today)) problems.push_back(std::move(problem));
    if (!athlete.jointHistory.isEmpty() && !mayKeep(athlete.consents, HealthField::JointHistory))
        problems.push_back({QStringLiteral("joint_history"), jointHistoryNeedsConsent()});
    return problems;
}

}  // namespace steelyard
