// A lifter on the roster. Unknown is absent, never zero.
#pragma once

#include "core/domain/consent.h"
#include "core/domain/gym.h"

#include <QtCore/QDate>

namespace steelyard {

enum class Sex { Female, Male };  // asked only where a published table needs it
// Training experience sets what pace of progress is expected.
enum class Experience { Novice, Intermediate, Advanced };

struct MuscleAim {
    Id<Muscle> muscle;
    int weeklySetsLow = 8;
    int weeklySetsHigh = 16;
    friend bool operator==(const MuscleAim&, const MuscleAim&) = default;
};

struct Athlete {
    QString name;  // unique in the book
    std::optional<QDate> born;
    std::optional<Sex> sex;
    std::optional<Length> height;
    std::optional<Length> shoulderBreadth;  // biacromial
    std::optional<Length> upperArm;         // shoulder to elbow
    std::optional<Length> forearm;          // elbow to centre of grip
    std::optional<Experience> experience;   // absent: the record itself tells
    MassUnit unit = MassUnit::kg;
    std::optional<Id<Gym>> gym;
    QString group;  // "Tuesday evening"; empty = none
    std::optional<int> daysPerWeek;
    std::optional<int> minutesPerDay;
    QString jointHistory;  // only with consent
    QString note;
    std::vector<MuscleAim> aims;
    std::vector<QString> tags;  // the coach's own words: "on holiday", "juniors". See tagsFrom()
    HealthConsents consents;
    bool archived = false;
    friend bool operator==(const Athlete&, const Athlete&) = default;
};

struct BodyMassEntry {
    QDate date;
    Load mass;
    friend bool operator==(const BodyMassEntry&, const BodyMassEntry&) = default;
};

inline constexpr qsizetype kMostTags = 12;
inline constexpr qsizetype kMaxTagLength = 40;

// Tags as they are typed, separated by commas: names cleaned, empty ones left out, each once whatever its case and
// accents, in the order they were typed. "Juniors,  back soon, juniors" gives two.
[[nodiscard]] std::vector<QString> tagsFrom(QStringView typed);
// What tagsFrom() reads back.
[[nodiscard]] QString tagText(const std::vector<QString>& tags);
[[nodiscard]] Problems validateTags(const std::vector<QString>& tags);

// Why a joint history is refused of somebody who has not agreed to it.
[[nodiscard]] QString jointHistoryNeedsConsent();

// `today` bounds the date of birth.
[[nodiscard]] Problems validate(const Athlete&, QDate today);

template <>
struct EnumText<Sex> {
    static constexpr auto table = std::to_array<EnumKey<Sex>>({{Sex::Female, "female"}, {Sex::Male, "male"}});
};
template <>
struct EnumText<Experience> {
    static constexpr auto table = std::to_array<EnumKey<Experience>>({{Experience::Novice, "novice"},
                                                                      {Experience::Intermediate, "intermediate"},
                                                                      {Experience::Advanced, "advanced"}});
};

}  // namespace steelyard
