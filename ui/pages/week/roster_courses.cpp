#include "ui/pages/week/roster_courses.h"

#include "core/book/book.h"
#include "ui/models/spark_painter.h"

namespace steelyard {
namespace {

constexpr std::size_t kLiftersAtOnce = 8;
// Sessions without an estimate of their own lie between those that are drawn as points.
constexpr std::size_t kMostOfCourse = 2 * kMostSparkPoints;

}  // namespace

RosterCourses::RosterCourses(const UiContext& context, QObject* parent) : QObject(parent), m_context(context)
{
    m_subscription = m_context.book.hub().subscribe([this](const Changes& changes) { forget(changes); });
}

void RosterCourses::forget(const Changes& changes)
{
    ++m_edition;
    if (changes.roster || changes.library || changes.settings)
        m_courses.clear();
    else
        for (const Id<Athlete> athlete : changes.athletes) m_courses.erase(athlete);
    readNext();
}

void RosterCourses::want(std::vector<Id<Athlete>> athletes)
{
    m_wanted = std::move(athletes);
    if (m_wanted.empty()) return m_job.cancel();
    readNext();
}

std::span<const TrendPoint> RosterCourses::of(Id<Athlete> athlete, Id<LiftLine> line) const
{
    const auto lifter = m_courses.find(athlete);
    if (lifter == m_courses.end()) return {};
    const auto course = lifter->second.find(line);
    return course == lifter->second.end() ? std::span<const TrendPoint>() : course->second;
}

void RosterCourses::readNext()
{
    if (m_job.isRunning()) return;  // and goes on from there
    const QDate today = m_context.clock.today();
    if (std::exchange(m_asOf, today) != today) m_courses.clear();
    std::vector<Id<Athlete>> next;
    for (const Id<Athlete> athlete : m_wanted) {
        if (m_courses.contains(athlete)) continue;
        next.push_back(athlete);
        if (next.size() == kLiftersAtOnce) break;
    }
    if (next.empty()) return;
    m_job = m_context.jobs.run(
        this, tr("Reading how the lines went"),
        [book = m_context.book.path(), next, wish = CourseWish{today, kMostOfCourse}](
            const Progress& progress) -> Result<std::map<Id<Athlete>, LineCourses>> {
            STEELYARD_TRY(const auto database, Database::openReader(book));
            return readCourses(*database, next, wish, progress);
        },
        [this, next, edition = m_edition](Result<std::map<Id<Athlete>, LineCourses>> read) {
            m_job = {};
            if (!read) return;  // the picture stays without them; the review says what is wrong with a book
            if (edition == m_edition) {
                for (const Id<Athlete> athlete : next) m_courses[athlete];  // asked, and maybe gone
                read->merge(m_courses);
                m_courses = std::move(*read);
                Q_EMIT arrived();
            }
            readNext();
        });
}

}  // namespace steelyard
