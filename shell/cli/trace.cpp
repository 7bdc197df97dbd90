#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/picture_file.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "picture.hpp"

#include <algorithm>
#include <memory>

namespace evenfall::cli {
namespace {

std::string points_text(const picture::Profile& profile, const Numbers& in) {
    const std::string mm = in.length_symbol();
    using Side = Table::Side;
    Table table({Side::right, Side::right, Side::right, Side::right});
    table.row({"back: x " + mm, "z " + mm, "belly: x " + mm, "z " + mm});
    for (std::size_t i = 0; i < std::max(profile.top.size(), profile.bottom.size()); ++i) {
        std::vector<std::string> cells;
        for (const document::CurvePoints* line : {&profile.top, &profile.bottom}) {
            const bool there = i < line->size();
            cells.push_back(there ? in.thickness((*line)[i].x_m) : std::string());
            cells.push_back(there ? in.thickness((*line)[i].value) : std::string());
        }
        table.row(std::move(cells));
    }
    return table.text(in);
}

picture::Spot spot(const std::vector<double>& numbers, std::size_t at) {
    return {numbers[at], numbers[at + 1]};
}

/// Places are pixels from the upper left corner, each list x, y, x, y.
struct TraceOptions {
    std::string picture;
    std::optional<double> scale_m, within_m;
    std::vector<double> between, level, part;
    std::optional<std::string> into, write_to;
    bool nose_right = false;
};

/// A picture that holds no line is no bad input.
int ending(const Problems& problems) {
    return problems.front().code == ProblemCode::cannot_be_met ? cannot_be_met : bad_input;
}

Ended run(const TraceOptions& asked, const Printing& in) {
    if (!asked.scale_m || asked.between.empty()) {
        return Problem{ProblemCode::missing_key, "--scale", "",
                       "A picture has no size of its own: give --scale LENGTH and --between X,Y,X,Y, two "
                       "marks that lie so far apart."};
    }
    const Outcome<std::string> bytes = read_text_file(asked.picture, most_picture_bytes);
    if (!bytes.ok()) return bytes.problems();
    const Outcome<PictureFile> picture = read_picture(*bytes);
    if (!picture.ok()) return picture.problems();

    picture::OutlineOptions options;
    if (!asked.part.empty()) {
        options.part_from = spot(asked.part, 0);
        options.part_to = spot(asked.part, 2);
    }
    picture::Scale scale;
    scale.from = spot(asked.between, 0);
    scale.to = spot(asked.between, 2);
    scale.distance_m = *asked.scale_m;
    if (!asked.level.empty()) {
        scale.nose = spot(asked.level, 0);
        scale.tail = spot(asked.level, 2);
    }
    scale.nose_right = asked.nose_right;
    if (asked.within_m) scale.tolerance_m = *asked.within_m;

    const Outcome<picture::Contour> contour = picture::find_outline(picture->view(), options);
    if (!contour.ok()) {
        return {ending(contour.problems()), contour.problems()};
    }
    const Outcome<picture::Profile> profile = picture::profile_from(*contour, scale);
    if (!profile.ok()) {
        return {ending(profile.problems()), profile.problems()};
    }
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    std::string text = points_text(*profile, in);
    text += '\n';
    text += contour->drawn_line ? "A drawn line was followed along its middle"
                                : "The rim of a carved lure was followed";
    text += "; " + std::to_string(static_cast<int>(100.0 * contour->backed)) +
            " % of it is plain to see, the rest was bridged.\n";
    text += "Length " + in.length(profile->length_m) + mm + ", height " +
            in.length(profile->greatest_height_m) + mm + "; turned level by " + degrees(profile->turned_rad) +
            ". The lines keep within " + in.thickness(std::max(profile->off_top_m, profile->off_bottom_m)) +
            mm + " of the outline.\n";
    if (profile->overhang_m > scale.tolerance_m) {
        text +=
            "A bay or fork that a back and a belly line cannot follow is closed; the outline lies up to " +
            in.length(profile->overhang_m) + mm + " off the lines there.\n";
    }

    Outcome<HeldFile> file = HeldFile::hold(asked.write_to.value_or("-"));
    if (!file.ok()) return file.problems();
    document::Document document;
    if (asked.into) {
        const Outcome<document::Document> old = load(*asked.into);
        if (!old.ok()) return old.problems();
        document = picture::with_profile(*old, *profile);
    } else {
        document = picture::new_lure(*profile);
        text += "The width is a guess, half the height: draw the width line.\n";
    }
    if (const Outcome<Evaluation> checked = evaluate(document); !checked.ok()) return checked.problems();
    if (asked.write_to != "-") print(text, in);
    if (asked.write_to) {
        if (const Problems problems = keep(*file, document); !problems.empty()) return problems;
    }
    return done;
}

/// Two places in the picture.
void add_places(Options& options, const char* name, std::vector<double>& into, const char* help) {
    options.add(name, "X,Y,X,Y", help,
                [&into, option = std::string(name)](const std::string& text) -> Problems {
                    const auto numbers = read_numbers(text, option);
                    if (!numbers.ok()) return numbers.problems();
                    if (numbers->size() != 4)
                        return {misuse(option, "The option " + option +
                                                   " takes two places in the picture: X,Y,X,Y.")};
                    into = *numbers;
                    return {};
                });
}

} // namespace

void trace(Options& options) {
    const auto o = std::make_shared<TraceOptions>();
    options.purpose("back and belly from a photo or scan of a sketch or a carved lure");
    options.word("PICTURE", o->picture, "a JPEG or PNG file");
    options.number("--scale", o->scale_m, units::Unit::mm, "LENGTH",
                   "how far two marks in the picture are apart in truth: 100mm, 4in");
    add_places(options, "--between", o->between,
               "where these marks are: pixels from the upper left corner; this and --scale have to be given");
    add_places(options, "--level", o->level,
               "nose and tail, between which the datum line runs; else along the outline");
    options.flag("--nose-right", o->nose_right, "the nose is at the right in the picture");
    add_places(options, "--part", o->part, "look only between these corners");
    options.number("--within", o->within_m, units::Unit::mm, "LENGTH",
                   "how far the lines may leave the outline: 0.3mm where not given");
    options.text("--into", o->into, "PRESET",
                 "a lure that gets these lines; a new one-piece lure where not given");
    options.text("--write", o->write_to, "FILE", "the lure");
    options.remark(
        "A picture is taken as it is stored: a turn that is noted in the file is not carried out.");
    options.run([o](const Printing& in) { return run(*o, in); });
}

} // namespace evenfall::cli
