// A question with one line to type, in place instead of a dialog. Enter answers, Escape leaves. What is wrong with an answer is
// said beside it, and the line stays.
//
//   line->ask({tr("Name of the filter"), before}, [this](const QString& name) -> QString { ... return {}; });
#pragma once

#include <QtWidgets/QWidget>

#include <functional>

class QCompleter;
class QLabel;
class QLineEdit;

namespace steelyard {

class AskedLine final : public QWidget {
    Q_OBJECT

public:
    struct Question {
        QString label;
        QString text = {};                // to begin with
        QCompleter* completer = nullptr;  // taken over
    };
    // What is wrong with the answer; empty: it was taken, and the line goes.
    using Answer = std::function<QString(const QString&)>;

    explicit AskedLine(QWidget* parent = nullptr);
    void ask(const Question& question, Answer answer);

Q_SIGNALS:
    // Answered or not: the keyboard can go back to the work.
    void left();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void answer();
    void leave();

    QLabel* m_label;
    QLineEdit* m_edit;
    QLabel* m_problem;
    Answer m_answer;
};

}  // namespace steelyard
