// A lifter's record by day, newest first, and finding days in it by words.
//
//   const std::vector<LogbookDay> days = logbookDays(log);
//   const LogbookFilter filter(u"curl swing 2026-03");
//   if (filter.accepts(days[0])) ...
//
// Every word must be found on the day: in the names of exercise, variant, grip or standard, in a note, in the words for marks
// and kinds of sets ("swing", "deload"), or as "discomfort", "elbow". Something that looks like a date is one: 2026,
// 2026-03, 2026-03-05, or a stretch of these: 2026-03..2026-05, 2026-03.. ; days of any of them are found. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

struct LogbookPart {
    std::size_t line = 0;  // index into the log's lines
    const Exposure* exposure = nullptr;
};

struct LogbookDay {
    QDate date;
    std::vector<LogbookPart> parts;  // in the order in which they were done
    int sets = 0;
    bool deload = false;                 // planned as one, or a set says so
    std::optional<int> discomfort = {};  // the highest that was said, above 0
    QString words = {};                  // all that can be found, folded for searching
};

// The log must outlive what is given.
[[nodiscard]] std::vector<LogbookDay> logbookDays(const AthleteLog& log);

class LogbookFilter {
public:
    explicit LogbookFilter(QStringView typed = {});
    [[nodiscard]] bool accepts(const LogbookDay& day) const;
    [[nodiscard]] bool isEmpty() const { return m_words.isEmpty() && m_stretches.empty(); }

private:
    struct Stretch {
        QDate from;  // invalid: without an end
        QDate to;
    };
    [[nodiscard]] static std::optional<Stretch> stretchOf(QStringView word);

    QString m_words;
    std::vector<Stretch> m_stretches;
};

}  // namespace steelyard
