#include "core/exchange/repetition_match.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct RepetitionMatchText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionMatchText)
};

QString isoDate(QDate date)
{
    return date.toString(Qt::ISODate);
}

// Empty: it is of this day, lifter and exercise, or says nothing of them.
QString isElsewhere(const ReadRepetitions& one, const RepetitionTarget& target)
{
    const RepetitionPlace& place = one.place;
    if (!one.sound) return RepetitionMatchText::tr("It has a problem, named below.");
    if (place.date && *place.date != target.session.date)
        return RepetitionMatchText::tr("It is of %1, the chosen session of %2. Choose that session.")
            .arg(isoDate(*place.date), isoDate(target.session.date));
    if (!place.athlete.isEmpty() && searchKey(place.athlete) != searchKey(target.athlete))
        return RepetitionMatchText::tr("It is of “%1”. Choose that lifter, or leave the column out.")
            .arg(place.athlete);
    if (!place.exercise.isEmpty() && searchKey(place.exercise) != searchKey(target.exercise))
        return RepetitionMatchText::tr("It is of “%1”. Choose that lift, or leave the column out.").arg(place.exercise);
    return {};
}

const LoggedSet* targetOf(const ReadRepetitions& one, const RepetitionTarget& target, std::size_t order, bool single)
{
    const auto& sets = target.session.sets;
    if (one.place.set) {
        const auto found =
            std::ranges::find_if(sets, [&](const LoggedSet& logged) { return logged.set.number == *one.place.set; });
        return found == sets.end() ? nullptr : &*found;
    }
    if (!single) return order < sets.size() ? &sets[order] : nullptr;
    const auto found = std::ranges::find(sets, target.chosen, &LoggedSet::id);
    return found == sets.end() ? nullptr : &*found;
}

}  // namespace

std::vector<RepetitionMatch> matchRepetitions(const std::vector<ReadRepetitions>& read, const RepetitionTarget& target)
{
    std::vector<RepetitionMatch> matches;
    std::set<Id<SetEntry>> given;
    std::size_t order = 0;
    for (std::size_t i = 0; i < read.size(); ++i) {
        RepetitionMatch match{i, {}, 0, isElsewhere(read[i], target)};
        if (match.why.isEmpty()) {
            const LoggedSet* logged = targetOf(read[i], target, order++, read.size() == 1);
            if (!logged)
                match.why = RepetitionMatchText::tr("The session has no such set.");
            else if (!given.insert(logged->id).second)
                match.why =
                    RepetitionMatchText::tr("Set %1 has its repetitions from rows above.").arg(logged->set.number);
            else
                match = {i, logged->id, logged->set.number, {}};
            if (match.set && std::ssize(read[i].repetitions) != logged->set.reps)
                match.why =
                    RepetitionMatchText::tr("The set says %1 repetitions, the file %2; the set keeps what it says.")
                        .arg(logged->set.reps)
                        .arg(read[i].repetitions.size());
        }
        matches.push_back(match);
    }
    return matches;
}

}  // namespace steelyard
