#pragma once

#include "evenfall.hpp"

#include <catch2/catch_test_macros.hpp>

#include <fstream>
#include <iterator>
#include <string>

namespace evenfall::testing {

inline constexpr const char* demo_presets[] = {"millrace-170.json", "reedline-120.json", "quarry-230.json",
                                               "estuary-150.json"};

inline std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    REQUIRE(file.good());
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline std::string preset_text(const std::string& file) {
    return text_of_file(std::string(EVENFALL_PRESETS_DIR) + '/' + file);
}

/// The least that is a document.
inline const std::string least_text = R"({"evenfall":2,
  "shape":{"back_mm":[[0,10],[100,10]],"belly_mm":[[0,-10],[100,-10]],"half_width_mm":[[0,8],[100,8]]},
  "segments":["Body"]})";

/// A document with every key of the form.
inline const std::string full_text = R"({"evenfall":2,"name":"Every key","note":"first line\nsecond line",
  "wood":{"species":"hard_maple","moisture_percent":9.5,"density_kg_m3":690.25,"density_spread_percent":1.5},
  "water":{"temperature_C":11.5,"salinity_g_kg":3.25},"tub":{"temperature_C":21,"salinity_g_kg":0.5},
  "shape":{"back_mm":[[0,8],[50,12.345678],[100,6]],"belly_mm":[[0,-8],[50,-13],[100,-6]],"half_width_mm":[[0,6],[50,9],[100,4]],
    "section":{"kind":"drawn","exponent":[[0,2.2],[100,3]],"half_outline":[[0,-1],[0.8,-0.5],[1,0.1],[0.6,0.7],[0,1]]},"carving":"rough"},
  "segments":["Fore","Aft"],
  "joints":[{"at_mm":55,"gap_mm":2.2,"relief_fore_deg":12.5,"relief_aft_deg":20}],
  "holes":[{"name":"a","use":"drilled","from":"back","x_mm":20,"y_mm":-0.5,"diameter_mm":7.9375,"depth_mm":9,"end":"point_118",
      "fill":{"material":"tin","length_mm":4,"stock_diameter_mm":7.5},"cap":{"material":"dowel","length_mm":3},"max_depth_mm":14,"wall_mm":2.5},
    {"name":"b","use":"fixed","x_mm":35,"depth_mm":6,"fill":{"material":"lead","mass_g":1.25},"cap":null}],
  "pockets":[{"name":"p","x_from_mm":56.5,"x_to_mm":61,"y_mm":0.25,"width_mm":3.5,"z_from_mm":-4,"z_to_mm":4,"floods":false},
    {"name":"slot","x_from_mm":90,"x_to_mm":100}],
  "parts":[{"name":"wire","stage":"rigged","material":"brass","mass_g":1.75,"mass_sigma_g":0.05,"x_mm":-3,"y_mm":0.5,"z_mm":-2,
      "embedded_percent":62.5,"segment":2}],
  "coats":[{"name":"soak","stage":"sealed","kind":"soaks","material":"ca","mass_g":1.1,"spread_percent":35,"surfaces":["skin"]},
    {"name":"clear","stage":"clear_coated","kind":"film","material":"epoxy","thickness_mm":0.35,"surfaces":["skin","joint_faces"],
      "note":"two thin coats"}],
  "targets":{"in_water_g":-0.75,"pitch_deg":-2.5,"fall_band_percent":12,"pitch_band_deg":1.75,"matters_more":"hang"},"air_cm3":0.35})";

inline document::Document document_of(const std::string& text) {
    const Outcome<document::Document> document = read_document(text);
    if (!document.ok())
        FAIL(document.problems().front().path + ": " +
             document.problems().front().sentence.text(evenfall::units::metric));
    return *document;
}

/// `text` with its first `what` replaced by `by`; fails when it is not there.
inline std::string with(std::string text, const std::string& what, const std::string& by) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

/// The document with every key, and a tail with every one of its own.
inline std::string tailed_text() {
    return with(full_text, R"("targets":)",
                R"("tail":{"material":"silicone","density_kg_m3":1080,"density_spread_percent":2.5,"x_mm":101,
    "z_mm":0.5,"back_mm":[[0,4],[30,9]],"belly_mm":[[0,-4],[30,-8]],"half_thickness_mm":[[0,2],[30,0.5]],"exponent":2.25,
    "tenon":{"length_mm":10,"thickness_mm":1.5,"height_mm":6}},"targets":)");
}

/// The same with a hole that was changed on the bench.
inline std::string worked_text() {
    return with(
        tailed_text(), R"("wall_mm":2.5})",
        R"("wall_mm":2.5,"before":[{"change":2,"depth_mm":7.5,"fill":{"material":"tin","mass_g":0.75}}]})");
}

inline Problems refusal_of(const std::string& text) {
    const Outcome<document::Document> document = read_document(text);
    REQUIRE_FALSE(document.ok());
    return document.problems();
}

} // namespace evenfall::testing
