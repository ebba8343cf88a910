#include "ui/pages/floor/lift_choices.h"

#include "ui/pages/floor/keying_words.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LiftChoiceText {
    Q_DECLARE_TR_FUNCTIONS(LiftChoiceText)
};

}  // namespace

std::vector<LiftChoice> otherWayChoices(const KeyingDesk& desk, std::size_t exercise)
{
    const KeyedLifter& lifter = desk.lifter();
    const LiftLine from = desk.exercise(exercise).lift;
    const QString name = wholeLiftName(from, lifter.library);
    std::vector<LiftChoice> choices;
    for (const LiftLine& to : otherWays(lifter.log, lifter.library, from)) {
        const QString other = wholeLiftName(to, lifter.library);
        choices.push_back({to, other, changeWords(changeOfLine(lifter.log, from, to), name, other)});
    }
    return choices;
}

std::vector<LiftChoice> choicesToAdd(const KeyingDesk& desk)
{
    const KeyedLifter& lifter = desk.lifter();
    std::vector<LiftLine> there;
    for (const KeyingExercise& exercise : desk.sheet().exercises) there.push_back(exercise.lift);
    std::vector<LiftChoice> choices;
    for (const LiftLine& lift : liftsToAdd(lifter.log, lifter.library, there)) {
        const LineHistory history = historyOf(lifter.log, lift);
        choices.push_back({lift, wholeLiftName(lift, lifter.library),
                           history.sets > 0
                               ? LiftChoiceText::tr("Goes on with this line: %1.").arg(historyWords(history))
                               : LiftChoiceText::tr("This lifter has never done it so: a new lift line begins.")});
    }
    return choices;
}

}  // namespace steelyard
