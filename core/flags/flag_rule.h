// A reason to look at a lifter, as an object that describes itself. One file a rule in rules/, one line in registry.cpp,
// one test.
//
//   class StalledRule final : public FlagRule { QString id() const override { return QStringLiteral("stalled"); } ... };
//
// Sentences and evidence say days and numbers as snapshot.wording has them, masses by snapshot.massIn() with unitText().
// Invariants: id() is lower-case words joined by '_' and never changes (decisions are stored by it); a default lies in its
// range; check() is pure, adds flags with this id only, and nothing for an empty record.
#pragma once

#include "core/domain/adjustable_rule.h"
#include "core/flags/flag.h"
#include "core/flags/snapshot.h"

namespace steelyard {

// What waiting costs, worst first: the order in which a coach should look.
enum class Concern { Pain, Falling, Unreadable, NotMoving, Housekeeping };

class FlagRule : public AdjustableRule {
public:
    [[nodiscard]] virtual QString title() const = 0;        // for people, two or three words
    [[nodiscard]] virtual QString explanation() const = 0;  // when it speaks and why it matters
    [[nodiscard]] virtual Concern concern() const = 0;
    // True when the evidence is of single events: one after the coach's answer brings the flag back at once.
    [[nodiscard]] virtual bool isAboutEvents() const { return false; }
    virtual void check(const ReviewSnapshot&, const RuleParameters&, std::vector<Flag>& flags) const = 0;
};

}  // namespace steelyard
