#include "core/trials/verdict_words.h"

#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>
#include <numeric>

namespace steelyard {
namespace {

struct TrialVerdictText {
    Q_DECLARE_TR_FUNCTIONS(TrialVerdictText)
};

// Never "100 %": nothing here is that sure.
QString percent(double chance, const Wording& wording)
{
    constexpr double kNearlySure = 99;
    const double shown = 100 * chance;
    if (shown > kNearlySure) return TrialVerdictText::tr("over %1").arg(wording.number(kNearlySure, 0));
    return wording.number(std::max(0.0, shown), 0);
}

QString quoted(const QString& name)
{
    return TrialVerdictText::tr("“%1”").arg(name);
}

class VerdictWriter {
public:
    VerdictWriter(const Trial& trial, const TrialRecord& record, const std::vector<QString>& names,
                  const Wording& wording, TrialVerdict& verdict)
        : m_trial(&trial), m_record(&record), m_names(&names), m_wording(&wording), m_verdict(&verdict)
    {}

    void write()
    {
        sayWord();
        sayWhatItRestsOn();
        sayLooks();
        sayWeights();
        if (m_verdict->word != TrialWord::Discomfort)
            for (const VetoedArm& out : m_verdict->out) m_verdict->forCoach += u' ' + vetoSentence(out);
    }

private:
    [[nodiscard]] QString name(std::size_t arm) const
    {
        return quoted(arm < m_names->size() ? (*m_names)[arm] : armLetter(arm));
    }

    void sayWord()
    {
        switch (m_verdict->word) {
        case TrialWord::Prefer:
            return sayPrefer();
        case TrialWord::NoClearDifference:
            return sayNoDifference();
        case TrialWord::NeedsMore:
            return sayMore();
        case TrialWord::Discomfort:
            return sayDiscomfort();
        case TrialWord::NothingYet:
            break;
        }
        sayNothing();
    }

    void sayPrefer()
    {
        m_verdict->forCoach = TrialVerdictText::tr("Prefer %1: it is the best of these arms with a chance of %2 %.")
                                  .arg(name(*m_verdict->arm), percent(m_verdict->look.chanceBest, *m_wording));
        m_verdict->forLifter = TrialVerdictText::tr("For you, %1 worked better than what it was tried against.")
                                   .arg(name(*m_verdict->arm));
    }

    void sayNoDifference()
    {
        m_verdict->forLifter =
            TrialVerdictText::tr("We found no clear difference: take the one that you like and that is comfortable.");
        if (m_verdict->reason == u"all_equal")
            m_verdict->forCoach = TrialVerdictText::tr(
                "No clear difference: every session was rated the same, so the ratings can't tell the arms apart.");
        else if (m_verdict->reason == u"equal")
            m_verdict->forCoach = TrialVerdictText::tr(
                "No clear difference: if there is one, it is likely too small to matter. Choose by comfort and "
                "convenience.");
        else if (m_verdict->reason == u"futile")
            m_verdict->forCoach = TrialVerdictText::tr(
                "No clear difference, and the sessions that are left would hardly bring one out. Choose by comfort and "
                "convenience.");
        else if (m_verdict->reason == u"ways_disagree")
            m_verdict->forCoach = TrialVerdictText::tr(
                "No clear difference: counted by what was done one arm leads, counted by what was drawn another does.");
        else
            m_verdict->forCoach = TrialVerdictText::tr(
                "No clear difference. That isn't proof that there is none: a smaller one would not have shown in so "
                "few "
                "sessions.");
    }

    void sayMore()
    {
        m_verdict->forCoach =
            TrialVerdictText::tr("Needs about %n more session(s): %1 leads so far, not surely enough to say so.",
                                 nullptr, m_verdict->moreSessions.value_or(0))
                .arg(name(m_verdict->look.best));
        m_verdict->forLifter = TrialVerdictText::tr("We can't tell yet. A few more sessions as planned will help.");
    }

    void sayDiscomfort()
    {
        QStringList sentences{TrialVerdictText::tr("Stopped for discomfort.")};
        for (const VetoedArm& out : m_verdict->out) sentences << vetoSentence(out);
        sentences << TrialVerdictText::tr(
            "A program can't judge why it hurts; if it stays, let a professional look at it.");
        m_verdict->forCoach = sentences.join(u' ');
        m_verdict->forLifter = TrialVerdictText::tr(
            "We stop here, because it was uncomfortable. If it doesn't settle, have somebody qualified look at it.");
    }

    [[nodiscard]] QString vetoSentence(const VetoedArm& out) const
    {
        const QString where = out.joint ? jointName(*out.joint) : TrialVerdictText::tr("a joint");
        if (out.sessionsRunning)
            return TrialVerdictText::tr(
                       "%1 is out: discomfort (%2) up to %3 of 10, at the limit or above in %n session(s) "
                       "running.",
                       nullptr, m_trial->limit.sessionsRunning)
                .arg(name(out.arm), where)
                .arg(out.rating);
        return TrialVerdictText::tr(
                   "%1 is out: with a chance of %2 % it hurts more than another arm by over a point of 10 "
                   "(%3, up to %4).")
            .arg(name(out.arm), percent(out.chanceWorse, *m_wording), where)
            .arg(out.rating);
    }

