// Lures that nobody would carve, drawn by a fuzzer: what is believed of them is in numbers, and a chance is a
// share.

#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>

using namespace evenfall;

namespace {

void check_shares(const char* text) {
    const auto document = read_document(text);
    REQUIRE(document.ok());
    const auto s = uncertainty(*document);
    REQUIRE(s.ok());
    for (const Chances& c : {s->chances_now, s->chances_corrected}) {
        for (const double share : {c.fall, c.pitch, c.both})
            CHECK((share >= 0.0 && share <= 1.0));
    }
    CHECK(s->weight_band_kg >= 0.0);
    CHECK(std::isfinite(s->target_in_water_kg));
}

} // namespace

TEST_CASE("Chances stay shares where the slow end of the asked band wants the heavier lure") {
    check_shares(R"({
  "evenfall": 2,
  "name": "wavy",
  "wood": {"species": "white_pine", "moisture_percent": 8.112947},
  "water": {"temperature_C": 17.101091, "salinity_g_kg": 9.622339},
  "tub": {"temperature_C": 30.30808, "salinity_g_kg": 5.636683},
  "shape": {
    "back_mm": [[0, 3.280117], [23.05463, 3.591486], [42.837995, 1.174521], [74.148676, 6.185394], [85.208667, 1.096378]],
    "belly_mm": [
      [0, -2.670493], [10.304304, -0.693641], [20.707688, -1.232336], [34.083467, -4.439036], [44.88317, -6.94868], [55.980113, -4.028649], [81.047314, -7.331198],
      [85.208667, -4.179689]
    ],
    "half_width_mm": [[0, 2.667263], [34.906592, 3.281396], [47.101034, 3.718773], [57.009019, 1.716112], [79.873599, 3.04418], [85.208667, 0.453966]],
    "section": {"kind": "chamfered", "corner_cut": [[0, 0.425681], [12.813333, 0.19266], [41.963667, 0.086107], [85.208667, 0.453605]]},
    "measured": [{"x_mm": 0, "height_mm": 307.542457}, {"x_mm": 34.037779, "height_mm": 9.919122}, {"x_mm": 85.208667, "width_mm": 6.865797, "height_mm": 12.250404}]
  },
  "segments": ["eea", "", ""],
  "joints": [
    {"at_mm": 19.770638, "gap_mm": 0.71397, "relief_fore_deg": 9.043259, "relief_aft_deg": 2.940795},
    {"at_mm": 51.515044, "gap_mm": 2.973564, "relief_fore_deg": 18.501564, "relief_aft_deg": 24.243915}
  ],
  "targets": {"fall_mm_s": 20, "pitch_deg": -15, "fall_band_percent": 3, "pitch_band_deg": 1}
})");
}

TEST_CASE("A splinter of two cubic millimetres is asked for its fall without a fault") {
    check_shares(R"({
  "evenfall": 2,
  "name": "splinter",
  "wood": {"species": "white_pine", "moisture_percent": 8.112947},
  "water": {"temperature_C": 17.101091, "salinity_g_kg": 9.622339},
  "tub": {"temperature_C": 30.30808, "salinity_g_kg": 4.580758},
  "shape": {
    "back_mm": [[0, 0.326349], [3.619382, 0.326349], [5.073597, 0.326349], [11.21362, 0.326349], [14.315947, 0.326349], [22.26566, 0.326349]],
    "belly_mm": [[0, -0.326349], [22.26566, -0.326349]],
    "half_width_mm": [[0, 0.085899], [22.26566, 0.085899]],
    "section": {"kind": "rounded", "exponent": 1.8}
  },
  "segments": [""],
  "targets": {"fall_mm_s": 20, "pitch_deg": -15, "fall_band_percent": 3, "pitch_band_deg": 1}
})");
}
