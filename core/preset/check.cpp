#include "preset/check.hpp"

#include "materials/woods.hpp"
#include "preset/field_table.hpp"
#include "preset/log_check.hpp"

#include <cmath>
#include <functional>

namespace evenfall::preset {
namespace {

/// Is this a character that has no place in a name? Control characters could break a page or a printout,
/// direction overrides could make a name read as something else.
bool holds_control_characters(std::string_view text, bool lines_allowed) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = [&](std::size_t k) { return k < text.size() ? static_cast<unsigned char>(text[k]) : 0u; };
        const unsigned c = byte(i);
        if ((c < 0x20 && !(lines_allowed && c == '\n')) || c == 0x7F) return true;
        if (c == 0xC2 && byte(i + 1) >= 0x80 && byte(i + 1) < 0xA0) return true;  // U+0080 to U+009F
        if (c == 0xE2 && byte(i + 1) == 0x80 && byte(i + 2) >= 0xA8 && byte(i + 2) <= 0xAE) return true;  // U+2028 to U+202E
        if (c == 0xE2 && byte(i + 1) == 0x81 && byte(i + 2) >= 0xA6 && byte(i + 2) <= 0xA9) return true;  // U+2066 to U+2069
    }
    return false;
}

std::string replaced(std::string_view says, const std::string& value) {
    std::string text(says);
    if (const auto at = text.find("{}"); at != std::string::npos) text.replace(at, 2, value);
    return text;
}

const Place& made(const Place& place) { return place; }
template <class Maker>
Place made(const Maker& maker) {
    return maker();
}

/// `place_or_maker` is a Place, or a function that makes one: most numbers are sound, and then no words are made.
template <class P>
void check_number(Problems& problems, const P& place_or_maker, const NumberField& field, double si) {
    const double trade = to_trade(field, si);
    if (trade >= field.min && trade <= field.max) return;
    const Place place = made(place_or_maker);
    const std::string limit = limit_text(field);
    if (!std::isfinite(trade)) {
        add_problem(problems, {ProblemCode::not_a_number, place.path_of(field.key), limit,
                               place.subject + ' ' + replaced(field.says, "no number at all") + "; the limit is " + limit + '.'});
    } else {
        add_problem(problems, {ProblemCode::out_of_range, place.path_of(field.key), limit,
                               place.subject + ' ' + replaced(field.says, with_unit(field, trade)) + "; the limit is " +
                                   limit + '.'});
    }
}

/// `place_of_text` makes the path and the subject, when they are needed.
template <class Maker>
void check_text(Problems& problems, const Maker& place_of_text, std::string_view text, bool lines) {
    const bool controls = holds_control_characters(text, lines);
    if (text.size() <= max_text && !controls) return;
    const auto [path, subject] = place_of_text();
    const std::string limit = std::to_string(max_text) + " bytes";
    if (text.size() > max_text) {
        add_problem(problems, {ProblemCode::too_large, path, limit,
                               subject + " is " + std::to_string(text.size()) + " bytes long; the limit is " + limit + '.'});
    }
    if (controls) {
        add_problem(problems, {ProblemCode::out_of_range, path, "printable characters",
                               subject + " holds a control character; use letters, digits and signs only."});
    }
}

std::string material_ids(materials::Use use) {
    std::string ids;
    for (const materials::Solid& solid : materials::solids()) {
        if (solid.serves(use)) ids.append(ids.empty() ? "" : ", ").append(solid.id);
    }
    return ids;
}

std::string_view use_words(materials::Use use) {
    switch (use) {
        case materials::Use::ballast: return "ballast";
        case materials::Use::cap: return "a cap";
        case materials::Use::part: return "hardware";
        case materials::Use::coat: return "a coat";
        case materials::Use::tail: return "a soft tail";
    }
    return "this";
}

/// Walks one struct of the document; see preset/field_table.hpp for the calls.
template <class T>
class Checker {
public:
    Checker(Problems& problems, Place place, const T& object)
        : problems_(problems), place_(std::move(place)), object_(object) {}

    void version(std::string_view, int) {}

    template <class A>
    void number(const NumberField& field, A at) {
        check_number(problems_, place_, field, std::invoke(at, object_));
    }

