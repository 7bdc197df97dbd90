#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/picture_file.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "picture/profile.hpp"

#include <algorithm>
#include <cstdio>

namespace evenfall::cli {
namespace {

std::string points_text(const picture::Profile& profile) {
    using Side = Table::Side;
    Table table({Side::right, Side::right, Side::right, Side::right});
    table.row({"back: x mm", "z mm", "belly: x mm", "z mm"});
    for (std::size_t i = 0; i < std::max(profile.top.size(), profile.bottom.size()); ++i) {
        std::vector<std::string> cells;
        for (const document::CurvePoints* line : {&profile.top, &profile.bottom}) {
            const bool there = i < line->size();
            cells.push_back(there ? millimetres((*line)[i].x_m, 2) : std::string());
            cells.push_back(there ? millimetres((*line)[i].value, 2) : std::string());
        }
        table.row(std::move(cells));
    }
    return table.text();
}

picture::Spot spot(const std::vector<double>& numbers, std::size_t at) {
    return {numbers[at], numbers[at + 1]};
}

} // namespace

int trace(const Arguments& arguments) {
    const TraceWords& asked = arguments.trace;
    if (!asked.scale_m || asked.between.size() != 4) {
        return report({{ProblemCode::missing_key, "--scale", "",
                        "A picture has no size of its own: give --scale LENGTH and --between X,Y,X,Y, two "
                        "marks that lie so far apart."}});
    }
    const Outcome<std::string> bytes = read_text_file(arguments.operand, most_picture_bytes);
    if (!bytes.ok()) return report(bytes.problems());
    const Outcome<PictureFile> picture = read_picture(*bytes);
    if (!picture.ok()) return report(picture.problems());

    picture::OutlineOptions options;
    if (asked.part.size() == 4) {
        options.part_from = spot(asked.part, 0);
        options.part_to = spot(asked.part, 2);
    }
    picture::Scale scale;
    scale.from = spot(asked.between, 0);
    scale.to = spot(asked.between, 2);
    scale.distance_m = *asked.scale_m;
    if (asked.level.size() == 4) {
        scale.nose = spot(asked.level, 0);
        scale.tail = spot(asked.level, 2);
    }
    scale.nose_right = asked.nose_right;
    if (asked.within_m) scale.tolerance_m = *asked.within_m;

    const Outcome<picture::Contour> contour = picture::find_outline(picture->view(), options);
    if (!contour.ok()) {
        (void)report(contour.problems());
        return contour.problems().front().code == ProblemCode::cannot_be_met ? cannot_be_met : bad_input;
    }
    const Outcome<picture::Profile> profile = picture::profile_from(*contour, scale);
    if (!profile.ok()) {
        (void)report(profile.problems());
        return profile.problems().front().code == ProblemCode::cannot_be_met ? cannot_be_met : bad_input;
    }
    std::string text = points_text(*profile);
    text += '\n';
    text += contour->drawn_line ? "A drawn line was followed along its middle"
                                : "The rim of a piece was followed";
    text += "; " + std::to_string(static_cast<int>(100.0 * contour->backed)) +
            " % of it is plain to see, the rest was bridged.\n";
    text += "Length " + millimetres(profile->length_m) + " mm, height " +
            millimetres(profile->greatest_height_m) + " mm; turned level by " + degrees(profile->turned_rad) +
            ". The lines keep within " + millimetres(std::max(profile->off_top_m, profile->off_bottom_m), 2) +
            " mm of the outline.\n";
    if (profile->overhang_m > scale.tolerance_m) {
        text +=
            "A bay or fork that a back and a belly line cannot follow is closed; the outline lies up to " +
            millimetres(profile->overhang_m) + " mm off the lines there.\n";
    }

    document::Document document;
    if (asked.into) {
        const Outcome<document::Document> old = load(*asked.into);
        if (!old.ok()) return report(old.problems());
        document = picture::with_profile(*old, *profile);
    } else {
        document = picture::new_lure(*profile);
        text += "The width is a guess, half the height: draw the plan line.\n";
    }
    if (const Outcome<Evaluation> checked = evaluate(document); !checked.ok())
        return report(checked.problems());
    if (arguments.write_to != "-") print(text);
    if (arguments.write_to) {
        if (const Problems problems = keep(*arguments.write_to, document); !problems.empty())
            return report(problems);
    }
    return done;
}

} // namespace evenfall::cli
