// The way of every line of the roster's picture, read in the background while the picture is looked at, some lifters at a time, those
// in sight first. A lifter whose record changes is read again.
//
//   connect(m_courses, &RosterCourses::arrived, table->viewport(), qOverload<>(&QWidget::update));
//   m_courses->want(athletesInTheirOrder);       // again after every change of the order; an empty list stops it
//   m_courses->of(review.athlete, line.id)       // nothing yet, or none: empty
#pragma once

#include "core/book/line_courses.h"
#include "core/edits/change_hub.h"
#include "ui/shell/context.h"

#include <QtCore/QObject>

#include <span>

namespace steelyard {

class RosterCourses final : public QObject {
    Q_OBJECT

public:
    explicit RosterCourses(const UiContext& context, QObject* parent = nullptr);
    void want(std::vector<Id<Athlete>> athletes);
    [[nodiscard]] std::span<const TrendPoint> of(Id<Athlete> athlete, Id<LiftLine> line) const;

Q_SIGNALS:
    void arrived();

private:
    void forget(const Changes& changes);
    void readNext();

    UiContext m_context;
    std::vector<Id<Athlete>> m_wanted;
    std::map<Id<Athlete>, LineCourses> m_courses;
    QDate m_asOf;       // of what is kept
    int m_edition = 0;  // what was begun before a change is thrown away
    JobHandle m_job;
    ChangeHub::Subscription m_subscription;
};

}  // namespace steelyard
