# 64-bit arm with clang and lld over Debian's cross sysroot (g++-aarch64-linux-gnu), as phones' own compilers
# do it; programs run under qemu-user.
set(CMAKE_SYSTEM_NAME Linux)
set(CMAKE_SYSTEM_PROCESSOR aarch64)
set(firnbook_triple aarch64-linux-gnu)
set(firnbook_qemu qemu-aarch64)
include("${CMAKE_CURRENT_LIST_DIR}/debian-cross.cmake")
set(CMAKE_C_COMPILER clang)
set(CMAKE_CXX_COMPILER clang++)
set(CMAKE_C_COMPILER_TARGET ${firnbook_triple})
set(CMAKE_CXX_COMPILER_TARGET ${firnbook_triple})
# Archives of what is compiled as a whole at linking need an index that only LLVM's own tools can make.
find_program(firnbook_llvm_ar NAMES llvm-ar llvm-ar-14 llvm-ar-15 llvm-ar-16 llvm-ar-19 REQUIRED)
find_program(firnbook_llvm_ranlib NAMES llvm-ranlib llvm-ranlib-14 llvm-ranlib-15 llvm-ranlib-16 llvm-ranlib-19
             REQUIRED)
set(CMAKE_AR "${firnbook_llvm_ar}" CACHE FILEPATH "")
set(CMAKE_RANLIB "${firnbook_llvm_ranlib}" CACHE FILEPATH "")
