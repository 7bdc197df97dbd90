#include "body.hpp"
#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "document_fields.hpp"
#include "evenfall.hpp"
#include "output.hpp"
#include "workshop.hpp"

#include <algorithm>
#include <memory>

namespace evenfall::cli {
namespace {

using Side = Table::Side;
using units::number_text;
using units::Unit;

struct LeadOptions : PresetOptions {
    std::optional<double> fall_m_s, in_water_kg, pitch_rad;
    std::optional<std::string> matters, write_to;
};

void ask_for(document::Targets& targets, const LeadOptions& o) {
    if (o.fall_m_s) {
        targets.by = document::TargetBy::fall;
        targets.fall_m_s = *o.fall_m_s;
    }
    if (o.in_water_kg) {
        targets.by = document::TargetBy::in_water;
        targets.in_water_kg = *o.in_water_kg;
    }
    if (o.pitch_rad) targets.pitch_rad = *o.pitch_rad;
}

std::string targets_text(const document::Targets& targets, const Numbers& in) {
    const std::string first =
        targets.by == document::TargetBy::fall
            ? "fall " + both_speeds(targets.fall_m_s, in)
            : in.signed_mass(targets.in_water_kg) + " " + in.mass_symbol() + " in water";
    return "asked: " + first + "; hang " + degrees(targets.pitch_rad);
}

std::string drill_text(const LeadPlan& plan, const shape::Body& body, const Numbers& in) {
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    Table table({Side::left, Side::left, Side::left, Side::right, Side::right, Side::right, Side::left,
                 Side::right, Side::right, Side::right, Side::left});
    table.row({"Hole", "segment", "from", "x" + mm, "y" + mm, "bit" + mm, in.units.inches() ? "name" : "inch",
               "deep" + mm, "column" + mm, "fill " + in.mass_symbol(), "material"});
    double total_kg = 0.0;
    for (const HolePlan& planned : plan.holes) {
        const auto index = static_cast<std::size_t>(planned.hole);
        const document::Hole& hole = plan.document.holes[index];
        const auto segment = static_cast<std::size_t>(shape::nearest_segment(body, hole.x_m));
        const bool drilled = planned.depth_m > 0.0;
        table.row(
            {hole.name.empty() ? std::to_string(index + 1) : hole.name, plan.document.segment_names[segment],
             hole.from == document::HoleFrom::belly ? "belly" : "back", in.length(hole.x_m),
             in.length(hole.y_m), in.thickness(hole.diameter_m),
             in.units.inches() ? bits::inch_name(hole.diameter_m) : output::bit_inch_text(hole.diameter_m),
             drilled ? in.length(planned.depth_m) : "leave", in.length(planned.column_m),
             in.mass(planned.mass_kg), materials::name_of(planned.material)});
        total_kg += planned.mass_kg;
    }
    table.row({"together", "", "", "", "", "", "", "", "", in.mass(total_kg)});
    return table.text(in);
}

std::string before_after_text(const Answers& before, const Answers& after, const Numbers& in) {
    const std::string gram = in.mass_symbol();
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right});
    table.row({"", "mass " + gram, "in water " + gram, "fall " + in.speed_symbol(), "s/ft", "pitch",
               "B above G " + in.length_symbol()});
    for (const Answers* answers : {&before, &after}) {
        table.row({answers == &before ? "before" : "after", in.mass(answers->mass.kg),
                   in.signed_mass(answers->in_water.kg), fall_speed(answers->fall, in),
                   fall_s_ft(answers->fall), degrees(answers->pitch_rad), in.thickness(answers->bg_m)});
    }
    return table.text(in);
}

std::string tub_text(const document::Document& document, const Evaluation& after, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    const std::vector<StageAnswer> tests = stages_with_all(document, after);
    const auto with_all = std::find_if(tests.begin(), tests.end(),
                                       [](const StageAnswer& test) { return test.stage == Stage::sealed; });
    const bool hung_on = with_all != tests.end();
    const StageAnswer& sealed =
        hung_on ? *with_all : after.answers.stages[static_cast<std::size_t>(Stage::sealed)];
    const std::string reading = sealed.tub_fall
                                    ? "should fall " + fall_s_ft(sealed.tub_fall) + " s/ft (" +
                                          fall_speed(sealed.tub_fall, in) + " " + in.speed_symbol() + ")"
                                    : no_fall_words(sealed.tub_behaviour) + ", " +
                                          in.signed_mass(sealed.in_tub.kg) + gram + " in water";
    return (hung_on ? std::string(cautions::hooks) + '\n' : std::string()) +
           "In the tub, sealed and not yet painted" + (hung_on ? output::with_all_words(document) : "") +
           ", it " + reading + "; the scale should read " + in.mass(sealed.mass.kg) + " ± " +
           in.mass(sealed.mass_sigma.kg) + gram + ".\n";
}

