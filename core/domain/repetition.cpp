#include "core/domain/repetition.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RepetitionText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionText)
};

constexpr double kMostTravelMm = 3000;
constexpr double kMostRepetitionSeconds = 120;

bool isOutside(const std::optional<Decimal>& value, double most)
{
    return value && (value->isNegative() || value->toDouble() > most);
}

void checkRepetition(const Repetition& one, Problems& problems)
{
    const auto where = [&](const char* field) {
        return QStringLiteral("%1 %2").arg(QLatin1StringView(field)).arg(one.number);
    };
    for (const auto& [field, value] :
         {std::pair("travel_mm", one.travelMm), std::pair("low_mm", one.lowMm), std::pair("high_mm", one.highMm)})
        if (isOutside(value, kMostTravelMm))
            problems.push_back({where(field), RepetitionText::tr("Travel and heights are from 0 to 3000 mm. Is the "
                                                                 "unit right?")});
    if (one.lowMm && one.highMm && one.lowMm->toDouble() > one.highMm->toDouble())
        problems.push_back({where("high_mm"), RepetitionText::tr("The highest point lies under the lowest.")});
    for (const auto& [field, value] :
         {std::pair("lifting_s", one.liftingSeconds), std::pair("lowering_s", one.loweringSeconds)})
        if (isOutside(value, kMostRepetitionSeconds))
            problems.push_back({where(field), RepetitionText::tr("Lifting and lowering take from 0 to 120 seconds. Is "
                                                                 "the unit right?")});
}

std::optional<Decimal> medianLowering(std::span<const Repetition> repetitions)
{
    std::vector<double> seconds;
    std::size_t whole = 0;
    for (const Repetition& one : repetitions) {
        if (one.partWay) continue;
        ++whole;
        if (one.loweringSeconds) seconds.push_back(one.loweringSeconds->toDouble());
    }
    if (seconds.empty() || seconds.size() * 2 < whole) return std::nullopt;
    std::ranges::sort(seconds);
    const std::size_t middle = seconds.size() / 2;
    const double median = seconds.size() % 2 == 1 ? seconds[middle] : (seconds[middle - 1] + seconds[middle]) / 2;
    return Decimal::nearest(median, 1);
}

MarkCounts countMarks(std::span<const Repetition> repetitions)
{
    MarkCounts counts;
    for (const auto& row : EnumText<Mark>::table)
        counts.set(row.value, static_cast<int>(std::ranges::count_if(repetitions, [&](const Repetition& one) {
                       return !one.partWay && one.marks.has(row.value);
                   })));
    return counts;
}

}  // namespace

std::string RepetitionMarks::toString() const
{
    std::string text;
    for (const auto& row : EnumText<Mark>::table) {
        if (!has(row.value)) continue;
        if (!text.empty()) text += ';';
        text += row.key;
    }
    return text;
}

std::optional<RepetitionMarks> RepetitionMarks::parse(std::string_view text)
{
    RepetitionMarks marks;
    while (!text.empty()) {
        const auto end = text.find(';');
        const auto mark = fromKey<Mark>(text.substr(0, end));
        if (!mark || marks.has(*mark)) return std::nullopt;
        marks.set(*mark);
        if (end == std::string_view::npos) break;
        text = text.substr(end + 1);
        if (text.empty()) return std::nullopt;
    }
    return marks;
}

std::optional<double> Repetition::travel() const
{
    if (travelMm) return travelMm->toDouble();
    if (lowMm && highMm) return highMm->toDouble() - lowMm->toDouble();
    return std::nullopt;
}

Problems validate(std::span<const Repetition> repetitions)
{
    Problems problems;
    if (repetitions.size() > static_cast<std::size_t>(kMostRepetitions))
        problems.push_back({QStringLiteral("repetitions"),
                            RepetitionText::tr("A set has at most %1 repetitions.").arg(kMostRepetitions)});
    for (std::size_t i = 0; i < repetitions.size(); ++i) {
        const Repetition& one = repetitions[i];
        if (one.number != static_cast<int>(i) + 1)
            problems.push_back({QStringLiteral("number"),
                                RepetitionText::tr("Repetitions are numbered 1, 2, 3 without a gap; %1 stands in place "
                                                   "%2.")
                                    .arg(one.number)
                                    .arg(i + 1)});
        if (one.partWay && i + 1 != repetitions.size())
            problems.push_back(
                {QStringLiteral("part_way"), RepetitionText::tr("Only the last repetition can have failed part-way.")});
        checkRepetition(one, problems);
    }
    return problems;
}

SetEntry withRepetitions(SetEntry set, std::span<const Repetition> repetitions)
{
    if (repetitions.empty()) return set;
    if (const auto lowering = medianLowering(repetitions)) set.loweringSeconds = lowering;
    const MarkCounts counts = countMarks(repetitions);
    const auto off = static_cast<int>(
        std::ranges::count_if(repetitions, [](const Repetition& one) { return !one.partWay && !one.marks.none(); }));
    const bool looked = std::ranges::none_of(
        repetitions, [](const Repetition& one) { return one.source == RepetitionSource::Measured; });
    if (looked) {
        set.failed = repetitions.back().partWay;
        set.reps = static_cast<int>(repetitions.size()) - (set.failed ? 1 : 0);
        set.marks = counts;
        set.off = off;
        return set;
    }
    const int most = std::max(set.reps, 0);
    for (const Mark shortness : {Mark::ShortBottom, Mark::ShortTop})
        set.marks.set(shortness, std::min(counts.of(shortness), most));
    if (set.off) set.off = std::min(std::max(*set.off, off), most);
    return set;
}

}  // namespace steelyard
