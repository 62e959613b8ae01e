#!/usr/bin/env bash
# Mutation testing of one part of the core, which may be several of its rooms: run.sh Conductors [options of the tool]. The report goes to artifacts/mutation.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
folder=${1:?which part of the core: Conductors, Lamps, Fuses or Network}
shift
case $folder in
  Conductors) rooms='"Laws/Wire/**/*.cs", "Bike/Catalogues/WireTable.cs"' ;;
  Lamps) rooms='"Laws/Lamps/**/*.cs", "Bike/Catalogues/L*.cs", "Bike/Catalogues/PublishedLamp.cs"' ;;
  Fuses) rooms='"Laws/Fuses/**/*.cs", "Checks/Fuses/**/*.cs"' ;;
  Network) rooms='"Circuit/**/*.cs", "Solving/**/*.cs", "Bike/Graph/**/*.cs", "Checks/Wiring/**/*.cs"' ;;
  *) echo "Which part of the core: Conductors, Lamps, Fuses or Network?" >&2; exit 2 ;;
esac
cd "$here"
# Of the folders with tables a second runs all tests. Of the network those that reach a mutant are looked for first, and six that take seconds left out.
coverage=off
filter=
if [ "$folder" = Network ]; then
  coverage=perTest
  filter='Name!~Answers_do_not_depend_on_what_was_solved_before&Name!~Kirchhoff_and_power_balance_hold&Name!~Order_of_elements_and_nodes_changes_nothing&Name!~Scaling_resistances_up_and_currents_down&Name!~Close_to_the_edge_on_both_sides&Name!~Bright_point_is_found_and_other'
fi
config=obj/stryker-$folder.json
mkdir -p obj
cat >"$config" <<END
{ "stryker-config": { "project": "Lighting.Calc.csproj", "mutate": [$rooms], "reporters": ["json", "html", "dots"],
  "coverage-analysis": "$coverage", "test-runner": "mtp", "test-case-filter": "$filter", "concurrency": 2, "additional-timeout": 20000 } }
END
export MutatedFolder=$folder
dotnet tool restore
dotnet stryker -f "$config" -O "$here/../../artifacts/mutation/$folder" "$@"
