#include "base/number_text.hpp"
#include "body/tail_loft.hpp"
#include "materials/cautions.hpp"
#include "materials/solids.hpp"
#include "output/sheet/view.hpp"
#include "workshop/tail_pour.hpp"

#include <algorithm>

namespace evenfall::sheet {

void add_soft_tail(Composer& pages, const SheetInput& job) {
    if (!job.document.tail) return;
    const document::Tail& tail = *job.document.tail;
    const auto body = tail::shaped(tail);
    tail::PourRequest request;
    request.tails = job.options.lures;
    const auto pour = tail::pour(tail, job.evaluation.ledger, request);
    if (!body || !pour) return;
    const document::Tenon tenon = tail.tenon.value_or(document::Tenon{});
    const auto cm3 = [](double m3) { return units::number_text(m3, units::Unit::cm3, 2) + " cm³"; };
    const Numbers& in = pages.numbers();
    const std::string unit = " " + in.length_symbol(), counts = in.units.inches() ? "inches" : "mm";
    pages.new_page("Soft tail");
    const bool melted = tail::is_melted(tail);
    pages.caution(melted ? cautions::plastisol : cautions::silicone);
    pages.table({{"One tail", 1.0}, {"", 2.6}},
                {{{"Material", materials::name_of(tail.material)}},
                 {{"Volume", cm3(pour->cast.volume_m3) +
                                 (tail.tenon ? ", of it the tenon " + cm3(pour->tenon_m3) : std::string())}},
                 {{in.units.mass == units::Unit::gram ? "Grams of plastic" : "Plastic, " + in.mass_symbol(),
                   in.mass(pour->cast.mass_kg)}},
                 {{"Cavity", cm3(pour->cavity_m3) + ", larger by the " + percent(request.shrink) +
                                 " that a cast loses as it cools"}},
                 {{melted ? "To heat" : "To mix", in.mass(pour->heated_kg, 1) + " " + in.mass_symbol() +
                                                      " for " + std::to_string(request.tails) +
                                                      (request.tails == 1 ? " tail" : " tails")}}});
    pages.paragraph("With " + percent(request.sprue) + " of what is poured in sprue and flash and " +
                        percent(request.loss) +
                        " of what is made ready left in the cup. These and the shrinkage are common "
                        "practice, no source: weigh your own first cast.",
                    2.8, soft_ink);
    const auto view = [&](const char* heading, double low_m, double high_m, double tenon_half_m,
                          const std::vector<shape::Point2>& outline) {
        add_stretches(pages, {-tenon.length_m, tenon.length_m + body->lines->tail_m()}, heading, low_m,
                      high_m, [&](const View& v) {
                          v.segment(-tenon.length_m - 0.002, 0.0, body->lines->tail_m() + 0.002, 0.0,
                                    centre_stroke);
                          v.outline(outline, outline_stroke);
                          if (tail.tenon)
                              v.outline({{0.0, tenon_half_m},
                                         {-tenon.length_m, tenon_half_m},
                                         {-tenon.length_m, -tenon_half_m},
                                         {0.0, -tenon_half_m}},
                                        outline_stroke, false);
                      });
    };
    double low = -0.5 * tenon.height_m, high = 0.5 * tenon.height_m, half = 0.5 * tenon.thickness_m;
    for (const auto& point : tail.belly)
        low = std::min(low, point.value);
    for (const auto& point : tail.back)
        high = std::max(high, point.value);
    for (const auto& point : tail.half_thickness)
        half = std::max(half, point.value);
    view("From the side: root left, back up", low, high, 0.5 * tenon.height_m,
         shape::side_outline(*body, 0, 240));
    view("From above", -half, half, 0.5 * tenon.thickness_m, shape::top_outline(*body, 0, 240));
    pages.paragraph(
        std::string(tail.tenon ? "The tenon is " + in.length(tenon.length_m) + " × " +
                                     in.length(tenon.thickness_m) + " × " + in.length(tenon.height_m) + unit +
                                     ", long, thick and high; the scale counts " + counts + " from its front."
                               : "The scale counts " + counts + " from the root.") +
            " Its root lies " + in.length(tail.x_m) + unit + " from the nose, its axis " +
            in.length(tail.z_m) + unit + " over the datum line.",
        2.8, soft_ink);
}

} // namespace evenfall::sheet
