#include "core/storage/set_json.h"

namespace steelyard {
namespace {

void putDecimal(QJsonObject& json, const QString& name, const std::optional<Decimal>& value)
{
    if (value) json[name] = value->toString();
}

// False: there is something, and it is no number.
bool takeDecimal(const QJsonObject& json, const QString& name, std::optional<Decimal>& value)
{
    if (!json.contains(name)) return true;
    value = Decimal::parse(QStringView(json[name].toString()));
    return value.has_value();
}

std::optional<Repetition> repetitionFromJson(const QJsonObject& json)
{
    Repetition one;
    const auto source = fromKey<RepetitionSource>(QStringView(json[QStringLiteral("source")].toString()));
    const auto marks = RepetitionMarks::parse(json[QStringLiteral("marks")].toString().toStdString());
    const bool numbers = takeDecimal(json, QStringLiteral("travel_mm"), one.travelMm)
                         && takeDecimal(json, QStringLiteral("low_mm"), one.lowMm)
                         && takeDecimal(json, QStringLiteral("high_mm"), one.highMm)
                         && takeDecimal(json, QStringLiteral("lifting_s"), one.liftingSeconds)
                         && takeDecimal(json, QStringLiteral("lowering_s"), one.loweringSeconds);
    if (!source || !marks || !numbers) return std::nullopt;
    one.source = *source;
    one.marks = *marks;
    one.partWay = json[QStringLiteral("part_way")].toBool();
    return one;
}

}  // namespace

QJsonObject toJson(const SetEntry& set)
{
    QJsonObject json;
    json[QStringLiteral("set")] = set.number;
    json[QStringLiteral("load")] = set.load.amount().toString();
    json[QStringLiteral("unit")] = toText(set.load.unit());
    json[QStringLiteral("reps")] = set.reps;
    if (set.off) json[QStringLiteral("off")] = *set.off;
    if (set.failed) json[QStringLiteral("failed")] = 1;
    if (set.effort)
        json[set.effort->scale == Effort::Scale::Rir ? QStringLiteral("rir") : QStringLiteral("rpe")] =
            set.effort->value.toString();
    if (!set.marks.none()) json[QStringLiteral("marks")] = QString::fromStdString(set.marks.toString());
    if (set.loweringSeconds) json[QStringLiteral("lowering_s")] = set.loweringSeconds->toString();
    if (set.leanDegrees) json[QStringLiteral("lean_deg")] = set.leanDegrees->toString();
    json[QStringLiteral("kind")] = toText(set.kind);
    if (!set.note.isEmpty()) json[QStringLiteral("note")] = set.note;
    return json;
}

std::optional<SetEntry> setFromJson(const QJsonObject& json)
{
    SetEntry set;
    const auto unit = fromKey<MassUnit>(QStringView(json[QStringLiteral("unit")].toString()));
    if (!unit) return std::nullopt;
    const auto load = Load::parse(QStringView(json[QStringLiteral("load")].toString()), *unit);
    const auto kind = fromKey<SetKind>(QStringView(json[QStringLiteral("kind")].toString()));
    const auto marks = MarkCounts::parse(json[QStringLiteral("marks")].toString().toStdString());
    if (!load || !kind || !marks) return std::nullopt;
    set.number = json[QStringLiteral("set")].toInt(1);
    set.load = *load;
    set.reps = json[QStringLiteral("reps")].toInt();
    if (json.contains(QStringLiteral("off"))) set.off = json[QStringLiteral("off")].toInt();
    set.failed = json[QStringLiteral("failed")].toInt() != 0;
    for (const auto& [name, scale] :
         {std::pair(QStringLiteral("rir"), Effort::Scale::Rir), std::pair(QStringLiteral("rpe"), Effort::Scale::Rpe)}) {
        if (!json.contains(name)) continue;
        const auto value = Decimal::parse(QStringView(json[name].toString()));
        if (!value) return std::nullopt;
        set.effort = Effort{scale, *value};
    }
    set.marks = *marks;
    if (json.contains(QStringLiteral("lowering_s")))
        set.loweringSeconds = Decimal::parse(QStringView(json[QStringLiteral("lowering_s")].toString()));
    if (json.contains(QStringLiteral("lean_deg")))
        set.leanDegrees = Decimal::parse(QStringView(json[QStringLiteral("lean_deg")].toString()));
    set.kind = *kind;
    set.note = json[QStringLiteral("note")].toString();
    return set;
}

QJsonArray toJson(std::span<const Repetition> repetitions)
{
    QJsonArray list;
    for (const Repetition& one : repetitions) {
        QJsonObject json{{QStringLiteral("source"), toText(one.source)}};
        putDecimal(json, QStringLiteral("travel_mm"), one.travelMm);
        putDecimal(json, QStringLiteral("low_mm"), one.lowMm);
        putDecimal(json, QStringLiteral("high_mm"), one.highMm);
        putDecimal(json, QStringLiteral("lifting_s"), one.liftingSeconds);
        putDecimal(json, QStringLiteral("lowering_s"), one.loweringSeconds);
        if (!one.marks.none()) json[QStringLiteral("marks")] = QString::fromStdString(one.marks.toString());
        if (one.partWay) json[QStringLiteral("part_way")] = true;
        list.append(json);
    }
    return list;
}

std::optional<std::vector<Repetition>> repetitionsFromJson(const QJsonArray& list)
{
    std::vector<Repetition> repetitions;
    for (const auto& item : list) {
        auto one = repetitionFromJson(item.toObject());
        if (!one) return std::nullopt;
        one->number = static_cast<int>(repetitions.size()) + 1;
        repetitions.push_back(*std::move(one));
    }
    if (!validate(repetitions).empty()) return std::nullopt;
    return repetitions;
}

}  // namespace steelyard
