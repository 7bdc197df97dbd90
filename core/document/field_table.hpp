#pragma once

// The table of all fields of the JSON form: each field once, with key, unit, limits, words and place in the
// document, one call for each field. Reader, writer, check and schema are visitors that get these calls
// (document/walk.hpp). Limits are those that no geometry is needed for; walls, overlaps and order belong to
// body and ledger.

#include "base/trade.hpp"
#include "document/fields.hpp"
#include "materials/solids.hpp"

#include <array>

namespace evenfall::document {

/// Names the struct whose fields are described.
template <class T>
struct Of {};

/// A coordinate of a part's place, in the way of a member.
template <double Vec3::*Axis>
struct PartAt {
    using Owner = Part;
    template <class P>
    constexpr auto& operator()(P& part) const {
        return part.at_m.*Axis;
    }
};
template <double Vec3::*Axis>
inline constexpr PartAt<Axis> part_at{};

namespace table {

inline constexpr double mm = units::mm_from_m(1.0);
inline constexpr double gram = units::g_from_kg(1.0);
inline constexpr double percent = 1e2;
inline constexpr double degree = units::deg_from_rad(1.0);

inline constexpr NumberField length_mm(std::string_view key, double min, double max, std::string_view says,
                                       bool required = false) {
    return {key, "mm", mm, min, max, says, required};
}
inline constexpr NumberField mass_g(std::string_view key, double max, std::string_view says,
                                    bool required = false) {
    return {key, "g", gram, 0.0, max, says, required};
}
inline constexpr NumberField share_percent(std::string_view key, double min, double max,
                                           std::string_view says) {
    return {key, "%", percent, min, max, says, false};
}
inline constexpr NumberField angle_deg(std::string_view key, double min, double max, std::string_view says) {
    return {key, "°", degree, min, max, says, false};
}

inline constexpr NumberField hole_change(std::string_view key, std::string_view says) {
    return {key, "", 1.0, 1.0, static_cast<double>(max_hole_changes), says};
}

// What a document may hold, so that one with a drawing too large to build can be read and put right. What can
// be built is held against the limits of body/drawing_check.hpp.
inline constexpr double longest_lure_mm = 1000.0;
inline constexpr double widest_lure_mm = 300.0; ///< from the middle plane or the datum line

inline constexpr NumberField along{"0", "mm", mm, 0.0, longest_lure_mm, "sits {} from the nose", true};

inline constexpr std::array stage_words{Word<Stage>{"carved", Stage::carved},
                                        Word<Stage>{"drilled", Stage::drilled},
                                        Word<Stage>{"hardware", Stage::hardware},
                                        Word<Stage>{"leaded", Stage::leaded},
                                        Word<Stage>{"sealed", Stage::sealed},
                                        Word<Stage>{"painted", Stage::painted},
                                        Word<Stage>{"clear_coated", Stage::clear_coated},
                                        Word<Stage>{"rigged", Stage::rigged}};
inline constexpr std::array part_stages{stage_words[2], stage_words[5], stage_words[7]};
inline constexpr std::array coat_stages{stage_words[4], stage_words[5], stage_words[6]};
inline constexpr std::array section_kinds{Word<SectionKind>{"rounded", SectionKind::rounded},
                                          Word<SectionKind>{"chamfered", SectionKind::chamfered},
                                          Word<SectionKind>{"drawn", SectionKind::drawn}};
inline constexpr std::array carvings{Word<Carving>{"careful", Carving::careful},
                                     Word<Carving>{"usual", Carving::usual},
                                     Word<Carving>{"rough", Carving::rough}};
inline constexpr std::array hole_uses{
    Word<HoleUse>{"ballast", HoleUse::ballast}, Word<HoleUse>{"drilled", HoleUse::drilled},
    Word<HoleUse>{"leaded", HoleUse::leaded}, Word<HoleUse>{"fixed", HoleUse::fixed}};
inline constexpr std::array hole_sides{Word<HoleFrom>{"belly", HoleFrom::belly},
                                       Word<HoleFrom>{"back", HoleFrom::back}};
inline constexpr std::array matters_words{Word<MattersMore>{"both_alike", MattersMore::both_alike},
                                          Word<MattersMore>{"fall", MattersMore::fall},
                                          Word<MattersMore>{"hang", MattersMore::hang}};
inline constexpr std::array hole_ends{Word<HoleEnd>{"flat", HoleEnd::flat},
                                      Word<HoleEnd>{"point_118", HoleEnd::point_118}};
inline constexpr std::array hinge_kinds{Word<HingeKind>{"pinned", HingeKind::pinned},
                                        Word<HingeKind>{"linked", HingeKind::linked}};
inline constexpr std::array eyes_words{Word<EyesOn>{"fore", EyesOn::fore}, Word<EyesOn>{"aft", EyesOn::aft}};
inline constexpr std::array tempers{Word<WireTemper>{"spring", WireTemper::spring},
                                    Word<WireTemper>{"soft", WireTemper::soft}};
inline constexpr std::array hinge_glues{Word<HingeGlue>{"none", HingeGlue::none},
                                        Word<HingeGlue>{"ca", HingeGlue::ca},
                                        Word<HingeGlue>{"epoxy", HingeGlue::epoxy}};
inline constexpr std::array hanger_kinds{Word<HangerKind>{"twisted", HangerKind::twisted},
                                         Word<HangerKind>{"screw", HangerKind::screw},
                                         Word<HangerKind>{"straight", HangerKind::straight}};
inline constexpr std::array hanger_places{
    Word<HangerOn>{"nose", HangerOn::nose}, Word<HangerOn>{"tail", HangerOn::tail},
    Word<HangerOn>{"belly", HangerOn::belly}, Word<HangerOn>{"back", HangerOn::back}};
inline constexpr std::array coat_kinds{Word<CoatKind>{"soaks", CoatKind::soaks},
                                       Word<CoatKind>{"film", CoatKind::film}};
inline constexpr std::array reading_kinds{Word<ReadingKind>{"dry_weight", ReadingKind::dry_weight},
                                          Word<ReadingKind>{"held_under", ReadingKind::held_under},
                                          Word<ReadingKind>{"hung_in_water", ReadingKind::hung_in_water},
                                          Word<ReadingKind>{"board", ReadingKind::board},
                                          Word<ReadingKind>{"tub_fall", ReadingKind::tub_fall},
                                          Word<ReadingKind>{"suspends", ReadingKind::suspends},
                                          Word<ReadingKind>{"freeboard", ReadingKind::freeboard},
                                          Word<ReadingKind>{"hang_angle", ReadingKind::hang_angle},
                                          Word<ReadingKind>{"caliper", ReadingKind::caliper},
                                          Word<ReadingKind>{"beats", ReadingKind::beats}};
inline constexpr std::array hung_kinds{
    Word<HungKind>{"all", HungKind::all}, Word<HungKind>{"part", HungKind::part},
    Word<HungKind>{"tail", HungKind::tail}, Word<HungKind>{"weight", HungKind::weight}};
inline constexpr std::array causes{Word<Cause>{"wood_density", Cause::wood_density},
                                   Word<Cause>{"carved_size", Cause::carved_size},
                                   Word<Cause>{"part_mass", Cause::part_mass},
                                   Word<Cause>{"fill_mass", Cause::fill_mass},
                                   Word<Cause>{"cap_mass", Cause::cap_mass},
                                   Word<Cause>{"coat_amount", Cause::coat_amount},
                                   Word<Cause>{"drag", Cause::drag},
                                   Word<Cause>{"moisture", Cause::moisture},
                                   Word<Cause>{"tail", Cause::tail},
                                   Word<Cause>{"hinge_mass", Cause::hinge_mass},
                                   Word<Cause>{"hanger_mass", Cause::hanger_mass},
                                   Word<Cause>{"wood_gradient", Cause::wood_gradient},
                                   Word<Cause>{"beats", Cause::beats}};
inline constexpr std::array coat_surfaces{Flag<Coat>{"skin", &Coat::on_skin},
                                          Flag<Coat>{"joint_faces", &Coat::on_joint_faces},
                                          Flag<Coat>{"pockets", &Coat::on_pockets}};

} // namespace table

template <class V>
constexpr void describe(V& v, Of<Wood>) {
    v.wood("species", &Wood::species);
    v.number({"moisture_percent", "%", 1.0, 0.0, 30.0, "holds {} moisture"}, &Wood::moisture_percent);
    v.optional_number({"density_kg_m3", "kg/m³", 1.0, 50.0, 1500.0, "weighs {}"}, &Wood::density_kg_m3);
    v.optional_number(
        table::share_percent("density_spread_percent", 0.0, 50.0, "has a density known to ± {}"),
        &Wood::density_spread);
}

template <class V>
constexpr void describe(V& v, Of<Water>) {
    v.number({"temperature_C", "°C", 1.0, 0.0, 40.0, "is at {}"}, &Water::temperature_c);
    v.number({"salinity_g_kg", "g/kg", 1.0, 0.0, 40.0, "holds {} of salt"}, &Water::salinity_g_kg);
}

template <class V>
constexpr void describe(V& v, Of<Section>) {
    v.choice("kind", table::section_kinds, &Section::kind);
    v.number_or_points({"exponent",
                        "section's exponent",
                        table::along,
                        {"1", "", 1.0, 1.2, 12.0, "has an exponent of {}", true},
                        1},
                       &Section::exponent);
    v.number_or_points({"corner_cut",
                        "section's corner cut",
                        table::along,
                        {"1", "", 1.0, 0.0, 1.0, "has a corner cut of {}", true},
                        0},
                       &Section::corner_cut);
    v.points({"half_outline",
              "half outline",
              {"0", "", 1.0, 0.0, 1.0, "has a y of {}", true},
              {"1", "", 1.0, -1.0, 1.0, "has a z of {}", true},
              0},
             &Section::half_outline, &OutlinePoint::y, &OutlinePoint::z);
}

template <class V>
constexpr void describe(V& v, Of<Shape>) {
    using namespace table;
    const NumberField height =
        length_mm("1", -widest_lure_mm, widest_lure_mm, "lies {} above the datum line", true);
    const NumberField width = length_mm("1", 0.0, widest_lure_mm, "lies {} from the middle", true);
    v.points({"back_mm", "back line", along, height, 2, true}, &Shape::back, &CurvePoint::x_m,
             &CurvePoint::value);
    v.points({"belly_mm", "belly line", along, height, 2, true}, &Shape::belly, &CurvePoint::x_m,
             &CurvePoint::value);
    v.points({"half_width_mm", "width line", along, width, 2, true}, &Shape::half_width, &CurvePoint::x_m,
             &CurvePoint::value);
    v.object("section", "The section", &Shape::section);
    v.choice("carving", carvings, &Shape::carving);
    v.list({"measured", "Caliper reading", "caliper readings", max_measured}, &Shape::measured);
}

template <class V>
constexpr void describe(V& v, Of<Measured>) {
    using namespace table;
    v.number(length_mm("x_mm", 0.0, longest_lure_mm, "was taken {} from the nose", true), &Measured::x_m);
    v.optional_number(length_mm("width_mm", 0.1, 2.0 * widest_lure_mm, "reads a width of {}"),
                      &Measured::width_m);
    v.optional_number(length_mm("height_mm", 0.1, 2.0 * widest_lure_mm, "reads a height of {}"),
                      &Measured::height_m);
}

template <class V>
constexpr void describe(V& v, Of<Board>) {
    using namespace table;
    v.number(length_mm("length_mm", 1.0, 2.0 * longest_lure_mm, "is {} long"), &Board::length_m);
    v.number(length_mm("height_mm", 1.0, 2.0 * widest_lure_mm, "is {} high"), &Board::height_m);
    v.number(length_mm("thickness_mm", 1.0, 2.0 * widest_lure_mm, "is {} thick"), &Board::thickness_m);
    v.number(length_mm("saw_mm", 0.0, 20.0, "leaves {} for the saw"), &Board::saw_m);
}

template <class V>
constexpr void describe(V& v, Of<Hinge>) {
    using namespace table;
    v.choice("kind", hinge_kinds, &Hinge::kind);
    v.choice("eyes_on", eyes_words, &Hinge::eyes_on);
    v.number(length_mm("pin_aft_mm", -30.0, 30.0, "has its pin {} behind the gap's middle"),
             &Hinge::pin_aft_m);
    v.number(length_mm("pin_off_mm", -20.0, 20.0, "has its pin {} off the middle"), &Hinge::pin_off_m);
    v.number(length_mm("pin_diameter_mm", 0.3, 6.0, "has a pin of {}"), &Hinge::pin_diameter_m);
    v.choice("temper", tempers, &Hinge::temper);
    v.number(length_mm("wire_mm", 0.2, 3.0, "has wire of {}"), &Hinge::wire_m);
    v.number(length_mm("eye_inside_mm", 0.5, 30.0, "has eyes {} wide inside"), &Hinge::eye_inside_m);
    v.number({"turns", "", 1.0, 0.0, 40.0, "has {} turns of twist"}, &Hinge::turns);
    v.number(length_mm("glued_mm", 0.0, 100.0, "is glued {} deep"), &Hinge::glued_m);
    v.optional_number(
        length_mm("upper_z_mm", -widest_lure_mm, widest_lure_mm, "has its upper eye at a height of {}"),
        &Hinge::upper_z_m);
    v.optional_number(
        length_mm("lower_z_mm", -widest_lure_mm, widest_lure_mm, "has its lower eye at a height of {}"),
        &Hinge::lower_z_m);
    v.choice("glue", hinge_glues, &Hinge::glue);
    v.number(angle_deg("lean_deg", 0.0, 90.0, "has its fore eyes leaning by {}"), &Hinge::lean_rad);
    v.yes_no("weighs", &Hinge::weighs);
    v.optional_number(mass_g("mass_g", 200.0, "weighs {}"), &Hinge::mass_kg);
}

template <class V>
constexpr void describe(V& v, Of<Hanger>) {
    using namespace table;
    v.text({"name", "name"}, &Hanger::name);
    v.choice("kind", hanger_kinds, &Hanger::kind);
    v.choice("on", hanger_places, &Hanger::on);
    v.number(length_mm("x_mm", 0.0, longest_lure_mm, "sits {} from the nose"), &Hanger::x_m);
    v.number(length_mm("z_mm", -widest_lure_mm, widest_lure_mm, "sits {} above the datum line"),
             &Hanger::z_m);
    v.number(length_mm("wire_mm", 0.2, 3.0, "has wire of {}"), &Hanger::wire_m);
    v.number(length_mm("eye_inside_mm", 0.5, 30.0, "has an eye {} wide inside"), &Hanger::eye_inside_m);
    v.number({"turns", "", 1.0, 0.0, 40.0, "has {} turns of twist"}, &Hanger::turns);
    v.number(length_mm("depth_mm", 1.0, 100.0, "goes {} into the wood"), &Hanger::depth_m);
    v.choice("glue", hinge_glues, &Hanger::glue);
    v.optional_number(mass_g("mass_g", 200.0, "weighs {}"), &Hanger::mass_kg);
}

template <class V>
constexpr void describe(V& v, Of<Joint>) {
    using namespace table;
    v.number(length_mm("at_mm", 0.0, longest_lure_mm, "is cut {} from the nose", true), &Joint::at_m);
    v.number(length_mm("gap_mm", 0.2, 20.0, "has a gap of {}"), &Joint::gap_m);
    v.number(angle_deg("relief_fore_deg", 0.0, 60.0, "has a fore relief of {}"), &Joint::relief_fore_rad);
    v.number(angle_deg("relief_aft_deg", 0.0, 60.0, "has an aft relief of {}"), &Joint::relief_aft_rad);
    v.optional_object("hinge", "hinge", &Joint::hinge);
}

template <class V>
constexpr void describe(V& v, Of<Fill>) {
    using namespace table;
    v.material("material", materials::Use::ballast, &Fill::material);
    v.exactly_one(mass_g("mass_g", 1000.0, "weighs {}"), &Fill::mass_kg,
                  length_mm("length_mm", 0.0, 100.0, "is {} long"), &Fill::length_m);
    v.optional_number(length_mm("stock_diameter_mm", 0.2, 40.0, "has a diameter of {}"),
                      &Fill::stock_diameter_m);
}

template <class V>
constexpr void describe(V& v, Of<Cap>) {
    v.material("material", materials::Use::cap, &Cap::material);
    v.number(table::length_mm("length_mm", 0.0, 100.0, "is {} long"), &Cap::length_m);
}

template <class V>
constexpr void describe(V& v, Of<HoleBefore>) {
    using namespace table;
    v.ordinal(hole_change("change", "was so before change {}"), &HoleBefore::change);
    v.number(length_mm("depth_mm", 0.0, 100.0, "was {} deep"), &HoleBefore::depth_m);
    v.optional_object("fill", "fill", &HoleBefore::fill);
}

template <class V>
constexpr void describe(V& v, Of<Hole>) {
    using namespace table;
    v.text({"name", "name"}, &Hole::name);
    v.choice("use", hole_uses, &Hole::use);
    v.choice("from", hole_sides, &Hole::from);
    v.number(length_mm("x_mm", 0.0, longest_lure_mm, "sits {} from the nose", true), &Hole::x_m);
    v.number(length_mm("y_mm", -widest_lure_mm, widest_lure_mm, "sits {} off the middle"), &Hole::y_m);
    v.number(length_mm("diameter_mm", 0.5, 40.0, "is {} wide"), &Hole::diameter_m);
    v.number(length_mm("depth_mm", 0.0, 100.0, "is drilled {} deep"), &Hole::depth_m);
    v.choice("end", hole_ends, &Hole::end);
    v.optional_object("fill", "fill", &Hole::fill);
    v.optional_object("cap", "cap", &Hole::cap);
    v.number(length_mm("max_depth_mm", 0.0, 100.0, "has its depth stop at {}"), &Hole::max_depth_m);
    v.number(length_mm("wall_mm", 0.0, 30.0, "asks for a wall of {}"), &Hole::wall_m);
    v.list({"before", "Earlier state", "earlier states", max_hole_changes}, &Hole::before);
}

template <class V>
constexpr void describe(V& v, Of<Pocket>) {
    using namespace table;
    v.text({"name", "name"}, &Pocket::name);
    v.number(length_mm("x_from_mm", 0.0, longest_lure_mm, "starts {} from the nose", true),
             &Pocket::x_from_m);
    v.number(length_mm("x_to_mm", 0.0, longest_lure_mm, "ends {} from the nose", true), &Pocket::x_to_m);
    v.number(length_mm("y_mm", -widest_lure_mm, widest_lure_mm, "sits {} off the middle"), &Pocket::y_m);
    v.number(length_mm("width_mm", 0.2, 2.0 * widest_lure_mm, "is {} wide"), &Pocket::width_m);
    v.optional_number(length_mm("z_from_mm", -widest_lure_mm, widest_lure_mm, "starts at a height of {}"),
                      &Pocket::z_from_m);
    v.optional_number(length_mm("z_to_mm", -widest_lure_mm, widest_lure_mm, "ends at a height of {}"),
                      &Pocket::z_to_m);
    v.yes_no("floods", &Pocket::floods);
}

template <class V>
constexpr void describe(V& v, Of<Part>) {
    using namespace table;
    v.text({"name", "name"}, &Part::name);
    v.choice("stage", part_stages, &Part::stage);
    v.material("material", materials::Use::part, &Part::material);
    v.number(mass_g("mass_g", 2000.0, "weighs {}", true), &Part::mass_kg);
    v.optional_number(mass_g("mass_sigma_g", 1000.0, "has a mass known to ± {}"), &Part::mass_sigma_kg);
    // Parts may hang off the wood: a tail behind it, a lip before it.
    v.number(length_mm("x_mm", -longest_lure_mm, 2.0 * longest_lure_mm, "sits {} from the nose", true),
             part_at<&Vec3::x>);
    v.number(length_mm("y_mm", -2.0 * widest_lure_mm, 2.0 * widest_lure_mm, "sits {} off the middle"),
             part_at<&Vec3::y>);
    v.number(length_mm("z_mm", -2.0 * widest_lure_mm, 2.0 * widest_lure_mm, "sits {} above the datum line"),
             part_at<&Vec3::z>);
    v.number(share_percent("embedded_percent", 0.0, 100.0, "is {} embedded"), &Part::embedded);
    v.ordinal({"segment", "", 1.0, 1.0, static_cast<double>(max_joints + 1), "belongs to segment {}"},
              &Part::segment);
    v.optional_number(length_mm("reach_mm", 0.0, 200.0, "reaches {} from its hanger"), &Part::reach_m);
}

template <class V>
constexpr void describe(V& v, Of<Tenon>) {
    using namespace table;
    v.number(length_mm("length_mm", 0.5, 100.0, "is {} long", true), &Tenon::length_m);
    v.number(length_mm("thickness_mm", 0.2, 40.0, "is {} thick", true), &Tenon::thickness_m);
    v.number(length_mm("height_mm", 0.5, widest_lure_mm, "is {} high", true), &Tenon::height_m);
}

template <class V>
constexpr void describe(V& v, Of<Tail>) {
    using namespace table;
    const NumberField along_tail = length_mm("0", 0.0, widest_lure_mm, "sits {} behind the root", true);
    const NumberField height =
        length_mm("1", -widest_lure_mm, widest_lure_mm, "lies {} above the axis", true);
    const NumberField thickness = length_mm("1", 0.0, widest_lure_mm, "lies {} from the middle", true);
    v.material("material", materials::Use::tail, &Tail::material);
    v.optional_number({"density_kg_m3", "kg/m³", 1.0, 700.0, 1600.0, "weighs {}"}, &Tail::density_kg_m3);
    v.optional_number(share_percent("density_spread_percent", 0.0, 50.0, "has a density known to ± {}"),
                      &Tail::density_spread);
    v.number(length_mm("x_mm", 0.0, longest_lure_mm, "starts {} from the nose", true), &Tail::x_m);
    v.number(length_mm("z_mm", -widest_lure_mm, widest_lure_mm, "has its axis {} above the datum line"),
             &Tail::z_m);
    v.points({"back_mm", "tail's back line", along_tail, height, 2, true}, &Tail::back, &CurvePoint::x_m,
             &CurvePoint::value);
    v.points({"belly_mm", "tail's belly line", along_tail, height, 2, true}, &Tail::belly, &CurvePoint::x_m,
             &CurvePoint::value);
    v.points({"half_thickness_mm", "tail's half thickness", along_tail, thickness, 2, true},
             &Tail::half_thickness, &CurvePoint::x_m, &CurvePoint::value);
    v.number({"exponent", "", 1.0, 1.2, 12.0, "has an exponent of {}"}, &Tail::exponent);
    v.optional_object("tenon", "tenon", &Tail::tenon);
}

template <class V>
constexpr void describe(V& v, Of<Coat>) {
    using namespace table;
    v.text({"name", "name"}, &Coat::name);
    v.choice("stage", coat_stages, &Coat::stage);
    v.choice("kind", coat_kinds, &Coat::kind);
    v.material("material", materials::Use::coat, &Coat::material);
    v.exactly_one(length_mm("thickness_mm", 0.0, 5.0, "is {} thick"), &Coat::thickness_m,
                  mass_g("mass_g", 500.0, "leaves {} on the lure"), &Coat::mass_kg);
    v.optional_number(share_percent("spread_percent", 0.0, 100.0, "is accurate to ± {}"), &Coat::spread);
    v.flags("surfaces", table::coat_surfaces);
    v.text({"note", "note"}, &Coat::note);
}

template <class V>
constexpr void describe(V& v, Of<Targets>) {
    using namespace table;
    v.either({"fall_mm_s", "mm/s", units::mm_s_from_m_s(1.0), 1.0, 5000.0, "ask for a fall of {}"},
             &Targets::fall_m_s, TargetBy::fall,
             {"in_water_g", "g", gram, -5000.0, 5000.0, "ask for {} in water"}, &Targets::in_water_kg,
             TargetBy::in_water, &Targets::by);
    v.number(angle_deg("pitch_deg", -80.0, 80.0, "ask for a pitch of {}"), &Targets::pitch_rad);
    v.number(share_percent("fall_band_percent", 0.1, 100.0, "allow a band of {} on the fall"),
             &Targets::fall_band);
    v.number(angle_deg("pitch_band_deg", 0.1, 45.0, "allow a band of {} on the pitch"),
             &Targets::pitch_band_rad);
    v.choice("matters_more", matters_words, &Targets::matters_more);
    v.optional_number({"line_lb", "lb", 1.0 / units::pound_force_n, 0.1, 500.0, "name a line of {}"},
                      &Targets::line_n);
}

template <class V>
constexpr void describe(V& v, Of<HungOn>) {
    using namespace table;
    v.choice("what", hung_kinds, &HungOn::what);
    v.ordinal({"part", "", 1.0, 1.0, static_cast<double>(max_hardware), "is part {}"}, &HungOn::part);
    v.optional_number(mass_g("mass_g", 500.0, "weighs {}"), &HungOn::mass_kg);
    v.text({"material", "material"}, &HungOn::material);
}

template <class V>
constexpr void describe(V& v, Of<Reading>) {
    using namespace table;
    v.choice("kind", reading_kinds, &Reading::kind);
    v.choice("stage", stage_words, &Reading::stage);
    v.ordinal({"segment", "", 1.0, 1.0, static_cast<double>(max_joints + 1), "is of segment {}"},
              &Reading::segment);
    v.list({"with", "Thing hung on", "things hung on", max_hung}, &Reading::with);
    v.ordinal({"lure", "", 1.0, 1.0, static_cast<double>(max_lures), "is of lure {}"}, &Reading::lure);
    v.optional_number({"mass_g", "g", gram, -5000.0, 5000.0, "reads {}"}, &Reading::mass_kg);
    v.optional_number({"holder_g", "g", gram, -200.0, 200.0, "takes off {} for the holder"},
                      &Reading::holder_kg);
    v.optional_number(length_mm("length_mm", 1.0, 5000.0, "is of a board {} long"), &Reading::length_m);
    v.optional_number(length_mm("width_mm", 1.0, 1000.0, "reads a width of {}"), &Reading::width_m);
    v.optional_number(length_mm("height_mm", 1.0, 1000.0, "reads a height of {}"), &Reading::height_m);
    v.optional_number(length_mm("x_mm", 0.0, longest_lure_mm, "was taken {} from the nose"), &Reading::x_m);
    v.optional_number({"time_s", "s", 1.0, 0.05, 3600.0, "took {}"}, &Reading::time_s);
    v.optional_number(length_mm("depth_mm", 20.0, 20000.0, "went down {}"), &Reading::depth_m);
    v.text({"clip_material", "clip material"}, &Reading::clip_material);
    v.optional_number(length_mm("freeboard_mm", 0.0, 300.0, "shows {} over the water"),
                      &Reading::freeboard_m);
    v.optional_number(angle_deg("angle_deg", -89.0, 89.0, "reads an angle of {}"), &Reading::angle_rad);
    v.optional_number({"beats", "", 1.0, 1.0, 5000.0, "counts {} beats"}, &Reading::beats);
    v.optional_number(length_mm("travel_mm", 100.0, 1e6, "went {} along"), &Reading::travel_m);
    v.optional_number({"speed_mm_s", "mm/s", mm, 10.0, 1e4, "is of a retrieve at {}"}, &Reading::speed_m_s);
    v.optional_number({"foretold_per_m", "", 1.0, 0.01, 100.0, "was foretold {} beats per metre"},
                      &Reading::foretold_per_m);
    v.optional_number({"temperature_C", "°C", 1.0, 0.0, 40.0, "is of water at {}"}, &Reading::temperature_c);
    v.optional_number({"sigma_g", "g", gram, 0.0001, 1000.0, "is accurate to ± {}"}, &Reading::mass_sigma_kg);
    v.optional_number({"sigma_s", "s", 1.0, 0.001, 600.0, "is accurate to ± {}"}, &Reading::time_sigma_s);
    v.optional_number(length_mm("sigma_mm", 0.001, 100.0, "is accurate to ± {}"), &Reading::length_sigma_m);
    v.optional_number(angle_deg("sigma_deg", 0.01, 45.0, "is accurate to ± {}"), &Reading::angle_sigma_rad);
    v.optional_number({"sigma_beats", "", 1.0, 0.01, 1000.0, "is accurate to ± {} beats"},
                      &Reading::beats_sigma);
    v.text({"date", "date"}, &Reading::date);
    v.text({"note", "note", true}, &Reading::note);
    v.yes_no("excluded", &Reading::excluded);
    v.yes_no("stands", &Reading::stands);
    v.ordinal(hole_change("before_change", "is from before change {} of the holes"), &Reading::before_change);
}

template <class V>
constexpr void describe(V& v, Of<Correction>) {
    using namespace table;
    v.choice("of", causes, &Correction::of);
    v.ordinal({"item", "", 1.0, 1.0, static_cast<double>(max_hardware), "is for entry {}"},
              &Correction::item);
    v.number({"factor", "", 1.0, 0.05, 20.0, "has a factor of {}"}, &Correction::factor);
    v.optional_number(share_percent("spread_percent", 0.0, 100.0, "is accurate to ± {}"),
                      &Correction::spread);
}

template <class V>
constexpr void describe(V& v, Of<Document>) {
    v.version("evenfall", document_version);
    v.text({"name", "name"}, &Document::name);
    v.text({"note", "note", true}, &Document::note);
    v.object("wood", "The wood", &Document::wood);
    v.object("water", "The fishing water", &Document::water);
    v.object("tub", "The tub's water", &Document::tub);
    v.object("shape", "The shape", &Document::shape, true);
    v.names({"segments", "Segment", "segments", max_joints + 1}, &Document::segment_names);
    v.list({"joints", "Joint", "joints", max_joints}, &Document::joints);
    v.list({"hangers", "Hanger", "hangers", max_hangers}, &Document::hangers);
    v.list({"holes", "Hole", "holes", max_holes}, &Document::holes);
    v.list({"pockets", "Pocket", "pockets", max_pockets}, &Document::pockets);
    v.list({"parts", "Part", "parts", max_hardware}, &Document::parts);
    v.list({"coats", "Coat", "coats", max_coats}, &Document::coats);
    v.object("targets", "The targets", &Document::targets);
    v.list({"log", "Reading", "readings", max_readings}, &Document::log);
    v.list({"corrections", "Correction", "corrections", max_corrections}, &Document::corrections);
    v.optional_object("board", "board", &Document::board);
    v.optional_object("tail", "tail", &Document::tail);
    v.optional_number({"air_cm3", "cm³", units::cm3_from_m3(1.0), 0.0, 100.0, "holds {} of air under water"},
                      &Document::air_m3);
}

} // namespace evenfall::document
