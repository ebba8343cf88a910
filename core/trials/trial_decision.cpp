#include "core/trials/trial_decision.h"

#include "core/numerics/distribution.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

// By trial_errors. Without any difference, two arms looked at after every block from the fourth on ever say "prefer" in about 5 %
// of trials when a session is like the one before it by 0.3, as ratings usually are; in 9, 10, 9, 10 and 9 % of those of 6, 8,
// 12, 16 and 24 blocks when it isn't at all; in 3 to 5 % on the weighed answer of five outcomes with sessions missed. Of three
// and four arms fewer do, for to be the best of more is harder by itself; but when all the others are plainly worse, two that
// are alike are what a trial of two arms is (8 % at most), so the demand is the same.
struct Demand {
    int upToBlocks = 0;
    double prefer = 1;
};
constexpr std::array<Demand, 6> kDemands{
    {{6, 0.96}, {8, 0.965}, {12, 0.975}, {16, 0.9815}, {24, 0.986}, {std::numeric_limits<int>::max(), 0.9875}}};

// Two arms' difference as it stands, and how it narrows with further blocks. The values' share of the precision grows with
// the blocks, the prior's stays.
class DifferenceAhead {
public:
    DifferenceAhead(const PosteriorT& now, double priorSd, int blocks) : m_now(now), m_blocks(blocks)
    {
        m_prior = 1 / (priorSd * priorSd);
        // The variance that a normal would have which is as wide as this Student t in its middle.
        m_values = std::max(1 / (now.scale * now.scale) - m_prior, 1e-9);
    }

    // |mean| / scale after so many blocks in all, if the sessions to come are on average like those that were.
    [[nodiscard]] double surenessAt(int blocks) const
    {
        const double values = valuesAt(blocks);
        const double plain = m_now.mean * (m_prior + m_values) / m_values;
        return std::abs(plain) * values / std::sqrt(m_prior + values);
    }
    // That the look after so many blocks says |mean| / scale above `asked`.
    [[nodiscard]] double chanceAt(int blocks, double asked) const
    {
        const double variance = 1 / (m_prior + valuesAt(blocks));
        const double mayMove = std::sqrt(std::max(1 / (m_prior + m_values) - variance, 1e-12));
        const double limit = asked * std::sqrt(variance);
        return normalUpperTail((limit - m_now.mean) / mayMove) + normalUpperTail((limit + m_now.mean) / mayMove);
    }

private:
    [[nodiscard]] double valuesAt(int blocks) const { return m_values * blocks / m_blocks; }

    PosteriorT m_now;
    int m_blocks;
    double m_prior = 1;
    double m_values = 1;
};

// Lower bound over all pairs.
double chanceAllAlike(const ArmPosterior& posterior, std::span<const std::size_t> among, double withinSds)
{
    const double within = withinSds * posterior.spread();
    double apart = 0;
    for (std::size_t i = 0; i < among.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            apart += 1 - posterior.difference(among[i], among[j]).chanceBetween(-within, within);
    return 1 - apart;
}

}  // namespace

LookFinding decideAt(const ArmPosterior& posterior, std::span<const std::size_t> among, int wholeBlocks,
                     const TrialRule& rule)
{
    LookFinding found;
    const auto chances = posterior.chanceBest(among);
    const auto best = static_cast<std::size_t>(std::ranges::max_element(chances) - chances.begin());
    found.best = among[best];
    found.chanceBest = chances[best];
    if (wholeBlocks < kFirstLook) return found;
    if (found.chanceBest >= rule.prefer) {
        found.says = LookSays::Prefer;
        found.chanceToPrefer = 1;
        return found;
    }
    std::size_t second = best == 0 ? 1 : 0;
    for (std::size_t i = 0; i < among.size(); ++i)
        if (i != best && posterior.level(among[i]).mean > posterior.level(among[second]).mean) second = i;
    const DifferenceAhead ahead(posterior.difference(among[best], among[second]), posterior.priorDifferenceSd(),
                                wholeBlocks);
    const double asked = normalQuantile(rule.prefer);
    for (int more = 1; more <= kMostBlocksAhead && !found.blocksAhead; ++more)
        if (ahead.surenessAt(wholeBlocks + more) >= asked) found.blocksAhead = more;
    const bool over = wholeBlocks >= rule.plannedBlocks;
    if (!over) found.chanceToPrefer = ahead.chanceAt(rule.plannedBlocks, asked);
    if (chanceAllAlike(posterior, among, rule.equalWithinSds) >= rule.equal)
        found.says = LookSays::Equal;
    else if (over)
        found.says = LookSays::Undecided;
    else
        found.says = found.chanceToPrefer < rule.futile ? LookSays::Futile : LookSays::GoOn;
    return found;
}

TrialRule trialRule([[maybe_unused]] std::size_t arms, int plannedBlocks)
{
    TrialRule rule;
    rule.plannedBlocks = plannedBlocks;
    rule.prefer =
        std::ranges::find_if(kDemands, [&](const Demand& one) { return plannedBlocks <= one.upToBlocks; })->prefer;
    return rule;
}

}  // namespace steelyard
