#pragma once

// The field table as data: what preset/field_table.hpp says of a struct, in a form that one plain function
// can walk, whatever the struct. Reader, writer, check and schema are such functions; they reach a field's
// value by its place in the struct.

#include "document/fields.hpp"
#include "materials/solids.hpp"

#include <cstddef>
#include <cstring>
#include <string_view>
#include <vector>

namespace evenfall::document {

/// What lies at `Field::offset`.
enum class Sort {
    version,         ///< nothing: the document's version, which is in the JSON form only
    number,          ///< double
    optional_number, ///< std::optional<double>
    ordinal,         ///< std::optional<int>, counted from 0 here and from 1 in the JSON form
    text,            ///< std::string
    wood,            ///< std::string, an id
    material,        ///< std::string, an id
    choice,          ///< an enumeration of int's size
    yes_no,          ///< bool
    flags,           ///< nothing: the bools lie where `words` say
    exactly_one,     ///< std::optional<double>, and another at `second_offset`
    either, ///< double, another at `second_offset`, and at `which_offset` an enumeration that says which
            ///< counts
    number_or_points, ///< a list of points; one point at 0 is written as a number
    points,           ///< a list of points
    object,           ///< a struct
    optional_object,  ///< std::optional of a struct
    list,             ///< std::vector of structs
    names,            ///< std::vector<std::string>
};

struct Table;

/// How to reach what a list holds; an optional is a list of none or one.
struct Entries {
    std::size_t (*count)(const void* list) = nullptr;
    void* (*entry)(void* list, std::size_t index) = nullptr;
    void (*resize)(void* list, std::size_t count) = nullptr; ///< new entries are as the struct's defaults
};

/// A word of a choice with the enumeration's value, or of flags with the bool's place.
struct FieldWord {
    std::string_view word;
    std::size_t value = 0;
};

struct Field {
    Sort sort = Sort::number;
    std::string_view key;
    std::size_t offset = 0;
    NumberField number; ///< of points: the first coordinate
    NumberField second; ///< of exactly_one and either the other number, of points the second coordinate
    std::size_t second_offset = 0; ///< see Sort; of points: the second coordinate's place within a point
    std::size_t first_offset = 0;  ///< of points: the first one's
    std::size_t which_offset = 0;
    int which_first = 0; ///< of either: the enumeration's value for the first number
    int which_second = 0;
    std::string_view called; ///< texts, points, objects, lists (the name of one entry)
    std::string_view many;   ///< lists
    std::size_t min_count = 0;
    std::size_t max_count = 0;
    bool lines = false;
    bool required = false;
    int version = 0;
    materials::Use use = materials::Use::part;
    std::vector<FieldWord> words;
    Entries entries;
    const Table& (*inner)() = nullptr; ///< of what object, optional_object and list hold
};

struct Table {
    std::vector<Field> fields;      ///< in the order of the JSON form
    const void* defaults = nullptr; ///< the struct as it is without any key
};

[[nodiscard]] const Table& document_table();
[[nodiscard]] const Table& reading_table();

/// The value at a place of a struct; its type is what Sort says.
template <class X>
[[nodiscard]] const X& value_at(const void* object, std::size_t offset) {
    return *reinterpret_cast<const X*>(static_cast<const std::byte*>(object) + offset);
}
template <class X>
[[nodiscard]] X& value_at(void* object, std::size_t offset) {
    return *reinterpret_cast<X*>(static_cast<std::byte*>(object) + offset);
}
inline const void* place_at(const void* object, std::size_t offset) {
    return static_cast<const std::byte*>(object) + offset;
}
inline void* place_at(void* object, std::size_t offset) {
    return static_cast<std::byte*>(object) + offset;
}

/// An enumeration's value as a number.
[[nodiscard]] inline int choice_at(const void* object, std::size_t offset) {
    int value = 0;
    std::memcpy(&value, place_at(object, offset), sizeof value);
    return value;
}
inline void set_choice(void* object, std::size_t offset, int value) {
    std::memcpy(place_at(object, offset), &value, sizeof value);
}

/// The word that stands for a choice's value; empty where there is none.
[[nodiscard]] std::string_view word_of(const Field& field, int value);

/// Entries of a list that is only looked at.
[[nodiscard]] inline const void* entry_of(const Field& field, const void* object, std::size_t index) {
    return field.entries.entry(const_cast<void*>(place_at(object, field.offset)), index);
}
[[nodiscard]] inline std::size_t count_of(const Field& field, const void* object) {
    return field.entries.count(place_at(object, field.offset));
}

} // namespace evenfall::document
