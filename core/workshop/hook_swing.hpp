#pragma once

#include "base/problem.hpp"
#include "base/vec3.hpp"
#include "body/body.hpp"
#include "body/pin.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::joints {

/// What a hook can swing into.
enum class Fouls { hook, joint, tail };

struct HookFoul {
    int part = 0; ///< of document.parts: the hook
    Fouls what = Fouls::hook;
    int other = 0; ///< the other hook's part, the joint, or the tail's part; −1: the tail by its shape
    double over_m =
        0.0; ///< how far the spheres overlap, or the reach goes beyond the nearest place of what is fouled
    std::optional<Way> bent{}; ///< only with every joint swung this way; straight they are clear
    bool part_way = false;     ///< bent, and nearest before the joints have swung as far as they go
};

/// A hook hangs this share of its reach above its own centre of mass: the bend is heavier than the shank.
/// Common practice, no source.
inline constexpr double hanger_share = 0.55;

/// Where a hook is hung and how far it reaches from there. Below the body the hanger is straight above the
/// hook's centre of mass; behind the tail's end, where a hook trails, it is straight ahead of it.
struct Hanger {
    Vec3 at_m;
    double reach_m = 0.0;
    int segment = 0;
};
[[nodiscard]] Hanger hanger_of(const document::Part& hook, const shape::Body& body);

/// How far each joint swings, by Way; angles ≥ 0.
using Swings = std::array<std::vector<double>, 2>;

/// Hooks (parts with a reach) swept fore-aft and sideways: each may be anywhere within the sphere of its
/// reach about its hanger that the wood leaves free.
///
/// hook   two spheres overlap: the bends can lock. Hangers stand at their own heights
/// joint  the sphere reaches the edge of a joint's cut on the lower half of the body, at the cut's middle:
/// the point can fall
///        into the gap when it closes
/// tail   the sphere reaches the middle of a part of soft plastic or silicone behind its hanger, or the root
/// of a tail by its shape
///
/// Hook and tail once more with the chain bent as far as all joints swing (joints/chain.hpp) and at seven
/// even steps on the way there, all joints by the same share, each hanger carried by its segment: what is
/// clear when straight and fouls then is told apart. In between, because hangers to one side of a pin, or of
/// a chain that wraps far, pass each other; what meets only between two steps, or with joints swung each by
/// its own share, is not seen.
///
/// Shorter shanks, smaller hooks, or hangers farther apart by `over_m` cure it.
[[nodiscard]] std::vector<HookFoul> hook_fouls(const document::Document& document, const shape::Body& body,
                                               std::span<const Pin> pins, const Swings& swings);

} // namespace evenfall::joints
