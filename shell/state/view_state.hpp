#pragma once

// What is shown: the open step, the chosen item, the station of the section, the zoom. Kept over a reload,
// not undone.

#include "output.hpp"

#include <map>
#include <optional>
#include <string>

namespace evenfall::shell::state {

/// The steps, in the order of work.
enum class Step { shape, joints, hardware, lead, finish, water, log, sheet };
inline constexpr int step_count = 8;

/// The chosen item; `index` is its index in the document's list of that kind.
enum class ItemKind {
    none,
    joint,
    hole,
    pocket,
    hanger,
    part,
    coat,
    back_point,
    belly_point,
    width_point,
    corner_point,
    reading,
    section_point,
    tail
};

struct Selection {
    ItemKind kind = ItemKind::none;
    int index = -1;

    bool operator==(const Selection&) const = default;
    [[nodiscard]] bool is(ItemKind k, int i) const { return kind == k && index == i; }
};

/// The step in whose panel an item is edited.
[[nodiscard]] constexpr Step step_of(ItemKind kind) {
    switch (kind) {
    case ItemKind::joint:
        return Step::joints;
    case ItemKind::pocket:
    case ItemKind::hanger:
    case ItemKind::part:
    case ItemKind::tail:
        return Step::hardware;
    case ItemKind::hole:
        return Step::lead;
    case ItemKind::coat:
        return Step::finish;
    case ItemKind::reading:
        return Step::log;
    case ItemKind::none:
    case ItemKind::back_point:
    case ItemKind::belly_point:
    case ItemKind::width_point:
    case ItemKind::corner_point:
    case ItemKind::section_point:
        break;
    }
    return Step::shape;
}

/// The view under the side view on a small screen.
enum class SmallView { above, section, hang };

/// The curve that the Shape step lists.
enum class CurveKind { back, belly, half_width, corners };

/// The view of the Water step's panel.
enum class WaterView { waters, fall, afloat, swim, season, hinges, ledger };

/// The view of the Bench log's panel.
enum class LogView { now, readings, uncertainty };

/// Limits of the depth of a fall.
inline constexpr double least_fall_depth_m = 0.1;
inline constexpr double most_fall_depth_m = 20.0;

/// The views in which items can be dragged.
enum class Pane { side, above, section };

/// Extent of the lure with all its parts [m].
struct DrawnExtent {
    double fore_m = 0.0;
    double aft_m = 0.0;
    double top_m = 0.0;
    double low_m = 0.0;   ///< hooks included
    double belly_m = 0.0; ///< wood only
    double half_width_m = 0.0;

    bool operator==(const DrawnExtent&) const = default;
};

struct DragState {
    bool down = false;
    bool moved = false;     ///< moved farther than a tap's wobble
    Selection moving;       ///< the item that follows the finger; none = the station of the section
    Pane pane = Pane::side; ///< the view it is held in
    double offset_u = 0.0;  ///< from the finger to the item's own place, so that it does not jump
    double offset_v = 0.0;
    double to_u = 0.0; ///< requested place of the item
    double to_v = 0.0;
    std::optional<DrawnExtent> drawn; ///< the extent that the drawing was fitted to when the drag began, so
                                      ///< that the scale stays constant
    bool refused = false;             ///< the place is forbidden: the session's problems say why

    bool operator==(const DragState&) const = default;
};

/// Zoom and offset of the drawing in its window; the offset in shares of the window's size.
struct Zoom {
    float times = 1.0f;
    float x = 0.0f; ///< ≤ 0
    float y = 0.0f; ///< ≤ 0

    bool operator==(const Zoom&) const = default;
};
inline constexpr float most_zoom = 12.0f;

/// The last tap on empty paper, to recognise a double tap.
struct LastTap {
    double at_s = -1.0;
    float x = 0.0f;
    float y = 0.0f;

    bool operator==(const LastTap&) const = default;
};

/// Options of the build sheet.
struct SheetSettings {
    std::optional<SheetPaper> paper; ///< as chosen; absent: the usual one of the units that are set
    int lures = 1;
    std::map<std::string, int>
        with{}; ///< number of lures from other recipes on the shelf, by their ids; not kept over a reload

    bool operator==(const SheetSettings&) const = default;
};
inline constexpr int most_lures = 500;

struct ViewState {
    Step step = Step::lead;
    Selection selection;
    double section_x_m = 0.06; ///< station of the section view, from the nose
    SmallView small_view = SmallView::above;
    CurveKind curve = CurveKind::back;
    bool reveal = false;      ///< the item was chosen on the drawing: scroll its row into view
    bool ledger_open = false; ///< Water step: the ledger's lines are expanded
    WaterView water_view = WaterView::waters;
    double fall_depth_m = 2.0;   ///< depth of the drawn fall
    bool season_by_salt = false; ///< the sweep by salinity instead of temperature
    LogView log_view = LogView::now;
    SheetSettings sheet;
    std::map<std::string, bool> sections{}; ///< those that were opened or closed, by their ids; see open()
    bool adding_reading = false;            ///< Bench log: the kinds of reading are listed to choose from
    bool snap = true;                       ///< dragged items snap to round numbers and levels
    bool mirror = false;                    ///< back and belly line move opposite ways
    bool drilling = false; ///< one hole a screen: of the log's advice in the Bench log, else of the plan
    int drill_screen = 0;
    Zoom zoom;
    LastTap last_tap;
    DragState touch; ///< the finger on the drawing

    bool operator==(const ViewState&) const = default;
    /// Whether a section of a panel is open; one that was never touched is as `at_first`.
    [[nodiscard]] bool open(const std::string& section, bool at_first) const {
        const auto found = sections.find(section);
        return found == sections.end() ? at_first : found->second;
    }
    /// Clears everything chosen, held or begun of the lure that is closed.
    void clear_lure_state() {
        selection = {};
        touch = {};
        adding_reading = false;
        drilling = false;
        drill_screen = 0;
    }
};

} // namespace evenfall::shell::state
