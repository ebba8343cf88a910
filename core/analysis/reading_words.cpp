#include "core/analysis/reading_words.h"

#include <QtCore/QCoreApplication>

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

QString trendPart(const TrendRate& rate, std::size_t sessions, const Wording& wording)
{
    return ReadingText::tr("%1 % a week (90 % interval %2 to %3) over %n session(s)", nullptr,
                           static_cast<int>(sessions))
        .arg(percentText(wording, rate.perWeek, 1), percentText(wording, rate.low90, 1),
             percentText(wording, rate.high90, 1));
}

QString tooFewSentence(const LineEvidence& evidence, const VerdictThresholds& limits, const Wording& wording)
{
    const int sessions = static_cast<int>(evidence.working);
    if (evidence.working < static_cast<std::size_t>(limits.leastExposures))
        return ReadingText::tr("Only %n session(s) so far; a trend needs at least %1.", nullptr, sessions)
            .arg(limits.leastExposures);
    if (evidence.weeksOfRecord < limits.leastWeeks)
        return ReadingText::tr("The record is %1 weeks long; a trend needs at least %2.")
            .arg(wording.fixed(evidence.weeksOfRecord, 1), QString::number(limits.leastWeeks));
    return ReadingText::tr("%n session(s) in the last %1 weeks; the record is too old to say where the lift stands.",
                           nullptr, static_cast<int>(evidence.workingLately))
        .arg(limits.recentWeeks);
}

QString cantTellSentence(const LineReading& reading, const LineEvidence& evidence, const VerdictThresholds& limits,
                         const Wording& wording)
{
    if (reading.reason == u"too_few") return tooFewSentence(evidence, limits, wording);
    if (reading.reason == u"mixed_record")
        return ReadingText::tr(
                   "%1 % of the watched repetitions of the last sessions were off standard, so the numbers can't "
                   "be compared.")
            .arg(percentText(wording, evidence.offShareLately, 0));
    if (reading.reason == u"effort_unknown")
        return ReadingText::tr(
                   "%1 % of the last working sets have no effort written down, so more repetitions may only mean "
                   "more effort.")
            .arg(percentText(wording, evidence.effortlessShare, 0));
    return ReadingText::tr(
        "Too few sets can be turned into an estimate: effort close enough to the limit, under 31 "
        "repetitions, and a load above zero.");
}

QString holdingSentence(const LineReading& reading, const LineEvidence& evidence, const Wording& wording)
{
    if (reading.reason == u"after_layoff")
        return ReadingText::tr("Back after %n day(s) without this lift; the first weeks are not read as a trend.",
                               nullptr, static_cast<int>(evidence.layoffDays));
    if (reading.reason == u"deload") return ReadingText::tr("A planned easier week; nothing is read into it.");
    return ReadingText::tr("%1: within what sessions differ by anyway; a slow rise and none look alike so far.")
        .arg(trendPart(*reading.rate, evidence.window.size(), wording));
}

QString mainSentence(const LineReading& reading, const LineEvidence& evidence, const VerdictThresholds& limits,
                     const Wording& wording)
{
    switch (reading.verdict) {
    case Verdict::CantTell:
        return cantTellSentence(reading, evidence, limits, wording);
    case Verdict::Holding:
        return holdingSentence(reading, evidence, wording);
    case Verdict::Progressing:
        return ReadingText::tr("Rising: %1.").arg(trendPart(*reading.rate, evidence.window.size(), wording));
    case Verdict::Slipping:
        return ReadingText::tr("Falling: %1.").arg(trendPart(*reading.rate, evidence.window.size(), wording));
    case Verdict::Stalled:
        return ReadingText::tr("No rise: %1. The last clear improvement was on %2.")
            .arg(trendPart(*reading.rate, evidence.window.size(), wording),
                 wording.day(reading.since.value_or(QDate())));
    }
    return {};
}

}  // namespace

QString whySentence(const LineReading& reading, const LineEvidence& evidence, const VerdictThresholds& limits,
                    const Wording& wording)
{
    QString sentence = mainSentence(reading, evidence, limits, wording);
    if (reading.verdict == Verdict::CantTell) return sentence;
    if (evidence.effortUnknown)
        sentence += u' ' + ReadingText::tr("Effort is not written down; this takes it to have stayed the same.");
    if (reading.watchedShare < 0.5)
        sentence += u' '
                    + ReadingText::tr("Only %1 % of the sets were watched, so trust it less.")
                          .arg(percentText(wording, reading.watchedShare, 0));
    return sentence;
}

}  // namespace steelyard
