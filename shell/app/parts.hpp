#pragma once

// What the application is made of; shared by the files of this folder and by nothing else.

#include "app/app.hpp"
#include "drawing/outline.hpp"
#include "look/said.hpp"
#include "starter.hpp"
#include "state/drawer.hpp"
#include "state/everything.hpp"
#include "state/motion.hpp"
#include "state/session.hpp"
#include "state/variants.hpp"
#include "widgets/bars.hpp"
#include "widgets/keypad.hpp"
#include "widgets/pick_field.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell {

/// A demo lure that can be opened from the shelf.
struct Demo {
    std::string name;  ///< file name without its ending
    std::string title; ///< name of the lure in it
    std::string json;
};

/// A lure kept on this device: how it is listed on the shelf or in the bin.
struct KeptLure {
    std::string id;
    std::string title;
    std::string when;
    double time_ms = 0.0;
    std::optional<document::Document> document{};       ///< absent where it cannot be read
    std::vector<std::vector<drawing::WoodSpan>> side{}; ///< its segments from the side
};

/// The card that a new lure begins with. Its choices stay for the next one.
struct NewLureCard {
    bool open = false;
    float out = 0.0f;
    starter::LureCard choices;
    std::string refusal{}; ///< the choice that forbids it
};

struct AppParts {
    explicit AppParts(platform::Host& outside) : host(outside), session(state::new_lure()) {
        ui.host = &outside;
        ui.keypad = &keypad;
        ui.picker = &picker;
    }

    platform::Host& host;
    look::Translator translator;
    std::string locale;        ///< of the device
    std::string told_language; ///< to the host
    state::Session session;
    state::PanelState motion;
    state::Drawer drawer;
    unsigned told_drawer = 0;
    unsigned told_picture = 0;
    widgets::Ui ui;
    widgets::Keypad keypad;
    widgets::Picker picker;
    widgets::Toast toast;
    std::vector<Demo> demos;
    std::vector<KeptLure> kept;
    std::vector<KeptLure> bin;
    bool bin_open = false;                         ///< the bin's lures are listed
    bool empty_asked = false;                      ///< emptying the bin is to be confirmed
    std::optional<state::EverythingOffer> offered; ///< from a file, until it is answered
    state::Safety safety;
    bool reminded = false; ///< in this visit, to save everything
    struct {
        bool open = false;
        float out = 0.0f;
        std::string title;
        std::optional<state::Variant> other;
        std::optional<state::Variant> here;
        std::optional<unsigned> here_revision;
    } variants; ///< the lure on the bench beside another one
    double now_s = 0.0;

    NewLureCard card;
    bool shelf_open = false;
    bool install_offered = false; ///< the browser would put the page among the device's programs
    bool shelf_moved = false;     ///< its lures have become others since the sheet was shown
    bool shelf_to_top = false;    ///< what the builder is to see first has come: scroll there
    float shelf_out = 0.0f;

    // What was last told to the outside.
    unsigned told_revision = 0;
    state::Settings told_settings;
    state::ViewState told_view;
    Problems told_problems;
    unsigned told_refusals = 0;
    std::optional<widgets::Rect> told_sheet; ///< where the sheet is seen
    unsigned sheet_revision = 0;
    bool told_drilling = false;
    std::string last_problem;
    std::optional<state::Step> drawn_step; ///< none where another lure has come

    /// The shelf or two lures side by side lie over the bench.
    [[nodiscard]] bool sheet_open() const { return shelf_open || variants.open || card.open; }
    /// Another lure lies on the bench: what was open, typed or begun on the one before it is put away.
    void another_lure();
    void say(std::string sentence) { toast.show(std::move(sentence), false, now_s); }
};

/// Sentences of problems, one after the other.
[[nodiscard]] std::string sentences(const Problems& problems, const units::UnitSet& units);

/// What the strip speaks of: the lure as its readings have it, where there are any. Only where it can be
/// built.
[[nodiscard]] const Evaluation& evaluation_shown(const state::Session& session,
                                                 const Uncertainty* uncertainty);
/// The answers as the strip shows them.
[[nodiscard]] std::vector<widgets::Answer>
strip_answers(const state::Session& session, state::BenchAnswerCache& bench, const widgets::Units& units);

/// One of them that was tapped, with the figures that went into it.
[[nodiscard]] help::Asked asked_of(const state::Session& session, state::BenchAnswerCache& bench,
                                   const widgets::Units& units, const widgets::Answer& answer);

/// Small picture of a lure from the side, as large as `rect` allows, nose left as in the drawing.
void draw_small_lure(widgets::Ui& ui, const std::vector<std::vector<drawing::WoodSpan>>& side,
                     const widgets::Rect& rect);
/// The kept lures and the bin as rows of the shelf. True when one was taken.
bool draw_kept(AppParts& parts);
/// Everything in one file: a file that is offered, at the top of the shelf, and the rows that save one. True
/// when the shelf is to close.
bool draw_offer(AppParts& parts);
bool draw_everything(AppParts& parts);
/// Once a visit, in a frame: says that everything should be saved to a file, where that is due.
void remind(AppParts& parts);
/// The row that chooses a lure to compare with the one on the bench; true when one was chosen. And the sheet
/// with both.
bool draw_compare_row(AppParts& parts);
void compare_beside(AppParts& parts, const state::WorkedOut& with);
void draw_variants(AppParts& parts, const Regions& where);
/// The place of a sheet over the bench: from below on an upright screen, else at the right, `wide` px wide.
[[nodiscard]] widgets::Rect sheet_place(const Regions& where, float wide);

/// A lure in place of the one on the bench, which goes onto the shelf. False where nothing was changed.
bool open_of_its_own(AppParts& parts, state::WorkedOut lure);

/// The sheet with lures, sharing and what is set for this bench.
void draw_shelf(AppParts& parts, const Regions& where);

/// The card of a new lure; opened from the shelf.
void draw_new_card(AppParts& parts, const Regions& where);

/// A setting of the units of one quantity.
void unit_choice(AppParts& parts, const char* id, const char* label, widgets::Quantity quantity);

/// A widget's choice put into the settings.
void keep_unit(state::Settings& settings, widgets::Quantity quantity, widgets::Unit unit);

} // namespace evenfall::shell
