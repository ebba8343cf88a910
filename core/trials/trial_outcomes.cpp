#include "core/trials/trial_outcomes.h"

#include "core/domain/gave_out.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct OutcomeWords {
    const char16_t* key;
    const char* title;
    const char* question;
    const char* why;
};

constexpr auto kOutcomeWords = std::to_array<OutcomeWords>({
    {u"tension", QT_TRANSLATE_NOOP("TrialOutcomeText", "Tension in the target"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "How much tension did you feel in the target muscle, 0 to 10?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "Where the work is felt. It weighs most because tension is what a lift is chosen for; that the "
                       "feeling follows it closely is plausible, not shown.")},
    {u"target_first", QT_TRANSLATE_NOOP("TrialOutcomeText", "Target gave out first"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "What gave out first: the target muscle, or something else?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "When something else ends the set, the target was not brought near its end. Yes counts 10, no "
                       "counts 0, so that it can stand beside ratings.")},
    {u"pump", QT_TRANSLATE_NOOP("TrialOutcomeText", "Pump"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "How strong was the pump in the target muscle afterwards, 0 to 10?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "Easy to rate and a weak sign of anything lasting, hence a small weight.")},
    {u"burn", QT_TRANSLATE_NOOP("TrialOutcomeText", "Burn"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "How much did the target muscle burn, 0 to 10?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "Comes with many repetitions more than with good ones, hence a small weight.")},
    {u"discomfort", QT_TRANSLATE_NOOP("TrialOutcomeText", "Discomfort in a joint"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "Was there discomfort in a joint, 0 to 10, and in which?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "The highest rating of any joint. It counts against an arm here, and beyond the limit it puts "
                       "the arm out, whatever else speaks for it.")},
    {u"next_soreness", QT_TRANSLATE_NOOP("TrialOutcomeText", "Soreness the next day"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "How sore is the target muscle today, 0 to 10?"),
     QT_TRANSLATE_NOOP(
         "TrialOutcomeText",
         "Shown, not weighed: it shows where the work went, but it comes from what is unaccustomed and "
         "fades with habit, whatever the arm is worth. Left out when the muscle was trained in between.")},
    {u"next_weakness", QT_TRANSLATE_NOOP("TrialOutcomeText", "Weakness the next day"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "How weak does the target muscle feel today, 0 to 10?"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "Shown, not weighed: more of it means harder work as well as slower recovery, so it has no "
                       "better direction that all would agree on; here more counts as more reached. Left out when the "
                       "muscle was trained in between.")},
    {u"performance", QT_TRANSLATE_NOOP("TrialOutcomeText", "Performance beyond the forecast"),
     QT_TRANSLATE_NOOP("TrialOutcomeText", "Repetitions of the first set above what this line's own record expected"),
     QT_TRANSLATE_NOOP("TrialOutcomeText",
                       "Shown, not weighed: arms carry different loads, and each is compared with its own forecast, "
                       "which only shows that none falls behind. A difference in the pace of progress needs months to "
                       "show, longer than a trial.")},
});

const OutcomeWords& wordsOf(QStringView key)
{
    return *std::ranges::find_if(kOutcomeWords,
                                 [&](const OutcomeWords& words) { return key == QStringView(words.key); });
}

QString said(const char* text)
{
    return QCoreApplication::translate("TrialOutcomeText", text);
}

std::optional<double> number(std::optional<int> rating)
{
    if (!rating) return std::nullopt;
    return static_cast<double>(*rating);
}

std::optional<double> tensionOf(const OutcomeSource& source)
{
    return number(source.exposure.rating.tension);
}
std::optional<double> burnOf(const OutcomeSource& source)
{
    return number(source.exposure.rating.burn);
}
std::optional<double> pumpOf(const OutcomeSource& source)
{
    return number(source.exposure.rating.pump);
}
std::optional<double> targetFirstOf(const OutcomeSource& source)
{
    const QString& gaveOut = source.exposure.rating.gaveOut;
    if (gaveOut.isEmpty()) return std::nullopt;
    return gaveOut == kTargetGaveOut ? 1.0 : 0.0;
}
std::optional<double> discomfortOf(const OutcomeSource& source)
{
    return number(worstDiscomfort(source.exposure.rating));
}
std::optional<double> sorenessOf(const OutcomeSource& source)
{
    return source.nextDayClouded ? std::nullopt : number(source.exposure.rating.nextSoreness);
}
std::optional<double> weaknessOf(const OutcomeSource& source)
{
    return source.nextDayClouded ? std::nullopt : number(source.exposure.rating.nextWeakness);
}
std::optional<double> performanceOf(const OutcomeSource& source)
{
    if (!source.surprise) return std::nullopt;
    return source.surprise->extraReps;
}

// Spreads: of ratings, statistics of one lifter's sessions (our convention); of yes and no at seven in ten; of repetitions,
// what forecasts of a set are off by (the guide's page on the method).
constexpr double kRatingSpread = 1.2;
constexpr double kYesNoSpread = 0.45;
constexpr double kRepetitionSpread = 1.5;

}  // namespace

QString OutcomeKind::title() const
{
    return said(wordsOf(key).title);
}

QString OutcomeKind::question() const
{
    return said(wordsOf(key).question);
}

QString OutcomeKind::why() const
{
    return said(wordsOf(key).why);
}

QString OutcomeKind::unit() const
{
    switch (scale) {
    case OutcomeScale::Rating:
        return said(QT_TRANSLATE_NOOP("TrialOutcomeText", "of 10"));
    case OutcomeScale::YesNo:
        return said(QT_TRANSLATE_NOOP("TrialOutcomeText", "share of sessions"));
    case OutcomeScale::Repetitions:
        break;
    }
    return said(QT_TRANSLATE_NOOP("TrialOutcomeText", "repetitions"));
}

std::optional<double> OutcomeKind::outOfTen(double raw) const
{
    constexpr double kTen = 10;
    if (scale == OutcomeScale::Repetitions) return std::nullopt;
    const double points = scale == OutcomeScale::YesNo ? kTen * raw : raw;
    return moreIsBetter ? points : kTen - points;
}

std::span<const OutcomeKind> outcomeKinds()
{
    using enum OutcomeScale;
    static const std::array<OutcomeKind, 8> kinds{{
        {QStringLiteral("tension"), Rating, true, 0.4, kRatingSpread, tensionOf},
        {QStringLiteral("target_first"), YesNo, true, 0.3, kYesNoSpread, targetFirstOf},
        {QStringLiteral("pump"), Rating, true, 0.1, kRatingSpread, pumpOf},
        {QStringLiteral("burn"), Rating, true, 0.1, kRatingSpread, burnOf},
        {QStringLiteral("discomfort"), Rating, false, 0.1, kRatingSpread, discomfortOf},
        {QStringLiteral("next_soreness"), Rating, true, 0, kRatingSpread, sorenessOf},
        {QStringLiteral("next_weakness"), Rating, true, 0, kRatingSpread, weaknessOf},
        {QStringLiteral("performance"), Repetitions, true, 0, kRepetitionSpread, performanceOf},
    }};
    return kinds;
}

const OutcomeKind* findOutcome(QStringView key)
{
    const auto kinds = outcomeKinds();
    const auto found = std::ranges::find_if(kinds, [&](const OutcomeKind& kind) { return kind.key == key; });
    return found == kinds.end() ? nullptr : &*found;
}

QString outcomeTitle(QStringView key)
{
    const OutcomeKind* kind = findOutcome(key);
    return kind ? kind->title() : key.toString();
}

std::vector<TrialOutcome> defaultOutcomes()
{
    std::vector<TrialOutcome> outcomes;
    for (const OutcomeKind& kind : outcomeKinds()) outcomes.push_back({kind.key, kind.defaultWeight});
    return outcomes;
}

std::optional<int> worstDiscomfort(const ExerciseRating& rating)
{
    return std::ranges::max(rating.discomfort);
}

}  // namespace steelyard
