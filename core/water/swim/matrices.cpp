#include "water/swim/matrices.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace evenfall::swim {

namespace {

/// A slice with its place along the whole lure and its added mass a metre.
struct Piece {
    std::size_t segment = 0;
    const Slice* slice = nullptr;
    double x_m = 0.0; ///< aft of the line tie
    double added_kg_m = 0.0;

    [[nodiscard]] double end_m() const { return x_m + 0.5 * slice->length_m; }
    [[nodiscard]] double kg() const { return added_kg_m * slice->length_m; }
};

/// A share of z: what a place feels of each motion.
using Row = std::array<double, 2 * most_segments>;

class Builder {
public:
    Builder(const Chain& chain, const Closures& closures, const Nearness& nearness)
        : segments_(chain.segments.size()), closures_(closures), nearness_(nearness) {
        for (std::size_t i = 0; i < segments_; ++i) {
            for (const Slice& s : chain.segments[i].slices)
                pieces_.push_back({i, &s, hinge_m_[i] + s.s_m, added_kg_m(s)});
            if (i + 1 < segments_) hinge_m_[i + 1] = hinge_m_[i] + chain.segments[i].length_m;
        }
    }

    [[nodiscard]] Matrices built() const {
        Matrices m;
        for (const Piece& p : pieces_)
            append(m.added, p.kg(), felt(p.segment, p.x_m, p.slice->height_m));
        for (std::size_t k = 0; k < pieces_.size(); ++k)
            append_shed(m, k);
        return m;
    }

private:
    [[nodiscard]] double added_kg_m(const Slice& s) const {
        if (!s.is_fin) return closures_.added * s.added_kg_m;
        return closures_.added * std::max(0.0, closures_.fin * s.added_kg_m - s.wood_kg_m);
    }

    [[nodiscard]] Row felt(std::size_t segment, double x_m, double height_m) const {
        Row row{};
        double sum = 0.0;
        for (const Piece& p : pieces_) {
            const double weight = p.kg() * std::exp(-std::abs(x_m - p.x_m) / (nearness_.reach * height_m));
            sum += weight;
            row[p.segment] += weight;
            row[segments_ + p.segment] += weight * p.slice->s_m;
        }
        for (double& share : row)
            share *= (1.0 - nearness_.own) / sum;
        row[segment] += nearness_.own;
        row[segments_ + segment] += nearness_.own * (x_m - hinge_m_[segment]);
        return row;
    }

    void append(Matrix& to, double kg, const Row& row) const {
        for (std::size_t r = 0; r < 2 * segments_; ++r) {
            for (std::size_t c = 0; c < 2 * segments_; ++c)
                to[r][c] += kg * row[r] * row[c];
        }
    }

    /// What is shed at the aft end of a piece [kg/m].
    [[nodiscard]] double shed_kg_m(std::size_t k) const {
        const Piece& p = pieces_[k];
        if (k + 1 == pieces_.size()) return (1.0 - closures_.edge) * p.added_kg_m;
        const Piece& next = pieces_[k + 1];
        // A fin's slices are what it has beyond the wood; where the wood ends, all of it goes on.
        const bool at_fin = next.slice->is_fin && !p.slice->is_fin;
        const double aft =
            at_fin ? closures_.added * closures_.fin * next.slice->added_kg_m : next.added_kg_m;
        double shed = (1.0 - closures_.recover) * std::max(0.0, p.added_kg_m - aft);
        if (next.segment != p.segment) shed += closures_.joint_loss * std::min(p.added_kg_m, aft);
        return shed;
    }

    void append_shed(Matrices& m, std::size_t k) const {
        const Piece& p = pieces_[k];
        const double shed = shed_kg_m(k);
        if (!(shed > 0.0)) return;
        double height = p.slice->height_m;
        if (k + 1 < pieces_.size() && pieces_[k + 1].segment != p.segment)
            height = 0.5 * (height + pieces_[k + 1].slice->height_m);
        append(m.shed[p.segment], shed, felt(p.segment, p.end_m(), height));
    }

    std::size_t segments_;
    const Closures& closures_;
    Nearness nearness_;
    std::array<double, most_segments> hinge_m_{}; ///< aft of the line tie
    std::vector<Piece> pieces_;
};

} // namespace

Matrices matrices_of(const Chain& chain, const Closures& closures, const Nearness& nearness) {
    return Builder(chain, closures, nearness).built();
}

} // namespace evenfall::swim
