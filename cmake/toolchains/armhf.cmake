# 32-bit arm with Debian's cross compiler (g++-arm-linux-gnueabihf); programs run under qemu-user.
set(CMAKE_SYSTEM_NAME Linux)
set(CMAKE_SYSTEM_PROCESSOR armv7l)
set(firnbook_triple arm-linux-gnueabihf)
set(firnbook_qemu qemu-arm)
include("${CMAKE_CURRENT_LIST_DIR}/debian-cross.cmake")
