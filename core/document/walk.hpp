#pragma once

// The ways to use the table of fields: take a visitor over the fields of a struct with what an object holds
// in each, or ask for the field of one member. A visitor has one function for each sort of field that its
// structs have; they are named as in field_table.hpp and get the values in place of the members.

#include "document/field_table.hpp"

#include <functional>
#include <tuple>
#include <type_traits>

namespace evenfall::document {

/// Turns members into what the objects hold there. Several objects of one struct, such as a document and the
/// defaults, are walked side by side.
template <class V, class... T>
class Walk {
public:
    explicit Walk(V& visitor, T&... objects) : visitor_(visitor), objects_(objects...) {}

    void version(std::string_view key, int version) { visitor_.version(key, version); }
    template <class A>
    void number(const NumberField& field, A at) {
        each([&](auto&... o) { visitor_.number(field, std::invoke(at, o)...); });
    }
    template <class A>
    void optional_number(const NumberField& field, A at) {
        each([&](auto&... o) { visitor_.optional_number(field, std::invoke(at, o)...); });
    }
    template <class A>
    void ordinal(const NumberField& field, A at) {
        each([&](auto&... o) { visitor_.ordinal(field, std::invoke(at, o)...); });
    }
    template <class A>
    void text(const TextField& field, A at) {
        each([&](auto&... o) { visitor_.text(field, std::invoke(at, o)...); });
    }
    template <class A>
    void wood(std::string_view key, A at) {
        each([&](auto&... o) { visitor_.wood(key, std::invoke(at, o)...); });
    }
    template <class A>
    void material(std::string_view key, materials::Use use, A at) {
        each([&](auto&... o) { visitor_.material(key, use, std::invoke(at, o)...); });
    }
    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        each([&](auto&... o) { visitor_.choice(key, words, std::invoke(at, o)...); });
    }
    template <class A>
    void yes_no(std::string_view key, A at) {
        each([&](auto&... o) { visitor_.yes_no(key, std::invoke(at, o)...); });
    }
    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        each([&](auto&... o) { visitor_.flags(key, all, o...); });
    }
    template <class A, class B>
    void exactly_one(const NumberField& a, A at_a, const NumberField& b, B at_b) {
        optional_number(a, at_a);
        optional_number(b, at_b);
        each([&](auto& first, auto&...) {
            visitor_.exactly_one(a, std::invoke(at_a, first), b, std::invoke(at_b, first));
        });
    }
    template <class A, class B, class E, class W>
    void either(const NumberField& a, A at_a, E word_a, const NumberField& b, B at_b, E word_b, W which) {
        each([&](auto& first, auto&...) {
            visitor_.either(a, std::invoke(at_a, first), word_a, b, std::invoke(at_b, first), word_b,
                            std::invoke(which, first));
        });
    }
    template <class A>
    void number_or_points(const PointsField& field, A at) {
        each([&](auto&... o) { visitor_.number_or_points(field, std::invoke(at, o)...); });
    }
    template <class A, class F, class S>
    void points(const PointsField& field, A at, F first, S second) {
        each([&](auto& o, auto&...) { visitor_.points(field, std::invoke(at, o), first, second); });
    }
    template <class A>
    void object(std::string_view key, std::string_view subject, A at, bool required = false) {
        each([&](auto&... o) { visitor_.object(key, subject, required, std::invoke(at, o)...); });
    }
    template <class A>
    void optional_object(std::string_view key, std::string_view called, A at) {
        each([&](auto&... o) { visitor_.optional_object(key, called, std::invoke(at, o)...); });
    }
    template <class A>
    void list(const ListField& field, A at) {
        each([&](auto& o, auto&...) { visitor_.list(field, std::invoke(at, o)); });
    }
    template <class A>
    void names(const ListField& field, A at) {
        each([&](auto& o, auto&...) { visitor_.names(field, std::invoke(at, o)); });
    }

private:
    template <class F>
    void each(const F& call) {
        std::apply(call, objects_);
    }

    V& visitor_;
    std::tuple<T&...> objects_;
};

template <class V, class T, class... Others>
void walk(V& visitor, T& object, Others&... others) {
    Walk<V, T, Others...> fields(visitor, object, others...);
    describe(fields, Of<std::remove_const_t<T>>{});
}

/// The struct without any key.
template <class T>
[[nodiscard]] const T& defaults() {
    static const T usual{};
    return usual;
}

} // namespace evenfall::document
