// What can be trained: muscles, exercises, their variants, grips and rep standards.
//
// An exercise names the muscles (share 1 for the target, fractions for helpers). A variant is one way to do it.
// A rep standard says what counts as one repetition of a variant. Renaming any of them never breaks history, because
// history points at rows.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/id.h"
#include "core/base/load.h"
#include "core/domain/problem.h"

#include <optional>
#include <vector>

namespace steelyard {

struct Athlete;

enum class Implement { StraightBar, AngledBar, Dumbbells, Cable, Machine, PlateMachine, GuidedBar, Bodyweight, Other };
// What the number in the log means.
enum class Loading {
    BarTotal,  // bar and plates together
    PerHand,   // one dumbbell
    Stack,     // the pin's number
    Added,     // hung on to the body; 0 is body mass alone
    Assisted,  // taken off the body by a counterweight or band
};
enum class BackLoading { None, Some, High };
enum class Sides { Both, OneAtATime };
enum class TravelKind { Straight, Arc, Body, Stack };
enum class HandOrientation { Supinated, SemiSupinated, Neutral, SemiPronated, Pronated };
enum class HandSpacing { Narrow, Medium, Wide };

struct Muscle {
    QString key;   // stable: "biceps"
    QString name;  // for people
    friend bool operator==(const Muscle&, const Muscle&) = default;
};

struct MuscleShare {
    Id<Muscle> muscle;
    double share = 1.0;  // 1 = target; (0, 1) = helper, as a fraction of a set
    friend bool operator==(const MuscleShare&, const MuscleShare&) = default;
};

struct Exercise {
    QString name;
    std::vector<MuscleShare> shares;
    bool hidden = false;
    friend bool operator==(const Exercise&, const Exercise&) = default;
};

struct RepBand {
    int low = 8;
    int high = 12;
    friend bool operator==(const RepBand&, const RepBand&) = default;
};

struct Grip {
    QString name;  // "supinated, medium"
    std::optional<HandOrientation> orientation;
    std::optional<HandSpacing> spacing;
    std::optional<Length> spacingBetweenHands;  // between the index fingers
    friend bool operator==(const Grip&, const Grip&) = default;
};

struct Variant {
    Id<Exercise> exercise;
    QString name;  // "straight bar, upright"
    Implement implement = Implement::Other;
    QString position;  // "upright", "slight forward lean", "seated"
    QString path;      // "elbows fixed", "elbows travelling"
    Loading loading = Loading::BarTotal;
    std::optional<Load> barMass;  // of the bar, sled or lever; only for BarTotal
    std::optional<Load> step;     // smallest change of load on this implement, when the gym doesn't say
    BackLoading backLoading = BackLoading::None;
    Sides sides = Sides::Both;
    TravelKind travel = TravelKind::Straight;
    RepBand band;
    std::optional<Id<Grip>> usualGrip;
    bool isDefault = false;  // what a log means that names the exercise only
    bool hidden = false;
    friend bool operator==(const Variant&, const Variant&) = default;
};

struct RepStandard {
    Id<Variant> variant;
    std::optional<Id<Athlete>> athlete;  // set: agreed with this athlete only
    QString name;                        // "strict"
    QString start;
    QString end;
    QString path;
    QString body;                           // allowed body movement
    QString lowering;                       // how the load is lowered
    std::optional<int> leastTravelPercent;  // smallest share of the full travel that still counts, 1..100
    bool isDefault = false;
    friend bool operator==(const RepStandard&, const RepStandard&) = default;
};

// The whole library as a value, for looking things up by id: a few hundred rows.
struct Library {
    std::vector<Row<Muscle>> muscles;
    std::vector<Row<Exercise>> exercises;  // by name
    std::vector<Row<Variant>> variants;    // by exercise, then name
    std::vector<Row<Grip>> grips;          // by name
    std::vector<Row<RepStandard>> standards;

    // Null when the id is not in this library.
    [[nodiscard]] const Row<Muscle>* find(Id<Muscle>) const;
    [[nodiscard]] const Row<Exercise>* find(Id<Exercise>) const;
    [[nodiscard]] const Row<Variant>* find(Id<Variant>) const;
    [[nodiscard]] const Row<Grip>* find(Id<Grip>) const;
    [[nodiscard]] const Row<RepStandard>* find(Id<RepStandard>) const;
    // "Arm curl, straight bar, upright": how a variant is named where its exercise is not in sight.
    [[nodiscard]] QString fullName(const Variant&) const;
};

// The name that stands for "nothing special was said" in a log: blank variant, grip or standard of an unknown lift.
[[nodiscard]] QString asUsualName();

[[nodiscard]] Problems validate(const Exercise&);
[[nodiscard]] Problems validate(const Variant&);
[[nodiscard]] Problems validate(const RepStandard&);
[[nodiscard]] Problems validate(const Grip&);

template <>
struct EnumText<Implement> {
    static constexpr auto table = std::to_array<EnumKey<Implement>>({{Implement::StraightBar, "straight_bar"},
                                                                     {Implement::AngledBar, "angled_bar"},
                                                                     {Implement::Dumbbells, "dumbbells"},
                                                                     {Implement::Cable, "cable"},
                                                                     {Implement::Machine, "machine"},
                                                                     {Implement::PlateMachine, "plate_machine"},
                                                                     {Implement::GuidedBar, "guided_bar"},
                                                                     {Implement::Bodyweight, "bodyweight"},
                                                                     {Implement::Other, "other"}});
};
template <>
struct EnumText<Loading> {
    static constexpr auto table = std::to_array<EnumKey<Loading>>({{Loading::BarTotal, "bar_total"},
                                                                   {Loading::PerHand, "per_hand"},
                                                                   {Loading::Stack, "stack"},
                                                                   {Loading::Added, "added"},
                                                                   {Loading::Assisted, "assisted"}});
};
template <>
struct EnumText<BackLoading> {
    static constexpr auto table = std::to_array<EnumKey<BackLoading>>(
        {{BackLoading::None, "none"}, {BackLoading::Some, "some"}, {BackLoading::High, "high"}});
};
template <>
struct EnumText<Sides> {
    static constexpr auto table = std::to_array<EnumKey<Sides>>({{Sides::Both, "two"}, {Sides::OneAtATime, "one"}});
};
template <>
struct EnumText<TravelKind> {
    static constexpr auto table = std::to_array<EnumKey<TravelKind>>({{TravelKind::Straight, "straight"},
                                                                      {TravelKind::Arc, "arc"},
                                                                      {TravelKind::Body, "body"},
                                                                      {TravelKind::Stack, "stack"}});
};
template <>
struct EnumText<HandOrientation> {
    static constexpr auto table =
        std::to_array<EnumKey<HandOrientation>>({{HandOrientation::Supinated, "supinated"},
                                                 {HandOrientation::SemiSupinated, "semi_supinated"},
                                                 {HandOrientation::Neutral, "neutral"},
                                                 {HandOrientation::SemiPronated, "semi_pronated"},
                                                 {HandOrientation::Pronated, "pronated"}});
};
template <>
struct EnumText<HandSpacing> {
    static constexpr auto table = std::to_array<EnumKey<HandSpacing>>(
        {{HandSpacing::Narrow, "narrow"}, {HandSpacing::Medium, "medium"}, {HandSpacing::Wide, "wide"}});
};

}  // namespace steelyard
