#include "document/text_code.hpp"

#include <cstdint>

namespace evenfall::document {
namespace {

/// The stretch that is left, as the next 32 binary places of both ends; places that both have alike are done.
struct Stretch {
    std::uint32_t low = 0;
    std::uint32_t high = 0xFFFFFFFFu;

    /// The last number that stands for a one.
    [[nodiscard]] std::uint32_t last_of_one(std::uint32_t chance) const {
        return low + static_cast<std::uint32_t>(std::uint64_t{high - low} * chance / TextModel::one);
    }
    void take(bool bit, std::uint32_t last_of_one) {
        if (bit)
            high = last_of_one;
        else
            low = last_of_one + 1;
    }
    [[nodiscard]] bool has_done_byte() const { return (low ^ high) >> 24 == 0; }
    void drop_byte() {
        low <<= 8;
        high = high << 8 | 0xFFu;
    }
};

} // namespace

std::vector<unsigned char> coded_text(std::string_view text, TextModel model) {
    std::vector<unsigned char> bytes;
    Stretch stretch;
    for (const char letter : text) {
        for (int at = 7; at >= 0; --at) {
            const bool bit = (static_cast<unsigned char>(letter) >> at & 1) != 0;
            stretch.take(bit, stretch.last_of_one(model.chance()));
            model.learn(bit);
            for (; stretch.has_done_byte(); stretch.drop_byte())
                bytes.push_back(static_cast<unsigned char>(stretch.high >> 24));
        }
    }
    // One byte more, and noughts for ever, lie within the stretch: its ends differ in their first byte.
    bytes.push_back(static_cast<unsigned char>((stretch.low >> 24) + 1));
    return bytes;
}

std::optional<std::string> decoded_text(const std::vector<unsigned char>& bytes, std::size_t length,
                                        TextModel model) {
    std::size_t done = 0; // bytes
    const auto byte = [&](std::size_t at) { return at < bytes.size() ? std::uint32_t{bytes[at]} : 0u; };
    std::uint32_t number = byte(0) << 24 | byte(1) << 16 | byte(2) << 8 | byte(3);
    Stretch stretch;
    std::string text;
    while (text.size() < length) {
        std::uint32_t letter = 1;
        while (letter < 256) {
            const std::uint32_t last = stretch.last_of_one(model.chance());
            const bool bit = number <= last;
            stretch.take(bit, last);
            model.learn(bit);
            letter = letter << 1 | (bit ? 1u : 0u);
            for (; stretch.has_done_byte(); stretch.drop_byte()) {
                ++done;
                number = number << 8 | byte(done + 3);
            }
        }
        if (done >= bytes.size()) return std::nullopt;
        text += static_cast<char>(letter & 0xFFu);
    }
    if (done + 1 != bytes.size()) return std::nullopt;
    return text;
}

} // namespace evenfall::document
