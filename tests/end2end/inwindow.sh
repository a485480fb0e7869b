#!/usr/bin/env bash
# inwindow.sh PROGRAM [arguments]: runs a program in a real X window, drawn with OpenGL, on an X server of its own that
# nobody sees. The server picks a free display by itself and goes with the program.
set -euo pipefail
folder=$(mktemp -d)
server=
cleanup() {
    [ -z "$server" ] || kill "$server" 2>/dev/null || true
    rm -rf "$folder"
}
trap cleanup EXIT
trap 'exit 143' TERM INT

command -v Xvfb >/dev/null || { echo "inwindow.sh: Xvfb is needed (Debian: xvfb)" >&2; exit 1; }
mkfifo "$folder/display"
Xvfb -displayfd 3 -screen 0 1280x800x24 -nolisten tcp +extension GLX 3>"$folder/display" >"$folder/log" 2>&1 &
server=$!
if ! read -r -t 60 display <"$folder/display"; then
    echo "inwindow.sh: no X server came up:" >&2
    cat "$folder/log" >&2
    exit 1
fi
export DISPLAY=":$display" QT_QPA_PLATFORM=xcb QSG_RHI_BACKEND=opengl LIBGL_ALWAYS_SOFTWARE=1
export XDG_RUNTIME_DIR="$folder"
"$@"
