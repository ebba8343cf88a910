#include "core/domain/logbook.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <charconv>
#include <numeric>

namespace steelyard {
namespace {

struct LogbookText {
    Q_DECLARE_TR_FUNCTIONS(LogbookText)
};

constexpr int kMostReps = 200;
constexpr int kMostLeanDegrees = 60;

void checkRating(const std::optional<int>& rating, const QString& field, Problems& problems)
{
    if (rating && (*rating < 0 || *rating > 10))
        problems.push_back({field, LogbookText::tr("A rating is a whole number from 0 to 10.")});
}

void checkEffort(const Effort& effort, Problems& problems)
{
    const double value = effort.value.toDouble();
    if (effort.scale == Effort::Scale::Rir && (value < 0 || value > 30))
        problems.push_back({QStringLiteral("rir"), LogbookText::tr("Repetitions in reserve are from 0 to 30.")});
    if (effort.scale == Effort::Scale::Rpe && (value < 1 || value > 10))
        problems.push_back({QStringLiteral("rpe"), LogbookText::tr("Effort is from 1 to 10.")});
}

}  // namespace

int MarkCounts::total() const
{
    return std::accumulate(m_counts.begin(), m_counts.end(), 0);
}

std::string MarkCounts::toString() const
{
    std::string text;
    for (const auto& row : EnumText<Mark>::table) {
        const int count = of(row.value);
        if (count == 0) continue;
        if (!text.empty()) text += ';';
        text += row.key;
        text += ':';
        text += std::to_string(count);
    }
    return text;
}

std::optional<MarkCounts> MarkCounts::parse(std::string_view text)
{
    MarkCounts counts;
    while (!text.empty()) {
        const auto end = text.find(';');
        std::string_view part = text.substr(0, end);
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        while (!part.empty() && part.front() == ' ') part.remove_prefix(1);
        while (!part.empty() && part.back() == ' ') part.remove_suffix(1);
        const auto colon = part.find(':');
        if (colon == std::string_view::npos) return std::nullopt;
        const auto mark = fromKey<Mark>(part.substr(0, colon));
        const auto number = part.substr(colon + 1);
        int count = 0;
        const auto parsed = std::from_chars(number.data(), number.data() + number.size(), count);
        if (!mark || parsed.ec != std::errc{} || parsed.ptr != number.data() + number.size() || count < 1
            || count > kMostReps || counts.of(*mark) != 0)
            return std::nullopt;
        counts.set(*mark, count);
    }
    return counts;
}

std::optional<double> Effort::repsInReserve() const
{
    const double number = value.toDouble();
    if (scale == Scale::Rir) return number;
    if (number >= 7.0) return 10.0 - number;
    return std::nullopt;
}

Problems validate(const SetEntry& set)
{
    Problems problems;
    if (set.number < 1 || set.number > 500)
        problems.push_back({QStringLiteral("set"), LogbookText::tr("The set's number is from 1 to 500.")});
    if (set.reps < 0 || set.reps > kMostReps)
        problems.push_back({QStringLiteral("reps"), LogbookText::tr("Repetitions are from 0 to %1.").arg(kMostReps)});
    if (set.off && (*set.off < 0 || *set.off > set.reps))
        problems.push_back(
            {QStringLiteral("off"),
             LogbookText::tr("Off-standard repetitions are part of the set's %n repetition(s).", nullptr, set.reps)});
    for (const auto& row : EnumText<Mark>::table)
        if (set.marks.of(row.value) > std::max(set.reps, 0))
            problems.push_back(
                {QStringLiteral("marks"),
                 LogbookText::tr("“%1” is marked more often than there are repetitions.").arg(toText(row.value))});
    if (set.effort) checkEffort(*set.effort, problems);
    if (set.loweringSeconds && (set.loweringSeconds->isNegative() || set.loweringSeconds->toDouble() > 120))
        problems.push_back({QStringLiteral("lowering_s"), LogbookText::tr("Lowering takes from 0 to 120 seconds.")});
    if (set.leanDegrees && (set.leanDegrees->isNegative() || set.leanDegrees->toDouble() > kMostLeanDegrees))
        problems.push_back({QStringLiteral("lean_deg"),
                            LogbookText::tr("A backward lean is from 0 to %1 degrees.").arg(kMostLeanDegrees)});
    if (set.note.size() > kMaxNoteLength)
        problems.push_back(
            {QStringLiteral("note"), LogbookText::tr("The note is longer than %n characters; shorten it.", nullptr,
                                                     static_cast<int>(kMaxNoteLength))});
    return problems;
}

Problems validate(const ExerciseRating& rating)
{
    Problems problems;
    checkRating(rating.tension, QStringLiteral("tension"), problems);
    checkRating(rating.burn, QStringLiteral("burn"), problems);
    checkRating(rating.pump, QStringLiteral("pump"), problems);
    checkRating(rating.nextSoreness, QStringLiteral("next_soreness"), problems);
    checkRating(rating.nextWeakness, QStringLiteral("next_weakness"), problems);
    for (const auto& row : EnumText<Joint>::table)
        checkRating(rating.discomfort[static_cast<std::size_t>(row.value)],
                    QStringLiteral("discomfort_") + toText(row.value), problems);
    return problems;
}

}  // namespace steelyard
