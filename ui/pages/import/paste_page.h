// Sets as text: typed or pasted on the left, read line by line on the right, brought in as one edit that can be undone. How the
// lines are written stands in core/exchange/pasted_log.h.
//
//   auto* page = new PastePage(context, chosenLifter, parent);
#pragma once

#include "core/exchange/pasted_log.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QDateEdit;
class QLabel;
class QPlainTextEdit;
class QPushButton;

namespace steelyard {

class PastePage final : public QWidget {
    Q_OBJECT

public:
    PastePage(const UiContext& context, std::optional<Id<Athlete>> athlete, QWidget* parent = nullptr);
    ~PastePage() override;
    void takeFocus();
    void setText(const QString& text);
    [[nodiscard]] const PastedLog& log() const { return m_log; }

Q_SIGNALS:
    void imported(int sets);
    void closed();

private:
    [[nodiscard]] QLayout* makeTop(std::optional<Id<Athlete>> athlete);
    [[nodiscard]] QLayout* makeTexts();
    [[nodiscard]] QLayout* makeBottom();
    void read();
    void showReading();
    void markProblems();
    void sayLine();
    void bringIn();
    void bringInNow(const ParsedLogbook& log);
    [[nodiscard]] QString reading(const PastedLine& line) const;

    UiContext m_context;
    Library m_library;
    std::vector<PastedBy> m_athletes;
    PastedLog m_log;
    JobHandle m_job;
    QComboBox* m_athlete = nullptr;
    QDateEdit* m_date = nullptr;
    QComboBox* m_order = nullptr;
    QPlainTextEdit* m_text = nullptr;
    QPlainTextEdit* m_reading = nullptr;
    QLabel* m_said = nullptr;
    QPushButton* m_import = nullptr;
};

}  // namespace steelyard
