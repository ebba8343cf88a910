#include "core/planning/solver/plan_bound.h"

#include "core/planning/solver/plan_model.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

// The solver's own tolerance on what it calls equal.
constexpr double kBoundSlack = 1e-6;

// Rows and columns by name of what they mean; GLPK counts both from 1.
class MixedProgram {
public:
    struct Term {
        int column = 0;
        double factor = 0;
    };
    MixedProgram()
    {
        glp_term_out(GLP_OFF);
        m_problem = glp_create_prob();
        glp_set_obj_dir(m_problem, GLP_MIN);
    }
    ~MixedProgram()
    {
        glp_delete_prob(m_problem);
        glp_free_env();  // this thread's
    }
    MixedProgram(const MixedProgram&) = delete;
    MixedProgram& operator=(const MixedProgram&) = delete;

    int column(double cost)
    {
        const int column = glp_add_cols(m_problem, 1);
        glp_set_col_bnds(m_problem, column, GLP_LO, 0, 0);
        glp_set_obj_coef(m_problem, column, cost);
        return column;
    }
    int whole(int most, double cost)
    {
        const int made = column(cost);
        glp_set_col_kind(m_problem, made, GLP_IV);
        if (most > 0)
            glp_set_col_bnds(m_problem, made, GLP_DB, 0, most);
        else
            glp_set_col_bnds(m_problem, made, GLP_FX, 0, 0);
        return made;
    }
    void atMost(const std::vector<Term>& terms, double most) { row(terms, GLP_UP, most); }
    void atLeast(const std::vector<Term>& terms, double least) { row(terms, GLP_LO, least); }
    void addCost(double cost) { glp_set_obj_coef(m_problem, 0, glp_get_obj_coef(m_problem, 0) + cost); }
    [[nodiscard]] glp_prob* get() const { return m_problem; }

private:
    void row(const std::vector<Term>& terms, int kind, double limit)
    {
        if (terms.empty()) return;
        std::vector<int> columns(1);
        std::vector<double> factors(1);
        for (const Term& term : terms) {
            columns.push_back(term.column);
            factors.push_back(term.factor);
        }
        const int made = glp_add_rows(m_problem, 1);
        glp_set_row_bnds(m_problem, made, kind, limit, limit);
        glp_set_mat_row(m_problem, made, static_cast<int>(terms.size()), columns.data(), factors.data());
    }
    glp_prob* m_problem;
};

using Terms = std::vector<MixedProgram::Term>;

double inSets(std::int64_t thousandths)
{
    return static_cast<double>(thousandths) / static_cast<double>(kPlanThousand);
}

// A thousandth costs so many millionths of a point: so many thousandths of a point a set.
double aSet(std::int64_t costAThousandth)
{
    return static_cast<double>(costAThousandth) / static_cast<double>(kPlanThousand);
}

class PlanProgram {
public:
    explicit PlanProgram(const PlanModel& model) : m_model(model), m_pins(model.pinnedSets())
    {
        addCells();
        addMuscles();
        addDays();
        addCandidates();
        addGroups();
    }
    [[nodiscard]] glp_prob* get() const { return m_program.get(); }
    // Sets by cell of the whole solution that the solver holds.
    [[nodiscard]] std::vector<int> setsByCell() const
    {
        std::vector<int> sets = m_pins;
        for (const int cell : m_model.openCells())
            sets[at(cell)] = static_cast<int>(std::lround(glp_mip_col_val(get(), m_sets[at(cell)])));
        return sets;
    }

private:
    static std::size_t at(int cell) { return static_cast<std::size_t>(cell); }
    [[nodiscard]] const PlanModel::Candidate& candidateOf(int cell) const
    {
        return m_model.candidates()[at(m_model.candidateOf(cell))];
    }
    [[nodiscard]] bool isPinned(int cell) const { return m_pins[at(cell)] > 0; }
    void addCells();
    void addMuscles();
    void addCrowding(int muscle, const std::vector<Terms>& terms, const std::vector<double>& fixed);
    void addSpacing(int muscle);
    void addDays();
    void addThin(int day, Terms sets, int pinnedSets);
    void addBack(int day, const Terms& back, int pinnedBack);
    void addBackBeside(int day, int beside, const Terms& back, int pinnedBack);
    void addCandidates();
    void addGroups();

