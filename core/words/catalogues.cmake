# Writes OUT, a source file with each catalogue of FOLDER as bytes.
file(GLOB catalogues "${FOLDER}/*.po")
list(SORT catalogues)
set(arrays "")
set(list "")
foreach(file IN LISTS catalogues)
    get_filename_component(code "${file}" NAME_WE)
    file(STRINGS "${file}" name REGEX "X-Name:" LIMIT_COUNT 1 ENCODING UTF-8)
    string(REGEX REPLACE ".*X-Name: *(.*)\\\\n.*" "\\1" name "${name}")
    file(READ "${file}" hex HEX)
    string(REGEX REPLACE "(..)" "0x\\1," bytes "${hex}")
    string(REGEX REPLACE "(................................................................................)" "\\1\n" bytes "${bytes}")
    string(APPEND arrays "constexpr unsigned char bytes_${code}[] = {\n${bytes}0};\n")
    string(APPEND list "    Catalogue{\"${code}\", \"${name}\", {reinterpret_cast<const char*>(bytes_${code}), sizeof bytes_${code} - 1}},\n")
endforeach()
list(LENGTH catalogues count)
file(WRITE "${OUT}" "#include \"words/catalogues.hpp\"

#include <array>

namespace evenfall::words {

namespace {
${arrays}} // namespace

std::span<const Catalogue> catalogues() {
    static const std::array<Catalogue, ${count}> all{
${list}    };
    return all;
}

} // namespace evenfall::words
")
