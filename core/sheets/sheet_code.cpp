#include "core/sheets/sheet_code.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct SheetCodeText {
    Q_DECLARE_TR_FUNCTIONS(SheetCodeText)
};

constexpr QStringView kCodeLetters = u"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr QStringView kCheckLetters = u"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
constexpr int kBitsOfLetter = 5;
constexpr qsizetype kAthleteLetters = 6;
constexpr qsizetype kDayLetters = 4;
constexpr int kUnusedBits = 2;  // of the first four bytes of a record's id
const QDate kFirstSheetDay(1900, 1, 1);

QString inLetters(std::uint32_t value, qsizetype length)
{
    QString text(length, kCodeLetters[0]);
    for (qsizetype i = length; i-- > 0; value >>= kBitsOfLetter)
        text[i] = kCodeLetters[static_cast<qsizetype>(value & 31U)];
    return text;
}

QString lettersOf(const QUuid& athlete)
{
    return inLetters(athlete.data1 >> kUnusedBits, kAthleteLetters);
}

QChar asMeant(QChar typed)
{
    if (typed == u'O') return u'0';
    if (typed == u'I' || typed == u'L') return u'1';
    return typed;
}

}  // namespace

QChar checkCharacter(QStringView text)
{
    const int letters = static_cast<int>(kCheckLetters.size());
    int product = letters;
    for (const QChar letter : text) {
        int sum = (product + static_cast<int>(kCheckLetters.indexOf(letter))) % letters;
        if (sum == 0) sum = letters;
        product = 2 * sum % (letters + 1);
    }
    return kCheckLetters[(letters + 1 - product) % letters];
}

QString sheetIdFor(const QUuid& athlete, QDate date)
{
    const auto days = static_cast<std::uint32_t>(kFirstSheetDay.daysTo(date));
    const QString who = lettersOf(athlete);
    const QString when = inLetters(days, kDayLetters);
    return who + u'-' + when + checkCharacter(QString(who + when));
}

Result<SheetCode> readSheetId(QStringView typed)
{
    QString text;
    for (const QChar letter : typed)
        if (!letter.isSpace() && letter != u'-') text += asMeant(letter.toUpper());
    if (text.isEmpty())
        return fail(ErrorCode::Invalid,
                    SheetCodeText::tr("Scan the square on a sheet, or type the sheet's number from its head."));
    if (text.size() != kAthleteLetters + kDayLetters + 1)
        return fail(ErrorCode::Invalid,
                    SheetCodeText::tr("“%1” is not the number of a sheet: that has eleven letters and digits, as %2.")
                        .arg(typed.trimmed().toString(), QStringLiteral("04HTQK-1DBM4")));
    std::uint32_t days = 0;
    for (qsizetype i = 0; i + 1 < text.size(); ++i) {
        const qsizetype value = kCodeLetters.indexOf(text[i]);
        if (value < 0)
            return fail(ErrorCode::Invalid, SheetCodeText::tr("“%1” doesn't occur in the number of a sheet: compare it "
                                                              "with the paper.")
                                                .arg(text[i]));
        if (i >= kAthleteLetters) days = (days << kBitsOfLetter) | static_cast<std::uint32_t>(value);
    }
    if (asMeant(checkCharacter(QStringView(text).chopped(1))) != text.back())
        return fail(ErrorCode::Invalid,
                    SheetCodeText::tr("One character of “%1” is wrong: compare it with the sheet, or scan it again.")
                        .arg(typed.trimmed().toString()));
    return SheetCode{text.left(kAthleteLetters), kFirstSheetDay.addDays(days)};
}

Result<Id<Athlete>> athleteOfSheet(const SheetCode& code, std::span<const Row<Athlete>> athletes)
{
    std::optional<Id<Athlete>> found;
    for (const Row<Athlete>& row : athletes) {
        if (lettersOf(row.uuid) != code.athlete) continue;
        if (found)
            return fail(ErrorCode::Conflict,
                        SheetCodeText::tr("Two lifters of this book share the number of this sheet: choose the one on "
                                          "the paper by name."));
        found = row.id;
    }
    if (!found)
        return fail(
            ErrorCode::NotFound,
            SheetCodeText::tr("Nobody in this book has this sheet: it was printed from another book, or the lifter was "
                              "erased since."));
    return *found;
}

}  // namespace steelyard
