# 32-bit arm with Debian's cross compiler (g++-arm-linux-gnueabihf); programs run under qemu-user.
set(CMAKE_SYSTEM_NAME Linux)
set(CMAKE_SYSTEM_PROCESSOR armv7l)
set(firnbook_triple arm-linux-gnueabihf)
set(firnbook_qemu qemu-arm)
include("${CMAKE_CURRENT_LIST_DIR}/debian-cross.cmake")
# GCC 7 changed how some arguments travel on 32-bit arm, and says so at every call. All of this is built with
# one compiler, and only C crosses the border of the library.
set(CMAKE_CXX_FLAGS_INIT -Wno-psabi)
