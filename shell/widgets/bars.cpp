#include "widgets/bars.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {

void card(Ui& ui, const Rect& rect, ImU32 ground) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, ground, look::card_rounding);
    list.AddRect({rect.x + 0.5f, rect.y + 0.5f}, {rect.right() - 0.5f, rect.bottom() - 0.5f}, ui.inks().rule,
                 look::card_rounding);
}

std::string answer_strip(Ui& ui, const Rect& rect, std::span<const Answer> answers, int columns) {
    const look::Palette& ink = ui.inks();
    const int count = static_cast<int>(answers.size());
    const int lines = (count + columns - 1) / columns;
    const float cell_w = rect.w / static_cast<float>(columns);
    const float cell_h = rect.h / static_cast<float>(lines);
    std::string tapped;
    for (int i = 0; i < count; ++i) {
        const Answer& answer = answers[static_cast<std::size_t>(i)];
        // The last answer takes the rest of the last line.
        const int column = i % columns;
        const float width = i + 1 == count ? cell_w * static_cast<float>(columns - column) : cell_w;
        const float x = rect.x + static_cast<float>(column) * cell_w;
        const int row = i / columns;
        const float y = rect.y + static_cast<float>(row) * cell_h;
        const float text_w = width - 12.0f;
        const Rect cell{x - 6.0f, y, width - 2.0f, cell_h};
        const Touch touch = touch_area(ui, answer.id, cell);
        if (touch.tapped) tapped = answer.id;
        if (touch.pressed) {
            ImGui::GetWindowDrawList()->AddRectFilled({cell.x, cell.y}, {cell.right(), cell.bottom()},
                                                      ink.pressed, look::control_rounding);
        }
        if (touch.focused) focus_ring(ui, cell.inset(3.0f), look::control_rounding);
        const bool low = cell_h < 66.0f;
        const float top = y + (cell_h - (low ? 54.0f : 66.0f)) / 2.0f;
        const float figure_y = top + (low ? 17.0f : 20.0f);
        text_in(ui, {x, top, text_w, 16.0f}, ui.type.small, ink.ink_soft, answer.title);
        float figure_x = x;
        if (answer.off_target) {
            // A hollow diamond marks a value off its target. The line below names the target.
            const ImVec2 m(x + 5.0f, figure_y + 13.0f);
            ImGui::GetWindowDrawList()->AddQuad({m.x, m.y - 5.5f}, {m.x + 5.5f, m.y}, {m.x, m.y + 5.5f},
                                                {m.x - 5.5f, m.y}, ink.mark, 2.0f);
            figure_x += 15.0f;
        }
        figure_in(ui, {figure_x, figure_y, text_w, 26.0f}, low ? ui.type.body_strong : ui.type.title, ink.ink,
                  answer.number, answer.unit, Align::left);
        // Of two items below a figure, the last one (the target) is kept where there is room for only one.
        constexpr std::string_view between = " · ";
        std::string below = answer.below;
        if (const std::size_t at = below.rfind(between);
            at != std::string::npos && text_width(ui.type.small, below) > text_w)
            below.erase(0, at + between.size());
        if (low && text_width(ui.type.small, below) > text_w) continue;
        text_in(ui, {x, figure_y + (low ? 23.0f : 27.0f), text_w, 16.0f}, ui.type.small, ink.ink_soft, below);
    }
    return tapped;
}

std::optional<int> step_bar(Ui& ui, const Rect& rect, std::span<const StepTab> tabs, int on) {
    const look::Palette& ink = ui.inks();
    const auto count = static_cast<float>(tabs.size());
    const float width = std::min(rect.w / count, 152.0f);
    const float left = rect.x + (rect.w - width * count) / 2.0f;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::optional<int> tapped;
    for (int i = 0; i < static_cast<int>(tabs.size()); ++i) {
        const StepTab& tab = tabs[static_cast<std::size_t>(i)];
        const Rect cell{left + static_cast<float>(i) * width, rect.y, width, rect.h};
        const Touch touch = touch_area(ui, tab.id, cell);
        const Rect inner{cell.x + 3.0f, cell.y + 4.0f, cell.w - 6.0f, cell.h - 8.0f};
        if (i == on || touch.pressed) {
            list.AddRectFilled({inner.x, inner.y}, {inner.right(), inner.bottom()},
                               touch.pressed ? ink.pressed : ink.tint, look::control_rounding);
        }
        if (i == on) {
            const float half = std::min(inner.w * 0.30f, 30.0f);
            const float middle = inner.x + inner.w / 2.0f;
            list.AddRectFilled({middle - half, inner.bottom() - 7.0f}, {middle + half, inner.bottom() - 4.0f},
                               ink.mark, 1.5f);
        }
        ImFont* face = width < 42.0f   ? ui.type.small
                       : width < 84.0f ? (i == on ? ui.type.label_strong : ui.type.label)
                                       : (i == on ? ui.type.body_strong : ui.type.body);
        if (text_width(face, tab.label) > cell.w - 2.0f) face = ui.type.small;
        text_in(ui, width < 84.0f ? cell : inner, face, i == on ? ink.ink : ink.ink_soft, tab.label,
                Align::middle);
        if (touch.focused) focus_ring(ui, inner, look::control_rounding);
        if (touch.tapped && i != on) tapped = i;
    }
    return tapped;
}

// --- toast -----------------------------------------------------------------------------------------------

namespace {
constexpr double said_for_s = 4.0;     // "Link copied"
constexpr double refused_for_s = 12.0; // a sentence takes time to read
} // namespace

