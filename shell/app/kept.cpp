#include "app/parts.hpp"

#include "look/words.hpp"
#include "look/words_shelf.hpp"
#include "state/session_json.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cfloat>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using widgets::Rect;

constexpr int columns_a_segment = 12;
constexpr float row_h = 64.0f;
constexpr float picture_w = 104.0f;

/// One kept lure: picture, name, when; the bin at its end throws it away.
bool kept_row(AppParts& parts, const KeptLure& lure) {
    widgets::Ui& ui = parts.ui;
    const look::Palette& ink = ui.inks();
    const Rect row = widgets::take_row(row_h);
    const Rect body{row.x, row.y, row.w - look::target - 8.0f, row.h};
    const widgets::Touch touch = widgets::touch_area(ui, "shelf.lure." + lure.id, body);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (touch.pressed) {
        list.AddRectFilled({row.x - 8.0f, row.y}, {body.right(), row.bottom() - 1.0f}, ink.pressed,
                           look::control_rounding);
    }
    list.AddRectFilled({row.x, row.bottom() - 1.0f}, {row.right(), row.bottom()}, ink.rule);
    draw_small_lure(ui, lure.side, {row.x, row.y + 8.0f, picture_w, row.h - 16.0f});
    const float left = row.x + picture_w + 12.0f;
    text_in(ui, {left, row.y + 8.0f, body.right() - left, 26.0f}, ui.type.body, ink.ink, lure.title);
    text_in(ui, {left, row.y + 34.0f, body.right() - left, 20.0f}, ui.type.small, ink.ink_soft, lure.when);
    if (touch.focused) focus_ring(ui, body, look::control_rounding);
    if (icon_button_at(
            ui, "shelf.drop." + lure.id,
            {row.right() - look::target, row.y + (row.h - look::target) / 2.0f, look::target, look::target},
            widgets::Icon::trash)) {
        parts.host.drop_kept(lure.id);
    }
    return touch.tapped;
}

/// The bin as a row, and open: its lures, each taken back at one tap, and what empties it, asked.
void draw_bin(AppParts& parts) {
    widgets::Ui& ui = parts.ui;
    if (parts.bin.empty()) {
        parts.bin_open = parts.empty_asked = false;
        return;
    }
    const std::string count = std::to_string(parts.bin.size());
    if (list_row(
            ui, "shelf.bin",
            {.title = parts.bin_open ? words::bin_hide : words::bin, .number = count, .has_chevron = true})) {
        parts.bin_open = !parts.bin_open;
        parts.empty_asked = false;
    }
    if (!parts.bin_open) return;
    for (const KeptLure& lure : parts.bin) {
        const std::string below = std::string(words::bin_take_back) + " · " + lure.when;
        if (list_row(ui, "shelf.back." + lure.id, {.title = lure.title, .below = below}))
            parts.host.take_back(lure.id);
    }
    widgets::gap();
    widgets::note(ui, words::bin_note);
    widgets::gap();
    if (!parts.empty_asked) {
        if (widgets::button(ui, "shelf.empty", words::bin_empty, widgets::ButtonKind::danger))
            parts.empty_asked = true;
        return;
    }
    const int tapped =
        widgets::button_row(ui, {{"shelf.empty.no", words::bin_empty_no},
                                 {"shelf.empty.yes", words::bin_empty_yes, widgets::ButtonKind::danger}});
    if (tapped >= 0) parts.empty_asked = false;
    if (tapped == 1) parts.host.empty_bin();
}

} // namespace

void draw_small_lure(widgets::Ui& ui, const std::vector<std::vector<drawing::WoodSpan>>& side,
                     const Rect& rect) {
    double left = DBL_MAX;
    double right = -DBL_MAX;
    double low = DBL_MAX;
    double high = -DBL_MAX;
    for (const auto& segment : side) {
        for (const drawing::WoodSpan& column : segment) {
            left = std::min(left, column.x_m);
            right = std::max(right, column.x_m);
            low = std::min(low, column.low_m);
            high = std::max(high, column.high_m);
        }
    }
    if (!(right > left) || !(high > low)) return;
    const double scale =
        std::min(static_cast<double>(rect.w) / (right - left), static_cast<double>(rect.h) / (high - low));
    const auto at = [&](double x_m, double z_m) {
        return ImVec2(rect.x + static_cast<float>((x_m - left) * scale),
                      rect.y + rect.h / 2.0f - static_cast<float>((z_m - 0.5 * (low + high)) * scale));
    };
    ImDrawList& list = *ImGui::GetWindowDrawList();
    // Softened edges would show as seams between the pieces of one filling.
    const ImDrawListFlags flags = list.Flags;
    for (const auto& segment : side) {
        list.Flags = flags & ~ImDrawListFlags_AntiAliasedFill;
        for (std::size_t i = 1; i < segment.size(); ++i) {
            const drawing::WoodSpan& a = segment[i - 1];
            const drawing::WoodSpan& b = segment[i];
            list.AddQuadFilled(at(a.x_m, a.low_m), at(a.x_m, a.high_m), at(b.x_m, b.high_m),
                               at(b.x_m, b.low_m), ui.inks().wood);
        }
        list.Flags = flags;
        for (const drawing::WoodSpan& column : segment)
            list.PathLineTo(at(column.x_m, column.high_m));
        for (auto column = segment.rbegin(); column != segment.rend(); ++column)
            list.PathLineTo(at(column->x_m, column->low_m));
        list.PathStroke(ui.inks().ink, ImDrawFlags_Closed, 1.25f);
    }
}

bool draw_kept(AppParts& parts) {
    if (parts.kept.empty() && parts.bin.empty()) return false;
    widgets::subheading(parts.ui, words::shelf_kept);
    for (const KeptLure& lure : parts.kept) {
        if (!kept_row(parts, lure)) continue;
        parts.host.take_kept(lure.id);
        return true;
    }
    draw_bin(parts);
    return false;
}

void App::clear_kept() {
    parts_->kept.clear();
    parts_->bin.clear();
    parts_->motion.recipes.clear();
    parts_->shelf_moved = true;
}

void App::show_kept(const std::string& id, const std::string& session_json, KeptAs as) {
    state::Session read(state::new_lure());
    KeptLure lure{id, words::kept_unreadable, std::move(as.when), as.time_ms};
    if (restore_session(read, session_json, false).empty() && read.evaluation()) {
        lure.title = read.kept().name;
        lure.document = read.kept();
        if (!as.in_bin) parts_->motion.recipes.push_back({id, read.kept()});
        const shape::Body& body = read.evaluation()->body;
        for (int i = 0; i < static_cast<int>(body.segments.size()); ++i) {
            lure.side.push_back(drawing::side_columns(body, i, columns_a_segment));
        }
    }
    (as.in_bin ? parts_->bin : parts_->kept).push_back(std::move(lure));
    parts_->shelf_moved = true;
}

std::string App::open_session(const std::string& text) {
    state::Session& session = parts_->session;
    const state::Settings settings = session.settings;
    if (const Problems refused = restore_session(session, text); !refused.empty())
        return sentences(refused, session.settings.units);
    session.settings = settings;
    parts_->another_lure();
    parts_->told_revision = session.revision() - 1; // the outside has not heard of this one
    parts_->say(words::opened + session.kept().name);
    return {};
}

} // namespace evenfall::shell
