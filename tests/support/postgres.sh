#!/bin/sh
# A PostgreSQL cluster of the test run's own, in a folder for temporary files, reached through a socket in it.
# postgres.sh start|stop RECORD
# RECORD is the file that tells the tests the folder of the socket; it lives as long as the cluster.
set -eu

record=$2

# The newest server there is; Debian keeps its programs off the path.
bin=$(for d in /usr/lib/postgresql/*/bin; do [ -x "$d/initdb" ] && echo "$d"; done | sort -V | tail -n 1)
[ -n "$bin" ] || bin=$(dirname "$(command -v initdb || echo /nowhere/initdb)")
if [ ! -x "$bin/initdb" ]; then
    echo "The PostgreSQL server is not installed; the tests need it (Debian: postgresql)." >&2
    exit 1
fi

# The server refuses to run as root.
as_server() {
    if [ "$(id -u)" -ne 0 ]; then
        "$@"
    elif getent passwd postgres >/dev/null; then
        runuser -u postgres -- "$@"
    else
        runuser -u nobody -- "$@"
    fi
}

stop() {
    [ -f "$record" ] || return 0
    folder=$(cat "$record")
    rm -f "$record"
    case $folder in */gluewright-postgres.*) ;; *) return 0 ;; esac
    [ -d "$folder" ] || return 0
    (cd "$folder" && as_server "$bin/pg_ctl" -D "$folder/data" -m immediate -w stop >/dev/null 2>&1) || true
    rm -rf "$folder"
}

start() {
    stop
    mkdir -p "$(dirname "$record")"
    folder=$(mktemp -d "${TMPDIR:-/tmp}/gluewright-postgres.XXXXXX")
    echo "$folder" >"$record"
    cd "$folder"
    if [ "$(id -u)" -eq 0 ]; then
        if getent passwd postgres >/dev/null; then chown postgres "$folder"; else chown nobody "$folder"; fi
        chmod 755 "$folder"
    fi
    as_server "$bin/initdb" -D data -U gluewright -E UTF8 --locale=C.UTF-8 -A trust --no-sync --wal-segsize=1 >initdb.log 2>&1 ||
        { cat initdb.log >&2; exit 1; }
    # One user has to show a password, so that the tests can show a wrong one.
    printf 'local all clerk scram-sha-256\nlocal all all trust\n' >data/pg_hba.conf
    # Nothing here has to outlive a power cut.
    cat >>data/postgresql.conf <<EOF
listen_addresses = ''
unix_socket_directories = '$folder'
port = 5432
max_connections = 60
shared_buffers = 16MB
fsync = off
synchronous_commit = off
full_page_writes = off
min_wal_size = 2MB
max_wal_size = 64MB
lc_messages = 'C'
EOF
    as_server "$bin/pg_ctl" -D data -l server.log -w -t 60 start >start.log 2>&1 ||
        { cat start.log server.log >&2; exit 1; }
}

case $1 in
start) start ;;
stop) stop ;;
*) echo "postgres.sh start|stop RECORD" >&2; exit 2 ;;
esac
