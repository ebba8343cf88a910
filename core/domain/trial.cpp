#include "core/domain/trial.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <set>

namespace steelyard {
namespace {

struct TrialText {
    Q_DECLARE_TR_FUNCTIONS(TrialText)
};

constexpr int kMostTrialBlocks = 50;
constexpr int kMostRunIn = 20;
constexpr int kMostTrialSets = 30;
constexpr int kMostRating = 10;

void checkArms(const Trial& trial, Problems& problems)
{
    if (trial.arms.size() < kFewestArms || trial.arms.size() > kMostArms)
        problems.push_back(
            {QStringLiteral("arms"), TrialText::tr("A trial has %1 to %2 arms.").arg(kFewestArms).arg(kMostArms)});
    const auto isSound = [](const TrialArm& arm) {
        return arm.band.low >= 1 && arm.band.high >= arm.band.low && arm.runIn >= 0 && arm.runIn <= kMostRunIn;
    };
    if (!std::ranges::all_of(trial.arms, isSound))
        problems.push_back({QStringLiteral("arms"),
                            TrialText::tr("An arm has a rep band that begins with its low end, and 0 to %1 sessions "
                                          "to get used to it.")
                                .arg(kMostRunIn)});
}

void checkOutcomes(const Trial& trial, Problems& problems)
{
    std::set<QString> keys;
    const auto isSound = [&](const TrialOutcome& outcome) {
        return !outcome.key.isEmpty() && std::isfinite(outcome.weight) && outcome.weight >= 0
               && keys.insert(outcome.key).second;
    };
    if (!std::ranges::all_of(trial.outcomes, isSound))
        problems.push_back(
            {QStringLiteral("outcomes"), TrialText::tr("Each outcome stands once, with a weight of 0 or more.")});
    if (!std::ranges::any_of(trial.outcomes, [](const TrialOutcome& outcome) { return outcome.weight > 0; }))
        problems.push_back({QStringLiteral("outcomes"), TrialText::tr("At least one outcome needs a weight above 0.")});
}

void checkDays(const Trial& trial, Problems& problems)
{
    QDate after;
    for (const TrialDay& day : trial.days) {
        if (!day.date.isValid() || (after.isValid() && day.date <= after))
            problems.push_back(
                {QStringLiteral("days"), TrialText::tr("The sessions of a trial stand by date, one a day.")});
        after = day.date;
        if (day.block < 0 || day.arm >= trial.arms.size() || day.armDone.value_or(0) >= trial.arms.size())
            problems.push_back({QStringLiteral("days"), TrialText::tr("Every session names one of the arms.")});
        if (day.missed && day.armDone)
            problems.push_back(
                {QStringLiteral("days"), TrialText::tr("A session that was missed has no arm that was done.")});
    }
}

}  // namespace

QString armLetter(std::size_t arm)
{
    return QString(QChar(u'A' + static_cast<char16_t>(arm)));
}

std::optional<std::size_t> armOfLetter(QStringView letter)
{
    if (letter.size() != 1) return std::nullopt;
    const char16_t unit = letter.front().toUpper().unicode();
    if (unit < u'A' || unit >= u'A' + kMostArms) return std::nullopt;
    return static_cast<std::size_t>(unit - u'A');
}

const TrialDay* dayOfTrial(const Trial& trial, QDate date)
{
    const auto day = std::ranges::find(trial.days, date, &TrialDay::date);
    return day == trial.days.end() ? nullptr : &*day;
}

Problems validate(const Trial& trial)
{
    Problems problems;
    if (trial.question.trimmed().isEmpty())
        problems.push_back({QStringLiteral("question"), TrialText::tr("A trial needs a question.")});
    if (!trial.designedOn.isValid())
        problems.push_back({QStringLiteral("designed_on"), TrialText::tr("A trial needs the day it was designed.")});
    checkArms(trial, problems);
    checkOutcomes(trial, problems);
    if (trial.limit.rating < 1 || trial.limit.rating > kMostRating || trial.limit.sessionsRunning < 1)
        problems.push_back({QStringLiteral("limit"),
                            TrialText::tr("The limit of discomfort is a rating from 1 to %1 in one session or more.")
                                .arg(kMostRating)});
    if (trial.blocks < 1 || trial.blocks > kMostTrialBlocks || trial.sets < 1 || trial.sets > kMostTrialSets
        || trial.daysBetween < 1)
        problems.push_back({QStringLiteral("blocks"),
                            TrialText::tr("A trial has 1 to %1 blocks, 1 to %2 sets a session, and at least a day "
                                          "from one session to the next.")
                                .arg(kMostTrialBlocks)
                                .arg(kMostTrialSets)});
    checkDays(trial, problems);
    if (trial.ending && trial.ending->choice.value_or(0) >= trial.arms.size())
        problems.push_back({QStringLiteral("ending"), TrialText::tr("The choice is one of the arms.")});
    if (trial.ending && trial.ending->kind == TrialEnd::Stopped && trial.ending->reason.trimmed().isEmpty())
        problems.push_back({QStringLiteral("ending"), TrialText::tr("Stopping needs a reason, for later.")});
    return problems;
}

}  // namespace steelyard
