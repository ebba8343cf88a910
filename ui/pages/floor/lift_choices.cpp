#include "ui/pages/floor/lift_choices.h"

#include "ui/pages/floor/keying_words.h"
#include "ui/widgets/lift_line_choices.h"

namespace steelyard {

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
    return lineChoices(lifter.log, lifter.library, liftsToAdd(lifter.log, lifter.library, there));
}

}  // namespace steelyard
