#pragma once

#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>

#include <string>

namespace evenfall::support {

inline joints::JointsAnswer answered(const document::Document& d) {
    const auto a = joints::joint_answers(d);
    REQUIRE(a.ok());
    return *a;
}

inline bool warns_of(const joints::JointsAnswer& a, const std::string& words) {
    for (const Problem& p : a.warnings) {
        if (p.sentence.text(evenfall::units::metric).find(words) != std::string::npos) return true;
    }
    return false;
}

inline const joints::Wall* wall(const joints::JointAnswer& j, joints::WallKind between) {
    for (const joints::Wall& w : j.walls) {
        if (w.between == between) return &w;
    }
    return nullptr;
}

} // namespace evenfall::support
