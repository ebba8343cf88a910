#include "core/trials/arm_differences.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct ArmDifferenceText {
    Q_DECLARE_TR_FUNCTIONS(ArmDifferenceText)
};

bool sameText(const QString& one, const QString& other)
{
    return one.simplified().compare(other.simplified(), Qt::CaseInsensitive) == 0;
}

void addVariantDifferences(const Variant& one, const Variant& other, std::set<ArmDifference>& found)
{
    if (one.exercise != other.exercise) found.insert(ArmDifference::Exercise);
    const auto before = found.size();
    if (one.implement != other.implement) found.insert(ArmDifference::Implement);
    if (!sameText(one.position, other.position)) found.insert(ArmDifference::Position);
    if (!sameText(one.path, other.path)) found.insert(ArmDifference::Path);
    if (found.size() == before && !found.contains(ArmDifference::Exercise)) found.insert(ArmDifference::Variant);
}

bool sameStandard(const TrialArm& one, const TrialArm& other, const Library& library)
{
    if (one.standard == other.standard) return true;
    // Standards belong to a variant: of two variants, the one that says the same is the same.
    const auto* first = library.find(one.standard);
    const auto* second = library.find(other.standard);
    return first && second && one.variant != other.variant && sameText(first->value.name, second->value.name);
}

QString bandName(const RepBand& band)
{
    return ArmDifferenceText::tr("%1 to %2 repetitions").arg(band.low).arg(band.high);
}

QString loweringName(const std::optional<Decimal>& seconds)
{
    return seconds ? ArmDifferenceText::tr("lowered in %1 s").arg(seconds->toString())
                   : ArmDifferenceText::tr("lowered as usual");
}

QString partName(ArmDifference difference, const TrialArm& arm, const Library& library)
{
    const auto* variant = library.find(arm.variant);
    const auto* grip = library.find(arm.grip);
    const auto* standard = library.find(arm.standard);
    switch (difference) {
    case ArmDifference::Exercise:
        return variant ? library.fullName(variant->value) : QString();
    case ArmDifference::Variant:
    case ArmDifference::Implement:
        return variant ? variant->value.name : QString();
    case ArmDifference::Position:
        return variant ? variant->value.position : QString();
    case ArmDifference::Path:
        return variant ? variant->value.path : QString();
    case ArmDifference::Grip:
        return grip ? grip->value.name : QString();
    case ArmDifference::Standard:
        return standard ? standard->value.name : QString();
    case ArmDifference::RepBand:
        return bandName(arm.band);
    case ArmDifference::Lowering:
        break;
    }
    return loweringName(arm.loweringSeconds);
}

// An implement may be told by its variant, and either may be what a coach calls the other.
bool isOfFactor(ArmDifference difference, TrialFactor factor)
{
    if (factor == TrialFactor::Variant)
        return difference == ArmDifference::Variant || difference == ArmDifference::Implement
               || difference == ArmDifference::Position || difference == ArmDifference::Path;
    return difference == differenceOf(factor);
}

QString refusalOfPair(const Trial& trial, std::size_t first, std::size_t second, const Library& library)
{
    const auto found = armDifferences(trial.arms[first], trial.arms[second], library);
    const QString one = armLetter(first);
    const QString other = armLetter(second);
    if (found.empty()) return ArmDifferenceText::tr("Arms %1 and %2 are the same.").arg(one, other);
    if (std::ranges::find(found, ArmDifference::Exercise) != found.end())
        return ArmDifferenceText::tr("Arms %1 and %2 are different exercises; a trial compares ways of doing one.")
            .arg(one, other);
    if (std::ranges::none_of(found, [&](ArmDifference d) { return isOfFactor(d, trial.factor); }))
        return ArmDifferenceText::tr("Arms %1 and %2 don't differ in what the trial is about: %3.")
            .arg(one, other, factorName(trial.factor));
    QStringList more;
    int ofFactor = 0;
    for (const ArmDifference difference : found) {
        ofFactor += isOfFactor(difference, trial.factor) ? 1 : 0;
        if (!isOfFactor(difference, trial.factor) || ofFactor > 1) more.push_back(differenceName(difference));
    }
    if (!more.empty() && trial.whyMoreThanOne.trimmed().isEmpty())
        return ArmDifferenceText::tr(
                   "Arms %1 and %2 differ in more than one thing (also: %3), so nobody could tell which "
                   "of them made a difference. Make them alike in all but one, or say why not.")
            .arg(one, other, more.join(QStringLiteral(", ")));
    return {};
}

