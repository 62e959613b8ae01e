#!/usr/bin/env bash
# Runs the tests that are already built in the system's cultures, as a program that embeds the library might: de-DE,
# tr-TR and ar-SA, or those named. The projects themselves run without the system's cultures; here they are switched on,
# for the tests and the command alike. Needs ICU. Options after -- go to 'dotnet test', such as -- --filter Lists.
set -euo pipefail
cd "$(dirname "$0")"
cultures=()
while (($# > 0)) && [[ $1 != -- ]]; do cultures+=("$1"); shift; done
shift $(($# > 0 ? 1 : 0))
((${#cultures[@]} > 0)) || cultures=(de_DE tr_TR ar_SA)
built=bin/Debug/net10.0
[[ -f $built/Lighting.Calc.Tests.dll ]] || { echo "build the tests first: dotnet build" >&2; exit 1; }
if ! ldconfig -p 2>/dev/null | grep -q libicuuc; then
    echo "cultures: this system has no ICU; nothing was run" >&2
    exit 77
fi
copy=bin/cultures
rm -rf "$copy"
cp -r "$built" "$copy"
sed -i 's/"System.Globalization.Invariant": true/"System.Globalization.Invariant": false/; s/"System.Globalization.PredefinedCulturesOnly": true,\?//' "$copy"/*.runtimeconfig.json
for culture in "${cultures[@]}"; do
    echo "culture $culture"
    env -u LC_ALL LANG="$culture.UTF-8" DOTNET_CLI_UI_LANGUAGE=en dotnet test "$copy/Lighting.Calc.Tests.dll" "$@"
done
