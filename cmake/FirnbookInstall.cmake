# What `cmake --install` puts where, and how others find it: find_package(firnbook), pkg-config firnbook.
# Included once the target `firnbook` exists.

include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(firnbook_cmake_dir "${CMAKE_INSTALL_LIBDIR}/cmake/firnbook")
set(firnbook_schema_dir "${CMAKE_INSTALL_DATADIR}/firnbook/schemas")

install(TARGETS firnbook EXPORT firnbook-targets
  RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}"
  LIBRARY DESTINATION "${CMAKE_INSTALL_LIBDIR}"
  ARCHIVE DESTINATION "${CMAKE_INSTALL_LIBDIR}"
  INCLUDES DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}")
install(DIRECTORY "${PROJECT_SOURCE_DIR}/core/include/firnbook"
  DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}" FILES_MATCHING PATTERN "*.h")
install(FILES "${FIRNBOOK_VERSION_HEADER}" DESTINATION "${CMAKE_INSTALL_INCLUDEDIR}/firnbook")
# The schemas are the contract: whoever reads the bytes without this library needs nothing else.
install(DIRECTORY "${PROJECT_SOURCE_DIR}/schemas/"
  DESTINATION "${firnbook_schema_dir}" FILES_MATCHING PATTERN "*.fbs" PATTERN "README.md")

install(EXPORT firnbook-targets NAMESPACE firnbook:: DESTINATION "${firnbook_cmake_dir}")
configure_package_config_file("${CMAKE_CURRENT_LIST_DIR}/firnbook-config.cmake.in"
  "${PROJECT_BINARY_DIR}/firnbook-config.cmake"
  INSTALL_DESTINATION "${firnbook_cmake_dir}" PATH_VARS firnbook_schema_dir)
# Before 1.0 a new minor version may break its users; from 1.0 on only a new major version may.
if(PROJECT_VERSION_MAJOR EQUAL 0)
  set(firnbook_compatibility SameMinorVersion)
else()
  set(firnbook_compatibility SameMajorVersion)
endif()
write_basic_package_version_file("${PROJECT_BINARY_DIR}/firnbook-config-version.cmake"
  COMPATIBILITY ${firnbook_compatibility})
install(FILES "${PROJECT_BINARY_DIR}/firnbook-config.cmake" "${PROJECT_BINARY_DIR}/firnbook-config-version.cmake"
  DESTINATION "${firnbook_cmake_dir}")

# A prefix that follows the file keeps the tree movable; it needs relative install folders.
if(IS_ABSOLUTE "${CMAKE_INSTALL_LIBDIR}" OR IS_ABSOLUTE "${CMAKE_INSTALL_INCLUDEDIR}")
  set(firnbook_pc_prefix "${CMAKE_INSTALL_PREFIX}")
else()
  file(RELATIVE_PATH firnbook_pc_prefix "/prefix/${CMAKE_INSTALL_LIBDIR}/pkgconfig" "/prefix")
  string(REGEX REPLACE "/$" "" firnbook_pc_prefix "\${pcfiledir}/${firnbook_pc_prefix}")
endif()
cmake_path(APPEND firnbook_pc_libdir "\${prefix}" "${CMAKE_INSTALL_LIBDIR}")
cmake_path(APPEND firnbook_pc_includedir "\${prefix}" "${CMAKE_INSTALL_INCLUDEDIR}")
cmake_path(APPEND firnbook_pc_schemadir "\${prefix}" "${firnbook_schema_dir}")
configure_file("${CMAKE_CURRENT_LIST_DIR}/firnbook.pc.in" "${PROJECT_BINARY_DIR}/firnbook.pc" @ONLY)
install(FILES "${PROJECT_BINARY_DIR}/firnbook.pc" DESTINATION "${CMAKE_INSTALL_LIBDIR}/pkgconfig")
