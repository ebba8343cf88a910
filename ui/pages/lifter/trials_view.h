// A lifter's trials: the list of them, running ones first, and the chosen one's panel; the form that designs a new one; and, on request,
// how often each kind of arm was preferred over the roster.
//
// Everything is read in the background after the lifter's record has come. Results of a running trial are hidden again when the view is
// left. Actions beside its own: lifter.trial.new (asked for from any view: a trial of the line in sight), lifter.why, and lifter.trial.*
// for the chosen trial and session.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/lifter_view.h"
#include "ui/pages/lifter/trial_deeds.h"
#include "ui/shell/context.h"

#include <set>

class QLabel;
class QListWidget;
class QScrollArea;
class QStackedWidget;

namespace steelyard {

class AskedLine;
class TrialForm;
class TrialPanel;
class TrialWins;
struct ProposedTrial;

class TrialsView final : public LifterView {
    Q_OBJECT

public:
    explicit TrialsView(const UiContext& context, QWidget* parent = nullptr);
    ~TrialsView() override;

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.trials"); }
    [[nodiscard]] QString title() const override { return tr("Trials"); }
    void show(const ShownLine& shown) override;
    void leave() override;
    void takeFocus() override;
    [[nodiscard]] bool showsSession() const override { return false; }
    [[nodiscard]] bool can(const QString& action) const override;
    [[nodiscard]] bool isAskedFor(const QString& action) const override;
    void setReason(const QString& rule) override { m_rule = rule; }
    void perform(const QString& action) override;
    [[nodiscard]] ChartTable table() const override;
    [[nodiscard]] QWidget* drawing() const override;

    [[nodiscard]] TrialPanel* panel() const { return m_panel; }
    [[nodiscard]] TrialForm* form() const { return m_form; }
    [[nodiscard]] bool isDesigning() const;
    // The trial that is looked at; null: none.
    [[nodiscard]] const ShownTrial* chosen() const;

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void read();
    void take(Result<TrialsReading> answer);
    void fillList();
    void showChosen();
    void say(const QString& text);
    void openForm();
    void leaveForm();
    void start(const ProposedTrial& made);
    void look();
    void turnWins();
    void ask(const QString& label, const QString& text, std::function<TrialDeed(const QString&)> deed,
             const QString& words);
    void askOfTrial(const QString& action);
    void askOfSession(const QString& action);
    // What went wrong; empty: it is in the book.
    [[nodiscard]] QString store(TrialDeed deed, const QString& words);
    [[nodiscard]] bool isRevealed(const ShownTrial& shown) const;
    [[nodiscard]] TrialAt at() const { return {*chosen(), m_reading->record, m_shown.today}; }
    [[nodiscard]] bool isInFront(const QWidget* widget) const;
    void goToKeying(int day);

    UiContext m_context;
    ShownLine m_shown;
    std::shared_ptr<const TrialsReading> m_reading;
    std::optional<Id<Trial>> m_wanted;  // chosen, kept across reads
    std::set<Id<Trial>> m_looked;       // in this sitting
    QString m_rule;                     // of the flag that asked for a trial
    bool m_wantsForm = false;           // as soon as the trials are read
    JobHandle m_job;
    int m_asked = 0;  // the newest read; answers to earlier ones are dropped

    QListWidget* m_list = nullptr;
    QStackedWidget* m_states = nullptr;
    QLabel* m_words = nullptr;
    QScrollArea* m_panelArea = nullptr;
    TrialPanel* m_panel = nullptr;
    TrialForm* m_form = nullptr;
    TrialWins* m_wins = nullptr;
    AskedLine* m_question = nullptr;
    QLabel* m_problem = nullptr;
};

}  // namespace steelyard
