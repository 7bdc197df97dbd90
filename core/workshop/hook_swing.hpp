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

/// What a hook can foul.
enum class FoulKind { hook, joint, tail };

struct HookFoul {
    int part = 0; ///< the hook, index into document.parts
    FoulKind what = FoulKind::hook;
    int other =
        0; ///< the other hook's part, the joint, or the tail's part; −1: the soft tail with a drawn shape
    double over_m = 0.0; ///< overlap of the spheres, or how far the reach exceeds the distance to the nearest
                         ///< point of what is fouled
    std::optional<SwingSide>
        bent{};            ///< only with every joint swung to this side; when straight they are clear
    bool part_way = false; ///< bent, and nearest before the joints reach their full swing
};

/// A hook's hanger is above its centre of mass by this share of its reach: the bend is heavier than the
/// shank. Common practice, no source.
inline constexpr double hanger_share = 0.55;

/// Hanger of a hook and its reach from there. Below the body the hanger is vertically above the hook's centre
/// of mass; behind the end of the tail, where a hook trails, it is straight ahead of it.
struct Hanger {
    Vec3 at_m;
    double reach_m = 0.0;
    int segment = 0;
};
[[nodiscard]] Hanger hanger_of(const document::Part& hook, const shape::Body& body);

/// Swing of each joint, by Way; angles ≥ 0.
using Swings = std::array<std::vector<double>, 2>;

/// Hooks (parts with a reach) swept fore-aft and sideways: each may be anywhere within the sphere of its
/// reach about its hanger, outside the wood.
///
///   hook   two spheres overlap: the bends can lock. Hangers are at their own heights
///   joint  the sphere reaches the edge of a joint's cut on the lower half of the body, at the cut's middle:
///          the point can enter the gap when it closes
///   tail   the sphere reaches the middle of a part of soft plastic or silicone behind its hanger, or the
///          root of a soft tail with a drawn shape
///
/// Hook and tail are checked again with the chain bent as far as all joints swing (chain.hpp) and at seven
/// even steps on the way, all joints by the same share, each hanger moving with its segment: what is clear
/// when straight and fouls when bent is reported as such. The steps are needed because hangers to one side of
/// a pin, or of a chain that wraps far, pass each other; contact only between two steps, or with joints swung
/// by different shares, is not found.
///
/// Remedies: shorter shanks, smaller hooks, or hangers farther apart by `over_m`.
[[nodiscard]] std::vector<HookFoul> hook_fouls(const document::Document& document, const shape::Body& body,
                                               std::span<const Pin> pins, const Swings& swings);

} // namespace evenfall::joints
