// Which file a path leads to, so that it can be told later whether it still is the same one.
//
//   const auto opened = fileIdentity(path);
//   ... if (fileIdentity(path) != opened) somebody moved, deleted or replaced it
//
// Device and inode, as POSIX gives them; nothing when there is no file. Where a system keeps open files in their place (and has no
// such numbers), always nothing.
#pragma once

#include <QtCore/QString>

#include <cstdint>
#include <optional>

namespace steelyard {

struct FileIdentity {
    std::uint64_t device = 0;
    std::uint64_t file = 0;
    friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};

[[nodiscard]] std::optional<FileIdentity> fileIdentity(const QString& path);

}  // namespace steelyard
