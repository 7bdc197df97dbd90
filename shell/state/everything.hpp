#pragma once

// Everything that is kept on this device as one file: all lures with their logs, the bin, the drawer and the
// settings; and what taking such a file back would do. Pure. Photos are put beside it by the page, by the
// lures' ids; the picture behind the drawing is not in it.

#include "evenfall.hpp"
#include "state/drawer.hpp"
#include "state/settings.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// A lure as it is kept, and when it was last saved.
struct KeptDocument {
    document::Document document;
    double time_ms = 0.0; ///< since 1970; 0 to 8.64e15
    std::string id{};     ///< on the device where it was kept; "" for the one on its bench
};

struct Everything {
    std::vector<KeptDocument> lures;
    std::vector<KeptDocument> bin;
    Drawer drawer;
    Settings settings;
};

inline constexpr std::size_t most_everything_lures = 1000; ///< on the shelf, and as many in the bin
inline constexpr std::size_t most_everything_bytes = 8 * 1024 * 1024;

/// {"evenfall_everything": 1, "lures": [{"id": …, "kept_ms": …, "document": …}], "bin": […], "drawer": …,
/// "settings": …}
[[nodiscard]] std::string write_everything(const Everything& everything);
/// Strict: what is not known, is missing or beyond its limits is refused, and so is a lure that cannot be
/// built; its place and name are in the sentence.
[[nodiscard]] Outcome<Everything> read_everything(const std::string& text);

/// What taking a file back changes on this device.
struct Taking {
    std::vector<KeptDocument> lures; ///< come onto the shelf
    std::vector<KeptDocument> bin;   ///< come into the bin
    std::vector<std::string> away;   ///< ids of lures that go from the shelf into the bin
    std::size_t lures_here = 0;      ///< of the file's lures: are here already, the same in every figure
    Drawer drawer;                   ///< as it will be
    std::size_t new_pieces = 0;      ///< of the drawer
    Settings settings;               ///< as they will be
};

/// What is here: `all` without the lure on the bench, which stays there either way.
struct OnThisDevice {
    Everything all;
    document::Document bench;
};

/// The file's lures, bin and pieces are added to those that are here, and nothing else is changed: lures of
/// one name that differ are kept both, a piece of the drawer stays where the file has one of its name.
/// Refused where the drawer cannot hold all pieces.
[[nodiscard]] Outcome<Taking> merged(const Everything& file, const OnThisDevice& here);
/// The file's lures are on the shelf and no others: those go into the bin. Drawer and settings are the
/// file's.
[[nodiscard]] Taking replaced(const Everything& file, const OnThisDevice& here);

/// A file that waits for the builder's answer, and what each answer would do.
struct EverythingOffer {
    Everything file;
    Outcome<Taking> merge;
    Taking replace;
};

/// What the host saves: {"lures": [{"id": …, "session": …, "time": …}], "bin": […], "away": […], "drawer":
/// …}; ids are those of the file.
[[nodiscard]] std::string plan_text(const Taking& taking);

} // namespace evenfall::shell::state
