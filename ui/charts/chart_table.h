// The data of a chart as rows, for reading aloud, for showing and for copying.
//
//   clipboard->setText(toTabSeparated(chart.spec().table));
#pragma once

#include <QtCore/QStringList>

#include <vector>

namespace steelyard {

struct ChartTable {
    QStringList header;
    std::vector<QStringList> rows;
    friend bool operator==(const ChartTable&, const ChartTable&) = default;
};

// Tab-separated with a header line; line breaks and tabs in cells become spaces.
[[nodiscard]] QString toTabSeparated(const ChartTable& table);

}  // namespace steelyard
