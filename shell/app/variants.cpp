#include "app/parts.hpp"
#include "app/variant_rows.hpp"

#include "drawing/pen.hpp"
#include "drawing/world_to_screen.hpp"
#include "look/words_shelf.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/scroll_area.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace evenfall::shell {
namespace {

namespace words = look::words;
namespace pen = drawing::pen;
using drawing::WoodSpan;
using drawing::WorldToScreen;
using widgets::Rect;

constexpr int columns_a_segment = 48;
constexpr const char* field = "shelf.compare";
constexpr std::string_view of_demo = "demo.";

using Side = std::vector<std::vector<WoodSpan>>;

Side side_of(const state::Variant& variant) {
    const shape::Body& body = variant.evaluation.body;
    Side side;
    for (int i = 0; i < static_cast<int>(body.segments.size()); ++i)
        side.push_back(drawing::side_columns(body, i, columns_a_segment));
    return side;
}

/// Both lures from the side at one scale, noses and datum lines on each other: the one here filled, the other
/// as a line over it.
void draw_over_each_other(widgets::Ui& ui, const Side& here, const Side& other, const Rect& rect) {
    double aft_m = 0.0;
    double low_m = 0.0;
    double high_m = 0.0;
    for (const Side* side : {&here, &other}) {
        for (const auto& segment : *side) {
            for (const WoodSpan& column : segment) {
                aft_m = std::max(aft_m, column.x_m);
                low_m = std::min(low_m, column.low_m);
                high_m = std::max(high_m, column.high_m);
            }
        }
    }
    const double scale = drawing::fitting_px_per_m(aft_m, high_m - low_m, rect.w, rect.h);
    const WorldToScreen map(scale, 0.5 * aft_m, 0.5 * (low_m + high_m),
                            {rect.x + 0.5f * rect.w, rect.y + 0.5f * rect.h});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto each = [&](const Side& side, const auto& draw) {
        for (const auto& segment : side) {
            std::vector<ImVec2> back;
            std::vector<ImVec2> belly;
            for (const WoodSpan& column : segment) {
                back.push_back(pen::vec(map.at(column.x_m, column.high_m)));
                belly.push_back(pen::vec(map.at(column.x_m, column.low_m)));
            }
            draw(back, belly);
        }
    };
    const look::Palette& ink = ui.inks();
    each(here, [&](const auto& back, const auto& belly) {
        pen::fill_ribbon(list, back, belly, ink.wood);
        pen::outline_ribbon(list, back, belly, ink.ink_soft, pen::hair);
    });
    each(other, [&](const auto& back, const auto& belly) {
        pen::outline_ribbon(list, back, belly, ink.mark, pen::medium);
    });
}

constexpr std::array<widgets::TableColumn, 4> columns{{{0.0f, 0.31f, widgets::Align::left},
                                                       {0.31f, 0.50f, widgets::Align::right},
                                                       {0.50f, 0.76f, widgets::Align::right},
                                                       {0.76f, 1.0f, widgets::Align::right}}};

void table(widgets::Ui& ui, const std::vector<VariantRow>& rows) {
    const std::array<std::string_view, 4> titles{std::string_view{}, words::compare_col_here,
                                                 words::compare_col_other, words::compare_col_difference};
    widgets::table_head(ui, columns, titles);
    for (const VariantRow& row : rows) {
        const std::array<widgets::Cell, 4> cells{{{row.title, row.unit, false},
                                                  {row.here, {}, false},
                                                  {row.other, {}, false},
                                                  {row.difference, {}, true}}};
        widgets::table_row(ui, {}, columns, cells, false, row.topic);
    }
}

/// The lure on the bench, worked through once for each of its shown versions.
const state::Variant* here_of(AppParts& parts) {
    auto& variants = parts.variants;
    if (variants.here_revision != parts.session.revision()) {
        variants.here_revision = parts.session.revision();
        auto made = state::variant_of(parts.session.kept());
        variants.here = made.ok() ? std::optional(std::move(made).value()) : std::nullopt;
    }
    return variants.here ? &*variants.here : nullptr;
}

/// The lures of the shelf and the demos, to choose from.
std::vector<widgets::PickOption> options_of(const AppParts& parts) {
    std::vector<widgets::PickOption> options;
    for (const KeptLure& lure : parts.kept) {
        if (lure.document) options.push_back({lure.id, lure.title, lure.when});
    }
    for (const Demo& demo : parts.demos)
        options.push_back({std::string(of_demo) + demo.name, demo.title, {}});
    return options;
}

void compare_with(AppParts& parts, const std::string& key) {
    for (const KeptLure& lure : parts.kept) {
        if (lure.id == key && lure.document)
            return compare_beside(parts, {lure.document->name, *lure.document});
    }
    for (const Demo& demo : parts.demos) {
        if (std::string(of_demo) + demo.name != key) continue;
        if (const auto document = read_document(demo.json); document.ok())
            compare_beside(parts, {document->name, *document});
    }
}

} // namespace

void compare_beside(AppParts& parts, const state::WorkedOut& with) {
    auto other = state::variant_of(with.document);
    if (!other.ok()) {
        parts.toast.show(words::compare_cannot, true, parts.now_s);
        return;
    }
    auto& variants = parts.variants;
    variants.title = with.title;
    variants.other = std::move(other).value();
    variants.open = true;
    variants.out = 0.0f;
}

bool draw_compare_row(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    if (list_row(ui, field, {.title = words::compare, .below = words::compare_below, .has_chevron = true}))
        parts.picker.open(field, words::compare, options_of(parts), {});
    const auto chosen = parts.picker.collect(field);
    if (chosen) compare_with(parts, *chosen);
    return chosen.has_value();
}

void draw_variants(AppParts& parts, const Regions& where) {
    widgets::Ui& ui = parts.ui;
    auto& variants = parts.variants;
    const state::Variant* here = here_of(parts);
    if (here == nullptr || !variants.other) {
        variants.open = false;
        return;
    }
    const Rect place = sheet_place(where, std::min(620.0f, where.screen.w - 48.0f));
    bool leave = begin_sheet(ui, "variants", where.screen, place, where.stacked, variants.out);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    constexpr float head_h = 60.0f;
    text_in(ui, {at.x + 20.0f, at.y, place.w - 84.0f, head_h}, ui.type.title, ui.inks().ink,
            words::compare_title);
    if (icon_button_at(ui, "variants.close",
                       {at.x + place.w - 56.0f, at.y + 6.0f, look::target, look::target},
                       widgets::Icon::close))
        leave = true;
    widgets::begin_scroll_area(ui, "variants.list", {at.x, at.y + head_h, place.w, place.h - head_h}, 20.0f);
    const Rect drawn = widgets::take_row(std::min(0.34f * place.w, 180.0f));
    draw_over_each_other(ui, side_of(*here), side_of(*variants.other), drawn);
    widgets::note(ui, words::compare_here + here->document.name);
    widgets::note(ui, words::compare_other + variants.title);
    widgets::gap();
    table(ui, figure_rows(*here, *variants.other, ui.units));
    widgets::gap();
    widgets::note(ui, words::compare_difference_note);
    if (const auto lead = lead_rows(*here, *variants.other, ui.units); !lead.empty()) {
        widgets::subheading(ui, words::compare_lead);
        table(ui, lead);
    }
    widgets::gap();
    widgets::end_scroll_area(ui);
    end_sheet(ui);
    if (leave) variants.open = false;
}

} // namespace evenfall::shell
