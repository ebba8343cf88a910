#include "ui/pages/lifter/why_words.h"

#include "core/analysis/verdict_rules.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QLocale>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct WhyText {
    Q_DECLARE_TR_FUNCTIONS(WhyText)
};

QString repsText(double reps)
{
    return format::number(reps, 1);
}

QString cautionName(Caution caution)
{
    switch (caution) {
    case Caution::Sooner:
        return WhyText::tr("sooner");
    case Caution::Usual:
        return WhyText::tr("usual");
    case Caution::Surer:
        return WhyText::tr("surer");
    }
    return {};
}

// "Rising is 54 % likely …; 60 % is asked." `stay`: what a word that was said a week ago needs less.
QString againstLimit(const QString& what, double chance, double limit, double stay)
{
    QString text = WhyText::tr("%1 is %2 likely as the sets add up; %3 is asked")
                       .arg(what, format::percent(chance), format::percent(limit));
    if (chance < limit) text += WhyText::tr(", %1 less for the word that was said before").arg(format::percent(stay));
    return text + u'.';
}

QString holdingWords(const RegimeChances& chances, const LineExplanation& why, const VerdictThresholds& limits)
{
    return WhyText::tr(
               "Neither is likely enough as the sets add up: rising is %1 likely where %2 is asked, not rising "
               "is %3 likely where %4 is asked for this lifter (caution: %5).")
        .arg(format::percent(chances.rising), format::percent(limits.rising), format::percent(chances.notRising()),
             format::percent(why.notRisingLimit), cautionName(limits.caution));
}

// The verdict was decided before any chance was looked at.
QString gateWords(const LineReading& reading, const RegimeChances& chances, const VerdictThresholds& limits)
{
    if (reading.reason == u"effort_unknown")
        return WhyText::tr(
                   "Where effort isn't written down only a rise is said, and only when it is at least %1 likely; "
                   "the sets add up to %2.")
            .arg(format::percent(limits.sureWithoutEffort), format::percent(chances.rising));
    return WhyText::tr(
               "This is decided before any chance is looked at. By themselves the sets would add up to rising "
               "%1, not rising %2.")
        .arg(format::percent(chances.rising), format::percent(chances.notRising()));
}

QString verdictWords(const LineReading& reading, const LineExplanation& why, const VerdictThresholds& limits)
{
    const RegimeChances& chances = *why.chances;
    if (reading.verdict == Verdict::CantTell || isOfTheCalendar(reading.reason))
        return gateWords(reading, chances, limits);
    switch (reading.verdict) {
    case Verdict::Progressing:
        return againstLimit(WhyText::tr("Rising"), chances.rising, limits.rising, limits.stay);
    case Verdict::Stalled:
        return againstLimit(WhyText::tr("Not rising"), chances.notRising(), why.notRisingLimit, limits.stay) + u' '
               + WhyText::tr("Caution: %1.").arg(cautionName(limits.caution));
    case Verdict::Slipping:
        return againstLimit(WhyText::tr("Not rising"), chances.notRising(), why.notRisingLimit, limits.stay) + u' '
               + againstLimit(WhyText::tr("Falling"), chances.falling, limits.falling, limits.stay);
    default:
        return holdingWords(chances, why, limits);
    }
}

}  // namespace

QString briefSetWords(const SetEntry& set)
{
    QStringList parts{WhyText::tr("%1 × %2").arg(format::load(set.load)).arg(set.reps)};
    if (const int off = offReps(set)) parts += WhyText::tr("%1 off").arg(off);
    if (set.failed)
        parts += WhyText::tr("failed");
    else if (set.effort)
        parts += set.effort->scale == Effort::Scale::Rir ? WhyText::tr("RIR %1").arg(effortWords(set.effort))
                                                         : effortWords(set.effort);
    else if (set.kind != SetKind::WarmUp)
        parts += WhyText::tr("no RIR");
    if (set.kind != SetKind::Work && set.kind != SetKind::WarmUp) parts += format::setKindWord(set.kind);
    return parts.join(QStringLiteral(", "));
}

QString wholeSetWords(const SetEntry& set)
{
    return setWords(set);
}

QString togetherWords(const ExplainedSession& session)
{
    const auto heard = static_cast<int>(std::ranges::count_if(session.sets, isHeard));
    return heard == 0 ? WhyText::tr("no set heard") : WhyText::tr("%n set(s) together", nullptr, heard);
}

