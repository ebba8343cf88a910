// Starting a block, in the page: from what, its name, first day, weeks, training days, days off. Enter makes it, Escape leaves.
//
//   start->offer({athlete, name, sources, usualStart(blocks, today)}, intro);
//   connect(start, &BlockStart::made, …)
//
// What can't be is said in the form.
#pragma once

#include "ui/pages/block/block_sources.h"

#include <QtWidgets/QWidget>

#include <array>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace steelyard {

class BlockStart final : public QWidget {
    Q_OBJECT

public:
    struct Offer {
        Id<Athlete> athlete;
        std::vector<BlockSource> sources;
        QDate start;
        QString name;
        QString intro;  // what this page is for, where there is no block yet
        bool canLeave = false;
    };

    explicit BlockStart(QWidget* parent = nullptr);
    void offer(Offer offer);
    void takeFocus();
    void say(const QString& problem);

Q_SIGNALS:
    void made(const steelyard::Block& block);
    void left();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void showSource();
    void make();
    [[nodiscard]] std::vector<int> weekdays() const;

    std::optional<Offer> m_offer;
    QLabel* m_intro;
    QComboBox* m_source;
    QLineEdit* m_name;
    QDateEdit* m_start;
    QSpinBox* m_weeks;
    QCheckBox* m_deload;
    std::array<QCheckBox*, kDaysOfPlanWeek> m_weekdays{};
    QLineEdit* m_daysOff;
    QLabel* m_problem;
    QPushButton* m_make;
    QPushButton* m_leave;
};

}  // namespace steelyard
