// On what a load for a slot can rest: the record of its own line, else of a related one, else on nothing yet.
//
//   LifterOutlook lifter(log, library, tracker, today);
//   const LineBasis& basis = lifter.of(slot);
//   basis.kind == LoadBasis::SameExercise;   basis.record->key;   basis.outlook->at({day, 2.0, 1}, 40)
//
// A related line is one that was trained in the last kRelatedDays days, carries a forecast, and whose loads are written the same
// way (per hand, in all, on a stack) for the same number of sides. The closest wins, then the one trained last:
//   another grip or standard of the same variant   ln load differs by an SD of kOtherGripDoubt. Published: 6RM of the bench press
//       5.8 to 11.1 % apart between narrow and wide (Saeterbakken et al. 2017, PMC5504579), of the pulldown 4 % (Andersen et al.
//       2014, JSCR 28(4):1135-1142)
//   another variant of the same exercise           kOtherVariantDoubt, our convention
//   the same target muscle and implement           kOtherExerciseDoubt, our convention
// Pure; no failures. The log, the library and the tracker outlive it. Not for several threads at once.
#pragma once

#include "core/analysis/lifter_tracker.h"
#include "core/analysis/line_outlook.h"

#include <list>

namespace steelyard {

inline constexpr int kRelatedDays = 182;
inline constexpr double kOtherGripDoubt = 0.08;
inline constexpr double kOtherVariantDoubt = 0.15;
inline constexpr double kOtherExerciseDoubt = 0.25;

enum class LoadBasis { OwnRecord, OtherGrip, SameExercise, SameMuscle, Nothing };

struct LineBasis {
    LoadBasis kind = LoadBasis::Nothing;
    const LineRecord* record = nullptr;               // null for Nothing
    std::shared_ptr<const LineOutlook> outlook = {};  // null where nothing can be forecast
};

class LifterOutlook {
public:
    LifterOutlook(const AthleteLog&, const Library&, const LifterTracker&, QDate today);

    [[nodiscard]] const LineBasis& of(const Slot& slot);

private:
    struct Known {
        LiftLine lift;
        LineBasis basis;
    };

    [[nodiscard]] LineBasis basisOf(const Slot& slot) const;
    [[nodiscard]] LineBasis relatedTo(const Slot& slot) const;
    [[nodiscard]] LoadBasis relationTo(const LineRecord& other, const Slot& slot) const;
    [[nodiscard]] LineBasis basisOn(const LineRecord& record, LoadBasis kind) const;

    const AthleteLog& m_log;
    const Library& m_library;
    const LifterTracker& m_tracker;
    QDate m_today;
    std::list<Known> m_known;  // where references stay good
};

}  // namespace steelyard
