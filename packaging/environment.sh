# Sourced by the scripts beside it: the same surroundings whoever runs them, root or not, with or without a screen.
# shellcheck shell=bash
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root" || exit
export LC_ALL=C.UTF-8
if [ -z "${HOME:-}" ] || [ ! -w "${HOME:-/nonexistent}" ]; then
    mkdir -p "$root/build/home"
    export HOME=$root/build/home
fi
if [ -z "${XDG_RUNTIME_DIR:-}" ] || [ ! -w "$XDG_RUNTIME_DIR" ]; then
    mkdir -p "$root/build/runtime"
    chmod 700 "$root/build/runtime"
    export XDG_RUNTIME_DIR=$root/build/runtime
fi
jobs=$(nproc)
export CMAKE_BUILD_PARALLEL_LEVEL=${CMAKE_BUILD_PARALLEL_LEVEL:-$jobs}

step() {
    printf '\n== %s (%(%H:%M:%S)T)\n' "$*" -1
}
