#pragma once

// State of a step panel while it is drawn: it reads the session, draws widgets, and collects the changes
// asked for. Nothing is applied while it draws.

#include "evenfall.hpp"
#include "state/drawer.hpp"
#include "state/edits.hpp"
#include "state/motion.hpp"
#include "state/session.hpp"
#include "widgets/number_field.hpp"
#include "widgets/ui.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall::shell::steps {

using widgets::NumberSpec;
using widgets::Quantity;

struct PanelContext {
    widgets::Ui& ui;
    const state::Session& session;
    state::PanelState& motion;
    state::Drawer& drawer;
    state::ViewState view; ///< a copy to be changed; written back after drawing

    enum class Act { none, plan, keep, drop, finish };
    Act act = Act::none;
    std::vector<state::Change> changes;
    std::string refusal{};       ///< why something other than a change of the document was refused
    bool put_down_draft = false; ///< discard the draft where its change is accepted
    std::optional<state::Retrieve> retrieve{}; ///< the reel's settings, where they were changed

    [[nodiscard]] const document::Document& document() const { return session.document(); }
    /// Only called where there is one: otherwise panel() draws a sentence instead of a step.
    [[nodiscard]] const Evaluation& evaluation() const { return *session.evaluation(); }

    void change(std::string label, state::Edit edit) {
        changes.push_back({std::move(label), std::move(edit), true});
    }
    void choose(state::ItemKind kind, int index);
    [[nodiscard]] bool chosen(state::ItemKind kind, int index) const {
        return view.selection.is(kind, index);
    }
    /// To be called before an item's row: true where it is chosen. Scrolls to it when it was chosen on the
    /// drawing.
    bool row_chosen(state::ItemKind kind, int index);
};

/// The heading of a section of a panel; its rows are drawn only where this is true. A section that holds
/// items of `kind` opens by itself when one of them was chosen on the drawing. `said` is shown while it is
/// closed.
struct Section {
    const char* id; ///< "section.shape.size"
    std::string_view title;
    std::string said{};
    bool at_first = false; ///< open until the builder closes it
    std::initializer_list<state::ItemKind> holds{};
};
[[nodiscard]] bool section(PanelContext& context, const Section& which);

/// What is to be read before the work of a step begins: a section that is open until the builder closes it.
struct Caution {
    const char* title = "";
    const char* text = "";
};
void caution_section(PanelContext& context, const char* id, const std::vector<Caution>& cautions);

/// "Depth of hole 2", for the history.
[[nodiscard]] std::string label_of(std::string_view what, std::string_view kind, int index);

/// A number field that makes an edit when it is set.
void number(PanelContext& context, const std::string& id, std::string_view label, double value,
            const NumberSpec& spec, const std::string& history,
            const std::function<state::Edit(double)>& edit, std::string_view below = {});
void optional_number(PanelContext& context, const std::string& id, std::string_view label,
                     std::optional<double> value, double start, const NumberSpec& spec,
                     std::string_view absent, const std::string& history,
                     const std::function<state::Edit(std::optional<double>)>& edit,
                     std::string_view below = {});

/// A field for a material of a use, from the core's table; with `none` as first option where it may be left
/// out (key ""). Returns the chosen id.
[[nodiscard]] std::optional<std::string> pick_material(PanelContext& context, const std::string& id,
                                                       std::string_view label, materials::Use use,
                                                       std::string_view chosen, std::string_view none = {},
                                                       std::string_view none_below = {});

/// Values in the chosen units.
[[nodiscard]] std::string text_of(const PanelContext& context, double value, Quantity quantity);
/// Decimals for a coat's thickness: hundredths of a millimetre, where lengths have tenths.
[[nodiscard]] int fine_decimals(const PanelContext& context);
[[nodiscard]] std::string number_of(const PanelContext& context, double value, Quantity quantity);
/// One end of the range of a speed of fall.
[[nodiscard]] std::string fall_end_text(const PanelContext& context, double speed_m_s);
[[nodiscard]] std::string_view unit_of(const PanelContext& context, Quantity quantity);
/// A column's title with its unit: "depth mm".
[[nodiscard]] std::string titled(const PanelContext& context, std::string_view title, Quantity quantity);
/// Weight in water, with sign: "+1.42 g", "−0.30 g".
[[nodiscard]] std::string signed_mass(const PanelContext& context, double mass_kg);
[[nodiscard]] std::string_view provenance_words(materials::Provenance provenance);
/// A segment's name, or "Segment 2" where it has none.
[[nodiscard]] std::string segment_name(const document::Document& document, int segment);

} // namespace evenfall::shell::steps
