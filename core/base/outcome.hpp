#pragma once

#include "base/problem.hpp"

#include <cassert>
#include <utility>
#include <variant>

namespace evenfall {

/// A value, or the problems that prevented it (at least one). Check ok() before taking the value.
template <class T>
class [[nodiscard]] Outcome {
public:
    Outcome(T value) : held_(std::move(value)) {}
    Outcome(Problem problem) : held_(Problems{std::move(problem)}) {}
    Outcome(Problems problems) : held_(std::move(problems)) { assert(!std::get<Problems>(held_).empty()); }

    [[nodiscard]] bool ok() const { return std::holds_alternative<T>(held_); }
    explicit operator bool() const { return ok(); }

    [[nodiscard]] const T& value() const& { return std::get<T>(held_); }
    [[nodiscard]] T& value() & { return std::get<T>(held_); }
    [[nodiscard]] T&& value() && { return std::get<T>(std::move(held_)); }
    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

    [[nodiscard]] const Problems& problems() const { return std::get<Problems>(held_); }

private:
    std::variant<T, Problems> held_;
};

} // namespace evenfall
