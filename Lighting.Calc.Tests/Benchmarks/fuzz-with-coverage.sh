#!/usr/bin/env bash
# Fuzzes the readers guided by the coverage of their code: fuzz-with-coverage.sh SECONDS [LIST...], each list for so long.
# Needs AFL++ (Debian: afl++). What it finds, and the inputs that reached new code, go to artifacts/fuzz/LIST.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
corpus=$here/../Lists/Corpus
out=$here/../../artifacts/fuzz
seconds=${1:?how many seconds for each list}
shift
command -v afl-fuzz >/dev/null || { echo "afl-fuzz is needed: apt-get install afl++" >&2; exit 2; }
cd "$here"
dotnet tool restore
rm -rf "$out/program"
dotnet publish -c Release -o "$out/program" Lighting.Calc.Benchmarks.csproj
dotnet sharpfuzz "$out/program/Lighting.Calc.dll"
# AFL knows nothing of what .NET compiles, and has no say in how the machine writes its core dumps.
export AFL_SKIP_BIN_CHECK=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_SKIP_CPUFREQ=1 AFL_NO_UI=${AFL_NO_UI-1}
found=0
for list in "${@:-bike charging fuses lamps readings ride runs swaps switches}"; do
  for name in $list; do
    seeds=$out/$name-seeds
    rm -rf "$seeds" "$out/$name"
    mkdir -p "$seeds"
    cp "$corpus"/*-"$name".csv "$seeds"
    afl-fuzz -V "$seconds" -t 5000 -m none -i "$seeds" -o "$out/$name" -- dotnet "$out/program/Lighting.Calc.Benchmarks.dll" fuzzed "$corpus" "$name.csv" >"$out/$name.log"
    stats=$out/$name/default/fuzzer_stats
    echo "$name.csv: $(awk -F' *: *' '/execs_done/{e=$2} /corpus_count/{c=$2} /edges_found/{g=$2} /saved_crashes/{k=$2} /saved_hangs/{h=$2} END{print e " inputs, " c " kept, " g " edges, " k " crashes, " h " hangs"}' "$stats")"
    found=$((found + $(ls "$out/$name/default/crashes" "$out/$name/default/hangs" | grep -c '^id' || true)))
  done
done
exit $((found > 0))