QString heardWords(const ExplainedSet& set)
{
    switch (set.heard) {
    case HeardAs::Exactly:
        return WhyText::tr("exactly");
    case HeardAs::AtLeast:
        return WhyText::tr("at least");
    case HeardAs::AtMost:
        return WhyText::tr("at most");
    case HeardAs::Between:
        return WhyText::tr("between");
    case HeardAs::WarmUp:
        return WhyText::tr("warm-up");
    case HeardAs::NoLoad:
        return WhyText::tr("no load");
    case HeardAs::Slip:
        return WhyText::tr("a slip?");
    }
    return {};
}

QString expectedWords(const ExplainedSet& set)
{
    if (!set.expected) return isHeard(set) ? format::absent() : QString();
    return WhyText::tr("%1 (%2–%3)")
        .arg(repsText(set.expected->median), format::number(set.expected->low80, 0),
             format::number(set.expected->high80, 0));
}

QString reachedWords(const ExplainedSet& set)
{
    switch (set.heard) {
    case HeardAs::Exactly:
        return repsText(*set.atLeast);
    case HeardAs::AtLeast:
        return QStringLiteral("≥ ") + repsText(*set.atLeast);
    case HeardAs::AtMost:
        return QStringLiteral("≤ ") + repsText(*set.atMost);
    case HeardAs::Between:
        return WhyText::tr("%1–%2").arg(repsText(*set.atLeast), repsText(*set.atMost));
    default:
        return {};
    }
}

QString countedWords(const ExplainedSet& set)
{
    switch (weightWord(set)) {
    case WeightWord::Not:
        return WhyText::tr("not");
    case WeightWord::Hardly:
        return set.heard == HeardAs::Exactly ? WhyText::tr("hardly") : WhyText::tr("nothing new");
    case WeightWord::Little:
        return WhyText::tr("little");
    case WeightWord::Partly:
        return WhyText::tr("partly");
    case WeightWord::Fully:
        return WhyText::tr("fully");
    }
    return {};
}

QString pullWords(double pull)
{
    const bool up = pull < 0;
    switch (pullStrength(pull)) {
    case PullStrength::Strongly:
        return up ? WhyText::tr("▲▲ rising, strongly") : WhyText::tr("◆◆ not rising, strongly");
    case PullStrength::Somewhat:
        return up ? WhyText::tr("▲ rising, somewhat") : WhyText::tr("◆ not rising, somewhat");
    case PullStrength::Hardly:
        return up ? WhyText::tr("△ rising, hardly") : WhyText::tr("◇ not rising, hardly");
    case PullStrength::Neither:
        return WhyText::tr("neither");
    }
    return {};
}

QString weekdayWords(const LineExplanation& why)
{
    constexpr double kWorthSaying = 0.005;
    const QLocale locale;
    QStringList days;
    for (int day = 1; day <= 7; ++day) {
        const double share = why.weekdayShares[static_cast<std::size_t>(day) - 1];
        if (std::abs(share) < kWorthSaying) continue;
        days.append(WhyText::tr("%1 %2 %", "a day of the week and what it adds, as in Fri −2.5 %")
                        .arg(locale.standaloneDayName(day, QLocale::ShortFormat),
                             (share > 0 ? QStringLiteral("+") : QStringLiteral("−"))
                                 + locale.toString(100 * std::abs(share), 'f', 1)));
    }
    if (days.isEmpty()) return {};
    return WhyText::tr("The days of the week differ here, in load beside a usual day: %1. That is allowed for.")
        .arg(days.join(QStringLiteral(", ")));
}

QString decisionWords(const LineReading& reading, const LineExplanation& why, const VerdictThresholds& limits)
{
    if (!why.chances) return WhyText::tr("No set so far says anything about strength, so there is nothing to add up.");
    QString text = verdictWords(reading, why, limits) + u' ' + WhyText::tr("The limits are conventions.");
    if (reading.rate)
        text += u' '
                + WhyText::tr(
                    "On simulated lifters such chances came true less sharply; what is said above of ten times "
                    "has that taken in.");
    if (const QString days = weekdayWords(why); !days.isEmpty()) text += u' ' + days;
    return text;
}

}  // namespace steelyard