    const PlanModel& m_model;
    MixedProgram m_program;
    std::vector<int> m_pins;
    std::vector<int> m_sets;   // column by cell, 0 for none
    std::vector<int> m_there;  // the same for whether it stands at all
};

void PlanProgram::addCells()
{
    m_sets.resize(at(m_model.cells()));
    m_there.resize(at(m_model.cells()));
    for (const int cell : m_model.openCells()) {
        const auto& candidate = candidateOf(cell);
        const double cost = kPlanCostUnit * static_cast<double>(candidate.costASet);
        m_sets[at(cell)] = m_program.whole(candidate.most, cost);
        m_there[at(cell)] = m_program.whole(1, kPlanCostUnit * static_cast<double>(m_model.costOfExercise()));
        m_program.atMost({{m_sets[at(cell)], 1}, {m_there[at(cell)], -double(candidate.most)}}, 0);
        m_program.atLeast({{m_sets[at(cell)], 1}, {m_there[at(cell)], -double(candidate.least)}}, 0);
    }
    for (int cell = 0; cell < m_model.cells(); ++cell)
        if (isPinned(cell))
            m_program.addCost(
                kPlanCostUnit
                * static_cast<double>(m_pins[at(cell)] * candidateOf(cell).costASet + m_model.costOfExercise()));
}

void PlanProgram::addMuscles()
{
    for (int muscle = 0; muscle < static_cast<int>(m_model.bands().size()); ++muscle) {
        std::vector<Terms> daily(at(m_model.days()));
        std::vector<double> fixed(at(m_model.days()));
        for (int cell = 0; cell < m_model.cells(); ++cell)
            for (const auto& share : candidateOf(cell).shares) {
                if (share.muscle != muscle) continue;
                const auto day = at(m_model.dayOf(cell));
                fixed[day] += m_pins[at(cell)] * inSets(share.thousandths);
                if (m_sets[at(cell)] > 0) daily[day].push_back({m_sets[at(cell)], inSets(share.thousandths)});
            }
        const auto& band = m_model.bands()[at(muscle)];
        Terms week;
        double pinned = 0;
        for (std::size_t day = 0; day < daily.size(); ++day) {
            week.insert(week.end(), daily[day].begin(), daily[day].end());
            pinned += fixed[day];
        }
        const auto with = [&](int column, double factor) {
            Terms terms = week;
            terms.push_back({column, factor});
            return terms;
        };
        m_program.atLeast(with(m_program.column(aSet(band.under)), 1), inSets(band.low) - pinned);
        m_program.atLeast(with(m_program.column(aSet(band.under)), 1), inSets(band.half) - pinned);
        m_program.atMost(with(m_program.column(aSet(band.over)), -1), inSets(band.high) - pinned);
        addCrowding(muscle, daily, fixed);
        addSpacing(muscle);
    }
}

void PlanProgram::addCrowding(int muscle, const std::vector<Terms>& terms, const std::vector<double>& fixed)
{
    const auto& band = m_model.bands()[at(muscle)];
    for (std::size_t day = 0; day < terms.size(); ++day) {
        Terms row = terms[day];
        row.push_back({m_program.column(aSet(band.crowding)), -1});
        m_program.atMost(row, inSets(band.mostADay) - fixed[day]);
    }
}

