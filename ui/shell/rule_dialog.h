// What is flagged, and from when: every rule of the review explains itself, with its thresholds, laid out from the rule's own
// description. A change is stored at once, as an edit like any other; the review follows in the background.
#pragma once

#include "core/book/book.h"
#include "core/flags/flag_rule.h"

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
    void showRule(int row);
    [[nodiscard]] QDoubleSpinBox* makeField(const FlagRule& rule, const RuleParameter& parameter, QWidget* parent);
    void store(const FlagRule& rule, const RuleParameter& parameter, double value);
    void resetRule();
    void sayChanged();
    [[nodiscard]] bool isChanged(const FlagRule& rule) const;

    Book& m_book;
    RuleSettings m_settings;
    QListWidget* m_rules;
    QScrollArea* m_detail;
    QPushButton* m_reset;
};

}  // namespace steelyard
