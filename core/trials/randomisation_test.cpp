#include "core/trials/randomisation_test.h"

#include "core/trials/trial_random.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

namespace steelyard {
namespace {

// Equal statistics of different orders differ by rounding.
constexpr double kSameStatistic = 1e-9;

// A statistic as a function of the arms alone: all that doesn't depend on them is worked out once.
class OrderStatistic {
public:
    OrderStatistic(const RandomisationQuestion& question, std::vector<double> values)
        : m_arms(question.arms), m_left(std::move(values))
    {
        for (std::size_t i = 0; i < question.sessions.size(); ++i)
            if (question.sessions[i].value) m_valued.push_back(i);
        const auto count = static_cast<double>(m_valued.size());
        double middle = 0;
        for (const std::size_t at : m_valued) middle += static_cast<double>(at) / count;
        for (const std::size_t at : m_valued) m_time.push_back(question.trend ? static_cast<double>(at) - middle : 0.0);
        m_timeSquares = std::inner_product(m_time.begin(), m_time.end(), m_time.begin(), 0.0);
        const double mean = std::accumulate(m_left.begin(), m_left.end(), 0.0) / count;
        double slope = 0;
        for (std::size_t i = 0; i < m_left.size(); ++i) slope += m_time[i] * m_left[i];
        if (m_timeSquares > 0) slope /= m_timeSquares;
        for (std::size_t i = 0; i < m_left.size(); ++i) m_left[i] -= mean + slope * m_time[i];
    }

    [[nodiscard]] double operator()(const std::vector<std::size_t>& arms) const
    {
        return m_arms == 2 ? ofTwo(arms) : ofMore(arms);
    }

private:
    // The coefficient of arm 1 beside a level and a trend, by least squares.
    [[nodiscard]] double ofTwo(const std::vector<std::size_t>& arms) const
    {
        double ones = 0;
        double withTime = 0;
        double withValue = 0;
        for (std::size_t i = 0; i < m_valued.size(); ++i) {
            if (arms[m_valued[i]] != 1) continue;
            ones += 1;
            withTime += m_time[i];
            withValue += m_left[i];
        }
        const double explained = m_timeSquares > 0 ? withTime * withTime / m_timeSquares : 0;
        const double free = ones - ones * ones / static_cast<double>(m_valued.size()) - explained;
        return free > kSameStatistic ? withValue / free : 0;
    }

    [[nodiscard]] double ofMore(const std::vector<std::size_t>& arms) const
    {
        std::vector<double> sum(m_arms, 0.0);
        std::vector<double> count(m_arms, 0.0);
        for (std::size_t i = 0; i < m_valued.size(); ++i) {
            sum[arms[m_valued[i]]] += m_left[i];
            count[arms[m_valued[i]]] += 1;
        }
        double squares = 0;
        for (std::size_t arm = 0; arm < m_arms; ++arm)
            if (count[arm] > 0) squares += sum[arm] * sum[arm] / count[arm];
        return squares;
    }

