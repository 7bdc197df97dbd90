#include "document/link.hpp"

#include "document/fields.hpp"
#include "document/read.hpp"
#include "document/write.hpp"

#include <zlib.h>

#include <algorithm>

namespace evenfall::document {
namespace {

constexpr std::string_view version_mark = "2."; // that is written
constexpr char end_mark = 'e';
constexpr std::size_t header_bytes = 7;
constexpr int window_bits = -15; // raw deflate: no header of its own, ours carries the checksum
constexpr int memory_level = 9;

Problem damaged() {
    return {ProblemCode::damaged_link, "", "",
            "This link is damaged or cut short; ask for it again or for the file."};
}

const Bytef* bytes_of(std::string_view text) {
    return reinterpret_cast<const Bytef*>(text.data());
}

unsigned long checksum(std::string_view text) {
    return crc32(crc32(0L, Z_NULL, 0), bytes_of(text), static_cast<uInt>(text.size()));
}

/// What deflate has read before it begins.
std::string_view dictionary_of(bool is_version_1) {
    return is_version_1 ? link_dictionary() : link_example();
}

void read_before(int (*tell)(z_streamp, const Bytef*, uInt), z_stream& stream, std::string_view text) {
    tell(&stream, bytes_of(text), static_cast<uInt>(text.size()));
}

std::vector<unsigned char> deflated(std::string_view text) {
    z_stream stream{};
    deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, window_bits, memory_level, Z_DEFAULT_STRATEGY);
    read_before(deflateSetDictionary, stream, dictionary_of(false));
    std::vector<unsigned char> out(deflateBound(&stream, static_cast<uLong>(text.size())));
    stream.next_in = const_cast<Bytef*>(bytes_of(text)); // zlib reads only, but asks for a plain pointer
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = out.data();
    stream.avail_out = static_cast<uInt>(out.size());
    deflate(&stream, Z_FINISH);
    out.resize(stream.total_out);
    deflateEnd(&stream);
    return out;
}

/// Unfolds until the stream's end, but never past `wanted` bytes. Absent when the stream is broken, ends
/// early, goes on too long or has bytes left over.
std::optional<std::string> inflated(const unsigned char* bytes, std::size_t size, std::size_t wanted,
                                    std::string_view dictionary) {
    z_stream stream{};
    inflateInit2(&stream, window_bits);
    read_before(inflateSetDictionary, stream, dictionary);
    stream.next_in = const_cast<Bytef*>(bytes);
    stream.avail_in = static_cast<uInt>(size);

    constexpr std::size_t chunk_bytes = 16 * 1024;
    std::string text;
    std::vector<unsigned char> chunk(chunk_bytes);
    int state = Z_OK;
    while (state == Z_OK && text.size() <= wanted) {
        stream.next_out = chunk.data();
        stream.avail_out = static_cast<uInt>(chunk.size());
        state = inflate(&stream, Z_NO_FLUSH);
        text.append(chunk.begin(), chunk.end() - static_cast<std::ptrdiff_t>(stream.avail_out));
    }
    const bool whole = state == Z_STREAM_END && stream.avail_in == 0 && text.size() == wanted;
    inflateEnd(&stream);
    if (!whole) return std::nullopt;
    return text;
}

/// Share text without the line breaks and blanks that a messenger may put into it.
std::string without_blanks(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    std::string kept;
    std::copy_if(text.begin(), text.end(), std::back_inserter(kept),
                 [&](char c) { return blanks.find(c) == std::string_view::npos; });
    return kept;
}

} // namespace

std::string pack_link(const std::string& text) {
    std::vector<unsigned char> bytes;
    const unsigned long sum = checksum(text);
    for (const int shift : {24, 16, 8, 0})
        bytes.push_back(static_cast<unsigned char>(sum >> shift & 0xFFu));
    for (const int shift : {16, 8, 0})
        bytes.push_back(static_cast<unsigned char>(text.size() >> shift & 0xFFu));
    const std::vector<unsigned char> body = deflated(text);
    bytes.insert(bytes.end(), body.begin(), body.end());
    return std::string(version_mark) + base64url(bytes) + end_mark;
}

Outcome<std::string> unpack_link(std::string_view address) {
    if (const auto hash = address.find('#'); hash != std::string_view::npos) address.remove_prefix(hash + 1);
    const std::string share_text = without_blanks(address);
    std::string_view link = share_text;
    if (link.empty()) {
        return Problem{ProblemCode::damaged_link, "", "",
                       "There is no share text in this link; ask for it again or for the file."};
    }
    if (link.size() > max_link_bytes) {
        return Problem{ProblemCode::too_large, "", "32 kB",
                       "This link is " + std::to_string((link.size() + 1023) / 1024) +
                           " kB long; the limit is 32 kB. Ask for the file."};
    }
    const auto dot = link.find('.');
    const bool numbered = dot != std::string_view::npos && dot > 0 && dot <= 3 &&
                          std::all_of(link.begin(), link.begin() + static_cast<std::ptrdiff_t>(dot),
                                      [](char c) { return c >= '0' && c <= '9'; });
    if (!numbered) return damaged();
    const std::string_view version = link.substr(0, dot);
    if (version != "1" && version != "2") {
        return Problem{ProblemCode::unknown_version, "", "1 to 2",
                       "This link is of version " + std::string(version) +
                           "; this build reads versions 1 and 2. Ask for the file."};
    }
    link.remove_prefix(dot + 1);
    if (link.empty() || link.back() != end_mark) return damaged();
    link.remove_suffix(1);

    const auto bytes = from_base64url(link);
    if (!bytes || bytes->size() <= header_bytes) return damaged();
    unsigned long sum = 0;
    std::size_t size = 0;
    for (std::size_t i = 0; i < 4; ++i)
        sum = sum << 8 | (*bytes)[i];
    for (std::size_t i = 4; i < header_bytes; ++i)
        size = size << 8 | (*bytes)[i];
    if (size > max_document_bytes) {
        return Problem{ProblemCode::too_large, "", "256 kB",
                       "This link would unfold to more than 256 kB; no lure needs that."};
    }
    auto text = inflated(bytes->data() + header_bytes, bytes->size() - header_bytes, size,
                         dictionary_of(version == "1"));
    if (!text || checksum(*text) != sum) return damaged();
    return std::move(*text);
}

} // namespace evenfall::document

namespace evenfall {

std::string write_link(const document::Document& document) {
    return document::pack_link(document::write_compact(document));
}

Outcome<document::Document> read_link(const std::string& text) {
    const Outcome<std::string> unpacked = document::unpack_link(text);
    if (!unpacked.ok()) return unpacked.problems();
    Outcome<document::Document> read = read_document(*unpacked);
    // What a short text leaves out to its defaults does not add up to more than the lists may hold.
    if (!read || unpacked->size() < document::max_document_bytes / 4) return read;
    Problems too_long = document::too_long_to_open(*read);
    if (!too_long.empty()) return too_long;
    return read;
}

} // namespace evenfall
