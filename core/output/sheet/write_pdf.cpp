#include "output/sheet/writers.hpp"

#include "base/trade.hpp"

#include <zlib.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>

namespace evenfall::sheet {

namespace {

std::string hex4(unsigned value) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "%04X", value & 0xFFFFu);
    return text.data();
}

std::string utf16_hex(char32_t c) {
    if (c < 0x10000u) return hex4(static_cast<unsigned>(c));
    const auto rest = static_cast<unsigned>(c) - 0x10000u;
    return hex4(0xD800u + (rest >> 10u)) + hex4(0xDC00u + (rest & 0x3FFu));
}

std::string text_string(std::string_view words) {
    std::string out = "<FEFF";
    for (const char32_t c : characters(words))
        out += utf16_hex(c);
    return out + '>';
}

/// Numbers the objects in order and records their offsets for the cross-reference table (ISO 32000-1, 7.5.4,
/// from memory).
class File {
public:
    /// Reserves a number for an object that is referred to before it is written.
    int reserve() {
        places_.push_back(0);
        return static_cast<int>(places_.size());
    }
    void put(int number, const std::string& body) {
        places_[static_cast<std::size_t>(number - 1)] = text_.size();
        text_ += std::to_string(number) + " 0 obj\n" + body + "\nendobj\n";
    }
    int add(const std::string& body) {
        const int number = reserve();
        put(number, body);
        return number;
    }
    int add_stream(const std::string& entries, std::string_view bytes) {
        uLongf length = compressBound(static_cast<uLong>(bytes.size()));
        std::string packed(length, '\0');
        compress2(reinterpret_cast<Bytef*>(packed.data()), &length,
                  reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uLong>(bytes.size()), 6);
        packed.resize(length);
        return add("<<" + entries + "/Filter/FlateDecode/Length " + std::to_string(packed.size()) +
                   ">>\nstream\n" + packed + "\nendstream");
    }
    std::string end(int root, int info) {
        const std::size_t table = text_.size();
        text_ += "xref\n0 " + std::to_string(places_.size() + 1) + "\n0000000000 65535 f \n";
        for (const std::size_t place : places_) {
            std::array<char, 24> row{};
            std::snprintf(row.data(), row.size(), "%010zu 00000 n \n", place);
            text_ += row.data();
        }
        return text_ + "trailer\n<</Size " + std::to_string(places_.size() + 1) + "/Root " +
               std::to_string(root) + " 0 R/Info " + std::to_string(info) + " 0 R>>\nstartxref\n" +
               std::to_string(table) + "\n%%EOF\n";
    }

private:
    // The second line tells file transfer programs that bytes above 127 follow (7.5.2).
    std::string text_ = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n";
    std::vector<std::size_t> places_;
};

std::string reference(int number) {
    return std::to_string(number) + " 0 R";
}

std::string colour(Colour c, const char* operation) {
    const auto share = [](std::uint8_t v) { return mm_number(v / 255.0) + ' '; };
    return share(c.red) + share(c.green) + share(c.blue) + operation + '\n';
}

std::string pair(Point p) {
    return mm_number(p.x_mm) + ' ' + mm_number(p.y_mm) + ' ';
}

struct Used {
    std::set<char32_t> regular;
    std::set<char32_t> semibold;
};

std::string drawn(const Path& path) {
    std::string out = "q\n";
    if (path.clip) {
        out += pair({path.clip->left_mm, path.clip->top_mm}) + mm_number(path.clip->width_mm) + ' ' +
               mm_number(path.clip->height_mm) + " re W n\n";
    }
    if (path.fill) out += colour(*path.fill, "rg");
    if (path.stroke) {
        out += colour(path.stroke->colour, "RG") + mm_number(path.stroke->width_mm) + " w\n";
        if (path.stroke->dash_mm > 0.0) out += '[' + mm_number(path.stroke->dash_mm) + "] 0 d\n";
    }
    for (const Polyline& line : path.lines) {
        for (std::size_t k = 0; k < line.points.size(); ++k)
            out += pair(line.points[k]) + (k == 0 ? "m\n" : "l\n");
        if (line.closed) out += "h\n";
    }
    return out + (path.fill && path.stroke ? "B" : path.fill ? "f" : path.stroke ? "S" : "n") + "\nQ\n";
}

std::string drawn(const Text& text, const Faces& faces, Used& used) {
    const bool bold = text.weight == Weight::semibold;
    const Typeface& face = bold ? faces.semibold : faces.regular;
    double x = text.at.x_mm;
    if (text.anchor != Anchor::start)
        x -= face.width_mm(text.words, text.size_mm) * (text.anchor == Anchor::middle ? 0.5 : 1.0);
    std::string glyphs;
    bool has_all = true;
    for (const char32_t c : characters(text.words)) {
        glyphs += hex4(face.glyph(c));
        has_all = has_all && face.glyph(c) != 0;
        (bold ? used.semibold : used.regular).insert(c);
    }
    // The page's y points down, so the text matrix turns letters upright.
    const std::string out = "BT\n" + colour(text.colour, "rg") + (bold ? "/S " : "/R ") +
                            mm_number(text.size_mm) + " Tf\n1 0 0 -1 " + pair({x, text.at.y_mm}) + "Tm\n<" +
                            glyphs + "> Tj\nET\n";
    // Where a box stands for a letter, the words themselves say what is searched and copied (14.9.4).
    return has_all ? out : "/Span<</ActualText" + text_string(text.words) + ">>BDC\n" + out + "EMC\n";
}