void Toast::show(std::string sentence, bool refusal, double now_s) {
    text_ = std::move(sentence);
    refusal_ = refusal;
    until_s_ = now_s + (refusal ? refused_for_s : said_for_s);
}

std::optional<double> Toast::goes_in(double now_s) const {
    if (text_.empty()) return std::nullopt;
    return std::max(0.0, until_s_ - now_s);
}

void Toast::draw(Ui& ui, const Rect& over, double now_s) {
    if (!text_.empty() && now_s >= until_s_) text_.clear();
    if (text_.empty()) return;
    const look::Palette& ink = ui.inks();
    ImFont* font = ui.type.label;
    const float most_w = std::min(over.w - 32.0f, 560.0f);
    const float left = refusal_ ? 46.0f : 20.0f;
    const std::string words = broken_at_spaces(font, text_, most_w - left - 20.0f);
    const ImVec2 text = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, words.c_str());
    const Rect box{over.x + (over.w - (text.x + left + 20.0f)) / 2.0f, over.bottom() - text.y - 44.0f,
                   text.x + left + 20.0f, std::max(text.y + 28.0f, look::target)};
    // A window of its own, so that a tap on it does not reach the drawing below.
    constexpr float shade = 4.0f;
    ImGui::SetNextWindowPos({box.x, box.y});
    ImGui::SetNextWindowSize({box.w, box.h + shade});
    ImGui::Begin("toast", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoFocusOnAppearing |
                     ImGuiWindowFlags_NoNav);
    const Touch touch = touch_area(ui, "toast", box);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({box.x, box.y + 2.0f}, {box.right(), box.bottom() + 3.0f},
                       look::faded(ink.scrim, 0.4f), 11.0f);
    list.AddRectFilled({box.x, box.y}, {box.right(), box.bottom()}, refusal_ ? ink.card : ink.solid,
                       look::card_rounding);
    if (refusal_) {
        list.AddRect({box.x, box.y}, {box.right(), box.bottom()}, ink.mark, look::card_rounding, 0, 1.5f);
        const ImVec2 m(box.x + 24.0f, box.y + box.h / 2.0f);
        list.AddTriangle({m.x, m.y - 9.0f}, {m.x + 10.0f, m.y + 8.0f}, {m.x - 10.0f, m.y + 8.0f}, ink.mark,
                         1.75f);
        list.AddLine({m.x, m.y - 3.5f}, {m.x, m.y + 2.5f}, ink.mark, 2.0f);
        list.AddCircleFilled({m.x, m.y + 5.4f}, 1.3f, ink.mark);
    }
    list.AddText(font, font->FontSize,
                 {std::round(box.x + left), std::round(box.y + (box.h - text.y) / 2.0f)},
                 refusal_ ? ink.ink : ink.on_solid, words.c_str());
    if (touch.tapped) text_.clear();
    ImGui::End();
}

// --- sheet -----------------------------------------------------------------------------------------------

bool begin_sheet(Ui& ui, std::string_view id, const Rect& screen, const Rect& place, bool from_below,
                 float& out) {
    constexpr float slide_s = 0.16f;
    const bool appearing = out <= 0.0f;
    out = std::min(1.0f, out + std::clamp(ImGui::GetIO().DeltaTime, 0.001f, 0.05f) / slide_s);
    if (ui.calm) out = 1.0f;
    if (out < 1.0f) ui.frames_wanted = std::max(ui.frames_wanted, 2);
    const float rest = (1.0f - out) * (1.0f - out) * (1.0f - out); // fast at first, then slower
    const float away = std::round(rest * (from_below ? place.h : place.w));
    // In from the nearer side.
    const float across = place.x + 0.5f * place.w < screen.x + 0.5f * screen.w ? -away : away;
    const Rect at{from_below ? place.x : place.x + across, from_below ? place.y + away : place.y, place.w,
                  place.h};

    ImGui::SetNextWindowPos({screen.x, screen.y});
    ImGui::SetNextWindowSize({screen.w, screen.h});
    if (appearing) ImGui::SetNextWindowFocus();
    ImGui::Begin(std::string(id).c_str(), nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBackground);
    ui.covered = false;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({screen.x, screen.y}, {screen.right(), screen.bottom()},
                       look::faded(ui.inks().scrim, out));
    const ImDrawFlags corners = from_below ? ImDrawFlags_RoundCornersTop : ImDrawFlags_RoundCornersAll;
    const float below = from_below ? 40.0f : 0.0f; // extends below the edge of the screen
    list.AddRectFilled({at.x, at.y}, {at.right(), at.bottom() + below}, ui.inks().card, 14.0f, corners);
    list.AddRect({at.x, at.y}, {at.right(), at.bottom() + below}, ui.inks().rule, 14.0f, corners);
    ImGui::SetCursorScreenPos({at.x, at.y});
    if (appearing) return false;
    const ImGuiIO& io = ImGui::GetIO();
    const bool outside = ImGui::IsMouseReleased(0) && out >= 1.0f && !at.holds(io.MouseClickedPos[0]);
    return outside || ImGui::IsKeyPressed(ImGuiKey_Escape, false);
}

void end_sheet(Ui& ui) {
    // Widgets placed by hand must not widen the window, so the cursor returns to its start.
    ImGui::SetCursorPos(ImGui::GetCursorStartPos());
    ImGui::End();
    ui.covered = true;
}

} // namespace evenfall::shell::widgets
