#include "document/check.hpp"

#include "document/log_check.hpp"
#include "document/table.hpp"
#include "materials/woods.hpp"

#include <cmath>
#include <optional>

namespace evenfall::document {
namespace {

/// What a text holds that has no place in a name, nullptr where nothing. Control characters could break a
/// page or a printout, direction overrides could make a name read as something else, and half a letter cannot
/// be written.
const char* unfit_character(std::string_view text, bool lines_allowed) {
    for (std::size_t i = 0, bytes = 0; i < text.size(); i += bytes) {
        bytes = letter_bytes(text, i);
        if (bytes == 0) return "half a letter";
        const auto byte = [&](std::size_t k) {
            return k < text.size() ? static_cast<unsigned char>(text[k]) : 0u;
        };
        const unsigned c = byte(i);
        if ((c < 0x20 && !(lines_allowed && c == '\n')) || c == 0x7F ||
            (c == 0xC2 && byte(i + 1) < 0xA0) || // U+0080 to U+009F
            (c == 0xE2 && byte(i + 1) == 0x80 && byte(i + 2) >= 0xA8 &&
             byte(i + 2) <= 0xAE) || // U+2028 to U+202E
            (c == 0xE2 && byte(i + 1) == 0x81 && byte(i + 2) >= 0xA6 &&
             byte(i + 2) <= 0xA9)) { // U+2066 to U+2069
            return "a control character";
        }
    }
    return nullptr;
}

std::string replaced(std::string_view says, const std::string& value) {
    std::string text(says);
    if (const auto at = text.find("{}"); at != std::string::npos) text.replace(at, 2, value);
    return text;
}

const Place& made(const Place& place) {
    return place;
}
template <class Maker>
Place made(const Maker& maker) {
    return maker();
}

/// `place_or_maker` is a Place, or a function that makes one: most numbers are sound, and then no words are
/// made.
template <class P>
void check_number(Problems& problems, const P& place_or_maker, const NumberField& field, double si) {
    const double trade = to_trade(field, si);
    if (trade >= field.min && trade <= field.max) return;
    const Place place = made(place_or_maker);
    const std::string limit = limit_text(field);
    if (!std::isfinite(trade)) {
        add_problem(problems, {ProblemCode::not_a_number, place.path_of(field.key), limit,
                               place.subject + ' ' + replaced(field.says, "no number at all") +
                                   "; the limit is " + limit + '.'});
    } else {
        add_problem(problems, {ProblemCode::out_of_range, place.path_of(field.key), limit,
                               place.subject + ' ' + replaced(field.says, with_unit(field, trade)) +
                                   "; the limit is " + limit + '.'});
    }
}

/// `place_of_text` makes the path and the subject, when they are needed.
template <class Maker>
void check_text(Problems& problems, const Maker& place_of_text, std::string_view text, bool lines) {
    const char* const unfit = unfit_character(text, lines);
    if (text.size() <= max_text && unfit == nullptr) return;
    const auto [path, subject] = place_of_text();
    const std::string limit = std::to_string(max_text) + " bytes";
    if (text.size() > max_text) {
        add_problem(problems, {ProblemCode::too_large, path, limit,
                               subject + " is " + std::to_string(text.size()) + " bytes long; the limit is " +
                                   limit + '.'});
    }
    if (unfit != nullptr) {
        add_problem(problems, {ProblemCode::out_of_range, path, "printable characters",
                               subject + " holds " + unfit + "; use letters, digits and signs only."});
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
    case materials::Use::ballast:
        return "ballast";
    case materials::Use::cap:
        return "a cap";
    case materials::Use::part:
        return "hardware";
    case materials::Use::coat:
        return "a coat";
    case materials::Use::tail:
        return "a soft tail";
    }
    return "this";
}

/// Holds one struct against the limits of its table.
class Checker {
public:
    Checker(Problems& problems, Place place, const Table& table, const void* object)
        : problems_(problems), place_(std::move(place)), table_(table), object_(object) {}

