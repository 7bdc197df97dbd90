#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace evenfall::document {

/// Guesses a text bit by bit from what it has read so far, and learns from every bit. What it guesses well
/// costs little in a link (text_code.hpp).
///
/// Eight views look at what stands before a bit: the last letters, none to six of them, or the JSON key that
/// the bit belongs to. Each keeps counts of the zeros and ones that came whenever things looked the same, and
/// learns what such counts are worth. Their guesses are added up as log odds, with weights that follow
/// whoever was right (mixing as in Mahoney 2005, "Adaptive Weighing of Context Models for Lossless Data
/// Compression", from memory).
///
/// Both ends of a link must guess alike to the last bit, on every machine: all sums are of integers, and
/// nothing here may change without a new version of the link.
class TextModel {
public:
    static constexpr std::uint32_t one = 1u << 16; ///< the chance of what is certain

    /// Has read this text.
    explicit TextModel(std::string_view read_before);

    /// The chance that the next bit is a one, 1 to one − 1. A letter's highest bit comes first.
    [[nodiscard]] std::uint32_t chance() const { return chance_; }
    void learn(bool bit);

private:
    static constexpr std::size_t views = 8;
    static constexpr std::size_t letter_views = 6; ///< the first of them

    struct View {
        std::vector<std::uint16_t> table;  ///< by what is seen: whose entry it is, then zeros, then ones
        std::vector<std::uint32_t> chance; ///< by zeros and ones: how often a one came next, of `one`
        std::uint32_t sight = 0;           ///< what stands before the letter
        std::uint32_t seen = 0;            ///< what stands before the bit
        int log_odds = 0;                  ///< its guess

        [[nodiscard]] std::uint16_t& entry();
        [[nodiscard]] unsigned counts();
    };

    void read(unsigned char letter);
    void look();
    void guess();

    std::vector<View> views_;
    std::vector<int> weights_; ///< of the views, a set for each view of letters
    std::size_t set_ = 0;      ///< by the longest view of letters that has seen the like
    std::uint32_t chance_ = one / 2;
    std::uint32_t bits_ = 1;    ///< of the letter begun, after a one
    std::uint64_t letters_ = 0; ///< the last eight
    std::uint32_t token_ = 0, key_ = 0, key_before_ = 0;
};

} // namespace evenfall::document
