#!/usr/bin/env bash
# From an empty folder to a checked, wired and fused bike with its cut list, in eight commands. The bike is the example of
# 'new'; its wire sizes are taken out as a builder with no wire yet would leave them. What is written goes into FOLDER, or
# without one into a folder that is removed again:
#   shared/first-loom.sh [FOLDER]
# Ends with 2 where a command finds anything against the bike. LIGHTING_CALC names an installed command to use instead of
# this repository's.
set -Eeuo pipefail
trap 'exit 2' ERR
cd "$(dirname "$0")/.."
if [[ $# -gt 0 ]]; then
    mkdir -p "$1"
    folder=$(cd "$1" && pwd)
else
    folder=$(mktemp -d)
    trap 'rm -rf "$folder"' EXIT
fi
lighting() {
    echo "> lighting-calc $*"
    if [[ -n "${LIGHTING_CALC:-}" ]]; then $LIGHTING_CALC "$@"; else dotnet run --project Lighting.Calc.Cli -- "$@"; fi
}

lighting new "$folder/bike" --volts 12 --supply battery --fuses one --indicators yes
# The fourth column of runs.csv is the wire.
sed -i.old -E '2,$ s/^(([^,]*,){3})[^,]*,/\1,/' "$folder/bike/runs.csv"
rm "$folder/bike/runs.csv.old"
lighting wire "$folder/bike" --stock "1 mm2, 2 mm2, 3 mm2" --lists "$folder/wired"
lighting fuse "$folder/wired" --ways 4 --lists "$folder/fused"
lighting check "$folder/fused"
lighting drop "$folder/fused" --relay "headlamp high" --lists "$folder/relayed"
lighting check "$folder/relayed"
lighting loom "$folder/relayed"
lighting loom "$folder/relayed" --format html --out "$folder/loom.html"
