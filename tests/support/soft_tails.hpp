#pragma once

#include "document/document.hpp"
#include "support/small_lures.hpp"

#include <cmath>
#include <numbers>

namespace evenfall::support {

/// A tail of constant superellipse section: half height b, half thickness a.
inline document::Tail straight_tail(double length_m, double a_m, double b_m) {
    document::Tail t;
    t.back = {{0.0, b_m}, {length_m, b_m}};
    t.belly = {{0.0, -b_m}, {length_m, -b_m}};
    t.half_thickness = {{0.0, a_m}, {length_m, a_m}};
    return t;
}

/// A paddle that rises behind its root, asymmetric in z. Invented.
inline document::Tail paddle(double x_m) {
    document::Tail t;
    t.x_m = x_m;
    t.z_m = 0.001;
    t.back = {{0.0, 0.005}, {0.012, 0.0035}, {0.028, 0.007}, {0.041, 0.013}, {0.046, 0.0105}};
    t.belly = {{0.0, -0.006}, {0.014, -0.004}, {0.030, -0.005}, {0.042, -0.009}, {0.046, -0.007}};
    t.half_thickness = {{0.0, 0.0031}, {0.020, 0.0022}, {0.040, 0.0014}, {0.046, 0.0004}};
    t.exponent = 2.4;
    return t;
}

/// The square-edged block (small_lures.hpp) with a flooded slot of 14 mm at its end, and the paddle's tenon
/// in it.
inline document::Document block_with_tail() {
    document::Document d = block();
    document::Pocket slot;
    slot.x_from_m = 0.106;
    slot.x_to_m = 0.120;
    slot.width_m = 0.003;
    slot.z_from_m = -0.006;
    slot.z_to_m = 0.008;
    d.pockets = {slot};
    d.tail = paddle(0.120);
    d.tail->tenon = document::Tenon{0.012, 0.0025, 0.010};
    return d;
}

} // namespace evenfall::support
