// Arms compared by how often something happened: in which share of an arm's sessions the target gave out first.
//
//   const ArmShares shares({{3, 8}, {6, 8}});
//   shares.chanceBest()[1]                  == 0.9229...
//
// Every share has a uniform prior, so its posterior is Beta(1 + yes, 1 + no). Chances and intervals are integrals over it, good
// to about 1e-7.
//
// Units: shares 0-1. Invariants: yes <= of. Failures: none. Source: Gelman et al. 2013, Bayesian Data Analysis, chapter 2 (from
// memory).
#pragma once

#include <cstddef>
#include <vector>

namespace steelyard {

struct Tally {
    int yes = 0;
    int of = 0;
    friend bool operator==(const Tally&, const Tally&) = default;
};

struct ShareInterval {
    double mean = 0;
    double low = 0;
    double high = 0;
    friend bool operator==(const ShareInterval&, const ShareInterval&) = default;
};

class ArmShares {
public:
    explicit ArmShares(std::vector<Tally> tallies);

    [[nodiscard]] std::size_t arms() const { return m_tallies.size(); }
    [[nodiscard]] ShareInterval share(std::size_t arm, double level = 0.9) const;
    // `arm` less `over`; equal tails.
    [[nodiscard]] ShareInterval difference(std::size_t arm, std::size_t over, double level = 0.9) const;
    [[nodiscard]] double chanceAbove(std::size_t arm, std::size_t over) const;
    // By arm, sums to 1.
    [[nodiscard]] std::vector<double> chanceBest() const;

private:
    std::vector<Tally> m_tallies;
};

}  // namespace steelyard
