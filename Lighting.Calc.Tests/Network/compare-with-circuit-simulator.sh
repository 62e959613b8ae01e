#!/bin/sh
# Compares node volts with the general-purpose circuit simulator ngspice, to 1e-6 V, where the system has it installed.
set -eu
if ! simulator=$(command -v ngspice); then
    echo "skipped: ngspice is not installed (on Debian and Ubuntu: apt-get install ngspice)"
    exit 0
fi
cd "$(dirname "$0")/.."
LIGHTING_CALC_SIMULATOR=$simulator dotnet test Lighting.Calc.Tests.csproj "$@" \
    --filter "FullyQualifiedName~CircuitSimulatorTests" --logger "console;verbosity=normal"
