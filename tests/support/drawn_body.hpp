#pragma once

#include "body/body.hpp"
#include "support/drawn_shapes.hpp"

#include <catch2/catch_test_macros.hpp>

namespace evenfall::support {

/// The drawn minnow with this section and these joints.
inline shape::Body minnow_body(const document::Section& section, const std::vector<document::Joint>& joints) {
    document::Shape shape = drawn_minnow();
    shape.section = section;
    auto lines = shape::drawn_lines(shape);
    REQUIRE(lines.ok());
    auto body = shape::cut(*lines, joints);
    REQUIRE(body.ok());
    return *body;
}

} // namespace evenfall::support
