#pragma once

// What is looked at: the open step, the chosen item, the station of the section, the zoom. Kept over a
// reload, never undone.

#include <map>
#include <optional>
#include <string>

namespace evenfall::shell::state {

/// The steps of the bench, in the order of the work.
enum class Step { shape, joints, hardware, lead, finish, water, log, sheet };
inline constexpr int step_count = 8;

/// What the finger has chosen; `index` counts in the document's own list of that kind.
enum class ItemKind {
    none,
    joint,
    hole,
    pocket,
    part,
    coat,
    top_point,
    bottom_point,
    width_point,
    fullness_point,
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
    case ItemKind::part:
    case ItemKind::tail:
        return Step::hardware;
    case ItemKind::hole:
        return Step::lead;
    case ItemKind::coat:
        return Step::finish;
    case ItemKind::reading:
        return Step::log;
    default:
        return Step::shape;
    }
}

/// What a small screen shows under the side view.
enum class SmallView { above, section, hang };

/// Which curve of the drawing the Shape step lists.
enum class Curve { top, bottom, half_width, fullness };

/// What the Water step's panel shows.
enum class WaterView { waters, fall, afloat, season, hinges, ledger };

/// What the Bench log's panel shows.
enum class LogView { now, readings, uncertainty };

/// Depths to which a fall may be asked for.
inline constexpr double least_fall_depth_m = 0.1;
inline constexpr double most_fall_depth_m = 20.0;

/// The views of the drawing that things can be dragged in.
enum class Pane { side, above, section };

/// A finger on the drawing.
/// How high and wide the lure is, drawn out with all that hangs on it [m].
struct Spans {
    double fore_m = 0.0;
    double aft_m = 0.0;
    double top_m = 0.0;
    double low_m = 0.0;   ///< hooks included
    double belly_m = 0.0; ///< wood only
    double half_width_m = 0.0;

    bool operator==(const Spans&) const = default;
};

struct Touch {
    bool down = false;
    bool moved = false;     ///< has gone farther than a tap's wobble
    Selection moving;       ///< the item that goes with the finger; none = the station of the section does
    Pane pane = Pane::side; ///< the view it is held in
    double offset_u = 0.0;  ///< from the finger to the item's own place, so that it does not jump
    double offset_v = 0.0;
    double to_u = 0.0; ///< where the item is asked to go
    double to_v = 0.0;
    std::optional<Spans>
        drawn; ///< what the drawing was fitted to when the finger came: it must not shrink under the hand
    bool refused = false; ///< it cannot be there: the session's problems say why

    bool operator==(const Touch&) const = default;
};

/// How the sheet lies under its window: enlarged, and moved by shares of the window's size.
struct Zoom {
    float times = 1.0f;
    float x = 0.0f; ///< ≤ 0
    float y = 0.0f; ///< ≤ 0

    bool operator==(const Zoom&) const = default;
};
inline constexpr float most_zoom = 12.0f;

/// The last tap on bare paper, for the second one.
struct LastTap {
    double at_s = -1.0;
    float x = 0.0f;
    float y = 0.0f;

    bool operator==(const LastTap&) const = default;
};

/// How the build sheet is wanted.
struct SheetWish {
    bool letter = false; ///< else A4
    int lures = 1;
    std::map<std::string, int>
        with{}; ///< lures of other recipes on the shelf, by their ids; not kept over a reload

    bool operator==(const SheetWish&) const = default;
};
inline constexpr int most_lures = 500;

struct ViewState {
    Step step = Step::lead;
    Selection selection;
    double section_x_m = 0.06; ///< station of the section view, from the nose
    SmallView small_view = SmallView::above;
    Curve curve = Curve::top;
    bool reveal = false;      ///< the chosen item was chosen on the drawing: its row is to come into view
    bool ledger_open = false; ///< Water step: the ledger's lines are unfolded
    WaterView water_view = WaterView::waters;
    double fall_depth_m = 2.0;   ///< how deep the drawn fall goes
    bool season_by_salt = false; ///< the sweep over salt instead of warmth
    LogView log_view = LogView::now;
    SheetWish sheet;
    bool adding_reading = false; ///< Bench log: the kinds of reading are laid out to choose from
    bool snap = true;            ///< dragged things go to round figures and levels
    bool mirror = false;         ///< back and belly line move opposite ways
    Zoom zoom;
    LastTap last_tap;
    Touch touch; ///< what a finger on the drawing is doing

    bool operator==(const ViewState&) const = default;
    /// Nothing of the lure that leaves the bench stays chosen, held or begun.
    void leave_lure() {
        selection = {};
        touch = {};
        adding_reading = false;
    }
};

} // namespace evenfall::shell::state
