#!/bin/sh
# Start to ready, memory and work at rest of the service, as the figures in service.md are taken:
#   src/package/measure.sh rainward
#   src/package/measure.sh java -jar target/rainward.jar
# Linux only. The invented crew, a page nobody looks at and weather nobody answers; IDLE_S seconds
# of rest (60). Wall time is worth something on a quiet machine only; work done is, on any.
set -e
HOME_DIR=$(mktemp -d)
# The installed command would work as the service's user on its data.
export RAINWARD_HOME="$HOME_DIR"
trap 'rm -rf "$HOME_DIR"' EXIT
IDLE_S=${IDLE_S:-60}
TICKS=$(getconf CLK_TCK)
{
    cat config/demo.toml
    printf '\n[board]\nport = %s\n' "${PORT:-18641}"
    printf '\n[weather.address]\nnws = "http://localhost:9"\nacis = "http://localhost:9"\n'
    printf 'met_norway = "http://localhost:9"\n'
} > "$HOME_DIR/rainward.toml"
"$@" import config/demo-fields.geojson --home "$HOME_DIR" > /dev/null

work_ms() { # of a process so far, its children left out
    sed 's/.*) //' "/proc/$1/stat" | awk -v ticks="$TICKS" '{ print ($12 + $13) * 1000 / ticks }'
}
now_ms() { date +%s%3N; }

: > "$HOME_DIR/out"
began=$(now_ms)
"$@" run --home "$HOME_DIR" > "$HOME_DIR/out" 2>&1 &
service=$!
until grep -q '^Ready' "$HOME_DIR/out"; do
    kill -0 "$service" 2> /dev/null || { cat "$HOME_DIR/out"; exit 1; }
    sleep 0.02
done
echo "start to ready      $(($(now_ms) - began)) ms"
# A launcher may have started the program as its child.
child=$(cat "/proc/$service/task/$service/children")
[ -z "$child" ] || service=${child%% *}
echo "work until ready    $(work_ms "$service") ms of a core"
sleep 45
before=$(work_ms "$service")
sleep "$IDLE_S"
after=$(work_ms "$service")
echo "work at rest        $(echo "$before $after $IDLE_S" |
    awk '{ printf "%.2f", ($2 - $1) / 10 / $3 }') % of a core over $IDLE_S s"
awk '/^VmRSS|^VmHWM|^Threads/ { print "at rest             " $0 }' "/proc/$service/status"
kill "$service"
wait 2> /dev/null || true
