# What the two arm toolchains share: compilers by triple, Debian's cross sysroot, qemu-user as emulator.
set(CMAKE_C_COMPILER ${firnbook_triple}-gcc)
set(CMAKE_CXX_COMPILER ${firnbook_triple}-g++)
set(CMAKE_FIND_ROOT_PATH /usr/${firnbook_triple})
set(CMAKE_FIND_ROOT_PATH_MODE_PROGRAM NEVER)
set(CMAKE_FIND_ROOT_PATH_MODE_LIBRARY ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_INCLUDE ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_PACKAGE ONLY)

find_program(FIRNBOOK_QEMU NAMES ${firnbook_qemu}-static ${firnbook_qemu})
if(FIRNBOOK_QEMU)
  set(CMAKE_CROSSCOMPILING_EMULATOR "${FIRNBOOK_QEMU};-L;/usr/${firnbook_triple}")
endif()
