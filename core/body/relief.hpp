#pragma once

#include "body/body.hpp"
#include "body/segment_sums.hpp"

namespace evenfall::shape {

/// One end of a segment at a joint: the plane through the middle of its face and the two flanks that lean
/// back from it.
struct FacePlane {
    double x_m = 0.0;
    double tangent = 0.0; ///< of the relief angle; 0 = flat
    double side = 1.0;    ///< +1 the aft face of a segment, −1 its fore face

    /// x of the flank at y.
    [[nodiscard]] double x_at(double y_m) const;
};

/// Flank and skin must diverge at least this fast, as 1 + tanα·dy/dx along the skin towards the face: 1 on a
/// parallel body, 0 where the flank runs along the skin.
inline constexpr double least_opening = 0.25;

/// How far along the body a face reaches from its plane at the given share of the half width (0 to 1). NaN
/// where flank and skin do not meet or do not diverge fast enough: the body narrows as fast as the flank
/// leans.
[[nodiscard]] double relief_depth(const Lines& lines, const FacePlane& plane, double share);

/// What a V relief removes from the full sections, and the face it leaves.
struct Relief {
    WoodSums wood; ///< to be subtracted
    SkinSums skin;
    Face face;
    bool is_clean =
        true; ///< flank and skin diverge fast enough all round; if false, the numbers must not be used
    double edge_m = 0.0; ///< ∬H dA of the face's edges: rim, and the ridge where the flanks meet
};

/// A face at `plane`, flat or relieved; its relief depth must exist. Flat faces remove nothing.
///
/// The wood between flank and plane is integrated along lines of constant τ on the skin: by Green's theorem
/// ∬f dy dz = −∮F dy with ∂F/∂z = f, and the cut's vertical edge (dy = 0) adds nothing. Exact in the limit,
/// unlike the constant-section rule tanα·∬|y|dA.
///
/// Edges: ½∫(exterior angle) dl. Rim: the angle between flank and skin, acos(sinα·cosφ); the skin's slope
/// along the body is left out (it cancels as in SkinSums::bend, here to first order). Ridge: 2α along the
/// section's height.
[[nodiscard]] Relief relief_at(const Lines& lines, RimTable& rim, const FacePlane& plane);

} // namespace evenfall::shape
