# QZXing is taken as it was built for the program: what it does to memory of its own is seen only where it crashes.
# Beside the other compiler's sanitizers it cannot stand.
set(gw_fuzz_qzxing)
set(gw_fuzz_qzxing_folders)
set(gw_fuzz_qzxing_defines)
if(TARGET gw_qzxing AND NOT GW_SANITIZE)
    set(gw_fuzz_qzxing $<TARGET_FILE:gw_qzxing>)
    get_target_property(gw_fuzz_qzxing_folders gw_qzxing INTERFACE_INCLUDE_DIRECTORIES)
    get_target_property(gw_fuzz_qzxing_defines gw_qzxing INTERFACE_COMPILE_DEFINITIONS)
    list(APPEND gw_fuzz_qzxing_defines GW_WITH_QZXING)
endif()
gw_add_fuzzer(pictures
    SOURCES
        src/scan/abortguard.cpp src/scan/ballot.cpp src/scan/closelook.cpp src/scan/closer.cpp
        src/scan/databartext.cpp src/scan/enginereader.cpp src/scan/finding.cpp src/scan/look.cpp
        src/scan/picturefile.cpp src/scan/plausible.cpp src/scan/qzxingengine.cpp src/scan/region.cpp
        src/scan/zbarengine.cpp src/scan/zxingengine.cpp src/codes/gtin.cpp src/measure/number.cpp
        src/measure/quoted.cpp
    MODULES Core Gui
    DEFINES ${gw_fuzz_qzxing_defines}
    INCLUDES ${gw_fuzz_qzxing_folders}
    LIBRARIES ${gw_fuzz_qzxing} $<TARGET_FILE:ZXing::ZXing> ${gw_zbar_LIBRARY})
