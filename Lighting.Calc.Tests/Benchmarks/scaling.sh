#!/usr/bin/env bash
# Rows a second of `check` on many bikes, each wired its own way, by the number of cores: in one process, and in as many
# processes of one core each, which share nothing but the machine: what these lose is the machine's own.
# scaling.sh PROGRAM [COUNT [FOLDER]]. PROGRAM is the published command; FOLDER is filled with COUNT bikes unless it is there.
# The rows must be the same bytes each time. Needs taskset (util-linux); the bikes are read once before, so that no disk is measured.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
program=$(realpath "${1:?the published command}")
count=${2:-10000}
bikes=${3:-$(mktemp -d)/bikes}
rows=$(mktemp -d)
trap 'rm -rf "$rows"' EXIT
[ -d "$bikes" ] || dotnet run -c Release --project "$here" -- bikes "$bikes" "$count" 1 apart
count=$(find "$bikes" -mindepth 1 -maxdepth 1 -type d | wc -l)

# Exit status 1 says that some bike does not suit.
rows_of() { "$program" check "$bikes" --format csv "$@" || (($? == 1)); }

# seconds CORES COMMAND...: on so many cores, which is how many the command finds.
seconds() {
    local cores=$1 start
    shift
    start=$(date +%s.%N)
    DOTNET_PROCESSOR_COUNT=$cores taskset -c "0-$((cores - 1))" bash -c "$*"
    awk -v start="$start" -v end="$(date +%s.%N)" 'BEGIN { print end - start }'
}

# apart COUNT: so many processes at once, each with a core and a share of the bikes of its own.
apart() {
    local shard
    for ((shard = 1; shard <= $1; shard++)); do
        DOTNET_PROCESSOR_COUNT=1 taskset -c "$((shard - 1))" bash -c "rows_of --shard $shard/$1 >\"$rows/shard-$shard\"" &
    done
    wait
}
export -f rows_of apart
export program bikes rows count

echo "$count bikes, $(nproc) cores, $(awk -F': ' '/model name/ { print $2; exit }' /proc/cpuinfo)"
rows_of >"$rows/first"
report() {
    awk -v what="$1" -v count="$count" -v cores="$2" -v seconds="$3" -v one="${one:-0}" 'BEGIN {
        rate = count / seconds
        printf "%-30s %8.0f bikes a second", what, rate
        if (one > 0) printf ", %5.1f times one core, %3.0f %% of each lost", rate / one, 100 * (1 - rate / one / cores)
        print ""
    }'
}
for cores in 1 2 4 8 16; do
    ((cores <= $(nproc))) || break
    taken=$(seconds "$cores" 'rows_of >"$rows/now"')
    cmp "$rows/first" "$rows/now"
    report "cores: $cores" "$cores" "$taken"
    if ((cores > 1)); then
        taken=$(seconds "$cores" "apart $cores")
        cmp <(sort -u "$rows/first") <(sort -u "$rows"/shard-*)
        report "cores: $cores, a process each" "$cores" "$taken"
        rm "$rows"/shard-*
    fi
    if ((cores == 1)); then one=$(awk -v count="$count" -v taken="$taken" 'BEGIN { print count / taken }'); fi
done

