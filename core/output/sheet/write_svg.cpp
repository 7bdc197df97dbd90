#include "output/sheet/writers.hpp"

#include <array>
#include <cmath>
#include <cstdio>

namespace evenfall::sheet {

namespace {

std::string hex(Colour colour) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%02x%02x%02x", colour.red, colour.green, colour.blue);
    return text.data();
}

std::string base64(std::string_view bytes) {
    static constexpr std::string_view letters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string out;
    out.reserve(bytes.size() * 4 / 3 + 4);
    for (std::size_t k = 0; k < bytes.size(); k += 3) {
        unsigned group = 0;
        for (std::size_t j = 0; j < 3; ++j)
            group = group << 8u | (k + j < bytes.size() ? static_cast<unsigned char>(bytes[k + j]) : 0u);
        for (std::size_t j = 0; j < 4; ++j)
            out += k + j > bytes.size() ? '=' : letters[group >> (18u - 6u * static_cast<unsigned>(j)) & 63u];
    }
    return out;
}

std::string element(const Path& path) {
    std::string d;
    for (const Polyline& line : path.lines) {
        for (std::size_t k = 0; k < line.points.size(); ++k)
            d += (k == 0 ? 'M' : 'L') + mm_number(line.points[k].x_mm) + ' ' + mm_number(line.points[k].y_mm);
        if (line.closed) d += 'Z';
    }
    std::string out = "<path d=\"" + d + "\" fill=\"" + (path.fill ? hex(*path.fill) : "none") + '"';
    if (path.stroke) {
        out += " stroke=\"" + hex(path.stroke->colour) + "\" stroke-width=\"" +
               mm_number(path.stroke->width_mm) + '"';
        if (path.stroke->dash_mm > 0.0) out += " stroke-dasharray=\"" + mm_number(path.stroke->dash_mm) + '"';
    }
    out += "/>\n";
    if (!path.clip) return out;
    const std::string x = mm_number(path.clip->left_mm), y = mm_number(path.clip->top_mm),
                      w = mm_number(path.clip->width_mm), h = mm_number(path.clip->height_mm);
    return "<svg x=\"" + x + "\" y=\"" + y + "\" width=\"" + w + "\" height=\"" + h + "\" viewBox=\"" + x +
           ' ' + y + ' ' + w + ' ' + h + "\">" + out + "</svg>\n";
}

std::string element(const Text& text) {
    std::string out = "<text x=\"" + mm_number(text.at.x_mm) + "\" y=\"" + mm_number(text.at.y_mm) +
                      "\" font-size=\"" + mm_number(text.size_mm) + "\" fill=\"" + hex(text.colour) + '"';
    if (text.weight == Weight::semibold) out += " font-weight=\"600\"";
    if (text.anchor == Anchor::middle) out += " text-anchor=\"middle\"";
    if (text.anchor == Anchor::end) out += " text-anchor=\"end\"";
    return out + '>' + xml(text.words) + "</text>\n";
}

} // namespace

std::string mm_number(double mm) {
    const long long micrometres = std::llround(mm * 1000.0);
    const long long size = micrometres < 0 ? -micrometres : micrometres;
    std::string text = std::to_string(size / 1000);
    if (const long long rest = size % 1000; rest != 0) {
        std::string digits = std::to_string(1000 + rest).substr(1);
        while (digits.back() == '0')
            digits.pop_back();
        text += '.' + digits;
    }
    return micrometres < 0 ? '-' + text : text;
}

std::string xml(std::string_view words) {
    // Letters that XML has no way to write (XML 1.0, section 2.2); no document has them, but an option might.
    constexpr std::string_view no_letter = "\xEF\xBF\xBE", no_letter_either = "\xEF\xBF\xBF",
                               stand_in = "\xEF\xBF\xBD";
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const char c = words[i];
        if (const auto letter = words.substr(i, 3); letter == no_letter || letter == no_letter_either) {
            out += stand_in;
            i += 2;
            continue;
        }
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += static_cast<unsigned char>(c) < 0x20u ? ' ' : c;
        }
    }
    return out;
}

std::string svg_items(const Page& page) {
    std::string out;
    for (const Item& item : page.items)
        out += std::visit([](const auto& one) { return element(one); }, item);
    return out;
}

std::string svg_style(const Faces& faces) {
    const auto face = [](const Typeface& typeface, const char* weight) {
        return "@font-face{font-family:\"Bench sheet\";font-weight:" + std::string(weight) +
               ";src:url(data:font/otf;base64," + base64(typeface.file()) + ") format(\"opentype\")}\n";
    };
    // Kerning is off in every format: columns and breaks use plain widths.
    return face(faces.regular, "400") + face(faces.semibold, "600") +
           "text{font-family:\"Bench "
           "sheet\",sans-serif;font-kerning:none;text-rendering:geometricPrecision;white-space:pre}\n";
}

std::string svg(const Layout& layout, const Faces& faces) {
    const double height = layout.height_mm * static_cast<double>(layout.pages.size());
    const std::string w = mm_number(layout.width_mm), h = mm_number(height);
    std::string out =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + w +
        "mm\" height=\"" + h + "mm\" viewBox=\"0 0 " + w + ' ' + h + "\">\n<title>" + xml(layout.title) +
        "</title>\n<style>\n" + svg_style(faces) + "</style>\n<rect width=\"" + w + "\" height=\"" + h +
        "\" fill=\"#ffffff\"/>\n";
    for (std::size_t k = 0; k < layout.pages.size(); ++k) {
        out += "<g transform=\"translate(0 " + mm_number(layout.height_mm * static_cast<double>(k)) +
               ")\">\n" + svg_items(layout.pages[k]) + "</g>\n";
    }
    return out + "</svg>\n";
}

} // namespace evenfall::sheet
