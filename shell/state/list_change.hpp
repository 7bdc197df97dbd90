#pragma once

// Changes of the document's lists, shared by the files of edits. Private to this folder.

#include "evenfall.hpp"

#include <functional>

namespace evenfall::shell::state {

/// A change of a list: an entry removed, inserted or exchanged with another.
struct ListChange {
    enum { taken_out, put_in, changed_places } how;
    int at = 0;
    int other = 0;

    /// New index of an entry; −1 where it was removed.
    [[nodiscard]] int operator()(int i) const;
};
[[nodiscard]] ListChange taken_out(int at);
[[nodiscard]] ListChange put_in(int at);

/// Corrections of a list's entries follow them. An absent index means the first entry; for carved size, the
/// whole body.
void follow(document::Document& document, document::Cause cause, ListChange moves);

/// The station that is farthest from every cut and every hole that `counts`.
[[nodiscard]] double roomiest_x_m(const document::Document& document,
                                  const std::function<bool(const document::Hole&)>& counts);

} // namespace evenfall::shell::state
