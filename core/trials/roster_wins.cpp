#include "core/trials/roster_wins.h"

#include "core/trials/arm_differences.h"

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct ArmKind {
    QString key;
    QString name;
};

ArmKind gripKind(const TrialArm& arm, const Library& library)
{
    const auto* grip = library.find(arm.grip);
    if (!grip) return {};
    if (!grip->value.orientation) return {grip->value.name.simplified().toLower(), grip->value.name};
    const auto word = toText(*grip->value.orientation);
    // The word of the file with its joints opened is the trade's own: "semi supinated".
    return {word, QString(word).replace(u'_', u'-')};
}

ArmKind kindOf(const TrialArm& arm, TrialFactor factor, const Library& library)
{
    const auto named = [](const QString& text) { return ArmKind{text.simplified().toLower(), text.simplified()}; };
    const auto* variant = library.find(arm.variant);
    switch (factor) {
    case TrialFactor::Grip:
        return gripKind(arm, library);
    case TrialFactor::Variant:
        return variant ? named(variant->value.name) : ArmKind{};
    case TrialFactor::Implement:
        return variant ? ArmKind{toText(variant->value.implement), toText(variant->value.implement).replace(u'_', u' ')}
                       : ArmKind{};
    case TrialFactor::Position:
        return variant ? named(variant->value.position) : ArmKind{};
    case TrialFactor::Path:
        return variant ? named(variant->value.path) : ArmKind{};
    case TrialFactor::RepBand:
        return named(QStringLiteral("%1-%2").arg(arm.band.low).arg(arm.band.high));
    case TrialFactor::Lowering:
        break;
    }
    return arm.loweringSeconds ? named(arm.loweringSeconds->trimmed().toString() + QStringLiteral(" s")) : ArmKind{};
}

// It ended with a word about its arms.
bool spoke(const JudgedTrial& judged)
{
    return judged.trial.ending
           && (judged.verdict.word == TrialWord::Prefer || judged.verdict.word == TrialWord::NoClearDifference
               || !judged.verdict.out.empty());
}

void addTrial(const JudgedTrial& judged, TrialFactor factor, const Library& library, std::map<QString, ArmWins>& byKind)
{
    std::vector<ArmKind> kinds;
    kinds.reserve(judged.trial.arms.size());
    for (const TrialArm& arm : judged.trial.arms) kinds.push_back(kindOf(arm, factor, library));
    for (std::size_t arm = 0; arm < kinds.size(); ++arm) {
        const QString& key = kinds[arm].key;
        if (key.isEmpty() || std::ranges::count(kinds, key, &ArmKind::key) > 1) continue;
        ArmWins& wins = byKind[key];
        wins.kind = key;
        wins.name = kinds[arm].name;
        ++wins.trials;
        if (std::ranges::find(judged.verdict.out, arm, &VetoedArm::arm) != judged.verdict.out.end()) ++wins.out;
        if (judged.verdict.word != TrialWord::Prefer) continue;
        ++(judged.verdict.arm == arm ? wins.won : wins.lost);
        wins.byChance += 1.0 / static_cast<double>(kinds.size());
    }
}

}  // namespace

std::vector<ArmWins> rosterWins(const std::vector<JudgedTrial>& trials, TrialFactor factor, const Library& library)
{
    std::map<QString, ArmWins> byKind;
    for (const JudgedTrial& judged : trials)
        if (judged.trial.factor == factor && spoke(judged)) addTrial(judged, factor, library, byKind);
    std::vector<ArmWins> all;
    for (auto& [key, wins] : byKind) {
        wins.share = ArmShares({{wins.won, wins.trials}}).share(0);
        all.push_back(std::move(wins));
    }
    std::ranges::stable_sort(all, std::greater<>(), &ArmWins::trials);
    return all;
}

}  // namespace steelyard
