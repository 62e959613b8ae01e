#!/usr/bin/env bash
# Fuzzes the readers guided by the coverage of their code: fuzz-with-coverage.sh SECONDS [LIST...], each list for so long, one on each processor.
# Needs AFL++ (Debian: afl++). What it finds, and the inputs that reached new code, go to artifacts/fuzz/LIST.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
seconds=${1:?how many seconds for each list}
shift
lists=("$@")
[ $# -gt 0 ] || lists=(bike charging fuses lamps readings ride runs swaps switches)
command -v afl-fuzz >/dev/null || { echo "afl-fuzz is needed: apt-get install afl++" >&2; exit 2; }
cd "$here"
corpus=$PWD/../Lists/Corpus
out=$PWD/../../artifacts/fuzz
dotnet tool restore
rm -rf "$out"
dotnet publish -c Release -o "$out/program" Lighting.Calc.Benchmarks.csproj
dotnet sharpfuzz "$out/program/Lighting.Calc.dll"
# AFL knows nothing of what .NET compiles, and has no say in how the machine writes its core dumps.
export AFL_SKIP_BIN_CHECK=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_SKIP_CPUFREQ=1 AFL_NO_UI=1 corpus out seconds

fuzz() {
  mkdir -p "$out/$1-seeds"
  cp "$corpus"/*-"$1".csv "$out/$1-seeds"
  afl-fuzz -V "$seconds" -t 5000 -m none -i "$out/$1-seeds" -o "$out/$1" -- dotnet "$out/program/Lighting.Calc.Benchmarks.dll" fuzzed "$corpus" "$1.csv" >"$out/$1.log"
  awk -F' *: *' -v list="$1.csv" '{v[$1]=$2} END{print list ": " v["execs_done"] " inputs, " v["corpus_count"] " kept, " v["edges_found"] " edges, " v["saved_crashes"] " crashes, " v["saved_hangs"] " hangs"; exit v["saved_crashes"] + v["saved_hangs"] > 0}' "$out/$1/default/fuzzer_stats"
}
export -f fuzz
# Fails when any of them found something.
printf '%s\n' "${lists[@]}" | xargs -P "$(nproc)" -I LIST bash -euo pipefail -c 'fuzz LIST'
