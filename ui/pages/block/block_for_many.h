// One template for many lifters, in the page: which template, for whom, from when; then what each would get and what differs from
// the template; then all blocks in one step of the history.
//
//   many->open(start);                                 // templates and lifters as the book has them now
//   connect(many, &BlockForMany::left, …);             // with what was done, for the status line; empty: nothing
//
// Each lifter's block is fitted in the background. // Nothing is written before it was looked at; a change of the question takes the answer away. Keys: Enter looks, Ctrl+Enter writes,
// Space ticks a lifter, Escape leaves.
#pragma once

#include "core/book/template_fits.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QTreeWidget;

namespace steelyard {

class BlockForMany final : public QWidget {
    Q_OBJECT

public:
    explicit BlockForMany(const UiContext& context, QWidget* parent = nullptr);
    ~BlockForMany() override;
    void open(QDate start);
    void takeFocus();
    [[nodiscard]] bool isSettled() const { return !m_job.isRunning(); }
    [[nodiscard]] QListWidget* lifters() const { return m_lifters; }
    [[nodiscard]] QTreeWidget* answer() const { return m_answer; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void left(const QString& done);

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void say(const QString& text, bool isProblem = false);
    void show(std::vector<LifterFit> fits);
    [[nodiscard]] std::vector<Id<Athlete>> ticked() const;
    void look();
    void write();
    void forgetAnswer();
    void tickAll();

    UiContext m_context;
    std::vector<Row<BlockTemplate>> m_templates;
    std::vector<Id<Athlete>> m_ids;  // of the lifters, as they are listed
    std::vector<LifterFit> m_fits;
    JobHandle m_job;
    int m_asked = 0;  // answers to earlier questions are dropped
    QComboBox* m_template;
    QLineEdit* m_name;
    QDateEdit* m_start;
    QListWidget* m_lifters;
    QTreeWidget* m_answer;
    QLabel* m_words;
    QPushButton* m_look;
    QPushButton* m_write;
};

}  // namespace steelyard
