#!/bin/sh
# labelvideo.sh PICTURE.png VIDEO.webm|VIDEO.avi [SECONDS]: a short video that shows a still picture, made with GStreamer.
set -eu
picture=$1
video=$2
frames=$((${3:-2} * 10))
case $video in
*.webm) how="vp8enc deadline=1 ! webmmux" ;;
*.avi) how="jpegenc ! avimux" ;;
*) echo "labelvideo.sh: the video is to end in .webm or .avi" >&2; exit 2 ;;
esac
# $how is two elements and is meant to split.
exec gst-launch-1.0 -q filesrc location="$picture" ! pngdec ! imagefreeze num-buffers="$frames" \
    ! videoconvert ! video/x-raw,format=I420,framerate=10/1 ! $how ! filesink location="$video"
