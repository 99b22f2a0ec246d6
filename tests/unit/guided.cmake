firn_test(guided_test
  SOURCES guided_scripts_test.cpp guided_refused_test.cpp guided_random_test.cpp guided_tables_test.cpp ../pits.cpp
  DEPENDS recording notation pit checking)
target_include_directories(guided_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
