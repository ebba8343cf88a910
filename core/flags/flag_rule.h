// A reason to look at a lifter, as an object that describes itself. One file a rule in rules/, one line in registry.cpp,
// one test.
//
//   class StalledRule final : public FlagRule { QString id() const override { return QStringLiteral("stalled"); } ... };
//
// Sentences and evidence say days and numbers as snapshot.wording has them, masses by snapshot.massIn() with unitText().
// Invariants: id() is lower-case words joined by '_' and never changes (decisions are stored by it); a default lies in its
// range; check() is pure, adds flags with this id only, and nothing for an empty record.
#pragma once

#include "core/domain/rule_settings.h"
#include "core/flags/flag.h"
#include "core/flags/snapshot.h"

namespace steelyard {

// What waiting costs, worst first: the order in which a coach should look.
enum class Concern { Pain, Falling, Unreadable, NotMoving, Housekeeping };

struct RuleParameter {
    QString name;   // stable
    QString label;  // for people, before the value: "Looks back"
    QString unit;   // for people, after it: "weeks", "%", "of 10"
    double defaultValue = 0;
    double low = 0;
    double high = 0;
    QString sourceOfDefault;  // for people
};

class FlagRule;

// The thresholds in force for one rule: its defaults, replaced by what the coach set, held within their ranges.
class RuleParameters {
public:
    RuleParameters(const FlagRule& rule, const RuleSettings& settings);
    // `name` is one of the rule's parameters (asserted).
    [[nodiscard]] double value(QStringView name) const;
    [[nodiscard]] int whole(QStringView name) const;

private:
    std::vector<std::pair<QString, double>> m_values;
};

class FlagRule {
public:
    virtual ~FlagRule() = default;
    [[nodiscard]] virtual QString id() const = 0;
    [[nodiscard]] virtual QString title() const = 0;        // for people, two or three words
    [[nodiscard]] virtual QString explanation() const = 0;  // when it speaks and why it matters
    [[nodiscard]] virtual Concern concern() const = 0;
    [[nodiscard]] virtual std::vector<RuleParameter> parameters() const { return {}; }
    // True when the evidence is of single events: one after the coach's answer brings the flag back at once.
    [[nodiscard]] virtual bool isAboutEvents() const { return false; }
    virtual void check(const ReviewSnapshot&, const RuleParameters&, std::vector<Flag>& flags) const = 0;
};

}  // namespace steelyard
