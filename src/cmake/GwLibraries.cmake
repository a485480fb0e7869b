# Libraries that ship neither a CMake package nor a pkg-config file.

# gw_library(TARGET HEADER LIBRARY PACKAGE): an imported target from a header and a library file.
function(gw_library target header library package)
    find_path(${target}_INCLUDE ${header})
    find_library(${target}_LIBRARY ${library})
    if(NOT ${target}_INCLUDE OR NOT ${target}_LIBRARY)
        message(FATAL_ERROR "${header} or lib${library} is missing (Debian: ${package})")
    endif()
    add_library(${target} UNKNOWN IMPORTED GLOBAL)
    set_target_properties(${target} PROPERTIES
        IMPORTED_LOCATION "${${target}_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${${target}_INCLUDE}")
endfunction()

gw_library(gw_csv csv.h csv libcsv-dev)
gw_library(gw_zint zint.h zint libzint-dev)
gw_library(gw_zbar zbar.h zbar libzbar-dev)
gw_library(gw_ical libical/ical.h ical libical-dev)