    template <class A>
    void optional_number(const NumberField& field, A at) {
        if (const auto& held = std::invoke(at, object_)) check_number(problems_, place_, field, *held);
    }

    template <class A>
    void ordinal(const NumberField& field, A at) {
        if (const auto& held = std::invoke(at, object_)) check_number(problems_, place_, field, *held + 1.0);
    }

    template <class A>
    void text(const TextField& field, A at) {
        check_text(problems_, [&] { return place_.key(field.key, place_.owned(field.called)); }, std::invoke(at, object_),
                   field.lines);
    }

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        for (const auto& word : words) {
            if (word.value == std::invoke(at, object_)) return;
        }
        add_problem(problems_, {ProblemCode::unknown_name, place_.path_of(key), "",
                                place_.owned(key) + " is not one of the words that may stand there."});
    }

    template <class A>
    void yes_no(std::string_view, A) {}

    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        for (const auto& flag : all) {
            if (object_.*flag.member) return;
        }
        add_problem(problems_, {ProblemCode::missing_key, place_.path_of(key), "at least one",
                                place_.subject + " names none of its " + std::string(key) + "; name at least one."});
    }

    template <class A>
    void wood(std::string_view key, A at) {
        const std::string& id = std::invoke(at, object_);
        if (materials::find_wood(id) != nullptr) return;
        std::string ids;
        for (const materials::Wood& wood : materials::woods()) ids.append(ids.empty() ? "" : ", ").append(wood.id);
        add_problem(problems_, {ProblemCode::unknown_name, place_.path_of(key), ids,
                                place_.subject + " is called “" + quotable(id) +
                                    "”, which is not in the table of woods; take the nearest one and give the density you weighed."});
    }

    template <class A>
    void material(std::string_view key, materials::Use use, A at) {
        const std::string& id = std::invoke(at, object_);
        const materials::Solid* solid = materials::find_solid(id);
        if (solid != nullptr && solid->serves(use)) return;
        const std::string ids = material_ids(use);
        add_problem(problems_,
                    {ProblemCode::unknown_name, place_.path_of(key), ids,
                     place_.subject + " is made of “" + quotable(id) + "”, which is not " +
                         (solid == nullptr ? std::string("in the table of materials") : "meant for " + std::string(use_words(use))) +
                         "; choose one of " + ids + '.'});
    }

    template <class A, class B>
    void exactly_one(const NumberField& field_a, A a, const NumberField& field_b, B b) {
        optional_number(field_a, a);
        optional_number(field_b, b);
        const bool has_a = std::invoke(a, object_).has_value();
        const bool has_b = std::invoke(b, object_).has_value();
        if (has_a != has_b) return;
        const std::string names = std::string(field_a.key) + " or " + std::string(field_b.key);
        if (has_a) {
            add_problem(problems_, {ProblemCode::unknown_key, place_.path_of(field_b.key), "exactly one of " + names,
                                    place_.subject + " gives both " + std::string(field_a.key) + " and " +
                                        std::string(field_b.key) + "; give one of them."});
        } else {
            add_problem(problems_, {ProblemCode::missing_key, place_.path_of(field_a.key), "exactly one of " + names,
                                    place_.subject + " needs " + names + '.'});
        }
    }

    template <class A, class B, class W, class E>
    void either(const NumberField& field_a, A a, E word_a, const NumberField& field_b, B b, E, W which) {
        if (std::invoke(which, object_) == word_a) number(field_a, a);
        else number(field_b, b);
    }

    template <class A>
    void number_or_points(const PointsField& field, A at) {
        points(field, at, &CurvePoint::x_m, &CurvePoint::value);
    }

    template <class A, class F, class S>
    void points(const PointsField& field, A at, F first, S second) {
        const auto& held = std::invoke(at, object_);
        if (held.size() < field.min_count || held.size() > max_curve_points) {
            const std::string limit = std::to_string(field.min_count) + " to " + std::to_string(max_curve_points) + " points";
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "The " + std::string(field.called) + " has " + counted(held.size(), "point") +
                                        "; the limit is " + limit + '.'});
            return;
        }
        for (std::size_t i = 0; i < held.size(); ++i) {
            const auto there = [&] { return place_.point(field, i); };
            check_number(problems_, there, field.first, std::invoke(first, held[i]));
            check_number(problems_, there, field.second, std::invoke(second, held[i]));
        }
    }

    template <class A>
    void object(std::string_view key, std::string_view subject, A at, bool = false) {
        walk(place_.key(key, std::string(subject)), std::invoke(at, object_));
    }

    template <class A>
    void optional_object(std::string_view key, std::string_view called, A at) {
        if (const auto& held = std::invoke(at, object_)) walk(place_.key(key, place_.owned(called)), *held);
    }

    template <class A>
    void list(const ListField& field, A at) {
        const auto& held = std::invoke(at, object_);
        if (!count_fits(field, held.size())) return;
        for (std::size_t i = 0; i < held.size(); ++i) walk(place_.entry(field, i), held[i]);
    }

    template <class A>
    void names(const ListField& field, A at) {
        const auto& held = std::invoke(at, object_);
        if (!count_fits(field, held.size())) return;
        for (std::size_t i = 0; i < held.size(); ++i) {
            check_text(problems_, [&] { return Place{place_.entry(field, i).path, place_.entry(field, i).owned("name")}; },
                       held[i], false);
        }
    }

