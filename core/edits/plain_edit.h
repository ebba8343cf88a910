// Most edits are one call of a repository: a label and a function say all there is.
//
//   return plainEdit(EditText::tr("remove a set"), [id, now](Transaction& tx) { return LogbookRepository(...).remove(...); });
#pragma once

#include "core/domain/problem.h"
#include "core/edits/edit.h"

namespace steelyard {

template <class Apply>
class PlainEdit final : public Edit {
public:
    PlainEdit(QString label, Apply apply) : m_label(std::move(label)), m_apply(std::move(apply)) {}
    [[nodiscard]] QString label() const override { return m_label; }
    [[nodiscard]] Result<void> apply(Transaction& transaction) override { return m_apply(transaction); }

private:
    QString m_label;
    Apply m_apply;
};

template <class Apply>
[[nodiscard]] std::unique_ptr<Edit> plainEdit(QString label, Apply apply)
{
    return std::make_unique<PlainEdit<Apply>>(std::move(label), std::move(apply));
}

// Refuses a value that validate() finds something wrong with.
[[nodiscard]] inline Result<void> firstProblem(const Problems& problems)
{
    if (problems.empty()) return {};
    return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
}

}  // namespace steelyard
