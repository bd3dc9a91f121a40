# SPDX-License-Identifier: MIT
# What tests/run, examples/run, benchmarks/run and bindings/reference/build share: sourced, not run. Sets up what is missing, builds, and leaves
# everything it writes under build/. Speaks while it works, and says how long each part took.

set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
top=$PWD
build=$top/build
venv=$build/venv
mkdir -p "$build"

# Nothing that is run from here may write anywhere else in the tree. What Python compiles it must keep, though: a package
# takes seconds to compile, and a hundred programs import it.
export PYTHONPYCACHEPREFIX=$build/pycache HYPOTHESIS_STORAGE_DIRECTORY=$build/hypothesis MPLCONFIGDIR=$build/matplotlib
export MPLBACKEND=agg PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_ROOT_USER_ACTION=ignore
unset PYTHONPATH PYTHONHOME PYTHONDONTWRITEBYTECODE

say() { printf '\n== %s\n' "$*"; }
fail() { printf '\nerror: %s\n' "$*" >&2; exit 1; }

# part NAME COMMAND...: runs one part and says how long it took.
part() {
  local name=$1 began=$SECONDS result=0
  shift
  say "$name"
  "$@" 9>&- || result=$?  # without the lock: what it leaves running must not hold up the next run
  printf -- '-- %s: %d s\n' "$name" $((SECONDS - began))
  return $result
}

# --- One run at a time --------------------------------------------------------------------------------------------------
# Two runs at once would build into one another, and take each other's reports for their own: the second waits. What a
# run starts itself is part of its turn.
who_runs() { cat "$build/turn.by" 2>/dev/null || echo "another run"; }
wait_for_turn() {
  [ "${LAYSHAFT_TURN:-}" != "$build" ] || return 0
  local turn=$build/turn said=no
  # `flock` lets go by itself when a run ends, however it ends. Where it is missing a directory does, with the number of
  # the process in it, by which a run that was killed is told from one that still runs.
  if command -v flock >/dev/null; then
    exec 9>"$turn.lock"
    flock -n 9 || { echo "waiting for $(who_runs), which uses $build"; flock 9; }
  else
    until mkdir "$turn.held" 2>/dev/null; do
      if ended "$turn.held/process"; then
        # Only one of those who wait clears away, and only what is still there.
        mkdir "$turn.clearing" 2>/dev/null || { sleep 1; continue; }
        if ended "$turn.held/process"; then rm -rf "$turn.held"; fi
        rmdir "$turn.clearing"
      else
        [ $said = yes ] || echo "waiting for $(who_runs), which uses $build; if none does, remove $turn.held"
        said=yes
        sleep 1
      fi
    done
    trap 'rm -rf "$build/turn.held"' EXIT
    echo $$ >"$turn.held/process"
  fi
  echo "$0 (process $$)" >"$turn.by"
  export LAYSHAFT_TURN=$build
  SECONDS=0
}
ended() {  # ended FILE: whether the process whose number stands in the file is gone
  local process
  process=$(cat "$1" 2>/dev/null) || return 1  # not written yet
  [ -n "$process" ] && ! kill -0 "$process" 2>/dev/null && [ ! -e "/proc/$process" ]
}
wait_for_turn

# --- What Debian (or somebody) must install -----------------------------------------------------------------------------
missing=()   # what is not there, as Debian calls it

can_compile() {  # can_compile TEXT OPTIONS...: whether the compiler takes, links, this program
  local text=$1
  shift
  printf '%s\n' "$text" | "${CXX:-g++}" -std=c++20 -x c++ - -o "$build/.probe" "$@" >/dev/null 2>&1
}

cmake_is_new_enough() {
  local version
  version=$(cmake --version 2>/dev/null | sed -n '1s/[^0-9]*\([0-9.]*\).*/\1/p')
  [ "$(printf '%s\n' 3.25 "$version" | sort -V | head -n 1)" = 3.25 ]
}

# The first Python from 3.10 up that can make a virtual environment and has its C headers.
find_python() {
  local candidate
  for candidate in "${PYTHON:-}" python3 python3.14 python3.13 python3.12 python3.11 python3.10 /usr/bin/python3; do
    [ -n "$candidate" ] || continue
    "$candidate" - <<'P' >/dev/null 2>&1 && { command -v "$candidate"; return 0; }
import ensurepip, os, sys, sysconfig, venv
assert sys.version_info >= (3, 10)
assert os.path.exists(os.path.join(sysconfig.get_path("include"), "Python.h"))
P
  done
  return 1
}

