#pragma once

// What autosave keeps: the document, the view and the settings, as one JSON text.

#include "base/outcome.hpp"
#include "state/session.hpp"

#include <string>

namespace evenfall::shell::state {

/// {"session": 1, "document": …, "view": …, "settings": …} of the kept document.
[[nodiscard]] std::string write_session(const Session& session);

/// Puts a saved text back. Refused (and nothing changed) when the text is no session or its document cannot
/// be read or built. An odd word or number in view or settings is passed over: losing them costs a tap,
/// refusing costs the lure.
[[nodiscard]] Problems restore_session(Session& session, const std::string& text);

} // namespace evenfall::shell::state
