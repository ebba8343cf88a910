// How a file is written: encoding, separator, decimals, order of dates, unit, header, and whose rows they are when no column
// says. Shows a mapping and changes it.
#pragma once

#include "core/exchange/logbook_mapping.h"

#include <QtWidgets/QWidget>

class QCheckBox;
class QComboBox;
class QLabel;

namespace steelyard {

class FileOptions final : public QWidget {
    Q_OBJECT

public:
    explicit FileOptions(QWidget* parent = nullptr);
    void setAthletes(const QStringList& names);
    // `sets`: those that the guess found side by side; ticking the box brings them back.
    void fill(const LogbookMapping& mapping, const std::vector<ColumnNames>& sets);
    void apply(LogbookMapping& mapping) const;

Q_SIGNALS:
    void changed();

private:
    QComboBox* add(const QString& name, const std::vector<std::pair<QString, QVariant>>& items);

    bool m_filling = false;
    std::vector<ColumnNames> m_guessedSets;
    QComboBox* m_encoding;
    QComboBox* m_separator;
    QComboBox* m_decimal;
    QComboBox* m_dates;
    QComboBox* m_unit;
    QCheckBox* m_header;
    QCheckBox* m_sets;
    QLabel* m_athleteLabel;
    QComboBox* m_athlete;
};

}  // namespace steelyard
