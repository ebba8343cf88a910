#include "core/analysis/reading_memory.h"

#include <algorithm>
#include <array>
#include <bit>
#include <iterator>
#include <map>
#include <set>

namespace steelyard {
namespace {

// How old the kept states are. Yesterday's is there because what is typed today joins today's session.
constexpr std::array kDaysBack{208 * 7, 104 * 7, 52 * 7, 26 * 7, 13 * 7, 4 * 7, 1, 0};

// A running 64-bit mix (the finaliser of splitmix64): not secret, but two different records practically never agree.
class Seal {
public:
    void add(std::uint64_t value)
    {
        m_value += value + 0x9e3779b97f4a7c15U;
        m_value = (m_value ^ (m_value >> 30)) * 0xbf58476d1ce4e5b9U;
        m_value = (m_value ^ (m_value >> 27)) * 0x94d049bb133111ebU;
        m_value ^= m_value >> 31;
    }
    void add(double value) { add(std::bit_cast<std::uint64_t>(value)); }
    void add(QDate date) { add(static_cast<std::uint64_t>(date.toJulianDay())); }
    [[nodiscard]] std::uint64_t value() const { return m_value; }

private:
    std::uint64_t m_value = 0;
};

template <class Number>
std::uint64_t bitsOf(Number number)
{
    return static_cast<std::uint64_t>(static_cast<std::int64_t>(number));
}

void addSet(Seal& seal, const SetEntry& set)
{
    seal.add(set.load.kilograms());
    seal.add(bitsOf(static_cast<int>(set.load.unit())));
    seal.add(bitsOf(set.reps) << 32 | bitsOf(set.off.value_or(-1) + 1) << 8 | bitsOf(set.failed ? 1 : 0) << 4
             | bitsOf(static_cast<int>(set.kind)));
    seal.add(set.effort ? set.effort->repsInReserve().value_or(-2) : -1.0);
    seal.add(bitsOf(offReps(set)));
}

// What holds for the whole record, whatever the day.
void addFrame(Seal& seal, const AthleteLog& log)
{
    const auto& experience = log.athlete.value.experience;
    seal.add(experience ? bitsOf(static_cast<int>(*experience)) + 1 : 0);
    for (const BodyMassEntry& entry : log.bodyMass) {
        seal.add(entry.date);
        seal.add(entry.mass.kilograms());
    }
    for (const Row<Block>& block : log.blocks) {
        seal.add(block.value.start);
        for (const PlannedWeek& week : block.value.weeks) {
            seal.add(bitsOf(static_cast<int>(week.kind)));
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList) {
                    seal.add(bitsOf(slot.variant.value()));
                    seal.add(bitsOf(slot.grip.value()));
                    seal.add(bitsOf(slot.standard.value()));
                    seal.add(slot.load ? slot.load->kilograms() : -1.0);
                    seal.add(bitsOf(slot.sets) << 32 | bitsOf(slot.band.low) << 16 | bitsOf(slot.band.high));
                    seal.add(slot.plannedRir ? slot.plannedRir->toDouble() : -1.0);
                }
        }
    }
}

void addLine(Seal& seal, const LineRecord& line)
{
    seal.add(bitsOf(line.id.value()));
    seal.add(bitsOf(line.line.variant.value()));
    seal.add(bitsOf(line.line.grip.value()));
    seal.add(bitsOf(line.line.standard.value()));
    seal.add(bitsOf(static_cast<int>(line.variant.value.loading)) << 32 | bitsOf(line.variant.value.band.high));
}

void addExposure(Seal& seal, const Exposure& exposure)
{
    seal.add(exposure.date);
    for (const LoggedSet& logged : exposure.sets) addSet(seal, logged.set);
}

// Of what was logged up to each of these days, oldest first; the log is gone through once.
std::map<QDate, std::uint64_t> sealsOf(const AthleteLog& log, const std::set<QDate>& days)
{
    Seal frame;
    addFrame(frame, log);
    std::vector<Seal> all(days.size(), frame);
    for (const LineRecord& line : log.lines) {
        Seal own;
        addLine(own, line);
        auto exposure = line.exposures.begin();
        auto seal = all.begin();
        for (const QDate day : days) {
            for (; exposure != line.exposures.end() && exposure->date <= day; ++exposure) addExposure(own, *exposure);
            if (exposure != line.exposures.begin()) seal->add(own.value());
            ++seal;
        }
    }
    std::map<QDate, std::uint64_t> byDay;
    std::ranges::transform(days, all, std::inserter(byDay, byDay.end()),
                           [](QDate day, const Seal& seal) { return std::pair(day, seal.value()); });
    return byDay;
}

}  // namespace

const LifterTracker& ReadingMemory::recall(const AthleteLog& log, const CountedLines& counted, QDate asOf,
                                           const ReadingParameters& parameters, const VerdictThresholds& thresholds)
{
    std::set<QDate> sealed;
    for (const Kept& one : m_kept) sealed.insert(one.until);
    for (const int back : kDaysBack) sealed.insert(asOf.addDays(-back));
    const auto seals = sealsOf(log, sealed);
    while (!m_kept.empty() && (m_kept.back().until > asOf || seals.at(m_kept.back().until) != m_kept.back().seal))
        m_kept.pop_back();
    QDate from = asOf;
    for (const auto& line : counted)
        if (!line.empty()) from = std::min(from, line.front().point.date);
    if (!m_kept.empty()) from = m_kept.back().until;
    m_weeksReplayed = weekOf(asOf) - weekOf(from);
    LifterTracker state =
        m_kept.empty() ? LifterTracker(parameters, thresholds, log.athlete.value.experience) : m_kept.back().state;
    for (const int days : kDaysBack) {
        const QDate until = asOf.addDays(-days);
        if (until < from || (!m_kept.empty() && until <= m_kept.back().until)) continue;
        state.advance(log, counted, until);
        m_kept.push_back({until, seals.at(until), state});
    }
    // Of the states of earlier days, those stay that are needed: one for each distance.
    thin(asOf);
    return m_kept.back().state;
}

void ReadingMemory::thin(QDate asOf)
{
    std::vector<Kept> kept;
    for (std::size_t i = 0; i < m_kept.size(); ++i) {
        const auto distance = [&](const Kept& one) {
            const qint64 days = one.until.daysTo(asOf);
            return std::ranges::find_if(kDaysBack, [&](int back) { return days >= back; }) - kDaysBack.begin();
        };
        const bool last = i + 1 == m_kept.size();
        // The older of two at one distance is the safer one for edits; the newest is always needed.
        if (last || kept.empty() || distance(kept.back()) != distance(m_kept[i])) kept.push_back(std::move(m_kept[i]));
    }
    m_kept = std::move(kept);
}

}  // namespace steelyard
