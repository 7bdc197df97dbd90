#include "document/json_text.hpp"

#include "document/fields.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::document {
namespace {

std::string quoted(const std::string& text) {
    return Tree(text).dump(-1, ' ', false, Tree::error_handler_t::replace);
}

std::string scalar(const Tree& tree) {
    if (tree.is_string()) return quoted(tree.get_ref<const std::string&>());
    if (tree.is_number_float()) {
        const double value = tree.get<double>();
        return std::isfinite(value) ? plain_number(value) : "null";
    }
    return tree.dump();
}

/// One line; `gap` stands after commas and colons.
std::string one_line(const Tree& tree, const char* gap) {
    if (!tree.is_structured()) return scalar(tree);
    std::string text(1, tree.is_object() ? '{' : '[');
    bool first = true;
    for (const auto& [key, value] : tree.items()) {
        if (!first) text.append(",").append(gap);
        first = false;
        if (tree.is_object()) text.append(quoted(key)).append(":").append(gap);
        text += one_line(value, gap);
    }
    return text + (tree.is_object() ? '}' : ']');
}

bool holds_objects(const Tree& list) {
    return std::any_of(list.begin(), list.end(), [](const Tree& entry) { return entry.is_object(); });
}

/// `column` is where the value starts, so that the width counts the key before it.
std::string laid_out(const Tree& tree, std::size_t indent, std::size_t column, std::size_t width) {
    std::string line = one_line(tree, " ");
    if (!tree.is_structured() || (indent > 0 && column + line.size() < width)) return line;
    const std::string margin(indent + 2, ' ');
    std::string text(1, tree.is_object() ? '{' : '[');
    const bool fill = tree.is_array() && !holds_objects(tree);
    std::size_t at = width;
    bool first = true;
    for (const auto& [key, value] : tree.items()) {
        if (!first) text += ',';
        first = false;
        const std::string head = tree.is_object() ? quoted(key) + ": " : std::string();
        const std::string body = laid_out(value, indent + 2, indent + 2 + head.size(), width);
        if (fill && at + body.size() + 3 < width) {
            text += ' ';
            at += 1;
        } else {
            text.append("\n").append(margin);
            at = margin.size();
        }
        text.append(head).append(body);
        at += body.size() + 1;
    }
    return text + '\n' + std::string(indent, ' ') + (tree.is_object() ? '}' : ']');
}

} // namespace

std::string compact_text(const Tree& tree) {
    return one_line(tree, "");
}

std::string laid_out_text(const Tree& tree, std::size_t width) {
    return laid_out(tree, 0, 0, width) + '\n';
}

} // namespace evenfall::document
