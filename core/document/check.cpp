#include "document/check.hpp"

#include "document/coat_traits.hpp"
#include "document/log_check.hpp"
#include "document/walk.hpp"
#include "materials/woods.hpp"

#include <cmath>
#include <optional>

namespace evenfall::document {
namespace {

Sentence replaced(std::string_view says, const Sentence& value) {
    const auto at = says.find("{}");
    if (at == std::string_view::npos) return says;
    return Sentence(says.substr(0, at)) + value + says.substr(at + 2);
}

/// Where a struct stands in the document. Most are sound, and then no words are made of it.
struct Where {
    const Where* above = nullptr;
    std::string_view key;
    std::string_view called;
    enum class Kind { object, owned, entry } kind = Kind::object;
    std::size_t index = 0;

    [[nodiscard]] Place place() const {
        if (above == nullptr) return {"", "The document"};
        const Place there = above->place();
        switch (kind) {
        case Kind::entry:
            return there.entry(key, called, index);
        case Kind::owned:
            return there.key(key, there.owned(called));
        default:
            return there.key(key, std::string(called));
        }
    }
};

/// `place_of_number` makes the place, when it is needed.
template <class Maker>
void check_number(Problems& problems, const Maker& place_of_number, const NumberField& field, double si) {
    const double trade = to_trade(field, si);
    if (trade >= field.min && trade <= field.max) return;
    const Place place = place_of_number();
    const Sentence limit = limit_text(field);
    if (!std::isfinite(trade)) {
        add_problem(problems, {ProblemCode::not_a_number, place.path_of(field.key), limit,
                               place.subject + " " + replaced(field.says, "no number at all") +
                                   "; the limit is " + limit + "."});
    } else {
        add_problem(problems, {ProblemCode::out_of_range, place.path_of(field.key), limit,
                               place.subject + " " + replaced(field.says, with_unit(field, si)) +
                                   "; the limit is " + limit + "."});
    }
}

/// `place_of_text` makes the path and the subject, when they are needed.
template <class Maker>
void check_text(Problems& problems, const Maker& place_of_text, std::string_view text, bool lines) {
    const char* const unfit = unfit_in(text, lines);
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

/// Holds one struct against the limits of its fields.
class Checker {
public:
    Checker(Problems& problems, const Where& where) : problems_(problems), where_(where) {}

    void version(std::string_view, int) {}
    void yes_no(std::string_view, bool) {}
    void number(const NumberField& field, double held) {
        check_number(
            problems_, [&] { return place(); }, field, held);
    }
    void optional_number(const NumberField& field, const std::optional<double>& held) {
        if (held) number(field, *held);
    }
    void ordinal(const NumberField& field, const std::optional<int>& held) {
        if (held) number(field, *held + 1.0);
    }
    void text(const TextField& field, const std::string& held) {
        check_text(
            problems_, [&] { return place().key(field.key, place().owned(field.called)); }, held,
            field.lines);
    }

    void wood(std::string_view key, const std::string& id) {
        if (materials::find_wood(id) != nullptr) return;
        std::string ids;
        for (const materials::Wood& wood : materials::woods())
            ids.append(ids.empty() ? "" : ", ").append(wood.id);
        add_problem(problems_, {ProblemCode::unknown_name, place().path_of(key), ids,
                                place().subject + " is called “" + quotable(id) +
                                    "”, which is not in the table of woods; take the nearest one and give "
                                    "the density you weighed."});
    }

    void material(std::string_view key, materials::Use use, const std::string& id) {
        const materials::Solid* solid = materials::find_solid(id);
        if (solid != nullptr && solid->serves(use)) return;
        const std::string ids = material_ids(use);
        add_problem(problems_, {ProblemCode::unknown_name, place().path_of(key), ids,
                                place().subject + " is made of “" + quotable(id) + "”, which is not " +
                                    (solid == nullptr ? std::string("in the table of materials")
                                                      : "meant for " + std::string(use_words(use))) +
                                    "; choose one of " + ids + '.'});
    }

    template <class Words, class E>
    void choice(std::string_view key, const Words& words, E held) {
        if (!word_of(words, held).empty()) return;
        add_problem(problems_, {ProblemCode::unknown_name, place().path_of(key), "",
                                place().owned(key) + " is not one of the words that may stand there."});
    }

    template <class Flags, class T>
    void flags(std::string_view key, const Flags& all, const T& object) {
        for (const auto& flag : all) {
            if (object.*flag.member) return;
        }
        add_problem(problems_,
                    {ProblemCode::missing_key, place().path_of(key), "at least one",
                     place().subject + " names none of its " + std::string(key) + "; name at least one."});
    }

    void exactly_one(const NumberField& a, const std::optional<double>& held_a, const NumberField& b,
                     const std::optional<double>& held_b) {
        if (held_a.has_value() != held_b.has_value()) return;
        const std::string first(a.key), second(b.key);
        const std::string names = first + " or " + second;
        if (held_a) {
            add_problem(
                problems_,
                {ProblemCode::unknown_key, place().path_of(second), "exactly one of " + names,
                 place().subject + " gives both " + first + " and " + second + "; give one of them."});
        } else {
            add_problem(problems_, {ProblemCode::missing_key, place().path_of(first),
                                    "exactly one of " + names, place().subject + " needs " + names + '.'});
        }
    }

    template <class E>
    void either(const NumberField& a, double held_a, E word_a, const NumberField& b, double held_b, E,
                E which) {
        which == word_a ? number(a, held_a) : number(b, held_b);
    }

    void number_or_points(const PointsField& field, const CurvePoints& held) {
        points(field, held, &CurvePoint::x_m, &CurvePoint::value);
    }
    template <class P>
    void points(const PointsField& field, const std::vector<P>& held, double P::*first, double P::*second) {
        if (held.size() < field.min_count || held.size() > max_curve_points) {
            add_problem(problems_, too_many_points(place(), field, held.size()));
            return;
        }
        for (std::size_t i = 0; i < held.size(); ++i) {
            const auto there = [&] { return place().point(field.key, field.called, i); };
            check_number(problems_, there, field.first, held[i].*first);
            check_number(problems_, there, field.second, held[i].*second);
        }
    }

    template <class T>
    void object(std::string_view key, std::string_view subject, bool, const T& held) {
        within({&where_, key, subject, Where::Kind::object}, held);
    }
    template <class T>
    void optional_object(std::string_view key, std::string_view called, const std::optional<T>& held) {
        if (held) within({&where_, key, called, Where::Kind::owned}, *held);
    }
    template <class T>
    void list(const ListField& field, const std::vector<T>& held) {
        if (!count_fits(field, held.size())) return;
        for (std::size_t i = 0; i < held.size(); ++i)
            within({&where_, field.key, field.one, Where::Kind::entry, i}, held[i]);
    }
    void names(const ListField& field, const std::vector<std::string>& held) {
        if (!count_fits(field, held.size())) return;
        for (std::size_t i = 0; i < held.size(); ++i) {
            const auto there = [&] {
                const Place entry = place().entry(field.key, field.one, i);
                return Place{entry.path, entry.owned("name")};
            };
            check_text(problems_, there, held[i], false);
        }
    }

private:
    template <class T>
    void within(const Where& where, const T& held) {
        Checker checker(problems_, where);
        walk(checker, held);
    }

    bool count_fits(const ListField& field, std::size_t count) {
        if (count <= field.max_count) return true;
        add_problem(problems_, too_many_entries(place(), field, count));
        return false;
    }

    [[nodiscard]] Place place() const { return where_.place(); }

    Problems& problems_;
    const Where& where_;
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
    if (section.kind == SectionKind::chamfered && section.corner_cut.empty()) {
        add_problem(problems, {ProblemCode::missing_key, "/shape/section/corner_cut", "0 to 1",
                               "A chamfered section needs its corner cut."});
    }
    if (section.kind == SectionKind::drawn && section.half_outline.size() < 3) {
        add_problem(problems, {ProblemCode::missing_key, "/shape/section/half_outline", "3 to 64 points",
                               "A drawn section needs a half outline of at least 3 points."});
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
        if (traits_of(document.coats[i].kind).takes_room || !document.coats[i].thickness_m) continue;
        add_problem(
            problems,
            {ProblemCode::unknown_key, "/coats/" + std::to_string(i) + "/thickness_mm", "mass_g",
             "Coat " + std::to_string(i + 1) + " soaks in, so it has no thickness; give its mass_g."});
    }
}

} // namespace

Problems check(const Document& document) {
    Problems problems;
    const Where whole;
    Checker checker(problems, whole);
    walk(checker, document);
    check_between_fields(problems, document);
    check_log(problems, document);
    return problems;
}

} // namespace evenfall::document
