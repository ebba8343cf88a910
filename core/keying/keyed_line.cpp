#include "core/keying/keyed_line.h"

#include <algorithm>

namespace steelyard {
namespace {

std::optional<Load> loadOf(const KeyingRow& row)
{
    if (row.stored) return row.stored->set.load;
    return std::nullopt;
}

std::optional<Load> loadToKeep(const KeyingExercise& exercise, std::size_t at)
{
    const KeyingRow& row = exercise.rows[at];
    if (const auto own = loadOf(row)) return own;
    for (std::size_t before = at; before > 0; --before) {
        const KeyingRow& earlier = exercise.rows[before - 1];
        if (earlier.stored && earlier.stored->set.kind != SetKind::WarmUp) return loadOf(earlier);
    }
    if (row.planned) return row.planned->load;
    if (exercise.words.target.load) return exercise.words.target.load->load;
    return std::nullopt;
}

bool beginsLikeASet(QStringView line)
{
    const QStringView text = line.trimmed();
    if (text.isEmpty()) return true;
    const QChar first = text.front();
    return first.isDigit() || first == u'x' || first == u'X' || first == u'×' || first == u'*' || first == u'.'
           || first == u',';
}

}  // namespace

NotationReading readKeyedLine(QStringView line, const KeyingExercise& exercise, std::size_t at,
                              const KeyingSheet& sheet)
{
    const KeyingRow& row = exercise.rows[at];
    const NotationContext context{loadToKeep(exercise, at), sheet.unit, sheet.kind};
    const std::optional<SetEntry> base = row.stored ? std::optional(row.stored->set) : row.planned;
    const int number = row.stored ? row.stored->set.number : row.number;
    if (beginsLikeASet(line) || !base) {
        auto read = readSet(line, context);
        if (read) read->number = number;
        return read;
    }
    SetEntry bare;
    bare.load = base->load;
    bare.reps = base->reps;
    bare.kind = base->kind;
    const QString head = writeSet(bare, sheet.unit, sheet.kind) + u' ';
    auto read = readSet(head + line.toString(), context);
    if (!read) {
        NotationProblem problem = read.error();
        problem.at = std::max<qsizetype>(0, problem.at - head.size());
        problem.length = std::min(problem.length, line.size() - problem.at);
        return tl::unexpected(problem);
    }
    if (!read->effort) read->effort = base->effort;
    read->number = number;
    return read;
}

std::optional<SetEntry> keyedAsPlanned(const KeyingRow& row, Watched watched)
{
    if (!row.planned) return std::nullopt;
    SetEntry set = *row.planned;
    set.number = row.number;
    return withWatching(set, watched);
}

SetEntry withWatching(SetEntry set, Watched watched)
{
    if (watched == Watched::Fine && !set.off && set.marks.none()) set.off = 0;
    return set;
}

}  // namespace steelyard
