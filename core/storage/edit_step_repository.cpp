#include "core/storage/edit_step_repository.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct EditStepText {
    Q_DECLARE_TR_FUNCTIONS(EditStepText)
};

// A record has the same table and column values over and over; the fastest level takes most of that away.
constexpr int kCompression = 1;

QString changesToJson(const Changes& changes)
{
    QJsonArray athletes;
    for (const auto athlete : changes.athletes) athletes.append(static_cast<qint64>(athlete.value()));
    const QJsonObject json{{QStringLiteral("athletes"), athletes},
                           {QStringLiteral("roster"), changes.roster},
                           {QStringLiteral("library"), changes.library},
                           {QStringLiteral("settings"), changes.settings}};
    return QString::fromUtf8(QJsonDocument(json).toJson(QJsonDocument::Compact));
}

std::optional<Changes> changesFromJson(std::string_view text)
{
    const auto bytes = QByteArray::fromRawData(text.data(), static_cast<qsizetype>(text.size()));
    const QJsonDocument document = QJsonDocument::fromJson(bytes);
    if (!document.isObject()) return std::nullopt;
    const QJsonObject json = document.object();
    Changes changes;
    for (const QJsonValue athlete : json[QStringLiteral("athletes")].toArray())
        changes.athletes.insert(Id<Athlete>(athlete.toInteger()));
    changes.roster = json[QStringLiteral("roster")].toBool();
    changes.library = json[QStringLiteral("library")].toBool();
    changes.settings = json[QStringLiteral("settings")].toBool();
    return changes;
}

}  // namespace

Result<std::vector<EditStepTitle>> EditStepRepository::titles() const
{
    // Whether a step is undone stands behind its record in the file, and reading past a long one takes time. So it is only
    // looked at from the end, up to the first step that is not undone.
    STEELYARD_TRY(auto undone, m_database.prepare("SELECT id, undone FROM edit_step ORDER BY id DESC"));
    std::int64_t lastDone = 0;
    while (lastDone == 0) {
        STEELYARD_TRY(const bool more, undone.step());
        if (!more) break;
        if (!undone.flag(1)) lastDone = undone.int64(0);
    }
    undone.reset();
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, label FROM edit_step ORDER BY id"));
    std::vector<EditStepTitle> titles;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return titles;
        titles.push_back({st.id<EditStep>(0), st.text(1), st.int64(0) > lastDone});
    }
}

Result<EditStep> EditStepRepository::find(Id<EditStep> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT label, changeset, changes FROM edit_step WHERE id = ?1"));
    st.bind(1, id);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, EditStepText::tr("This step is no longer in the history."));
    const auto changes = changesFromJson(st.bytes(2));
    QByteArray changeset = qUncompress(st.blob(1));
    if (!changes || changeset.isEmpty())
        return fail(ErrorCode::NotFound,
                    EditStepText::tr("The record of this change is damaged, so it can't be undone or redone."));
    return EditStep{st.text(0), std::move(changeset), *changes};
}

Result<void> EditStepRepository::append(Transaction& transaction, const EditStep& step, const QDateTime& madeAt) const
{
    Q_ASSERT(&transaction.database() == &m_database);
    STEELYARD_CHECK(m_database.execute("DELETE FROM edit_step WHERE undone = 1"));
    {
        STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO edit_step (label, made_at, changeset, changes) "
                                                  "VALUES (?1, ?2, ?3, ?4)"));
        st.bind(1, step.label);
        st.bind(2, madeAt.toString(Qt::ISODate));
        st.bindBlob(3, qCompress(step.changeset, kCompression));
        st.bind(4, changesToJson(step.changes));
        STEELYARD_CHECK(st.run());
    }
    return makeRoom();
}

Result<void> EditStepRepository::makeRoom() const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, length(changeset) FROM edit_step ORDER BY id DESC"));
    std::int64_t bytes = 0;
    for (int kept = 0;; ++kept) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        bytes += st.int64(1);
        if (kept > 0 && (kept >= kMostSteps || bytes > kMostStepBytes)) break;
    }
    const auto last = st.int64(0);
    st.reset();
    STEELYARD_TRY(auto drop, m_database.prepare("DELETE FROM edit_step WHERE id <= ?1"));
    drop.bind(1, last);
    return drop.run();
}

Result<void> EditStepRepository::setUndone(Transaction& transaction, Id<EditStep> id, bool undone) const
{
    Q_ASSERT(&transaction.database() == &m_database);
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE edit_step SET undone = ?2 WHERE id = ?1"));
    st.bindAll(id, undone);
    return st.run();
}

Result<void> EditStepRepository::remove(Transaction& transaction, Id<EditStep> id) const
{
    Q_ASSERT(&transaction.database() == &m_database);
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM edit_step WHERE id = ?1"));
    st.bind(1, id);
    return st.run();
}

Result<void> EditStepRepository::clear(Transaction& transaction) const
{
    Q_ASSERT(&transaction.database() == &m_database);
    return m_database.execute("DELETE FROM edit_step");
}

}  // namespace steelyard