void PlanProgram::addSpacing(int muscle)
{
    std::vector<int> trained;  // column by day: the day has the muscle as a target
    trained.reserve(static_cast<std::size_t>(m_model.days()));
    for (int day = 0; day < m_model.days(); ++day) trained.push_back(m_program.column(0));
    for (int cell = 0; cell < m_model.cells(); ++cell)
        for (const auto& share : candidateOf(cell).shares) {
            if (share.muscle != muscle || !share.target) continue;
            const int column = trained[at(m_model.dayOf(cell))];
            if (isPinned(cell)) m_program.atLeast({{column, 1}}, 1);
            if (m_there[at(cell)] > 0) m_program.atLeast({{column, 1}, {m_there[at(cell)], -1}}, 0);
        }
    for (int day = 0; day < m_model.days(); ++day)
        for (int other = day + 1; other < m_model.days(); ++other)
            if ((m_model.closeDays(muscle, day) >> other & 1U) != 0)
                m_program.atMost({{trained[at(day)], 1}, {trained[at(other)], 1}}, 1);
}

void PlanProgram::addDays()
{
    for (int day = 0; day < m_model.days(); ++day) {
        Terms minutes;
        Terms back;
        Terms exercises;
        Terms sets;
        int pinnedSets = 0;
        double pinnedMinutes = 0;
        int pinnedBack = 0;
        int pinnedExercises = 0;
        for (int cell = 0; cell < m_model.cells(); ++cell) {
            if (m_model.dayOf(cell) != day) continue;
            const auto& candidate = candidateOf(cell);
            if (isPinned(cell)) {
                pinnedMinutes += inSets(candidate.setUp + std::int64_t{m_pins[at(cell)]} * candidate.minutesASet);
                pinnedBack += candidate.back;
                ++pinnedExercises;
                pinnedSets += m_pins[at(cell)];
            }
            if (m_there[at(cell)] == 0) continue;
            minutes.push_back({m_there[at(cell)], inSets(candidate.setUp)});
            minutes.push_back({m_sets[at(cell)], inSets(candidate.minutesASet)});
            if (candidate.back > 0) back.push_back({m_there[at(cell)], double(candidate.back)});
            exercises.push_back({m_there[at(cell)], 1});
            sets.push_back({m_sets[at(cell)], 1});
        }
        m_program.atMost(minutes, inSets(m_model.day(day).minutes) - pinnedMinutes);
        m_program.atMost(exercises, m_model.day(day).exercises - pinnedExercises);
        addThin(day, std::move(sets), pinnedSets);
        addBack(day, back, pinnedBack);
    }
}

void PlanProgram::addThin(int day, Terms sets, int pinnedSets)
{
    const int missing = m_model.day(day).leastSets - pinnedSets;
    if (missing <= 0) return;
    const double cost = kPlanCostUnit * static_cast<double>(m_model.costOfMissingSet());
    if (sets.empty()) return m_program.addCost(cost * missing);
    sets.push_back({m_program.column(cost), 1});
    m_program.atLeast(sets, missing);
}

void PlanProgram::addBack(int dayAt, const Terms& back, int pinnedBack)
{
    const auto& day = m_model.day(dayAt);
    m_program.atMost(back, day.back - pinnedBack);
    if (day.backBesideHigh >= day.back) return;
    for (const int beside : {day.previous, day.next})
        if (beside >= 0) addBackBeside(dayAt, beside, back, pinnedBack);
}

void PlanProgram::addBackBeside(int dayAt, int beside, const Terms& back, int pinnedBack)
{
    const auto& day = m_model.day(dayAt);
    for (int candidate = 0; candidate < static_cast<int>(m_model.candidates().size()); ++candidate) {
        const int cell = m_model.cell(candidate, beside);
        if (m_model.candidates()[at(candidate)].back != kMostBackLoading) continue;
        if (isPinned(cell)) m_program.atMost(back, day.backBesideHigh - pinnedBack);
        if (m_there[at(cell)] == 0) continue;
        Terms terms = back;
        terms.push_back({m_there[at(cell)], double(day.back - day.backBesideHigh)});
        m_program.atMost(terms, day.back - pinnedBack);
    }
}

