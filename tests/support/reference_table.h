// Values recorded from an outside program, from tests/data/reference. The first line of a file says which program and how.
//
//   const ReferenceTable nile = readReference("nile_local_level.csv");
//   nile.number(0, "filt_level")
//   readReference("rep_curve_nls.csv").value({"nls_rss"})     : the number in the last column of that row
//
// Commas between values, no quotes. A file or value that isn't there fails the test that asks.
#pragma once

#include <QtCore/QFile>
#include <QtCore/QStringList>

#include <gtest/gtest.h>

#include <vector>

namespace steelyard::testing_support {

struct ReferenceTable {
    QStringList columns;
    std::vector<QStringList> rows;

    [[nodiscard]] double number(std::size_t row, const char* column) const
    {
        const auto at = columns.indexOf(QString::fromLatin1(column));
        bool isNumber = false;
        const double found = rows.at(row).value(at).toDouble(&isNumber);
        EXPECT_TRUE(isNumber) << "row " << row << ", column " << column;
        return found;
    }

    [[nodiscard]] double value(const QStringList& labels) const
    {
        for (std::size_t row = 0; row < rows.size(); ++row)
            if (rows[row].mid(0, labels.size()) == labels) return number(row, columns.last().toLatin1().constData());
        ADD_FAILURE() << "no row " << labels.join(u',').toStdString();
        return 0;
    }
};

inline ReferenceTable readReference(const char* name)
{
    QFile file(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/reference/") + QString::fromLatin1(name));
    ReferenceTable table;
    if (!file.open(QIODevice::ReadOnly)) {
        ADD_FAILURE() << "missing: " << file.fileName().toStdString();
        return table;
    }
    for (const QString& line : QString::fromUtf8(file.readAll()).split(u'\n', Qt::SkipEmptyParts)) {
        if (line.startsWith(u'#')) continue;
        if (table.columns.isEmpty())
            table.columns = line.split(u',');
        else
            table.rows.push_back(line.split(u','));
    }
    EXPECT_FALSE(table.rows.empty()) << name;
    return table;
}

}  // namespace steelyard::testing_support
