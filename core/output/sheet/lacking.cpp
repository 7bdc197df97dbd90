#include "output/sheet/parts.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>

namespace evenfall::sheet {

std::string lacking_text(const Layout& layout, const Faces& faces) {
    constexpr std::size_t most_named = 6;
    std::set<char32_t> letters;
    std::vector<std::string> titles;
    for (const Page& page : layout.pages) {
        bool lacks = false;
        for (const Item& item : page.items) {
            const auto* text = std::get_if<Text>(&item);
            if (text == nullptr) continue;
            const Typeface& face = text->weight == Weight::semibold ? faces.semibold : faces.regular;
            for (const char32_t c : characters(text->words)) {
                if (face.glyph(c) != 0) continue;
                letters.insert(c);
                lacks = true;
            }
        }
        if (lacks && std::find(titles.begin(), titles.end(), page.title) == titles.end())
            titles.push_back(page.title);
    }
    if (letters.empty()) return {};
    std::string codes;
    std::size_t named = 0;
    for (const char32_t c : letters) {
        if (++named > most_named) break;
        std::array<char, 16> code{};
        std::snprintf(code.data(), code.size(), "U+%04X", static_cast<unsigned>(c));
        codes += (codes.empty() ? "" : ", ") + std::string(code.data());
    }
    if (letters.size() > most_named) codes += " and " + std::to_string(letters.size() - most_named) + " more";
    std::string pages;
    for (const std::string& title : titles)
        pages += (pages.empty() ? "“" : ", “") + title + "”";
    return "The typeface of this sheet lacks " + codes + ": a box stands for each. Pages: " + pages +
           ". Words that are searched for or copied have them.";
}

} // namespace evenfall::sheet
