// What the Trials view asks and stores.
#include "core/book/book.h"
#include "core/edits/trial_edits.h"
#include "ui/format/format.h"
#include "ui/format/trial_words.h"
#include "ui/pages/lifter/trial_form.h"
#include "ui/pages/lifter/trial_panel.h"
#include "ui/pages/lifter/trials_view.h"
#include "ui/widgets/asked_line.h"

#include <QtWidgets/QLabel>

#include <algorithm>

namespace steelyard {
namespace {

bool isDeed(const QString& action, const char* name)
{
    return action == QLatin1StringView("lifter.trial.") + QLatin1StringView(name);
}

}  // namespace

void TrialsView::start(const ProposedTrial& made)
{
    const auto done = m_context.book.history().perform(designTrial(made.trial, blockChanges(made.laid)));
    if (!done) return m_form->say(done.error().what);
    Q_EMIT said(tr("The trial is set up: %n session(s).", nullptr, static_cast<int>(made.trial.days.size())));
    m_wanted.reset();  // the newest running one comes first
    leaveForm();
}

void TrialsView::look()
{
    auto edit = lookOfToday(at());
    m_looked.insert(chosen()->row.id);
    if (!edit) return showChosen();
    const QString problem = store(std::move(edit), tr("The look was written down."));
    if (!problem.isEmpty()) m_looked.erase(chosen()->row.id);
}

QString TrialsView::store(TrialDeed deed, const QString& words)
{
    if (!deed) return deed.error().what;
    const auto done = m_context.book.history().perform(*std::move(deed));
    if (!done) return done.error().what;
    Q_EMIT said(words);
    return {};
}

void TrialsView::ask(const QString& label, const QString& text, std::function<TrialDeed(const QString&)> deed,
                     const QString& words)
{
    m_problem->hide();
    m_question->ask({label, text}, [this, deed = std::move(deed), words](const QString& typed) {
        return chosen() ? store(deed(typed), words) : QString();
    });
}

void TrialsView::askOfTrial(const QString& action)
{
    const Trial& trial = chosen()->trial();
    if (isDeed(action, "finish")) {
        const auto& verdict = chosen()->analysis.verdict;
        QStringList letters;
        for (std::size_t arm = 0; arm < trial.arms.size(); ++arm) letters += armLetter(arm);
        // Only a verdict fills it in: an early guess would be one.
        ask(
            tr("Conclude; go on with (%1; nothing: none)").arg(letters.join(tr(" or "))),
            verdict.arm && isRevealed(*chosen()) ? armLetter(*verdict.arm) : QString(),
            [this](const QString& typed) { return concludeTrial(at(), typed); }, tr("The trial is concluded."));
        return;
    }
    const TrialEnd kind = isDeed(action, "hurt") ? TrialEnd::Discomfort : TrialEnd::Stopped;
    const auto& out = chosen()->analysis.standing.out;
    const QString joint = kind == TrialEnd::Discomfort && !out.empty() && out.front().joint
                              ? format::jointWord(*out.front().joint)
                              : QString();
    ask(
        kind == TrialEnd::Discomfort ? tr("End for discomfort, because of") : tr("Stop the trial, because"), joint,
        [this, kind](const QString& typed) { return breakOffTrial(at(), kind, typed); },
        kind == TrialEnd::Discomfort ? tr("The trial was ended. %1").arg(format::painCaution())
                                     : tr("The trial was stopped."));
}

void TrialsView::askOfSession(const QString& action)
{
    const auto day = static_cast<std::size_t>(m_panel->chosenDay());
    const TrialDay& session = chosen()->trial().days[day];
    if (isDeed(action, "other"))
        ask(
            tr("Arm done in session %1 (nothing: by the log)").arg(day + 1),
            session.armDone ? armLetter(*session.armDone) : QString(),
            [this, day](const QString& typed) { return setArmDone(at(), day, typed); }, tr("The session was changed."));
    if (isDeed(action, "note"))
        ask(
            tr("Remark on session %1").arg(day + 1), session.note,
            [this, day](const QString& typed) { return setTrialNote(at(), day, typed); }, tr("The remark was kept."));
    if (isDeed(action, "move"))
        ask(
            tr("Session %1 on another day").arg(day + 1), format::date(session.date),
            [this, day](const QString& typed) { return moveTrialDay(at(), day, typed); }, tr("The session was moved."));
    if (!isDeed(action, "missed")) return;
    const QString problem = store(turnMissed(at(), day), session.missed ? tr("The session isn’t missed any more.")
                                                                        : tr("The session was missed."));
    m_problem->setText(problem);
    m_problem->setVisible(!problem.isEmpty());
}

void TrialsView::goToKeying(int day)
{
    const ShownTrial* shown = chosen();
    if (!shown || day < 0) return;
    const auto& seen = shown->analysis.record.observations;
    const auto found = std::ranges::find(seen, static_cast<std::size_t>(day), &TrialObservation::day);
    const QDate date = shown->trial().days[static_cast<std::size_t>(day)].date;
    Q_EMIT keyingWanted(found != seen.end() ? found->doneOn.value_or(date) : date);
}

}  // namespace steelyard
