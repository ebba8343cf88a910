#include "core/edits/bulk_edits.h"

#include "core/base/text.h"
#include "core/edits/plain_edit.h"
#include "core/storage/block_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/logbook_moves.h"
#include "core/storage/logbook_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct BulkEditText {
    Q_DECLARE_TR_FUNCTIONS(BulkEditText)
};

bool within(QDate day, const std::optional<QDate>& from, const std::optional<QDate>& to)
{
    return (!from || day >= *from) && (!to || day <= *to);
}

int setsOf(const LineRecord& record)
{
    int sets = 0;
    for (const Exposure& exposure : record.exposures) sets += static_cast<int>(exposure.sets.size());
    return sets;
}

const Exposure* exposureOn(const LineRecord& record, QDate day)
{
    const auto at = std::ranges::lower_bound(record.exposures, day, {}, &Exposure::date);
    return at != record.exposures.end() && at->date == day ? &*at : nullptr;
}

bool shareANumber(const Exposure& a, const Exposure& b)
{
    return std::ranges::any_of(a.sets, [&](const LoggedSet& one) {
        return std::ranges::any_of(b.sets, [&](const LoggedSet& other) { return other.set.number == one.set.number; });
    });
}

// What speaks against two exposures becoming one.
void noteClash(const Exposure& moved, const Exposure& there, std::vector<BulkProblem>& problems)
{
    if (shareANumber(moved, there)) problems.push_back({BulkTrouble::SetsClash, there.date});
    if (!moved.rating.none() && !there.rating.none()) problems.push_back({BulkTrouble::RatingsClash, there.date});
}

class MovePlanner {
public:
    MovePlanner(const AthleteLog& log, const Library& library, const MoveWish& wish, QDate today)
        : m_log(log),
          m_library(library),
          m_wish(wish),
          m_today(today),
          m_source(*std::ranges::find(log.lines, wish.line, &LineRecord::id)),
          m_plan{.source = wish.line, .target = {log.athlete.id, wish.variant, wish.grip, m_source.line.standard}}
    {}

    [[nodiscard]] MovePlan plan()
    {
        chooseStandard();
        countSets();
        if (!m_plan.newStandard && m_plan.target == m_source.line) m_plan.problems = {{BulkTrouble::SameLine}};
        const auto* before = m_library.find(m_source.line.variant);
        const auto* after = m_library.find(m_wish.variant);
        m_plan.otherLoading = before && after && before->value.loading != after->value.loading;
        if (m_plan.lines.front().setsAfter == 0)
            m_plan.decisions = static_cast<int>(std::ranges::count(
                m_log.decisions, std::optional(m_wish.line), [](const Row<Decision>& row) { return row.value.line; }));
        changeBlocks();
        return std::move(m_plan);
    }

private:
    [[nodiscard]] bool isUsable(const RepStandard& standard) const
    {
        return standard.variant == m_wish.variant && (!standard.athlete || *standard.athlete == m_log.athlete.id);
    }

    void chooseStandard()
    {
        if (m_wish.standard) {
            const auto* chosen = m_library.find(*m_wish.standard);
            if (!chosen || !isUsable(chosen->value)) m_plan.problems.push_back({BulkTrouble::ForeignStandard});
            m_plan.target.standard = *m_wish.standard;
            return;
        }
        const QString name = cleanName(m_wish.standardName);
        if (name.isEmpty()) m_plan.problems.push_back({BulkTrouble::NameNeeded});
        const auto known = std::ranges::find_if(m_library.standards, [&](const Row<RepStandard>& row) {
            return isUsable(row.value) && row.value.name == name;
        });
        if (known != m_library.standards.end()) {
            m_plan.target.standard = known->id;
            return;
        }
        RepStandard made{.variant = m_wish.variant};
        if (m_source.line.variant == m_wish.variant) made = m_source.standard.value;
        made.athlete = m_log.athlete.id;
        made.name = name;
        made.isDefault = false;
        m_plan.newStandard = made;
    }

