#!/usr/bin/env bash
# Packs the library and the command, looks into the packages, then uses them as a stranger would: builds the README's
# C# blocks as one program from the packed library, and installs the command as a tool, portable and compiled for this
# system. Needs a package registry.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
fail() { echo "packages: $*" >&2; exit 1; }

cd "$root"
feed=$work/feed
# Built apart: what was built before, without the packages' settings, would be taken as it is.
dotnet pack Lighting.Calc.Cli/Lighting.Calc.Cli.csproj -c Release --artifacts-path "$work/built" -o "$feed" -p:ContinuousIntegrationBuild=true -v quiet
dotnet pack Lighting.Calc.Cli/Lighting.Calc.Cli.csproj -c Release --artifacts-path "$work/built-each" -o "$work/each" -p:EachPlatform=true -p:ContinuousIntegrationBuild=true -v quiet
dotnet pack Lighting.Calc/Lighting.Calc.csproj -c Release --artifacts-path "$work/built" -o "$feed" -p:ContinuousIntegrationBuild=true -v quiet
packages=("$feed"/Lighting.Calc.[0-9]*.nupkg)
package=${packages[0]}
version=${package##*/Lighting.Calc.} version=${version%.nupkg}
for file in README.md CHANGELOG.md MODELS.md MANUAL.md icon.png schemas/check.json schemas/load.json lib/net10.0/Lighting.Calc.dll lib/net10.0/Lighting.Calc.xml Lighting.Calc.nuspec; do
    unzip -l "$package" "$file" >/dev/null || fail "$file is missing from $(basename "$package")"
done
unzip -p "$package" Lighting.Calc.nuspec | grep -q '<dependency id="UnitsNet" version="\[5[0-9.]*, 6' || fail "UnitsNet has no upper bound"
unzip -p "$package" Lighting.Calc.nuspec | grep -q '<license type="expression">MIT</license>' || fail "the licence is missing"
unzip -l "$feed/Lighting.Calc.$version.snupkg" lib/net10.0/Lighting.Calc.pdb >/dev/null || fail "the symbols are missing"
if unzip -p "$package" lib/net10.0/Lighting.Calc.dll | grep -qaF "$root"; then fail "the library holds a path of this machine"; fi

documentation=$(unzip -p "$package" lib/net10.0/Lighting.Calc.xml)
grep -q '"T:Lighting.Calc.Bike"' <<<"$documentation" || fail "the documentation lacks the bike"
if grep -q '"T:Lighting.Calc.\(FuseJudge\|LampChecks\|SizingSearch\)"' <<<"$documentation"; then fail "the documentation holds internal types"; fi

# Own package folder, so that no earlier package of this version is taken; the registry's come from the usual one.
mkdir "$work/consumer"
cp "$here/Consumer.csproj" "$work/consumer"
awk '/^```csharp$/ { on = 1; next } /^```$/ { on = 0 } on' README.md Lighting.Calc/MANUAL.md >"$work/consumer/Program.cs"
usual=$(dotnet nuget locals global-packages --list) usual=${usual#*: }
cat >"$work/nuget.config" <<END
<configuration>
  <packageSources><add key="packed" value="$feed" /></packageSources>
  <fallbackPackageFolders><add key="usual" value="$usual" /></fallbackPackageFolders>
</configuration>
END
export NUGET_PACKAGES=$work/packages
dotnet build "$work/consumer" -o "$work/program" -p:LightingCalcVersion="$version" -v quiet
output=$(dotnet "$work/program/Consumer.dll")
echo "$output"
grep -q '^15 A main: suits' <<<"$output" || fail "the README's program does not say that the fuse suits"
grep -q 'in the joints' <<<"$output" || fail "the README's program did not come to its end"

# The same from F# and Visual Basic, as far as their compilers go.
for language in FSharp VisualBasic; do
    cp -r "$here/$language" "$work/$language"
    dotnet build "$work/$language" -o "$work/of-$language" -p:LightingCalcVersion="$version" -v quiet
    output=$(dotnet "$work/of-$language/Consumer.dll")
    echo "$language: $output"
    grep -q '^7.5 A main: suits' <<<"$output" || fail "the $language program does not say that the fuse suits"
done

# The tool for each platform: the code of all its assemblies is for that platform, that of the portable one for none.
cp "$here/compiled-for.cs" "$work"
for platform in linux-x64 win-x64 osx-arm64 any; do
    unzip -q "$work/each/Lighting.Calc.Tool.$platform.$version.nupkg" -d "$work/$platform"
    expected=$platform command=lighting-calc
    case $platform in any) expected=none command=lighting-calc.dll ;; win-*) command+=.exe ;; esac
    [[ -f $work/$platform/tools/net10.0/$platform/$command ]] || fail "the tool for $platform has no $command"
    code=$(dotnet run "$work/compiled-for.cs" -- "$work/$platform/tools/net10.0/$platform"/*.dll)
    echo "$platform: $(wc -l <<<"$code") assemblies"
    if grep -v "^$expected " <<<"$code"; then fail "the tool for $platform holds assemblies of other code"; fi
done

# Installed as the portable package, and by way of the package that leads to those of the platforms.
sed "s#$feed#$work/each#" "$work/nuget.config" >"$work/nuget-each.config"
dotnet tool install Lighting.Calc.Tool --tool-path "$work/portable" --version "$version" --configfile "$work/nuget.config" >/dev/null
NUGET_PACKAGES=$work/packages-each \
    dotnet tool install Lighting.Calc.Tool --tool-path "$work/compiled" --version "$version" --configfile "$work/nuget-each.config" >/dev/null
for tool in portable compiled; do
    [[ $("$work/$tool/lighting-calc" --version) == "$version" ]] || fail "the $tool tool's version is not that of its package"
    "$work/$tool/lighting-calc" check shared/bikes/valley-twin >"$work/check-$tool.txt"
    grep -q 'Suits\.' "$work/check-$tool.txt" || fail "the $tool tool does not check the demo bike"
done
cmp "$work/check-portable.txt" "$work/check-compiled.txt"
if [[ $(uname -sm) == "Linux x86_64" ]]; then
    find "$work/compiled" -path '*.tool.linux-x64/*' -name lighting-calc.dll | grep -q . || fail "this system did not get the tool compiled for it"
    # Processor seconds of ten checks from process start to end, in turn.
    for tool in portable compiled portable compiled; do
        TIMEFORMAT="ten checks of the demo bike, $tool: %U s of the processor, and %S s of the system's"
        time for run in {1..10}; do "$work/$tool/lighting-calc" check shared/bikes/valley-twin >/dev/null; done
    done
fi
echo "packages: Lighting.Calc $version and its tool work from the packed files"
