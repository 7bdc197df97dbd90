#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/picture_file.hpp"
#include "picture/profile.hpp"
#include "units/trade.hpp"

#include <algorithm>
#include <cstdio>

namespace evenfall::cli {
namespace {

std::string line_text(const char* name, const preset::CurvePoints& points) {
    std::string text = name;
    text += ", mm\n";
    char row[64];
    for (const auto& point : points) {
        std::snprintf(row, sizeof row, "%10.2f %8.2f\n", units::mm_from_m(point.x_m), units::mm_from_m(point.value));
        text += row;
    }
    return text;
}

}  // namespace

int trace(const Arguments& arguments) {
    if (!arguments.length_m) {
        return report({{ProblemCode::missing_key, "--length", "1 mm to 2 m", "“trace” needs the true length of the lure in the picture: --length 170mm."}});
    }
    const Outcome<std::string> bytes = read_text_file(arguments.operand, largest_picture_file);
    if (!bytes.ok()) return report(bytes.problems());
    const Outcome<PictureFile> file = read_picture_file(*bytes);
    if (!file.ok()) return report(file.problems());
    const Outcome<picture::Contour> contour = picture::find_outline({file->width, file->height, 1, file->grey});
    if (!contour.ok()) return report(contour.problems());
    const auto [nose, tail] = ends_of(contour->points);
    picture::Scale scale;
    scale.from = nose;
    scale.to = tail;
    scale.distance_m = *arguments.length_m;
    scale.nose = nose;
    scale.tail = tail;
    const Outcome<picture::Profile> profile = picture::profile_from(*contour, scale);
    if (!profile.ok()) return report(profile.problems());
    if (arguments.write_to) {
        const Problems problems = write_text_file(*arguments.write_to, write_document(picture::new_lure(*profile)));
        if (!problems.empty()) return report(problems);
        if (*arguments.write_to == "-") return done;
    }
    char row[200];
    std::snprintf(row, sizeof row, "%s, %.0f %% of it on a clear line; lines off it by %.2f mm at most\n",
                  contour->drawn_line ? "A drawn line" : "The rim of a piece", 100.0 * contour->backed,
                  units::mm_from_m(std::max(profile->off_top_m, profile->off_bottom_m)));
    print(row + line_text("Back", profile->top) + line_text("Belly", profile->bottom));
    return done;
}

}  // namespace evenfall::cli
