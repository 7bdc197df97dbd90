#pragma once

// The autosaved text: document, view and settings as one JSON text.

#include "evenfall.hpp"
#include "state/session.hpp"

#include <string>

namespace evenfall::shell::state {

/// {"session": 1, "document": …, "view": …, "settings": …} of the kept document.
[[nodiscard]] std::string write_session(const Session& session);

/// Restores a saved text. Refused (and nothing changed) where the text is no session or its document cannot
/// be read or built. Invalid words or numbers in view or settings are ignored: losing them costs a tap,
/// refusing costs the lure.
[[nodiscard]] Problems restore_session(Session& session, const std::string& text);

} // namespace evenfall::shell::state
