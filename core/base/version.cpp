#include "base/version.hpp"

namespace evenfall {

std::string_view version() {
    return EVENFALL_VERSION;
}

} // namespace evenfall
