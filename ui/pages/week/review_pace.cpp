#include "ui/pages/week/review_pace.h"

#include "core/numerics/robust_trend.h"

#include <cmath>

namespace steelyard {
namespace {

constexpr std::size_t kLifters = 12;
constexpr std::size_t kLeastLifters = 3;
constexpr double kPauseSeconds = 15 * 60;

}  // namespace

void ReviewPace::finished(double seconds)
{
    const double took = m_last ? seconds - *m_last : kPauseSeconds;
    m_last = seconds;
    if (took < 0 || took >= kPauseSeconds) return;
    m_took.push_back(took);
    if (m_took.size() > kLifters) m_took.pop_front();
}

std::optional<int> ReviewPace::minutesLeft(int lifters) const
{
    if (m_took.size() < kLeastLifters) return std::nullopt;
    const double each = *median({m_took.begin(), m_took.end()});
    return static_cast<int>(std::ceil(each * lifters / 60));
}

}  // namespace steelyard
