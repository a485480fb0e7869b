# What every target of ours is built with, and how a room of the house is declared.

add_library(gw_options INTERFACE)
target_include_directories(gw_options INTERFACE "${PROJECT_SOURCE_DIR}/src")
target_compile_options(gw_options INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion
    $<$<BOOL:${GW_WERROR}>:-Werror>)
target_compile_definitions(gw_options INTERFACE
    QT_NO_CAST_FROM_ASCII QT_NO_KEYWORDS QT_NO_NARROWING_CONVERSIONS_IN_CONNECT
    QT_NO_FOREACH QT_DISABLE_DEPRECATED_BEFORE=0x060400)
if(GW_SANITIZE)
    target_compile_options(gw_options INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
    target_link_options(gw_options INTERFACE -fsanitize=address,undefined)
endif()
if(GW_MOLD)
    target_link_options(gw_options INTERFACE -fuse-ld=mold)
endif()

# gw_room(NAME [PURE] SOURCES ... [USES room ...] [PRIVATE lib ...] [PUBLIC lib ...])
# One static library per room. A room links only the rooms it may include, so the linker keeps the floors honest.
# PURE rooms see no Qt at all.
function(gw_room name)
    cmake_parse_arguments(ROOM "PURE" "" "SOURCES;USES;PRIVATE;PUBLIC" ${ARGN})
    add_library(gw_${name} STATIC ${ROOM_SOURCES})
    target_link_libraries(gw_${name} PUBLIC gw_options ${ROOM_PUBLIC} PRIVATE ${ROOM_PRIVATE})
    foreach(used IN LISTS ROOM_USES)
        target_link_libraries(gw_${name} PUBLIC gw_${used})
    endforeach()
    if(ROOM_PURE)
        set_target_properties(gw_${name} PROPERTIES AUTOMOC OFF AUTOUIC OFF AUTORCC OFF)
    endif()
endfunction()
