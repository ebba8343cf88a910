// A measuring device's file, before its repetitions go into sets: which column is which, in which units, what would go where,
// and what is wrong with which row. No dialog: it stands in place of the view until it is taken over or left.
//
//   import->open(table, target, kept);                                   // columns and units are guessed, and can be changed
//   connect(import, &RepetitionImport::wanted, ...);                      // the sets with their repetitions
//
// Repetitions under the standard's least share of the full travel are marked short before they are shown.
// Keys: Enter takes over, Escape leaves.
#pragma once

#include "core/analysis/repetition_travel.h"
#include "core/exchange/repetition_match.h"

#include <QtWidgets/QWidget>

#include <array>

class QComboBox;
class QLabel;
class QPlainTextEdit;
class QPushButton;

namespace steelyard {

// Where the file would go, as it was when it was opened.
struct RepetitionImportTarget {
    Exposure session;
    Id<SetEntry> chosen;
    QString athlete;
    QString exercise;
    std::vector<std::vector<Repetition>> before;  // of the line, oldest first: what the full travel is taken from
    std::optional<int> leastPercent;
};

class RepetitionImport final : public QWidget {
    Q_OBJECT

public:
    explicit RepetitionImport(QWidget* parent = nullptr);
    void open(RepetitionTable table, const RepetitionImportTarget& target);
    [[nodiscard]] QString preview() const;
    [[nodiscard]] QComboBox* columnBox(RepetitionColumn column) const
    {
        return m_columns[static_cast<std::size_t>(column)];
    }

Q_SIGNALS:
    void wanted(const std::vector<steelyard::SetRepetitions>& sets);
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeBoxes();
    [[nodiscard]] RepetitionMapping mapping() const;
    void look();
    [[nodiscard]] std::vector<Repetition> judged(std::vector<Repetition> repetitions) const;
    [[nodiscard]] QString matchWords(const RepetitionMatch& match, const RepetitionReading& reading) const;
    void take();

    RepetitionTable m_table;
    std::optional<RepetitionImportTarget> m_target;
    std::optional<FullTravel> m_full;
    std::vector<SetRepetitions> m_ready;
    std::array<QComboBox*, kRepetitionColumnCount> m_columns{};
    QComboBox* m_length = nullptr;
    QComboBox* m_time = nullptr;
    QComboBox* m_end = nullptr;  // where a short repetition is short, when the file has no heights
    QPlainTextEdit* m_preview = nullptr;
    QPushButton* m_take = nullptr;
};

}  // namespace steelyard
