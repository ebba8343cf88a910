#include "core/book/line_courses.h"

#include "core/analysis/regime_engine.h"
#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LineCoursesText {
    Q_DECLARE_TR_FUNCTIONS(LineCoursesText)
};

LineCourses coursesOf(const RegimeEngine& engine, const AthleteLog& log, const CourseWish& wish)
{
    LineCourses courses;
    auto readings = engine.readAll(log, wish.asOf);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        std::vector<TrendPoint>& course = readings[i].trend;
        if (course.empty()) continue;
        if (course.size() > wish.most)
            course.erase(course.begin(), course.end() - static_cast<std::ptrdiff_t>(wish.most));
        courses.emplace(log.lines[i].id, std::move(course));
    }
    return courses;
}

}  // namespace

Result<std::map<Id<Athlete>, LineCourses>> readCourses(Database& db, std::span<const Id<Athlete>> athletes,
                                                       const CourseWish& wish, const Progress& progress)
{
    STEELYARD_TRY(const Library library, LibraryRepository(db).read());
    STEELYARD_TRY(const RuleSettings settings, RuleSettingRepository(db).all());
    STEELYARD_TRY(const ReadingParameters parameters, readReadingParameters(db, wish.asOf));
    const RegimeEngine engine(parameters, readingThresholds(settings), {}, ReadingDepth::Course);
    std::map<Id<Athlete>, LineCourses> courses;
    for (std::size_t i = 0; i < athletes.size(); ++i) {
        if (progress.cancelled())
            return fail(ErrorCode::Cancelled, LineCoursesText::tr("Reading the records was stopped."));
        const auto log = readAthleteLog(db, library, athletes[i], wish.asOf);
        if (!log && log.error().code == ErrorCode::NotFound) continue;
        if (!log) return fail(log.error());
        courses.emplace(athletes[i], coursesOf(engine, *log, wish));
        progress.report(static_cast<double>(i + 1) / static_cast<double>(athletes.size()));
    }
    return courses;
}

}  // namespace steelyard
