// What can fail says so in its type.
//
//   Result<Load> load = Load::parse(u"42.5", MassUnit::kg);
//   if (!load) return fail(load.error());
//   STEELYARD_TRY(const auto row, athletes.find(id));   // returns the error, or declares row
//
// `what` is for the coach: what happened, where, how to mend it (already translated).
// `detail` is for the log: an SQLite message, a code.
// Callers branch on `code` only. Bugs assert; they are not errors.
#pragma once

#include <QtCore/QString>

#include <tl/expected.hpp>

#include <utility>

namespace steelyard {

enum class ErrorCode {
    NotFound,     // the named thing is not in the book
    Conflict,     // the stored value is not what the caller thought
    Invalid,      // input refused; nothing changed
    Storage,      // the file or the disk failed, or the file is no sound book
    NewerFormat,  // the book was written by a newer program
    Cancelled,    // the caller asked to stop
    Unsupported,  // the words of the call are off, or this comes later
};

struct Error {
    ErrorCode code = ErrorCode::Invalid;
    QString what;
    QString detail;
};

template <class T = void>
using Result = tl::expected<T, Error>;

[[nodiscard]] inline tl::unexpected<Error> fail(Error error)
{
    return tl::unexpected<Error>(std::move(error));
}

[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code, QString what, QString detail = {})
{
    return tl::unexpected<Error>(Error{code, std::move(what), std::move(detail)});
}

}  // namespace steelyard

#define STEELYARD_CONCAT2(a, b) a##b
#define STEELYARD_CONCAT(a, b) STEELYARD_CONCAT2(a, b)
// Evaluates an expression that gives Result<T>: returns its error, or binds its value to `declaration`.
#define STEELYARD_TRY(declaration, expression)                                                                         \
    auto STEELYARD_CONCAT(result_, __LINE__) = (expression);                                                           \
    if (!STEELYARD_CONCAT(result_, __LINE__))                                                                          \
        return ::steelyard::fail(std::move(STEELYARD_CONCAT(result_, __LINE__)).error());                              \
    declaration = std::move(*STEELYARD_CONCAT(result_, __LINE__))  // NOLINT(bugprone-macro-parentheses): declares
// The same for Result<void>.
#define STEELYARD_CHECK(expression)                                                                                    \
    if (auto STEELYARD_CONCAT(result_, __LINE__) = (expression); !STEELYARD_CONCAT(result_, __LINE__))                 \
    return ::steelyard::fail(std::move(STEELYARD_CONCAT(result_, __LINE__)).error())
