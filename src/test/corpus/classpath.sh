#!/usr/bin/env bash
# Prints the class path of Apache POI and Jackson as the project uses them. usage: POI_CLASSPATH=$(./classpath.sh)
set -euo pipefail
cd "$(dirname "$0")/../../.."
mvn -o -B -q dependency:build-classpath -Dmdep.includeScope=runtime -Dmdep.outputFile=target/poi.classpath >&2
cat target/poi.classpath
