#include "core/storage/rule_setting_repository.h"

#include "core/storage/statement.h"

namespace steelyard {

Result<RuleSettings> RuleSettingRepository::all() const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT rule, name, value FROM rule_setting"));
    RuleSettings settings;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return settings;
        settings[{st.text(0), st.text(1)}] = st.real(2);
    }
}

Result<void> RuleSettingRepository::put(Transaction& transaction, const QString& rule, const QString& name,
                                        double value) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO rule_setting (rule, name, value) VALUES (?1, ?2, ?3) "
                                              "ON CONFLICT (rule, name) DO UPDATE SET value = excluded.value"));
    st.bindAll(rule, name, value);
    transaction.changes().settings = true;
    return st.run();
}

}  // namespace steelyard
