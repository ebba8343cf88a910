#include "core/storage/repetition_repository.h"

#include "core/storage/set_json.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

struct RepetitionRepositoryText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionRepositoryText)
};

}  // namespace

Repetition readRepetition(const Statement& st, int first)
{
    Repetition one;
    one.number = st.integer(first);
    one.source = st.choice(first + 1, RepetitionSource::Typed);
    one.travelMm = st.maybeDecimal(first + 2);
    one.lowMm = st.maybeDecimal(first + 3);
    one.highMm = st.maybeDecimal(first + 4);
    one.liftingSeconds = st.maybeDecimal(first + 5);
    one.loweringSeconds = st.maybeDecimal(first + 6);
    if (!st.isNull(first + 7)) one.marks = RepetitionMarks::parse(st.bytes(first + 7)).value_or(RepetitionMarks());
    one.partWay = st.flag(first + 8);
    return one;
}

Result<void> RepetitionRepository::put(Transaction& transaction, Id<Athlete> owner, Id<SetEntry> set,
                                       std::span<const Repetition> repetitions) const
{
    STEELYARD_TRY(auto clear, m_database.prepare("DELETE FROM repetition WHERE set_id = ?1"));
    clear.bindAll(set);
    STEELYARD_CHECK(clear.run());
    STEELYARD_TRY(auto add, m_database.prepare("INSERT INTO repetition (set_id, number, source, travel_mm, low_mm, "
                                               "high_mm, lifting_s, lowering_s, marks, part_way) VALUES (?1, ?2, ?3, "
                                               "?4, ?5, ?6, ?7, ?8, ?9, ?10)"));
    for (const Repetition& one : repetitions) {
        add.bindAll(set, one.number, one.source, one.travelMm, one.lowMm, one.highMm, one.liftingSeconds,
                    one.loweringSeconds);
        if (one.marks.none())
            add.bind(9, std::nullopt);
        else
            add.bind(9, std::string_view(one.marks.toString()));
        add.bind(10, one.partWay);
        STEELYARD_CHECK(add.run());
    }
    transaction.changes().athletes.insert(owner);
    return {};
}

Result<std::vector<Repetition>> RepetitionRepository::of(Id<SetEntry> set) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT " + std::string(kRepetitionColumns)
                                              + " FROM repetition p WHERE p.set_id = ?1 ORDER BY p.number"));
    st.bindAll(set);
    std::vector<Repetition> list;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return list;
        list.push_back(readRepetition(st, 0));
    }
}

Result<std::vector<SetRepetitions>> RepetitionRepository::ofLifter(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT p.set_id, " + std::string(kRepetitionColumns)
                                              + " FROM session s JOIN set_entry e ON e.session_id = s.id "
                                                "JOIN repetition p ON p.set_id = e.id WHERE s.athlete_id = ?1 "
                                                "ORDER BY p.set_id, p.number"));
    st.bindAll(athlete);
    std::vector<SetRepetitions> all;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return all;
        const auto set = st.id<SetEntry>(0);
        if (all.empty() || all.back().set != set) all.push_back({set, {}});
        all.back().repetitions.push_back(readRepetition(st, 1));
    }
}

Result<std::vector<Repetition>> RepetitionRepository::ofRemoved(Id<SetEntry> id, Id<LiftLine> line) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT was FROM set_replaced WHERE set_id = ?1 AND line_id = ?2 "
                                              "AND change = 'removed' ORDER BY id DESC LIMIT 1"));
    st.bindAll(id, line);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return std::vector<Repetition>();
    const QJsonObject was = QJsonDocument::fromJson(st.text(0).toUtf8()).object();
    auto repetitions = repetitionsFromJson(was[QStringLiteral("repetitions")].toArray());
    if (repetitions) return *std::move(repetitions);
    return fail(ErrorCode::Storage, RepetitionRepositoryText::tr("The repetitions of this set can't be read."));
}

}  // namespace steelyard