look_for_packages() {
  missing=()
  can_compile 'consteval int one() { return 1; } int main() { return one() - 1; }' || missing+=(g++)
  cmake_is_new_enough || missing+=(cmake)
  command -v ninja >/dev/null || missing+=(ninja-build)
  command -v pkg-config >/dev/null || missing+=(pkg-config)
  can_compile $'#include <gtest/gtest.h>\nint main() {}' -lgtest -pthread || missing+=(libgtest-dev)
  if [ "${need_benchmark:-}" = yes ]; then
    can_compile $'#include <benchmark/benchmark.h>\nint main() {}' -lbenchmark -pthread || missing+=(libbenchmark-dev)
    command -v valgrind >/dev/null && can_compile $'#include <valgrind/callgrind.h>\nint main() {}' || missing+=(valgrind)
    command -v g++ >/dev/null || missing+=(g++)
    compgen -c clang++ >/dev/null || missing+=(clang)  # instructions are counted with both compilers
  fi
  if [ "${need_compilers:-}" = yes ]; then
    command -v clang++-14 >/dev/null || missing+=(clang-14)
    command -v clang++-19 >/dev/null || missing+=(clang-19)
    command -v llvm-cov-19 >/dev/null || missing+=(llvm-19)
    compgen -G '/usr/lib/llvm-19/lib/clang/19/lib/linux/libclang_rt.fuzzer-*' >/dev/null || missing+=(libclang-rt-19-dev)
    [ -d /usr/lib/llvm-19/include/c++/v1 ] || missing+=(libc++-19-dev libc++abi-19-dev)
    command -v aarch64-linux-gnu-g++ >/dev/null || missing+=(g++-aarch64-linux-gnu)
    command -v qemu-aarch64 >/dev/null || missing+=(qemu-user)
  fi
  if [ "${need_doxygen:-}" = yes ]; then command -v doxygen >/dev/null || missing+=(doxygen); fi
  find_python >/dev/null || missing+=(python3 python3-venv python3-dev)
}

install_packages() {
  look_for_packages
  [ ${#missing[@]} -gt 0 ] || { echo "compiler, CMake, Ninja, GoogleTest and Python are there"; return 0; }
  local sudo
  if [ "$(id -u)" = 0 ]; then sudo=(); elif sudo -n true 2>/dev/null; then sudo=(sudo -n); else sudo=(no); fi
  if [ "${sudo[*]-}" = no ] || ! command -v apt-get >/dev/null; then
    fail "please install ${missing[*]} (Debian's names), then run this again"
  fi
  echo "installing ${missing[*]}"
  "${sudo[@]}" apt-get -qq update || fail "apt-get could not update its lists; please install ${missing[*]}"
  "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends "${missing[@]}" \
    >"$build/apt.log" 2>&1 || { tail -n 20 "$build/apt.log" >&2; fail "apt-get could not install ${missing[*]}"; }
  look_for_packages
  [ ${#missing[@]} -eq 0 ] || fail "still missing after apt-get, or too old: ${missing[*]}"
}

# --- The virtual environment --------------------------------------------------------------------------------------------
# What to install stands in pyproject.toml: what its build asks for, and what an extra does.
requirements() {  # requirements build|EXTRA
  "$venv/bin/python" - "$1" <<'P'
import sys

try:
    import tomllib
except ImportError:  # Python 3.10
    from pip._vendor import tomli as tomllib
with open("pyproject.toml", "rb") as file:
    settings = tomllib.load(file)
extras = settings["project"]["optional-dependencies"]
print("\n".join(settings["build-system"]["requires"] if sys.argv[1] == "build" else extras[sys.argv[1]]))
P
}

set_up_venv() {  # all that the build and the tests ask for
  make_venv
  install_extra test
}

make_venv() {  # with what the build asks for
  if ! "$venv/bin/python" -m pip --version >/dev/null 2>&1; then
    local python
    python=$(find_python)
    echo "making build/venv with $("$python" --version)"
    rm -rf "$venv"
    "$python" -m venv "$venv" || fail "$python could not make a virtual environment"
  fi
  install_extra build
  # C++ and Python are built with one Boost, whatever else this machine has.
  boost=$("$venv/bin/python" -c 'import boost_headers, os; print(os.path.dirname(boost_headers.__file__))')/include
}

install_extra() {  # install_extra build|EXTRA
  local wanted=$build/requirements-$1.txt there=$venv/requirements-$1.txt
  requirements "$1" >"$wanted" || fail "the requirements in pyproject.toml could not be read"
  if ! cmp -s "$wanted" "$there"; then
    echo "installing $(paste -sd' ' "$wanted")"
    # What is imported is compiled then; of most packages only a part is.
    "$venv/bin/python" -m pip install -q --no-compile -r "$wanted" ||
      fail "pip could not install what pyproject.toml asks for; run this again once the network is back"
    cp "$wanted" "$there"
  else
    echo "build/venv is up to date"
  fi
}

# --- Building -------------------------------------------------------------------------------------------------------------
# cpp_build PRESET [BUILD-PRESET]: configures (quick when nothing changed) and builds.
cpp_build() {
  cmake --preset "$1" -D LAYSHAFT_BOOST_INCLUDE_DIR="$boost" >"$build/configure-$1.log" 2>&1 ||
    { cat "$build/configure-$1.log" >&2; return 1; }
  cmake --build --preset "${2:-$1}"
}

# What the Python package is made of, as one number.
package_sources() {
  { find include bindings -type f -not -name '*.pyc' -not -path 'bindings/reference/*' | LC_ALL=C sort | xargs sha256sum
    sha256sum CMakeLists.txt pyproject.toml; "$venv/bin/python" --version; } | sha256sum
}

python_build() {
  local now
  now=$(package_sources)
  if [ -f "$venv/layshaft.stamp" ] && [ "$(cat "$venv/layshaft.stamp")" = "$now" ]; then
    echo "the installed layshaft is up to date"
    return 0
  fi
  rm -f "$venv/layshaft.stamp"
  CMAKE_GENERATOR=Ninja "$venv/bin/python" -m pip install -q . --no-build-isolation --no-deps --force-reinstall \
    --config-settings build-dir=build/python --config-settings build.verbose=false \
    --config-settings cmake.define.LAYSHAFT_BOOST_INCLUDE_DIR="$boost" || return 1  # -C only came with pip 23.1
  echo "$now" >"$venv/layshaft.stamp"
}
