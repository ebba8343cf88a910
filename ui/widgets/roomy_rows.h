// Lets the rows of a list or tree stand apart as far as those of the tables do.
//
//   giveRowsRoom(m_list);
//
// The view gets a delegate of its own for it; call it before any other is set.
#pragma once

class QAbstractItemView;

namespace steelyard {

void giveRowsRoom(QAbstractItemView* view);

}  // namespace steelyard
