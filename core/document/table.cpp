#include "document/table.hpp"

#include "document/field_table.hpp"

#include <functional>
#include <optional>
#include <type_traits>

namespace evenfall::document {
namespace {

template <class T>
const T& defaults() {
    static const T usual{};
    return usual;
}

template <class T>
const Table& table_of();

template <class U>
Entries entries_of(const std::vector<U>&) {
    return {
        [](const void* list) { return static_cast<const std::vector<U>*>(list)->size(); },
        [](void* list, std::size_t index) -> void* { return &(*static_cast<std::vector<U>*>(list))[index]; },
        [](void* list, std::size_t count) { static_cast<std::vector<U>*>(list)->resize(count); }};
}

template <class U>
Entries entries_of(const std::optional<U>&) {
    return {[](const void* held) -> std::size_t {
                return static_cast<const std::optional<U>*>(held)->has_value() ? 1 : 0;
            },
            [](void* held, std::size_t) -> void* { return &**static_cast<std::optional<U>*>(held); },
            [](void* held, std::size_t count) {
                auto& optional = *static_cast<std::optional<U>*>(held);
                if (count == 0)
                    optional.reset();
                else
                    optional.emplace();
            }};
}

/// What a recorder does that does not depend on the struct.
class Rows {
protected:
    explicit Rows(Table& table) : table_(table) {}

    Field& add(Sort sort, std::string_view key, std::size_t at) {
        Field& added = table_.fields.emplace_back();
        added.sort = sort;
        added.key = key;
        added.offset = at;
        return added;
    }
    void number_field(Sort sort, const NumberField& field, std::size_t at) {
        Field& added = add(sort, field.key, at);
        added.number = field;
        added.required = field.required;
    }
    Field& two_numbers(Sort sort, const NumberField& a, std::size_t at_a, const NumberField& b,
                       std::size_t at_b) {
        Field& added = add(sort, a.key, at_a);
        added.number = a;
        added.second = b;
        added.second_offset = at_b;
        return added;
    }
    void list_field(Sort sort, const ListField& field, std::size_t at) {
        Field& added = add(sort, field.key, at);
        added.called = field.one;
        added.many = field.many;
        added.max_count = field.max_count;
    }

    Table& table_;
};

/// Writes the table of one struct down; see preset/field_table.hpp for the calls. Places are measured on the
/// defaults.
template <class T>
class Recorder : Rows {
public:
    explicit Recorder(Table& table) : Rows(table) {}

    void version(std::string_view key, int version) { add(Sort::version, key, 0).version = version; }

    template <class A>
    void number(const NumberField& field, A at) {
        static_assert(std::is_same_v<Held<A>, double>);
        number_field(Sort::number, field, offset(at));
    }
    template <class A>
    void optional_number(const NumberField& field, A at) {
        static_assert(std::is_same_v<Held<A>, std::optional<double>>);
        number_field(Sort::optional_number, field, offset(at));
    }
    template <class A>
    void ordinal(const NumberField& field, A at) {
        static_assert(std::is_same_v<Held<A>, std::optional<int>>);
        number_field(Sort::ordinal, field, offset(at));
    }

    template <class A>
    void text(const TextField& field, A at) {
        static_assert(std::is_same_v<Held<A>, std::string>);
        Field& added = add(Sort::text, field.key, offset(at));
        added.called = field.called;
        added.lines = field.lines;
    }
    template <class A>
    void wood(std::string_view key, A at) {
        static_assert(std::is_same_v<Held<A>, std::string>);
        add(Sort::wood, key, offset(at)).called = key;
    }
    template <class A>
    void material(std::string_view key, materials::Use use, A at) {
        static_assert(std::is_same_v<Held<A>, std::string>);
        Field& added = add(Sort::material, key, offset(at));
        added.called = key;
        added.use = use;
    }

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        static_assert(std::is_enum_v<Held<A>> && sizeof(Held<A>) == sizeof(int));
        Field& added = add(Sort::choice, key, offset(at));
        for (const auto& word : words)
            added.words.push_back({word.word, static_cast<std::size_t>(word.value)});
    }
    template <class A>
    void yes_no(std::string_view key, A at) {
        static_assert(std::is_same_v<Held<A>, bool>);
        add(Sort::yes_no, key, offset(at));
    }
    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        Field& added = add(Sort::flags, key, 0);
        for (const auto& flag : all)
            added.words.push_back({flag.word, offset(flag.member)});
    }

