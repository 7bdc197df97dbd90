// Weighing and chance against figures from outside the project; each names its source.

#include "bench/uncertainty/chance.hpp"
#include "bench/uncertainty/observation.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

double read_low_share(double density) {
    document::Document d = support::block();
    d.wood.density_kg_m3 = density;
    const bench::Model model = bench::Model::of(d).value();
    bench::Observer observer(model);
    document::Reading r;
    r.mass_kg = 0.03;
    const Eigen::VectorXd u = Eigen::VectorXd::Zero(model.count());
    const double shown = observer.observe(r, u)->predicted;
    const double mass = model.sum(Stage::carved, -1, u).mass.kg;
    return 1.0 - shown / mass;
}

bench::TargetBand wide() {
    bench::TargetBand a;
    a.scales_with_drag = false;
    a.low_kg = -1e3;
    a.high_kg = 1e3;
    a.pitch_band_rad = 1e3;
    return a;
}

/// Mass, and G's place aft of B one metre below it, whose tangent is the hang's.
bench::Forecast forecast(double mass_sigma_kg, double aft_sigma_m, double correlation,
                         const bench::TargetBand& band) {
    bench::Forecast t;
    t.covariance(0, 0) = mass_sigma_kg * mass_sigma_kg;
    t.covariance.block<2, 2>(2, 2).setConstant(aft_sigma_m * aft_sigma_m);
    for (const Eigen::Index past : {bench::figure::past_low, bench::figure::past_high})
        t.covariance(0, past) = t.covariance(past, 0) = correlation * mass_sigma_kg * aft_sigma_m;
    t.mean.segment<2>(bench::figure::past_low) = band.past({0.0, 1.0});
    return t;
}

} // namespace

TEST_CASE("A scale in air reads low by about 0.25 % at 0.47 g/cm3 and 0.75 % at 0.16 g/cm3 (air buoyancy; "
          "from memory)") {
    CHECK_THAT(read_low_share(470.0), WithinAbs(0.0025, 0.0002));
    CHECK_THAT(read_low_share(160.0), WithinAbs(0.0075, 0.0003));
    // Weights of 8000 kg/m3 in air of 1.2 kg/m3 (OIML R 111): a thing as dense as they are reads right.
    CHECK_THAT(bench::air_kg_m3 / 470.0 - bench::air_kg_m3 / bench::scale_weights_kg_m3,
               WithinAbs(read_low_share(470.0), 1e-9));
}

TEST_CASE(
    "Wood of a handbook's species alone: 10 % between boards (Wood Handbook 2010, chapter 4, density)") {
    document::Document d = support::block();
    d.wood.density_kg_m3.reset();
    d.wood.density_spread.reset();
    d.wood.species = "basswood";
    const auto s = uncertainty(d);
    REQUIRE(s.ok());
    CHECK(s->inputs[0].cause == document::Cause::wood_density);
    CHECK_THAT(s->inputs[0].spread, WithinAbs(0.10, 1e-12));
}

TEST_CASE("A normal figure lies within one, two and three standard deviations by 68.27, 95.45 and 99.73 % "
          "(any table; from memory)") {
    for (const auto& [width, share] :
         {std::pair{1.0, 0.682689}, std::pair{2.0, 0.954500}, std::pair{3.0, 0.997300}}) {
        bench::TargetBand a = wide();
        a.low_kg = -width * 2e-3;
        a.high_kg = width * 2e-3;
        a.pitch_band_rad = std::atan(width * 1e-2);
        const bench::Forecast t = forecast(2e-3, 1e-2, 0.0, a);
        CHECK_THAT(bench::chances(t, a).fall, WithinAbs(share, 1e-6));
        CHECK_THAT(bench::chances(t, a).pitch, WithinAbs(share, 1e-6));
        // Nothing to do with each other: the chance of both is the product.
        CHECK_THAT(bench::chances(t, a).both, WithinAbs(share * share, 2e-5));
    }
}

TEST_CASE("Two normal figures both above their means: 1/4 + asin(rho)/2pi (Sheppard 1899, from memory)") {
    for (const double rho : {-0.9, -0.5, 0.0, 0.3, 0.8}) {
        bench::TargetBand a = wide();
        a.low_kg = 0.0;
        a.pitch_rad = 1.0;
        a.pitch_band_rad = 1.0;
        CHECK_THAT(bench::chances(forecast(1e-3, 1e-2, rho, a), a).both,
                   WithinAbs(0.25 + std::asin(rho) / (2.0 * std::numbers::pi), 1e-4));
    }
}

TEST_CASE("Drag alone in doubt: the chance is that of a lognormal figure between two bounds (closed form)") {
    bench::TargetBand a = wide();
    a.scales_with_drag = true;
    a.low_kg = 0.0024;
    a.high_kg = 0.0036;
    bench::Forecast t = forecast(1e-7, 1e-4, 0.0, a); // the mass as good as known
    t.mean(0) = 0.003;
    t.covariance(1, 1) = 0.04;
    // Right while ln(m/high) ≤ ln drag ≤ ln(m/low).
    const auto phi = [](double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); };
    const double exact = phi(std::log(0.003 / 0.0024) / 0.2) - phi(std::log(0.003 / 0.0036) / 0.2);
    // Steps of drag are 0.14 standard deviations wide, and here each is all or nothing.
    CHECK_THAT(bench::chances(t, a).fall, WithinAbs(exact, 0.05));
    t.covariance(0, 0) = 1e-8;
    CHECK_THAT(bench::chances(t, a).fall, WithinAbs(exact, 0.01));
}

TEST_CASE(
    "From rest at first it falls freely, less what it must carry along: depth = v²t²/2ℓ (Galilei's law)") {
    const double speed = 0.16;
    const double gathering = 0.13;
    const double depth = 1e-5;
    const double time = time_from_rest_s(depth, speed, gathering);
    CHECK_THAT(0.5 * speed * speed / gathering * time * time, WithinRel(depth, 1e-3));
    // And in the end it has lost ℓ·ln 2 of way for good.
    CHECK_THAT(time_from_rest_s(100.0, speed, gathering),
               WithinRel((100.0 + gathering * std::numbers::ln2) / speed, 1e-9));
}
