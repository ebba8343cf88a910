// Which column of the file is which of ours: a row for each of ours, the needed ones first, with why it was guessed.
#pragma once

#include "core/exchange/logbook_guess.h"

#include <QtWidgets/QTableWidget>

namespace steelyard {

class ColumnTable final : public QTableWidget {
    Q_OBJECT

public:
    explicit ColumnTable(QWidget* parent = nullptr);
    void fill(const LogbookMapping& mapping, const QStringList& header, const std::map<QString, ColumnHint>& hints);
    void apply(LogbookMapping& mapping) const;
    // Needed columns that neither the file nor a fixed value gives.
    [[nodiscard]] static QStringList missing(const LogbookMapping& mapping);

Q_SIGNALS:
    void changed();

private:
    void addRow(const QString& column, const LogbookMapping& mapping, const QStringList& header,
                const std::map<QString, ColumnHint>& hints);
    bool m_filling = false;
    QStringList m_ours;
};

}  // namespace steelyard