    template <class A, class B>
    void exactly_one(const NumberField& field_a, A a, const NumberField& field_b, B b) {
        static_assert(std::is_same_v<Held<A>, std::optional<double>> &&
                      std::is_same_v<Held<B>, std::optional<double>>);
        two_numbers(Sort::exactly_one, field_a, offset(a), field_b, offset(b));
    }
    template <class A, class B, class W, class E>
    void either(const NumberField& field_a, A a, E word_a, const NumberField& field_b, B b, E word_b,
                W which) {
        static_assert(std::is_same_v<Held<A>, double> && std::is_same_v<Held<B>, double> &&
                      sizeof(Held<W>) == sizeof(int));
        Field& added = two_numbers(Sort::either, field_a, offset(a), field_b, offset(b));
        added.which_offset = offset(which);
        added.which_first = static_cast<int>(word_a);
        added.which_second = static_cast<int>(word_b);
    }

    template <class A>
    void number_or_points(const PointsField& field, A at) {
        points(field, at, &CurvePoint::x_m, &CurvePoint::value);
        table_.fields.back().sort = Sort::number_or_points;
    }
    template <class A, class F, class S>
    void points(const PointsField& field, A at, F first, S second) {
        using Point = typename Held<A>::value_type;
        Field& added = add(Sort::points, field.key, offset(at));
        added.called = field.called;
        added.number = field.first;
        added.second = field.second;
        added.first_offset = within(defaults<Point>(), first);
        added.second_offset = within(defaults<Point>(), second);
        added.min_count = field.min_count;
        added.max_count = max_curve_points;
        added.required = field.required;
        added.entries = entries_of(Held<A>{});
    }

    template <class A>
    void object(std::string_view key, std::string_view subject, A at, bool required = false) {
        Field& added = add(Sort::object, key, offset(at));
        added.called = subject;
        added.required = required;
        added.inner = &table_of<Held<A>>;
    }
    template <class A>
    void optional_object(std::string_view key, std::string_view called, A at) {
        Field& added = add(Sort::optional_object, key, offset(at));
        added.called = called;
        added.inner = &table_of<typename Held<A>::value_type>;
        added.entries = entries_of(Held<A>{});
    }
    template <class A>
    void list(const ListField& field, A at) {
        list_field(Sort::list, field, offset(at));
        Field& added = table_.fields.back();
        added.inner = &table_of<typename Held<A>::value_type>;
        added.entries = entries_of(Held<A>{});
    }
    template <class A>
    void names(const ListField& field, A at) {
        static_assert(std::is_same_v<Held<A>, std::vector<std::string>>);
        list_field(Sort::names, field, offset(at));
        table_.fields.back().required = true;
    }

private:
    template <class A>
    using Held = std::decay_t<std::invoke_result_t<A, const T&>>;

    template <class U, class A>
    static std::size_t within(const U& object, A at) {
        return static_cast<std::size_t>(reinterpret_cast<const std::byte*>(&std::invoke(at, object)) -
                                        reinterpret_cast<const std::byte*>(&object));
    }
    template <class A>
    static std::size_t offset(A at) {
        return within(defaults<T>(), at);
    }
};

template <class T>
const Table& table_of() {
    static const Table table = [] {
        Table made;
        made.defaults = &defaults<T>();
        Recorder<T> recorder(made);
        describe(recorder, Of<T>{});
        return made;
    }();
    return table;
}

} // namespace

const Table& document_table() {
    return table_of<Document>();
}
const Table& reading_table() {
    return table_of<Reading>();
}

std::string_view word_of(const Field& field, int value) {
    for (const FieldWord& word : field.words) {
        if (static_cast<int>(word.value) == value) return word.word;
    }
    return {};
}

} // namespace evenfall::document
