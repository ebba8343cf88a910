// Everything that a window says, to be searched: what its widgets hold (seen or not), their tooltips, titles, models, menus, and
// what is painted, read back from a PDF that the window was drawn into.
#pragma once

#include "tests/support/temp_dir.h"

#include <QtCore/QProcess>
#include <QtGui/QAction>
#include <QtGui/QPainter>
#include <QtGui/QPdfWriter>
#include <QtWidgets/QAbstractItemView>
#include <QtWidgets/QApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QWidget>

#include <gtest/gtest.h>

namespace steelyard::testing_support {

inline QStringList textsOfModel(const QAbstractItemModel& model)
{
    QStringList texts;
    const int rows = std::min(model.rowCount(), 200);
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < model.columnCount(); ++column)
            for (const int role : {Qt::DisplayRole, Qt::ToolTipRole, Qt::AccessibleTextRole, Qt::StatusTipRole})
                texts << model.index(row, column).data(role).toString();
    for (int column = 0; column < model.columnCount(); ++column)
        for (const int role : {Qt::DisplayRole, Qt::ToolTipRole})
            texts << model.headerData(column, Qt::Horizontal, role).toString();
    return texts;
}

// With the widget's class before each text, to say where it stands.
inline QStringList textsOf(const QWidget& root)
{
    QStringList texts;
    QList<const QWidget*> all{&root};
    for (const QWidget* each : root.findChildren<QWidget*>()) all << each;
    for (const QWidget* each : all) {
        QStringList own{each->windowTitle(), each->toolTip(),        each->statusTip(),
                        each->whatsThis(),   each->accessibleName(), each->accessibleDescription()};
        for (const char* property : {"text", "plainText", "title", "placeholderText", "specialValueText"})
            own << each->property(property).toString();
        if (const auto* view = qobject_cast<const QAbstractItemView*>(each); view && view->model())
            own += textsOfModel(*view->model());
        if (const auto* box = qobject_cast<const QComboBox*>(each)) own += textsOfModel(*box->model());
        for (const QAction* action : each->actions()) own << action->text() << action->toolTip();
        own.removeAll(QString());
        for (const QString& text : own)
            texts << QStringLiteral("%1 %2: %3")
                         .arg(QString::fromLatin1(each->metaObject()->className()), each->objectName(), text);
    }
    return texts;
}

// What is painted, in the order of the PDF; empty when there is no pdftotext.
inline QString paintedBy(QWidget& window)
{
    const TempDir dir;
    {
        QPdfWriter pdf(dir.path(u"window.pdf"));
        pdf.setResolution(96);
        pdf.setPageSize(QPageSize(QSizeF(window.width(), window.height()) * 0.75, QPageSize::Point));
        pdf.setPageMargins({});
        QPainter painter(&pdf);
        window.render(&painter);
    }
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"),
                 {QStringLiteral("-layout"), dir.path(u"window.pdf"), QStringLiteral("-")});
    EXPECT_TRUE(reader.waitForFinished(30000)) << "pdftotext is not installed";
    return QString::fromUtf8(reader.readAllStandardOutput());
}

}  // namespace steelyard::testing_support
