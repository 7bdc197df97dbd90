#pragma once

// Laws of how a lure swims, whatever its chain.

#include "fuzz/finite.hpp"
#include "fuzz/law.hpp"
#include "water/swim/swim.hpp"

namespace evenfall::fuzz {

/// The first draw, where a small amount of work comes to one: more would make the fuzzers slow.
inline std::optional<swim::SwimAnswer> must_beat(const swim::Chain& chain, const swim::Tow& tow = {}) {
    swim::SwimRun run(chain, tow, 1);
    run.work(20000);
    if (!run.done()) return std::nullopt;
    swim::SwimAnswer a = run.answer();
    must(a.of == 1 && a.swims >= 0 && a.swims <= 1, "a draw beats or does not");
    must(a.joints.size() == chain.joints.size(), "every joint has its swing");
    for (const swim::Draw& d : a.draws)
        must(finite(d.beats_per_m, d.tail_swing_m) && d.beats_per_m >= 0.0, "beats are a number");
    for (const swim::JointSwing& j : a.joints)
        must(finite(j.swing_rad) && j.swing_rad >= 0.0, "a joint's swing is a number");
    must(!a.beats_per_m ||
             (a.beats_per_m->low <= a.beats_per_m->mid && a.beats_per_m->mid <= a.beats_per_m->high),
         "a band goes upwards");
    return a;
}

} // namespace evenfall::fuzz
