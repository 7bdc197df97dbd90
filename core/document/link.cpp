#include "document/link.hpp"

#include "document/fields.hpp"
#include "document/read.hpp"
#include "document/text_code.hpp"
#include "document/write.hpp"

#include <zlib.h>

#include <algorithm>

namespace evenfall::document {
namespace {

constexpr char end_mark = 'e';
constexpr std::size_t sum_bytes = 4;
constexpr std::size_t length_bytes = 3;
constexpr int window_bits = -15; // raw deflate: no header of its own, ours carries the checksum

using Bytes = std::vector<unsigned char>;

Problem damaged() {
    return {ProblemCode::damaged_link, "", "",
            "This link is damaged or cut short; ask for it again or for the file."};
}

unsigned long checksum(const Bytef* bytes, std::size_t count) {
    return crc32(crc32(0L, Z_NULL, 0), bytes, static_cast<uInt>(count));
}

const Bytef* bytes_of(std::string_view text) {
    return reinterpret_cast<const Bytef*>(text.data());
}

void put_number(Bytes& bytes, unsigned long number, std::size_t size) {
    for (std::size_t left = size; left > 0; --left)
        bytes.push_back(static_cast<unsigned char>(number >> 8 * (left - 1) & 0xFFu));
}

unsigned long number_at(const Bytes& bytes, std::size_t at, std::size_t size) {
    unsigned long number = 0;
    for (std::size_t i = at; i < at + size; ++i)
        number = number << 8 | bytes[i];
    return number;
}

/// Has read the example, once for all links; copied for each.
const TextModel& link_model() {
    static const TextModel model(link_example());
    return model;
}

/// Unfolds until the stream's end, but never past `wanted` bytes. Absent when the stream is broken, ends
/// early, goes on too long or has bytes left over.
std::optional<std::string> inflated(const Bytes& bytes, std::size_t wanted) {
    z_stream stream{};
    inflateInit2(&stream, window_bits);
    inflateSetDictionary(&stream, bytes_of(link_dictionary()), static_cast<uInt>(link_dictionary().size()));
    stream.next_in = const_cast<Bytef*>(bytes.data()); // zlib reads only, but asks for a plain pointer
    stream.avail_in = static_cast<uInt>(bytes.size());

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

/// The text that the bytes of either version stand for.
Outcome<std::string> unpacked(bool is_version_1, const Bytes& bytes) {
    if (bytes.size() <= sum_bytes + length_bytes) return damaged();
    const unsigned long sum = number_at(bytes, 0, sum_bytes);
    const std::size_t length = number_at(bytes, sum_bytes, length_bytes);
    const Bytes body(bytes.begin() + sum_bytes + length_bytes, bytes.end());
    if (!is_version_1 && checksum(bytes.data() + sum_bytes, bytes.size() - sum_bytes) != sum)
        return damaged();
    if (length > max_document_bytes) {
        return Problem{ProblemCode::too_large, "", "256 kB",
                       "This link would unfold to more than 256 kB; no lure needs that."};
    }
    auto text = is_version_1 ? inflated(body, length) : decoded_text(body, length, link_model());
    if (!text || (is_version_1 && checksum(bytes_of(*text), length) != sum)) return damaged();
    return std::move(*text);
}

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto from = text.find_first_not_of(blanks);
    if (from == std::string_view::npos) return {};
    return text.substr(from, text.find_last_not_of(blanks) - from + 1);
}

} // namespace

std::string pack_link(const std::string& text) {
    Bytes summed;
    put_number(summed, text.size(), length_bytes);
    const Bytes body = coded_text(text, link_model());
    summed.insert(summed.end(), body.begin(), body.end());
    Bytes bytes;
    put_number(bytes, checksum(summed.data(), summed.size()), sum_bytes);
    bytes.insert(bytes.end(), summed.begin(), summed.end());
    return "2." + base64url(bytes) + end_mark;
}

Outcome<std::string> unpack_link(std::string_view link) {
    if (const auto hash = link.find('#'); hash != std::string_view::npos) link.remove_prefix(hash + 1);
    link = trimmed(link);
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
    if (!bytes) return damaged();
    return unpacked(version == "1", *bytes);
}

} // namespace evenfall::document

namespace evenfall {

std::string write_link(const document::Document& document) {
    return document::pack_link(document::write_compact(document));
}

Outcome<document::Document> read_link(const std::string& text) {
    const Outcome<std::string> unpacked = document::unpack_link(text);
    if (!unpacked.ok()) return unpacked.problems();
    return read_document(*unpacked);
}

} // namespace evenfall
