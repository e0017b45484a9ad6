# What a fresh Debian machine needs; to be sourced by demo/run and tests/run.
#
# packages_need build|test|analyse: asks dpkg first, so that a machine that has everything needs neither
# the network nor any right. Where installing cannot be, it prints the command and exits 1.

packages_build='gcc libc6-dev meson ninja-build pkg-config
    libncurses-dev libsqlite3-dev libjansson-dev
    libcairo2-dev libpango1.0-dev fonts-dejavu-core'
packages_test="$packages_build
    libcmocka-dev libvterm-dev clang libclang-rt-14-dev
    mandoc ncurses-bin glpk-utils qpdf poppler-utils"
packages_analyse="$packages_test
    clang-tidy cppcheck valgrind"

packages_missing() {
    for package in "$@"; do
        dpkg -s "$package" 2>/dev/null | grep -q '^Status: .* ok installed$' ||
            printf '%s ' "$package"
    done
}

# Runs its arguments as root, or fails without asking for a password.
packages_as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    else
        sudo -n "$@"
    fi
}

packages_install() {
    command -v apt-get >/dev/null || return 1
    packages_as_root true 2>/dev/null || return 1
    packages_as_root apt-get update || return 1
    packages_as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y --no-install-recommends "$@"
}

packages_need() {
    case $1 in
    build) packages_wanted=$packages_build ;;
    test) packages_wanted=$packages_test ;;
    analyse) packages_wanted=$packages_analyse ;;
    esac
    # Package names hold no blanks: the lists are meant to be split here and below.
    packages_lacking=$(packages_missing $packages_wanted)
    [ -n "$packages_lacking" ] || return 0

    printf 'installing %s\n' "$packages_lacking" >&2
    packages_log=$(mktemp)
    if packages_install $packages_lacking >"$packages_log" 2>&1 &&
        [ -z "$(packages_missing $packages_lacking)" ]; then
        rm -f "$packages_log"
        return 0
    fi
    cat "$packages_log" >&2
    rm -f "$packages_log"
    printf '%s\n' 'These packages are needed and could not be installed. As root:' \
        '    apt-get update' \
        "    apt-get install -y --no-install-recommends $packages_lacking" >&2
    exit 1
}
