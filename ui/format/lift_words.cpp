#include "ui/format/lift_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LiftText {
    Q_DECLARE_TR_FUNCTIONS(LiftText)
};

}  // namespace

QString wholeLiftName(const LiftLine& lift, const Library& library)
{
    const auto* variant = library.find(lift.variant);
    const auto* grip = library.find(lift.grip);
    const auto* standard = library.find(lift.standard);
    QStringList parts;
    if (variant) parts += library.fullName(variant->value);
    if (grip) parts += grip->value.name;
    if (standard) parts += standard->value.name;
    return parts.join(QStringLiteral(" · "));
}

QString historyWords(const LineHistory& history)
{
    if (history.sets == 0) return LiftText::tr("no sets yet");
    return LiftText::tr("%n set(s) since %1", nullptr, history.sets).arg(format::date(*history.first));
}

}  // namespace steelyard