std::string missing_text(const document::Document& document) {
    const std::string text = output::missing_coats_text(document);
    return text.empty() ? text : text + '\n';
}

/// Ahead of the work, for what is in this plan alone.
std::string cautions_text(const LeadPlan& plan) {
    const bool with_lead = std::any_of(plan.holes.begin(), plan.holes.end(), [](const HolePlan& hole) {
        return hole.mass_kg > 0.0 && cautions::is_lead(hole.material);
    });
    const auto caps_with = [&](const char* id) {
        return std::any_of(plan.document.holes.begin(), plan.document.holes.end(),
                           [&](const document::Hole& hole) { return hole.cap && hole.cap->material == id; });
    };
    std::string text;
    const auto add = [&](bool due, const char* caution) {
        if (due) text += std::string(caution) + '\n';
    };
    add(!plan.document.holes.empty(), cautions::drilling);
    add(with_lead, cautions::lead);
    add(caps_with("ca_soda"), cautions::ca_on_soda);
    add(caps_with("ca"), cautions::ca);
    add(caps_with("epoxy"), cautions::epoxy);
    return text;
}

Ended run(const LeadOptions& o, const Printing& in) {
    if (o.fall_m_s && o.in_water_kg)
        return misuse("--in-water", "Ask for a fall or for a mass in water, not for both.");
    Outcome<HeldFile> file = HeldFile::hold(o.write_to.value_or("-"));
    if (!file.ok()) return file.problems();
    Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    ask_for(document->targets, o);
    if (o.matters && !find_word(document::table::matters_words, *o.matters, document->targets.matters_more))
        return misuse("--matters",
                      "“" + *o.matters + "” is none of " + all_words(document::table::matters_words) + ".");
    if (const Problems problems = document::check(*document); !problems.empty()) return problems;
    const Outcome<LeadPlan> plan = plan_lead(document::as_it_lies(*document));
    if (!plan.ok()) return plan.problems();
    const Outcome<Evaluation> evaluation = evaluate(plan->document);
    if (!evaluation.ok()) return evaluation.problems();

    if (o.json) {
        print(output::lead_json(*plan, in.json));
    } else {
        print(document->name + "\n" + targets_text(document->targets, in) + "\n\n" + cautions_text(*plan) +
                  '\n' + drill_text(*plan, evaluation->body, in) + '\n' +
                  before_after_text(plan->before, plan->after, in) + '\n' +
                  tub_text(plan->document, *evaluation, in) + warnings_text(plan->after, in) + '\n' +
                  missing_text(plan->document),
              in);
    }
    if (!plan->met) {
        Problems told = plan->shortfalls;
        if (o.write_to)
            told.push_back(
                {ProblemCode::cannot_be_met, "", "", "The targets are not met, so nothing was written."});
        return {cannot_be_met, std::move(told)};
    }
    if (o.write_to) {
        if (const Problems problems = keep(*file, plan->document); !problems.empty()) return problems;
    }
    return done;
}

} // namespace

void lead(Options& options) {
    const auto o = declare<LeadOptions>(options, "how much lead in which hole, how deep", run);
    options.number("--fall", o->fall_m_s, Unit::mm_per_s, "RATE", "asked rate of fall: 0.9s/ft, 300mm/s");
    options.number("--in-water", o->in_water_kg, Unit::gram, "MASS",
                   "or asked mass in water: 2.5g; 0 suspends, below 0 floats");
    options.number("--pitch", o->pitch_rad, Unit::degree, "ANGLE", "asked hang, nose-up positive: -3deg");
    options.text("--matters", o->matters, "WHICH",
                 "what comes first where both cannot be met: both_alike, fall, hang");
    options.text("--write", o->write_to, "FILE", "write the planned preset when the targets are met");
    options.remark("Without options the targets are those of the preset.");
}

} // namespace evenfall::cli
