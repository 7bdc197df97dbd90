#pragma once

// The autosaved text: document, view, settings and history as one JSON text.

#include "evenfall.hpp"
#include "output.hpp"
#include "state/session.hpp"

#include <string>

namespace evenfall::shell::state {

/// {"session": 1, "document": …, "view": …, "settings": …, "history": …} of the kept document; without its
/// history for a device that is nearly full.
[[nodiscard]] std::string write_session(const Session& session, bool with_history = true);

/// The shortest text that restore_session takes: a lure with neither view nor history.
[[nodiscard]] std::string session_of(const document::Document& document);

/// Restores a saved text. Refused (and nothing changed) where the text is no session or its document cannot
/// be read or built. Invalid words or numbers in view or settings are ignored, as is a history that does not
/// fit: losing them costs a tap, refusing costs the lure. `with_history` false leaves it out: a list of lures
/// does not need it.
[[nodiscard]] Problems restore_session(Session& session, const std::string& text, bool with_history = true);

/// The settings as JSON, and back: words that are not known are ignored.
[[nodiscard]] document::Tree settings_tree(const Settings& settings);
void take_settings(const document::Tree& tree, Settings& settings);

} // namespace evenfall::shell::state
