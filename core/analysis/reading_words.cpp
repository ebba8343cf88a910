#include "core/analysis/reading_words.h"

#include "core/analysis/verdict_rules.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct ReadingText {
    Q_DECLARE_TR_FUNCTIONS(ReadingText)
};

QString percentText(const Wording& wording, double share, int decimals)
{
    return wording.fixed(100 * share, decimals);
}

// "0.6 % a week (90 % interval 0.3 to 0.9)"
QString ratePart(const TrendRate& rate, const Wording& wording)
{
    return ReadingText::tr("%1 % a week (90 % interval %2 to %3)")
        .arg(percentText(wording, rate.perWeek, 1), percentText(wording, rate.low90, 1),
             percentText(wording, rate.high90, 1));
}

// What came true of such statements, in words: nine times in ten is said as just that.
QString chancePart(double chance)
{
    const int tenths = static_cast<int>(std::lround(10 * chance));
    if (tenths >= 10) return ReadingText::tr("nearly always right");
    return ReadingText::tr("right about %1 times in 10").arg(tenths);
}

QString plainPart(const LineReading& reading, const Wording& wording)
{
    if (!reading.plain) return {};
    return u' '
           + ReadingText::tr("A straight line through the last %n session(s) says %1 % a week.", nullptr,
                             reading.plainSessions)
                 .arg(percentText(wording, reading.plain->perWeek, 1));
}

QString tooFewSentence(const LineGates& gates, const VerdictThresholds& limits, const Wording& wording)
{
    const int sessions = static_cast<int>(gates.exposures);
    if (gates.exposures < static_cast<std::size_t>(limits.leastExposures))
        return ReadingText::tr("Only %n session(s) so far; a trend needs at least %1.", nullptr, sessions)
            .arg(limits.leastExposures);
    if (gates.weeksOfRecord < limits.leastWeeks)
        return ReadingText::tr("The record is %1 weeks long; a trend needs at least %2.")
            .arg(wording.fixed(gates.weeksOfRecord, 1), QString::number(limits.leastWeeks));
    return ReadingText::tr("%n session(s) in the last %1 weeks; the record is too old to say where the lift stands.",
                           nullptr, static_cast<int>(gates.exposuresLately))
        .arg(limits.recentWeeks);
}

QString cantTellSentence(const LineReading& reading, const LineGates& gates, const VerdictThresholds& limits,
                         const Wording& wording)
{
    if (reading.reason == u"too_few") return tooFewSentence(gates, limits, wording);
    if (reading.reason == u"mixed_record")
        return ReadingText::tr(
                   "%1 % of what was watched in the last sessions was off standard, so the numbers can't be compared.")
            .arg(percentText(wording, gates.offShareLately, 0));
    if (reading.reason == u"effort_unknown")
        return ReadingText::tr(
                   "%1 % of the last working sets have no effort written down, so more repetitions may only mean "
                   "more effort.")
            .arg(percentText(wording, gates.effortlessShare, 0));
    return ReadingText::tr("No set so far says anything about strength: a load above zero is needed.");
}

QString holdingSentence(const LineReading& reading, const LineGates& gates, const Wording& wording)
{
    if (reading.reason == u"after_layoff")
        return ReadingText::tr("Back after %n day(s) without this lift; the first weeks are not read as a trend.",
                               nullptr, static_cast<int>(gates.layoffDays));
    if (reading.reason == u"deload") return ReadingText::tr("A planned easier week; nothing is read into it.");
    if (reading.reason == u"planned_hold")
        return ReadingText::tr("The plan keeps this lift where it is or tests it this week; nothing is read into it.");
    QString sentence = ReadingText::tr("%1: a rise and none look alike so far.").arg(ratePart(*reading.rate, wording));
    if (reading.reason == u"slow_pace")
        sentence += u' '
                    + ReadingText::tr(
                        "No visible change. At this lifter's usual pace and rate of training, telling slow progress "
                        "from a stall takes about %n week(s), longer than a block.",
                        nullptr, static_cast<int>(std::lround(reading.weeksToTell.value_or(0))));
    return sentence;
}

QString sincePart(const LineReading& reading, const Wording& wording)
{
    if (!reading.since) return {};
    if (reading.sinceEarliest && reading.sinceLatest && *reading.sinceEarliest != *reading.sinceLatest)
        return ReadingText::tr("since about %1 (between %2 and %3)")
            .arg(wording.day(*reading.since), wording.day(*reading.sinceEarliest), wording.day(*reading.sinceLatest));
    return ReadingText::tr("since about %1 or before").arg(wording.day(*reading.since));
}

QString mainSentence(const LineReading& reading, const LineGates& gates, const VerdictThresholds& limits,
                     const Wording& wording)
{
    switch (reading.verdict) {
    case Verdict::CantTell:
        return cantTellSentence(reading, gates, limits, wording);
    case Verdict::Holding:
        return holdingSentence(reading, gates, wording);
    case Verdict::Progressing:
        return ReadingText::tr("Rising by %1; %2.")
            .arg(ratePart(*reading.rate, wording), chancePart(reading.rate->pRising));
    case Verdict::Slipping:
        return ReadingText::tr("Not rising %1, and more likely falling than not: %2; %3.")
            .arg(sincePart(reading, wording), ratePart(*reading.rate, wording), chancePart(1 - reading.rate->pRising));
    case Verdict::Stalled:
        return ReadingText::tr("Not rising %1: %2; %3.")
            .arg(sincePart(reading, wording), ratePart(*reading.rate, wording), chancePart(1 - reading.rate->pRising));
    }
    return {};
}

}  // namespace

QString whySentence(const LineReading& reading, const LineGates& gates, const VerdictThresholds& limits,
                    const Wording& wording)
{
    QString sentence = mainSentence(reading, gates, limits, wording);
    if (reading.verdict == Verdict::CantTell) return sentence;
    if (reading.reason == u"deload" && reading.verdict != Verdict::Holding)
        sentence += u' ' + ReadingText::tr("An easier week: the word is last week's.");
    if (!isOfTheCalendar(reading.reason)) sentence += plainPart(reading, wording);
    if (gates.effortUnknown)
        sentence += u' ' + ReadingText::tr("Effort is not written down; this takes it to have stayed the same.");
    if (reading.watchedShare < 0.5)
        sentence += u' '
                    + ReadingText::tr("Only %1 % of the sets were watched, so trust it less.")
                          .arg(percentText(wording, reading.watchedShare, 0));
    return sentence;
}

QString sharedFallSentence(const CommonFall& fall)
{
    const auto falling = static_cast<int>(std::ranges::count(fall.falls, true));
    return ReadingText::tr("It is shared by most lifts (%1 of %2): look for one reason behind all of them first.")
        .arg(QString::number(falling), QString::number(fall.witnesses));
}

}  // namespace steelyard
