# find_package(evenfall) gives the target evenfall::core: link it and include <evenfall.hpp>.
foreach(name zlib qr)
    if(NOT TARGET evenfall_${name})
        add_library(evenfall_${name} STATIC IMPORTED)
        set_target_properties(evenfall_${name} PROPERTIES
            IMPORTED_LOCATION "${CMAKE_CURRENT_LIST_DIR}/../../libevenfall_${name}.a")
    endif()
endforeach()
include("${CMAKE_CURRENT_LIST_DIR}/evenfall_core.cmake")
