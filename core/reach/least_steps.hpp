#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace evenfall::reach {

/// The least number of steps with which a shortage is gone, asked one number at a time. The shortage is taken
/// to fall steadily until then; where it does not fall at all, the search gives up.
class LeastSteps {
public:
    LeastSteps(int most, double shortage_without) : most_(most), low_short_(shortage_without) {
        best_short_ = shortage_without;
        ask_ = most_ <= one_by_one ? 1 : std::max(1, most_ / 10);
    }

    /// The number of steps to try next; absent once it is over.
    [[nodiscard]] std::optional<int> ask() const { return over_ ? std::nullopt : std::optional(ask_); }

    /// What is short with the number that was asked; infinite where that cannot be built.
    void tell(double shortage) {
        if (std::isfinite(shortage) && shortage < best_short_) {
            best_ = ask_;
            best_short_ = shortage;
        }
        if (shortage <= 0.0) {
            high_ = ask_;
            high_short_ = shortage;
        } else if (!std::isfinite(shortage)) {
            most_ = ask_ - 1; // farther cannot be built either
            if (high_) over_ = true;
        } else {
            slope_ = (shortage - low_short_) / (ask_ - low_);
            low_ = ask_;
            low_short_ = shortage;
        }
        if (!over_) go_on(std::isfinite(shortage));
    }

    [[nodiscard]] std::optional<int> found() const { return over_ ? high_ : std::nullopt; }
    /// Where the shortage was least, and how much it was; 0 steps where nothing helped.
    [[nodiscard]] int best() const { return best_; }
    [[nodiscard]] double best_shortage() const { return best_short_; }

private:
    static constexpr int one_by_one = 4;

    void go_on(bool was_built) {
        if (high_ && *high_ - low_ <= 1) {
            over_ = true;
        } else if (high_) {
            // Where a straight line has it, on the far side by one; halfway if that has come to nothing.
            const double share = low_short_ / (low_short_ - high_short_);
            const int straight = low_ + static_cast<int>(std::ceil(share * (*high_ - low_)));
            halve_ = !halve_;
            ask_ = halve_ ? straight : low_ + (*high_ - low_) / 2;
            ask_ = std::clamp(ask_, low_ + 1, *high_ - 1);
        } else if (low_ >= most_) {
            over_ = true;
        } else if (!was_built) {
            ask_ = low_ + std::max(1, (most_ - low_) / 4);
        } else if (most_ <= one_by_one) {
            ask_ = low_ + 1;
        } else if (!(slope_ < 0.0)) {
            over_ = true;
        } else {
            const double needed = low_ + low_short_ / -slope_;
            ask_ = static_cast<int>(std::clamp(std::ceil(needed), low_ + 1.0, static_cast<double>(most_)));
        }
    }

    int most_;
    int low_ = 0; ///< the most steps so far with which something is short
    double low_short_;
    std::optional<int> high_; ///< the least with which nothing is
    double high_short_ = 0.0;
    double slope_ = -1.0;
    int ask_ = 1;
    bool halve_ = false;
    bool over_ = false;
    int best_ = 0;
    double best_short_;
};

} // namespace evenfall::reach
