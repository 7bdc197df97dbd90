#include "look/fonts.hpp"

#include "look/font_data.hpp"

#include <algorithm>

namespace evenfall::shell::look {

namespace {

// The characters in the subset; few, so that the atlas stays small at a pixel ratio of 3.
const ImWchar text_signs[] = {0x0020, 0x007E, 0x00A0, 0x00FF, 0x0394, 0x0394, 0x03B1, 0x03B1, 0x03B8, 0x03B8,
                              0x03C1, 0x03C1, 0x03C6, 0x03C6, 0x2013, 0x2014, 0x2018, 0x2019, 0x201C, 0x201E,
                              0x2022, 0x2022, 0x2026, 0x2026, 0x2032, 0x2033, 0x215B, 0x215E, 0x2190, 0x2193,
                              0x2212, 0x2212, 0x2248, 0x2248, 0x2260, 0x2260, 0x2264, 0x2265, 0};
// The large sizes show only figures and short words.
const ImWchar figure_signs[] = {0x0020, 0x007E, 0x00B0, 0x00B1, 0x00C4, 0x00FF,
                                0x2013, 0x2013, 0x2212, 0x2212, 0};

// ImGui measures a typeface by ascent plus descent (1.326 em here); the factor gives the em sizes named in
// Type.
constexpr float em = 1.326f;

ImFont* add(ImFontAtlas& atlas, const unsigned char* bytes, unsigned size, float em_px, const ImWchar* signs,
            float density) {
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    // Letters are placed at fractions of a pixel: the coarser the screen, the more positions.
    config.OversampleH = density < 1.5f ? 3 : density < 2.5f ? 2 : 1;
    config.OversampleV = 1;
    config.RasterizerDensity = density;
    return atlas.AddFontFromMemoryTTF(const_cast<unsigned char*>(bytes), static_cast<int>(size), em_px * em,
                                      &config, signs);
}

} // namespace

Type build_fonts(ImFontAtlas& atlas, double dpr) {
    const auto density = static_cast<float>(std::clamp(dpr, 1.0, 3.0));
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoMouseCursors;
    atlas.TexDesiredWidth = density > 2.0f ? 2048 : 1024;
    const auto regular = [&](float px) {
        return add(atlas, font_regular, font_regular_size, px, text_signs, density);
    };
    const auto strong = [&](float px, const ImWchar* signs) {
        return add(atlas, font_semibold, font_semibold_size, px, signs, density);
    };
    Type type;
    type.label = regular(15.0f); // the first one is ImGui's default
    type.small = regular(13.5f);
    type.body = regular(17.0f);
    type.label_strong = strong(15.0f, text_signs);
    type.body_strong = strong(17.0f, text_signs);
    type.title = strong(22.0f, text_signs);
    type.large = strong(26.0f, figure_signs);
    type.display = strong(40.0f, figure_signs);
    return type;
}

} // namespace evenfall::shell::look
