// What lifters are called on screen and on paper: by their names, or by initials where others can see the screen.
//
//   format::person(review.name)                   "Ada Fulcrum", or "A. F."
//   format::people(history.undoLabel())           "add Ada Fulcrum", or "add A. F."
//
// Every name of a lifter that is shown goes through here, and nothing that is stored does. Which of the two is shown belongs to
// the program as a whole, like the locale: callPeople() sets it, with everybody of the book in the order of the book. Two of the
// same initials are told apart by a number behind the later one, so a lifter keeps theirs as long as nobody before them goes.
// May be called from any thread.
#pragma once

#include <QtCore/QString>
#include <QtCore/QStringList>

namespace steelyard::format {

void callPeople(bool byInitials, const QStringList& everybody);
[[nodiscard]] bool arePeopleInitials();

// A name alone.
[[nodiscard]] QString person(const QString& name);
// A text in which names may stand, whole as the book has them. What somebody typed otherwise ("Ada's knee") stays as it is.
[[nodiscard]] QString people(const QString& text);

}  // namespace steelyard::format
