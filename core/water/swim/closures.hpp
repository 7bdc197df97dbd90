#pragma once

// What the equations of motion.hpp cannot know: numbers with wide ranges, most of them own estimates.

namespace evenfall::swim {

struct Closures {
    double recover = 0.60; ///< share of the water's momentum given back where a segment tapers: low with
                           ///< sharp edges, high where round
    double edge = 0.0;     ///< the same at the tail's edge: 0 cut or sharp, 0.7 pointed
    double cross = 0.80;   ///< end effect on drag across, as fall::EndEffect
    double drag = 1.0;     ///< on the sections' drag across
    double along = 1.0;    ///< on friction and form drag along: joints, paint, eyes
    double added = 1.05;   ///< on added mass
    double fin = 0.80;  ///< share of a plate's added mass that a fin of low aspect has, or a soft tail that
                        ///< bends
    double parts = 1.0; ///< on the drag of hooks, which swing in truth
    double joint_loss = 0.0; ///< share of the water's momentum that is lost at an open joint
};

/// Assumptions number `draw` ≥ 0, the same for every lure: number 0 has all at their usual values, the others
/// are spread evenly (Kronecker sequence after Roberts 2018, from memory), each number triangular over its
/// range. A soft tail's fin share has a wider range, down to 0.3.
[[nodiscard]] Closures closures_of(int draw, bool soft_tail);

} // namespace evenfall::swim