private:
    template <class U>
    void walk(Place place, const U& object) {
        Checker<U> checker(problems_, std::move(place), object);
        describe(checker, Of<U>{});
    }

    bool count_fits(const ListField& field, std::size_t count) {
        if (count <= field.max_count) return true;
        const std::string limit = "at most " + std::to_string(field.max_count);
        add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                "There are " + std::to_string(count) + ' ' + std::string(field.many) + "; the limit is " +
                                    limit + '.'});
        return false;
    }

    Problems& problems_;
    Place place_;
    const T& object_;
};

/// Rules that tie two fields together.
void check_between_fields(Problems& problems, const Document& document) {
    if (document.segment_names.size() != document.joints.size() + 1) {
        const std::string wanted = std::to_string(document.joints.size() + 1);
        add_problem(problems, {ProblemCode::missing_key, "/segments", wanted,
                               "With " + counted(document.joints.size(), "joint") + " the lure needs " + wanted + " segment names, not " +
                                   std::to_string(document.segment_names.size()) + '.'});
    }
    const Section& section = document.shape.section;
    if (section.kind != SectionKind::free) {
        const bool round = section.kind == SectionKind::superellipse;
        const NumberField field{"1", "", 1.0, round ? 1.2 : 0.0, round ? 12.0 : 1.0,
                                round ? "has a superellipse fullness of {}" : "has a chamfer share of {}"};
        const PointsField points{"fullness", "fullness of the section", {}, field};
        const Place place{"/shape/section", "The section"};
        for (std::size_t i = 0; i < section.fullness.size(); ++i) {
            check_number(problems, place.point(points, i), field, section.fullness[i].value);
        }
    } else if (section.half_outline.size() < 3) {
        add_problem(problems, {ProblemCode::missing_key, "/shape/section/half_outline", "3 to 64 points",
                               "A free section needs a half outline of at least 3 points."});
    }
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        const auto& segment = document.parts[i].segment;
        const auto count = static_cast<int>(document.segment_names.size());
        if (!segment || *segment < count || *segment > static_cast<int>(max_joints)) continue;
        add_problem(problems, {ProblemCode::out_of_range, "/parts/" + std::to_string(i) + "/segment",
                               "1 to " + std::to_string(count),
                               "Part " + std::to_string(i + 1) + " belongs to segment " + std::to_string(*segment + 1) +
                                   ", but the lure has " + std::to_string(count) + '.'});
    }
    for (std::size_t i = 0; i < document.coats.size(); ++i) {
        if (document.coats[i].kind != CoatKind::soaks || !document.coats[i].thickness_m) continue;
        add_problem(problems, {ProblemCode::unknown_key, "/coats/" + std::to_string(i) + "/thickness_mm", "mass_g",
                               "Coat " + std::to_string(i + 1) + " soaks in, so it has no thickness; give its mass_g."});
    }
}

}  // namespace

Problems check(const Document& document) {
    Problems problems;
    Checker<Document> checker(problems, {"", "The document"}, document);
    describe(checker, Of<Document>{});
    check_between_fields(problems, document);
    check_log(problems, document);
    return problems;
}

}  // namespace evenfall::preset
