// One template for many lifters, in the page: which template, for whom, from when; then what each would get and what differs from
// the template; then all blocks in one step of the history.
//
//   many->open(start);                                 // templates and lifters as the book has them now
//
// Each lifter's block is fitted in the background. // Nothing is written before it was looked at; a change of the question takes the answer away. Keys: Enter looks, Ctrl+Enter writes,
// Space ticks a lifter, Escape leaves.
#pragma once

#include "core/book/template_fits.h"
#include "ui/pages/block/beside_week.h"

class QComboBox;
class QDateEdit;
class QLineEdit;
class QListWidget;
class QPushButton;
class QTreeWidget;

namespace steelyard {

class BlockForMany final : public BesideWeek {
    Q_OBJECT

public:
    explicit BlockForMany(const UiContext& context, QWidget* parent = nullptr);
    void open(QDate start);
    void takeFocus() override;
    [[nodiscard]] QListWidget* lifters() const { return m_lifters; }
    [[nodiscard]] QTreeWidget* answer() const { return m_answer; }

protected:
    void goOn(bool withControl) override;

private:
    void build();
    void show(std::vector<LifterFit> fits);
    [[nodiscard]] std::vector<Id<Athlete>> ticked() const;
    void look();
    void write();
    void forgetAnswer();
    void tickAll();

    std::vector<Row<BlockTemplate>> m_templates;
    std::vector<Id<Athlete>> m_ids;  // of the lifters, as they are listed
    std::vector<LifterFit> m_fits;
    QComboBox* m_template;
    QLineEdit* m_name;
    QDateEdit* m_start;
    QListWidget* m_lifters;
    QTreeWidget* m_answer;
    QPushButton* m_look;
    QPushButton* m_write;
};

}  // namespace steelyard
