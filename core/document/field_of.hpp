#pragma once

// The field of one member, for whoever asks for a number of the document: its key, unit and limits stand in
// field_table.hpp alone. `field_of<&Hole::depth_m>` is known when the program is compiled, and a member that
// is not in the table does not compile.

#include "document/field_table.hpp"

#include <type_traits>

namespace evenfall::document {
namespace lookup {

template <auto Member>
struct Owner {
    using Type = typename decltype(Member)::Owner;
};
template <class T, class M, M T::*Member>
struct Owner<Member> {
    using Type = T;
};

/// A visitor that keeps the field of one member.
template <auto Member>
struct Finder {
    NumberField found_number{};
    PointsField found_points{};
    bool found = false;

    template <class A>
    constexpr void number(const NumberField& field, A at) {
        if (!is_wanted(at)) return;
        found_number = field;
        found = true;
    }
    template <class A>
    constexpr void optional_number(const NumberField& field, A at) {
        number(field, at);
    }
    template <class A, class B>
    constexpr void exactly_one(const NumberField& a, A at_a, const NumberField& b, B at_b) {
        number(a, at_a);
        number(b, at_b);
    }
    template <class A, class B, class E, class W>
    constexpr void either(const NumberField& a, A at_a, E, const NumberField& b, B at_b, E, W) {
        number(a, at_a);
        number(b, at_b);
    }
    template <class A>
    constexpr void number_or_points(const PointsField& field, A at) {
        points(field, at, 0, 0);
    }
    template <class A, class F, class S>
    constexpr void points(const PointsField& field, A at, F, S) {
        if (!is_wanted(at)) return;
        found_points = field;
        found = true;
    }
    // Fields that are no numbers.
    constexpr void version(std::string_view, int) {}
    constexpr void ordinal(const NumberField&, auto) {}
    constexpr void text(const TextField&, auto) {}
    constexpr void wood(std::string_view, auto) {}
    constexpr void material(std::string_view, materials::Use, auto) {}
    constexpr void choice(std::string_view, const auto&, auto) {}
    constexpr void yes_no(std::string_view, auto) {}
    constexpr void flags(std::string_view, const auto&) {}
    constexpr void object(std::string_view, std::string_view, auto, bool = false) {}
    constexpr void optional_object(std::string_view, std::string_view, auto) {}
    constexpr void list(const ListField&, auto) {}
    constexpr void names(const ListField&, auto) {}

private:
    template <class A>
    static constexpr bool is_wanted(A at) {
        if constexpr (!std::is_same_v<A, std::remove_const_t<decltype(Member)>>)
            return false;
        else if constexpr (std::is_member_pointer_v<A>)
            return at == Member;
        else
            return true;
    }
};

template <auto Member>
constexpr Finder<Member> find() {
    Finder<Member> finder;
    describe(finder, Of<typename Owner<Member>::Type>{});
    return finder;
}

template <auto Member>
constexpr Finder<Member> found() {
    constexpr Finder<Member> finder = find<Member>();
    static_assert(finder.found, "no field of the table has this member");
    return finder;
}

} // namespace lookup

/// A number, as a double or an optional one; a place of a part as `part_at<&Vec3::x>`.
template <auto Member>
inline constexpr NumberField field_of = lookup::found<Member>().found_number;

/// A curve or an outline: both coordinates.
template <auto Member>
inline constexpr PointsField points_of = lookup::found<Member>().found_points;

/// The curve that a section of this kind has.
[[nodiscard]] constexpr PointsField section_field(SectionKind kind) {
    return kind == SectionKind::chamfered ? points_of<&Section::corner_cut> : points_of<&Section::exponent>;
}

/// The limits in SI.
[[nodiscard]] constexpr double least_si(const NumberField& field) {
    return field.min / field.per_si;
}
[[nodiscard]] constexpr double most_si(const NumberField& field) {
    return field.max / field.per_si;
}

} // namespace evenfall::document
