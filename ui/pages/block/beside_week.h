// What stands in place of the week for a while: an answer that is looked at before anything is written. It says where things stand in
// one line, Enter goes on, Escape leaves.
//
//   class BlockLoads final : public BesideWeek { … void goOn(bool write) override; };
//   connect(loads, &BesideWeek::left, …);              // with what was done, for the status line; empty: nothing
#pragma once

#include "core/domain/block.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;
class QTreeWidget;

namespace steelyard {

class BesideWeek : public QWidget {
    Q_OBJECT

public:
    explicit BesideWeek(const UiContext& context, QWidget* parent = nullptr);
    ~BesideWeek() override;
    virtual void takeFocus() = 0;
    [[nodiscard]] bool isSettled() const { return !m_job.isRunning(); }
    [[nodiscard]] QString words() const;
    // Nobody waits for it any longer: what is still being worked out comes to nothing. Leaving does so by itself.
    void dropAnswer();

Q_SIGNALS:
    void left(const QString& done);

protected:
    // Enter, or with Ctrl.
    virtual void goOn(bool withControl) = 0;
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void say(const QString& text, bool isProblem = false);
    [[nodiscard]] const UiContext& context() const { return m_context; }
    // The whole text of a column for the row where the cursor is, wrapped; a sentence that spans its row whole. For below the tree.
    [[nodiscard]] QLabel* wholeText(QTreeWidget* tree, int column);
    // The first column takes what it needs of half the width, the last one the rest.
    static void shareWidth(QTreeWidget* tree);
    [[nodiscard]] QLabel* wordsLabel() const { return m_words; }

    // The answer of an earlier question is dropped.
    template <class Work, class Done>
    void ask(const QString& title, Work work, Done done)
    {
        m_job.cancel();
        m_job = m_context.jobs.run(this, title, std::move(work),
                                   [this, done = std::move(done), asked = ++m_asked](auto answer) {
                                       if (asked != m_asked) return;
                                       if (!answer) return say(answer.error().what, true);
                                       done(*std::move(answer));
                                   });
    }
    // Otherwise that is said: what was thought out on an older plan would put it back.
    [[nodiscard]] bool isAsInBook(Id<Athlete> athlete, const Row<Block>& block);

private:
    UiContext m_context;
    JobHandle m_job;
    int m_asked = 0;
    QLabel* m_words;
};

}  // namespace steelyard
