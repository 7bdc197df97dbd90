#include "widgets/items.hpp"

#include <algorithm>

namespace evenfall::shell::widgets {

const Item* Items::find(std::string_view id) const {
    const auto at =
        std::find_if(shown_.begin(), shown_.end(), [id](const Item& item) { return item.id == id; });
    return at == shown_.end() ? nullptr : &*at;
}

} // namespace evenfall::shell::widgets
