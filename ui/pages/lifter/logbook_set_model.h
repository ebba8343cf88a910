// One session as rows: for every lift line its name, its sets as they are typed on one line and in words, a row to type another
// set into, and its rating. What is typed into the middle column is checked and asked for; the book answers by a new session.
//
//   connect(model, &LogbookSetModel::changeWanted, this, [&](Id<SetEntry> id, const SetEntry& set) { ... changeSet ... });
//
// While a row is being typed its words say how it is read so far, or what is wrong (setDraft). A line that cannot be read changes
// nothing. Notations: core/keying/set_notation.h, rating_notation.h.
#pragma once

#include "core/keying/rating_notation.h"
#include "ui/pages/lifter/lifter_reading.h"
#include "ui/pages/lifter/logbook_days.h"

#include <QtCore/QAbstractTableModel>

#include <memory>

namespace steelyard {

class LogbookSetModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Number, Typed, Words, ColumnCount };
    enum class Kind { Heading, Set, Add, Rating };

    struct ShownSession {
        std::shared_ptr<const LifterReading> lifter;
        const LogbookDay* day = nullptr;       // of the lifter's log; null: a day without sets
        std::optional<std::size_t> line = {};  // can be trained that day though it wasn't
        bool editable = false;
    };

    using QAbstractTableModel::QAbstractTableModel;
    void setSession(ShownSession session);
    [[nodiscard]] Kind kindAt(int row) const;
    [[nodiscard]] const LoggedSet* setAt(int row) const;  // null: no set
    [[nodiscard]] const LineRecord* lineAt(int row) const;
    [[nodiscard]] int rowOf(Id<SetEntry> set) const;              // -1: not here
    [[nodiscard]] int rowOf(Id<LiftLine> line, Kind kind) const;  // -1: not here
    // What is wrong with a text for a row; nothing: it can be read, or leaves the row as it is.
    [[nodiscard]] std::optional<NotationProblem> problemOf(int row, const QString& text) const;
    void setDraft(int row, const QString& text);
    void clearDraft();
    [[nodiscard]] bool isDraftWrong() const { return m_draftRow >= 0 && problemOf(m_draftRow, m_draft).has_value(); }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    void changeWanted(steelyard::Id<steelyard::SetEntry> id, const steelyard::SetEntry& set);
    void addWanted(const steelyard::LiftLine& line, const steelyard::SetEntry& set);
    void refused(const QString& why);
    void rateWanted(const steelyard::LiftLine& line, const steelyard::ExerciseRating& rating);

private:
    struct SessionRow {
        Kind kind = Kind::Heading;
        std::size_t line = 0;
        const Exposure* exposure = nullptr;  // null: not trained
        const LoggedSet* set = nullptr;
    };

    void addRows(std::size_t line, const Exposure* exposure);
    [[nodiscard]] const LineRecord& record(const SessionRow& row) const
    {
        return m_session.lifter->log.lines[row.line];
    }
    [[nodiscard]] NotationContext contextOf(const SessionRow& row) const;
    [[nodiscard]] NotationReading readRow(const SessionRow& row, QStringView text) const;
    [[nodiscard]] bool keepsDiscomfort() const;
    [[nodiscard]] QString typedText(const SessionRow& row) const;
    [[nodiscard]] QString words(int row) const;
    [[nodiscard]] QString draftWords(const SessionRow& row) const;
    [[nodiscard]] bool refuse(const NotationProblem& problem);
    [[nodiscard]] bool storeSet(const SessionRow& row, const QString& text);
    [[nodiscard]] bool storeRating(const SessionRow& row, const QString& text);

    ShownSession m_session;
    std::vector<SessionRow> m_rows;
    int m_draftRow = -1;
    QString m_draft;
};

// "felt 8 of 10, gave out: the target, elbow: discomfort 2 of 10, the day after: soreness 4"; empty: not rated.
[[nodiscard]] QString ratingInWords(const ExerciseRating& rating, const AthleteLog& log);

}  // namespace steelyard
