// The flags of one lifter, worst first, one of them unfolded, with the bar to answer it; below them what was answered, folded.
//
//   list->showReview(review, writable, tr("Nothing asks for a decision here."));
//   list->choose(0);   list->openBar(DecisionKind::Watch, today);
//   connect(list, &FlagList::decided, ...);
//
// An open bar stays, with what was typed into it, when the review is shown anew and the flag it answers is still there.
#pragma once

#include "core/flags/athlete_review.h"
#include "ui/pages/week/decide_bar.h"

#include <QtWidgets/QScrollArea>

#include <span>

class QVBoxLayout;

namespace steelyard {

class FlagView;

class FlagList final : public QScrollArea {
    Q_OBJECT

public:
    explicit FlagList(QWidget* parent = nullptr);

    // `note` stands where no flag is open; empty: nothing does.
    void showReview(std::optional<AthleteReview> review, bool writable, const QString& note);
    void choose(int index);  // held within the list
    void chooseNext(int by) { choose(m_chosen + by); }
    void forgetChoice();  // another lifter comes: their first flag
    void toggleAnswered();
    [[nodiscard]] const Flag* chosen() const;             // nullptr: none is open
    [[nodiscard]] QString about(const Flag& flag) const;  // the line, or the lifter's whole training

    // Under the chosen flag.
    void openBar(DecisionKind kind, QDate today);
    void closeBar();
    [[nodiscard]] DecideBar& bar() { return *m_bar; }
    [[nodiscard]] bool isBarOpen() const { return m_bar->isVisibleTo(m_bar->parentWidget()); }
    // Counts the openings: what was read for an earlier one comes too late.
    [[nodiscard]] int opening() const { return m_opening; }
    void bringBarIntoSight();

Q_SIGNALS:
    void flagChosen();
    void actionRequested(const QString& action);

private:
    void rebuild();
    [[nodiscard]] std::span<const Flag> flags() const;
    void addFlags();
    void addAnswered();
    void addNote(const QString& text);
    void placeBar();
    void keepBarOpen(const Flag& answering, QWidget* keys);
    void bringIntoSight(QWidget* widget);

    std::optional<AthleteReview> m_review;  // absent: nobody is shown
    QString m_note;
    bool m_writable = false;
    int m_chosen = -1;
    int m_opening = 0;
    bool m_showAnswered = false;
    std::vector<FlagView*> m_views;
    QWidget* m_list = nullptr;
    QVBoxLayout* m_column = nullptr;
    DecideBar* m_bar;
};

}  // namespace steelyard
