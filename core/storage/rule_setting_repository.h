// Thresholds that the coach changed. What is not stored has the rule's own default.
#pragma once

#include "core/domain/rule_settings.h"
#include "core/storage/transaction.h"

namespace steelyard {

class RuleSettingRepository {
public:
    explicit RuleSettingRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<RuleSettings> all() const;
    [[nodiscard]] Result<void> put(Transaction&, const QString& rule, const QString& name, double value) const;

private:
    Database& m_database;
};

}  // namespace steelyard