void PlanProgram::addCandidates()
{
    for (int candidate = 0; candidate < static_cast<int>(m_model.candidates().size()); ++candidate) {
        const auto& one = m_model.candidates()[at(candidate)];
        Terms days;
        int pinned = 0;
        for (int day = 0; day < m_model.days(); ++day) {
            const int cell = m_model.cell(candidate, day);
            pinned += isPinned(cell) ? 1 : 0;
            if (m_there[at(cell)] > 0) days.push_back({m_there[at(cell)], 1});
        }
        m_program.atMost(days, one.mostDays - pinned);
        if (one.costOfAbsence == 0 || pinned > 0) continue;
        days.push_back({m_program.column(kPlanCostUnit * static_cast<double>(one.costOfAbsence)), 1});
        m_program.atLeast(days, 1);
    }
}

void PlanProgram::addGroups()
{
    for (int group = 0; group < m_model.groups(); ++group)
        for (int day = 0; day < m_model.days(); ++day) {
            Terms terms;
            int pinned = 0;
            for (int candidate = 0; candidate < static_cast<int>(m_model.candidates().size()); ++candidate) {
                if (m_model.candidates()[at(candidate)].group != group) continue;
                const int cell = m_model.cell(candidate, day);
                pinned += isPinned(cell) ? 1 : 0;
                if (m_there[at(cell)] > 0) terms.push_back({m_there[at(cell)], 1});
            }
            m_program.atMost(terms, m_model.mostOfGroup(group, day) - pinned);
        }
}

// What the solver calls again and again; it may end it, and hears how low the best can still be.
struct BoundWatch {
    const Progress* progress = nullptr;
    double lowest = 0;  // no cost is negative
    bool stopped = false;
};

void watchTree(glp_tree* tree, void* info)
{
    auto& watch = *static_cast<BoundWatch*>(info);
    if (const int node = glp_ios_best_node(tree); node != 0)
        watch.lowest = std::max(watch.lowest, glp_ios_node_bound(tree, node));
    if (!watch.progress->cancelled()) return;
    watch.stopped = true;
    glp_ios_terminate(tree);
}

}  // namespace

Result<PlanBound> boundPlan(const PlanProblem& problem, const PlanBoundOptions& options, const Progress& progress)
{
    if (const Problems problems = validate(problem); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
    if (progress.cancelled()) return fail(ErrorCode::Cancelled, {});
    const PlanModel model(problem);
    const PlanProgram program(model);
    BoundWatch watch{&progress};
    glp_iocp how;
    glp_init_iocp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.presolve = GLP_ON;
    how.gmi_cuts = GLP_ON;
    how.mir_cuts = GLP_ON;
    // No cover cuts: GLPK 5.0 ends the program when its presolver leaves no column and they are on.
    how.cov_cuts = GLP_OFF;
    how.tm_lim = static_cast<int>(std::lround(1'000 * std::max(options.seconds, 0.001)));
    how.cb_func = watchTree;
    how.cb_info = &watch;
    const int ended = glp_intopt(program.get(), &how);
    if (watch.stopped) return fail(ErrorCode::Cancelled, {});
    progress.report(1);
    PlanBound bound;
    bound.lowest = std::max(0.0, watch.lowest - kBoundSlack);
    const int status = glp_mip_status(program.get());
    if (status == GLP_OPT || status == GLP_FEAS) bound.found = model.answerOf(program.setsByCell());
    bound.proven = ended == 0 && status == GLP_OPT;
    if (bound.proven) bound.lowest = std::max(0.0, bound.found->cost.total() - kBoundSlack);
    return bound;
}

std::optional<double> mostAboveBest(double cost, const PlanBound& bound)
{
    if (cost <= bound.lowest + kBoundSlack) return 0.0;
    if (bound.lowest <= kBoundSlack) return std::nullopt;
    return cost / bound.lowest - 1;
}

}  // namespace steelyard
