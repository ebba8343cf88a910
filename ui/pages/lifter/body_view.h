// What scale and tape said: a line to type into, the entries, and a small chart of each.
//
// Every entry, correction and removal is one step of the history. Actions beside its own: lifter.add (to the line), lifter.edit
// and lifter.remove (the chosen entry). Keys in the line: Enter keeps it, Escape leaves a correction.
#pragma once

#include "ui/pages/lifter/body_model.h"
#include "ui/pages/lifter/panels_view.h"
#include "ui/shell/context.h"

class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QTableView;

namespace steelyard {

class Edit;

class BodyView final : public PanelsView {
    Q_OBJECT

public:
    explicit BodyView(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.body"); }
    [[nodiscard]] QString title() const override { return tr("Body"); }
    void show(const ShownLine& shown) override;
    void takeFocus() override;
    [[nodiscard]] bool showsSession() const override { return false; }
    void lookAt(int exposure) override { Q_UNUSED(exposure) }
    [[nodiscard]] bool can(const QString& action) const override;
    void perform(const QString& action) override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] QWidget* makeEntries();
    [[nodiscard]] QLayout* makeLine();
    [[nodiscard]] const BodyEntry* chosen() const;
    [[nodiscard]] std::optional<BodyPlace> typedPlace() const;
    void keep();
    void keepMass();
    void keepTape(BodyPlace place);
    void correct();
    void remove();
    void endCorrection();
    void store(std::unique_ptr<Edit> edit, const QString& words);
    void hint(const QString& text, bool isWrong);
    void hintAsUsual();

    UiContext m_context;
    ShownLine m_shown;
    std::optional<BodyEntry> m_instead;  // that is being corrected
    BodyModel* m_model;
    QDateEdit* m_date = nullptr;
    QComboBox* m_what = nullptr;
    QLineEdit* m_value = nullptr;
    QLabel* m_hint = nullptr;
    QTableView* m_entries = nullptr;
};

}  // namespace steelyard
