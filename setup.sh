#!/usr/bin/env bash
# Sets up and starts Gluewright on Debian 12 or newer.
#   ./setup.sh run  [arguments]   installs what is missing, builds, opens the window (or answers in the terminal)
#   ./setup.sh test [--quick]     installs what is missing, builds, and runs every check
# Both may be run again at any time; what is there already is left alone.
set -euo pipefail
cd "$(dirname "$0")"

# What it takes to build and run, and what only the checks take besides. DEVELOPERS.md gives the reason for each.
build_packages="
    cmake ninja-build g++ ccache
    qt6-base-dev qt6-declarative-dev qt6-declarative-dev-tools qt6-multimedia-dev qt6-svg-dev
    libzxing-dev libzbar-dev libzint-dev libexpected-dev libboost-dev libcli11-dev libcsv-dev libical-dev libpq-dev
    libsqlite3-dev"
run_packages="
    libqt6sql6-sqlite libqt6sql6-psql libqt6printsupport6 qt6-qpa-plugins
    qml6-module-qt-labs-folderlistmodel qml6-module-qtcharts qml6-module-qtqml qml6-module-qtqml-models qml6-module-qtqml-workerscript qml6-module-qtcore
    qml6-module-qtquick qml6-module-qtquick-controls qml6-module-qtquick-dialogs qml6-module-qtquick-layouts
    qml6-module-qtquick-shapes qml6-module-qtquick-templates qml6-module-qtquick-window qml6-module-qtmultimedia
    gstreamer1.0-gl gstreamer1.0-plugins-base gstreamer1.0-plugins-good libgl1-mesa-dri fonts-inter"
test_packages="
    qml6-module-qttest postgresql xvfb xauth xdotool imagemagick gstreamer1.0-tools
    clang-format-19 clang-tidy-19 clang-tools-19 clang-19 libclang-rt-19-dev
    python3-stdnum poppler-utils git"

# Debian 12 has it within another package.
. /etc/os-release
case "${VERSION_ID:-13}" in
12*) ;;
*) run_packages="$run_packages qt6-svg-plugins" ;;
esac

say() { printf '\n== %s\n' "$*"; }
stop() { printf '%s\n' "$*" >&2; exit 1; }

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null 2>&1; then
        sudo "$@"
    else
        stop "Installing packages needs root: run this once as root, or install sudo."
    fi
}

missing_packages() {
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q '^install ok installed$' || printf '%s ' "$package"
    done
}

install_missing() {
    command -v apt-get >/dev/null 2>&1 || stop "This sets up Debian 12 or newer; there is no apt-get here."
    local missing
    missing=$(missing_packages "$@")
    if [ -z "${missing// /}" ]; then
        say "Every package is there."
        return
    fi
    say "Installing: $missing"
    local log
    log=$(mktemp)
    if ! as_root apt-get update >"$log" 2>&1 || grep -qE '^(W|Err|E):.*(Failed to fetch|Could not resolve|Temporary failure)' "$log"; then
        cat "$log" >&2
        rm -f "$log"
        stop "Debian's package lists could not be fetched: is this machine offline? Connect it and run this again."
    fi
    rm -f "$log"
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $missing ||
        stop "Some packages could not be installed (see above): is this machine offline, or is another installation running? Run this again then."
}

# The second symbol engine is packaged for Qt 5 only, so its source comes from the distribution's own archive, by
# lists, caches and settings that lie in build/ alone: the machine's apt is left as it is. apt checks the archive's
# signature with the distribution's keyring and the source against it. The program works without.
fetch_qzxing() {
    local place="$PWD/build/qzxing"
    local source="$place/source"
    if [ -f "$source/src/zxing/zxing/MultiFormatReader.cpp" ]; then
        return
    fi
    say "Fetching the source of QZXing"
    local keyring=/usr/share/keyrings/debian-archive-keyring.gpg
    rm -rf "$place"
    mkdir -p "$place/lists/partial" "$place/cache/archives/partial" "$place/unpacked"
    printf 'deb-src [signed-by=%s] http://deb.debian.org/debian %s main\n' "$keyring" "${VERSION_CODENAME:-trixie}" >"$place/sources.list"
    local apt=(apt-get -q -o Dir::Etc::SourceList="$place/sources.list" -o Dir::Etc::SourceParts=-
        -o Dir::State::Lists="$place/lists" -o Dir::Cache="$place/cache" -o Debug::NoLocking=true
        -o APT::Sandbox::User= -o Acquire::Retries=1 -o Acquire::http::Timeout=20)
    if ! { "${apt[@]}" update && cd "$place" && "${apt[@]}" source --download-only --tar-only qzxing; } >"$place/log" 2>&1 ||
        ! tar -xf "$place"/qzxing_*.orig.tar.* -C "$place/unpacked" --strip-components=1 2>>"$place/log"; then
        cd "$(dirname "$place")/.."
        say "QZXing could not be fetched (build/qzxing/log says why), so symbols are read without it; run this again when the machine is online."
        return
    fi
    mv "$place/unpacked" "$source"
    rm -rf "$place/lists" "$place/cache"
    cd "$(dirname "$place")/.."
}

build() { # build PRESET
    say "Configuring ($1)"
    cmake --preset "$1" >/dev/null || stop "The build could not be configured; see the message above."
    say "Building ($1)"
    cmake --build --preset "$1" || stop "The build failed; see the message above."
}

has_display() {
    [ -n "${DISPLAY:-}" ] || [ -n "${WAYLAND_DISPLAY:-}" ] || [ -n "${QT_QPA_PLATFORM:-}" ]
}

run() {
    # shellcheck disable=SC2086
    install_missing $build_packages $run_packages
    fetch_qzxing
    build release
    if has_display; then
        say "Opening the window"
    fi
    exec build/release/gluewright "$@"
}

check_format() {
    say "Format"
    git ls-files -co --exclude-standard '*.cpp' '*.h' | xargs clang-format-19 --dry-run --Werror ||
        stop "Some files are not formatted; run: git ls-files '*.cpp' '*.h' | xargs clang-format-19 -i"
}

check_qml() {
    say "QML lint"
    # That of Qt 6.4 itself crashes about once in ten, over the same files that it passes: a crash tells nothing of
    # them, so it is asked again. What it finds is never asked twice.
    local log=build/check/qmllint.log
    for _ in 1 2 3 4 5; do
        if cmake --build --preset qmllint >"$log" 2>&1; then
            return
        fi
        grep -q 'Segmentation fault' "$log" || break
    done
    cat "$log" >&2
    stop "qmllint found something, or crashed every time; see above."
}

check_tidy() {
    say "clang-tidy"
    run-clang-tidy-19 -quiet -p build/check "^$PWD/src/.*\.cpp\$" >build/check/tidy.log 2>&1 || {
        grep -E 'warning:|error:' -A3 build/check/tidy.log >&2
        stop "clang-tidy found something; see above, or build/check/tidy.log."
    }
}

run_tests() {
    # shellcheck disable=SC2086
    install_missing $build_packages $run_packages $test_packages
    fetch_qzxing
    check_format
    build check
    check_qml
    say "Tests"
    ctest --preset check || stop "Some tests failed; see above."
    if [ "${1:-}" != "--quick" ]; then
        check_tidy
    fi
    say "Everything passes."
}

case "${1:-}" in
run)
    shift
    run "$@"
    ;;
test)
    shift
    run_tests "$@"
    ;;
*)
    printf 'Usage: %s run [arguments] | test [--quick]\n' "$0" >&2
    exit 2
    ;;
esac
