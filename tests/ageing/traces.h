#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "ageing/trace.h"

// Made-up readings for the tests of climates.
namespace gw::test {

struct Weathermaker {
    std::mt19937 engine;

    double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine); }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine); }

    /// Every ten minutes or so for so many days: days and nights, weather, and now and then a gap of up to
    /// two days.
    std::vector<Reading> readings(Moment start, double days, int oneGapIn = 300)
    {
        std::vector<Reading> all;
        const double mean = real(5, 24);
        const double swing = real(0, 9);
        double weather = 0;
        for (double day = 0; day < days;) {
            const double temperature = mean + swing * std::sin(day * 6.283185307) + weather;
            all.push_back({ later(start, Days { day }), { std::round(temperature * 10) / 10 }, {} });
            weather += real(-0.3, 0.3) - weather / 50;
            day += whole(1, oneGapIn) == 1 ? real(0.3, 2) : whole(1, 12) * 10 / 1440.0;
        }
        return all;
    }
};

} // namespace gw::test
