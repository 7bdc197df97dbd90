#pragma once

#include "base/problem.hpp"
#include "preset/document.hpp"

#include <vector>

namespace evenfall::joints {

/// What a hook can swing into.
enum class Fouls { hook, joint, tail };

struct HookFoul {
    int part = 0;           ///< of document.parts: the hook
    Fouls what = Fouls::hook;
    int other = 0;          ///< the other hook's part, the joint, or the tail's part; −1: the tail by its shape
    double over_m = 0.0;    ///< how far the swept circles overlap, or the reach goes beyond the joint's middle
};

/// Hooks (parts with a reach) swept as circles about their hangers, seen from the side. A hook hangs straight below its hanger,
/// so the hanger stands at the part's x; hangers are taken to stand at one height, which is the tightest case.
///
/// hook   two circles overlap: the bends can lock
/// joint  the circle reaches across a joint: the point can fall into the gap when it closes
/// tail   the circle reaches the middle of a part of soft plastic or silicone behind it, or the root of a tail by its shape
///
/// Shorter shanks, smaller hooks, or hangers farther apart by `over_m` cure it.
[[nodiscard]] std::vector<HookFoul> hook_fouls(const preset::Document& document);

}  // namespace evenfall::joints