    void sayNothing()
    {
        m_verdict->forLifter = TrialVerdictText::tr("It is too early to tell.");
        if (m_verdict->reason == u"order_not_kept") {
            m_verdict->forCoach = TrialVerdictText::tr(
                "Says nothing: more than a quarter of the sessions were done with another arm than drawn, so that "
                "something "
                "other than lots decided.");
            m_verdict->forLifter = TrialVerdictText::tr("This comparison was not done as planned, so it can't tell.");
        } else if (m_verdict->reason == u"one_arm_only") {
            m_verdict->forCoach = TrialVerdictText::tr("Says nothing: at least one arm was never done.");
        } else if (m_verdict->reason == u"nothing_weighs") {
            m_verdict->forCoach = TrialVerdictText::tr("Says nothing: no outcome that can be weighed has a weight.");
        } else if (m_verdict->reason == u"too_few_values") {
            m_verdict->forCoach = TrialVerdictText::tr(
                "Says nothing yet: too few sessions have all the ratings that are weighed. Ratings that are missing "
                "can "
                "still be entered.");
        } else {
            m_verdict->forCoach = TrialVerdictText::tr(
                                      "Says nothing yet: %n whole block(s) so far, and with fewer than %1 a difference "
                                      "would be chance as likely as not.",
                                      nullptr, m_verdict->wholeBlocks)
                                      .arg(kFirstLook);
        }
    }

    void sayWhatItRestsOn()
    {
        auto& rests = m_verdict->restsOn;
        rests.push_back(
            TrialVerdictText::tr("%n whole block(s) of %1.", nullptr, m_verdict->wholeBlocks).arg(m_trial->blocks));
        if (!m_verdict->done.answer || m_verdict->wholeBlocks < kFirstLook) return;
        for (const EstimatedDifference& one : m_verdict->done.answer->differences)
            rests.push_back(
                TrialVerdictText::tr("%1 less %2: %3 points of 10 in the weighed answer (90 % interval %4 to %5).")
                    .arg(name(one.arm), name(one.over), m_wording->number(one.mean), m_wording->number(one.low90),
                         m_wording->number(one.high90)));
        if (const auto& lot = m_verdict->drawn.answer ? m_verdict->drawn.answer->byLot : std::nullopt)
            rests.push_back(
                TrialVerdictText::tr("If no arm did anything, %1 % of the orders that could have been drawn would have "
                                     "brought them as far apart.")
                    .arg(m_wording->number(100 * lot->p)));
        rests.push_back(
            TrialVerdictText::tr("“Prefer” asks for a chance of at least %1 %, because it is looked for after "
                                 "every block.")
                .arg(m_wording->number(100 * m_verdict->threshold)));
        sayLeftOut();
    }

    void sayLeftOut()
    {
        const TrialEffects& done = m_verdict->done;
        if (done.sessionsWithoutAnswer > 0)
            m_verdict->restsOn.push_back(
                TrialVerdictText::tr("%n session(s) are left out, because a rating that is weighed is missing.",
                                     nullptr, done.sessionsWithoutAnswer));
        QStringList titles;
        for (const QString& key : done.leftOut) titles << outcomeTitle(key);
        if (!titles.empty())
            m_verdict->restsOn.push_back(
                TrialVerdictText::tr("Rated in fewer than half of the sessions and therefore not weighed: %1.")
                    .arg(titles.join(QStringLiteral(", "))));
    }

    void sayLooks()
    {
        const auto early = std::ranges::count_if(m_trial->looks, [&](const TrialLook& look) {
            return look.date <= m_record->asOf && (!m_trial->ending || look.date < m_trial->ending->date);
        });
        if (early == 0) return;
        m_verdict->looks = TrialVerdictText::tr(
            "The results were looked at %n time(s) while the trial ran. The demand on "
            "“prefer” allows for a look after every block; it can't allow for ratings "
            "that were given with the results in mind.",
            nullptr, static_cast<int>(early));
    }

    void sayWeights()
    {
        double sum = 0;
        for (const TrialOutcome& outcome : m_trial->outcomes) sum += outcome.weight;
        QStringList parts;
        for (const TrialOutcome& outcome : m_trial->outcomes)
            if (outcome.weight > 0)
                parts << TrialVerdictText::tr("%1 %2 %").arg(outcomeTitle(outcome.key),
                                                             m_wording->number(100 * outcome.weight / sum, 0));
        m_verdict->weights =
            TrialVerdictText::tr("Weights, chosen before the trial: %1. Other weights may give another answer.")
                .arg(parts.join(QStringLiteral(", ")));
    }

    const Trial* m_trial;
    const TrialRecord* m_record;
    const std::vector<QString>* m_names;
    const Wording* m_wording;
    TrialVerdict* m_verdict;
};

}  // namespace

void sayVerdict(const Trial& trial, const TrialRecord& record, const std::vector<QString>& armNames,
                const Wording& wording, TrialVerdict& verdict)
{
    VerdictWriter(trial, record, armNames, wording, verdict).write();
}

}  // namespace steelyard
