// The columns of the logbook CSV: one table for writing and reading. Their names are a published format: add, never change.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace steelyard {

struct LogbookColumn {
    std::string_view name;
    bool isText = false;  // free text, guarded against being taken for a formula (csv_text.h)
};

inline constexpr auto kLogbookColumns = std::to_array<LogbookColumn>({
    {"date"},
    {"athlete", true},
    {"exercise", true},
    {"variant", true},
    {"grip", true},
    {"standard", true},
    {"load"},
    {"unit"},
    {"set"},
    {"reps"},
    {"off"},
    {"failed"},
    {"rir"},
    {"rpe"},
    {"marks"},
    {"lowering_s"},
    {"kind"},
    {"lean_deg"},
    {"tension"},
    {"burn"},
    {"pump"},
    {"gave_out", true},
    {"discomfort_elbow"},
    {"discomfort_shoulder"},
    {"discomfort_wrist"},
    {"discomfort_lower_back"},
    {"discomfort_hip"},
    {"discomfort_knee"},
    {"discomfort_neck"},
    {"discomfort_ankle"},
    {"next_soreness"},
    {"next_weakness"},
    {"note", true},
});

// Where a column stands in the table: "reps"_column. A name that isn't there does not compile.
enum class ColumnPlace : std::size_t {};

[[nodiscard]] consteval ColumnPlace operator""_column(const char* name, std::size_t length)
{
    std::size_t place = 0;
    while (kLogbookColumns.at(place).name != std::string_view(name, length)) ++place;
    return ColumnPlace{place};
}

}  // namespace steelyard
