// Names of the file that the book doesn't have, and what becomes of each: a name of the book, or a new one.
//
//   model.setNames(preview.exercises, preview.athletes, choices.mapping);
//   if (model.apply(choices.mapping)) preview again
//   model.takeSuggestion(row, 0);  model.makeNew(row);  model.choose(row, {"Arm curl", ""});
//
// Exercises that are clearly like one of the library come matched; lifters only where case and accents alone differ. What the
// coach chose stays, whatever is guessed later.
#pragma once

#include "ui/pages/import/logbook_importer.h"

#include <QtCore/QAbstractTableModel>

#include <set>

namespace steelyard {

class NameMatchModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { InFile, RowCount, Becomes, How, ColumnCount };
    struct Match {
        NameInFile name;
        bool isAthlete = false;
        ExerciseName becomes;
        bool byHand = false;  // the coach chose
        [[nodiscard]] bool isNew() const { return becomes == name.name; }
    };

    using QAbstractTableModel::QAbstractTableModel;
    void clear();
    void setNames(const std::vector<NameInFile>& exercises, const std::vector<NameInFile>& athletes,
                  const LogbookMapping& mapping);
    // Puts the matches into a mapping; true when that changed it.
    bool apply(LogbookMapping& mapping) const;
    [[nodiscard]] const Match& at(int row) const { return m_matches[static_cast<std::size_t>(row)]; }
    [[nodiscard]] int suggested() const;  // matched by likeness, not by the coach
    [[nodiscard]] int made() const;       // new ones

    void takeSuggestion(int row, int which);
    void makeNew(int row);
    void choose(int row, const ExerciseName& name);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    // "Arm curl, cable, upright".
    [[nodiscard]] static QString fullName(const ExerciseName& name);

Q_SIGNALS:
    void matchChosen();

private:
    [[nodiscard]] Match matchOf(const NameInFile& name, bool isAthlete, const LogbookMapping& mapping) const;
    [[nodiscard]] QString text(const Match& match, int column) const;

    std::vector<Match> m_matches;
    std::set<std::pair<bool, ExerciseName>> m_byHand;
};

}  // namespace steelyard
