#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string>

namespace evenfall::fuzz {

/// Draws choices from a fuzzer's bytes, front to back; when they are used up every draw is the least one.
class Bytes {
public:
    Bytes(const std::uint8_t* bytes, std::size_t size) : at_(bytes), end_(bytes + size) {}

    /// From now on one number in eight lies beside its limits, or is none at all.
    void go_astray() { astray_ = true; }
    [[nodiscard]] bool astray() const { return astray_; }

    unsigned byte() { return at_ == end_ ? 0u : *at_++; }
    bool yes() { return (byte() & 1u) != 0u; }
    /// True once in so many draws.
    bool once_in(unsigned count) { return byte() % count == count - 1; }
    std::size_t below(std::size_t count) { return byte() % count; }
    template <class E>
    E one_of(E last) {
        return static_cast<E>(below(static_cast<std::size_t>(last) + 1));
    }
    /// 0 to 1 in steps of 1/65535.
    double share() {
        const unsigned high = byte();
        return static_cast<double>(high << 8u | byte()) / 65535.0;
    }

    /// `least` to `most`; both limits come often.
    double number(double least, double most) {
        const unsigned sort = byte();
        if (sort < 8) return least;
        if (sort < 16) return most;
        if (astray_ && sort < 48) return beside(least, most, sort & 7u);
        return least + (most - least) * share();
    }

    /// Mostly between the figures that lures have, now and then anywhere within the limits.
    double usual(double from, double to, double least, double most) {
        if (once_in(16)) return number(least, most);
        return from + (to - from) * share();
    }

    /// A length of a list: mostly a few, sometimes up to the limit; astray sometimes one more.
    std::size_t count(std::size_t few, std::size_t most) {
        const unsigned sort = byte();
        if (astray_ && sort == 255) return most + 1;
        if (sort >= 250) return most;
        return sort >= 240 ? byte() % (most + 1) : sort % (few + 1);
    }

    /// Letters, blanks, umlauts and signs; astray any bytes.
    std::string text(std::size_t few, std::size_t most) {
        static constexpr const char* pieces[] = {"a",  "e", "n", "T", " ",  "1", "/", "ä", "–", "\"",
                                                 "\\", "<", "&", "'", "水", "=", "#", ",", "%"};
        std::string out;
        for (std::size_t left = count(few, most); left > 0; --left) {
            if (astray_)
                out += static_cast<char>(byte());
            else
                out += pieces[below(std::size(pieces))];
        }
        return out;
    }

private:
    static double beside(double least, double most, unsigned sort) {
        constexpr double hair = 1e-9;
        switch (sort) {
        case 0:
            return least - hair * (most - least);
        case 1:
            return most + hair * (most - least);
        case 2:
            return least - 0.1 * (most - least);
        case 3:
            return most + 0.1 * (most - least);
        case 4:
            return std::numeric_limits<double>::quiet_NaN();
        case 5:
            return std::numeric_limits<double>::infinity();
        case 6:
            return -std::numeric_limits<double>::max();
        default:
            return std::numeric_limits<double>::denorm_min();
        }
    }

    const std::uint8_t* at_;
    const std::uint8_t* end_;
    bool astray_ = false;
};

} // namespace evenfall::fuzz
