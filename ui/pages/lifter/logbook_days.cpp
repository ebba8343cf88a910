#include "ui/pages/lifter/logbook_days.h"

#include "core/base/text.h"
#include "ui/format/format.h"
#include "ui/models/roster_filter.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct LogbookDaysText {
    Q_DECLARE_TR_FUNCTIONS(LogbookDaysText)
};

bool isPlannedDeload(const AthleteLog& log, QDate day)
{
    return std::ranges::any_of(log.blocks, [&](const Row<Block>& row) {
        const auto week = weekOfBlock(row.value, day);
        return week && row.value.weeks[*week].kind == WeekKind::Deload;
    });
}

void addRating(LogbookDay& day, QStringList& words, const ExerciseRating& rating)
{
    for (std::size_t joint = 0; joint < kJointCount; ++joint) {
        const auto& said = rating.discomfort[joint];
        if (!said || *said == 0) continue;
        day.discomfort = std::max(day.discomfort.value_or(0), *said);
        words += LogbookDaysText::tr("discomfort") + u' ' + format::jointWord(static_cast<Joint>(joint));
    }
}

void addPart(LogbookDay& day, QStringList& words, const LineRecord& line, const Exposure& exposure)
{
    words += {line.exercise.value.name, line.variant.value.name, line.grip.value.name, line.standard.value.name};
    for (const LoggedSet& logged : exposure.sets) {
        ++day.sets;
        if (logged.set.kind == SetKind::Deload) day.deload = true;
        if (logged.set.kind != SetKind::Work) words += format::setKindWord(logged.set.kind);
        for (const auto& [mark, key] : EnumText<Mark>::table)
            if (logged.set.marks.of(mark) > 0) words += format::markWord(mark);
        if (!logged.set.note.isEmpty()) words += logged.set.note;
    }
    addRating(day, words, exposure.rating);
}

LogbookDay makeDay(const AthleteLog& log, QDate date, std::vector<LogbookPart> parts)
{
    std::ranges::stable_sort(parts, {}, [](const LogbookPart& part) { return part.exposure->sets.front().position; });
    LogbookDay day{date, std::move(parts)};
    day.deload = isPlannedDeload(log, date);
    QStringList words;
    for (const LogbookPart& part : day.parts) addPart(day, words, log.lines[part.line], *part.exposure);
    if (day.deload) words += format::setKindWord(SetKind::Deload);
    day.words = words.join(u' ');
    return day;
}

// The days that a year, a month or a day stands for; an invalid one when it is none of them.
std::pair<QDate, QDate> daysOf(QStringView text)
{
    const auto parts = text.split(u'-');
    const int year = parts[0].toInt();
    if (parts.size() == 1) return {QDate(year, 1, 1), QDate(year, 12, 31)};
    const QDate month(year, parts[1].toInt(), 1);
    if (parts.size() == 2) return {month, month.addMonths(1).addDays(-1)};
    const QDate day(year, parts[1].toInt(), parts[2].toInt());
    return {day, day};
}

}  // namespace

std::vector<LogbookDay> logbookDays(const AthleteLog& log)
{
    std::map<QDate, std::vector<LogbookPart>, std::greater<>> parts;
    for (std::size_t line = 0; line < log.lines.size(); ++line)
        for (const Exposure& exposure : log.lines[line].exposures) parts[exposure.date].push_back({line, &exposure});
    std::vector<LogbookDay> days;
    days.reserve(parts.size());
    for (auto& [date, ofDay] : parts) days.push_back(makeDay(log, date, std::move(ofDay)));
    return days;
}

LogbookFilter::LogbookFilter(QStringView typed)
{
    QStringList words;
    for (const QStringView word : typed.split(u' ', Qt::SkipEmptyParts)) {
        if (const auto stretch = stretchOf(word))
            m_stretches.push_back(*stretch);
        else
            words += word.toString();
    }
    m_words = words.join(u' ');
}

std::optional<LogbookFilter::Stretch> LogbookFilter::stretchOf(QStringView word)
{
    static const QRegularExpression shape(
        QStringLiteral(R"(^(\d{4}(?:-\d{1,2}){0,2})(?:(\.\.)(\d{4}(?:-\d{1,2}){0,2})?)?$)"));
    const auto match = shape.match(word.toString());
    if (!match.hasMatch()) return std::nullopt;
    const auto first = daysOf(match.captured(1));
    Stretch stretch{first.first, first.second};
    if (!match.captured(2).isEmpty())
        stretch.to = match.captured(3).isEmpty() ? QDate() : daysOf(match.captured(3)).second;
    const bool broken = !stretch.from.isValid() || (!stretch.to.isValid() && match.captured(2).isEmpty());
    return broken ? std::nullopt : std::optional(stretch);
}

bool LogbookFilter::accepts(const LogbookDay& day) const
{
    const auto within = [&](const Stretch& stretch) {
        return day.date >= stretch.from && (!stretch.to.isValid() || day.date <= stretch.to);
    };
    if (!m_stretches.empty() && std::ranges::none_of(m_stretches, within)) return false;
    return matchesSearch(day.words, m_words);
}

}  // namespace steelyard
