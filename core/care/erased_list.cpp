#include "core/care/erased_list.h"

#include "core/storage/durable_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>
#include <QtCore/QSaveFile>

#include <algorithm>

namespace steelyard {
namespace {

struct ErasedListText {
    Q_DECLARE_TR_FUNCTIONS(ErasedListText)
};

QString erasedListIn(const QString& shelfFolder)
{
    return QDir(shelfFolder).filePath(QStringLiteral("erased.json"));
}

void addMarks(std::vector<ErasedAthlete>& marks, const std::vector<ErasedAthlete>& more)
{
    for (const ErasedAthlete& one : more)
        if (std::ranges::find(marks, one.mark, &ErasedAthlete::mark) == marks.end()) marks.push_back(one);
}

std::vector<ErasedAthlete> readErasedList(const QString& shelfFolder)
{
    QFile file(erasedListIn(shelfFolder));
    if (!file.open(QIODevice::ReadOnly)) return {};
    std::vector<ErasedAthlete> marks;
    const QJsonObject json = QJsonDocument::fromJson(file.readAll()).object();
    for (const QJsonValue item : json[QStringLiteral("erased")].toArray()) {
        const QJsonObject one = item.toObject();
        const QUuid mark(one[QStringLiteral("mark")].toString());
        const QDateTime at = QDateTime::fromString(one[QStringLiteral("erased_at")].toString(), Qt::ISODate);
        if (!mark.isNull() && at.isValid()) addMarks(marks, {{mark, at}});
    }
    return marks;
}

}  // namespace

Result<void> rememberErased(const QString& shelfFolder, const std::vector<ErasedAthlete>& erased)
{
    if (erased.empty()) return {};
    std::vector<ErasedAthlete> marks = readErasedList(shelfFolder);
    addMarks(marks, erased);
    QJsonArray list;
    for (const ErasedAthlete& one : marks)
        list.append(QJsonObject{{QStringLiteral("mark"), one.mark.toString(QUuid::WithoutBraces)},
                                {QStringLiteral("erased_at"), one.at.toUTC().toString(Qt::ISODate)}});
    const QByteArray bytes =
        QJsonDocument(QJsonObject{{QStringLiteral("format"), 1}, {QStringLiteral("erased"), list}}).toJson();
    QDir().mkpath(shelfFolder);
    QFile::setPermissions(shelfFolder, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    QSaveFile file(erasedListIn(shelfFolder));
    if (!file.open(QIODevice::WriteOnly) || !file.setPermissions(QFile::ReadOwner | QFile::WriteOwner)
        || file.write(bytes) != bytes.size() || !file.commit())
        return fail(ErrorCode::Storage,
                    ErasedListText::tr("“%1” can't be written, so a backup would bring back who was erased if the "
                                       "book itself is lost: %2.")
                        .arg(file.fileName(), file.errorString()));
    return syncFolderOf(file.fileName());
}

std::vector<ErasedAthlete> erasedFrom(const QString& book, const QString& shelfFolder)
{
    std::vector<ErasedAthlete> marks;
    if (QFileInfo(book).isFile())
        if (const auto db = Database::openReader(book))
            if (const auto own = ErasedAthleteRepository(**db).all()) addMarks(marks, *own);
    addMarks(marks, readErasedList(shelfFolder));
    return marks;
}

std::vector<ErasedAthlete> erasedBeside(const QString& shelfFolder)
{
    std::vector<ErasedAthlete> marks;
    const QFileInfo own(shelfFolder);
    for (const QFileInfo& shelf : own.absoluteDir().entryInfoList(QDir::Dirs | QDir::NoDotAndDotDot))
        if (shelf.absoluteFilePath() != own.absoluteFilePath()) addMarks(marks, readErasedList(shelf.filePath()));
    return marks;
}

}  // namespace steelyard
