#include "drawing/pen.hpp"

#include "look/said.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::drawing::pen {

void fill_ribbon(ImDrawList& list, std::span<const ImVec2> one, std::span<const ImVec2> other, ImU32 colour) {
    const auto count = static_cast<int>(std::min(one.size(), other.size()));
    if (count < 2) return;
    // One mesh instead of a quad per column: adjacent quads show seams.
    list.PrimReserve((count - 1) * 6, count * 2);
    const ImVec2 white = ImGui::GetFontTexUvWhitePixel();
    const auto first = static_cast<unsigned>(list._VtxCurrentIdx);
    for (int i = 0; i + 1 < count; ++i) {
        const unsigned a = first + 2u * static_cast<unsigned>(i);
        for (unsigned k : {a, a + 1u, a + 2u, a + 2u, a + 1u, a + 3u})
            list.PrimWriteIdx(static_cast<ImDrawIdx>(k));
    }
    for (int i = 0; i < count; ++i) {
        list.PrimWriteVtx(one[static_cast<std::size_t>(i)], white, colour);
        list.PrimWriteVtx(other[static_cast<std::size_t>(i)], white, colour);
    }
}

void outline_ribbon(ImDrawList& list, std::span<const ImVec2> one, std::span<const ImVec2> other,
                    ImU32 colour, float weight) {
    std::vector<ImVec2> rim(one.begin(), one.end());
    rim.insert(rim.end(), other.rbegin(), other.rend());
    list.AddPolyline(rim.data(), static_cast<int>(rim.size()), colour, ImDrawFlags_Closed, weight);
}

void fill_star(ImDrawList& list, ImVec2 middle_point, std::span<const ImVec2> rim, ImU32 colour) {
    const auto count = static_cast<int>(rim.size());
    if (count < 3) return;
    list.PrimReserve(count * 3, count + 1);
    const ImVec2 white = ImGui::GetFontTexUvWhitePixel();
    const auto first = static_cast<unsigned>(list._VtxCurrentIdx);
    for (int i = 0; i < count; ++i) {
        const unsigned here = first + 1u + static_cast<unsigned>(i);
        const unsigned next = first + 1u + static_cast<unsigned>((i + 1) % count);
        for (unsigned k : {first, here, next})
            list.PrimWriteIdx(static_cast<ImDrawIdx>(k));
    }
    list.PrimWriteVtx(middle_point, white, colour);
    for (const ImVec2& point : rim)
        list.PrimWriteVtx(point, white, colour);
}

void line(ImDrawList& list, std::span<const ImVec2> points, ImU32 colour, float weight) {
    if (points.size() < 2) return;
    list.AddPolyline(points.data(), static_cast<int>(points.size()), colour, 0, weight);
}

void dashed(ImDrawList& list, std::span<const ImVec2> points, ImU32 colour, float weight, float dash,
            float space) {
    bool on = true;
    float left = dash;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const ImVec2 a = points[i - 1];
        const ImVec2 b = points[i];
        const float length = std::hypot(b.x - a.x, b.y - a.y);
        float done = 0.0f;
        while (done < length) {
            const float step = std::min(left, length - done);
            if (on) {
                const float t0 = done / length;
                const float t1 = (done + step) / length;
                list.AddLine({a.x + (b.x - a.x) * t0, a.y + (b.y - a.y) * t0},
                             {a.x + (b.x - a.x) * t1, a.y + (b.y - a.y) * t1}, colour, weight);
            }
            done += step;
            left -= step;
            if (left <= 0.01f) {
                on = !on;
                left = on ? dash : space;
            }
        }
    }
}

void dashed_rect(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float weight) {
    const ImVec2 rim[] = {least, {most.x, least.y}, most, {least.x, most.y}, least};
    dashed(list, rim, colour, weight, 4.0f, 3.0f);
}

void hatch(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float apart, bool crossed) {
    const float w = most.x - least.x;
    const float h = most.y - least.y;
    if (!(w > 0.0f) || !(h > 0.0f)) return;
    list.PushClipRect(least, most, true);
    for (float s = -h; s < w; s += apart) {
        list.AddLine({least.x + s, most.y}, {least.x + s + h, least.y}, colour, hair);
        if (crossed) list.AddLine({least.x + s, least.y}, {least.x + s + h, most.y}, colour, hair);
    }
    list.PopClipRect();
}

void dots(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float apart) {
    bool shifted = false;
    for (float y = least.y + 0.5f * apart; y < most.y - 1.0f; y += 0.7f * apart, shifted = !shifted) {
        for (float x = least.x + (shifted ? apart : 0.5f * apart); x < most.x - 1.0f; x += apart) {
            list.AddRectFilled({x - 0.7f, y - 0.7f}, {x + 0.7f, y + 0.7f}, colour);
        }
    }
}

void corners(ImDrawList& list, ImVec2 least, ImVec2 most, ImU32 colour, float arm, float weight) {
    const float xs[] = {least.x, most.x};
    const float ys[] = {least.y, most.y};
    for (int i = 0; i < 2; ++i) {
        for (int j = 0; j < 2; ++j) {
            const float dx = i == 0 ? arm : -arm;
            const float dy = j == 0 ? arm : -arm;
            const ImVec2 stroke[] = {{xs[i] + dx, ys[j]}, {xs[i], ys[j]}, {xs[i], ys[j] + dy}};
            line(list, stroke, colour, weight);
        }
    }
}

void arrow_head(ImDrawList& list, ImVec2 tip, float dx, float dy, float size, ImU32 colour) {
    const ImVec2 base{tip.x - dx * size, tip.y - dy * size};
    const float half = 0.45f * size;
    list.AddTriangleFilled(tip, {base.x - dy * half, base.y + dx * half},
                           {base.x + dy * half, base.y - dx * half}, colour);
}

void text(ImDrawList& list, ImFont* font, float x, float y, ImU32 colour, std::string_view english, Side side,
          ImU32 ground) {
    if (english.empty()) return;
    const bool is_broken = english.find('\n') != std::string_view::npos; // and then has been translated
    const std::string_view words = is_broken ? english : look::said(english);
    const char* const end = words.data() + words.size();
    const ImVec2 size = font->CalcTextSizeA(font->FontSize, 1e6f, 0.0f, words.data(), end);
    if (side == Side::middle) x -= 0.5f * size.x;
    if (side == Side::right) x -= size.x;
    x = std::round(x);
    y = std::round(y);
    if (ground != 0) list.AddRectFilled({x - 3.0f, y}, {x + size.x + 3.0f, y + size.y}, ground, 3.0f);
    list.AddText(font, font->FontSize, {x, y}, colour, words.data(), end);
}

} // namespace evenfall::shell::drawing::pen
