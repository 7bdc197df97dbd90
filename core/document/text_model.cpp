#include "document/text_model.hpp"

#include <algorithm>
#include <array>

namespace evenfall::document {
namespace {

constexpr int odds_unit = 256;            // log odds are counted in 256ths
constexpr int most_odds = 11 * odds_unit; // a chance of 1 in 60,000
constexpr unsigned odds_steps = 4096;     // chances are told apart so finely when turned into log odds
constexpr unsigned place_bits = 17;       // of each view's table
constexpr unsigned most_counted = 15;
constexpr unsigned trust_shift = 6; // how fast a view learns what its counts are worth
constexpr int first_weight = 13107; // a fifth, of 65536
constexpr int weight_shift = 16;
constexpr int most_weight = 1 << 20;

/// By log odds x, from −most_odds: the chance 1/(1 + e^−x). Made by the compiler with sums and products
/// alone, so that every machine has the same table.
constexpr auto chances = [] {
    constexpr double x = 1.0 / odds_unit;
    constexpr double step = 1.0 + x + x * x / 2.0 + x * x * x / 6.0; // e^x, to 1e-11
    std::array<std::uint16_t, 2 * most_odds + 1> table{};
    double power = 1.0;
    for (std::size_t i = 0; i <= most_odds; ++i) {
        const auto below = static_cast<std::uint16_t>(TextModel::one / (1.0 + power) + 0.5);
        table[most_odds - i] = below;
        table[most_odds + i] = static_cast<std::uint16_t>(TextModel::one - below);
        power *= step;
    }
    return table;
}();

/// By the chance in steps: its log odds.
constexpr auto odds = [] {
    constexpr unsigned step = TextModel::one / odds_steps;
    std::array<std::int16_t, odds_steps> table{};
    int at = 0;
    for (unsigned i = 0; i < odds_steps; ++i) {
        while (at < 2 * most_odds && chances[static_cast<std::size_t>(at)] < i * step + step / 2)
            ++at;
        table[i] = static_cast<std::int16_t>(at - most_odds);
    }
    return table;
}();

constexpr std::uint32_t mixed(std::uint32_t a, std::uint32_t b) {
    std::uint32_t h = a * 0x9E3779B1u + b + 0x7F4A7C15u;
    h = (h ^ h >> 15) * 0x85EBCA6Bu;
    return h ^ h >> 13;
}

/// One more of what came, and half of the other forgotten: what came last counts most.
unsigned counted(unsigned counts, bool bit) {
    unsigned zeros = counts >> 4, ones = counts & 15u;
    unsigned& came = bit ? ones : zeros;
    unsigned& other = bit ? zeros : ones;
    came = std::min(came + 1, most_counted);
    if (other > 2) other = (other + 2) / 2;
    return zeros << 4 | ones;
}

} // namespace

std::uint16_t& TextModel::View::entry() {
    return table[seen >> (32 - place_bits)];
}

/// Two sights may fall on one entry: it is theirs who came last, and the other starts anew.
unsigned TextModel::View::counts() {
    const unsigned held = entry();
    return held >> 8 == (seen & 255u) ? held & 255u : 0u;
}

TextModel::TextModel(std::string_view read_before)
    : views_(views), weights_(letter_views * views, first_weight) {
    for (View& view : views_) {
        view.table.assign(std::size_t{1} << place_bits, 0);
        for (std::uint32_t counts = 0; counts < 256; ++counts) {
            const std::uint32_t zeros = counts >> 4, ones = counts & 15u;
            view.chance.push_back((10 * ones + 3) * (one - 1) / (10 * (zeros + ones) + 6));
        }
    }
    look();
    guess();
    for (const char letter : read_before) {
        for (int bit = 7; bit >= 0; --bit)
            learn((static_cast<unsigned char>(letter) >> bit & 1) != 0);
    }
}

void TextModel::learn(bool bit) {
    const int missed = (static_cast<int>(bit ? one : 0u) - static_cast<int>(chance_)) / 16;
    for (std::size_t i = 0; i < views; ++i) {
        View& view = views_[i];
        constexpr int pace = 6, shift = 14;
        int& weight = weights_[set_ * views + i];
        weight += (view.log_odds * missed * pace + (1 << (shift - 1))) >> shift;
        weight = std::clamp(weight, -most_weight, most_weight);
        const unsigned counts = view.counts();
        std::uint32_t& chance = view.chance[counts];
        if (bit)
            chance += (one - 1 - chance) >> trust_shift;
        else
            chance -= chance >> trust_shift;
        view.entry() = static_cast<std::uint16_t>((view.seen & 255u) << 8 | counted(counts, bit));
    }
    bits_ = bits_ << 1 | (bit ? 1u : 0u);
    if (bits_ > 255) {
        read(static_cast<unsigned char>(bits_ & 255u));
        bits_ = 1;
        look();
    }
    guess();
}

void TextModel::read(unsigned char letter) {
    letters_ = letters_ << 8 | letter;
    if (std::string_view(",:[]{}").find(static_cast<char>(letter)) == std::string_view::npos) {
        token_ = mixed(token_, letter);
        return;
    }
    if (letter == ':') {
        key_before_ = key_;
        key_ = token_;
    }
    token_ = letter;
}

void TextModel::look() {
    constexpr std::array<unsigned, letter_views> lengths{0, 1, 2, 3, 4, 6};
    for (std::size_t i = 0; i < letter_views; ++i) {
        const std::uint64_t last = letters_ & ((std::uint64_t{1} << 8 * lengths[i]) - 1);
        views_[i].sight = mixed(static_cast<std::uint32_t>(last), static_cast<std::uint32_t>(last >> 32));
    }
    views_[letter_views].sight = mixed(key_, token_);
    views_[letter_views + 1].sight = mixed(mixed(key_, token_), key_before_);
}

void TextModel::guess() {
    for (std::size_t i = 0; i < views; ++i) {
        View& view = views_[i];
        view.seen = mixed(view.sight, bits_);
        const unsigned counts = view.counts();
        view.log_odds = counts == 0 ? 0 : odds[view.chance[counts] / (one / odds_steps)];
        if (i == 0 || (counts != 0 && i < letter_views)) set_ = i;
    }
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < views; ++i)
        sum += std::int64_t{views_[i].log_odds} * weights_[set_ * views + i];
    const auto x = std::clamp<std::int64_t>(sum >> weight_shift, -most_odds, most_odds);
    chance_ = chances[static_cast<std::size_t>(x + most_odds)];
}

} // namespace evenfall::document
