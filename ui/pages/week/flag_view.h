// One flag of the review. Folded: how soon, what about and the sentence. Unfolded: the evidence, what could be done, and
// the keys to answer it with. An answered flag shows the answer instead.
#pragma once

#include "core/flags/athlete_review.h"

#include <QtWidgets/QWidget>

class QBoxLayout;
class QGridLayout;
class QLabel;

namespace steelyard {

class FlagView : public QWidget {
    Q_OBJECT

public:
    // `about` names the line, or the lifter's whole training.
    FlagView(const Flag& flag, const QString& about, QWidget* parent = nullptr);
    FlagView(const AnsweredFlag& answered, const QString& about, QWidget* parent = nullptr);

    // The flag was answered before and is back: the answer, and what the flag said then, beside what it says now.
    void setEarlier(const Decision& earlier);
    void setUnfolded(bool unfolded);
    // Where the page puts its decide bar while this flag is answered.
    [[nodiscard]] QBoxLayout* barPlace() const { return m_barPlace; }
    void setAnswering(bool answering);
    void setWritable(bool writable);

Q_SIGNALS:
    void chosen();
    void actionRequested(const QString& action);

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void build(const Flag& flag, const QString& about);
    void fillEvidence(QGridLayout* grid, const Flag& flag);
    QWidget* makeAnswerButtons(bool hasLine);

    QLabel* m_sentence = nullptr;
    QWidget* m_detail = nullptr;
    QLabel* m_earlier = nullptr;  // first of the detail
    QWidget* m_buttons = nullptr;
    QBoxLayout* m_barPlace = nullptr;
    bool m_unfolded = false;
};

}  // namespace steelyard
