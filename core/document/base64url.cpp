#include "document/link.hpp"

namespace evenfall::document {
namespace {

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

} // namespace

std::string base64url(const std::vector<unsigned char>& bytes) {
    std::string letters;
    letters.reserve((bytes.size() * 4 + 2) / 3);
    unsigned held = 0;
    unsigned bits = 0;
    for (const unsigned char byte : bytes) {
        held = (held << 8 | byte) & 0xFFFFu;
        bits += 8;
        while (bits >= 6) {
            bits -= 6;
            letters += alphabet[held >> bits & 63u];
        }
    }
    if (bits > 0) letters += alphabet[held << (6 - bits) & 63u];
    return letters;
}

std::optional<std::vector<unsigned char>> from_base64url(std::string_view letters) {
    if (letters.size() % 4 == 1) return std::nullopt;
    std::vector<unsigned char> bytes;
    bytes.reserve(letters.size() * 3 / 4);
    unsigned held = 0;
    unsigned bits = 0;
    for (const char letter : letters) {
        const auto value = alphabet.find(letter);
        if (value == std::string_view::npos) return std::nullopt;
        held = (held << 6 | static_cast<unsigned>(value)) & 0xFFFFu;
        bits += 6;
        if (bits >= 8) {
            bits -= 8;
            bytes.push_back(static_cast<unsigned char>(held >> bits & 0xFFu));
        }
    }
    if ((held & ((1u << bits) - 1u)) != 0) return std::nullopt;
    return bytes;
}

} // namespace evenfall::document
