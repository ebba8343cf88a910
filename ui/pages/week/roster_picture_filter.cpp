#include "ui/pages/week/roster_picture_filter.h"

#include "core/flags/registry.h"
#include "ui/models/roster_filter.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

const QString kTextKey = QStringLiteral("text");

QStringList musclesOf(const AthleteReview& review)
{
    QStringList names;
    for (const WeeklyMuscleSets& sets : review.summary.muscles) names << sets.name;
    return names;
}

QStringList exercisesOf(const AthleteReview& review)
{
    QStringList names;
    for (const LineReview& line : review.lines) names << line.exercise;
    return names;
}

QStringList rulesOf(const AthleteReview& review)
{
    QStringList rules;
    for (const Flag& flag : review.flags) rules << flag.rule;
    return rules;
}

QStringList groupsOf(const AthleteReview& review)
{
    return review.group.isEmpty() ? QStringList() : QStringList(review.group);
}

QStringList tagsOf(const AthleteReview& review)
{
    return {review.tags.begin(), review.tags.end()};
}

QString asItIs(const QString& value)
{
    return value;
}

constexpr std::array kPictureFacets{
    PictureFacet{"muscle", QT_TRANSLATE_NOOP("PictureFilter", "any muscle"), &PictureFilter::muscle, musclesOf, asItIs},
    PictureFacet{"exercise", QT_TRANSLATE_NOOP("PictureFilter", "any exercise"), &PictureFilter::exercise, exercisesOf,
                 asItIs},
    PictureFacet{"flag", QT_TRANSLATE_NOOP("PictureFilter", "any flag"), &PictureFilter::rule, rulesOf,
                 [](const QString& rule) { return ruleTitle(rule); }},
    PictureFacet{"group", QT_TRANSLATE_NOOP("PictureFilter", "any group"), &PictureFilter::group, groupsOf, asItIs},
    PictureFacet{"tag", QT_TRANSLATE_NOOP("PictureFilter", "any tag"), &PictureFilter::tag, tagsOf, asItIs},
};

}  // namespace

QString PictureFacet::anyText() const
{
    return QCoreApplication::translate("PictureFilter", any);
}

std::span<const PictureFacet> pictureFacets()
{
    return kPictureFacets;
}

bool PictureFilter::accepts(const AthleteReview& review) const
{
    const auto fits = [&](const PictureFacet& facet) {
        const QString& wanted = this->*facet.chosen;
        return wanted.isEmpty() || facet.valuesOf(review).contains(wanted);
    };
    if (!std::ranges::all_of(kPictureFacets, fits)) return false;
    return matchesSearch(QStringLiteral("%1 %2 %3").arg(review.name, review.group, tagText(review.tags)), text);
}

QVariantMap PictureFilter::toMap() const
{
    QVariantMap map;
    if (!text.isEmpty()) map.insert(kTextKey, text);
    for (const PictureFacet& facet : kPictureFacets)
        if (!(this->*facet.chosen).isEmpty()) map.insert(QString::fromLatin1(facet.key), this->*facet.chosen);
    return map;
}

PictureFilter PictureFilter::fromMap(const QVariantMap& map)
{
    PictureFilter filter{.text = map.value(kTextKey).toString()};
    for (const PictureFacet& facet : kPictureFacets)
        filter.*facet.chosen = map.value(QString::fromLatin1(facet.key)).toString();
    return filter;
}

}  // namespace steelyard