    void countSets()
    {
        const LineRecord* there = nullptr;
        if (!m_plan.newStandard)
            for (const LineRecord& record : m_log.lines)
                if (record.line == m_plan.target) there = &record;
        LineCount before{m_source.line, static_cast<int>(m_source.exposures.size()), setsOf(m_source)};
        LineCount after{m_plan.target, there ? static_cast<int>(there->exposures.size()) : 0,
                        there ? setsOf(*there) : 0};
        int joined = 0;
        for (const Exposure& exposure : m_source.exposures) {
            if (!within(exposure.date, m_wish.from, m_wish.to)) continue;
            m_plan.days.push_back(exposure.date);
            m_plan.sets += static_cast<int>(exposure.sets.size());
            if (!exposure.rating.none()) ++m_plan.ratings;
            const Exposure* same = there ? exposureOn(*there, exposure.date) : nullptr;
            if (!same) continue;
            ++joined;
            noteClash(exposure, *same, m_plan.problems);
        }
        const int sessions = static_cast<int>(m_plan.days.size());
        if (sessions == 0) m_plan.problems.push_back({BulkTrouble::NothingThere});
        before.sessionsAfter = before.sessions - sessions;
        before.setsAfter = before.sets - m_plan.sets;
        after.sessionsAfter = after.sessions + sessions - joined;
        after.setsAfter = after.sets + m_plan.sets;
        m_plan.lines = {before, after};
    }

    [[nodiscard]] bool isOf(const Slot& slot, const LiftLine& line) const
    {
        return slot.variant == line.variant && slot.grip == line.grip && slot.standard == line.standard;
    }

    // Two slots of one line on one day would be one exposure: such a slot stays as it is.
    [[nodiscard]] bool follows(const PlannedDay& day, const Slot& slot) const
    {
        if (day.date <= m_today || !isOf(slot, m_source.line)) return false;
        return m_plan.newStandard
               || std::ranges::none_of(day.slotList, [&](const Slot& one) { return isOf(one, m_plan.target); });
    }

    void changeBlocks()
    {
        for (const Row<Block>& row : m_log.blocks) {
            BlockChange change{row.id, row.value};
            std::vector<SlotPlace> places;
            for (std::size_t week = 0; week < row.value.weeks.size(); ++week)
                for (std::size_t day = 0; day < row.value.weeks[week].days.size(); ++day)
                    changeDay(row.value.weeks[week].days[day], change.block.weeks[week].days[day],
                              {m_plan.blocks.size(), week, day, 0}, places);
            m_plan.plannedSlots += static_cast<int>(places.size());
            if (places.empty() || !m_wish.planToo) continue;
            m_plan.blocks.push_back(std::move(change));
            m_plan.following.insert(m_plan.following.end(), places.begin(), places.end());
        }
    }

    void changeDay(const PlannedDay& before, PlannedDay& after, SlotPlace place, std::vector<SlotPlace>& places) const
    {
        for (place.slot = 0; place.slot < before.slotList.size(); ++place.slot) {
            if (!follows(before, before.slotList[place.slot])) continue;
            Slot& slot = after.slotList[place.slot];
            slot.variant = m_plan.target.variant;
            slot.grip = m_plan.target.grip;
            slot.standard = m_plan.target.standard;
            places.push_back(place);
        }
    }

    const AthleteLog& m_log;
    const Library& m_library;
    const MoveWish& m_wish;
    QDate m_today;
    const LineRecord& m_source;
    MovePlan m_plan;
};

// A new standard has no id while the plan is made; the slots that follow get it here.
Result<void> writeBlocks(Transaction& transaction, const MovePlan& plan, const LiftLine& target)
{
    std::vector<BlockChange> changes = plan.blocks;
    for (const SlotPlace& place : plan.following)
        changes[place.block].block.weeks[place.week].days[place.day].slotList[place.slot].standard = target.standard;
    for (const BlockChange& change : changes)
        STEELYARD_CHECK(BlockRepository(transaction.database()).replace(transaction, change.id, change.block));
    return {};
}

