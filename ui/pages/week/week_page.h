// The weekly review of one lifter: open flags worst first, each answered in place; what was answered, folded below; and
// the table of the lift lines. Made for one hand on the keys: J and K walk the flags, A W D answer, F says that the whole lifter is fine and goes
// on. Who is finished leaves the queue of N until the next round. R turns to the picture of the whole roster and back.
#pragma once

#include "core/edits/change_hub.h"
#include "core/flags/athlete_review.h"
#include "ui/shell/context.h"
#include "ui/pages/week/review_pace.h"
#include "ui/shell/page.h"

#include <QtCore/QElapsedTimer>

class QLabel;
class QPushButton;
class QStackedWidget;

namespace steelyard {

struct FlagAnswer;
class ElidedLabel;
class FlagList;
class LinesPanel;
class RosterPicture;

class WeekPage final : public Page {
    Q_OBJECT

public:
    explicit WeekPage(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] QString key() const override { return QStringLiteral("week"); }
    [[nodiscard]] QString title() const override { return tr("Week"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

protected:
    void showEvent(QShowEvent* event) override;

private:
    void refresh();
    void sayHeading(const AthleteReview* review);
    [[nodiscard]] QString noteFor(const AthleteReview& review) const;
    void readPlan(const Flag& flag);
    void decide(const FlagAnswer& answer);
    bool openLine();  // false: there is none to open
    void sayProgress();
    void markFine();
    [[nodiscard]] bool isPictureShown() const;
    void connectPicture();
    void putOnPaper(bool pdf);

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    ReviewPace m_pace;
    QElapsedTimer m_timer;
    std::optional<int> m_finished;  // when last counted
    bool m_stale = false;           // refreshed when it comes into sight

    ElidedLabel* m_name;
    QLabel* m_summary;
    QLabel* m_progress;
    QPushButton* m_fine;
    FlagList* m_flags;
    LinesPanel* m_panel;
    QStackedWidget* m_sides;   // the review of one lifter, and
    RosterPicture* m_picture;  // the whole roster
};

}  // namespace steelyard
