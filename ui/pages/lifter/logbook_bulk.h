// Changes many sets at once, in place: what is to be done, with which sets, where to; below it a preview of every line or day
// before and after, and what is in the way. Enter applies it as one step of the history, Escape leaves.
//
//   bulk->open({log, library, today, line, day});
//
// Keys: Tab goes through the fields. The log is the whole one, days to come included. It stores nothing itself: `store` does,
// and answers what went wrong (empty: nothing).
#pragma once

#include "core/edits/bulk_edits.h"

#include <QtWidgets/QWidget>

#include <functional>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QGridLayout;
class QLabel;
class QLineEdit;
class QSpinBox;
class QTableWidget;

namespace steelyard {

struct BulkWords;

class LogbookBulk final : public QWidget {
    Q_OBJECT

public:
    enum Task { Split, Move, Shift, Rename };

    struct Source {
        AthleteLog log;
        Library library;
        QDate today;
        std::optional<Id<LiftLine>> line;  // to begin with
        QDate day;                         // to begin with
    };
    using PlanRename = std::function<Result<RenamePlan>(const Library&, const RenameWish&)>;
    using Store = std::function<QString(std::unique_ptr<Edit>, const QString& words)>;

    // What comes before: a backup. It calls on when it is done.
    using Before = std::function<void(std::function<void()> then)>;

    LogbookBulk(PlanRename planRename, Store store, Before before, QWidget* parent = nullptr);
    void open(Source source);

Q_SIGNALS:
    void left();  // applied or not

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void addField(const QString& label, QWidget* field, std::initializer_list<Task> tasks);
    void fillLines();
    void fillTargets();
    void fillStandards();
    void fillRenamed();
    void showTask();
    void refresh();
    void showWords(const BulkWords& words);
    void apply();
    void applyNow();
    [[nodiscard]] bool handleKey(QObject* watched, QEvent* event);
    [[nodiscard]] Task task() const;
    [[nodiscard]] const LineRecord* line() const;
    [[nodiscard]] MoveWish moveWish() const;
    [[nodiscard]] RenameWish renameWish() const;

    struct Field {
        QLabel* label;
        QWidget* widget;
        std::vector<Task> tasks;
    };

    PlanRename m_planRename;
    Store m_store;
    Before m_before;
    std::optional<Source> m_source;
    std::unique_ptr<Edit> m_ready;  // what Enter does; null: it can't be done
    QString m_readyWords;
    bool m_filling = false;
    std::vector<Field> m_fields;
    QGridLayout* m_form;
    QComboBox* m_task;
    QComboBox* m_line;
    QDateEdit* m_from;
    QDateEdit* m_to;
    QSpinBox* m_days;
    QComboBox* m_variant;
    QComboBox* m_grip;
    QComboBox* m_standard;
    QComboBox* m_renamed;
    QLineEdit* m_name;
    QCheckBox* m_plan;
    QLabel* m_says;
    QLabel* m_problems;
    QTableWidget* m_preview;
};

}  // namespace steelyard
