#include "output/sheet/sheet.hpp"

#include "base/sentence.hpp"
#include "body/tail_loft.hpp"
#include "output/sheet/parts.hpp"
#include "output/sheet/writers.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

namespace {

Problem off_limits(std::string path, Sentence limit, Sentence sentence) {
    return {ProblemCode::out_of_range, std::move(path), std::move(limit), std::move(sentence)};
}

/// The lower end of a range, without the unit that the upper end has.
Sentence least_text(double least_m) {
    return Amount{least_m, units::Quantity::length, units::plain, units::Rounding::up, false};
}

// Ranges are checked so that NaN fails too.
Problems check(const document::Document& document, const SheetOptions& options) {
    Problems out;
    if (options.lures < 1 || options.lures > 500)
        out.push_back(off_limits("/lures", "1 to 500", "The number of lures must lie between 1 and 500."));
    constexpr double least_m = 0.002, most_m = 0.100;
    if (options.station_m && !(*options.station_m >= least_m && *options.station_m <= most_m))
        out.push_back(off_limits("/station", range_text(least_m, most_m, units::Quantity::length),
                                 "The distance between section cards must lie between " +
                                     least_text(least_m) + " and " +
                                     at_most_text(most_m, units::Quantity::length) + "."));
    if (!options.cure_hours.empty() && options.cure_hours.size() != document.coats.size()) {
        out.push_back(off_limits("/cure_hours", "",
                                 "Waits are given for " + std::to_string(options.cure_hours.size()) +
                                     " coats, but the recipe has " + std::to_string(document.coats.size()) +
                                     '.'));
    }
    // Characters that may be in an address; others would print or scan as something else.
    if (options.address.size() > 400 || std::any_of(options.address.begin(), options.address.end(),
                                                    [](char c) { return c <= ' ' || c > '~' || c == '#'; }))
        out.push_back(
            off_limits("/address", "up to 400 characters of an address without “#”",
                       "The page's address must be at most 400 letters, digits and signs without “#”."));
    for (const double hours : options.cure_hours) {
        if (!(hours >= 0.0 && hours <= 1000.0)) {
            out.push_back(off_limits("/cure_hours", "0 to 1000 h",
                                     "The wait after a coat must lie between 0 and 1000 hours."));
            break;
        }
    }
    return out;
}

Outcome<sheet::Faces> faces_of(const SheetTypefaces& typefaces) {
    auto regular = sheet::Typeface::read(typefaces.regular);
    if (!regular) return regular.problems();
    auto semibold = sheet::Typeface::read(typefaces.semibold);
    if (!semibold) return semibold.problems();
    return sheet::Faces{std::move(*regular), std::move(*semibold)};
}

/// A full-size drawing cannot be scaled: its height, and a section's height and width, must fit the paper.
Problems check_size(const document::Document& document, const shape::Body& body,
                    const sheet::Layout& layout) {
    double half_height = 0.0, half_width = 0.0, low = 1.0, high = -1.0;
    constexpr int steps = 200;
    for (int k = 0; k <= steps; ++k) {
        const shape::Station s = body.lines->at(body.lines->nose_m() + body.lines->length_m() * k / steps);
        half_height = std::max(half_height, s.half_height_m);
        half_width = std::max(half_width, s.half_width_m);
        low = std::min(low, s.centre_z_m - s.half_height_m);
        high = std::max(high, s.centre_z_m + s.half_height_m);
    }
    const double most_mm =
        std::min(layout.height_mm - 110.0, layout.width_mm - 2.0 * layout.margin_mm - 10.0);
    const Sentence most =
        Amount{units::m_from_mm(most_mm), units::Quantity::length, 0, units::Rounding::down};
    const double largest = std::max({high - low, 2.0 * half_height, 2.0 * half_width});
    if (document.tail) {
        const Vec3 tail = tail::extent(*document.tail);
        const double across = std::max(tail.y, tail.z);
        if (units::mm_from_m(across) > most_mm) {
            return {{ProblemCode::too_large, "/tail", "at most " + most,
                     "The tail is " + length_text(across) +
                         " across; on this paper a drawing at full size may be " + most + " high or wide."}};
        }
    }
    if (units::mm_from_m(largest) <= most_mm) return {};
    return {{ProblemCode::too_large, "/shape", "at most " + most,
             "The body is " + length_text(largest) + " across; on this paper a drawing at full size may be " +
                 most + " high or wide."}};
}

/// ISO 216 A4; Letter is 8.5 by 11 in (both from memory).
sheet::Layout blank_paper(const SheetOptions& options) {
    sheet::Layout out;
    if (options.speech.language != nullptr) out.language = options.speech.language->code();
    if (options.paper.value_or(usual_paper(options.units)) == SheetPaper::letter) {
        out.width_mm = units::mm_from_m(units::m_from_inch(8.5));
        out.height_mm = units::mm_from_m(units::m_from_inch(11.0));
    }
    return out;
}

sheet::SheetInput job_of(const document::Document& document, const Evaluation& evaluation,
                         const SheetOptions& options) {
    sheet::SheetInput job{document, evaluation, options, options.cure_hours, {}, {}, {}};
    auto joints = joints::joint_answers(document, evaluation.body);
    if (joints)
        job.joints = std::move(*joints);
    else
        job.hinge_problems = joints.problems();
    if (job.coat_hours.empty()) {
        for (const document::Coat& coat : document.coats)
            job.coat_hours.push_back(sheet::usual_hours(coat));
    }
    return job;
}

std::string written(const sheet::Layout& layout, const sheet::Faces& faces, SheetFormat format) {
    switch (format) {
    case SheetFormat::svg:
        return sheet::svg(layout, faces);
    case SheetFormat::pdf:
        return sheet::pdf(layout, faces);
    case SheetFormat::html_pages:
        return sheet::html_pages(layout);
    case SheetFormat::html:
        break;
    }
    return sheet::html(layout, faces);
}

sheet::Layout laid_out(const sheet::SheetInput& job, const sheet::Faces& faces, sheet::Layout paper) {
    paper.title = job.options.speech.said(job.document.name + ", build sheet");
    const int lures = job.options.lures;
    sheet::Composer pages(std::move(paper), faces, job.document.name,
                          (lures == 1 ? std::string("One lure") : std::to_string(lures) + " lures") +
                              ". Nose left, back up. x aft from the nose.",
                          {job.options.units, job.options.speech});
    add_cover(pages, job);
    add_board(pages, job);
    add_side(pages, job);
    add_top(pages, job);
    add_joint_cuts(pages, job);
    add_section_cards(pages, job);
    add_drill_tables(pages, job);
    add_bits(pages, job);
    add_cut_lists(pages, job);
    add_coats(pages, job);
    add_soft_tail(pages, job);
    add_weigh_in(pages, job);
    return pages.finish();
}

Outcome<sheet::Layout> layout_with(const document::Document& document, const SheetOptions& options,
                                   const sheet::Faces& faces) {
    if (Problems problems = check(document, options); !problems.empty()) return problems;
    const Outcome<Evaluation> evaluation = evaluate(document);
    if (!evaluation) return evaluation.problems();
    sheet::Layout paper = blank_paper(options);
    if (Problems problems = check_size(document, evaluation->body, paper); !problems.empty()) return problems;
    sheet::SheetInput job = job_of(document, *evaluation, options);
    sheet::Layout layout = laid_out(job, faces, paper);
    if (options.format != SheetFormat::pdf) return layout;
    job.lacking = sheet::lacking_text(layout, faces);
    return job.lacking.empty() ? layout : laid_out(job, faces, std::move(paper));
}

} // namespace

