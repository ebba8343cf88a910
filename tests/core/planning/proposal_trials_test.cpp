// A proposed block remembers what the lifter's trials found.
#include "core/planning/proposal/proposal_trials.h"

#include "tests/support/proposal_case.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::ProposalCase;

// Two ways to bench: the usual one was done last, a trial compared it with another.
class ProposalTrials : public testing::Test {
protected:
    ProposalTrials()
    {
        for (int week = 1; week <= 4; ++week) {
            c.record(other, c.wishes.today.addDays(-7 * week - 3), 3);
            c.record(c.bench, c.wishes.today.addDays(-7 * week), 3);
        }
        Trial trial{.athlete = c.log.athlete.id};
        trial.question = QStringLiteral("Which bench?");
        trial.designedOn = c.wishes.today.addDays(-40);
        trial.factor = TrialFactor::Variant;
        trial.arms = {armOf(c.bench), armOf(other)};
        trial.outcomes = {{QStringLiteral("tension"), 1}};
        trial.days = {{c.wishes.today.addDays(-31), 1, 1},
                      {c.wishes.today.addDays(-28), 1, 0},
                      {c.wishes.today.addDays(-24), 2, 1},
                      {c.wishes.today.addDays(-21), 2, 0}};
        c.log.trials = {{Id<Trial>(1), QUuid(), trial}};
    }
    static TrialArm armOf(const ProposalCase::Lift& lift)
    {
        return {.variant = lift.variant, .grip = Id<Grip>(1), .standard = lift.standard, .band = {8, 12}};
    }
    [[nodiscard]] Trial& trial() { return c.log.trials[0].value; }
    void end(TrialEnd kind, std::optional<std::size_t> choice)
    {
        trial().ending = TrialEnding{c.wishes.today.addDays(-2), kind, QStringLiteral("enough"), choice};
    }
    [[nodiscard]] static QString whyOf(const BlockProposal& proposal, const ProposalCase::Lift& lift)
    {
        for (const ProposedSlot& slot : proposal.week)
            if (slot.lift.variant == lift.variant) return slot.why;
        return {};
    }

    ProposalCase c;
    ProposalCase::Lift other = c.variantOf(c.bench, "narrow");
};

TEST_F(ProposalTrials, PreferTheChosenArmAndSaySo)
{
    end(TrialEnd::Concluded, 1);
    const auto proposal = c.propose();
    EXPECT_GT(ProposalCase::setsOf(proposal, other), 0);
    EXPECT_EQ(ProposalCase::setsOf(proposal, c.bench), 0);
    EXPECT_TRUE(whyOf(proposal, other).startsWith(QStringLiteral("Chosen in the trial “Which bench?” on 2026-02-27.")))
        << qPrintable(whyOf(proposal, other));
    end(TrialEnd::Concluded, 0);
    EXPECT_EQ(ProposalCase::setsOf(c.propose(), other), 0);
}

TEST_F(ProposalTrials, SayNothingWhenTheCoachChoseNothing)
{
    const auto without = [&] {
        auto plain = c;
        plain.log.trials.clear();
        return plain.propose();
    }();
    end(TrialEnd::Stopped, std::nullopt);
    EXPECT_EQ(c.propose().week, without.week);
}

TEST_F(ProposalTrials, LeaveOutTheArmThatHurtAndSayWhy)
{
    // The usual way was done last, so it would be proposed; it hurt twice running within the trial.
    for (Exposure& exposure : c.line(c.bench).exposures)
        if (exposure.date >= trial().days.front().date)
            exposure.rating.discomfort[static_cast<std::size_t>(Joint::Shoulder)] = 4;
    end(TrialEnd::Discomfort, std::nullopt);
    const auto proposal = c.propose();
    EXPECT_EQ(ProposalCase::setsOf(proposal, c.bench), 0);
    const auto said = proposal.cautions.filter(QStringLiteral("Which bench?"));
    ASSERT_EQ(said.size(), 1);
    EXPECT_TRUE(said.front().startsWith(QStringLiteral("Bench press, usual, as usual: left out.")))
        << qPrintable(said.front());
}

TEST_F(ProposalTrials, TakeTheHighestRatingWhereTheCoachWasQuickerThanTheLimit)
{
    c.line(other).exposures.front().rating.discomfort[0] = 7;
    c.line(c.bench).exposures.front().rating.discomfort[0] = 2;
    end(TrialEnd::Discomfort, std::nullopt);
    const auto advice = trialAdvice(c.log, c.library, c.wishes.today);
    ASSERT_EQ(advice.size(), 1U);
    EXPECT_EQ(advice[0].say, TrialSay::Avoided);
    EXPECT_EQ(advice[0].lift.variant, other.variant);
}

TEST_F(ProposalTrials, CountTheNewestChoiceOfAnExercise)
{
    end(TrialEnd::Concluded, 1);
    auto again = c.log.trials[0];
    again.value.ending->choice = 0;
    c.log.trials.push_back(again);
    const auto advice = trialAdvice(c.log, c.library, c.wishes.today);
    ASSERT_EQ(advice.size(), 1U);
    EXPECT_EQ(advice[0].lift.variant, c.bench.variant);
    EXPECT_TRUE(trialAdvice(c.log, c.library, c.wishes.today.addDays(-3)).front().say == TrialSay::UnderTrial)
        << "before their end they ran";
}

TEST_F(ProposalTrials, KeepARunningTrialAndHaveItsSessionsInTheBlock)
{
    const auto plain = c.propose();
    ASSERT_GT(ProposalCase::setsOf(plain, c.bench), 0);
    EXPECT_TRUE(whyOf(plain, c.bench).startsWith(QStringLiteral("Stays: the trial")));
    const QDate first = plain.block.weeks[0].days[0].date;
    const QDate second = plain.block.weeks[1].days[0].date;
    trial().days.push_back({first, 3, 1});
    trial().days.push_back({second, 3, 0});
    trial().days.push_back({first.addDays(400), 4, 0});
    const auto proposal = c.propose();
    const auto firstSlot = [&](QDate date) {
        for (const PlannedWeek& week : proposal.block.weeks)
            for (const PlannedDay& day : week.days)
                if (day.date == date) return day.slotList.at(0);
        return proposal.block.weeks.at(0).days.at(0).slotList.at(0);
    };
    EXPECT_EQ(firstSlot(first).variant, other.variant);
    EXPECT_EQ(firstSlot(second).variant, c.bench.variant);
    EXPECT_EQ(firstSlot(second).sets, trial().sets);
}

}  // namespace
}  // namespace steelyard
