#include "core/analysis/parameter_names.h"

#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

enum class NumberRange { Positive, NotNegative, Share, Chance, Any, Ages, Weeks, Tail };

bool isInRange(double value, NumberRange range)
{
    constexpr double kMost = 1e4;
    if (!std::isfinite(value) || std::abs(value) > kMost) return false;
    switch (range) {
    case NumberRange::Positive:
        return value > 0;
    case NumberRange::NotNegative:
        return value >= 0;
    case NumberRange::Share:
        return value > 0 && value < 1;
    case NumberRange::Chance:
        return value >= 0 && value <= 1;
    case NumberRange::Any:
        return true;
    case NumberRange::Ages:
        return value == 8 || value == 16 || value == 24 || value == 32;
    case NumberRange::Weeks:
        return value >= 0 && value == std::floor(value);
    case NumberRange::Tail:
        return value > 2;
    }
    return false;
}

template <class Filter, class Visit>
void visitFilterNumbers(Filter& f, const Visit& visit)
{
    using enum NumberRange;
    visit("ages", f.ages, Ages);
    visit("day_noise", f.dayNoise, Positive);
    visit("set_noise", f.setNoise, Positive);
    visit("week_noise", f.weekNoise, Positive);
    visit("week_memory", f.weekMemory, Share);
    visit("level_noise", f.levelNoise, Positive);
    visit("tail", f.tail, Tail);
    visit("rep_error_share", f.repErrorShare, Chance);
    visit("start_sd", f.startSd, Positive);
    visit("elasticity_mean", f.elasticityMean, Positive);
    visit("elasticity_sd", f.elasticitySd, Positive);
    visit("fatigue_mean", f.fatigueMean, Positive);
    visit("fatigue_sd", f.fatigueSd, Positive);
    visit("flat_sd", f.flatSd, Positive);
    visit("fall_mean", f.fallMean, Any);
    visit("fall_sd", f.fallSd, Positive);
    visit("change_jump", f.changeJump, Positive);
    visit("young_weeks", f.youngWeeks, Weeks);
    visit("young_share", f.youngShare, Chance);
    visit("off_share", f.offShare, Share);
    visit("off_from", f.offFrom, NotNegative);
    visit("off_mean", f.offMean, Any);
    visit("off_sd", f.offSd, Positive);
    visit("gap_weeks", f.gapWeeks, Positive);
    visit("gap_loss_after_weeks", f.gapLossAfterWeeks, Any);
    visit("gap_loss_a_week", f.gapLossAWeek, Any);
    visit("gap_sd", f.gapSd, Positive);
    constexpr std::array kRegimeWords{"rising", "flat", "falling"};
    for (std::size_t from = 0; from < kRegimeWords.size(); ++from) {
        visit(std::string("start_") + kRegimeWords[from], f.start[from], Share);
        for (std::size_t to = 0; to < kRegimeWords.size(); ++to)
            visit(std::string("change_") + kRegimeWords[from] + "_" + kRegimeWords[to], f.change[from][to], Share);
    }
}

// One list for both directions.
template <class Parameters, class Visit>
void visitNumbers(Parameters& p, const Visit& visit)
{
    using enum NumberRange;
    visitFilterNumbers(p.filter, visit);
    for (const auto& row : EnumText<Experience>::table) {
        const auto at = static_cast<std::size_t>(row.value);
        const std::string word(row.key);
        visit("pace_mean_" + word, p.paces[at].mean, Positive);
        visit("pace_sd_" + word, p.paces[at].sd, Positive);
        visit("experience_prior_" + word, p.experiencePrior[at], Share);
        visit("experience_trust_" + word, p.experienceTrust[at], Chance);
    }
    const auto visitScales = [&visit](const std::string& word, auto& scales) {
        for (std::size_t i = 0; i < scales.size(); ++i) {
            visit(word + "_scale_" + std::to_string(i + 1), scales[i].scale, Positive);
            visit(word + "_prior_" + std::to_string(i + 1), scales[i].prior, Share);
        }
    };
    visitScales("noise", p.noises);
    visitScales("coarse_noise", p.coarseNoises);
    visit("experience_share", p.experienceShare, Chance);
}

bool sumsToOne(const std::array<double, 3>& shares)
{
    return std::abs(std::accumulate(shares.begin(), shares.end(), -1.0)) < 1e-6;
}

}  // namespace

std::map<QString, double> numbersOf(const ReadingParameters& parameters)
{
    std::map<QString, double> numbers;
    visitNumbers(parameters, [&](const std::string& name, const auto& number, NumberRange) {
        numbers[QString::fromStdString(name)] = number;
    });
    return numbers;
}

std::optional<ReadingParameters> parametersFrom(const std::map<QString, double>& numbers, int version)
{
    ReadingParameters parameters;
    parameters.version = version;
    bool sound = true;
    visitNumbers(parameters, [&]<class Number>(const std::string& name, Number& number, NumberRange range) {
        const auto found = numbers.find(QString::fromStdString(name));
        if (found == numbers.end()) return;
        if (isInRange(found->second, range))
            number = static_cast<Number>(found->second);
        else
            sound = false;
    });
    for (const auto& row : parameters.filter.change) sound = sound && sumsToOne(row);
    sound = sound && sumsToOne(parameters.filter.start) && sumsToOne(parameters.experiencePrior);
    if (!sound) return std::nullopt;
    return parameters;
}

}  // namespace steelyard