Result<void> applyMove(Transaction& transaction, const MovePlan& plan)
{
    Database& db = transaction.database();
    const LogbookRepository logbook(db);
    LiftLine target = plan.target;
    if (plan.newStandard) {
        STEELYARD_TRY(target.standard, LibraryRepository(db).insert(transaction, *plan.newStandard));
    }
    STEELYARD_TRY(const auto line, logbook.line(transaction, target));
    int moved = 0;
    for (const QDate day : plan.days) {
        STEELYARD_TRY(const auto session, logbook.session(transaction, target.athlete, day));
        STEELYARD_TRY(const int sets, moveExposure(transaction, target.athlete, session, plan.source, line));
        moved += sets;
    }
    if (moved != plan.sets)
        return fail(ErrorCode::Conflict, BulkEditText::tr("The sets changed in the meantime. Nothing was moved."));
    if (plan.decisions > 0) STEELYARD_CHECK(moveDecisions(transaction, target.athlete, plan.source, line));
    return writeBlocks(transaction, plan, target);
}

void noteJoins(const AthleteLog& log, const DayMove& move, std::vector<BulkProblem>& problems)
{
    for (const LineRecord& record : log.lines) {
        const Exposure* moved = exposureOn(record, move.before);
        const Exposure* there = exposureOn(record, move.after);
        if (moved && there) noteClash(*moved, *there, problems);
    }
}

int setsOn(const AthleteLog& log, QDate day)
{
    int sets = 0;
    for (const LineRecord& record : log.lines)
        if (const Exposure* exposure = exposureOn(record, day)) sets += static_cast<int>(exposure->sets.size());
    return sets;
}

struct NamedRow {
    QString name;
    bool taken = false;  // the wished name is another row's
};

// The row that is to be renamed among those that must have another name than it.
template <class Entity, class SameHouse>
std::optional<NamedRow> namedRow(const std::vector<Row<Entity>>& rows, const RenameWish& wish, SameHouse sameHouse)
{
    const auto at = std::ranges::find(rows, Id<Entity>(wish.id), &Row<Entity>::id);
    if (at == rows.end()) return std::nullopt;
    const bool taken = std::ranges::any_of(rows, [&](const Row<Entity>& row) {
        return row.id != at->id && row.value.name == wish.name && sameHouse(row.value, at->value);
    });
    return NamedRow{at->value.name, taken};
}

std::optional<NamedRow> namedRow(const Library& library, const RenameWish& wish)
{
    const auto always = [](const auto&, const auto&) { return true; };
    switch (wish.kind) {
    case RenameKind::Exercise:
        return namedRow(library.exercises, wish, always);
    case RenameKind::Variant:
        return namedRow(library.variants, wish,
                        [](const Variant& a, const Variant& b) { return a.exercise == b.exercise; });
    case RenameKind::Grip:
        return namedRow(library.grips, wish, always);
    case RenameKind::Standard:
        return namedRow(library.standards, wish, [](const RepStandard& a, const RepStandard& b) {
            return a.variant == b.variant && a.athlete == b.athlete;
        });
    }
    return std::nullopt;
}

// What a lift line or a slot, named t, must be to have the row.
std::string_view touchedBy(RenameKind kind)
{
    switch (kind) {
    case RenameKind::Exercise:
        return "t.variant_id IN (SELECT id FROM variant WHERE exercise_id = ?1)";
    case RenameKind::Variant:
        return "t.variant_id = ?1";
    case RenameKind::Grip:
        return "t.grip_id = ?1";
    case RenameKind::Standard:
        break;
    }
    return "t.standard_id = ?1";
}

template <class Entity>
Result<void> renameRow(Transaction& transaction, const std::vector<Row<Entity>>& rows, const RenamePlan& plan)
{
    const auto at = std::ranges::find(rows, Id<Entity>(plan.wish.id), &Row<Entity>::id);
    if (at == rows.end() || at->value.name != plan.before)
        return fail(ErrorCode::Conflict, BulkEditText::tr("It has another name by now. Nothing was renamed."));
    Entity renamed = at->value;
    renamed.name = plan.wish.name;
    return LibraryRepository(transaction.database()).replace(transaction, at->id, renamed);
}

