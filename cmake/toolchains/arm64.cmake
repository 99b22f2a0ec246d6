# 64-bit arm with Debian's cross compiler (g++-aarch64-linux-gnu); programs run under qemu-user.
set(CMAKE_SYSTEM_NAME Linux)
set(CMAKE_SYSTEM_PROCESSOR aarch64)
set(firnbook_triple aarch64-linux-gnu)
set(firnbook_qemu qemu-aarch64)
include("${CMAKE_CURRENT_LIST_DIR}/debian-cross.cmake")
