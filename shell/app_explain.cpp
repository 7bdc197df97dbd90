#include "app_parts.hpp"
#include "look/words_explain.hpp"
#include "widgets/button.hpp"
#include "widgets/scroll_area.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>

namespace evenfall::shell {
namespace {

namespace words = look::words;

struct Explanation {
    std::string_view id;
    const char* means;
    const char* from;
    const char* way = nullptr;  ///< what leads on to where more of it stands
};
constexpr std::array explanations{
    Explanation{"answer.finished", words::explain_finished, words::explain_finished_from, words::explain_way_finished},
    Explanation{"answer.in_water", words::explain_in_water, words::explain_in_water_from},
    Explanation{"answer.fall", words::explain_fall, words::explain_fall_from},
    Explanation{"answer.hang", words::explain_hang, words::explain_hang_from},
    Explanation{"answer.righting", words::explain_righting, words::explain_righting_from},
    Explanation{"answer.chance", words::explain_chance, words::explain_chance_from, words::explain_way_chance}};

void lead_on(AppParts& parts, std::string_view id) {
    if (id == "answer.chance") {
        parts.session.view.step = state::Step::log;
    } else {
        parts.session.view.step = state::Step::water;
        parts.session.view.water_view = state::WaterView::ledger;
    }
}

}  // namespace

void draw_explanation(AppParts& parts, const Regions& where) {
    const auto found = std::find_if(explanations.begin(), explanations.end(), [&](const Explanation& e) { return e.id == parts.explained.id; });
    if (found == explanations.end()) {
        parts.explained.id.clear();
        return;
    }
    widgets::Ui& ui = parts.ui;
    widgets::Rect place = where.keypad;
    if (!where.stacked) {
        place = {where.panel.x - 32.0f, look::gutter, where.panel.w + 32.0f, where.bar.bottom() - 2.0f * look::gutter};
    } else {
        place.h = std::min(where.screen.h - 24.0f, 460.0f);
        place.y = where.keypad.bottom() - place.h;
    }
    bool leave = begin_sheet(ui, "explain", where.screen, place, where.stacked, parts.explained.out);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    constexpr float head_h = 60.0f;
    text_in(ui, {at.x + 20.0f, at.y, place.w - 84.0f, head_h}, ui.type.title, ui.inks().ink, parts.explained.headline);
    if (sign_button_at(ui, "explain.close", {at.x + place.w - 56.0f, at.y + 6.0f, look::target, look::target}, widgets::Sign::close)) {
        leave = true;
    }
    widgets::begin_scroll_area(ui, "explain.text", {at.x, at.y + head_h, place.w, place.h - head_h}, 20.0f);
    widgets::paragraph(ui, found->means);
    widgets::gap();
    widgets::note(ui, found->from);
    if (found->way != nullptr) {
        widgets::gap();
        if (widgets::button(ui, "explain.way", found->way)) {
            lead_on(parts, found->id);
            leave = true;
        }
    }
    widgets::end_scroll_area(ui);
    end_sheet(ui);
    if (leave) parts.explained.id.clear();
}

}  // namespace evenfall::shell