Result<void> applyRename(Transaction& transaction, const RenamePlan& plan)
{
    STEELYARD_TRY(const Library library, LibraryRepository(transaction.database()).read());
    switch (plan.wish.kind) {
    case RenameKind::Exercise:
        return renameRow(transaction, library.exercises, plan);
    case RenameKind::Variant:
        return renameRow(transaction, library.variants, plan);
    case RenameKind::Grip:
        return renameRow(transaction, library.grips, plan);
    case RenameKind::Standard:
        break;
    }
    return renameRow(transaction, library.standards, plan);
}

}  // namespace

MovePlan planMove(const AthleteLog& log, const Library& library, const MoveWish& wish, QDate today)
{
    return MovePlanner(log, library, wish, today).plan();
}

std::unique_ptr<Edit> moveSets(const MovePlan& plan)
{
    return plainEdit(BulkEditText::tr("move %n set(s) to another line", nullptr, plan.sets),
                     [plan](Transaction& tx) { return applyMove(tx, plan); });
}

ShiftPlan planShift(const AthleteLog& log, const ShiftWish& wish, QDate today)
{
    ShiftPlan plan{log.athlete.id, {}};
    if (wish.days == 0) plan.problems.push_back({BulkTrouble::NoDays});
    for (const QDate day : log.sessionDates) {
        if (!within(day, wish.from, wish.to)) continue;
        const QDate after = day.addDays(wish.days);
        const bool stays = !within(after, wish.from, wish.to);
        const DayMove move{day, after, setsOn(log, day), stays && std::ranges::count(log.sessionDates, after) > 0};
        if (move.joins) noteJoins(log, move, plan.problems);
        if (after > today && wish.days > 0) plan.problems.push_back({BulkTrouble::IntoTheFuture, after});
        plan.moves.push_back(move);
    }
    if (plan.moves.empty()) plan.problems.push_back({BulkTrouble::NothingThere});
    return plan;
}

std::unique_ptr<Edit> shiftSessions(const ShiftPlan& plan)
{
    return plainEdit(BulkEditText::tr("shift %n session(s)", nullptr, static_cast<int>(plan.moves.size())),
                     [plan](Transaction& tx) -> Result<void> {
                         // Those at the front go first, so that none steps on the next.
                         std::vector<DayMove> moves = plan.moves;
                         if (!moves.empty() && moves.front().after > moves.front().before) std::ranges::reverse(moves);
                         for (const DayMove& move : moves)
                             STEELYARD_CHECK(moveSession(tx, plan.athlete, move.before, move.after));
                         return {};
                     });
}

Result<RenamePlan> planRename(Database& db, const Library& library, const RenameWish& wish)
{
    RenamePlan plan{wish, {}};
    plan.wish.name = cleanName(wish.name);
    const auto row = namedRow(library, plan.wish);
    if (!row) return fail(ErrorCode::NotFound, BulkEditText::tr("It is no longer in the library."));
    plan.before = row->name;
    if (plan.wish.name.isEmpty()) plan.problems.push_back({BulkTrouble::NameNeeded});
    if (plan.wish.name == plan.before) plan.problems.push_back({BulkTrouble::SameName});
    if (row->taken) plan.problems.push_back({BulkTrouble::NameTaken});
    const std::string where = " t WHERE " + std::string(touchedBy(wish.kind));
    STEELYARD_TRY(auto lines, db.prepare("SELECT count(*), count(DISTINCT t.athlete_id) FROM lift_line" + where));
    lines.bind(1, wish.id);
    STEELYARD_CHECK(lines.step());
    plan.lines = lines.integer(0);
    plan.lifters = lines.integer(1);
    STEELYARD_TRY(auto planned, db.prepare("SELECT count(*) FROM slot" + where));
    planned.bind(1, wish.id);
    STEELYARD_CHECK(planned.step());
    plan.plannedSlots = planned.integer(0);
    return plan;
}

std::unique_ptr<Edit> renameInLibrary(const RenamePlan& plan)
{
    return plainEdit(BulkEditText::tr("rename “%1” to “%2”").arg(plan.before, plan.wish.name),
                     [plan](Transaction& tx) { return applyRename(tx, plan); });
}

}  // namespace steelyard
