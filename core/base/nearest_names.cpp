#include "core/base/nearest_names.h"

#include "core/base/text.h"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <vector>

namespace steelyard {
namespace {

constexpr qsizetype kMostCompared = 500;  // letters; whatever is pasted in, the answer comes at once

}  // namespace

int editDistance(QStringView a, QStringView b)
{
    std::vector<int> row(static_cast<std::size_t>(b.size()) + 1);
    std::iota(row.begin(), row.end(), 0);
    for (qsizetype i = 0; i < a.size(); ++i) {
        int diagonal = row[0];
        row[0] = static_cast<int>(i) + 1;
        for (std::size_t j = 1; j < row.size(); ++j) {
            const int change = diagonal + (a[i] == b[static_cast<qsizetype>(j) - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({change, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row.back();
}

QStringList nearestFirst(const QStringList& names, QStringView typed)
{
    struct Ranked {
        bool elsewhere = false;
        int distance = 0;
        QString name;
    };
    const QString wanted = slug(typed.first(std::min(typed.size(), kMostCompared)));
    std::vector<Ranked> ranked;
    for (const QString& name : names) {
        const QString known = slug(name);
        ranked.push_back({!known.contains(wanted), editDistance(known, wanted), name});
    }
    std::ranges::sort(ranked, {}, [](const Ranked& one) { return std::tie(one.elsewhere, one.distance, one.name); });
    QStringList sorted;
    for (Ranked& one : ranked) sorted.push_back(std::move(one.name));
    return sorted;
}

}  // namespace steelyard