    void check() {
        for (const Field& field : table_.fields)
            check(field);
    }

private:
    void check(const Field& field) {
        switch (field.sort) {
        case Sort::version:
        case Sort::yes_no:
            break;
        case Sort::number:
            number(field.number, field.offset);
            break;
        case Sort::optional_number:
            optional_number(field.number, field.offset);
            break;
        case Sort::ordinal:
            if (const auto& held = value_at<std::optional<int>>(object_, field.offset)) {
                check_number(problems_, place_, field.number, *held + 1.0);
            }
            break;
        case Sort::text:
            check_text(
                problems_, [&] { return place_.key(field.key, place_.owned(field.called)); },
                value_at<std::string>(object_, field.offset), field.lines);
            break;
        case Sort::wood:
            wood(field);
            break;
        case Sort::material:
            material(field);
            break;
        case Sort::choice:
            if (word_of(field, choice_at(object_, field.offset)).empty()) {
                add_problem(problems_,
                            {ProblemCode::unknown_name, place_.path_of(field.key), "",
                             place_.owned(field.key) + " is not one of the words that may stand there."});
            }
            break;
        case Sort::flags:
            flags(field);
            break;
        case Sort::exactly_one:
            exactly_one(field);
            break;
        case Sort::either:
            if (choice_at(object_, field.which_offset) == field.which_first)
                number(field.number, field.offset);
            else
                number(field.second, field.second_offset);
            break;
        case Sort::number_or_points:
        case Sort::points:
            points(field);
            break;
        case Sort::object:
            walk(place_.key(field.key, std::string(field.called)), field, place_at(object_, field.offset));
            break;
        case Sort::optional_object:
            if (count_of(field, object_) > 0) {
                walk(place_.key(field.key, place_.owned(field.called)), field, entry_of(field, object_, 0));
            }
            break;
        case Sort::list: {
            const std::size_t count = count_of(field, object_);
            if (!count_fits(field, count)) return;
            for (std::size_t i = 0; i < count; ++i) {
                walk(place_.entry(field.key, field.called, i), field, entry_of(field, object_, i));
            }
            break;
        }
        case Sort::names:
            names(field);
            break;
        }
    }

    void number(const NumberField& field, std::size_t offset) {
        check_number(problems_, place_, field, value_at<double>(object_, offset));
    }

    void optional_number(const NumberField& field, std::size_t offset) {
        if (const auto& held = value_at<std::optional<double>>(object_, offset))
            check_number(problems_, place_, field, *held);
    }

    void flags(const Field& field) {
        for (const FieldWord& flag : field.words) {
            if (value_at<bool>(object_, flag.value)) return;
        }
        add_problem(problems_, {ProblemCode::missing_key, place_.path_of(field.key), "at least one",
                                place_.subject + " names none of its " + std::string(field.key) +
                                    "; name at least one."});
    }

    void wood(const Field& field) {
        const auto& id = value_at<std::string>(object_, field.offset);
        if (materials::find_wood(id) != nullptr) return;
        std::string ids;
        for (const materials::Wood& wood : materials::woods())
            ids.append(ids.empty() ? "" : ", ").append(wood.id);
        add_problem(problems_, {ProblemCode::unknown_name, place_.path_of(field.key), ids,
                                place_.subject + " is called “" + quotable(id) +
                                    "”, which is not in the table of woods; take the nearest one and give "
                                    "the density you weighed."});
    }

    void material(const Field& field) {
        const auto& id = value_at<std::string>(object_, field.offset);
        const materials::Solid* solid = materials::find_solid(id);
        if (solid != nullptr && solid->serves(field.use)) return;
        const std::string ids = material_ids(field.use);
        add_problem(problems_, {ProblemCode::unknown_name, place_.path_of(field.key), ids,
                                place_.subject + " is made of “" + quotable(id) + "”, which is not " +
                                    (solid == nullptr ? std::string("in the table of materials")
                                                      : "meant for " + std::string(use_words(field.use))) +
                                    "; choose one of " + ids + '.'});
    }

    void exactly_one(const Field& field) {
        optional_number(field.number, field.offset);
        optional_number(field.second, field.second_offset);
        const bool has_first = value_at<std::optional<double>>(object_, field.offset).has_value();
        const bool has_second = value_at<std::optional<double>>(object_, field.second_offset).has_value();
        if (has_first != has_second) return;
        const std::string first(field.number.key), second(field.second.key);
        const std::string names = first + " or " + second;
        if (has_first) {
            add_problem(problems_,
                        {ProblemCode::unknown_key, place_.path_of(second), "exactly one of " + names,
                         place_.subject + " gives both " + first + " and " + second + "; give one of them."});
        } else {
            add_problem(problems_, {ProblemCode::missing_key, place_.path_of(first),
                                    "exactly one of " + names, place_.subject + " needs " + names + '.'});
        }
    }