Outcome<sheet::Layout> sheet_layout(const document::Document& document, const SheetOptions& options) {
    const auto faces = faces_of(options.typefaces);
    if (!faces) return faces.problems();
    return layout_with(document, options, *faces);
}

Outcome<std::string> build_sheet(const document::Document& document, const SheetOptions& options) {
    const auto faces = faces_of(options.typefaces);
    if (!faces) return faces.problems();
    const auto layout = layout_with(document, options, *faces);
    if (!layout) return layout.problems();
    return written(*layout, *faces, options.format);
}

Outcome<std::string> build_batch_sheet(const std::vector<BatchPart>& batch, const SheetOptions& options) {
    const auto faces = faces_of(options.typefaces);
    if (!faces) return faces.problems();
    if (batch.empty() || batch.size() > 40)
        return off_limits("/batch", "1 to 40 recipes", "A batch holds 1 to 40 recipes.");
    // Jobs keep references into both, so neither may move afterwards.
    std::vector<SheetOptions> each(batch.size(), options);
    std::vector<Evaluation> evaluations;
    evaluations.reserve(batch.size());
    std::vector<sheet::SheetInput> jobs;
    for (std::size_t k = 0; k < batch.size(); ++k) {
        each[k].lures = batch[k].lures;
        each[k].cure_hours.clear();
        if (Problems problems = check(batch[k].document, each[k]); !problems.empty()) return problems;
        auto evaluation = evaluate(batch[k].document);
        if (!evaluation) return evaluation.problems();
        evaluations.push_back(std::move(*evaluation));
        jobs.push_back(job_of(batch[k].document, evaluations.back(), each[k]));
    }
    sheet::Layout paper = blank_paper(options);
    paper.title = options.speech.said("Batch sheet");
    const auto laid_out = [&] {
        sheet::Composer pages(paper, *faces, "Batch sheet",
                              std::to_string(batch.size()) + (batch.size() == 1 ? " recipe" : " recipes"),
                              {options.units, options.speech});
        add_batch(pages, jobs);
        return pages.finish();
    };
    sheet::Layout layout = laid_out();
    if (options.format == SheetFormat::pdf) jobs.front().lacking = sheet::lacking_text(layout, *faces);
    if (!jobs.front().lacking.empty()) layout = laid_out();
    return written(layout, *faces, options.format);
}

} // namespace evenfall
