#pragma once

// How safe the work is on this device, and when the page reminds of saving everything to a file. Pure.

namespace evenfall::shell::state {

struct Safety {
    bool persisted = false; ///< the browser has promised to keep what is stored
    int changes = 0;        ///< since everything was last saved to a file
    double days = 0.0;      ///< since the first of those changes
};

inline constexpr int most_unsaved_changes = 60;
inline constexpr double most_unsaved_days = 7.0;

[[nodiscard]] constexpr bool reminder_due(const Safety& safety) {
    return safety.changes >= most_unsaved_changes || (safety.changes > 0 && safety.days >= most_unsaved_days);
}

} // namespace evenfall::shell::state