    std::size_t m_arms;
    std::vector<std::size_t> m_valued;  // sessions with a value
    std::vector<double> m_time;         // of these, around their mean; 0 without a trend
    std::vector<double> m_left;         // their values, less level and trend
    double m_timeSquares = 0;
};

std::vector<double> meanRanks(const std::vector<double>& values)
{
    std::vector<double> ranks;
    ranks.reserve(values.size());
    for (const double value : values) {
        const auto below = std::ranges::count_if(values, [&](double other) { return other < value; });
        const auto equal = std::ranges::count(values, value);
        ranks.push_back(static_cast<double>(below) + static_cast<double>(equal + 1) / 2);
    }
    return ranks;
}

struct DrawnBlock {
    std::vector<std::size_t> sessions;
    std::vector<std::vector<std::size_t>> orders;  // of the arms in it, all of them
};

std::vector<std::vector<std::size_t>> ordersOf(std::vector<std::size_t> arms)
{
    std::ranges::sort(arms);
    std::vector<std::vector<std::size_t>> orders;
    do orders.push_back(arms);
    while (std::next_permutation(arms.begin(), arms.end()));
    return orders;
}

// Absent when an arm stands twice in a block.
std::optional<std::vector<DrawnBlock>> blocksOf(const RandomisationQuestion& question)
{
    std::map<int, DrawnBlock> byNumber;
    for (std::size_t i = 0; i < question.sessions.size(); ++i)
        byNumber[question.sessions[i].block].sessions.push_back(i);
    std::vector<DrawnBlock> blocks;
    for (auto& [number, block] : byNumber) {
        std::vector<std::size_t> arms;
        arms.reserve(block.sessions.size());
        for (const std::size_t at : block.sessions) arms.push_back(question.sessions[at].arm);
        if (std::set<std::size_t>(arms.begin(), arms.end()).size() != arms.size()
            || std::ranges::max(arms) >= question.arms)
            return std::nullopt;
        block.orders = ordersOf(std::move(arms));
        blocks.push_back(std::move(block));
    }
    return blocks;
}

void put(const DrawnBlock& block, std::size_t order, std::vector<std::size_t>& arms)
{
    for (std::size_t i = 0; i < block.sessions.size(); ++i) arms[block.sessions[i]] = block.orders[order][i];
}

class OrderCount {
public:
    OrderCount(const OrderStatistic& statistic, double drawn) : m_statistic(&statistic), m_drawn(std::abs(drawn)) {}
    void look(const std::vector<std::size_t>& arms)
    {
        m_orders += 1;
        if (std::abs((*m_statistic)(arms)) >= m_drawn - kSameStatistic * std::max(1.0, m_drawn)) m_asExtreme += 1;
    }
    void countAll(const std::vector<DrawnBlock>& blocks, std::vector<std::size_t>& arms, std::size_t from = 0)
    {
        if (from == blocks.size()) return look(arms);
        for (std::size_t order = 0; order < blocks[from].orders.size(); ++order) {
            put(blocks[from], order, arms);
            countAll(blocks, arms, from + 1);
        }
    }
    void draw(const std::vector<DrawnBlock>& blocks, std::vector<std::size_t>& arms, TrialRandom random)
    {
        look(arms);  // the one that was drawn, so that p is never 0
        for (int i = 1; i < kOrdersDrawn; ++i) {
            for (const DrawnBlock& block : blocks) put(block, random.below(block.orders.size()), arms);
            look(arms);
        }
    }
    [[nodiscard]] double orders() const { return m_orders; }
    [[nodiscard]] double asExtreme() const { return m_asExtreme; }

private:
    const OrderStatistic* m_statistic;
    double m_drawn;
    double m_orders = 0;
    double m_asExtreme = 0;
};

}  // namespace

std::optional<RandomisationAnswer> randomisationTest(const RandomisationQuestion& question)
{
    std::set<std::size_t> withValue;
    std::vector<double> values;
    std::vector<std::size_t> arms;
    for (const DrawnSession& session : question.sessions) {
        arms.push_back(session.arm);
        if (!session.value) continue;
        if (!std::isfinite(*session.value)) return std::nullopt;
        withValue.insert(session.arm);
        values.push_back(*session.value);
    }
    if (question.arms < 2 || withValue.size() < 2) return std::nullopt;
    const auto blocks = blocksOf(question);
    if (!blocks) return std::nullopt;
    const OrderStatistic statistic(question, question.ranks ? meanRanks(values) : values);
    RandomisationAnswer answer;
    answer.statistic = statistic(arms);
    OrderCount count(statistic, answer.statistic);
    double possible = 1;
    for (const DrawnBlock& block : *blocks) possible *= static_cast<double>(block.orders.size());
    answer.exact = possible <= question.mostCounted;
    if (answer.exact)
        count.countAll(*blocks, arms);
    else
        count.draw(*blocks, arms, TrialRandom(question.seed));
    answer.orders = count.orders();
    answer.asExtreme = count.asExtreme();
    answer.p = answer.asExtreme / answer.orders;
    return answer;
}

}  // namespace steelyard
