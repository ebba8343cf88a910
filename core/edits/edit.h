// A change a person makes. An edit knows how to apply itself inside a transaction; what that changed is recorded row by
// row (storage/changeset.h), so undo and redo are exact for every edit and no edit carries code for going back.
//
//   class MakeDecision final : public Edit { ... };
//   history.perform(std::make_unique<MakeDecision>(decision));
#pragma once

#include "core/storage/transaction.h"

#include <memory>

namespace steelyard {

class Edit {
public:
    virtual ~Edit() = default;
    // What the menu says: "Undo: watch Dana Quill's curl".
    [[nodiscard]] virtual QString label() const = 0;
    [[nodiscard]] virtual Result<void> apply(Transaction&) = 0;
};

}  // namespace steelyard
