#pragma once

#include "steps/desk.hpp"

#include <string>

namespace evenfall::shell::steps {

/// What hung on the lure for a reading: everything, single parts, a test weight. Takes away what cannot be
/// there at the reading's stage. True when it was changed.
bool hung_on_rows(PanelContext& context, const std::string& id, document::Reading& reading);

} // namespace evenfall::shell::steps