/// Glyph → character, so that text can be searched and copied (9.10.3).
std::string to_unicode(const Typeface& face, const std::set<char32_t>& used) {
    std::map<std::uint16_t, char32_t> characters_of;
    for (const char32_t c : used) {
        if (face.glyph(c) != 0) characters_of.emplace(face.glyph(c), c);
    }
    std::string out = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                      "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n/CMapName "
                      "/Adobe-Identity-UCS def\n"
                      "/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    // At most a hundred rows per block.
    for (auto at = characters_of.begin(); at != characters_of.end();) {
        std::string rows;
        int count = 0;
        for (; at != characters_of.end() && count < 100; ++at, ++count)
            rows += '<' + hex4(at->first) + "> <" + utf16_hex(at->second) + ">\n";
        out += std::to_string(count) + " beginbfchar\n" + rows + "endbfchar\n";
    }
    return out + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

/// A composite font whose codes are glyph numbers; the outlines' table is embedded unchanged (9.7.4.2: in a
/// CFF table that is not CID-keyed, glyph numbers are used).
int add_font(File& file, const Typeface& face, const std::set<char32_t>& used, const std::string& name,
             const char* weight) {
    const auto thousandths = [](double share) { return std::to_string(std::lround(share * 1000.0)); };
    const int outlines = file.add_stream("/Subtype/CIDFontType0C", face.outlines());
    const int descriptor =
        file.add("<</Type/FontDescriptor/FontName/" + name +
                 "/Flags 4/FontBBox[-500 -400 1500 1100]/ItalicAngle 0/Ascent " + thousandths(face.ascent()) +
                 "/Descent " + thousandths(face.descent()) + "/CapHeight 660/StemV " + weight +
                 "/FontFile3 " + reference(outlines) + ">>");
    std::map<std::uint16_t, double> widths;
    for (const char32_t c : used)
        widths[face.glyph(c)] = face.advance(face.glyph(c));
    std::string rows;
    for (const auto& [glyph, width] : widths)
        rows += std::to_string(glyph) + '[' + mm_number(width * 1000.0) + ']';
    const int descendant =
        file.add("<</Type/Font/Subtype/CIDFontType0/BaseFont/" + name +
                 "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>/FontDescriptor " +
                 reference(descriptor) + "/DW 1000/W[" + rows + "]>>");
    const int unicode = file.add_stream("", to_unicode(face, used));
    return file.add("<</Type/Font/Subtype/Type0/BaseFont/" + name +
                    "-Identity-H/Encoding/Identity-H/DescendantFonts[" + reference(descendant) +
                    "]/ToUnicode " + reference(unicode) + ">>");
}

} // namespace

std::string pdf(const Layout& layout, const Faces& faces) {
    constexpr double points_per_mm =
        72.0 / units::mm_from_m(units::inch_m); // a PDF point is 1/72 in (8.3.2.3)
    File file;
    Used used;
    const int tree = file.reserve();
    const int resources = file.reserve();
    const std::string box =
        mm_number(layout.width_mm * points_per_mm) + ' ' + mm_number(layout.height_mm * points_per_mm);
    // Seven digits of scale: three would move the far edge of the paper by 0.05 mm. By integers, so that no
    // locale can change the decimal point.
    const long long scale_1e7 = std::llround(points_per_mm * 1e7);
    std::array<char, 96> frame{};
    std::snprintf(frame.data(), frame.size(), "%lld.%07lld 0 0 -%lld.%07lld 0 %s cm\n1 J 1 j\n",
                  scale_1e7 / 10'000'000, scale_1e7 % 10'000'000, scale_1e7 / 10'000'000,
                  scale_1e7 % 10'000'000, mm_number(layout.height_mm * points_per_mm).c_str());
    std::string kids;
    for (const Page& page : layout.pages) {
        std::string content = frame.data();
        for (const Item& item : page.items) {
            if (const auto* path = std::get_if<Path>(&item))
                content += drawn(*path);
            else
                content += drawn(std::get<Text>(item), faces, used);
        }
        const int stream = file.add_stream("", content);
        kids += reference(file.add("<</Type/Page/Parent " + reference(tree) + "/MediaBox[0 0 " + box +
                                   "]/Resources " + reference(resources) + "/Contents " + reference(stream) +
                                   ">>")) +
                ' ';
    }
    const int regular = add_font(file, faces.regular, used.regular, "EVNFAL+BenchSheet-Regular", "80");
    const int semibold = add_font(file, faces.semibold, used.semibold, "EVNFAL+BenchSheet-Semibold", "110");
    file.put(resources, "<</Font<</R " + reference(regular) + "/S " + reference(semibold) + ">>>>");
    file.put(tree, "<</Type/Pages/Count " + std::to_string(layout.pages.size()) + "/Kids[" + kids + "]>>");
    // Asks viewers not to scale the page when printing (12.2).
    const int root = file.add("<</Type/Catalog/Pages " + reference(tree) +
                              "/ViewerPreferences<</PrintScaling/None>>/Lang(en)>>");
    const int info = file.add("<</Title " + text_string(layout.title) + "/Producer(Evenfall)>>");
    return file.end(root, info);
}

} // namespace evenfall::sheet
