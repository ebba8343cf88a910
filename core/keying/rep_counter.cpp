#include "core/keying/rep_counter.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr RepCounter::Time kNoRepetitionIsThatLong{120'000};

// A hand on a key is not better than a hundredth of a second.
Decimal hundredths(RepCounter::Time time)
{
    return Decimal::fromScaled((time.count() + 5) / 10, 2);
}

bool isPlausible(RepCounter::Time time)
{
    return time.count() >= 0 && time < kNoRepetitionIsThatLong;
}

}  // namespace

bool RepCounter::add(Time at, bool partWay)
{
    if (failed() || done() >= kMostRepetitions - 1) return false;
    if (m_loweringSince) loweringEnds(at);
    Repetition one{.number = static_cast<int>(m_repetitions.size()) + 1, .source = RepetitionSource::Tapped};
    if (m_lowering) {
        one.loweringSeconds = hundredths(*m_lowering);
        const auto rest = m_ends.empty() ? Time(-1) : at - m_ends.back() - *m_lowering;
        if (isPlausible(rest)) one.liftingSeconds = hundredths(rest);
    }
    one.partWay = partWay;
    m_lowering.reset();
    m_repetitions.push_back(one);
    m_ends.push_back(at);
    return true;
}

bool RepCounter::repetition(Time at)
{
    return add(at, false);
}

bool RepCounter::partWay(Time at)
{
    return add(at, true);
}

bool RepCounter::mark(Mark mark)
{
    if (m_repetitions.empty() || failed()) return false;
    auto& marks = m_repetitions.back().marks;
    marks.set(mark, !marks.has(mark));
    return true;
}

bool RepCounter::loweringBegins(Time at)
{
    if (failed() || m_loweringSince) return false;
    m_loweringSince = at;
    return true;
}

bool RepCounter::loweringEnds(Time at)
{
    if (!m_loweringSince) return false;
    const Time length = at - *m_loweringSince;
    m_loweringSince.reset();
    if (!isPlausible(length)) return false;
    m_lowering = length;
    return true;
}

bool RepCounter::takeBack()
{
    if (m_loweringSince || m_lowering) {
        m_loweringSince.reset();
        m_lowering.reset();
        return true;
    }
    if (m_repetitions.empty()) return false;
    m_repetitions.pop_back();
    m_ends.pop_back();
    return true;
}

int RepCounter::marked() const
{
    return static_cast<int>(
        std::ranges::count_if(m_repetitions, [](const Repetition& one) { return !one.marks.none(); }));
}

std::optional<Decimal> RepCounter::lastLowering() const
{
    if (m_lowering) return hundredths(*m_lowering);
    return m_repetitions.empty() ? std::nullopt : m_repetitions.back().loweringSeconds;
}

std::optional<double> RepCounter::rhythm() const
{
    if (m_ends.size() < 2) return std::nullopt;
    const Time step = m_ends.back() - m_ends[m_ends.size() - 2];
    if (!isPlausible(step)) return std::nullopt;
    return static_cast<double>(step.count()) / 1000;
}

}  // namespace steelyard
