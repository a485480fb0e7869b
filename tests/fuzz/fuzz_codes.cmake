gw_add_fuzzer(codes
    SOURCES
        src/codes/applicationidentifiers.cpp src/codes/associations.cpp src/codes/code.cpp src/codes/digitallink.cpp
        src/codes/elementcheck.cpp src/codes/elementmeaning.cpp src/codes/elementstring.cpp src/codes/gtin.cpp
        src/codes/labeldate.cpp src/codes/lotdate.cpp src/codes/ownlabel.cpp
        src/measure/amount.cpp src/measure/amountformat.cpp src/measure/moment.cpp src/measure/number.cpp
        src/measure/quoted.cpp)
