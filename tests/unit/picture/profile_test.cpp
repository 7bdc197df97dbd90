// An outline that is taken over by a lure that is made already.

#include "evenfall.hpp"
#include "picture/profile.hpp"
#include "starter.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <string>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

/// The lure's own lines, its length times a factor: what a sketch gives whose marks were set a little off.
picture::Profile own_lines(const document::Document& document, double factor) {
    picture::Profile profile;
    profile.top = document.shape.back;
    profile.bottom = document.shape.belly;
    for (auto* line : {&profile.top, &profile.bottom}) {
        for (document::CurvePoint& point : *line)
            point.x_m *= factor;
    }
    profile.length_m = document.shape.half_width.back().x_m * factor;
    return profile;
}

} // namespace

TEST_CASE("a lure with a tail in its slot takes a sketch a little shorter or longer than itself",
          "[picture]") {
    const auto made = starter::new_lure(starter::LureCard{});
    REQUIRE(made);
    REQUIRE((made->tail && made->tail->tenon));
    for (const double factor : {0.985, 0.999, 1.001, 1.02}) {
        CAPTURE(factor);
        const document::Document traced = picture::with_profile(*made, own_lines(*made, factor));
        const auto evaluation = evaluate(traced);
        const std::string refusal =
            evaluation ? "" : evaluation.problems().front().sentence.text(units::metric);
        CHECK(refusal.empty());
        CHECK_THAT(traced.tail->x_m - traced.shape.half_width.back().x_m,
                   WithinAbs(made->tail->x_m - made->shape.half_width.back().x_m, 1e-12));
    }
}
