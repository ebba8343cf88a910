#include "ui/print/sheet_trial_words.h"

#include "core/keying/trial_ratings.h"
#include "core/trials/trial_outcomes.h"
#include "ui/print/sheet_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

namespace steelyard {
namespace {

struct SheetTrialText {
    Q_DECLARE_TR_FUNCTIONS(SheetTrialText)
};

QString armWords(std::size_t arm, const QString& name)
{
    return name.isEmpty() ? armLetter(arm) : QStringLiteral("%1 (%2)").arg(armLetter(arm), name);
}

}  // namespace

QString trialWords(const SheetExercise& exercise)
{
    if (!exercise.trial) return {};
    const SheetTrial& trial = *exercise.trial;
    QStringList sentences;
    if (trial.drawn)
        sentences += SheetTrialText::tr("Trial: today arm %1 was drawn; this lift is arm %2.")
                         .arg(armWords(*trial.drawn, trial.drawnName), armLetter(trial.arm));
    else
        sentences += SheetTrialText::tr("Trial: arm %1 today, session %2 of %3.")
                         .arg(armWords(trial.arm, trial.armName), QString::number(trial.session),
                              QString::number(trial.sessions));
    if (trial.loweringSeconds)
        sentences += SheetTrialText::tr("Lower it in %1 s.").arg(sheetNumber(trial.loweringSeconds->toDouble()));
    if (!trial.counts) sentences += SheetTrialText::tr("To get used to it: this session doesn't count.");
    return sentences.join(u' ');
}

QString trialWordsShort(const SheetExercise& exercise)
{
    if (!exercise.trial) return {};
    const SheetTrial& trial = *exercise.trial;
    return trial.drawn
               ? SheetTrialText::tr("Trial: arm %1, drawn was %2").arg(armLetter(trial.arm), armLetter(*trial.drawn))
               : SheetTrialText::tr("Trial: arm %1").arg(armWords(trial.arm, trial.armName));
}

QString trialAskWords(const SheetExercise& exercise)
{
    if (!exercise.trial) return {};
    QStringList questions;
    for (const QString& key : askedAfterExercise(*exercise.trial, exercise.asksDiscomfort))
        if (const OutcomeKind* kind = findOutcome(key)) questions += kind->question();
    return SheetTrialText::tr("Ask right after the last set, in these words every time: %1")
        .arg(questions.join(QLatin1Char(' ')));
}

QString trialAskWordsShort(const SheetExercise& exercise)
{
    if (!exercise.trial) return {};
    QStringList titles;
    for (const QString& key : askedAfterExercise(*exercise.trial, exercise.asksDiscomfort)) titles += outcomeTitle(key);
    return SheetTrialText::tr("Ask in the same words every time: %1").arg(titles.join(QStringLiteral(" · ")));
}

}  // namespace steelyard
