# Toolchain of the page: Emscripten, in the folder that web/setup/emscripten.sh prints. "web/setup/libs.sh web"
# writes it into its list.
if(NOT EVENFALL_EMSCRIPTEN)
    message(FATAL_ERROR "EVENFALL_EMSCRIPTEN names no folder of Emscripten. Run web/setup/libs.sh web once.")
endif()
list(APPEND CMAKE_TRY_COMPILE_PLATFORM_VARIABLES EVENFALL_EMSCRIPTEN)
include("${EVENFALL_EMSCRIPTEN}/cmake/Modules/Platform/Emscripten.cmake")
