#include "output/sheet/typeface.hpp"

#include <algorithm>
#include <optional>

namespace evenfall::sheet {

namespace {

// Table layouts and field names: OpenType 1.9 (ISO/IEC 14496-22:2019), chapters cmap, head, hhea, hmtx; from
// memory.
class Bytes {
public:
    explicit Bytes(std::string_view all) : all_(all) {}
    [[nodiscard]] std::uint32_t u16(std::size_t at) const { return byte(at) << 8u | byte(at + 1); }
    [[nodiscard]] std::uint32_t u32(std::size_t at) const { return u16(at) << 16u | u16(at + 2); }
    [[nodiscard]] int i16(std::size_t at) const { return static_cast<std::int16_t>(u16(at)); }
    [[nodiscard]] bool has(std::size_t at, std::size_t length) const {
        return at <= all_.size() && length <= all_.size() - at;
    }
    [[nodiscard]] std::string_view part(std::size_t at, std::size_t length) const {
        return all_.substr(at, length);
    }
    [[nodiscard]] std::size_t size() const { return all_.size(); }

private:
    /// Beyond the end everything reads as zero: a damaged offset gives an empty face, which is refused.
    [[nodiscard]] std::uint32_t byte(std::size_t at) const {
        return at < all_.size() ? static_cast<unsigned char>(all_[at]) : 0u;
    }
    std::string_view all_;
};

std::optional<std::string_view> table(const Bytes& file, std::string_view tag) {
    const std::size_t count = file.u16(4);
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t row = 12 + 16 * k;
        if (!file.has(row, 16)) return std::nullopt;
        if (file.part(row, 4) != tag) continue;
        const std::size_t at = file.u32(row + 8);
        const std::size_t length = file.u32(row + 12);
        if (!file.has(at, length)) return std::nullopt;
        return file.part(at, length);
    }
    return std::nullopt;
}

/// The Unicode subtable of format 4; it covers the plane that contains all characters used here.
void read_characters(const Bytes& cmap, std::map<char32_t, std::uint16_t>& glyphs) {
    const std::size_t count = cmap.u16(2);
    for (std::size_t k = 0; k < count && glyphs.empty(); ++k) {
        const std::size_t at = cmap.u32(4 + 8 * k + 4);
        if (cmap.u16(at) != 4) continue;
        const std::size_t twice = cmap.u16(at + 6);
        for (std::size_t s = 0; s < twice; s += 2) {
            const std::uint32_t last = cmap.u16(at + 14 + s);
            const std::uint32_t first = cmap.u16(at + 16 + twice + s);
            const std::uint32_t delta = cmap.u16(at + 16 + 2 * twice + s);
            const std::size_t offset_at = at + 16 + 3 * twice + s;
            const std::uint32_t offset = cmap.u16(offset_at);
            for (std::uint32_t c = first; c <= last && c != 0xFFFFu; ++c) {
                std::uint32_t glyph = c;
                if (offset != 0) glyph = cmap.u16(offset_at + offset + 2 * (c - first));
                if (offset == 0 || glyph != 0) glyph = (glyph + delta) & 0xFFFFu;
                if (glyph != 0) glyphs[static_cast<char32_t>(c)] = static_cast<std::uint16_t>(glyph);
            }
        }
    }
}

} // namespace

Outcome<Typeface> Typeface::read(std::string_view file) {
    const Problem unreadable{ProblemCode::wrong_type, "/typefaces", "OpenType with CFF outlines",
                             "The sheet's typeface is not an OpenType file with CFF outlines."};
    const Bytes bytes(file);
    const auto head = table(bytes, "head"), hhea = table(bytes, "hhea"), hmtx = table(bytes, "hmtx"),
               cmap = table(bytes, "cmap"), cff = table(bytes, "CFF ");
    if (!head || !hhea || !hmtx || !cmap || !cff) return unreadable;
    Typeface face;
    face.file_ = file;
    face.outlines_ = *cff;
    const double em = Bytes(*head).u16(18);
    const std::size_t widths = Bytes(*hhea).u16(34);
    if (em <= 0.0 || widths == 0 || hmtx->size() < 4 * widths) return unreadable;
    face.ascent_ = Bytes(*hhea).i16(4) / em;
    face.descent_ = Bytes(*hhea).i16(6) / em;
    for (std::size_t k = 0; k < widths; ++k)
        face.advances_.push_back(Bytes(*hmtx).u16(4 * k) / em);
    read_characters(Bytes(*cmap), face.glyphs_);
    if (face.glyphs_.empty()) return unreadable;
    return face;
}

std::uint16_t Typeface::glyph(char32_t character) const {
    const auto found = glyphs_.find(character);
    return found == glyphs_.end() ? std::uint16_t{0} : found->second;
}

double Typeface::advance(std::uint16_t glyph) const {
    return advances_[std::min<std::size_t>(glyph, advances_.size() - 1)];
}

double Typeface::width_mm(std::string_view words, double size_mm) const {
    double width = 0.0;
    for (const char32_t c : characters(words))
        width += advance(glyph(c));
    return width * size_mm;
}

std::vector<char32_t> characters(std::string_view words) {
    std::vector<char32_t> out;
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(words[k]); };
    for (std::size_t k = 0; k < words.size();) {
        const unsigned lead = byte(k);
        const std::size_t more = lead < 0x80u    ? 0
                                 : lead >= 0xF0u ? 3
                                 : lead >= 0xE0u ? 2
                                 : lead >= 0xC0u ? 1
                                                 : 4;
        char32_t c = more == 0 ? lead : lead & (0x3Fu >> more);
        bool whole = more < 4 && k + more < words.size();
        for (std::size_t j = 1; whole && j <= more; ++j) {
            whole = (byte(k + j) & 0xC0u) == 0x80u;
            c = c << 6u | (byte(k + j) & 0x3Fu);
        }
        if (!whole) {
            out.push_back(U'\uFFFD');
            ++k;
            continue;
        }
        out.push_back(c < 0x20u || c == 0x7Fu ? U' ' : c);
        k += more + 1;
    }
    return out;
}

} // namespace evenfall::sheet
