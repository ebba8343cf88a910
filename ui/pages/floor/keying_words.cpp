#include "ui/pages/floor/keying_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct KeyingText {
    Q_DECLARE_TR_FUNCTIONS(KeyingText)
};

QString headWords(const EntryQuestion& question, MassUnit unit)
{
    const QString usual =
        format::shortNumber(format::massIn(question.usualKg.value_or(0), unit)) + QChar(0xA0) + format::unit(unit);
    switch (question.trouble) {
    case EntryTrouble::Unusual:
        if (question.slip == EntrySlip::Repetitions)
            return KeyingText::tr("About %1 repetitions are usual here.")
                .arg(format::number(question.usualReps.value_or(0), 0));
        return KeyingText::tr("About %1 is usual here.").arg(usual);
    case EntryTrouble::Jump:
        return KeyingText::tr("That is far more than this line ever showed; about %1 is usual.").arg(usual);
    case EntryTrouble::TooHeavy:
        return KeyingText::tr("That is more than anybody lifts this way.");
    case EntryTrouble::TooMany:
        return KeyingText::tr("That is more repetitions than sets have.");
    }
    return {};
}

QString slipWords(const EntryQuestion& question)
{
    if (!question.fitting) return {};
    const QString load = format::load(question.fitting->load);
    const QString reps = QString::number(question.fitting->reps);
    switch (question.slip) {
    case EntrySlip::Unit:
        return KeyingText::tr("%1 would fit: kilograms and pounds mixed up?").arg(load);
    case EntrySlip::Converted:
        return KeyingText::tr("%1 would fit: converted once too often?").arg(load);
    case EntrySlip::Point:
        return KeyingText::tr("%1 would fit: a missing decimal point?").arg(load);
    case EntrySlip::Digits:
        return KeyingText::tr("%1 × %2 would fit: a key hit twice?").arg(load, reps);
    case EntrySlip::Exchanged:
        return KeyingText::tr("%1 × %2 would fit: changed places?").arg(load, reps);
    case EntrySlip::Repetitions:
    case EntrySlip::Unclear:
        return {};
    }
    return {};
}

}  // namespace

QString questionWords(const EntryQuestion& question, MassUnit unit)
{
    QStringList words{headWords(question, unit), slipWords(question)};
    words.removeAll(QString());
    return words.join(u' ');
}

QString answerWords(const EntryQuestion& question, const SetEntry& set)
{
    QStringList answers{KeyingText::tr("Enter: keep %1 × %2").arg(format::load(set.load), QString::number(set.reps))};
    if (question.fitting)
        answers += KeyingText::tr("Tab: take %1 × %2")
                       .arg(format::load(question.fitting->load), QString::number(question.fitting->reps));
    answers += KeyingText::tr("Escape: drop it");
    return answers.join(QStringLiteral(" · "));
}

QString changeWords(const LineChange& change, const QString& from, const QString& to)
{
    const QString cut =
        KeyingText::tr("“%1” stays as it is (%2) and is not gone on with today.").arg(from, historyWords(change.left));
    if (change.opensNew())
        return KeyingText::tr(
                   "This opens a new lift line, because another variant, grip or standard can't be compared. "
                   "“%1” begins with nothing. %2")
            .arg(to, cut);
    return KeyingText::tr("This goes on with “%1”: %2, the last on %3. %4")
        .arg(to, historyWords(change.taken), format::date(*change.taken.last), cut);
}

}  // namespace steelyard