std::vector<QString> namesBy(const std::vector<ArmDifference>& differences, const Trial& trial, const Library& library)
{
    std::vector<QString> names;
    for (const TrialArm& arm : trial.arms) {
        QStringList parts;
        for (const ArmDifference difference : differences)
            if (const QString part = partName(difference, arm, library); !part.isEmpty() && !parts.contains(part))
                parts.push_back(part);
        names.push_back(parts.join(QStringLiteral(", ")));
    }
    return names;
}

// Each there, each different.
bool areNames(const std::vector<QString>& names)
{
    return std::set<QString>(names.begin(), names.end()).size() == names.size()
           && std::ranges::none_of(names, &QString::isEmpty);
}

}  // namespace

std::vector<ArmDifference> armDifferences(const TrialArm& one, const TrialArm& other, const Library& library)
{
    std::set<ArmDifference> found;
    if (one.variant != other.variant) {
        const auto* first = library.find(one.variant);
        const auto* second = library.find(other.variant);
        if (first && second)
            addVariantDifferences(first->value, second->value, found);
        else
            found.insert(ArmDifference::Variant);
    }
    if (one.grip != other.grip) found.insert(ArmDifference::Grip);
    if (!sameStandard(one, other, library)) found.insert(ArmDifference::Standard);
    if (one.band != other.band) found.insert(ArmDifference::RepBand);
    const auto seconds = [](const TrialArm& arm) {
        return arm.loweringSeconds ? std::optional(arm.loweringSeconds->toDouble()) : std::nullopt;
    };
    if (seconds(one) != seconds(other)) found.insert(ArmDifference::Lowering);
    return {found.begin(), found.end()};
}

std::vector<ArmDifference> armDifferences(const Trial& trial, const Library& library)
{
    std::set<ArmDifference> found;
    for (std::size_t i = 0; i < trial.arms.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            for (const ArmDifference one : armDifferences(trial.arms[i], trial.arms[j], library)) found.insert(one);
    return {found.begin(), found.end()};
}

QString differenceName(ArmDifference difference)
{
    switch (difference) {
    case ArmDifference::Exercise:
        return ArmDifferenceText::tr("exercise");
    case ArmDifference::Variant:
        return ArmDifferenceText::tr("variant");
    case ArmDifference::Implement:
        return ArmDifferenceText::tr("implement");
    case ArmDifference::Position:
        return ArmDifferenceText::tr("position");
    case ArmDifference::Path:
        return ArmDifferenceText::tr("path");
    case ArmDifference::Grip:
        return ArmDifferenceText::tr("grip");
    case ArmDifference::Standard:
        return ArmDifferenceText::tr("rep standard");
    case ArmDifference::RepBand:
        return ArmDifferenceText::tr("rep band");
    case ArmDifference::Lowering:
        break;
    }
    return ArmDifferenceText::tr("lowering");
}

ArmDifference differenceOf(TrialFactor factor)
{
    switch (factor) {
    case TrialFactor::Grip:
        return ArmDifference::Grip;
    case TrialFactor::Variant:
        return ArmDifference::Variant;
    case TrialFactor::Implement:
        return ArmDifference::Implement;
    case TrialFactor::Position:
        return ArmDifference::Position;
    case TrialFactor::Path:
        return ArmDifference::Path;
    case TrialFactor::RepBand:
        return ArmDifference::RepBand;
    case TrialFactor::Lowering:
        break;
    }
    return ArmDifference::Lowering;
}

QString factorName(TrialFactor factor)
{
    return differenceName(differenceOf(factor));
}

QString refusalOf(const Trial& trial, const Library& library)
{
    for (std::size_t second = 1; second < trial.arms.size(); ++second)
        for (std::size_t first = 0; first < second; ++first)
            if (const QString refusal = refusalOfPair(trial, first, second, library); !refusal.isEmpty())
                return refusal;
    return {};
}

std::vector<QString> armNames(const Trial& trial, const Library& library)
{
    const auto all = armDifferences(trial, library);
    auto ofFactor = all;
    std::erase_if(ofFactor, [&](ArmDifference one) { return !isOfFactor(one, trial.factor); });
    auto names = namesBy(ofFactor, trial, library);
    // What the trial is about names its arms; where that isn't enough, everything that differs.
    if (!areNames(names)) names = namesBy(all, trial, library);
    const std::vector<QString> plain = names;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (plain[i].isEmpty())
            names[i] = armLetter(i);
        else if (std::ranges::count(plain, plain[i]) > 1)
            names[i] = ArmDifferenceText::tr("%1 (%2)").arg(plain[i], armLetter(i));
    }
    return names;
}

}  // namespace steelyard
