#include "app/desktop/composition.h"

#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "ui/pages/import/book_importer.h"
#include "ui/pages/import/import_page.h"
#include "ui/shell/context.h"

#include <QtCore/QCoreApplication>
#include <QtWidgets/QVBoxLayout>
#include <QtWidgets/QWidget>

#include <memory>

namespace steelyard {

MainServices makeServices(const Clock& clock)
{
    MainServices services;
    services.reviewer = reviewRoster;
    services.makeEmptyBook = [&clock](const QString& path, const Progress&) -> Result<void> {
        STEELYARD_CHECK(newBook(path, clock));
        return {};
    };
    services.makeSampleClub = [&clock](const QString& path, const Progress& progress) -> Result<void> {
        STEELYARD_TRY(const auto book, newBook(path, clock));
        return fillSampleClub(*book, {.lastDay = clock.today()}, progress);
    };
    services.openImport = [](const UiContext& context, QWidget* parent) {
        // A window of its own, not a modal box: the review stays usable while a logbook is looked through.
        auto* window = new QWidget(parent, Qt::Window);
        window->setAttribute(Qt::WA_DeleteOnClose);
        window->setWindowTitle(QCoreApplication::translate("Composition", "Import a logbook"));
        window->resize(1100, 720);
        auto importer = std::make_shared<BookImporter>(context.book, context.jobs);
        auto* page = new ImportPage(*importer, context.prompter, context.jobs, window);
        auto* layout = new QVBoxLayout(window);
        layout->addWidget(page);
        QObject::connect(page, &ImportPage::closed, window, &QWidget::close);
        // The page refers to the importer, so the importer goes when the window has gone.
        QObject::connect(window, &QObject::destroyed, [importer] {});
        window->show();
        page->chooseFile();
    };
    return services;
}

}  // namespace steelyard
