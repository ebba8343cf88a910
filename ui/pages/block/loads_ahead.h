// What the record says of the loads that are still to come, reckoned again by itself: after a session came into the book, after the
// block or a number of the rules was changed, and when a block is opened. It never writes; it says in one line how many
// slots would be written otherwise today, and nothing where none would.
//
//   ahead->look(athlete, shown);                 // soon, in the background
//   ahead->at(place)->load.why                   // once it is reckoned
//
// Only what is written counts: a slot without a load takes it from the record anyway. Several changes in a row are one reckoning.
#pragma once

#include "core/planning/block_forecast.h"
#include "ui/jobs/job.h"
#include "ui/pages/block/block_shown.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

struct BlockOutlook;

class LoadsAhead final : public QWidget {
    Q_OBJECT

public:
    explicit LoadsAhead(const UiContext& context, QWidget* parent = nullptr);
    ~LoadsAhead() override;
    void look(Id<Athlete> athlete, BlockShownPtr shown);
    void forget();
    [[nodiscard]] bool isSettled() const { return !m_soon.isActive() && !m_job.isRunning(); }
    // Empty: nothing would be written otherwise.
    [[nodiscard]] QString words() const;
    // Null: not reckoned yet, or nothing is said of that slot.
    [[nodiscard]] const SlotForecast* at(const PlanPlace& place) const { return m_forecast.at(place); }

Q_SIGNALS:
    void reckoned();

private:
    void reckon();
    void show(const BlockOutlook& outlook, QDate lastSession);

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    BlockShownPtr m_shown;
    BlockForecast m_forecast;
    QTimer m_soon;
    JobHandle m_job;
    int m_asked = 0;
    QLabel* m_words;
};

}  // namespace steelyard
