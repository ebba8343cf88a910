#include "ui/widgets/lift_line_choices.h"

#include "ui/format/lift_words.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LiftChoiceText {
    Q_DECLARE_TR_FUNCTIONS(LiftChoiceText)
};

}  // namespace

std::vector<LiftChoice> lineChoices(const AthleteLog& log, const Library& library, const std::vector<LiftLine>& lifts)
{
    std::vector<LiftChoice> choices;
    choices.reserve(lifts.size());
    for (const LiftLine& lift : lifts) {
        const LineHistory history = historyOf(log, lift);
        choices.push_back({lift, wholeLiftName(lift, library),
                           history.sets > 0
                               ? LiftChoiceText::tr("Goes on with this line: %1.").arg(historyWords(history))
                               : LiftChoiceText::tr("This lifter has never done it so: a new lift line begins.")});
    }
    return choices;
}

}  // namespace steelyard
