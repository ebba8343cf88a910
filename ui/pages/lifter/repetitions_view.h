// The repetitions of the chosen session one by one: the sets at the left, of the chosen set its repetitions as bars, how alike
// they are to each other and to those of like sets in words, a line to type them, and the way in for a measuring device's file.
//
// Actions beside its own: lifter.edit (type those of the chosen set), lifter.measured (a device's file for this session),
// lifter.remove (the repetitions of the chosen set).
// Everything that is recorded or removed is one step of the history.
#pragma once

#include "core/domain/repetition.h"
#include "ui/pages/lifter/lifter_view.h"
#include "ui/shell/context.h"

class QLabel;
class QListWidget;
class QStackedWidget;

namespace steelyard {

class RepetitionBars;
class RepetitionImport;
class RepetitionLine;

class RepetitionsView final : public LifterView {
    Q_OBJECT

public:
    explicit RepetitionsView(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.repetitions"); }
    [[nodiscard]] QString title() const override { return tr("Reps"); }
    void show(const ShownLine& shown) override;
    void takeFocus() override;
    [[nodiscard]] bool showsSession() const override { return false; }
    [[nodiscard]] bool can(const QString& action) const override;
    [[nodiscard]] bool isAskedFor(const QString& action) const override
    {
        return action == QStringLiteral("lifter.measured") || action == QStringLiteral("lifter.edit");
    }
    void perform(const QString& action) override;

    [[nodiscard]] RepetitionImport* import() const { return m_import; }
    [[nodiscard]] RepetitionLine* line() const { return m_line; }
    [[nodiscard]] QString words() const;

private:
    [[nodiscard]] QWidget* makeBoard();
    [[nodiscard]] const std::vector<SetRepetitions>& all() const;  // of the lifter, by set
    [[nodiscard]] const Exposure* session() const;
    [[nodiscard]] const LoggedSet* chosen() const;
    void stepSession(int by);
    void fillSets();
    void showSet();
    void typeThem();
    void askForFile();
    void readFile(const QString& path);
    void record(const std::vector<SetRepetitions>& sets);
    void say(const QString& text);

    UiContext m_context;
    ShownLine m_shown;
    QStackedWidget* m_stack = nullptr;
    QLabel* m_heading = nullptr;
    QListWidget* m_sets = nullptr;
    RepetitionBars* m_bars = nullptr;
    RepetitionLine* m_line = nullptr;
    QLabel* m_words = nullptr;
    QLabel* m_hint = nullptr;
    RepetitionImport* m_import = nullptr;
};

}  // namespace steelyard
