#include "water/swim/closures.hpp"

#include <cmath>

namespace evenfall::swim {

namespace {

struct Range {
    double low, usual, high;
};

/// Of a triangular distribution, the value below which the share u lies.
double triangular(const Range& r, double u) {
    const double span = r.high - r.low;
    const double below = (r.usual - r.low) / span;
    return u < below ? r.low + std::sqrt(u * span * (r.usual - r.low))
                     : r.high - std::sqrt((1.0 - u) * span * (r.high - r.usual));
}

/// The even sequence: the powers of 1/φ, φ⁹ = φ + 1, as steps of its eight coordinates.
class Even {
public:
    explicit Even(int draw) : draw_(draw) {}
    double next() {
        constexpr double step = 1.0 / 1.0850702454914509; // the positive root of x⁹ = x + 1
        power_ *= step;
        const double u = 0.5 + power_ * draw_;
        return u - std::floor(u);
    }

private:
    int draw_;
    double power_ = 1.0;
};

} // namespace

Closures closures_of(int draw, bool soft_tail) {
    Closures c;
    if (draw == 0) return c;
    Even even(draw);
    c.recover = triangular({0.3, c.recover, 0.85}, even.next());
    c.cross = triangular({0.5, c.cross, 0.95}, even.next());
    c.drag = triangular({0.8, c.drag, 1.25}, even.next());
    c.along = triangular({0.6, c.along, 2.0}, even.next());
    c.added = triangular({0.9, c.added, 1.15}, even.next());
    c.fin = triangular({soft_tail ? 0.3 : 0.6, c.fin, soft_tail ? 0.9 : 1.0}, even.next());
    c.parts = triangular({0.6, c.parts, 1.5}, even.next());
    c.joint_loss = triangular({0.0, c.joint_loss, 0.25}, even.next());
    return c;
}

} // namespace evenfall::swim
