// Any bytes as the pixels of a picture: refused with a sentence, or an outline that lies within the picture;
// and that outline as the lines of a drawing, which make a document.

#include "fuzz/bytes.hpp"
#include "fuzz/document_laws.hpp"
#include "fuzz/law.hpp"
#include "picture/outline.hpp"
#include "picture/profile.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace {

using namespace evenfall;
using evenfall::fuzz::must;

/// Scale, tolerance and ends of the lure as somebody might tap them, by the bytes.
picture::Scale drawn_scale(const picture::Picture& picture, fuzz::Bytes& bytes) {
    const auto spot = [&] {
        return picture::Spot{bytes.number(0.0, picture.width), bytes.number(0.0, picture.height)};
    };
    picture::Scale scale;
    scale.from = spot();
    scale.to = spot();
    scale.distance_m = bytes.usual(0.05, 0.3, 0.001, 2.0);
    if (bytes.once_in(4)) scale.nose = spot();
    if (bytes.once_in(4)) scale.tail = spot();
    scale.nose_right = bytes.yes();
    scale.tolerance_m = bytes.usual(0.0003, 0.001, 0.00005, 0.005);
    scale.most_points = static_cast<int>(bytes.usual(8.0, 24.0, 4.0, document::max_curve_points));
    return scale;
}

void draw(const picture::Contour& contour, const picture::Scale& scale) {
    const auto profile = picture::profile_from(contour, scale);
    if (!profile.ok()) return fuzz::must_explain(profile.problems());
    for (const auto* line : {&profile->top, &profile->bottom}) {
        must(line->size() >= 2 && line->size() <= static_cast<std::size_t>(scale.most_points),
             "a line has as many points as were allowed");
        for (const document::CurvePoint& p : *line)
            must(std::isfinite(p.x_m) && std::isfinite(p.value), "a line is without NaN");
    }
    must(fuzz::finite(profile->length_m, profile->greatest_height_m, profile->off_top_m,
                      profile->off_bottom_m, profile->overhang_m),
         "a profile is without NaN");
    const Outcome<document::Document> read = read_document(write_document(picture::new_lure(*profile)));
    must(read.ok(), "a lure from a picture can be written and read");
    const Outcome<Evaluation> evaluation = evaluate(*read);
    if (evaluation.ok())
        fuzz::must_be_finite(*evaluation);
    else
        fuzz::must_explain(evaluation.problems());
}

void look_at(const picture::Picture& picture, fuzz::Bytes bytes) {
    const auto contour = picture::find_outline(picture);
    if (!contour.ok()) {
        must(!contour.problems().front().sentence.empty(), "a refusal has a sentence");
        return;
    }
    must(contour->points.size() >= 16, "an outline has a length");
    must(contour->backed >= 0.0 && contour->backed <= 1.0, "what is seen is a share");
    for (const picture::Spot& spot : contour->points) {
        must(std::isfinite(spot.x) && std::isfinite(spot.y), "places are finite");
        must(spot.x > -40.0 && spot.y > -40.0 && spot.x < picture.width + 40.0 &&
                 spot.y < picture.height + 40.0,
             "an outline lies in its picture");
    }
    draw(*contour, drawn_scale(picture, bytes));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    if (size < 2) return 0;
    // What is said of the picture comes from its end: the sides stand at the start.
    const std::size_t tail = std::min<std::size_t>(size, 40);
    fuzz::Bytes said(bytes + (size - tail), tail);
    if (said.once_in(8)) said.go_astray();
    // The first two bytes as sides, whatever follows as the pixels; what is too short is filled up by
    // repeating it.
    const std::size_t pixels = static_cast<std::size_t>(bytes[0]) * bytes[1];
    const std::size_t channels = size % 2 == 0 ? 1 : 4;
    std::vector<std::uint8_t> samples(bytes + 2, bytes + size);
    if (size > 2 && samples.size() * 16 >= pixels * channels) {
        for (std::size_t i = 0; samples.size() < pixels * channels; ++i)
            samples.push_back(samples[i]);
        samples.resize(pixels * channels);
    }
    look_at({bytes[0], bytes[1], static_cast<int>(channels), samples}, said);
    return 0;
}
