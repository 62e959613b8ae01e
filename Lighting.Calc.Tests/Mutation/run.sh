#!/usr/bin/env bash
# Mutation testing of one folder of the core: run.sh Conductors [options of the tool]. The report goes to artifacts/mutation.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
folder=${1:?which folder of the core: Conductors, Lamps, Fuses or Network}
shift
cd "$here"
config=obj/stryker-$folder.json
mkdir -p obj
cat >"$config" <<END
{ "stryker-config": { "project": "Lighting.Calc.csproj", "mutate": ["$folder/**/*.cs"], "reporters": ["json", "html", "cleartext"],
  "coverage-analysis": "perTestInIsolation", "test-runner": "mtp", "concurrency": 2, "additional-timeout": 20000 } }
END
export MutatedFolder=$folder
dotnet tool restore
dotnet stryker -f "$config" -O "$here/../../artifacts/mutation/$folder" "$@"
