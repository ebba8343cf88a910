#include "core/storage/set_json.h"

namespace steelyard {

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

}  // namespace steelyard
