firn_test(drawing_test
  SOURCES drawing_columns_test.cpp drawing_signs_test.cpp drawing_profile_test.cpp ../pits.cpp
  DEPENDS drawing)
target_include_directories(drawing_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")

# The layout is checked on the parsed picture; the parser is for this test only.
find_package(pugixml QUIET)
if(TARGET pugixml::pugixml AND NOT CMAKE_CROSSCOMPILING)
  firn_test(drawing_layout_test
    SOURCES drawing_layout_test.cpp ../pits.cpp
    DEPENDS drawing)
  target_include_directories(drawing_layout_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
  target_link_libraries(drawing_layout_test PRIVATE pugixml::pugixml)
endif()
