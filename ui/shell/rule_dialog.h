// What is flagged, and how loads go on: every rule explains itself, with its numbers, laid out from the rule's own description.
// A change is stored at once, as an edit like any other; the review and the loads of blocks follow in the background.
#pragma once

#include "core/book/book.h"
#include "ui/shell/adjustable_rules.h"

#include <QtWidgets/QDialog>

class QDoubleSpinBox;
class QLabel;
class QListWidget;
class QPushButton;
class QScrollArea;

namespace steelyard {

class RuleDialog : public QDialog {
    Q_OBJECT

public:
    RuleDialog(Book& book, QWidget* parent);

Q_SIGNALS:
    void failed(const steelyard::Error& error);

private:
    void fillList();
    void showRule();
    [[nodiscard]] const RuleEntry& chosen() const;
    [[nodiscard]] QDoubleSpinBox* makeField(const AdjustableRule& rule, const RuleParameter& parameter,
                                            QWidget* parent);
    void store(const AdjustableRule& rule, const RuleParameter& parameter, double value);
    void resetRule();
    void sayChanged();
    [[nodiscard]] bool isChanged(const AdjustableRule& rule) const;

    Book& m_book;
    std::vector<RuleEntry> m_entries;
    RuleSettings m_settings;
    QListWidget* m_rules;
    QScrollArea* m_detail;
    QPushButton* m_reset;
};

}  // namespace steelyard