    void points(const Field& field) {
        const std::size_t count = count_of(field, object_);
        if (count < field.min_count || count > field.max_count) {
            const std::string limit =
                std::to_string(field.min_count) + " to " + std::to_string(field.max_count) + " points";
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "The " + std::string(field.called) + " has " + counted(count, "point") +
                                        "; the limit is " + limit + '.'});
            return;
        }
        for (std::size_t i = 0; i < count; ++i) {
            const auto there = [&] { return place_.point(field.key, field.called, i); };
            const void* point = entry_of(field, object_, i);
            check_number(problems_, there, field.number, value_at<double>(point, field.first_offset));
            check_number(problems_, there, field.second, value_at<double>(point, field.second_offset));
        }
    }

    void names(const Field& field) {
        const auto& held = value_at<std::vector<std::string>>(object_, field.offset);
        if (!count_fits(field, held.size())) return;
        for (std::size_t i = 0; i < held.size(); ++i) {
            const auto there = [&] {
                const Place entry = place_.entry(field.key, field.called, i);
                return Place{entry.path, entry.owned("name")};
            };
            check_text(problems_, there, held[i], false);
        }
    }

    void walk(Place place, const Field& field, const void* object) const {
        Checker(problems_, std::move(place), field.inner(), object).check();
    }

    bool count_fits(const Field& field, std::size_t count) {
        if (count <= field.max_count) return true;
        const std::string limit = "at most " + std::to_string(field.max_count);
        add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                "There are " + std::to_string(count) + ' ' + std::string(field.many) +
                                    "; the limit is " + limit + '.'});
        return false;
    }

    Problems& problems_;
    Place place_;
    const Table& table_;
    const void* object_;
};

/// Rules that tie two fields together.
void check_between_fields(Problems& problems, const Document& document) {
    if (document.segment_names.size() != document.joints.size() + 1) {
        const std::string wanted = std::to_string(document.joints.size() + 1);
        add_problem(problems,
                    {ProblemCode::missing_key, "/segments", wanted,
                     "With " + counted(document.joints.size(), "joint") + " the lure needs " + wanted +
                         " segment names, not " + std::to_string(document.segment_names.size()) + '.'});
    }
    const Section& section = document.shape.section;
    if (section.kind != SectionKind::free) {
        const bool round = section.kind == SectionKind::superellipse;
        const NumberField field{"1",
                                "",
                                1.0,
                                round ? 1.2 : 0.0,
                                round ? 12.0 : 1.0,
                                round ? "has a superellipse fullness of {}" : "has a chamfer share of {}"};
        const Place place{"/shape/section", "The section"};
        for (std::size_t i = 0; i < section.fullness.size(); ++i) {
            check_number(problems, place.point("fullness", "fullness of the section", i), field,
                         section.fullness[i].value);
        }
    } else if (section.half_outline.size() < 3) {
        add_problem(problems, {ProblemCode::missing_key, "/shape/section/half_outline", "3 to 64 points",
                               "A free section needs a half outline of at least 3 points."});
    }
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        const auto& segment = document.parts[i].segment;
        const auto count = static_cast<int>(document.segment_names.size());
        if (!segment || *segment < count || *segment > static_cast<int>(max_joints)) continue;
        add_problem(problems,
                    {ProblemCode::out_of_range, "/parts/" + std::to_string(i) + "/segment",
                     "1 to " + std::to_string(count),
                     "Part " + std::to_string(i + 1) + " belongs to segment " + std::to_string(*segment + 1) +
                         ", but the lure has " + std::to_string(count) + '.'});
    }
    for (std::size_t i = 0; i < document.coats.size(); ++i) {
        if (document.coats[i].kind != CoatKind::soaks || !document.coats[i].thickness_m) continue;
        add_problem(
            problems,
            {ProblemCode::unknown_key, "/coats/" + std::to_string(i) + "/thickness_mm", "mass_g",
             "Coat " + std::to_string(i + 1) + " soaks in, so it has no thickness; give its mass_g."});
    }
}

} // namespace

Problems check(const Document& document) {
    Problems problems;
    Checker(problems, {"", "The document"}, document_table(), &document).check();
    check_between_fields(problems, document);
    check_log(problems, document);
    return problems;
}

} // namespace evenfall::document
