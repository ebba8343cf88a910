#include "ui/print/whole_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QSaveFile>

namespace steelyard {
namespace {

struct WholeFileText {
    Q_DECLARE_TR_FUNCTIONS(WholeFileText)
};

Error cantWriteWhole(const QString& path, const QString& detail)
{
    return {
        ErrorCode::Storage,
        WholeFileText::tr("“%1” could not be written: %2. Check that the folder exists, can be written and has room. "
                          "What was there before is unchanged.")
            .arg(path, detail),
        detail};
}

}  // namespace

Result<void> writeWhole(const QString& path, const QByteArray& bytes)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return fail(cantWriteWhole(path, file.errorString()));
    const bool whole = file.write(bytes) == bytes.size() && file.flush();
    if (!whole) {
        const QString detail = file.errorString();
        file.cancelWriting();
        return fail(cantWriteWhole(path, detail));
    }
    if (!file.commit()) return fail(cantWriteWhole(path, file.errorString()));
    return {};
}

}  // namespace steelyard
